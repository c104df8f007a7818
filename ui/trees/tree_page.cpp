#include "ui/trees/tree_page.h"

#include <algorithm>

#include <QApplication>
#include <QFormLayout>
#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QListWidget>
#include <QPlainTextEdit>
#include <QVBoxLayout>

#include "core/base/text.h"
#include "ui/bridge/dates.h"
#include "ui/bridge/text.h"
#include "ui/bridge/words.h"
#include "ui/bridge/words_trees.h"
#include "ui/map/small_map.h"
#include "ui/photos/thumbnails.h"
#include "ui/theme/theme.h"
#include "ui/trees/story_list.h"
#include "ui/trees/tree_story.h"
#include "ui/widgets/key_button.h"
#include "ui/widgets/role_label.h"

namespace cupule::ui {

namespace {

constexpr int thumbnailSide = 112;
constexpr int mostThumbnails = 200;

} // namespace

TreePageView::TreePageView(TreesDesk& desk, QWidget* parent) : QScrollArea(parent), m_desk(desk)
{
    setWidgetResizable(true);
    setFrameShape(QFrame::NoFrame);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    m_box = new QWidget(this);
    m_box->setObjectName(QStringLiteral("treePage"));
    setGround(*m_box, "page");
    auto* column = new QVBoxLayout(m_box);
    column->setContentsMargins(18, 14, 18, 18);
    column->setSpacing(6);
    buildHead(*column);
    buildStories(*column);
    buildThings(*column);
    buildFields(*column);
    column->addStretch(1);
    setWidget(m_box);
    // F6 and the commands set the focus without a Tab, which is all that a scroll area follows by itself
    connect(qApp, &QApplication::focusChanged, this, [this](QWidget*, QWidget* now) {
        if (now != nullptr && m_box->isAncestorOf(now))
            ensureWidgetVisible(now, 0, std::min(now->height(), 40));
    });
}

RoleLabel* TreePageView::heading(QVBoxLayout& column, const QString& words)
{
    auto* label = new RoleLabel(TextRole::heading, words, m_box);
    label->setWordWrap(true);
    column.addSpacing(8);
    column.addWidget(label);
    return label;
}

void TreePageView::buildHead(QVBoxLayout& column)
{
    m_title = new RoleLabel(TextRole::title, m_box);
    m_title->setTextFormat(Qt::RichText);
    m_title->setWordWrap(true);
    const auto words = [&](const char* name) {
        auto* label = new QLabel(m_box);
        label->setObjectName(QString::fromLatin1(name));
        label->setWordWrap(true);
        label->setTextFormat(Qt::PlainText);
        label->setTextInteractionFlags(Qt::TextSelectableByMouse);
        return label;
    };
    m_fate = words("treeFate");
    m_facts = words("treeFacts");
    m_merged = words("treeMerged");
    for (QWidget* part : std::initializer_list<QWidget*>{m_title, m_fate, m_facts, m_merged})
        column.addWidget(part);
    m_buttons = new QBoxLayout(QBoxLayout::LeftToRight);
    const auto button = [&](const QString& said, const char* name, const QKeySequence& key) {
        auto* made = new KeyButton(said, m_box);
        made->setObjectName(QString::fromLatin1(name));
        made->setCap(key.toString(QKeySequence::NativeText));
        m_buttons->addWidget(made, 0, Qt::AlignLeft);
        return made;
    };
    m_fateButton = button(tr("Is it gone…"), "fate", QKeySequence(Qt::CTRL | Qt::Key_L));
    m_merge = button(tr("Same tree as…"), "mergeTree", QKeySequence(Qt::CTRL | Qt::Key_M));
    m_split = button(tr("Split…"), "splitTree", QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_M));
    m_buttons->addStretch(1);
    column.addSpacing(4);
    column.addLayout(m_buttons);
    connect(m_fateButton, &QPushButton::clicked, this, &TreePageView::fateAsked);
    connect(m_merge, &QPushButton::clicked, this, &TreePageView::mergeAsked);
    connect(m_split, &QPushButton::clicked, this, &TreePageView::splitAsked);
}

void TreePageView::buildStories(QVBoxLayout& column)
{
    heading(column, tr("Its past"));
    m_line = new StoryList(true, m_box);
    m_line->setObjectName(QStringLiteral("treeHistory"));
    m_line->setAccessibleName(tr("Its past, newest first; Enter opens a visit in Day"));
    column.addWidget(m_line);
    m_evidenceHead = heading(column, tr("Is it a chestnut?"));
    m_evidence = new StoryList(false, m_box);
    m_evidence->setObjectName(QStringLiteral("treeEvidence"));
    m_evidence->setAccessibleName(tr("Characters seen on this tree; Enter opens the visit in Day"));
    column.addWidget(m_evidence);
    for (StoryList* list : {m_line, m_evidence})
        connect(list, &StoryList::nounAsked, &m_desk, &TreesDesk::goToVisit);
}

