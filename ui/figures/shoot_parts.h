// What galls make of shoots, twigs and catkins, for plates and for whatever else carries them.

#pragma once

#include <vector>

#include "ui/figures/flowers.h"
#include "ui/figures/gall.h"
#include "ui/figures/leaves.h"
#include "ui/figures/twigs.h"

namespace cupule::ui {

/// A shoot that ends in its gall, in a rosette of small leaves: some behind the shoot, two before it.
class TipGall {
public:
    /// Of `form`, what lies beside place and axis counts.
    TipGall(const Stem& stem, GallForm form, const Dice& dice);
    void drawBehind(Drawing& drawing) const;
    void drawBefore(Drawing& drawing) const;
    [[nodiscard]] const QPointF& centre() const { return m_form.centre; }
    std::optional<Lab> leaves; ///< their colour, where it is not that of summer

private:
    void leaf(Drawing& drawing, int index, double angle, double length, double from) const;
    GallForm m_form;
    Dice m_dice;
    double m_stem; ///< mm, width
};

void drawStipule(Drawing& drawing, const QPointF& base, double heading, double length, double bend);
/// Below the leaf stalk at a node; `side` 1 where the leaf stands left of the shoot, -1 right. Gives the gall's middle.
QPointF drawStipuleGall(Drawing& drawing, const QPointF& node, double way, int side, GallForm form, const Dice& dice);

/// A catkin that bends at its gall and has no flowers beside it.
class GalledCatkin {
public:
    GalledCatkin(CatkinForm catkin, GallForm form, const Dice& dice);
    void drawAxis(Drawing& drawing);
    void drawBody(Drawing& drawing) const;
    [[nodiscard]] QPointF at(double share) const { return m_axis[static_cast<std::size_t>(share * 40)]; }
    [[nodiscard]] QPointF centre() const { return at(m_catkin.gallAt); }

private:
    CatkinForm m_catkin;
    GallForm m_form;
    Dice m_dice;
    std::vector<QPointF> m_axis;
};

/// A dead, curled rag of a leaf.
void drawRag(Drawing& drawing, const QPointF& base, double heading, double length, Dice dice);
/// A dead leaf that is still whole, scrunched and hanging.
void drawDeadLeaf(Drawing& drawing, const QPointF& node, double heading, double length, const Dice& dice);

} // namespace cupule::ui
