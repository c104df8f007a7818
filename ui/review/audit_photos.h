// The photos of a record in a blind round, one at a time. Keys: , and . the other one, + and - zoom, 0 fits, T turns.

#pragma once

#include <vector>

#include <QWidget>

#include "core/record/photo.h"
#include "ui/photos/thumbnails.h"

namespace cupule::ui {

class AuditDesk;

class AuditPhotos : public QWidget {
    Q_OBJECT
public:
    explicit AuditPhotos(AuditDesk& desk, QWidget* parent = nullptr);
    void setPhotos(const std::vector<PhotoNote>& photos);
    QSize sizeHint() const override { return {520, 360}; }
    QSize minimumSizeHint() const override { return {220, 140}; }

protected:
    void paintEvent(QPaintEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;

private:
    void load();

    AuditDesk& m_desk;
    std::vector<PhotoNote> m_photos;
    Thumbnails m_pictures{2400, 4, this};
    QString m_path;
    std::size_t m_at = 0;
    double m_zoom = 1;
    int m_turn = 0;
};

} // namespace cupule::ui
