// Photos made here with nothing but a time in their tags.

#pragma once

#include <QByteArray>
#include <QDateTime>
#include <QImage>

namespace cupule::test {

/// A JPEG of the picture that says when it was taken, in British summer time.
QByteArray datedJpeg(const QImage& picture, const QDateTime& taken);
/// A picture of smooth patches, another one for each number.
QImage patches(unsigned number, const QSize& size);

} // namespace cupule::test
