#include "ui/review/conflict_dialog.h"

#include <QDialogButtonBox>
#include <QHeaderView>
#include <QJsonArray>
#include <QJsonDocument>
#include <QKeyEvent>
#include <QLabel>
#include <QListWidget>
#include <QPushButton>
#include <QTableWidget>
#include <QVBoxLayout>

#include "ui/bridge/dates.h"
#include "ui/bridge/text.h"
#include "ui/bridge/words_review.h"
#include "ui/review/review_desk.h"
#include "ui/theme/theme.h"
#include "ui/widgets/key_button.h"
#include "ui/widgets/role_label.h"
#include "ui/widgets/word_fit.h"

namespace cupule::ui {

namespace {

QString lineText(const ConflictLine& line)
{
    const QString name = line.name.empty() ? ConflictDialog::tr("without a name") : text(line.name);
    return line.date ? ConflictDialog::tr("%1 %2, %3").arg(nounWord(line.noun), name, plainDate(*line.date, 0))
                     : ConflictDialog::tr("%1 %2").arg(nounWord(line.noun), name);
}

/// A string, number or nothing can be written by hand; what is made of parts is chosen.
bool isPlainValue(const ConflictField& field)
{
    for (const std::string& value : field.values)
        if (!value.empty() && (value.front() == '{' || value.front() == '['))
            return false;
    return true;
}

bool isNumber(const ConflictField& field)
{
    for (const std::string& value : field.values)
        if (!value.empty())
            return value.front() != '"';
    return false;
}

} // namespace

ConflictDialog::ConflictDialog(ReviewDesk& desk, Prompts& prompts, ConflictPage page, QWidget* parent)
    : QDialog(parent), m_desk(desk), m_prompts(prompts), m_page(std::move(page))
{
    setObjectName(QStringLiteral("conflictDialog"));
    setWindowTitle(sentenceStart(lineText(m_page.line)));
    auto* column = new QVBoxLayout(this);
    auto* head = new RoleLabel(TextRole::body, this);
    head->setWordWrap(true);
    head->setText(tr("These versions were made without knowing of each other. %1, %2. Nothing is thrown away: every version stays in the journal.")
                      .arg(tr("%n fields differ", nullptr, static_cast<int>(m_page.fields.size())), tr("%n fields agree", nullptr, m_page.agreeing)));
    column->addWidget(head);
    m_table = new QTableWidget(this);
    m_table->setObjectName(QStringLiteral("conflictTable"));
    m_table->setAccessibleName(tr("Fields that differ"));
    m_table->installEventFilter(this);
    buildTable();
    column->addWidget(m_table, 1);
    auto* before = new RoleLabel(TextRole::caption, this, Tone::second);
    before->setWordWrap(true);
    before->setText(m_page.common ? tr("All of them start from the version of %1, %2.").arg(text(m_page.common->code), momentText(m_page.common->at))
                                  : tr("Where they start from is not known here."));
    column->addWidget(before);
    auto* keys = new RoleLabel(TextRole::caption, tr("Up and Down: field. Left and Right, or a digit: whose version. E: write a third."), this,
                               Tone::second);
    keys->setWordWrap(true);
    column->addWidget(keys);
    m_left = new RoleLabel(TextRole::body, this);
    m_left->setObjectName(QStringLiteral("conflictLeft"));
    m_left->setWordWrap(true);
    column->addWidget(m_left);
    auto* box = new QDialogButtonBox(this);
    m_settle = new KeyButton(tr("Settle"), this);
    m_settle->setObjectName(QStringLiteral("conflictSettle"));
    m_settle->setKey(QKeySequence(Qt::CTRL | Qt::Key_Return));
    m_settle->setAutoDefault(false);
    box->addButton(m_settle, QDialogButtonBox::ActionRole);
    box->addButton(tr("Leave all, decide later"), QDialogButtonBox::RejectRole)->setAutoDefault(false);
    connect(m_settle, &QPushButton::clicked, this, &ConflictDialog::settle);
    connect(box, &QDialogButtonBox::rejected, this, &QDialog::reject);
    column->addWidget(box);
    resize(onAnyScreen({scaled(940, font()), scaled(560, font())}));
    refresh();
    m_table->setFocus();
}

QString ConflictDialog::versionText(std::size_t version) const
{
    const ConflictVersion& made = m_page.versions[version];
    Person author;
    author.code = made.code;
    author.name = made.name;
    const QString device = made.thisDevice ? tr("this device") : tr("device %1").arg(text(made.device.text()).right(4));
    QString words = tr("%1: %2\n%3\n%4").arg(version + 1).arg(text(made.name.empty() ? made.code : made.code + " " + made.name), device, momentText(made.at));
    if (!made.clockDoubt.empty())
        words += QLatin1Char('\n') + clockDoubtText(made.clockDoubt);
    return words;
}

QString ConflictDialog::valueText(const ConflictField& field, const std::string& json) const
{
    return fieldValueText(field.path, json, m_desk.pack(), m_page.names);
}

void ConflictDialog::buildTable()
{
    const auto versions = m_page.versions.size();
    m_table->setColumnCount(choiceColumn() + 1);
    m_table->setRowCount(static_cast<int>(m_page.fields.size()));
    QStringList heads{tr("field")};
    for (std::size_t i = 0; i < versions; ++i)
        heads << versionText(i);
    m_table->setHorizontalHeaderLabels(heads << tr("your choice"));
    m_table->horizontalHeader()->setSectionResizeMode(QHeaderView::Stretch);
    m_table->horizontalHeader()->setDefaultAlignment(Qt::AlignLeft | Qt::AlignTop);
    m_table->horizontalHeader()->setTextElideMode(Qt::ElideNone);
    m_table->verticalHeader()->hide();
    m_table->verticalHeader()->setSectionResizeMode(QHeaderView::ResizeToContents);
    m_table->setEditTriggers(QAbstractItemView::NoEditTriggers);
    m_table->setSelectionBehavior(QAbstractItemView::SelectRows);
    m_table->setSelectionMode(QAbstractItemView::SingleSelection);
    m_table->setTabKeyNavigation(false);
    m_table->setWordWrap(true);
    for (int row = 0; row < m_table->rowCount(); ++row) {
        const ConflictField& field = m_page.fields[static_cast<std::size_t>(row)];
        QString name = sentenceStart(conflictFieldWords(field.path, m_desk.pack()));
        if (m_page.common)
            name += QLatin1Char('\n') + tr("before: %1").arg(valueText(field, field.before));
        m_table->setItem(row, 0, new QTableWidgetItem(name));
        for (std::size_t i = 0; i < versions; ++i)
            m_table->setItem(row, static_cast<int>(i) + 1, new QTableWidgetItem(valueText(field, field.values[i])));
        m_table->setItem(row, choiceColumn(), new QTableWidgetItem);
    }
    m_table->setCurrentCell(0, 0);
}

void ConflictDialog::choose(int row, int version)
{
    if (row < 0 || row >= m_table->rowCount() || version < 0 || version >= static_cast<int>(m_page.versions.size()))
        return;
    const ConflictField& field = m_page.fields[static_cast<std::size_t>(row)];
    m_chosen[field.path] = field.values[static_cast<std::size_t>(version)];
    refresh();
}

/// Left and Right: the version beside the one that is chosen, the outermost one where none is.
void ConflictDialog::step(int by)
{
    const int row = m_table->currentRow();
    if (row < 0)
        return;
    const ConflictField& field = m_page.fields[static_cast<std::size_t>(row)];
    const int last = static_cast<int>(field.values.size()) - 1;
    const auto chosen = m_chosen.find(field.path);
    const auto at = chosen == m_chosen.end() ? field.values.end() : std::find(field.values.begin(), field.values.end(), chosen->second);
    if (at == field.values.end())
        choose(row, by < 0 ? 0 : last);
    else
        choose(row, std::clamp(static_cast<int>(at - field.values.begin()) + by, 0, last));
}

void ConflictDialog::writeThird(int row)
{
    if (row < 0)
        return;
    const ConflictField& field = m_page.fields[static_cast<std::size_t>(row)];
    if (!isPlainValue(field)) {
        m_left->setText(tr("This field is chosen, not written. To change it otherwise, settle first and correct it then."));
        return;
    }
    const QString typed = m_prompts.line(this, tr("A third version"), sentenceStart(conflictFieldWords(field.path, m_desk.pack())),
                                         valueText(field, field.values.front()));
    if (typed.isEmpty())
        return;
    bool good = true;
    const double number = typed.toDouble(&good);
    if (isNumber(field) && !good) {
        m_left->setText(tr("“%1” is no number.").arg(typed));
        return;
    }
    const QJsonArray value{isNumber(field) ? QJsonValue(number) : QJsonValue(typed)};
    const QByteArray json = QJsonDocument(value).toJson(QJsonDocument::Compact);
    m_chosen[field.path] = json.mid(1, json.size() - 2).toStdString();
    refresh();
}

void ConflictDialog::refresh()
{
    const Theme& theme = themeOf(*this);
    int left = 0;
    for (int row = 0; row < m_table->rowCount(); ++row) {
        const ConflictField& field = m_page.fields[static_cast<std::size_t>(row)];
        const auto chosen = m_chosen.find(field.path);
        const bool settled = chosen != m_chosen.end();
        left += settled ? 0 : 1;
        int kept = -1;
        for (int i = 0; settled && i < static_cast<int>(field.values.size()); ++i)
            if (kept < 0 && field.values[static_cast<std::size_t>(i)] == chosen->second)
                kept = i;
        for (int i = 0; i < static_cast<int>(field.values.size()); ++i) {
            QTableWidgetItem* item = m_table->item(row, i + 1);
            item->setBackground(i == kept ? QBrush(theme.nutSoft) : QBrush());
            QFont weight = font();
            weight.setBold(i == kept);
            item->setFont(weight);
        }
        m_table->item(row, choiceColumn())->setText(!settled    ? tr("choose")
                                                    : kept >= 0 ? tr("✓ version %1").arg(kept + 1)
                                                                : tr("✓ a third: %1").arg(valueText(field, chosen->second)));
    }
    m_left->setText(left == 0 ? tr("Every field is settled.") : tr("%n fields are left", nullptr, left));
    m_settle->setEnabled(left == 0);
}

void ConflictDialog::settle()
{
    if (m_chosen.size() == m_page.fields.size() && m_desk.settle(m_page, m_chosen))
        accept();
}

bool ConflictDialog::eventFilter(QObject* watched, QEvent* event)
{
    if (watched != m_table || event->type() != QEvent::KeyPress)
        return QDialog::eventFilter(watched, event);
    const auto* key = static_cast<QKeyEvent*>(event);
    if (key->modifiers() != Qt::NoModifier && key->modifiers() != Qt::KeypadModifier)
        return QDialog::eventFilter(watched, event);
    const int row = m_table->currentRow();
    if (key->key() == Qt::Key_Left || key->key() == Qt::Key_Right)
        step(key->key() == Qt::Key_Left ? -1 : 1);
    else if (key->key() >= Qt::Key_1 && key->key() <= Qt::Key_9)
        choose(row, key->key() - Qt::Key_1);
    else if (key->key() == Qt::Key_E)
        writeThird(row);
    else
        return QDialog::eventFilter(watched, event);
    return true;
}

void ConflictDialog::changeEvent(QEvent* event)
{
    QDialog::changeEvent(event);
    if (isRestyle(*event) && m_table != nullptr && m_settle != nullptr)
        refresh();
}

ConflictList::ConflictList(const std::vector<ConflictLine>& lines, QWidget* parent) : QDialog(parent), m_lines(lines)
{
    setObjectName(QStringLiteral("conflictList"));
    setWindowTitle(tr("Versions that do not agree"));
    auto* column = new QVBoxLayout(this);
    auto* head = new QLabel(lines.empty() ? tr("No versions here contradict each other.")
                                          : tr("%n entries have versions that do not agree", nullptr, static_cast<int>(lines.size())),
                            this);
    head->setWordWrap(true);
    column->addWidget(head);
    m_list = new QListWidget(this);
    m_list->setObjectName(QStringLiteral("conflicts"));
    m_list->setAccessibleName(tr("Versions that do not agree"));
    for (const ConflictLine& line : lines)
        m_list->addItem(sentenceStart(lineText(line)) + QStringLiteral(": ") + tr("%n fields differ", nullptr, line.fields));
    m_list->setCurrentRow(0);
    m_list->setVisible(!lines.empty());
    column->addWidget(m_list, 1);
    auto* box = new QDialogButtonBox(QDialogButtonBox::Close, this);
    if (!lines.empty()) {
        auto* open = box->addButton(tr("Look at both"), QDialogButtonBox::AcceptRole);
        open->setObjectName(QStringLiteral("conflictOpen"));
        open->setDefault(true);
    }
    connect(box, &QDialogButtonBox::accepted, this, &QDialog::accept);
    connect(box, &QDialogButtonBox::rejected, this, &QDialog::reject);
    connect(m_list, &QListWidget::itemActivated, this, &QDialog::accept);
    column->addWidget(box);
    new WordFit(this, 520);
}

Uid ConflictList::entity() const
{
    const int row = m_list->currentRow();
    return row >= 0 && row < static_cast<int>(m_lines.size()) ? m_lines[static_cast<std::size_t>(row)].entity : Uid{};
}

} // namespace cupule::ui
