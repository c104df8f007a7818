// Drawn figures: leaves, shoots, twigs, husks and galls, each painted from a plain description (core/training/depiction.h) by a
// seeded painter.
//
//  - Everything is constructed in millimetres on the plant and scaled last, so that a scale bar is true.
//  - The same description gives the same figure; another seed varies it within the kind's own range, never
//    across it.
//  - No background: every organ carries its own outline and middle tone, so it holds on light and dark pages.
//  - Light comes from the upper left. Any thread may paint into a QImage.
//
// One file for each family of figures; figureIds() lists the registry.

#pragma once

#include <cstdint>
#include <vector>

#include <QImage>
#include <QRectF>
#include <QStringList>

#include "core/training/depiction.h"

class QPainter;

namespace cupule::ui {

/// A plate by its id in the registry.
Depiction plate(const QString& id, std::uint32_t seed = 1);

/// Every id of the registry, sorted.
QStringList figureIds();
bool hasFigure(const QString& kind);
/// The id of the plate that is most like it; empty where nothing paints it.
QString figureFor(const Depiction& depiction);
/// What is to be seen, in a few words.
QString figureWords(const QString& kind);
/// Extent of the drawn parts in millimetres on the plant.
QRectF figureExtent(const Depiction& depiction);
/// Paints the figure as large as fits into `where`, centred. Returns device units for one millimetre on the
/// plant.
double paintFigure(QPainter& painter, const QRectF& where, const Depiction& depiction);

struct FigurePart {
    QString words; ///< "lump, part of the midrib"
    QPointF at;
};
/// What can be pointed at, where paintFigure() with the same description and place paints it; the most telling first, at most nine.
std::vector<FigurePart> figureParts(const QRectF& where, const Depiction& depiction);

/// A picture as if photographed: out-of-focus ground, light of the day, a ruler beside the organ, grain.
/// Used for invented demonstration photos and for practice.
struct PhotoSpec {
    Depiction figure;
    QSize size{1600, 1200};
    enum class Ground { leaves, sky, bark, paper } ground = Ground::leaves;
    double warmth = 0; ///< -1 cool shade to 1 low sun
    double blur = 0;   ///< pixels; a photo that shows too little
    bool ruler = true;
};
QImage figurePhoto(const PhotoSpec& spec);

} // namespace cupule::ui
