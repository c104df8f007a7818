// What is said about photos of a day: where they may belong and why, and how the camera's clock stands.

#pragma once

#include <QString>

#include "ui/daysheet/photos_desk.h"

namespace cupule::ui {

/// The name of its file; "a photo" in the hidden mode.
QString photoName(const PhotoNote& photo);
/// "11.20", "20 June, 11.20", "no date of taking".
QString takenText(const PhotoNote& photo, CivilDate day);
/// "T-03, visited at 11.20".
QString visitText(const VisitLine& line);
/// What speaks for a visit: minutes and metres apart, each with how sure it is.
QString matchText(const PhotoMatch& match, const PhotosDesk& desk);
/// The second line of a row: where it goes, or why it goes nowhere.
QString rowText(const PhotoRow& row, const PhotosDesk& desk);
/// More at length, beside the large picture.
QString rowDetails(const PhotoRow& row, const PhotosDesk& desk);
/// "from the GPS times of 3 photos of this day, which agree to ± 4 s".
QString clockText(const PhotosDesk& desk);
/// "It looks like …": how much, what counts, and what is known of both.
QString copyText(const LikelyCopy& copy, const PhotosDesk& desk);
/// What a photo shows, by name; empty where nothing is said.
QString showsText(const PhotoNote& photo, const Pack& pack);
/// Signs and characters by name, and the crown and the shoot.
QString evidenceName(const std::string& id, const Pack& pack);

} // namespace cupule::ui
