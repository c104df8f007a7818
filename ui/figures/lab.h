// Colours as lightness and two hues (CIELAB, D65), in which mixing and shading look even. Source of the
// formulas: CIE 15:2004 and IEC 61966-2-1 (sRGB).

#pragma once

#include <QColor>

namespace cupule::ui {

struct Lab {
    double L = 50, a = 0, b = 0;
    [[nodiscard]] Lab moved(double dL, double da = 0, double db = 0) const
    {
        return {L + dL, a + da, b + db};
    }
    [[nodiscard]] QColor colour(double opacity = 1) const;
};
Lab mixed(const Lab& one, const Lab& other, double shareOfOther);

} // namespace cupule::ui
