#include "ui/photos/picture.h"

#include <algorithm>

#include <QCoreApplication>
#include <QImageReader>
#include <QPointer>
#include <QThreadPool>

#include "ui/photos/heic.h"

namespace cupule::ui {

namespace {

/// Mirrored or flipped first, then turned, as Qt describes it.
QTransform uprightOf(QImageIOHandler::Transformations how)
{
    const double x = how.testFlag(QImageIOHandler::TransformationMirror) ? -1 : 1;
    const double y = how.testFlag(QImageIOHandler::TransformationFlip) ? -1 : 1;
    QTransform turned;
    if (how.testFlag(QImageIOHandler::TransformationRotate90))
        turned.rotate(90);
    return QTransform::fromScale(x, y) * turned;
}

QImage storedImage(const QString& path, QTransform& upright)
{
    if (isHeic(path))
        return readHeic(path);
    QImageReader reader(path);
    reader.setAutoTransform(false);
    upright = uprightOf(reader.transformation());
    return reader.read();
}

} // namespace

QImage readSmall(const QString& path, int side)
{
    QImage image;
    if (isHeic(path)) {
        image = readHeic(path);
    } else {
        QImageReader reader(path);
        reader.setAutoTransform(true);
        // four times as large as asked for: what the decoder leaves out by itself may be coarse
        const QSize whole = reader.size(), enough(4 * side, 4 * side);
        if (whole.width() > enough.width() || whole.height() > enough.height())
            reader.setScaledSize(whole.scaled(enough, Qt::KeepAspectRatio).expandedTo({1, 1}));
        image = reader.read();
    }
    if (image.width() > side || image.height() > side)
        image = image.scaled(side, side, Qt::KeepAspectRatio, Qt::SmoothTransformation);
    return image;
}

std::optional<std::uint64_t> lookAtPicture(const std::string& path)
{
    constexpr int side = 128;
    const QImage small = readSmall(QString::fromStdString(path), side);
    return small.isNull() ? std::nullopt : likenessOf(smallGrey(small));
}

Picture readPicture(const QString& path)
{
    constexpr int smallest = 700;   // no view of a photo is smaller
    Picture picture;
    const QImage image = storedImage(path, picture.upright);
    if (image.isNull())
        return picture;
    picture.levels.push_back(image.convertToFormat(QImage::Format_RGB32));
    while (std::max(picture.levels.back().width(), picture.levels.back().height()) > 2 * smallest) {
        const QImage& last = picture.levels.back();
        picture.levels.push_back(last.scaled((last.size() / 2).expandedTo({1, 1}), Qt::IgnoreAspectRatio, Qt::SmoothTransformation));
    }
    return picture;
}

SmallGrey smallGrey(const QImage& upright)
{
    SmallGrey grey{};
    const QImage small = upright.scaled(9, 8, Qt::IgnoreAspectRatio, Qt::SmoothTransformation)
                             .convertToFormat(QImage::Format_Grayscale8);
    if (small.isNull())
        return grey;
    for (int row = 0; row < 8; ++row)
        std::copy_n(small.constScanLine(row), 9, grey.begin() + row * 9);
    return grey;
}

std::vector<Rgb8> patchOf(const QImage& stored, QPoint centre, int side)
{
    std::vector<Rgb8> pixels;
    const QRect square = QRect(centre.x() - side / 2, centre.y() - side / 2, side, side).intersected(stored.rect());
    for (int y = square.top(); y <= square.bottom(); ++y)
        for (int x = square.left(); x <= square.right(); ++x) {
            const QRgb pixel = stored.pixel(x, y);
            pixels.push_back({static_cast<std::uint8_t>(qRed(pixel)), static_cast<std::uint8_t>(qGreen(pixel)),
                              static_cast<std::uint8_t>(qBlue(pixel))});
        }
    return pixels;
}

void PictureReader::read(int index, const QString& path)
{
    const int asked = ++m_asked;
    QThreadPool::globalInstance()->start([reader = QPointer<PictureReader>(this), asked, index, path] {
        Picture picture = readPicture(path);
        QMetaObject::invokeMethod(
            QCoreApplication::instance(),
            [reader, asked, index, picture = std::move(picture)] {
                if (reader && reader->m_asked == asked)
                    Q_EMIT reader->done(index, picture);
            },
            Qt::QueuedConnection);
    });
}

} // namespace cupule::ui
