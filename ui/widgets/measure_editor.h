// The measurement of one sign, opened below its row: number, unit and error, where the usual range lies, and
// the way to measuring on a photo. Numbers are read with point or comma. Enter takes the number, Esc leaves
// it as it was.

#pragma once

#include <optional>

#include <QWidget>

class QLabel;
class QLineEdit;

namespace cupule::ui {

struct ChecklistRow;
class KeyButton;

/// Usual range as a bar, hard range as a line, the value as a needle.
class RangeStrip : public QWidget {
    Q_OBJECT
public:
    explicit RangeStrip(QWidget* parent = nullptr);
    void setRange(double usualMin, double usualMax, double hardMax, const QString& words);
    void setValue(std::optional<double> value);
    QSize sizeHint() const override;

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    double m_usualMin = 0, m_usualMax = 0, m_hardMax = 0;
    std::optional<double> m_value;
};

class MeasureEditor : public QWidget {
    Q_OBJECT
public:
    explicit MeasureEditor(QWidget* parent = nullptr);
    void setRow(const ChecklistRow& row);
    void start(); ///< focus into the field, everything selected
    [[nodiscard]] QString sign() const { return m_sign; }
    /// Height at this width; the range becomes words where there is no room.
    [[nodiscard]] static int heightFor(const QFont& font);

Q_SIGNALS:
    void taken(const QString& sign, double value); ///< NaN: emptied
    void movedOn();
    void left();
    void photoAsked(const QString& sign);

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    void changeEvent(QEvent* event) override;

private:
    bool take();
    void shorten();

    QString m_sign, m_before;
    bool m_onPhoto = false; ///< a length, which a photo can give
    QLabel* m_name;
    QLineEdit* m_field;
    QLabel* m_unit;
    RangeStrip* m_range;
    QLabel* m_usual;
    KeyButton* m_photo;
    QLabel* m_from;
};

/// A number with point or comma; nothing where the text is none.
std::optional<double> readTypedNumber(const QString& typed);

} // namespace cupule::ui
