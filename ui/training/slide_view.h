// The slide of a step as a part of the trainer's own page: as it stands on the wall, without its keys.

#pragma once

#include <QWidget>

#include "ui/training/slide.h"

namespace cupule::ui {

class WalkDesk;

class SlideView : public QWidget {
    Q_OBJECT
public:
    SlideView(WalkDesk& desk, QWidget* parent);
    /// -1: nothing.
    void setStep(int step, int page = 0);
    [[nodiscard]] int step() const { return m_step; }
    QSize sizeHint() const override { return {640, 360}; }
    QSize minimumSizeHint() const override { return {160, 90}; }
    bool hasHeightForWidth() const override { return true; }
    int heightForWidth(int width) const override { return width * 9 / 16; }

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    WalkDesk& m_desk;
    Slide m_slide;
    int m_step = -1, m_page = 0;
};

} // namespace cupule::ui
