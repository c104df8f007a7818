#include "ui/daysheet/measure_here.h"

#include <cmath>

#include "ui/bridge/text.h"
#include "ui/daysheet/day_desk.h"
#include "ui/figures/figure_names.h"
#include "ui/photos/measure_dialog.h"

namespace cupule::ui {

void measureOnPhoto(DayDesk& desk, const QString& sign, QWidget* parent)
{
    if (!desk.mayEdit())
        return;
    const std::vector<PhotoNote> notes = desk.page()->photos;
    MeasureRequest request;
    request.sign = utf8(sign);
    request.figure = figureForSign(request.sign);
    if (desk.page()->tree)
        request.tree = text(desk.page()->tree->label);
    std::vector<PhotoToMeasure> photos;
    for (const PhotoNote& note : notes) {
        photos.push_back({desk.photoPath(note.id), text(note.originalName), note.measures});
        for (const PhotoMeasure& earlier : note.measures)
            request.knownMillimetres = earlier.scaleMillimetres;   // the same ruler, as a rule
    }
    MeasureDialog dialog(photos, request, desk.pack(), parent);
    if (dialog.exec() != QDialog::Accepted || !dialog.taken())
        return;
    desk.takeMeasure(notes.at(std::size_t(dialog.taken()->photo)), dialog.taken()->note(request.sign));
}

QString measuredOnPhoto(const DayDesk& desk, const std::string& sign, double measure)
{
    const Sign* known = desk.pack().sign(sign);
    const std::vector<PhotoNote>& photos = desk.page()->photos;
    for (std::size_t i = 0; known != nullptr && i < photos.size(); ++i)
        for (const PhotoMeasure& taken : photos[i].measures)
            if (taken.sign == sign && std::abs(taken.millimetres - measure * millimetresOf(*known)) < 1e-6)
                return DayDesk::tr("from photo %1 of %2").arg(i + 1).arg(photos.size());
    return {};
}

} // namespace cupule::ui
