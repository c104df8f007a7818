// A photo decoded for looking and measuring: its pixels as stored, smaller copies for fast painting, and the way to hold it up.
// Decoding runs beside the window; the file is only read.

#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include <QImage>
#include <QObject>
#include <QString>
#include <QTransform>

#include "core/rules/photo_colour.h"
#include "core/rules/photo_likeness.h"

namespace cupule::ui {

struct Picture {
    std::vector<QImage> levels;    ///< as stored, then each half as large
    QTransform upright;            ///< stored pixels to upright ones, about the origin (EXIF orientation)
    [[nodiscard]] bool isNull() const { return levels.empty(); }
    [[nodiscard]] QSize size() const { return levels.empty() ? QSize() : levels.front().size(); }
};

/// Null where the file cannot be decoded. Any thread.
Picture readPicture(const QString& path);
/// Upright, and no larger than `side` either way: for lists. Much faster than the whole picture. Null as above. Any thread.
QImage readSmall(const QString& path, int side);
/// The hash of what is seen (core/rules/photo_likeness.h), for taking photos in. Any thread.
std::optional<std::uint64_t> lookAtPicture(const std::string& path);

/// Grey, 9 x 8, upright: what the difference hash is made from.
SmallGrey smallGrey(const QImage& upright);

/// Colours of a square of stored pixels around a place, cut at the edges of the picture.
std::vector<Rgb8> patchOf(const QImage& stored, QPoint centre, int side);

/// Reads one picture at a time; an answer that was overtaken by another question is dropped.
class PictureReader : public QObject {
    Q_OBJECT
public:
    using QObject::QObject;
    void read(int index, const QString& path);

Q_SIGNALS:
    void done(int index, const cupule::ui::Picture& picture);

private:
    int m_asked = 0;
};

} // namespace cupule::ui
