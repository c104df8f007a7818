#include "ui/daysheet/day_view.h"

#include <QApplication>
#include <QComboBox>
#include <QEvent>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QScrollArea>
#include <QScrollBar>
#include <QStackedWidget>
#include <QToolButton>
#include <QVBoxLayout>

#include "ui/bridge/dates.h"
#include "ui/bridge/text.h"
#include "ui/bridge/words.h"
#include "ui/daysheet/hand_in_dialog.h"
#include "ui/daysheet/leaving_part.h"
#include "ui/daysheet/part_head.h"
#include "ui/daysheet/photos_page.h"
#include "ui/daysheet/place_dialog.h"
#include "ui/daysheet/sample_dialog.h"
#include "ui/daysheet/seen_part.h"
#include "ui/daysheet/sign_card.h"
#include "ui/daysheet/tree_part.h"
#include "ui/daysheet/visit_list.h"
#include "ui/theme/theme.h"
#include "ui/widgets/empty_state.h"
#include "ui/widgets/finding_list.h"
#include "ui/widgets/key_button.h"
#include "ui/widgets/message_strip.h"
#include "ui/widgets/pane_row.h"
#include "ui/widgets/role_label.h"

namespace cupule::ui {

DayView::DayView(Workbench& bench, Prompts& prompts, QWidget* parent)
    : Place(parent), m_bench(bench), m_prompts(prompts), m_desk(bench)
{
    setObjectName(QStringLiteral("dayView"));
    m_middle = new QStackedWidget(this);
    m_middle->addWidget(buildPage());
    m_empty = new EmptyState(this);
    m_empty->setTitle(tr("Nothing entered for this day yet"), tr("There are two ways to begin."));
    connect(m_empty->addWay(QStringLiteral("shoot_castanea"), tr("Type up a visit"),
                            tr("One tree after the other. Site, people and date go over to the next."),
                            tr("Start a visit"), {}),
            &QPushButton::clicked, this, &DayView::startVisit);
    connect(m_empty->addWay(QStringLiteral("twig_castanea"), tr("Take in what you have"),
                            tr("A table, the points of a receiver, a folder of photos."), tr("Take in files…"), {}),
            &QPushButton::clicked, this, [this] {
                if (auto* action = window()->findChild<QAction*>(QStringLiteral("import")))
                    action->trigger();
            });
    auto* empty = new QScrollArea(m_middle);
    empty->setWidgetResizable(true);
    empty->setFrameShape(QFrame::NoFrame);
    empty->setWidget(m_empty);
    m_middle->addWidget(empty);
    QWidget* left = buildLeft();
    m_panes = new PaneRow(left, buildChooser(), m_middle, buildChecks(), this);
    m_panes->setObjectName(QStringLiteral("dayPanes"));
    connect(m_panes, &PaneRow::stackedChanged, this, &DayView::refreshPage);
    connect(m_seen, &SeenPart::signShown, this, [this](const QString& sign) {
        m_card->setSign(m_panes->isStacked() ? QString() : sign);
    });
    connect(m_seen, &SeenPart::countAsked, m_card, &SignCard::focusCount);
    m_whole = new QStackedWidget(this);
    m_whole->addWidget(m_panes);
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(0, 0, 0, 0);
    row->addWidget(m_whole);
    for (QWidget* list : {static_cast<QWidget*>(m_list), static_cast<QWidget*>(m_seen->checklist())})
        list->installEventFilter(this);
    buildCommands();
    connect(&m_desk, &DayDesk::dayChanged, this, &DayView::refreshDay);
    connect(&m_desk, &DayDesk::pageChanged, this, &DayView::refreshPage);
    connect(&m_desk, &DayDesk::standingNoticeDue, this, [this] { m_scroll->verticalScrollBar()->setValue(0); });
}

QWidget* DayView::buildLeft()
{
    auto* left = new QWidget(this);
    left->setObjectName(QStringLiteral("dayLeft"));
    auto* column = new QVBoxLayout(left);
    column->setContentsMargins(0, 0, 0, 12);
    column->setSpacing(0);
    auto* head = new QHBoxLayout;
    head->setContentsMargins(14, 8, 4, 8);
    head->setSpacing(0);
    m_dayLabel = new QLabel(left);
    m_dayLabel->setObjectName(QStringLiteral("dayLabel"));
    head->addWidget(m_dayLabel, 1);
    for (const int step : {-1, 1}) {
        auto* button = new QToolButton(left);
        button->setText(step < 0 ? QStringLiteral("‹") : QStringLiteral("›"));
        button->setAccessibleName(step < 0 ? tr("Earlier day") : tr("Later day"));
        button->setToolTip(step < 0 ? tr("Earlier day (Alt+Left)") : tr("Later day (Alt+Right)"));
        button->setMinimumSize(28, 28);
        button->setAutoRaise(true);
        connect(button, &QToolButton::clicked, this, [this, step] {
            takeTyped();
            m_desk.stepDay(step);
        });
        head->addWidget(button);
    }
    column->addLayout(head);
    m_list = new VisitList(left);
    m_list->setObjectName(QStringLiteral("visitList"));
    column->addWidget(m_list, 1);
    m_cameBack = new KeyButton({}, left);
    m_cameBack->setObjectName(QStringLiteral("cameBack"));
    m_cameBack->setCap(QStringLiteral("Ctrl+J"));
    auto* start = new KeyButton(tr("New visit"), left);
    start->setObjectName(QStringLiteral("newVisit"));
    start->setCap(QStringLiteral("Ctrl+N"));
    m_handIn = new KeyButton(tr("Hand in the day…"), left);
    m_handIn->setObjectName(QStringLiteral("handIn"));
    m_handIn->setCap(QStringLiteral("Ctrl+Enter"));
    auto* buttons = new QVBoxLayout;
    buttons->setContentsMargins(12, 10, 12, 0);
    buttons->setSpacing(8);
    buttons->addWidget(m_cameBack);
    buttons->addWidget(start);
    buttons->addWidget(m_handIn);
    column->addLayout(buttons);
    connect(m_list, &VisitList::visitWanted, this, [this](const Uid& visit) {
        takeTyped();
        m_desk.show(visit);
    });
    connect(m_cameBack, &QPushButton::clicked, this, &DayView::showCameBack);
    connect(start, &QPushButton::clicked, this, &DayView::startVisit);
    connect(m_handIn, &QPushButton::clicked, this, &DayView::handIn);
    return left;
}

/// What stands above the page where the list of visits has no room.
QWidget* DayView::buildChooser()
{
    auto* bar = new QWidget(this);
    auto* row = new QHBoxLayout(bar);
    row->setContentsMargins(12, 6, 12, 6);
    m_chooser = new QComboBox(bar);
    m_chooser->setObjectName(QStringLiteral("visitChooser"));
    m_chooser->setAccessibleName(tr("Visits of the day"));
    m_chooser->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    m_chooser->setMinimumContentsLength(12);
    m_chooser->setPlaceholderText(tr("no visit yet"));
    m_chooser->setModel(&m_list->visits());
    auto* start = new KeyButton(tr("New visit"), bar);
    auto* handing = new KeyButton(tr("Hand in…"), bar);
    row->addWidget(m_chooser, 1);
    row->addWidget(start);
    row->addWidget(handing);
    connect(m_chooser, &QComboBox::activated, this, [this](int at) {
        if (const VisitLine* line = m_list->visits().line(m_list->visits().index(at))) {
            takeTyped();
            m_desk.show(line->id);
        }
    });
    connect(start, &QPushButton::clicked, this, &DayView::startVisit);
    connect(handing, &QPushButton::clicked, this, &DayView::handIn);
    return bar;
}

QWidget* DayView::buildPage()
{
    m_scroll = new QScrollArea(this);
    m_scroll->setObjectName(QStringLiteral("visitPage"));
    m_scroll->setWidgetResizable(true);
    m_scroll->setFrameShape(QFrame::NoFrame);
    auto* page = new QWidget(m_scroll);
    page->setBackgroundRole(QPalette::Base);
    page->setAutoFillBackground(true);
    auto* column = new QVBoxLayout(page);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(0);
    m_title = new RoleLabel(TextRole::title, page);
    m_title->setTextFormat(Qt::RichText);
    m_title->setObjectName(QStringLiteral("visitTitle"));
    m_title->setContentsMargins(22, 14, 22, 0);
    m_subtitle = new QLabel(page);
    m_subtitle->setObjectName(QStringLiteral("visitStanding"));
    m_subtitle->setContentsMargins(22, 2, 22, 10);
    m_subtitle->setWordWrap(true);
    m_decided = new QLabel(page);
    m_decided->setObjectName(QStringLiteral("visitDecided"));
    m_decided->setContentsMargins(22, 0, 22, 10);
    m_decided->setWordWrap(true);
    m_decided->setTextFormat(Qt::RichText);
    m_notice = new MessageStrip(page);
    m_notice->setObjectName(QStringLiteral("standingNotice"));
    column->addWidget(m_title);
    column->addWidget(m_subtitle);
    column->addWidget(m_decided);
    column->addWidget(m_notice);
    connect(m_notice, &MessageStrip::buttonPressed, this, [this] {
        if (auto* action = window()->findChild<QAction*>(QStringLiteral("programme")))
            action->trigger();
    });
    m_tree = new TreePart(m_desk, page);
    m_seen = new SeenPart(m_desk, page);
    m_leaving = new LeavingPart(m_desk, page);
    const QString titles[] = {tr("The tree"), tr("What was seen"), tr("Before leaving")};
    QWidget* parts[] = {m_tree, m_seen, m_leaving};
    for (int i = 0; i < 3; ++i) {
        m_heads[i] = new PartHead(i + 1, titles[i], page);
        m_heads[i]->setObjectName(QStringLiteral("partHead%1").arg(i + 1));
        column->addWidget(m_heads[i]);
        column->addWidget(parts[i]);
        connect(m_heads[i], &QAbstractButton::toggled, parts[i], &QWidget::setVisible);
    }
    column->addStretch(1);
    connect(m_seen, &SeenPart::done, this, [this] { m_leaving->focusFirst(); });
    connect(m_tree, &TreePart::placeAsked, this, &DayView::takePlace);
    connect(m_tree, &TreePart::done, this, [this] { m_seen->focusFirst(); });
    connect(m_leaving, &LeavingPart::sampleAsked, this, [this](const QString& id) {
        if (const auto sample = Uid::parse(utf8(id)))
            Q_EMIT m_bench.goToAsked(QStringLiteral("samples"), *sample);
    });
    connect(m_leaving, &LeavingPart::takeSampleAsked, this, &DayView::takeSample);
    connect(&m_desk, &DayDesk::personUnknown, this, &DayView::askPerson);
    m_scroll->setWidget(page);
    return m_scroll;
}

QWidget* DayView::buildChecks()
{
    m_checksPane = new QWidget(this);
    m_checksPane->setObjectName(QStringLiteral("checksPane"));
    auto* column = new QVBoxLayout(m_checksPane);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(0);
    m_checksHead = new QLabel(m_checksPane);
    m_checksHead->setContentsMargins(14, 12, 14, 10);
    m_findings = new FindingList(m_checksPane);
    m_findings->setObjectName(QStringLiteral("findings"));
    m_history = new QLabel(m_checksPane);
    m_history->setObjectName(QStringLiteral("treeBefore"));
    m_history->setWordWrap(true);
    m_history->setContentsMargins(14, 10, 14, 12);
    m_history->setTextFormat(Qt::RichText);
    column->addWidget(m_checksHead);
    column->addWidget(m_findings, 1);
    m_card = new SignCard(m_desk, m_checksPane);
    column->addWidget(m_card);
    column->addWidget(m_history);
    connect(m_findings, &FindingList::fieldAsked, this, &DayView::goToField);
    return m_checksPane;
}

void DayView::showCameBack()
{
    takeTyped();
    m_desk.showCameBack();
}

void DayView::buildCommands()
{
    addCommand(tr("New visit"), QKeySequence(Qt::CTRL | Qt::Key_N), QStringLiteral("day-new-visit"), [this] { startVisit(); });
    addCommand(tr("Hand in the day…"), QKeySequence(Qt::CTRL | Qt::Key_Return), QStringLiteral("day-hand-in"), [this] { handIn(); });
    addCommand(tr("Next visit"), QKeySequence(Qt::CTRL | Qt::Key_PageDown), QStringLiteral("day-next-visit"), [this] {
        takeTyped();
        m_desk.stepVisit(1);
    });
    addCommand(tr("Previous visit"), QKeySequence(Qt::CTRL | Qt::Key_PageUp), QStringLiteral("day-previous-visit"), [this] {
        takeTyped();
        m_desk.stepVisit(-1);
    });
    addCommand(tr("Next visit that came back"), QKeySequence(Qt::CTRL | Qt::Key_J), QStringLiteral("day-came-back"), [this] { showCameBack(); });
    addCommand(tr("Next part"), QKeySequence(Qt::CTRL | Qt::Key_Down), QStringLiteral("day-next-part"), [this] {
        if (m_tree->isAncestorOf(QApplication::focusWidget()))
            m_seen->focusFirst();
        else if (m_seen->isAncestorOf(QApplication::focusWidget()) && !m_seen->checklist()->hasFocus())
            m_seen->goTo(QStringLiteral("observations"));
        else if (m_seen->isAncestorOf(QApplication::focusWidget()))
            m_leaving->focusFirst();
        else
            m_tree->focusFirst();
    });
    addCommand(tr("Previous part"), QKeySequence(Qt::CTRL | Qt::Key_Up), QStringLiteral("day-previous-part"), [this] {
        if (m_leaving->isAncestorOf(QApplication::focusWidget()))
            m_seen->goTo(QStringLiteral("observations"));
        else if (m_seen->checklist()->hasFocus())
            m_seen->focusFirst();
        else
            m_tree->focusFirst();
    });
    addCommand(tr("Earlier day"), QKeySequence(Qt::ALT | Qt::Key_Left), QStringLiteral("day-earlier"), [this] {
        takeTyped();
        m_desk.stepDay(-1);
    });
    addCommand(tr("Later day"), QKeySequence(Qt::ALT | Qt::Key_Right), QStringLiteral("day-later"), [this] {
        takeTyped();
        m_desk.stepDay(1);
    });
    addCommand(tr("Photos of the day (P)"), QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_P), QStringLiteral("day-photos"),
               [this] { showPhotos(!photosShown()); });
    addCommand(tr("Take the position from…"), QKeySequence(Qt::Key_F4), QStringLiteral("day-place"), [this] { takePlace(); });
    addCommand(tr("Take a sample…"), {}, QStringLiteral("day-take-sample"), [this] { takeSample(); });
    addCommand(tr("Strike this visit out…"), {}, QStringLiteral("day-strike-out"), [this] { strikeOut(); });
}

