// Head of one of the three parts: number, title, a line that sums it up, a tick or a husk. Opens and folds its part.

#pragma once

#include <QAbstractButton>

namespace cupule::ui {

class PartHead : public QAbstractButton {
    Q_OBJECT
public:
    PartHead(int number, const QString& title, QWidget* parent = nullptr);
    void setSummary(const QString& summary);
    /// Name of a mark at the right, or empty.
    void setMark(const QString& mark);
    QSize sizeHint() const override;

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    int m_number;
    QString m_summary, m_mark;
};

} // namespace cupule::ui
