#include "ui/trees/tree_dialogs.h"

#include <QComboBox>
#include <QDialogButtonBox>
#include <QEvent>
#include <QFormLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QListWidget>
#include <QPushButton>
#include <QRadioButton>
#include <QScrollArea>
#include <QVBoxLayout>

#include "ui/bridge/dates.h"
#include "ui/bridge/text.h"
#include "ui/bridge/words.h"
#include "ui/bridge/words_trees.h"
#include "ui/theme/theme.h"
#include "ui/trees/story_list.h"
#include "ui/trees/trees_desk.h"
#include "ui/widgets/date_edit.h"
#include "ui/widgets/role_label.h"
#include "ui/widgets/word_fit.h"

namespace cupule::ui {

namespace {

constexpr const char* fates[] = {"", "felled", "not found"};

QLabel* plainWords(const QString& words, QWidget* parent)
{
    auto* label = new QLabel(words, parent);
    label->setTextFormat(Qt::PlainText);
    label->setWordWrap(true);
    return label;
}

/// Cancel and one button that does it.
QPushButton* closingButtons(QDialog& dialog, QVBoxLayout& column, const QString& yes, const char* name)
{
    auto* box = new QDialogButtonBox(QDialogButtonBox::Cancel, &dialog);
    auto* button = box->addButton(yes, QDialogButtonBox::AcceptRole);
    button->setObjectName(QString::fromLatin1(name));
    QObject::connect(box, &QDialogButtonBox::accepted, &dialog, &QDialog::accept);
    QObject::connect(box, &QDialogButtonBox::rejected, &dialog, &QDialog::reject);
    column.addWidget(box);
    return button;
}

QString visitWords(const HistoryLine& visit)
{
    return QStringList{plainDate(visit.line.date, 0), summaryWord(visit.line.summary), stateWord(visit.line.state),
                       text(visit.line.observerCode)}
        .join(QStringLiteral(", "));
}

} // namespace

FateDialog::FateDialog(const TreesDesk& desk, QWidget* parent) : QDialog(parent)
{
    setObjectName(QStringLiteral("fateDialog"));
    const Tree& tree = desk.page()->tree;
    setWindowTitle(tr("What became of %1").arg(text(tree.label)));
    auto* column = new QVBoxLayout(this);
    const QString words[] = {tr("&It stands"), tr("It was &felled"), tr("It was &not found")};
    for (int i = 0; i < 3; ++i) {
        m_choices[i] = new QRadioButton(words[i], this);
        m_choices[i]->setObjectName(QStringLiteral("fate%1").arg(i));
        m_choices[i]->setChecked(tree.fate == fates[i]);
        connect(m_choices[i], &QRadioButton::toggled, this, &FateDialog::refresh);
        column->addWidget(m_choices[i]);
    }
    m_day = new DateEdit(this);
    m_day->setObjectName(QStringLiteral("fateDay"));
    m_day->setToday(toDate(desk.today()));
    m_day->setDate(toDate(tree.fateDate.value_or(desk.today())));
    auto* form = new QFormLayout;
    form->addRow(tr("Seen on the &day"), m_day);
    column->addLayout(form);
    column->addWidget(plainWords(tr("A tree that is gone keeps its past and can still be found. It can be undone."), this));
    m_yes = closingButtons(*this, *column, tr("Say so"), "fateYes");
    m_yes->setDefault(true);
    connect(m_day, &QLineEdit::textChanged, this, &FateDialog::refresh);
    refresh();
}

std::string FateDialog::fate() const
{
    for (int i = 1; i < 3; ++i)
        if (m_choices[i]->isChecked())
            return fates[i];
    return {};
}

std::optional<CivilDate> FateDialog::day() const
{
    const QDate day = m_day->date();
    return fate().empty() || !day.isValid() ? std::nullopt : std::optional(fromDate(day));
}

void FateDialog::refresh()
{
    m_day->setEnabled(!fate().empty());
}

MergeDialog::MergeDialog(TreesDesk& desk, QWidget* parent) : QDialog(parent), m_desk(desk)
{
    setObjectName(QStringLiteral("mergeDialog"));
    const QString label = text(desk.page()->tree.label);
    setWindowTitle(tr("Which entry is the same tree as %1?").arg(label));
    auto* column = new QVBoxLayout(this);
    m_words = new QLineEdit(this);
    m_words->setObjectName(QStringLiteral("mergeWords"));
    m_words->setPlaceholderText(tr("label; the nearest stand below"));
    m_words->setAccessibleName(windowTitle());
    column->addWidget(m_words);
    m_hits = new QListWidget(this);
    m_hits->setObjectName(QStringLiteral("mergeHits"));
    m_hits->setAccessibleName(tr("Other trees, nearest first"));
    m_hits->setMinimumHeight(fontMetrics().lineSpacing() * 5);
    column->addWidget(m_hits, 1);
    m_kept = new QComboBox(this);
    m_kept->setObjectName(QStringLiteral("mergeKept"));
    auto* form = new QFormLayout;
    form->addRow(tr("&Keep the label"), m_kept);
    column->addLayout(form);
    column->addWidget(new RoleLabel(TextRole::heading, tr("What it means"), this));
    auto* area = new QScrollArea(this);
    area->setWidgetResizable(true);
    area->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    area->setMinimumHeight(fontMetrics().lineSpacing() * 8);
    m_meaning = new StoryList(false, area);
    m_meaning->setObjectName(QStringLiteral("mergeMeaning"));
    m_meaning->setAccessibleName(tr("What it means"));
    auto* inside = new QWidget(area);
    setGround(*inside, "page");
    auto* rows = new QVBoxLayout(inside);
    rows->setContentsMargins(0, 0, 0, 0);
    rows->addWidget(m_meaning);
    rows->addStretch(1);
    area->setWidget(inside);
    column->addWidget(area, 2);
    m_yes = closingButtons(*this, *column, tr("Merge"), "mergeYes");
    resize(onAnyScreen({scaled(620, font()), scaled(600, font())}));
    connect(m_words, &QLineEdit::textEdited, this, &MergeDialog::search);
    connect(m_words, &QLineEdit::returnPressed, this, [this] { m_hits->setFocus(Qt::OtherFocusReason); });
    connect(m_hits, &QListWidget::currentRowChanged, this, [this] {
        m_kept->clear();
        if (m_hits->currentItem() != nullptr) {
            const QString other = m_hits->currentItem()->data(Qt::UserRole + 1).toString();
            m_kept->addItem(text(m_desk.page()->tree.label), 0);
            m_kept->addItem(other, 1);
        }
        tell();
    });
    connect(m_hits, &QListWidget::itemActivated, this, [this] { m_yes->setFocus(Qt::OtherFocusReason); });
    connect(m_kept, &QComboBox::activated, this, &MergeDialog::tell);
    search();
    m_words->setFocus();
}

/// Enter chooses a tree and goes on; buttons take theirs themselves, and none is pressed from elsewhere.
void MergeDialog::keyPressEvent(QKeyEvent* event)
{
    if (event->key() != Qt::Key_Return && event->key() != Qt::Key_Enter)
        QDialog::keyPressEvent(event);
}

Uid MergeDialog::chosen() const
{
    const auto id = m_hits->currentItem() == nullptr ? Result<Uid>(Uid{}) : Uid::parse(utf8(m_hits->currentItem()->data(Qt::UserRole).toString()));
    return id.value_or(Uid{});
}

Uid MergeDialog::kept() const
{
    return m_kept->currentData().toInt() == 1 ? chosen() : m_desk.page()->tree.id;
}

Uid MergeDialog::other() const
{
    return m_kept->currentData().toInt() == 1 ? m_desk.page()->tree.id : chosen();
}

void MergeDialog::search()
{
    m_hits->clear();
    for (const TreeHit& hit : m_desk.otherTrees(m_words->text().trimmed())) {
        QStringList words{text(hit.tree.label), hit.siteName.empty() ? tr("no site") : text(hit.siteName)};
        if (hit.metres)
            words << tr("%1 away").arg(distanceText(*hit.metres));
        words << (hit.lastVisit ? tr("last looked at on %1").arg(plainDate(*hit.lastVisit, 0)) : tr("not looked at yet"));
        auto* item = new QListWidgetItem(words.join(QStringLiteral(", ")), m_hits);
        item->setData(Qt::UserRole, text(hit.tree.id.text()));
        item->setData(Qt::UserRole + 1, text(hit.tree.label));
    }
    m_hits->setCurrentRow(0);
    tell();
}

void MergeDialog::tell()
{
    std::vector<StoryRow> rows;
    const auto add = [&](const char* mark, const QString& words) {
        StoryRow row;
        row.mark = QString::fromLatin1(mark);
        row.words = words;
        rows.push_back(row);
    };
    const auto meaning = chosen().isNull() ? std::nullopt : m_desk.meaning(kept(), other());
    if (meaning) {
        const MergeWords words = mergeWords(*meaning, m_desk.pack());
        for (const QString& line : words.asks)
            add("severity-ask", line);
        for (const QString& line : words.does)
            add("severity-note", line);
    } else {
        add("severity-note", m_hits->count() == 0 ? tr("No other tree is called so, and none stands near.") : tr("Choose an entry above."));
    }
    m_meaning->setRows(std::move(rows));
    m_yes->setEnabled(meaning.has_value());
}

SplitDialog::SplitDialog(const TreesDesk& desk, QWidget* parent) : QDialog(parent)
{
    setObjectName(QStringLiteral("splitDialog"));
    const TreePage& page = *desk.page();
    setWindowTitle(tr("More than one tree under %1").arg(text(page.tree.label)));
    auto* column = new QVBoxLayout(this);
    m_what = new QComboBox(this);
    m_what->setObjectName(QStringLiteral("splitWhat"));
    m_what->setAccessibleName(tr("What is split off"));
    for (const Tree& entry : page.merged)
        m_what->addItem(tr("%1 is a tree of its own after all").arg(text(entry.label)), text(entry.id.text()));
    if (page.visits.size() > 1)
        m_what->addItem(tr("Some visits were to another tree"), QString());
    column->addWidget(m_what);
    m_means = plainWords({}, this);
    column->addWidget(m_means);
    m_visits = new QListWidget(this);
    m_visits->setObjectName(QStringLiteral("splitVisits"));
    m_visits->setAccessibleName(tr("Visits to the other tree; Space ticks one"));
    m_visits->setMinimumHeight(fontMetrics().lineSpacing() * 6);
    for (const HistoryLine& visit : page.visits) {
        auto* item = new QListWidgetItem(visitWords(visit), m_visits);
        item->setFlags(item->flags() | Qt::ItemIsUserCheckable);
        item->setCheckState(Qt::Unchecked);
        item->setData(Qt::UserRole, text(visit.line.id.text()));
    }
    column->addWidget(m_visits, 1);
    m_label = new QLineEdit(this);
    m_label->setObjectName(QStringLiteral("splitLabel"));
    m_labelWords = new QLabel(tr("&Label of the other tree"), this);
    m_labelWords->setBuddy(m_label);
    column->addWidget(m_labelWords);
    column->addWidget(m_label);
    m_yes = closingButtons(*this, *column, tr("Split"), "splitYes");
    resize(onAnyScreen({scaled(560, font()), scaled(420, font())}));
    connect(m_what, &QComboBox::activated, this, &SplitDialog::refresh);
    connect(m_visits, &QListWidget::itemChanged, this, &SplitDialog::refresh);
    connect(m_label, &QLineEdit::textChanged, this, &SplitDialog::refresh);
    refresh();
}

Uid SplitDialog::entry() const
{
    return Uid::parse(utf8(m_what->currentData().toString())).value_or(Uid{});
}

std::vector<Uid> SplitDialog::visits() const
{
    std::vector<Uid> ids;
    for (int i = 0; i < m_visits->count(); ++i)
        if (m_visits->item(i)->checkState() == Qt::Checked)
            if (const auto id = Uid::parse(utf8(m_visits->item(i)->data(Qt::UserRole).toString())))
                ids.push_back(*id);
    return ids;
}

QString SplitDialog::label() const
{
    return m_label->text().trimmed();
}

void SplitDialog::refresh()
{
    const bool moves = entry().isNull();
    for (QWidget* part : std::initializer_list<QWidget*>{m_visits, m_labelWords, m_label})
        part->setVisible(moves);
    m_means->setText(moves ? tr("Tick the visits that were to the other tree. A draft moves at once. What was handed in gets a correction "
                                "by the person who made the visit, and is decided anew.")
                           : tr("Its visits, photos and samples go back with it. What was written since under this label stays here. "
                                "No decision is touched."));
    const auto ticked = static_cast<int>(visits().size());
    m_yes->setEnabled(!moves || (ticked > 0 && ticked < m_visits->count() && !label().isEmpty()));
}

} // namespace cupule::ui