void DayView::enter()
{
    m_desk.refresh();
}

bool DayView::leave()
{
    if (m_bench.session() == nullptr)
        return true;
    takeTyped();
    m_desk.leave();
    return true;
}

/// Fields save when they lose the focus; a key that leaves the visit must not skip that.
void DayView::takeTyped()
{
    if (QWidget* focus = QApplication::focusWidget(); focus != nullptr && m_scroll->isAncestorOf(focus)) {
        focus->clearFocus();
        focus->setFocus(Qt::OtherFocusReason);
    }
    m_leaving->takeNote();
}

bool DayView::photosShown() const
{
    return m_whole->currentIndex() == 1;
}

void DayView::showPhotos(bool shown)
{
    if (shown == photosShown() || m_bench.session() == nullptr)
        return;
    if (shown)
        takeTyped();
    if (m_photos == nullptr) {   // made when it is first asked for: most days begin without it
        m_photos = new PhotosPage(m_desk, m_bench, m_prompts, m_whole);
        connect(m_photos, &PhotosPage::backAsked, this, [this] { showPhotos(false); });
        m_whole->addWidget(m_photos);
    }
    // what is hidden asks for no room: it is not laid out anew when the text grows
    for (QWidget* page : {static_cast<QWidget*>(m_panes), static_cast<QWidget*>(m_photos)}) {
        const auto policy = (page == m_photos) == shown ? QSizePolicy::Expanding : QSizePolicy::Ignored;
        page->setSizePolicy(policy, policy);
    }
    m_whole->setCurrentIndex(shown ? 1 : 0);
    if (shown) {
        m_photos->enter();
        return;
    }
    m_photos->leave();
    nextPane(1);
}