void TreePageView::buildThings(QVBoxLayout& column)
{
    m_photoHead = heading(column, tr("Photos"));
    m_photos = new QListWidget(m_box);
    m_photos->setObjectName(QStringLiteral("treePhotos"));
    m_photos->setAccessibleName(tr("Photos of this tree; Enter opens the visit in Day"));
    m_photos->setViewMode(QListView::IconMode);
    m_photos->setResizeMode(QListView::Adjust);
    m_photos->setMovement(QListView::Static);
    m_photos->setFrameShape(QFrame::NoFrame);
    m_photos->setIconSize({thumbnailSide, thumbnailSide});
    m_photos->setSpacing(4);
    column.addWidget(m_photos);
    m_thumbnails = new Thumbnails(thumbnailSide, mostThumbnails, this);
    connect(m_thumbnails, &Thumbnails::ready, this, &TreePageView::refreshPhotos);
    connect(m_photos, &QListWidget::itemActivated, this, [this](QListWidgetItem* item) {
        if (const auto visit = Uid::parse(utf8(item->data(Qt::UserRole).toString())); visit && !visit->isNull())
            m_desk.goToVisit(*visit);
    });
    m_samples = new QLabel(m_box);
    m_samples->setObjectName(QStringLiteral("treeSamples"));
    m_samples->setWordWrap(true);
    m_samples->setTextFormat(Qt::RichText);
    m_samples->setTextInteractionFlags(Qt::LinksAccessibleByKeyboard | Qt::LinksAccessibleByMouse);
    connect(m_samples, &QLabel::linkActivated, this, [this](const QString& link) {
        if (const auto sample = Uid::parse(utf8(link)))
            m_desk.goToSample(*sample);
    });
    column.addWidget(m_samples);
    heading(column, tr("Where it stands"));
    m_map = new SmallMap(m_box);
    m_map->setObjectName(QStringLiteral("treeMap"));
    m_map->setMinimumHeight(scaled(260, font()));
    column.addWidget(m_map);
    connect(m_map, &SmallMap::nounAsked, this, [this](const Uid& noun) { m_desk.goToNoun(noun); });
    m_placeWords = new QLabel(m_box);
    m_placeWords->setObjectName(QStringLiteral("treePlaces"));
    m_placeWords->setWordWrap(true);
    m_placeWords->setTextFormat(Qt::PlainText);
    m_placeWords->setTextInteractionFlags(Qt::TextSelectableByMouse);
    column.addWidget(m_placeWords);
}

void TreePageView::buildFields(QVBoxLayout& column)
{
    m_girth = new QLineEdit(m_box);
    m_girth->setObjectName(QStringLiteral("girth"));
    m_girth->setMaximumWidth(fontMetrics().horizontalAdvance(QStringLiteral("0000000000")));
    m_note = new QPlainTextEdit(m_box);
    m_note->setObjectName(QStringLiteral("treeNote"));
    m_note->setTabChangesFocus(true);
    m_note->setFixedHeight(m_note->fontMetrics().lineSpacing() * 2 + 16);
    auto* form = new QFormLayout;
    form->setRowWrapPolicy(QFormLayout::WrapLongRows);
    form->addRow(tr("Girth, cm"), m_girth);
    form->addRow(tr("Note"), m_note);
    column.addSpacing(8);
    column.addLayout(form);
    connect(m_girth, &QLineEdit::editingFinished, this, [this] {
        if (m_girth->isModified()) {
            m_girth->setModified(false);
            m_desk.setGirth(parseNumber(utf8(m_girth->text().trimmed())));
        }
    });
}

/// Side by side where they fit, else one below the other.
void TreePageView::layButtons()
{
    int needed = -m_buttons->spacing();
    for (const QWidget* button : std::initializer_list<const QWidget*>{m_fateButton, m_merge, m_split})
        needed += button->sizeHint().width() + m_buttons->spacing();
    const bool fits = needed <= viewport()->width() - 36;
    m_buttons->setDirection(fits ? QBoxLayout::LeftToRight : QBoxLayout::TopToBottom);
}

void TreePageView::resizeEvent(QResizeEvent* event)
{
    QScrollArea::resizeEvent(event);
    layButtons();
}

QList<QWidget*> TreePageView::panes() const
{
    return {m_line, m_evidence, m_photos, m_map, m_note};
}

void TreePageView::leave()
{
    if (m_desk.page() && m_note->document()->isModified()) {
        m_note->document()->setModified(false);
        m_desk.setNote(m_note->toPlainText().trimmed());
    }
}

