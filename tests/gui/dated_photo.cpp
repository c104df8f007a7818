#include "tests/gui/dated_photo.h"

#include <random>

#include <QBuffer>

namespace cupule::test {

namespace {

/// An APP1 segment with the time and its offset from UTC alone: JEITA CP-3451C (Exif 2.3), 4.5 and 4.6.
QByteArray timeSegment(const QDateTime& taken)
{
    QByteArray tiff = QByteArray::fromHex("49492a0008000000"                       // little-endian, directory at 8
                                          "010069870400010000001a00000000000000"   // one entry: Exif directory at 26
                                          "0200"                                   // two entries:
                                          "039002001400000038000000"               // DateTimeOriginal at 56
                                          "11900200070000004c00000000000000");     // OffsetTimeOriginal at 76
    tiff += taken.toString(QStringLiteral("yyyy:MM:dd HH:mm:ss")).toLatin1() + '\0' + QByteArray("+01:00", 7);
    const QByteArray body = QByteArray("Exif\0\0", 6) + tiff;
    const auto size = static_cast<int>(body.size()) + 2;
    return QByteArray("\xFF\xE1", 2) + static_cast<char>(size >> 8) + static_cast<char>(size & 0xFF) + body;
}

} // namespace

QByteArray datedJpeg(const QImage& picture, const QDateTime& taken)
{
    QBuffer buffer;
    buffer.open(QIODevice::WriteOnly);
    picture.save(&buffer, "JPEG", 80);
    QByteArray bytes = buffer.data();
    bytes.insert(2, timeSegment(taken));
    return bytes;
}

QImage patches(unsigned number, const QSize& size)
{
    std::mt19937 dice(number);
    QImage small(64, 48, QImage::Format_RGB32);
    for (int y = 0; y < small.height(); ++y)
        for (int x = 0; x < small.width(); ++x)
            small.setPixel(x, y, static_cast<QRgb>(dice()) | 0xFF000000U);
    return small.scaled(size, Qt::IgnoreAspectRatio, Qt::SmoothTransformation);
}

} // namespace cupule::test
