// Core text to QString and back, and numbers with units as people read them. Qt Core only.

#pragma once

#include <string>
#include <string_view>

#include <QString>
#include <QStringList>

namespace cupule::ui {

QString text(std::string_view utf8);
std::string utf8(const QString& text);

/// In the user's locale, without trailing zeros.
QString numberText(double value, int mostDecimals = 1);
/// "7 m", "350 m", "4.2 km", "38 km".
QString distanceText(double metres);
/// "12 min", "21 h 2 min", "3 days".
QString durationText(double minutes);
/// "a, b and c".
QString listText(const QStringList& items);
/// First letter upper case.
QString sentenceStart(const QString& text);

} // namespace cupule::ui
