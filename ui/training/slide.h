// One step of the walk as it stands on the wall: plain words and figures, made from what the pack says.

#pragma once

#include <optional>
#include <vector>

#include <QColor>
#include <QDate>
#include <QString>
#include <QStringList>

#include "core/training/lesson.h"
#include "ui/figures/figure.h"

namespace cupule::ui {

struct SlideFigure {
    Depiction figure;
    QString words;
};

struct SlideText {
    QString head;
    QStringList lines;
    bool framed = false; ///< what must not be concluded: a frame of its own
};

struct SlidePhoto {
    QString path; ///< empty where the picture is not there
    QString words;
};

struct Slide {
    QString title, more;
    std::optional<Depiction> figure;
    std::vector<SlideFigure> others; ///< what other trees show
    std::vector<SlideText> texts;
    std::vector<SlidePhoto> photos;
    double usualMin = 0, usualMax = 0; ///< mm; 0 where it is not in mm
    std::vector<SeasonState> year;     ///< of each day of a leap year
    QColor fill;                       ///< of the expected days; none: as a leaf
    int month = 1;
    QDate today;                       ///< null: no needle
};

/// Photos are those of the step, without their paths.
Slide slideOf(const ArrangedStep& step, const Pack& pack, const WalkPlace& place);
/// The name of a step in a list: short.
QString stepName(const WalkStep& step, const Pack& pack);

} // namespace cupule::ui
