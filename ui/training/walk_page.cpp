#include "ui/training/walk_page.h"

#include <QComboBox>
#include <QHBoxLayout>
#include <QLabel>
#include <QListWidget>
#include <QLocale>
#include <QPlainTextEdit>
#include <QScrollArea>
#include <QVBoxLayout>

#include "ui/bridge/text.h"
#include "ui/shell/place.h"
#include "ui/theme/theme.h"
#include "ui/training/slide_view.h"
#include "ui/training/step_list.h"
#include "ui/widgets/key_button.h"
#include "ui/widgets/pane_row.h"
#include "ui/widgets/role_label.h"

namespace cupule::ui {

WalkPage::WalkPage(Workbench& bench, Prompts& prompts, QWidget* parent) : QWidget(parent), m_bench(bench), m_prompts(prompts), m_desk(bench, this)
{
    QWidget* steps = buildSteps();
    QWidget* chooser = buildChooser();
    QWidget* slide = buildSlide();
    m_panes = new PaneRow(steps, chooser, slide, buildNotes(), this);
    m_panes->setObjectName(QStringLiteral("walkPanes"));
    connect(m_panes, &PaneRow::stackedChanged, this, &WalkPage::placeNotes);
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(0, 0, 0, 0);
    row->addWidget(m_panes);
    connect(&m_desk, &WalkDesk::listChanged, this, &WalkPage::refreshList);
    connect(&m_desk, &WalkDesk::stepChanged, this, &WalkPage::refreshStep);
    connect(&m_desk, &WalkDesk::photosChanged, this, &WalkPage::refreshPhotos);
    connect(&bench, &Workbench::storeClosed, this, [this] {
        delete m_presenter;
        m_noted = -1;
    });
}

QWidget* WalkPage::buildSteps()
{
    auto* box = new QWidget(this);
    auto* column = new QVBoxLayout(box);
    column->setContentsMargins(0, 10, 0, 0);
    column->setSpacing(6);
    auto* head = new QHBoxLayout;
    head->setContentsMargins(14, 0, 12, 0);
    auto* label = new RoleLabel(TextRole::heading, tr("&Month"), box);
    m_month = new QComboBox(box);
    m_month->setObjectName(QStringLiteral("walkMonth"));
    for (int month = 1; month <= 12; ++month)
        m_month->addItem(QLocale().standaloneMonthName(month), month);
    m_month->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    m_month->setMinimumContentsLength(6);
    label->setBuddy(m_month);
    head->addWidget(label);
    head->addWidget(m_month, 1);
    m_name = new RoleLabel(TextRole::caption, box, Tone::second);
    m_name->setContentsMargins(14, 0, 12, 2);
    m_name->setWordWrap(true);
    m_list = new StepList(box);
    m_model = new StepModel(m_desk, this);
    m_list->setModel(m_model);
    m_list->setItemDelegate(new StepDelegate(*m_model, this));
    column->addLayout(head);
    column->addWidget(m_name);
    column->addWidget(m_list, 1);
    connect(m_month, &QComboBox::activated, this, [this](int index) {
        takeNotes();
        m_desk.setMonth(index + 1);
    });
    connect(m_list->selectionModel(), &QItemSelectionModel::currentChanged, this, [this](const QModelIndex& current) {
        if (!m_setting && current.isValid())
            m_desk.show(current.row());
    });
    connect(m_list, &StepList::skipAsked, this, &WalkPage::skip);
    connect(m_list, &StepList::moveAsked, &m_desk, &WalkDesk::move);
    connect(m_list, &StepList::presentAsked, this, &WalkPage::present);
    return box;
}

QWidget* WalkPage::buildChooser()
{
    auto* bar = new QWidget(this);
    auto* row = new QHBoxLayout(bar);
    row->setContentsMargins(12, 6, 12, 6);
    m_where = new RoleLabel(TextRole::body, bar);
    m_where->setWordWrap(true);
    row->addWidget(m_where, 1);
    for (const auto& [by, words] : {std::pair{-1, tr("Previous")}, std::pair{1, tr("Next")}}) {
        auto* button = new KeyButton(words, bar);
        row->addWidget(button);
        connect(button, &QPushButton::clicked, this, [this, by = by] { m_desk.show(m_desk.current() + by); });
    }
    return bar;
}

QWidget* WalkPage::buildSlide()
{
    auto* box = new QWidget(this);
    setGround(*box, "page");
    auto* column = new QVBoxLayout(box);
    column->setContentsMargins(16, 14, 16, 12);
    column->setSpacing(10);
    m_slide = new SlideView(m_desk, box);
    m_slide->setObjectName(QStringLiteral("walkSlide"));
    auto* buttons = new QHBoxLayout;
    auto* present = new KeyButton(tr("Show on the projector"), box);
    present->setObjectName(QStringLiteral("presentWalk"));
    present->setMain(true);
    present->setCap(QStringLiteral("F5"));
    m_skip = new KeyButton(tr("Skip"), box);
    m_skip->setObjectName(QStringLiteral("skipStep"));
    m_skip->setCap(QStringLiteral("S"));
    buttons->addWidget(present);
    buttons->addStretch(1);
    buttons->addWidget(m_skip);
    column->addWidget(m_slide, 1);
    column->addLayout(buttons);
    connect(present, &QPushButton::clicked, this, &WalkPage::present);
    connect(m_skip, &QPushButton::clicked, this, &WalkPage::skip);
    return box;
}

QWidget* WalkPage::buildNotes()
{
    auto* area = new QScrollArea(this); // in large text it scrolls rather than push the window out
    area->setFrameShape(QFrame::NoFrame);
    area->setWidgetResizable(true);
    auto* box = new QWidget(area);
    area->setWidget(box);
    setGround(*box, "panel");
    m_beside = new QBoxLayout(QBoxLayout::TopToBottom, box);
    m_beside->setContentsMargins(14, 12, 14, 12);
    auto* notes = new QVBoxLayout;
    auto* coming = new QVBoxLayout;
    for (QVBoxLayout* column : {notes, coming})
        column->setSpacing(6);
    auto* notesHead = new RoleLabel(TextRole::heading, tr("Your notes, on this screen only"), box);
    notesHead->setWordWrap(true);
    m_notes = new QPlainTextEdit(box);
    m_notes->setObjectName(QStringLiteral("walkNotes"));
    m_notes->setTabChangesFocus(true);
    m_notes->setAccessibleName(tr("Your notes for this step"));
    m_notes->setPlaceholderText(tr("what to ask, what to hand round"));
    m_notes->setMinimumHeight(72);
    m_notes->setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Ignored); // takes what is left; its wish would push what comes next out of sight
    m_nextHead = new RoleLabel(TextRole::caption, box, Tone::second);
    m_nextHead->setWordWrap(true);
    m_next = new SlideView(m_desk, box);
    m_next->setObjectName(QStringLiteral("walkNext"));
    notes->addWidget(notesHead);
    notes->addWidget(m_notes, 1);
    coming->addWidget(m_nextHead);
    coming->addWidget(m_next, 1);
    m_beside->addLayout(notes, 3);
    m_beside->addLayout(buildPhotos(box), 2);
    m_beside->addLayout(coming, 2);
    connect(m_notes, &QPlainTextEdit::textChanged, this, &WalkPage::takeNotes);
    return area;
}