void TreePageView::refresh()
{
    m_box->setEnabled(m_desk.page().has_value());
    if (!m_desk.page())
        return;
    refreshHead();
    refreshStories();
    refreshPhotos();
    refreshFields();
}

void TreePageView::refreshHead()
{
    const TreePage& page = *m_desk.page();
    m_title->setText(QStringLiteral("<b>%1</b> %2").arg(text(page.tree.label).toHtmlEscaped(),
                                                         page.site ? text(page.site->name).toHtmlEscaped() : tr("no site")));
    const QString fate = fateText(page.tree.fate, page.tree.fateDate, page.fateBy);
    m_fate->setText(fate.isEmpty() ? QString() : sentenceStart(fate) + QLatin1Char('.'));
    m_fate->setVisible(!fate.isEmpty());
    // what decides it stands below, character by character
    QStringList facts{page.host.answer == HostAnswer::cannotTell ? hostText(page.host, m_desk.pack())
                                                                : sentenceStart(hostWord(page.host.answer)) + QLatin1Char('.')};
    facts << (page.tree.position
                  ? tr("At %1, ± %2.").arg(m_desk.placeText(*page.tree.position), distanceText(page.tree.position->uncertaintyMetres))
                  : tr("No position yet: it comes with a visit in Day."));
    m_facts->setText(facts.join(QLatin1Char('\n')));
    m_facts->setToolTip(page.tree.position ? positionSureText(*page.tree.position) : QString());
    QStringList labels;
    for (const Tree& entry : page.merged)
        labels << text(entry.label);
    m_merged->setText(tr("Also entered as %1, which is the same tree.").arg(listText(labels)));
    m_merged->setVisible(!labels.isEmpty());
    m_split->setVisible(!page.merged.empty() || page.visits.size() > 1);
    layButtons();
}

void TreePageView::refreshStories()
{
    const TreePage& page = *m_desk.page();
    m_line->setRows(timeLineRows(page));
    const auto evidence = evidenceRows(page, m_desk.pack());
    m_evidence->setVisible(!evidence.empty());
    m_evidenceHead->setText(evidence.empty() ? tr("Is it a chestnut? Nobody has looked at a character yet.")
                                            : tr("Is it a chestnut? Together these say: %1.").arg(hostWord(page.host.answer)));
    m_evidence->setRows(evidence);
    QStringList links;
    for (const Sample& sample : page.samples)
        links << QStringLiteral("<a href=\"%1\">%2</a>").arg(text(sample.id.text()), text(sample.number).toHtmlEscaped());
    m_samples->setText(links.isEmpty() ? tr("No sample was taken.") : tr("Samples: %1").arg(links.join(QStringLiteral(", "))));
    m_map->setScene(m_desk.scene());
    m_placeWords->setText(placeLines(page, [this](const Position& position) { return m_desk.placeText(position); }));
    m_placeWords->setVisible(!m_placeWords->text().isEmpty());
}

void TreePageView::refreshPhotos()
{
    if (!m_desk.page())
        return;
    const TreePage& page = *m_desk.page();
    m_photoHead->setText(page.photos.empty() ? tr("No photos") : tr("%n photos", nullptr, static_cast<int>(page.photos.size())));
    m_photos->setVisible(!page.photos.empty());
    const int row = m_photos->currentRow();
    m_photos->clear();
    for (const PhotoNote& photo : page.photos) {
        const QString caption = photo.caption.empty() ? text(photo.originalName) : text(photo.caption);
        const QString day = photo.takenDate ? plainDate(*photo.takenDate, 0) : tr("no date");
        auto* item = new QListWidgetItem(day, m_photos);
        item->setData(Qt::UserRole, text(photo.visit.text()));
        item->setData(Qt::AccessibleTextRole, tr("%1, photo of %2").arg(caption, day));
        item->setToolTip(caption);
        const QString path = m_desk.photoPath(photo.id);
        if (const QImage small = path.isEmpty() ? QImage() : m_thumbnails->of(path); !small.isNull())
            item->setIcon(QIcon(QPixmap::fromImage(small)));
    }
    m_photos->setCurrentRow(row);
    const int cell = thumbnailSide + fontMetrics().height() + 20;
    const int across = std::max(1, m_photos->width() / (thumbnailSide + 24));
    const int rows = std::clamp((static_cast<int>(page.photos.size()) + across - 1) / across, 1, 2);
    m_photos->setFixedHeight(rows * cell);
}

void TreePageView::refreshFields()
{
    const TreePage& page = *m_desk.page();
    if (!m_girth->isModified())
        m_girth->setText(page.tree.girthCentimetres ? numberText(*page.tree.girthCentimetres) : QString());
    if (!m_note->document()->isModified() || !m_note->hasFocus()) {
        m_note->setPlainText(text(page.tree.note));
        m_note->document()->setModified(false);
    }
}

} // namespace cupule::ui
