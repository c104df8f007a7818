#include "ui/map/small_map.h"

#include <algorithm>

#include <QComboBox>
#include <QHBoxLayout>
#include <QVBoxLayout>

#include "ui/bridge/text.h"
#include "ui/map/map_grid.h"
#include "ui/map/map_legend.h"
#include "ui/map/map_words.h"
#include "ui/widgets/role_label.h"

namespace cupule::ui {

namespace {

constexpr int asDrawn = -1; // the notation of the grid that is drawn, whichever it is

bool sameSpot(const MapSpot& one, const MapSpot& other)
{
    return one.noun == other.noun && one.at == other.at && one.uncertaintyMetres == other.uncertaintyMetres;
}

/// Nothing of what decides on the view has changed.
bool sameView(const MapScene& one, const MapScene& other)
{
    const auto all = [](const std::vector<MapSpot>& a, const std::vector<MapSpot>& b) {
        return std::equal(a.begin(), a.end(), b.begin(), b.end(), sameSpot);
    };
    return one.tree.has_value() == other.tree.has_value() && (!one.tree || sameSpot(*one.tree, *other.tree))
           && all(one.visits, other.visits) && all(one.photos, other.photos) && all(one.points, other.points) && all(one.finds, other.finds) && one.rings == other.rings && all(one.neighbours, other.neighbours);
}

} // namespace

SmallMap::SmallMap(QWidget* parent)
    : QWidget(parent), m_canvas(new MapCanvas(this)), m_legend(new MapLegend(this)),
      m_nothing(new RoleLabel(TextRole::caption, tr("No position yet."), this)), m_pointer(new RoleLabel(TextRole::caption, this, Tone::second)), m_notations(new QComboBox(this))
{
    setObjectName(QStringLiteral("smallMap"));
    m_pointer->setObjectName(QStringLiteral("mapPointer"));
    m_pointer->setWordWrap(true); // a long notation in large text pushes no page wider
    m_notations->setObjectName(QStringLiteral("mapNotation"));
    m_notations->setAccessibleName(tr("Notation of the place under the pointer"));
    m_notations->setSizeAdjustPolicy(QComboBox::AdjustToContents);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(4);
    column->addWidget(m_canvas, 1);
    auto* row = new QHBoxLayout;
    row->setSpacing(8);
    row->addWidget(m_pointer, 1);
    row->addWidget(m_notations);
    column->addLayout(row);
    column->addWidget(m_nothing);
    column->addWidget(m_legend);
    connect(m_canvas, &MapCanvas::pointerMoved, this, &SmallMap::refreshPointer);
    connect(m_canvas, &MapCanvas::stopAsked, this, [this](const Uid& noun) {
        if (!noun.isNull())
            Q_EMIT nounAsked(noun);
    });
    connect(m_notations, &QComboBox::activated, this, &SmallMap::refreshPointer);
    m_soon.setSingleShot(true);
    m_soon.setInterval(0);
    connect(&m_soon, &QTimer::timeout, this, [this] { setScene(m_coming); });
}

void SmallMap::setSceneSoon(const MapScene& scene)
{
    m_coming = scene;
    m_soon.start();
}

void SmallMap::setScene(const MapScene& scene)
{
    m_soon.stop();
    const bool filled = m_canvas->scene().plane != nullptr;
    if (filled && scene == m_scene)
        return;
    const bool keep = filled && sameView(m_scene, scene);
    m_scene = scene;
    m_canvas->setScene(placed(scene), keep);
    m_canvas->setWords(sceneText(scene));
    refreshNotations();
    refreshLegend();
    refreshPointer();
}

void SmallMap::setCompact(bool compact)
{
    m_compact = compact;
    m_canvas->setFocusPolicy(compact ? Qt::ClickFocus : Qt::StrongFocus);
    m_canvas->setSizePolicy(QSizePolicy::Preferred, compact ? QSizePolicy::Ignored : QSizePolicy::Preferred); // as high as the form
    m_pointer->setVisible(!compact);
    m_notations->setVisible(!compact);
    refreshLegend();
    refreshPointer();
}

/// The chosen one stays where the plane offers it.
void SmallMap::refreshNotations()
{
    const QVariant chosen = m_notations->currentData();
    m_notations->clear();
    m_notations->addItem(tr("grid of the map"), asDrawn);
    for (const Notation notation : mapNotations(m_canvas->scene().plane->system()))
        m_notations->addItem(notationWord(notation), static_cast<int>(notation));
    m_notations->setCurrentIndex(std::max(0, m_notations->findData(chosen)));
}

Notation SmallMap::notation() const
{
    const int chosen = m_notations->currentData().toInt();
    if (chosen != asDrawn)
        return static_cast<Notation>(chosen);
    switch (gridAt(*m_canvas->scene().plane, m_canvas->view())) {
    case MapGrid::british: return Notation::osgb;
    case MapGrid::irish: return Notation::irish;
    case MapGrid::degrees: break;
    }
    return Notation::decimalDegrees;
}

QString SmallMap::pointerText() const
{
    return m_pointer->text();
}

void SmallMap::refreshPointer()
{
    const MapCanvas& canvas = *m_canvas;
    if (!canvas.scene().plane || m_notations->count() == 0)
        return;
    const QString place = canvas.scene().plane->write(canvas.pointer(), notation(), canvas.view().metresPerPixel);
    const QString shown = place.isEmpty() ? tr("outside this grid") : place;
    m_pointer->setText(canvas.hasPointer() ? tr("pointer: %1").arg(shown) : tr("middle: %1").arg(shown));
    m_canvas->setCaption(!m_compact ? QString() : m_scene.isEmpty() ? m_nothing->text() : canvas.hasPointer() ? shown : QString());
}

void SmallMap::refreshLegend()
{
    std::vector<MapLegend::Line> lines;
    if (m_scene.tree)
        lines.push_back({MapShape::thisTree, m_scene.tree->uncertaintyMetres > 0
                                                 ? tr("%1, ± %2").arg(m_scene.tree->name, distanceText(m_scene.tree->uncertaintyMetres))
                                                 : m_scene.tree->name});
    if (!m_scene.neighbours.empty())
        lines.push_back({MapShape::otherTree, tr("%n other trees", nullptr, static_cast<int>(m_scene.neighbours.size()))});
    if (!m_scene.visits.empty())
        lines.push_back({MapShape::visit, m_scene.visits.size() == 1
                                              ? tr("visit of %1").arg(m_scene.visits.front().name)
                                              : tr("visits, 1 = %1").arg(m_scene.visits.front().name)});
    if (!m_scene.photos.empty())
        lines.push_back({MapShape::photo, tr("%n photos", nullptr, static_cast<int>(m_scene.photos.size()))});
    if (!m_scene.points.empty())
        lines.push_back({MapShape::point, tr("%n points of a receiver", nullptr, static_cast<int>(m_scene.points.size()))});
    if (!m_scene.finds.empty())
        lines.push_back({MapShape::find, tr("%n accepted finds", nullptr, static_cast<int>(m_scene.finds.size()))});
    m_legend->setLines(std::move(lines));
    m_legend->setVisible(!m_compact && !m_legend->lines().empty());
    m_nothing->setVisible(!m_compact && m_scene.isEmpty());
}

} // namespace cupule::ui
