// The year as a band across the window: what can be seen when, moved by this spring, and what a "nothing
// seen" is worth. Today is a needle; arrow keys or the pointer move a second, open needle, and the words
// follow it.
//
//  - Rows are the pack's ribbon rows; windows and letters come from core/rules, day by day, and are kept
//    until pack, season or year change. Nothing is computed while painting.
//  - Keys: Left/Right a day, Ctrl+Left/Right a month, Home today, Enter calendarAsked(), Esc back to today.
//  - Below 720 px of window height it folds to one line that still says date, what can be seen, worth.

#pragma once

#include <optional>
#include <vector>

#include <QDate>
#include <QWidget>

#include "core/protocol/pack.h"
#include "core/rules/season.h"

namespace cupule::ui {

class SeasonRibbon : public QWidget {
    Q_OBJECT
public:
    enum class Folding { byWindowHeight, never, always };

    explicit SeasonRibbon(QWidget* parent = nullptr);
    /// The pack must outlive the ribbon; null shows the bare year.
    void setPack(const Pack* pack);
    /// `shift` nothing: no spring observed yet, the calendar stands.
    void setSeason(const QString& region, std::optional<int> shiftDays);
    void setToday(const QDate& today);
    void setFolding(Folding folding);
    [[nodiscard]] bool isFolded() const;
    /// The day the words speak of: the open needle, or today.
    [[nodiscard]] QDate lookedAt() const;
    void lookAt(const QDate& date);
    /// What is said aloud: date, what can be seen, worth.
    [[nodiscard]] QString spoken() const;

    QSize sizeHint() const override;
    QSize minimumSizeHint() const override;

Q_SIGNALS:
    void lookedAtChanged(const QDate& date);
    void calendarAsked(const QDate& date);

protected:
    void paintEvent(QPaintEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void leaveEvent(QEvent* event) override;
    void changeEvent(QEvent* event) override;
    void focusOutEvent(QFocusEvent* event) override;
    bool event(QEvent* event) override;
    bool eventFilter(QObject* watched, QEvent* event) override;

public:
    /// One row of the band, day by day of the year; for tests and for the calendar page.
    struct Row {
        QString id, words;
        QColor fill;
        std::vector<SeasonState> days;     ///< index 0 = 1 January
        std::vector<SeasonState> calendar; ///< the same without the shift
    };
    [[nodiscard]] const std::vector<Row>& rows() const { return m_rows; }
    /// 'A', 'B', 'C' or '0' for each day of the year.
    [[nodiscard]] const std::vector<char>& worth() const { return m_worth; }

private:
    struct Places;
    [[nodiscard]] Places places() const;
    void rebuild();
    void say();
    void refold();
    [[nodiscard]] QString seenWords(bool shortened) const;
    [[nodiscard]] QString worthWords(bool shortened) const;
    void paintWords(QPainter& painter, const Places& at) const;
    void paintWorthPart(QPainter& painter, const Places& at) const;

    const Pack* m_pack = nullptr;
    QString m_region;
    std::optional<int> m_shift;
    QDate m_today;
    std::optional<QDate> m_looked;
    Folding m_folding = Folding::byWindowHeight;
    bool m_folded = false;
    std::vector<Row> m_rows;
    std::vector<char> m_worth;
};

} // namespace cupule::ui
