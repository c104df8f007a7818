#include "ui/daysheet/photos_page.h"

#include <algorithm>
#include <cmath>

#include <QGridLayout>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QProgressBar>
#include <QScrollArea>
#include <QSplitter>
#include <QStackedWidget>
#include <QVBoxLayout>

#include "ui/bridge/dates.h"
#include "ui/bridge/text.h"
#include "ui/daysheet/evidence_dialog.h"
#include "ui/daysheet/photo_list.h"
#include "ui/daysheet/photo_pane.h"
#include "ui/daysheet/photo_words.h"
#include "ui/figures/figure_names.h"
#include "ui/photos/measure_dialog.h"
#include "ui/widgets/clock_edit.h"
#include "ui/widgets/empty_state.h"
#include "ui/widgets/key_button.h"
#include "ui/widgets/message_strip.h"
#include "ui/widgets/role_label.h"

namespace cupule::ui {

PhotosPage::PhotosPage(DayDesk& day, Workbench& bench, Prompts& prompts, QWidget* parent)
    : QWidget(parent), m_day(day), m_bench(bench), m_prompts(prompts), m_desk(day, bench)
{
    setObjectName(QStringLiteral("photosPage"));
    setGround(*this, "page");
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(0);
    column->addWidget(makeHead());
    m_strip = new MessageStrip(this);
    m_strip->setObjectName(QStringLiteral("photosStrip"));
    column->addWidget(m_strip);
    column->addWidget(makeClock());
    m_stack = new QStackedWidget(this);
    m_stack->addWidget(makeBody());
    m_stack->addWidget(makeEmpty());
    column->addWidget(m_stack, 1);
    connect(&m_desk, &PhotosDesk::changed, this, &PhotosPage::showDesk);
    connect(&m_desk, &PhotosDesk::busyChanged, this, &PhotosPage::showBusy);
    connect(&m_desk, &PhotosDesk::told, this,
            [this](const QString& words) { m_strip->show(MessageStrip::Kind::done, words, QString()); });
    connect(&m_bench.jobs(), &Jobs::progressed, this, [this](qint64 done, qint64 whole) {
        m_bar->setRange(0, static_cast<int>(whole));
        m_bar->setValue(static_cast<int>(done));
        m_busyWords->setText(whole > 0 ? tr("%1, %2 of %3").arg(m_bench.jobs().title()).arg(done).arg(whole) : m_bench.jobs().title());
    });
    showBusy();
}

QWidget* PhotosPage::makeHead()
{
    auto* head = new QWidget(this);
    auto* row = new QHBoxLayout(head);
    row->setContentsMargins(22, 12, 16, 8);
    auto* words = new QVBoxLayout;
    words->setSpacing(2);
    m_title = new RoleLabel(TextRole::title, head);
    m_title->setObjectName(QStringLiteral("photosTitle"));
    m_title->setWordWrap(true);
    m_counts = new RoleLabel(TextRole::body, head, Tone::second);
    m_counts->setObjectName(QStringLiteral("photosCounts"));
    m_counts->setWordWrap(true);
    m_counts->setMinimumHeight(1);   // it may take what lines it needs, but asks for none in a low window
    words->addWidget(m_title);
    words->addWidget(m_counts);
    row->addLayout(words, 1);
    m_busy = new QWidget(head);
    m_busy->hide();
    auto* busy = new QVBoxLayout(m_busy);
    busy->setContentsMargins(0, 0, 0, 0);
    m_busyWords = new QLabel(m_busy);
    m_busyWords->setWordWrap(true);
    m_bar = new QProgressBar(m_busy);
    m_bar->setTextVisible(false);
    auto* stop = new KeyButton(tr("Stop"), m_busy);
    stop->setObjectName(QStringLiteral("photosStop"));
    connect(stop, &QPushButton::clicked, &m_bench.jobs(), &Jobs::cancel);
    auto* bar = new QHBoxLayout;
    bar->addWidget(m_bar, 1);
    bar->addWidget(stop);
    busy->addWidget(m_busyWords);
    busy->addLayout(bar);
    row->addWidget(m_busy);
    m_takeIn = new KeyButton(tr("Take in photos…"), head);
    m_takeIn->setObjectName(QStringLiteral("photosTakeIn"));
    m_takeIn->setCap(QStringLiteral("O"));
    auto* back = new KeyButton(tr("Back to the visit"), head);
    back->setCap(tr("Esc"));
    row->addWidget(m_takeIn);
    row->addWidget(back);
    connect(m_takeIn, &QPushButton::clicked, this, &PhotosPage::askFiles);
    connect(back, &QPushButton::clicked, this, &PhotosPage::backAsked);
    return head;
}

QWidget* PhotosPage::makeClock()
{
    m_clockRow = new QWidget(this);
    setGround(*m_clockRow, "panel");
    auto* row = new QHBoxLayout(m_clockRow);
    row->setContentsMargins(22, 6, 16, 6);
    row->setSpacing(10);
    auto* label = new RoleLabel(TextRole::strong, tr("The camera’s clock is ahead by"), m_clockRow);
    m_clock = new ClockEdit(m_clockRow);
    m_clock->setObjectName(QStringLiteral("photosClock"));
    m_clock->setAccessibleName(tr("How far the camera’s clock is ahead, hours, minutes and seconds"));
    m_clock->setToolTip(tr("Hours, minutes and seconds; minus where it is behind. Up and down change the part at the cursor."));
    label->setBuddy(m_clock);
    m_clockWords = new RoleLabel(TextRole::caption, m_clockRow, Tone::second);
    m_clockWords->setObjectName(QStringLiteral("photosClockWords"));
    m_clockWords->setWordWrap(true);
    m_clockWords->setMinimumHeight(1);
    m_asEstimated = new KeyButton(tr("As estimated"), m_clockRow);
    m_asEstimated->setObjectName(QStringLiteral("photosAsEstimated"));
    auto* key = new KeyButton(tr("Change"), m_clockRow);
    key->setCap(QStringLiteral("K"));
    row->addWidget(label);
    row->addWidget(m_clock);
    row->addWidget(key);
    row->addWidget(m_clockWords, 1);
    row->addWidget(m_asEstimated);
    m_clock->setFixedWidth(m_clock->fontMetrics().horizontalAdvance(QStringLiteral("+0000:00:00")) + 24);
    connect(key, &QPushButton::clicked, this, [this] {
        m_clock->setFocus(Qt::ShortcutFocusReason);
        m_clock->setCursorPosition(static_cast<int>(m_clock->text().lastIndexOf(QLatin1Char(':'))));   // the minutes
    });
    connect(m_clock, &ClockEdit::secondsTyped, this, [this](int seconds) { m_desk.setSecondsAhead(seconds); });
    connect(m_asEstimated, &QPushButton::clicked, this, [this] {
        m_desk.setSecondsAhead(std::nullopt);
        m_list->setFocus(Qt::OtherFocusReason);
    });
    m_actions.push_back({key, Qt::Key_K, [this] { return m_clockRow->isVisible(); }, [key] { key->click(); }});
    return m_clockRow;
}

QWidget* PhotosPage::makeBody()
{
    auto* split = new QSplitter(this);
    split->setChildrenCollapsible(false);
    m_list = new PhotoList(m_desk, split);
    split->addWidget(m_list);
    split->addWidget(makeSide());
    split->setStretchFactor(0, 2);
    split->setStretchFactor(1, 3);
    split->setSizes({480, 720});
    connect(m_list, &PhotoList::currentMoved, this, &PhotosPage::showCurrent);
    connect(m_list, &QListView::doubleClicked, this, &PhotosPage::lookLarge);
    return split;
}

QWidget* PhotosPage::makeSide()
{
    auto* side = new QWidget(this);
    auto* column = new QVBoxLayout(side);
    column->setContentsMargins(16, 12, 16, 12);
    m_pane = new PhotoPane(side);
    m_name = new RoleLabel(TextRole::heading, side);
    m_details = new RoleLabel(TextRole::body, side);
    m_details->setObjectName(QStringLiteral("photoDetails"));
    m_details->setWordWrap(true);
    m_details->setAlignment(Qt::AlignTop | Qt::AlignLeft);
    m_words = new QScrollArea(side);
    m_words->setWidgetResizable(true);
    m_words->setFrameShape(QFrame::NoFrame);
    m_words->setFocusPolicy(Qt::NoFocus);
    m_words->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    m_words->viewport()->installEventFilter(this);
    auto* words = new QWidget(m_words);
    setGround(*words, "page");
    m_buttons = new QWidget(words);
    auto* text = new QVBoxLayout(words);
    text->setContentsMargins(0, 0, 0, 0);
    text->addWidget(m_name);
    text->addWidget(m_details);
    text->addStretch(1);
    text->addWidget(m_buttons);
    m_words->setWidget(words);
    auto* grid = new QGridLayout(m_buttons);
    grid->setContentsMargins(0, 4, 0, 0);
    grid->setColumnStretch(0, 1);
    column->addWidget(m_pane, 1);
    column->addWidget(m_words, 1);
    addTrayActions();
    addPhotoActions();
    connect(m_pane, &PhotoPane::pressed, this, &PhotosPage::lookLarge);
    return side;
}

QWidget* PhotosPage::makeEmpty()
{
    auto* empty = new EmptyState(this);
    empty->setObjectName(QStringLiteral("photosEmpty"));
    empty->setTitle(tr("No photos here yet"), tr("Drop photos, or a folder of them, on this window."));
    connect(empty->addWay(QStringLiteral("gall_midrib"), tr("Take in photos"),
                          tr("They are copied beside the store. By time and place each is proposed to a visit of its day; nothing is put "
                             "anywhere before you say so."),
                          tr("Take in photos…"), {}),
            &QPushButton::clicked, this, &PhotosPage::askFiles);
    auto* scroll = new QScrollArea(this);
    scroll->setWidgetResizable(true);
    scroll->setFrameShape(QFrame::NoFrame);
    scroll->setWidget(empty);
    return scroll;
}

bool PhotosPage::isKind(PhotoRow::Kind kind) const
{
    return m_list->current() != nullptr && m_list->current()->kind == kind;
}

bool PhotosPage::inTray() const
{
    return m_list->current() != nullptr && !isKind(PhotoRow::Kind::placed) && !isKind(PhotoRow::Kind::aside);
}

void PhotosPage::addAction(const QString& words, const QString& cap, int key, const std::function<bool()>& may,
                           const std::function<void()>& run)
{
    auto* button = new KeyButton(words, m_buttons);
    button->setCap(cap);
    connect(button, &QPushButton::clicked, this, run);
    m_actions.push_back({button, key, may, run});
}

/// Where a photo goes. A row is copied first: what is done changes the list that it stands in.
void PhotosPage::addTrayActions()
{
    const auto isCopy = [this] { return m_list->current() != nullptr && m_list->current()->copy.has_value(); };
    const auto proposed = [this] { return isKind(PhotoRow::Kind::proposed); };
    addAction(tr("The same picture: put it aside"), QStringLiteral("S"), Qt::Key_S, isCopy,
              [this] { m_desk.sayCopy(LikelyCopy(*m_list->current()->copy)); });
    addAction(tr("Two pictures: keep both"), QStringLiteral("D"), Qt::Key_D, isCopy,
              [this] { m_desk.sayTwoPictures(LikelyCopy(*m_list->current()->copy)); });
    addAction(tr("Yes, it belongs there"), tr("Enter"), Qt::Key_Return, proposed, [this] { m_desk.take(PhotoRow(*m_list->current()), 0); });
    addAction(tr("No, not to that visit"), QStringLiteral("R"), Qt::Key_R, proposed, [this] { m_desk.refuse(PhotoRow(*m_list->current())); });
    addAction(tr("Yes to all"), QStringLiteral("A"), Qt::Key_A, [this] { return m_desk.takenAtOnce() > 1; }, [this] { m_desk.takeAll(); });
    addAction(tr("Put it with the open visit"), QStringLiteral("V"), Qt::Key_V,
              [this] { return inTray() && m_day.page() && m_day.page()->mayEdit; },
              [this] { m_desk.putWith(PhotoRow(*m_list->current()), m_day.page()->visit.id); });
    addAction(tr("Go to its day"), QStringLiteral("G"), Qt::Key_G,
              [this] { return isKind(PhotoRow::Kind::otherDay) && m_list->current()->photo.takenDate; },
              [this] { m_desk.goToDayOf(PhotoRow(*m_list->current())); });
}

void PhotosPage::addPhotoActions()
{
    const auto placed = [this] { return isKind(PhotoRow::Kind::placed); };
    addAction(tr("What it shows…"), QStringLiteral("W"), Qt::Key_W, placed, [this] { askShows(); });
    const auto away = [this, placed] { return placed() || isKind(PhotoRow::Kind::aside); };
    addAction(tr("Back to the tray"), QStringLiteral("T"), Qt::Key_T, away, [this] { m_desk.backToTray(PhotoRow(*m_list->current())); });
    addAction(tr("Look at it large"), tr("Space"), Qt::Key_Space, [this] { return m_list->current() != nullptr; }, [this] { lookLarge(); });
}

void PhotosPage::enter()
{
    m_strip->clear();
    m_desk.setShown(true);
    m_desk.lookForCopies();
    m_list->setFocus(Qt::OtherFocusReason);
}

void PhotosPage::takeIn(const QStringList& paths)
{
    m_strip->clear();
    m_desk.takeIn(paths);
}

bool PhotosPage::isSettled() const
{
    return !m_desk.isBusy() && m_pane->isSettled() && m_list->thumbnails().isSettled();
}

void PhotosPage::nextPane(int step)
{
    QWidget* const panes[] = {m_list, m_clock, m_buttons};
    int at = 0;
    for (int i = 0; i < 3; ++i)
        if (panes[i]->hasFocus() || panes[i]->isAncestorOf(focusWidget()))
            at = i;
    QWidget* next = panes[(at + step + 3) % 3];
    (next == m_buttons ? m_buttons->nextInFocusChain() : next)->setFocus(Qt::TabFocusReason);
}

void PhotosPage::showDesk()
{
    m_title->setText(tr("Photos, %1").arg(fullDate(m_desk.day())));
    QStringList parts;
    const int proposed = m_desk.count(PhotoRow::Kind::proposed), loose = m_desk.count(PhotoRow::Kind::loose);
    const int other = m_desk.count(PhotoRow::Kind::otherDay), placed = m_desk.count(PhotoRow::Kind::placed);
    if (proposed > 0)
        parts << tr("a visit is proposed for %n photos", nullptr, proposed);
    if (loose > 0)
        parts << tr("none fits for %n photos", nullptr, loose);
    if (other > 0)
        parts << tr("%n are undated or of another day", nullptr, other);
    if (placed > 0)
        parts << tr("%n photos lie with visits", nullptr, placed);
    if (m_desk.copies() > 0)
        parts << tr("%n photos look like another", nullptr, m_desk.copies());
    if (const int aside = m_desk.count(PhotoRow::Kind::aside); aside > 0)
        parts << tr("%n put aside as copies", nullptr, aside);
    m_counts->setText(sentenceStart(parts.join(QStringLiteral(", "))) + (parts.isEmpty() ? QString() : QStringLiteral(".")));
    const bool empty = m_desk.rows().empty();
    m_stack->setCurrentIndex(empty ? 1 : 0);
    m_clockRow->setVisible(proposed + loose + other > 0);
    showClock();
    m_list->refresh();
}

void PhotosPage::showClock()
{
    m_clock->setSeconds(static_cast<int>(std::lround(m_desk.secondsAhead().value_or(0))));
    m_clockWords->setText(clockText(m_desk));
    m_asEstimated->setVisible(m_desk.isSetByHand());
}

void PhotosPage::showCurrent()
{
    const PhotoRow* row = m_list->current();
    if (row != nullptr) {
        const QString cannot = tr("%1 cannot be shown here. The file is kept as it came.").arg(photoName(row->photo));
        m_pane->show(m_desk.path(row->photo.id), row->copy ? m_desk.path(row->copy->other.id) : QString(), cannot);
        m_name->setText(photoName(row->photo) + QStringLiteral(", ") + takenText(row->photo, m_desk.day()));
        m_details->setText(row->copy ? copyText(*row->copy, m_desk) + QLatin1Char('\n') + rowDetails(*row, m_desk)
                                     : rowDetails(*row, m_desk));
    } else {
        m_pane->show({}, {}, {});
        m_name->clear();
        m_details->clear();
    }
    showActions();
}

bool PhotosPage::eventFilter(QObject* watched, QEvent* event)
{
    if (watched == m_words->viewport() && event->type() == QEvent::Resize)
        showActions();
    return QWidget::eventFilter(watched, event);
}

/// Only what can be done with this photo, two beside each other where there is room.
void PhotosPage::showActions()
{
    auto* grid = static_cast<QGridLayout*>(m_buttons->layout());
    int widest = 0;
    for (const Action& action : m_actions)
        if (action.button->parentWidget() == m_buttons && action.may())
            widest = std::max(widest, action.button->sizeHint().width());
    const int columns = 2 * widest + grid->horizontalSpacing() <= m_words->viewport()->width() ? 2 : 1;
    grid->setColumnStretch(1, columns == 2 ? 1 : 0);
    int shown = 0;
    for (const Action& action : m_actions) {
        if (action.button->parentWidget() == m_buttons) {
            const bool may = action.may();
            action.button->setVisible(may);
            grid->removeWidget(action.button);
            if (may)
                grid->addWidget(action.button, shown / columns, shown % columns);
            shown += may ? 1 : 0;
            action.button->setMain(action.key == Qt::Key_Return);
        }
        if (action.key == Qt::Key_A)
            action.button->setText(tr("Yes to all %1 proposals").arg(m_desk.takenAtOnce()));
        if (action.key == Qt::Key_V && m_day.page() && m_day.page()->tree)
            action.button->setText(tr("Put it with %1, the open visit").arg(text(m_day.page()->tree->label)));
    }
}

void PhotosPage::showBusy()
{
    const bool busy = m_desk.isBusy();
    if (busy && m_takeIn->hasFocus())
        m_list->setFocus(Qt::OtherFocusReason);
    m_takeIn->setVisible(!busy); // one thing at a time, and large text has room for one of them
    m_busy->setVisible(busy);
    if (!busy)
        return;
    m_busyWords->setText(m_bench.jobs().title());
    m_bar->setRange(0, 0);
}

void PhotosPage::askFiles()
{
    const QString folder = m_bench.settings().value(Setting::lastFolder).toString();
    const QStringList paths = m_prompts.filesToOpen(this, tr("Take in photos"), folder,
                                                    tr("Photos (*.jpg *.jpeg *.png *.heic *.heif);;All files (*)"));
    if (!paths.isEmpty())
        takeIn(paths);
}

/// All photos of the list, from this one on; with the drawn figure of what it shows.
void PhotosPage::lookLarge()
{
    const PhotoRow* current = m_list->current();
    if (current == nullptr)
        return;
    MeasureRequest request;
    std::vector<PhotoToMeasure> photos;
    for (const PhotoRow& row : m_desk.rows()) {
        if (row.photo.id == current->photo.id)
            request.firstPhoto = static_cast<int>(photos.size());
        photos.push_back({m_desk.path(row.photo.id), photoName(row.photo), row.photo.measures});
    }
    for (const std::string& id : m_desk.mayShow(*current))
        if (request.figure.isEmpty())
            request.figure = figureForSign(id);
    MeasureDialog dialog(photos, request, m_desk.pack(), this);
    dialog.exec();
}

void PhotosPage::askShows()
{
    const PhotoRow row = *m_list->current();
    EvidenceDialog dialog(m_bench, row.photo, m_desk.pack(), this);
    if (dialog.exec() == QDialog::Accepted)
        m_desk.setShows(row, dialog.evidence());
}

void PhotosPage::keyPressEvent(QKeyEvent* event)
{
    const int key = event->key() == Qt::Key_Enter ? Qt::Key_Return : event->key();
    if (m_clock->hasFocus() && (key == Qt::Key_Return || key == Qt::Key_Escape)) {
        m_list->setFocus(Qt::OtherFocusReason);
        return;
    }
    if (key == Qt::Key_Escape) {
        Q_EMIT backAsked();
        return;
    }
    if ((event->modifiers() & ~Qt::KeypadModifier) != Qt::NoModifier)
        return QWidget::keyPressEvent(event);
    if (key == Qt::Key_O)
        return askFiles();
    const PhotoRow* row = m_list->current();
    if (row != nullptr && key >= Qt::Key_2 && key <= Qt::Key_9)
        return m_desk.take(PhotoRow(*row), static_cast<std::size_t>(key - Qt::Key_1));
    for (const Action& action : m_actions)
        if (action.key == key && action.may())
            return action.run();
    QWidget::keyPressEvent(event);
}

void PhotosPage::changeEvent(QEvent* event)
{
    QWidget::changeEvent(event);
    if (event->type() == QEvent::FontChange)
        m_clock->setFixedWidth(m_clock->fontMetrics().horizontalAdvance(QStringLiteral("+0000:00:00")) + 24);
}

} // namespace cupule::ui
