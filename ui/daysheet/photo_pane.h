// One photo as large as there is room, or two side by side that may be one picture.

#pragma once

#include <QWidget>

#include "ui/photos/thumbnails.h"

namespace cupule::ui {

class PhotoPane : public QWidget {
    Q_OBJECT
public:
    explicit PhotoPane(QWidget* parent = nullptr);
    /// Paths; `second` empty: one photo. `words` stand in the place of a picture that cannot be shown.
    void show(const QString& first, const QString& second, const QString& words);
    [[nodiscard]] bool isSettled() const { return m_thumbnails.isSettled(); }
    QSize sizeHint() const override { return {460, 320}; }
    QSize minimumSizeHint() const override { return {200, 90}; }

Q_SIGNALS:
    void pressed();

protected:
    void paintEvent(QPaintEvent* event) override;
    void mouseDoubleClickEvent(QMouseEvent* event) override;

private:
    void paintOne(QPainter& painter, const QRect& frame, const QString& path);

    Thumbnails m_thumbnails{1000, 8, this};
    QString m_first, m_second, m_words;
};

} // namespace cupule::ui
