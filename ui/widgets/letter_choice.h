// A short list of answers, one letter each: the first letter of a line answers and goes on to the next field.

#pragma once

#include <QComboBox>

namespace cupule::ui {

class LetterChoice : public QComboBox {
    Q_OBJECT
public:
    explicit LetterChoice(QWidget* parent = nullptr);

protected:
    void keyPressEvent(QKeyEvent* event) override;
    /// Scrolling the page must not change an answer.
    void wheelEvent(QWheelEvent* event) override;
};

} // namespace cupule::ui