bool DayView::takePhotos(const QStringList& paths)
{
    showPhotos(true);
    m_photos->takeIn(paths);
    return true;
}

/// A list would look for a line that begins with the letter.
bool DayView::eventFilter(QObject* watched, QEvent* event)
{
    if (event->type() == QEvent::KeyPress && static_cast<QKeyEvent*>(event)->key() == Qt::Key_P) {
        keyPressEvent(static_cast<QKeyEvent*>(event));
        return true;
    }
    return Place::eventFilter(watched, event);
}

/// Fields take the letter themselves; it comes here only where nothing is typed.
void DayView::keyPressEvent(QKeyEvent* event)
{
    if (event->key() == Qt::Key_P && event->modifiers() == Qt::NoModifier)
        showPhotos(true);
    else
        Place::keyPressEvent(event);
}

void DayView::goTo(const Uid& noun)
{
    showPhotos(false);
    m_desk.show(noun);
}

bool DayView::shows(const Uid& noun) const
{
    return m_bench.session() != nullptr && visitPage(*m_bench.session(), noun).has_value();
}

void DayView::nextPane(int step)
{
    if (photosShown())
        return m_photos->nextPane(step);
    if (m_middle->currentIndex() == 1) {
        m_empty->findChild<QPushButton*>()->setFocus(Qt::OtherFocusReason);
        return;
    }
    const QWidget* focus = QApplication::focusWidget();
    if (step > 0 && (focus == nullptr || m_list->hasFocus() || !isAncestorOf(focus)))
        m_tree->focusFirst();
    else
        focusNextOf({m_list, m_scroll, m_findings}, step);
}

