// Drawn figures: leaves, shoots, twigs, husks and galls, each made from a plain description by a seeded
// painter.
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

class QPainter;

namespace cupule::ui {

struct FigureSpec {
    QString kind = {}; ///< id of the registry, "gall_midrib"
    std::uint32_t seed = 1;
    double gallMillimetres = 0; ///< largest gall; 0 = the figure's own
    QString gallColour = {};    ///< "green", "pink", "red", "brown", "dry"; empty = the figure's own
    double turnDegrees = 0;     ///< whole figure, clockwise
    bool scaleBar = false;
    int exitHoles = -1;  ///< in the gall, as far as there is room; -1 = the figure's own
    double clutter = 0;  ///< 0 the plant part alone to 1 crowded by leaves or twigs behind and at the edges
    double light = 0;    ///< -1 overcast and cool, 0 as in a book, 1 a low warm sun
    double slant = 0;    ///< degrees, 0 to 55: turned away about its upright axis, so narrower; its height stays true
    bool operator==(const FigureSpec&) const = default;
};

/// The same kind as it is met outdoors: turn, slant, light and clutter drawn from its seed, up to `much`, 0 a plate to 1 a thicket.
FigureSpec asMet(FigureSpec spec, double much);

/// Every id of the registry, sorted.
QStringList figureIds();
bool hasFigure(const QString& kind);
/// What is to be seen, in a few words.
QString figureWords(const QString& kind);
/// Extent of the drawn parts in millimetres on the plant.
QRectF figureExtent(const FigureSpec& spec);
/// Paints the figure as large as fits into `where`, centred. Returns device units for one millimetre on the
/// plant.
double paintFigure(QPainter& painter, const QRectF& where, const FigureSpec& spec);

struct FigurePart {
    QString words; ///< "lump, part of the midrib"
    QPointF at;
};
/// What can be pointed at, where paintFigure() with the same description and place paints it; the most telling first, at most nine.
std::vector<FigurePart> figureParts(const QRectF& where, const FigureSpec& spec);

/// A picture as if photographed: out-of-focus ground, light of the day, a ruler beside the organ, grain.
/// Used for invented demonstration photos and for practice.
struct PhotoSpec {
    FigureSpec figure;
    QSize size{1600, 1200};
    enum class Ground { leaves, sky, bark, paper } ground = Ground::leaves;
    double warmth = 0; ///< -1 cool shade to 1 low sun
    double blur = 0;   ///< pixels; a photo that shows too little
    bool ruler = true;
};
QImage figurePhoto(const PhotoSpec& spec);

} // namespace cupule::ui
