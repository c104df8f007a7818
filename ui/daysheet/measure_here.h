// Measuring a sign of the open visit on its photos: the size goes into the visit, the two lines onto the photo.

#pragma once

#include <string>

#include <QString>

class QWidget;

namespace cupule::ui {

class DayDesk;

void measureOnPhoto(DayDesk& desk, const QString& sign, QWidget* parent);
/// "from photo 3 of 4" where the sign's measure was taken on a photo of the visit; otherwise empty.
QString measuredOnPhoto(const DayDesk& desk, const std::string& sign, double measure);

} // namespace cupule::ui
