// Two small pictures of learning: how often somebody was right where so sure (reliability), and the share right in the order of the
// answers (learning curve). Both with their 95 % intervals; the numbers are told to those who do not see them.

#pragma once

#include <QWidget>

#include "core/training/results.h"

namespace cupule::ui {

class SharePicture : public QWidget {
    Q_OBJECT
public:
    struct Dot {
        double x = 0; ///< 0 to 1
        Share share;
        std::int64_t answers = 0;
    };
    SharePicture(const QString& name, const QString& across, bool diagonal, QWidget* parent);
    /// `left`, `right`: words at the ends of the axis across.
    void setDots(const std::vector<Dot>& dots, const QString& left, const QString& right);
    [[nodiscard]] const std::vector<Dot>& dots() const { return m_dots; }
    QSize sizeHint() const override;
    QSize minimumSizeHint() const override;

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    QString m_name, m_across, m_left, m_right;
    bool m_diagonal;
    std::vector<Dot> m_dots;
};

std::vector<SharePicture::Dot> reliabilityDots(const std::optional<Calibration>& calibration);
std::vector<SharePicture::Dot> curveDots(const std::vector<CurvePoint>& curve);

} // namespace cupule::ui
