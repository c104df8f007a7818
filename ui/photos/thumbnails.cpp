#include "ui/photos/thumbnails.h"

#include <QMetaObject>

#include "ui/photos/picture.h"

namespace cupule::ui {

Thumbnails::Thumbnails(int side, int most, QObject* parent) : QObject(parent), m_side(side), m_images(most)
{
    m_pool.setMaxThreadCount(1);
}

Thumbnails::~Thumbnails()
{
    m_pool.clear();
    m_pool.waitForDone();
}

QImage Thumbnails::of(const QString& path)
{
    if (const QImage* known = m_images.object(path))
        return *known;
    if (!path.isEmpty() && !m_waiting.contains(path) && !m_failed.contains(path)) {
        m_waiting.insert(path);
        m_pool.start(
            [this, path, side = m_side] {
                const QImage image = readSmall(path, side);
                QMetaObject::invokeMethod(this, [this, path, image] { keep(path, image); }, Qt::QueuedConnection);
            },
            ++m_asked);
    }
    return {};
}

void Thumbnails::keep(const QString& path, const QImage& image)
{
    m_waiting.remove(path);
    if (image.isNull())
        m_failed.insert(path);
    else
        m_images.insert(path, new QImage(image));
    Q_EMIT ready(path);
}

} // namespace cupule::ui
