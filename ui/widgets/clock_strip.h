// The hours since the seal as a bar against the programme's three limits, each with its word: a mark that is passed is filled,
// so that it can be read without colour.

#pragma once

#include <optional>

#include <QWidget>

#include "core/rules/custody.h"

namespace cupule::ui {

class ClockStrip : public QWidget {
    Q_OBJECT
public:
    explicit ClockStrip(QWidget* parent = nullptr);
    /// `hours` nothing: not sealed yet, and the strip is hidden. `stopped`: it came to the laboratory then. `proposed`: nobody
    /// in the programme has set the limits.
    void setHours(std::optional<double> hours, bool stopped, const SampleLimits& limits, bool proposed);
    QSize sizeHint() const override;
    QSize minimumSizeHint() const override { return sizeHint(); }

protected:
    void paintEvent(QPaintEvent* event) override;
    void changeEvent(QEvent* event) override;

private:
    [[nodiscard]] QString head() const;
    double m_hours = 0;
    bool m_stopped = false;
    bool m_proposed = true;
    SampleLimits m_limits{24, 72, 96};
};

} // namespace cupule::ui
