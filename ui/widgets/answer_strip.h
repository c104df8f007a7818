// The three answers of a checklist line, as a twig with a lump, with an empty ring, with a ring struck
// through. The chosen one is filled with ink. Used by the checklist's delegate and, on its own, as a widget.

#pragma once

#include <array>

#include <QWidget>

#include "core/record/visit.h"

namespace cupule::ui {

/// Where the cells are; widths from the font, so that nothing is clipped at any text size. Where a row is too
/// narrow the digits go first, then the cells stand under one another.
struct AnswerCells {
    std::array<QRect, 3> cells; ///< seen, not seen, could not be judged
    bool digits = true;         ///< room for "1", "2", "3"
    bool stacked = false;
    [[nodiscard]] QRect all() const { return cells[0].united(cells[2]); }
    /// Nothing answers where no cell is.
    [[nodiscard]] Answer at(const QPoint& point) const;
};
inline constexpr int anyWidth = 1 << 20;
QSize answerStripSize(const QFont& font, int width = anyWidth);
AnswerCells answerCells(const QPoint& topLeft, const QFont& font, int width = anyWidth);

struct AnswerLook {
    Answer answer = Answer::open;
    bool enabled = true;
    bool keysShown = true;       ///< "1", "2", "3" at the right of the cells
    Answer under = Answer::open; ///< cell under the pointer
};
void paintAnswerStrip(QPainter& painter, const AnswerCells& at, const AnswerLook& look, const QFont& font,
                      const QPalette& palette);

/// 1 seen, 2 not seen, 3 could not be judged, 0 or Backspace takes the answer back; Left/Right move.
class AnswerStrip : public QWidget {
    Q_OBJECT
public:
    explicit AnswerStrip(QWidget* parent = nullptr);
    void setAnswer(Answer answer);
    [[nodiscard]] Answer answer() const { return m_answer; }
    QSize sizeHint() const override;
    QSize minimumSizeHint() const override;

Q_SIGNALS:
    void answered(cupule::Answer answer); ///< by the user only

protected:
    void paintEvent(QPaintEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void leaveEvent(QEvent* event) override;
    void changeEvent(QEvent* event) override;

private:
    void choose(Answer answer);
    [[nodiscard]] AnswerCells cells() const;

    Answer m_answer = Answer::open;
    Answer m_under = Answer::open;
};

} // namespace cupule::ui
