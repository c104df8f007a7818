#include "ui/daysheet/tree_part.h"

#include <algorithm>

#include <QAbstractItemView>
#include <QComboBox>
#include <QCompleter>
#include <QGridLayout>
#include <QItemSelectionModel>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QStandardItemModel>
#include <QVBoxLayout>

#include "ui/bridge/dates.h"
#include "ui/bridge/text.h"
#include "ui/bridge/words.h"
#include "ui/bridge/words_trees.h"
#include "ui/daysheet/character_row.h"
#include "ui/daysheet/day_desk.h"
#include "ui/map/small_map.h"
#include "ui/theme/theme.h"
#include "ui/widgets/date_edit.h"
#include "ui/widgets/key_button.h"
#include "ui/widgets/position_edit.h"
#include "ui/widgets/role_label.h"

namespace cupule::ui {

namespace {

constexpr int uidRole = Qt::UserRole + 1;
constexpr int labelRole = Qt::UserRole + 2; // what stands in the field once the line is chosen

QLabel* caption(const QString& words, QWidget* buddy, QWidget* parent)
{
    auto* label = new RoleLabel(TextRole::caption, words, parent);
    label->setBuddy(buddy);
    return label;
}

} // namespace

TreePart::TreePart(DayDesk& desk, QWidget* parent) : QWidget(parent), m_desk(desk)
{
    setObjectName(QStringLiteral("treePart"));
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(22, 4, 22, 12);
    column->setSpacing(8);
    buildFields();
    m_verdict = new QLabel(this);
    m_verdict->setObjectName(QStringLiteral("hostVerdict"));
    m_verdict->setWordWrap(true);
    m_verdict->setTextInteractionFlags(Qt::TextSelectableByMouse);
    m_rows = new QVBoxLayout;
    m_rows->setSpacing(4);
    m_more = new QComboBox(this);
    m_more->setObjectName(QStringLiteral("moreCharacters"));
    m_more->setAccessibleName(tr("Another character"));
    column->addLayout(m_rows);
    column->addWidget(m_more, 0, Qt::AlignLeft);
    column->addWidget(m_verdict);
    connect(m_more, &QComboBox::activated, this, [this](int index) {
        const QString id = m_more->itemData(index).toString();
        if (id.isEmpty())
            return;
        m_asked.append(id);
        refreshKey();
        goTo(QStringLiteral("characters/") + id);
    });
}

void TreePart::buildFields()
{
    m_label = new QLineEdit(this);
    m_label->setObjectName(QStringLiteral("treeLabel"));
    m_label->setPlaceholderText(tr("label on the tree, or part of it"));
    m_hits = new QStandardItemModel(this);
    m_completer = new QCompleter(m_hits, this);
    m_completer->setCompletionMode(QCompleter::UnfilteredPopupCompletion);
    m_completer->setCompletionRole(labelRole);
    m_label->setCompleter(m_completer);
    m_labelHint = new QLabel(this);
    m_labelHint->setObjectName(QStringLiteral("treeHint"));
    m_labelHint->setWordWrap(true);
    m_site = new QComboBox(this);
    m_site->setObjectName(QStringLiteral("site"));
    m_site->setEditable(true);
    m_site->setInsertPolicy(QComboBox::NoInsert);
    m_date = new DateEdit(this);
    m_date->setObjectName(QStringLiteral("date"));
    m_time = new TimeEdit(this);
    m_time->setObjectName(QStringLiteral("time"));
    m_observer = new RoleLabel(TextRole::caption, this, Tone::second);
    m_companions = new QLineEdit(this);
    m_companions->setObjectName(QStringLiteral("companions"));
    m_companions->setPlaceholderText(tr("codes, separated by commas"));
    m_position = new PositionEdit(this);
    m_position->setObjectName(QStringLiteral("position"));
    m_position->setReader([this](const QString& typed) { return m_desk.readPosition(typed); });
    auto* from = new KeyButton(tr("Position from…"), this);
    from->setObjectName(QStringLiteral("placeFrom"));
    from->setCap(QStringLiteral("F4"));
    from->setFocusPolicy(Qt::ClickFocus); // F4 does it; Tab stays short on the way through a visit
    from->setToolTip(tr("The position from the tree, a photo or a point of a receiver"));
    m_map = new SmallMap(this);
    m_map->setCompact(true);

    auto* grid = new QGridLayout;
    grid->setHorizontalSpacing(12);
    grid->setVerticalSpacing(2);
    grid->addWidget(caption(tr("tree"), m_label, this), 0, 0);
    grid->addWidget(caption(tr("site"), m_site, this), 0, 1);
    grid->addWidget(caption(tr("date"), m_date, this), 0, 2);
    grid->addWidget(caption(tr("time"), m_time, this), 0, 3);
    grid->addWidget(m_label, 1, 0);
    grid->addWidget(m_site, 1, 1);
    grid->addWidget(m_date, 1, 2);
    grid->addWidget(m_time, 1, 3);
    grid->addWidget(m_labelHint, 2, 0, 1, 4);
    grid->addWidget(caption(tr("position, in any notation"), m_position->field(), this), 3, 0, 1, 2);
    grid->addWidget(m_position, 4, 0, 1, 2, Qt::AlignTop);
    grid->addWidget(caption(tr("with whom"), m_companions, this), 5, 0, 1, 2);
    grid->addWidget(m_companions, 6, 0, 1, 2, Qt::AlignTop);
    grid->addWidget(m_observer, 7, 0, 1, 2, Qt::AlignTop);
    grid->addWidget(m_map, 3, 2, 4, 2);
    grid->addWidget(from, 7, 2, 1, 2);
    grid->setRowStretch(4, 1);
    grid->setColumnStretch(0, 3);
    grid->setColumnStretch(1, 3);
    grid->setColumnStretch(2, 2);
    grid->setColumnStretch(3, 1);
    static_cast<QVBoxLayout*>(layout())->addLayout(grid);

    connect(m_label, &QLineEdit::textEdited, this, &TreePart::refreshHits);
    m_completer->popup()->installEventFilter(this);
    connect(m_label, &QLineEdit::returnPressed, this, [this] {
        takeLabel(true);
        goOn();
    });
    connect(m_completer, qOverload<const QModelIndex&>(&QCompleter::activated), this, [this](const QModelIndex& index) {
        m_label->setModified(false);
        const auto id = Uid::parse(utf8(index.data(uidRole).toString()));
        const QString label = index.data(labelRole).toString();
        if (id && !id->isNull())
            m_desk.chooseTree(*id);
        else if (!takeExact(label)) // Enter may have reached the field too and made it already
            m_desk.makeTree(label);
        goOn();
    });
    connect(m_label, &QLineEdit::editingFinished, this, [this] {
        if (m_label->isModified() && !m_completer->popup()->isVisible())
            takeLabel(m_label->hasFocus());
    });
    const auto takeSite = [this] { m_desk.chooseSite(m_site->currentText()); };
    connect(m_site, &QComboBox::activated, this, takeSite);
    connect(m_site->lineEdit(), &QLineEdit::editingFinished, this, [this, takeSite] {
        if (m_site->lineEdit()->isModified()) {
            m_site->lineEdit()->setModified(false);
            takeSite();
        }
    });
    connect(m_date, &DateEdit::dateChanged, this, [this](const QDate& date) {
        if (date.isValid())
            m_desk.edit(tr("date"), [&](Visit& visit) { visit.date = fromDate(date); });
    });
    connect(m_time, &TimeEdit::timeChanged, this, [this](const QTime& time) {
        m_desk.edit(tr("time"), [&](Visit& visit) {
            visit.time = time.isValid() ? std::optional<LocalTime>(fromTime(time)) : std::nullopt;
        });
    });
    connect(m_companions, &QLineEdit::editingFinished, this, [this] {
        if (m_companions->isModified()) {
            m_companions->setModified(false);
            m_desk.setCompanions(m_companions->text());
        }
    });
    connect(from, &QPushButton::clicked, this, &TreePart::placeAsked);
    connect(m_position, &PositionEdit::finished, this, [this](const QString& typed) { m_desk.setPosition(typed); });
}

bool TreePart::takeExact(const QString& typed)
{
    for (const TreeHit& hit : m_desk.findTrees(typed)) {
        if (text(hit.tree.label).compare(typed, Qt::CaseInsensitive) == 0) {
            m_label->setModified(false);
            m_desk.chooseTree(hit.tree.id);
            return true;
        }
    }
    return false;
}

/// A label in full takes its tree. One that no tree has makes a new one only where nothing like it was found: a part of a
/// label must not become a tree by accident. Whoever has left the field gets no list that takes the next keys.
void TreePart::takeLabel(bool inField)
{
    const QString typed = m_label->text().trimmed();
    if (typed.isEmpty()) {
        m_label->setModified(false);
        return;
    }
    if (takeExact(typed))
        return;
    if (m_desk.findTrees(typed).empty()) {
        m_label->setModified(false);
        m_desk.makeTree(typed);
        return;
    }
    m_labelHint->setText(tr("No tree is called “%1”. Choose one with Down and Enter, or the last line for a new tree.").arg(typed));
    m_labelHint->show();
    if (inField)
        refreshHits(typed);
}

/// Enter with nothing chosen in the list of trees goes to its first line instead of guessing. So does Down: Qt would go to the
/// line that is what was typed, the one that makes a new tree.
bool TreePart::eventFilter(QObject* watched, QEvent* event)
{
    QAbstractItemView* list = m_completer->popup();
    if (watched == list && event->type() == QEvent::KeyPress) {
        const int key = static_cast<QKeyEvent*>(event)->key();
        const bool enter = key == Qt::Key_Return || key == Qt::Key_Enter;
        if ((enter && !list->currentIndex().isValid()) || (key == Qt::Key_Down && !list->selectionModel()->hasSelection())) {
            list->setCurrentIndex(m_completer->completionModel()->index(0, 0));
            return true;
        }
    }
    return QWidget::eventFilter(watched, event);
}

/// Where the hand goes after the tree: to the position of a tree that has none, to the first character that is not
/// answered, or past this part where nothing is left to ask.
void TreePart::goOn()
{
    if (!m_desk.page() || !m_desk.page()->tree)
        return;
    const VisitPage& page = *m_desk.page();
    if (!page.tree->position && !page.visit.position)
        m_position->field()->setFocus(Qt::OtherFocusReason);
    else if (page.host.answer == HostAnswer::cannotTell && !m_characters.isEmpty())
        goToOpenCharacter();
    else
        Q_EMIT done();
}

void TreePart::goToOpenCharacter()
{
    for (CharacterRow* row : m_characters) {
        if (m_desk.seen(row->character()) == nullptr) {
            row->focusFirst();
            return;
        }
    }
    m_more->setFocus(Qt::OtherFocusReason);
}

void TreePart::refreshHits(const QString& typed)
{
    m_hits->clear();
    const QString wanted = typed.trimmed();
    if (wanted.isEmpty())
        return;
    int exact = -1;
    for (const TreeHit& hit : m_desk.findTrees(wanted)) {
        QStringList words{text(hit.tree.label)};
        if (!hit.siteName.empty())
            words << text(hit.siteName);
        if (hit.metres)
            words << tr("%1 away").arg(distanceText(*hit.metres));
        words << (hit.lastVisit ? tr("last looked at on %1").arg(plainDate(*hit.lastVisit, m_desk.day().year()))
                                : tr("not looked at yet"));
        if (!hit.tree.fate.empty())
            words << fateText(hit.tree.fate, hit.tree.fateDate);
        auto* item = new QStandardItem(words.join(QStringLiteral(", ")));
        item->setData(text(hit.tree.id.text()), uidRole);
        item->setData(text(hit.tree.label), labelRole);
        m_hits->appendRow(item);
        if (exact < 0 && text(hit.tree.label).compare(wanted, Qt::CaseInsensitive) == 0)
            exact = m_hits->rowCount() - 1;
    }
    if (exact < 0) {
        auto* item = new QStandardItem(tr("New tree “%1”").arg(wanted));
        item->setData(wanted, labelRole);
        m_hits->appendRow(item);
    }
    m_completer->complete();
    const int chosen = exact >= 0 ? exact : m_hits->rowCount() == 1 ? 0 : -1;
    if (chosen >= 0)
        m_completer->popup()->setCurrentIndex(m_completer->completionModel()->index(chosen, 0));
}

void TreePart::refresh()
{
    if (!m_desk.page())
        return;
    const QString visit = text(m_desk.page()->visit.id.text());
    if (visit != m_visit) {
        m_visit = visit;
        m_asked.clear();
        m_label->setModified(false);
    }
    refreshFields();
    refreshKey();
}

void TreePart::refreshFields()
{
    const VisitPage& page = *m_desk.page();
    const bool edit = m_desk.mayEdit();
    if (!m_label->isModified())
        m_label->setText(page.tree ? text(page.tree->label) : QString());
    m_label->setReadOnly(!edit);
    const QString fate = page.tree ? fateText(page.tree->fate, page.tree->fateDate) : QString();
    m_labelHint->setText(!page.tree       ? tr("Type the label, choose the tree, or make a new one with Enter.")
                         : fate.isEmpty() ? QString()
                                          : tr("Of this tree it was said: %1.").arg(fate));
    m_labelHint->setVisible(!m_labelHint->text().isEmpty());
    m_site->blockSignals(true);
    m_site->clear();
    m_site->addItem(tr("no site"));
    for (const Site& site : m_desk.sites())
        m_site->addItem(text(site.name));
    m_site->setCurrentText(page.site ? text(page.site->name) : tr("no site"));
    m_site->setEnabled(edit && page.tree.has_value());
    m_site->blockSignals(false);
    m_date->setToday(toDate(m_desk.day()));
    if (!m_date->hasFocus())
        m_date->setDate(toDate(page.visit.date));
    if (!m_time->hasFocus())
        m_time->setTime(page.visit.time ? toTime(*page.visit.time) : QTime());
    m_date->setReadOnly(!edit);
    m_time->setReadOnly(!edit);
    QStringList codes;
    for (const Person& person : page.companions)
        codes << text(person.code);
    if (!m_companions->isModified())
        m_companions->setText(codes.join(QStringLiteral(", ")));
    m_companions->setReadOnly(!edit);
    m_observer->setText(tr("seen by %1").arg(text(page.observer.name.empty() ? page.observer.code : page.observer.name)));
    if (!m_position->field()->hasFocus())
        m_position->setText(m_desk.positionTyped());
    m_position->setReadOnly(!edit);
    findChild<KeyButton*>(QStringLiteral("placeFrom"))->setEnabled(edit);
    m_map->setScene(m_desk.mapScene());
}

void TreePart::refreshKey()
{
    const VisitPage& page = *m_desk.page();
    const Pack& pack = m_desk.pack();
    QStringList wanted;
    const auto want = [&](const QString& id) {
        if (!wanted.contains(id))
            wanted << id;
    };
    // leaf arrangement and leaf type first while there are leaves; then what was answered; then the best next one
    const int month = page.visit.date.month();
    for (const Character& character : pack.characters) {
        const auto visible = character.visible.find(page.season.region);
        const bool now = visible != character.visible.end() && (visible->second >> (month - 1) & 1) != 0;
        if (now && character.decidesHost && wanted.size() < 2)
            want(text(character.id));
    }
    for (const CharacterSeen& seen : page.visit.characters)
        want(text(seen.character));
    for (const QString& id : m_asked)
        want(id);
    QString why;
    QString next;
    if (!page.host.next.empty() && page.host.answer == HostAnswer::cannotTell && !page.visit.characters.empty()) {
        next = text(page.host.next.front().character);
        why = nextCharacterText(page.host.next.front(), page.host, pack);
        want(next);
    }
    QStringList built = wanted;
    built << next + why;
    if (built != m_shownKey) {
        m_shownKey = built;
        QString focused;
        for (CharacterRow* row : m_characters) {
            if (row->isAncestorOf(focusWidget()))
                focused = row->character();
            m_rows->removeWidget(row);
            row->hide();
            row->deleteLater();
        }
        m_characters.clear();
        for (const QString& id : wanted)
            addCharacter(id, id == next ? why : QString());
        if (!focused.isEmpty())
            goTo(QStringLiteral("characters/") + focused);
    }
    for (CharacterRow* row : m_characters)
        row->setSeen(m_desk.seen(row->character()), m_desk.mayEdit());
    m_more->clear();
    m_more->addItem(tr("Another character…"));
    for (const Character& character : pack.characters)
        if (character.decidesHost && !wanted.contains(text(character.id)))
            m_more->addItem(sentenceStart(text(character.name)), text(character.id));
    m_more->setEnabled(m_desk.mayEdit());
    chainTabs();
    m_summary = sentenceStart(hostWord(page.host.answer));
    QString verdict = page.host.evidence.empty() ? tr("Whether it is a host shows once you say what you see.") : hostText(page.host, pack);
    if (page.visit.characters.empty() && !page.host.evidence.empty())
        verdict += QLatin1Char(' ') + tr("This is known from earlier visits.");
    m_verdict->setText(verdict);
    m_verdict->setFont(roleFont(TextRole::strong, *this));
}

/// Rows come and go; Tab must still run down the page.
void TreePart::chainTabs()
{
    QWidget* last = m_label;
    const auto next = [&last](QWidget* widget) {
        setTabOrder(last, widget);
        last = widget;
    };
    for (QWidget* field : std::initializer_list<QWidget*>{m_site, m_date, m_time, m_position, m_companions})
        next(field);
    for (const CharacterRow* row : m_characters)
        for (QWidget* stop : row->stops())
            next(stop);
    next(m_more);
}

void TreePart::addCharacter(const QString& id, const QString& why)
{
    const Character* character = m_desk.pack().character(utf8(id));
    if (character == nullptr)
        return;
    auto* row = new CharacterRow(*character, why, this);
    connect(row, &CharacterRow::chosen, this, [this](const QString& which, const QString& state) {
        m_desk.character(which, state);
        if (!state.isEmpty() && m_desk.page() && m_desk.page()->host.answer == HostAnswer::cannotTell)
            goToOpenCharacter();
    });
    connect(row, &CharacterRow::valueTyped, &m_desk, &DayDesk::characterValue);
    connect(row, &CharacterRow::groundSaid, &m_desk, &DayDesk::characterOnGround);
    m_rows->addWidget(row);
    m_characters.append(row);
}

void TreePart::focusFirst()
{
    m_label->setFocus(Qt::OtherFocusReason);
    m_label->selectAll();
}

bool TreePart::goTo(const QString& field)
{
    const QStringList parts = field.split(QLatin1Char('/'));
    const QString head = parts.value(0);
    if (head == QStringLiteral("tree"))
        focusFirst();
    else if (head == QStringLiteral("site"))
        m_site->setFocus(Qt::OtherFocusReason);
    else if (head == QStringLiteral("date") || head.startsWith(QStringLiteral("leafing"))) // the season goes by the date
        m_date->setFocus(Qt::OtherFocusReason);
    else if (head == QStringLiteral("time"))
        m_time->setFocus(Qt::OtherFocusReason);
    else if (head == QStringLiteral("position"))
        m_position->field()->setFocus(Qt::OtherFocusReason);
    else if (head == QStringLiteral("companions") || head == QStringLiteral("observer"))
        m_companions->setFocus(Qt::OtherFocusReason);
    else if (head == QStringLiteral("characters") || head == QStringLiteral("host")) {
        for (CharacterRow* row : m_characters) {
            if (parts.size() < 2 || row->character() == parts[1]) {
                row->focusFirst();
                return true;
            }
        }
        m_more->setFocus(Qt::OtherFocusReason);
    } else {
        return false;
    }
    return true;
}

} // namespace cupule::ui
