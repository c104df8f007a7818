// One photo with two lines on it: a scale along something of known length, and what is measured.
//
//  - Ends are kept in stored pixels, so that turning, zooming and the EXIF orientation never move them.
//  - Each end remembers how finely it was set: 2 pixels of the screen at the zoom of that moment.
//  - Keys: Tab and Shift+Tab next and last end (past the last one the focus goes on), arrows move it by a pixel of the screen,
//    with Shift by ten, Ctrl+arrows or Space and dragging move the picture, + - 0 zoom, R turns, [ ] darker and brighter.
//  - A line counts once both of its ends were set by hand.

#pragma once

#include <array>
#include <optional>
#include <vector>

#include <QWidget>

#include "core/rules/photo_measure.h"
#include "ui/photos/picture.h"

namespace cupule::ui {

/// A line that was measured before: only shown. Stored pixels.
struct EarlierLine {
    QPointF from, to;
    QString words;
};

class PhotoCanvas : public QWidget {
    Q_OBJECT
public:
    enum class Mode { look, lines, patch };

    explicit PhotoCanvas(QWidget* parent = nullptr);
    /// Takes the lines away and fits the picture. Null: `words` stand in its place.
    void setPicture(const Picture& picture, const QString& words = {});
    void setMode(Mode mode);
    [[nodiscard]] Mode mode() const { return m_mode; }
    /// What stands by the lines; empty: nothing.
    void setLabels(const QString& scale, const QString& line);

    /// Drawn on this picture; setPicture() with the next one leaves them to be set anew.
    void setEarlier(const std::vector<EarlierLine>& lines);
    [[nodiscard]] const std::vector<EarlierLine>& earlier() const { return m_earlier; }
    void showEarlier(bool shown);
    [[nodiscard]] bool earlierShown() const { return m_earlierShown; }

    [[nodiscard]] std::optional<PixelLine> scaleLine() const { return line(0); }
    [[nodiscard]] std::optional<PixelLine> measuredLine() const { return line(2); }
    void forgetMeasured();
    [[nodiscard]] int activeEnd() const { return m_active; }
    /// Screen pixels for one pixel of the picture.
    [[nodiscard]] double zoom() const { return m_zoom; }
    [[nodiscard]] int turnDegrees() const { return m_turn; }
    [[nodiscard]] int brightness() const { return m_brightness; }
    [[nodiscard]] QPointF toScreen(const QPointF& stored) const { return transform().map(stored); }
    [[nodiscard]] QPointF toStored(const QPointF& screen) const { return transform().inverted().map(screen); }

    void zoomBy(double factor);
    void fit();
    void turn();
    void brighten(int steps); ///< each a tenth, kept within 6 either way
    QSize sizeHint() const override { return {760, 560}; }
    QSize minimumSizeHint() const override { return {300, 220}; }

Q_SIGNALS:
    void linesChanged();
    void viewChanged();
    /// The mean colour of a patch of so many pixels each way.
    void patchPicked(const cupule::Lab& colour, const QColor& shown, int side);

protected:
    void paintEvent(QPaintEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void keyReleaseEvent(QKeyEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void mouseReleaseEvent(QMouseEvent* event) override;
    void wheelEvent(QWheelEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    bool focusNextPrevChild(bool next) override;

private:
    struct End {
        QPointF at;                ///< stored pixels
        double endPixels = 0;
        bool set = false;          ///< by hand
    };

    [[nodiscard]] QTransform transform() const;
    [[nodiscard]] std::optional<PixelLine> line(std::size_t first) const;
    [[nodiscard]] double fittingZoom() const;
    void placeEnds(std::size_t first, double height);
    void setEnd(std::size_t end, const QPointF& screen);
    void nudge(const QPointF& step);
    void pickPatch();
    bool viewKey(const QKeyEvent& event);
    [[nodiscard]] int endNear(const QPointF& screen) const;
    [[nodiscard]] int patchSide() const;

    void paintPicture(QPainter& painter) const;
    void paintLine(QPainter& painter, std::size_t first) const;
    void paintEarlier(QPainter& painter) const;
    void paintLoupe(QPainter& painter) const;
    void paintPatch(QPainter& painter) const;

    Picture m_picture;
    QString m_words, m_scaleLabel, m_lineLabel;
    Mode m_mode = Mode::look;
    std::vector<EarlierLine> m_earlier;
    bool m_earlierShown = true;
    std::array<End, 4> m_ends{};   ///< scale from and to, measured from and to
    int m_active = 0;
    QPointF m_patch;               ///< stored pixels
    double m_zoom = 1;
    bool m_fitted = true;
    int m_turn = 0, m_brightness = 0;
    QPointF m_pan;                 ///< screen pixels
    bool m_space = false, m_panning = false, m_dragging = false;
    QPointF m_last;
};

} // namespace cupule::ui
