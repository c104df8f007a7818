// The body of a gall: a core with swollen lobes, its colour through the season, its gloss; and the collar by
// which the organ swells into it.

#pragma once

#include <vector>

#include "core/training/depiction.h"
#include "core/training/dice.h"
#include "ui/figures/drawing.h"

namespace cupule::ui {

struct GallForm {
    QPointF centre;
    double diameter = 14; ///< mm, the longest
    double axis = -90;    ///< degrees, along the organ
    GallTone colour = GallTone::pink;
    int lobes = 0; ///< 0 = by size
    int holes = 0; ///< round exit holes, 1 to 1.5 mm
};

class Gall {
public:
    Gall(const GallForm& form, const Dice& dice);
    void draw(Drawing& drawing) const;
    [[nodiscard]] const QPainterPath& outline() const { return m_outline; }
    [[nodiscard]] const QPointF& centre() const { return m_form.centre; }
    [[nodiscard]] double diameter() const { return m_form.diameter; }
    [[nodiscard]] Lab base() const;
    struct Hole {
        QPointF at;
        double diameter; ///< mm
    };
    [[nodiscard]] const std::vector<Hole>& holes() const { return m_holes; }

private:
    struct Disc {
        QPointF centre;
        double radius;
    };
    [[nodiscard]] double field(const QPointF& p) const;
    void grow();
    void drawBlush(Drawing& drawing) const;
    void drawLobes(Drawing& drawing) const;
    void drawFresh(Drawing& drawing) const;
    void drawDry(Drawing& drawing) const;
    void placeHoles();
    void drawHoles(Drawing& drawing) const;

    GallForm m_form;
    Dice m_dice;
    std::vector<Disc> m_discs; ///< the core first
    QPainterPath m_outline;
    std::vector<Hole> m_holes;
};
/// As the description asks of its first gall, or as the plate has it.
double gallSize(const Depiction& depiction, double own);
GallTone gallTone(const Depiction& depiction, GallTone own);
int exitHoles(const Depiction& depiction, int own);

/// The organ swells into the gall: drawn before the body. `outward` runs along the organ from the gall's
/// centre to where the organ has its own width again.
void drawCollar(Drawing& drawing, const Gall& gall, const std::vector<QPointF>& outward, double organWidth,
                const Lab& organ, double gallShare);
/// From the centre out, straight.
std::vector<QPointF> straightOut(const Gall& gall, double degrees, double diameters = 1.02);
/// A soft shadow under the body; clip it to the organ before.
void drawGallShadow(Drawing& drawing, const Gall& gall);

} // namespace cupule::ui
