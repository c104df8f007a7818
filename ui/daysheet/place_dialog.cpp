#include "ui/daysheet/place_dialog.h"

#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QListWidget>
#include <QVBoxLayout>

#include "ui/bridge/dates.h"
#include "ui/bridge/text.h"
#include "ui/map/map_words.h"
#include "ui/map/small_map.h"
#include "ui/widgets/key_button.h"

namespace cupule::ui {

PlaceDialog::PlaceDialog(MapScene scene, std::vector<PlaceOffer> offers, ReadPoints readPoints, QWidget* parent)
    : QDialog(parent), m_scene(std::move(scene)), m_offers(std::move(offers)), m_readPoints(std::move(readPoints))
{
    setObjectName(QStringLiteral("placeDialog"));
    setWindowTitle(tr("Where was it?"));
    resize(920, 560);
    m_list = new QListWidget(this);
    m_list->setObjectName(QStringLiteral("placeOffers"));
    m_list->setAccessibleName(tr("Positions to take"));
    m_list->setWordWrap(true);
    m_list->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    m_list->installEventFilter(this);
    m_nothing = new QLabel(tr("Neither the tree nor a photo of this visit has a position. Take one from a GPX file with G, or close this "
                              "and type it."),
                           this);
    m_nothing->setWordWrap(true);
    m_map = new SmallMap(this);
    auto* left = new QVBoxLayout;
    left->addWidget(m_nothing);
    left->addWidget(m_list, 1);
    left->addWidget(buildButtons());
    auto* row = new QHBoxLayout(this);
    row->setSpacing(14);
    row->addLayout(left, 2);
    row->addWidget(m_map, 3);
    connect(m_list, &QListWidget::currentRowChanged, this, &PlaceDialog::showChosen);
    connect(m_list, &QListWidget::itemDoubleClicked, this, &QDialog::accept);
    fill();
    m_list->setFocus(Qt::OtherFocusReason);
}

QWidget* PlaceDialog::buildButtons()
{
    auto* box = new QWidget(this);
    auto* column = new QVBoxLayout(box);
    column->setContentsMargins(0, 0, 0, 0);
    auto* points = new KeyButton(tr("Points of a GPX file…"), box);
    points->setObjectName(QStringLiteral("placePoints"));
    points->setCap(QStringLiteral("G"));
    points->setAutoDefault(false);
    m_take = new KeyButton(tr("Take this position"), box);
    m_take->setObjectName(QStringLiteral("placeTake"));
    m_take->setMain(true);
    m_take->setCap(tr("Enter"));
    m_take->setDefault(true);
    column->addWidget(points);
    column->addWidget(m_take);
    connect(points, &QPushButton::clicked, this, &PlaceDialog::takePoints);
    connect(m_take, &QPushButton::clicked, this, &QDialog::accept);
    return box;
}

QString PlaceDialog::wordsOf(const PlaceOffer& offer) const
{
    const QString name = text(offer.name);
    QStringList words;
    switch (offer.from) {
    case PlaceOffer::From::tree: words << tr("the tree %1").arg(name); break;
    case PlaceOffer::From::photo: words << tr("photo %1").arg(name); break;
    case PlaceOffer::From::point: words << (name.isEmpty() ? tr("a point without a name") : tr("point %1").arg(name)); break;
    }
    if (offer.time)
        words << timeText(*offer.time);
    const GeoPoint here{offer.position.latitude, offer.position.longitude};
    if (m_scene.tree && offer.from != PlaceOffer::From::tree)
        words << wayText(m_scene.tree->at, here);
    words << QStringLiteral("± ") + distanceText(reachMetres(offer.position));
    return words.join(QStringLiteral(", "));
}

void PlaceDialog::fill()
{
    m_scene.photos.clear();
    m_scene.points.clear();
    m_list->clear();
    for (const PlaceOffer& offer : m_offers) {
        m_list->addItem(wordsOf(offer));
        const MapSpot spot{text(offer.name), {offer.position.latitude, offer.position.longitude}, reachMetres(offer.position), {}};
        if (offer.from == PlaceOffer::From::photo)
            m_scene.photos.push_back(spot);
        else if (offer.from == PlaceOffer::From::point)
            m_scene.points.push_back(spot);
    }
    m_map->setScene(m_scene);
    m_nothing->setVisible(m_offers.empty());
    m_take->setEnabled(!m_offers.empty());
    m_list->setCurrentRow(m_offers.empty() ? -1 : 0);
    showChosen();
}

void PlaceDialog::showChosen()
{
    const int row = m_list->currentRow();
    std::optional<PlanePoint> place;
    if (row >= 0) {
        const Position& position = m_offers[static_cast<std::size_t>(row)].position;
        place = m_map->canvas()->scene().plane->toPlane(GeoPoint{position.latitude, position.longitude});
    }
    m_map->canvas()->setMarked(place);
}

/// The next of a kind after the current one, round again from the top.
void PlaceDialog::choose(PlaceOffer::From from)
{
    const int count = static_cast<int>(m_offers.size());
    for (int step = 1; step <= count; ++step) {
        const int row = (m_list->currentRow() + step) % count;
        if (m_offers[static_cast<std::size_t>(row)].from == from) {
            m_list->setCurrentRow(row);
            return;
        }
    }
}

void PlaceDialog::takePoints()
{
    const std::vector<PlaceOffer> points = m_readPoints();
    if (points.empty())
        return;
    std::erase_if(m_offers, [](const PlaceOffer& offer) { return offer.from == PlaceOffer::From::point; });
    m_offers.insert(m_offers.end(), points.begin(), points.end());
    fill();
    choose(PlaceOffer::From::point);
    m_list->setFocus(Qt::OtherFocusReason);
}

const PlaceOffer* PlaceDialog::taken() const
{
    const int row = m_list->currentRow();
    return result() == QDialog::Accepted && row >= 0 ? &m_offers[static_cast<std::size_t>(row)] : nullptr;
}

/// A list would look for a line that begins with the letter.
bool PlaceDialog::eventFilter(QObject* watched, QEvent* event)
{
    if (watched == m_list && event->type() == QEvent::KeyPress) {
        switch (static_cast<QKeyEvent*>(event)->key()) {
        case Qt::Key_T: choose(PlaceOffer::From::tree); return true;
        case Qt::Key_P: choose(PlaceOffer::From::photo); return true;
        case Qt::Key_G: takePoints(); return true;
        default: break;
        }
    }
    return QDialog::eventFilter(watched, event);
}

} // namespace cupule::ui