void DayView::nextFinding()
{
    showPhotos(false);
    if (!m_findings->hasFocus() && m_findings->model()->rowCount() > 0 && !m_findings->currentIndex().isValid()) {
        m_findings->setFocus(Qt::ShortcutFocusReason);
        m_findings->setCurrentIndex(m_findings->model()->index(0, 0));
        return;
    }
    m_findings->next();
}

void DayView::startVisit()
{
    takeTyped();
    showPhotos(false);
    m_desk.startVisit();
    m_scroll->verticalScrollBar()->setValue(0);
    m_tree->focusFirst();
}

void DayView::handIn()
{
    takeTyped();
    const auto page = m_desk.handInPage();
    if (!page)
        return;
    HandInDialog dialog(*page, m_desk.pack(), this);
    if (dialog.exec() == QDialog::Accepted)
        m_desk.handIn();
}

/// The position of the visit from its tree, a photo or a point of a receiver.
void DayView::takePlace()
{
    takeTyped();
    if (!m_desk.mayEdit())
        return;
    const auto readPoints = [this] {
        const QString path = m_prompts.filesToOpen(this, tr("Points of a receiver"), QString(), tr("GPX files (*.gpx)")).value(0);
        return path.isEmpty() ? std::vector<PlaceOffer>{} : m_desk.pointOffers(path);
    };
    PlaceDialog dialog(m_desk.mapScene(), m_desk.placeOffers(), readPoints, this);
    if (dialog.exec() == QDialog::Accepted && dialog.taken() != nullptr)
        m_desk.takePosition(dialog.taken()->position);
    m_tree->goTo(QStringLiteral("position"));
}

