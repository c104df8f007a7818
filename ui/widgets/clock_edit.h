// How far a clock is off, as hours, minutes and seconds with a sign: "+00:10:00" runs ahead by ten minutes. The arrow keys up and down
// change the part in which the cursor stands; what is typed counts as soon as it can be read.

#pragma once

#include <optional>

#include <QLineEdit>

namespace cupule::ui {

/// "+00:10:00"; hours may have more digits.
QString offsetText(int seconds);
/// "10" is minutes, "1:05" minutes and seconds, "2:00:00" hours; a sign may lead. Nothing where it cannot be read, or is beyond 400 days.
std::optional<int> readOffset(const QString& typed);

class ClockEdit : public QLineEdit {
    Q_OBJECT
public:
    explicit ClockEdit(QWidget* parent = nullptr);
    /// Shows it without telling.
    void setSeconds(int seconds);
    [[nodiscard]] std::optional<int> seconds() const { return readOffset(text()); }

Q_SIGNALS:
    void secondsTyped(int seconds);

protected:
    void keyPressEvent(QKeyEvent* event) override;
    void focusOutEvent(QFocusEvent* event) override;

private:
    void step(int direction);
};

} // namespace cupule::ui
