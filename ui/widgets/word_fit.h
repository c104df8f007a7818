// A dialog of wrapped words is as high as they are at its width and at the text size in force. Qt asks a window that has a
// minimum of its own for neither, and shows no dialog higher than two thirds of the screen.

#pragma once

#include <QObject>
#include <QSize>

class QDialog;

namespace cupule::ui {

/// What a dialog wants, bounded by the lowest screen that is promised (1366 by 768, less the bars of the system).
QSize onAnyScreen(const QSize& wanted);

class WordFit : public QObject {
    Q_OBJECT
public:
    /// Belongs to the dialog. `width`: the least, in pixels at text 100 %; its layout may ask for more.
    WordFit(QDialog* dialog, int width);

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    void fit();
    QDialog* m_dialog;
    int m_width;
    bool m_fitting = false;
};

} // namespace cupule::ui
