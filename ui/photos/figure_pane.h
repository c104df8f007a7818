// The drawn figure of a sign, beside the photo that may show it.

#pragma once

#include <QWidget>

namespace cupule::ui {

class FigurePane : public QWidget {
    Q_OBJECT
public:
    explicit FigurePane(const QString& kind, QWidget* parent = nullptr);
    QSize sizeHint() const override { return {230, 400}; }
    QSize minimumSizeHint() const override { return {160, 200}; }

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    QString m_kind;
};

} // namespace cupule::ui
