// Small copies of photos for lists: read one after the other beside the window, those asked for last first.

#pragma once

#include <QCache>
#include <QImage>
#include <QObject>
#include <QSet>
#include <QThreadPool>

namespace cupule::ui {

class Thumbnails : public QObject {
    Q_OBJECT
public:
    /// `side`: pixels of the longer side; `most`: so many are kept.
    Thumbnails(int side, int most, QObject* parent = nullptr);
    ~Thumbnails() override;
    /// Null while it is being read; ready() tells when to ask again.
    [[nodiscard]] QImage of(const QString& path);
    /// Read, and cannot be shown.
    [[nodiscard]] bool failed(const QString& path) const { return m_failed.contains(path); }
    [[nodiscard]] bool isSettled() const { return m_waiting.isEmpty(); }

Q_SIGNALS:
    void ready(const QString& path);

private:
    void keep(const QString& path, const QImage& image);

    int m_side;
    int m_asked = 0;
    QCache<QString, QImage> m_images;
    QSet<QString> m_waiting, m_failed;
    QThreadPool m_pool;
};

} // namespace cupule::ui
