// Photos of the record, large, beside the drawn figure of the sign that is claimed. Keys: , and . other photo, + and - zoom,
// 0 fits, T turns. Pictures are decoded with their orientation; originals are never changed.

#pragma once

#include <QWidget>

#include "core/record/photo.h"
#include "ui/photos/thumbnails.h"

namespace cupule::ui {

class ReviewDesk;

class EvidenceView : public QWidget {
    Q_OBJECT
public:
    explicit EvidenceView(ReviewDesk& desk, QWidget* parent = nullptr);
    /// Photos of the open record and the figure of its first claimed sign.
    void refresh();
    [[nodiscard]] int photoCount() const { return static_cast<int>(m_photos.size()); }
    QSize sizeHint() const override { return {600, 360}; }
    QSize minimumSizeHint() const override { return {280, 150}; }

protected:
    void paintEvent(QPaintEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;

private:
    void load();

    ReviewDesk& m_desk;
    std::vector<PhotoNote> m_photos;
    QString m_figure, m_figureWords;
    std::size_t m_at = 0;
    Thumbnails m_pictures{2400, 4, this};   ///< decoded beside the window
    QString m_path, m_shown;                ///< of the photo shown, and its name
    double m_zoom = 1;
    int m_turn = 0;
};

} // namespace cupule::ui
