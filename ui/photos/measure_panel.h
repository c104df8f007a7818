// The side of the measuring dialog: the size with its error, the two steps, where the error comes from, the colour of a patch.

#pragma once

#include <optional>

#include <QScrollArea>

#include "core/protocol/pack.h"
#include "core/rules/photo_colour.h"
#include "core/rules/photo_measure.h"

class QComboBox;
class QLabel;
class QLineEdit;

namespace cupule::ui {

class RangeStrip;
class RoleLabel;

class MeasurePanel : public QScrollArea {
    Q_OBJECT
public:
    /// `what` is measured, in words; `sign` may be null.
    MeasurePanel(const QString& what, const Pack& pack, const Sign* sign, QWidget* parent = nullptr);
    void setKnown(double millimetres, double uncertaintyMillimetres);
    /// In millimetres; nothing where the field holds no number.
    [[nodiscard]] std::optional<double> known() const;
    [[nodiscard]] double knownUncertainty() const;
    /// Opens the list of coins and cards of known size.
    void askCoin();
    [[nodiscard]] QComboBox* coins() const { return m_coins; }
    [[nodiscard]] QLineEdit* knownField() const { return m_known; }
    /// What the lines give now. Pixels below 0: that line is not set.
    void showLength(const std::optional<PhotoLength>& length, double scalePixels, double linePixels, const QString& fault);
    void showColour(const Lab& colour, const QColor& shown);
    [[nodiscard]] QString number() const;
    [[nodiscard]] QString colour() const;

Q_SIGNALS:
    void knownChanged();

private:
    QWidget* makeMeasuring(const Sign* sign);
    QWidget* makeScale();
    QWidget* makeCoins();
    void takeCoin(int index);
    QWidget* makeErrors();

    const Pack& m_pack;
    RoleLabel* m_number;
    RoleLabel* m_sure;
    RoleLabel* m_between;
    RangeStrip* m_range;
    QComboBox* m_coins;
    RoleLabel* m_coinSource;
    QLineEdit* m_known;
    QLineEdit* m_knownError;
    RoleLabel* m_scale;
    RoleLabel* m_line;
    QLabel* m_errors[3];
    QLabel* m_swatch;
    RoleLabel* m_colour;
};

} // namespace cupule::ui
