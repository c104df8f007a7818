// HEIC pictures, which Qt cannot read: decoded by libheif. The library is loaded when the first such picture is opened, since linking
// it would cost every start.

#pragma once

#include <QImage>
#include <QString>

namespace cupule::ui {

/// By how the file begins, whatever its name.
bool isHeic(const QString& path);
/// Upright: such a file says itself how it is turned, and the library follows. Null where it cannot be decoded, or where the library
/// is not there. Any thread.
QImage readHeic(const QString& path);

} // namespace cupule::ui
