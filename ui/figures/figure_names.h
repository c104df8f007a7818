// Which drawn figure shows a sign or a state of a character of the pack. A pack with other ids has no figures, and is none
// the worse for it.

#pragma once

#include <string>

#include <QString>

namespace cupule::ui {

/// An id of the registry, or empty: "S02" gives "gall_midrib".
QString figureForSign(const std::string& sign);
/// The same for a state of a character of the host key: "K15", "dense-spines" gives "husk_castanea".
QString figureForState(const std::string& character, const std::string& state);

} // namespace cupule::ui
