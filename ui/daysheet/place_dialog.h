// Where a visit was, taken from what is known instead of typed: the tree, a photo, a point of a receiver. The list beside a map that
// shows them all; the chosen one is ringed.
//
// Keys: Up and Down choose, T the tree, P the next photo, G takes the points of a GPX file in, Enter takes, Escape leaves.

#pragma once

#include <functional>
#include <vector>

#include <QDialog>

#include "core/task/place_offers.h"
#include "ui/map/map_scene.h"

class QLabel;
class QListWidget;

namespace cupule::ui {

class KeyButton;
class SmallMap;

class PlaceDialog : public QDialog {
    Q_OBJECT
public:
    /// Points of a file that somebody chose; empty where nobody did or it could not be read, which has been said then.
    using ReadPoints = std::function<std::vector<PlaceOffer>()>;

    PlaceDialog(MapScene scene, std::vector<PlaceOffer> offers, ReadPoints readPoints, QWidget* parent);
    /// What was taken; null unless the dialog was accepted.
    [[nodiscard]] const PlaceOffer* taken() const;

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    QWidget* buildButtons();
    void fill();
    void choose(PlaceOffer::From from);
    void showChosen();
    void takePoints();
    [[nodiscard]] QString wordsOf(const PlaceOffer& offer) const;

    MapScene m_scene;
    std::vector<PlaceOffer> m_offers;
    ReadPoints m_readPoints;
    QListWidget* m_list;
    QLabel* m_nothing;
    KeyButton* m_take;
    SmallMap* m_map;
};

} // namespace cupule::ui