QLayout* WalkPage::buildPhotos(QWidget* box)
{
    auto* photos = new QVBoxLayout;
    photos->setSpacing(6);
    auto* photosHead = new RoleLabel(TextRole::heading, tr("Your photos beside the figure"), box);
    photosHead->setWordWrap(true);
    m_photos = new QListWidget(box);
    m_photos->setObjectName(QStringLiteral("walkPhotos"));
    m_photos->setAccessibleName(tr("Your photos for this step; F2 changes the words below one"));
    m_photos->setMinimumHeight(56);
    auto* buttons = new QHBoxLayout;
    auto* add = new KeyButton(tr("Add photos…"), box);
    add->setObjectName(QStringLiteral("addWalkPhotos"));
    m_away = new KeyButton(tr("Take away"), box);
    m_away->setObjectName(QStringLiteral("removeWalkPhoto"));
    buttons->addWidget(add);
    buttons->addWidget(m_away);
    buttons->addStretch(1);
    photos->addWidget(photosHead);
    photos->addWidget(m_photos, 1);
    photos->addLayout(buttons);
    connect(add, &QPushButton::clicked, this, qOverload<>(&WalkPage::addPhotos));
    connect(m_away, &QPushButton::clicked, this, [this] {
        if (m_photos->currentRow() >= 0)
            m_desk.removePhoto(m_desk.current(), m_photos->currentRow());
    });
    connect(m_photos, &QListWidget::itemChanged, this, [this](QListWidgetItem* item) {
        if (!m_setting)
            m_desk.setCaption(m_desk.current(), m_photos->row(item), item->text());
    });
    return photos;
}

