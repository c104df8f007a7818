// Dates and times typed simply, kept as typed until the field is left, with the reading shown beside the
// field. Up and Down move by a day (time: by 5 minutes).

#pragma once

#include <QDate>
#include <QLineEdit>
#include <QTime>

namespace cupule::ui {

class DateEdit : public QLineEdit {
    Q_OBJECT
public:
    explicit DateEdit(QWidget* parent = nullptr);
    void setToday(const QDate& today);
    void setDate(const QDate& date);   ///< null empties the field
    [[nodiscard]] QDate date() const;  ///< null where nothing or no date stands there
    [[nodiscard]] bool isGood() const; ///< empty or a date
    QSize sizeHint() const override;

Q_SIGNALS:
    void dateChanged(const QDate& date); ///< by the user: on Enter, on leaving, on Up and Down

protected:
    void keyPressEvent(QKeyEvent* event) override;
    void focusOutEvent(QFocusEvent* event) override;
    void paintEvent(QPaintEvent* event) override;

private:
    void take();
    QDate m_today;
    QDate m_date;
};

class TimeEdit : public QLineEdit {
    Q_OBJECT
public:
    explicit TimeEdit(QWidget* parent = nullptr);
    void setTime(const QTime& time);
    [[nodiscard]] QTime time() const;
    [[nodiscard]] bool isGood() const;
    QSize sizeHint() const override;

Q_SIGNALS:
    void timeChanged(const QTime& time);

protected:
    void keyPressEvent(QKeyEvent* event) override;
    void focusOutEvent(QFocusEvent* event) override;
    void paintEvent(QPaintEvent* event) override;

private:
    void take();
    QTime m_time;
};

} // namespace cupule::ui