void DayView::takeSample()
{
    takeTyped();
    if (!m_desk.page())
        return;
    SampleDialog dialog(m_desk.pack(),
                        [this](const Sample& wanted, bool already) { return m_desk.openSample(wanted, already); }, this);
    dialog.propose(m_desk.believedHost(), m_desk.waitingLabels());
    if (dialog.exec() == QDialog::Accepted)
        Q_EMIT m_bench.goToAsked(QStringLiteral("samples"), dialog.opened());
}

/// A companion nobody has put down yet: the name once, the code from then on.
void DayView::askPerson(const QString& code)
{
    const QString name = m_prompts.line(this, tr("Somebody new"),
                                        tr("“%1” is not known here yet. What is the name? Leave it empty if it was mistyped.").arg(code),
                                        QString());
    if (!name.isEmpty())
        m_desk.addPerson(code, name);
}

void DayView::strikeOut()
{
    if (!m_desk.page())
        return;
    const QString reason = m_prompts.line(this, tr("Strike this visit out"),
                                          tr("Why? It stays in the journal and is counted nowhere."), QString());
    if (!reason.isEmpty())
        m_desk.strikeOut(reason);
}

void DayView::goToField(const QString& field)
{
    if (field.startsWith(QStringLiteral("photos")))
        return showPhotos(true);
    for (PartHead* head : m_heads)
        head->setChecked(true);
    if (m_tree->goTo(field) || m_seen->goTo(field) || m_leaving->goTo(field))
        if (QWidget* focus = QApplication::focusWidget(); focus != nullptr && m_scroll->isAncestorOf(focus))
            m_scroll->ensureWidgetVisible(focus, 40, 80);
}

QStringList DayView::help() const
{
    return {tr("Ctrl+N starts a visit. Type the label of the tree; Enter takes it or makes a new one."),
            tr("How you looked and the cleaning are typed anew for each tree; a letter answers a list and goes on. F7 answers "
               "every open gall line in season with not seen, once the minutes are typed."),
            tr("In the list of signs 1 is seen, 2 not seen, 3 could not be judged, 0 takes the answer back; arrows move."),
            tr("F4 takes the position from the tree, a photo or a point of a GPX file, on a map."),
            tr("Ctrl+Down and Ctrl+Up go from part to part, Ctrl+Page Down and Ctrl+Page Up from visit to visit."),
            tr("P shows the photos of the day: which visits are proposed for those in the tray, the camera’s clock, likely copies."),
            tr("Ctrl+Enter shows what can be handed in today and what stays, and why.")};
}

} // namespace cupule::ui
