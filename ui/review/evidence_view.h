// Photos of the record, large, beside the drawn figure of the sign that is claimed. Keys: , and . other photo, + and - zoom,
// 0 fits, T turns, [ and ] darker and brighter, F the figure of the next sign that is claimed. Pictures are decoded with their orientation; originals are never changed.

#pragma once

#include <vector>

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
    [[nodiscard]] QString figureShown() const { return m_drawn.empty() ? QString() : m_drawn[m_drawnAt].figure; }
    [[nodiscard]] int photoCount() const { return static_cast<int>(m_photos.size()); }
    QSize sizeHint() const override { return {600, 360}; }
    QSize minimumSizeHint() const override { return {280, 150}; }

protected:
    void paintEvent(QPaintEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;

private:
    void load();
    void lookAt(std::size_t photo);
    void paintPhoto(QPainter& painter, const QRect& room);

    ReviewDesk& m_desk;
    std::vector<PhotoNote> m_photos;
    struct Drawn {
        QString figure, words;
    };
    std::vector<Drawn> m_drawn;             ///< of each sign that is claimed, then of the host
    std::size_t m_drawnAt = 0;
    std::size_t m_at = 0;
    Thumbnails m_pictures{2400, 4, this};   ///< decoded beside the window
    QString m_path, m_shown;                ///< of the photo shown, and its name
    double m_zoom = 1;
    int m_turn = 0;
    int m_brightness = 0;                   ///< steps of a tenth, kept within 6 either way
};

} // namespace cupule::ui