void WalkPage::placeNotes()
{
    m_beside->setDirection(m_panes->isStacked() ? QBoxLayout::LeftToRight : QBoxLayout::TopToBottom);
}

void WalkPage::enter()
{
    if (!m_desk.hasBegun())
        m_desk.begin();
}

void WalkPage::leave()
{
    takeNotes();
    m_desk.keepDraft();
}

void WalkPage::nextPane(int step)
{
    focusNextOf({m_list, m_notes, m_photos}, step);
}

void WalkPage::refreshList()
{
    m_setting = true;
    m_month->setCurrentIndex(m_desk.place().month - 1);
    const int skipped = static_cast<int>(m_desk.steps().size()) - m_desk.count();
    const QString counts = tr("%n steps", nullptr, m_desk.count()) + (skipped > 0 ? tr(", %n skipped", nullptr, skipped) : QString());
    m_name->setText(m_desk.name().isEmpty() ? counts : QStringLiteral("%1: %2").arg(m_desk.name(), counts));
    m_list->setCurrentIndex(m_model->index(m_desk.current()));
    m_setting = false;
}

void WalkPage::refreshStep()
{
    const int step = m_desk.current();
    m_setting = true;
    m_list->setCurrentIndex(m_model->index(step));
    m_slide->setStep(step);
    const ArrangedStep& at = m_desk.steps()[static_cast<std::size_t>(step)];
    m_skip->setText(at.lesson.skipped ? tr("Take in again") : tr("Skip"));
    m_where->setText(tr("%1, %2 of %3").arg(m_model->name(step)).arg(m_desk.number(step)).arg(m_desk.count()));
    if (text(at.lesson.notes) != m_notes->toPlainText() || m_noted != step)
        m_notes->setPlainText(text(at.lesson.notes));
    m_noted = step;
    const int next = m_desk.following(1);
    m_nextHead->setText(next >= 0 ? tr("Next: %1").arg(m_model->name(next)) : tr("This is the last step."));
    m_next->setStep(next);
    m_setting = false;
    refreshPhotos();
}

void WalkPage::refreshPhotos()
{
    m_setting = true;
    const int row = m_photos->currentRow();
    m_photos->clear();
    for (const LessonPhoto& photo : m_desk.steps()[static_cast<std::size_t>(m_desk.current())].lesson.photos) {
        auto* item = new QListWidgetItem(text(photo.caption), m_photos);
        item->setFlags(item->flags() | Qt::ItemIsEditable);
        item->setToolTip(text(photo.name));
    }
    m_photos->setCurrentRow(std::min(row, m_photos->count() - 1));
    m_away->setEnabled(m_photos->count() > 0);
    m_setting = false;
}

void WalkPage::takeNotes()
{
    if (!m_setting && m_desk.hasBegun() && m_noted == m_desk.current())
        m_desk.setNotes(m_noted, m_notes->toPlainText());
}

void WalkPage::present()
{
    if (!m_desk.hasBegun())
        return;
    if (m_presenter == nullptr) {
        m_presenter = new PresenterWindow(m_desk, window());
        m_presenter->setAttribute(Qt::WA_DeleteOnClose);
    }
    m_presenter->present();
}

void WalkPage::skip()
{
    const int step = m_desk.current();
    m_desk.setSkipped(step, !m_desk.steps()[static_cast<std::size_t>(step)].lesson.skipped);
}

void WalkPage::openLesson()
{
    const QString path = m_prompts.fileToOpen(this, tr("Open a lesson"), QString(), tr("Lessons (*.lesson)"));
    if (!path.isEmpty())
        m_desk.open(path);
}

void WalkPage::saveLesson()
{
    takeNotes();
    const QString month = QLocale().standaloneMonthName(m_desk.place().month);
    const QString proposal = (m_desk.name().isEmpty() ? month : m_desk.name()) + QStringLiteral(".lesson");
    const QString path = m_prompts.fileToWrite(this, tr("Where the lesson is to lie"), proposal, tr("Lessons (*.lesson)"));
    if (!path.isEmpty())
        m_desk.save(path);
}

void WalkPage::addPhotos()
{
    addPhotos(m_prompts.filesToOpen(this, tr("Photos beside this figure"), QString(), tr("Photos (*.jpg *.jpeg *.png *.heic *.heif *.tif *.tiff *.webp)")));
}

void WalkPage::addPhotos(const QStringList& paths)
{
    if (!paths.isEmpty() && m_desk.hasBegun())
        m_desk.addPhotos(m_desk.current(), paths);
}

} // namespace cupule::ui
