// What the projector shows: one step of the walk, keys only, nothing of the trainer's notes. Light by default, since rooms are bright.
//
// Keys: Space, Right, PgDown next page or step; B, Left, PgUp back; F figure alone; 1 to 9 point to a part, 0 to none; W white; L light
// or dark; Home the first step; Esc ends.

#pragma once

#include <QWidget>

#include "ui/training/slide.h"

namespace cupule::ui {

class WalkDesk;

class PresenterWindow : public QWidget {
    Q_OBJECT
public:
    PresenterWindow(WalkDesk& desk, QWidget* parent);
    /// Full screen: on another screen than the trainer's where there is one.
    void present();
    [[nodiscard]] int page() const { return m_page; }
    [[nodiscard]] int pointed() const { return m_pointed; }
    [[nodiscard]] bool isWhite() const { return m_white; }
    [[nodiscard]] bool isFigureAlone() const { return m_alone; }

protected:
    void paintEvent(QPaintEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;

private:
    void take();
    void turn(int by);
    void point(int part);

    WalkDesk& m_desk;
    Slide m_slide;
    int m_step = -1, m_page = 0, m_pointed = 0, m_parts = 0;
    bool m_white = false, m_alone = false, m_dark = false;
};

} // namespace cupule::ui
