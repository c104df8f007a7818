#include "ui/widgets/ribbon_painter.h"

#include <algorithm>
#include <cmath>
#include <iterator>

#include <QLocale>
#include <QPainter>
#include <QPainterPath>

#include "ui/theme/theme.h"

namespace cupule::ui {

namespace {

constexpr int rowCount = 4;

/// A run of days in one state, [from, to).
struct Run {
    int from = 0, to = 0;
    SeasonState state = SeasonState::outOfSeason;
};

std::vector<Run> runsOf(const std::vector<SeasonState>& days)
{
    std::vector<Run> runs;
    for (int day = 0; day < static_cast<int>(days.size()); ++day) {
        const SeasonState state = days[std::size_t(day)];
        if (runs.empty() || runs.back().state != state)
            runs.push_back({day, day, state});
        runs.back().to = day + 1;
    }
    return runs;
}

class BandPainter {
public:
    BandPainter(QPainter& painter, const RibbonBand& band, const Theme& theme, const QFont& font)
        : m_painter(painter), m_band(band), m_theme(theme), m_small(roleFont(TextRole::small, font)),
          m_font(font), m_days(band.today.daysInYear())
    {
        const QFontMetrics metrics(m_small);
        m_base = band.rect.bottom() - metrics.height() - 3;
        m_top = band.rect.top() + scaled(band.folded ? 6 : 7, font);
    }

    void paint()
    {
        skyline();
        months();
        if (!m_band.folded)
            for (std::size_t i = 0; i < m_band.rows->size(); ++i)
                row((*m_band.rows)[i], static_cast<int>(i));
        needle(m_band.today, false);
        if (m_band.looked)
            needle(*m_band.looked, true);
    }

private:
    [[nodiscard]] double x(int day) const
    {
        return m_band.rect.left() + m_band.rect.width() * double(day) / m_days;
    }
    [[nodiscard]] double rowHeight() const { return (m_base - m_top) / rowCount; }

    void skyline()
    {
        QPainterPath path;
        path.moveTo(x(0), m_base);
        const double step = (m_base - m_top) / 3.0;
        for (int day = 0; day < static_cast<int>(m_band.worth->size()); ++day) {
            const char letter = (*m_band.worth)[std::size_t(day)];
            const double height = letter == 'A'   ? 3 * step
                                  : letter == 'B' ? 2 * step
                                  : letter == 'C' ? step
                                                  : 0;
            path.lineTo(x(day), m_base - height);
            path.lineTo(x(day + 1), m_base - height);
        }
        path.lineTo(x(m_days), m_base);
        m_painter.fillPath(path, m_theme.leaf);
    }

    void months()
    {
        m_painter.setPen(QPen(m_theme.edge, 1));
        m_painter.drawLine(QPointF(x(0), m_base), QPointF(x(m_days), m_base));
        const QFontMetrics metrics(m_small);
        int widest = 0;
        for (int month = 1; month <= 12; ++month)
            widest = std::max(widest, metrics.horizontalAdvance(
                                          QLocale().standaloneMonthName(month, QLocale::ShortFormat)));
        const bool narrow = widest + 6 > m_band.rect.width() / 12.4;
        for (int month = 1; month <= 12; ++month) {
            const QDate first(m_band.today.year(), month, 1);
            const double left = x(first.dayOfYear() - 1);
            const double right = x(first.dayOfYear() - 1 + first.daysInMonth());
            m_painter.setPen(QPen(m_theme.edge, 1));
            m_painter.drawLine(QPointF(left, m_base - 3), QPointF(left, m_base + 3));
            const bool here = month == m_band.today.month();
            QFont font = m_small;
            font.setWeight(here ? QFont::Bold : QFont::Normal);
            m_painter.setFont(font);
            m_painter.setPen(here ? m_theme.ink : m_theme.ink2);
            const QString name =
                QLocale().standaloneMonthName(month, narrow ? QLocale::NarrowFormat : QLocale::ShortFormat);
            m_painter.drawText(QRectF(left - 20, m_base + 2, right - left + 40, metrics.height()),
                               Qt::AlignHCenter | Qt::AlignTop, name);
        }
        m_painter.setPen(QPen(m_theme.edge, 1));
        m_painter.drawLine(QPointF(x(m_days), m_base - 3), QPointF(x(m_days), m_base + 3));
    }

    void row(const SeasonRibbon::Row& row, int index)
    {
        const double middle = m_top + (index + 0.5) * rowHeight();
        const std::vector<Run> runs = runsOf(row.days);
        const std::vector<Run> usual = runsOf(row.calendar);
        const QRectF words = m_band.named ? wordsRect(row.words, runs, usual, middle) : QRectF();
        for (const Run& run : runs)
            if (run.state == SeasonState::possible)
                thin(run, middle, words);
        if (m_band.moved)
            dots(runs, usual, middle);
        for (const Run& run : runs)
            if (run.state == SeasonState::expected)
                thick(run, middle, row.fill);
        if (!words.isNull()) {
            m_painter.setFont(m_small);
            m_painter.setPen(m_theme.ink);
            m_painter.drawText(words, Qt::AlignCenter, row.words);
        }
    }

    void thin(const Run& run, double middle, const QRectF& words)
    {
        const double stop = rowHeight() * 0.26;
        m_painter.setPen(QPen(m_theme.ink, 1.3));
        const bool cut = !words.isNull() && words.left() > x(run.from) && words.right() < x(run.to);
        if (cut) {
            m_painter.drawLine(QPointF(x(run.from), middle), QPointF(words.left() - 3, middle));
            m_painter.drawLine(QPointF(words.right() + 3, middle), QPointF(x(run.to), middle));
        } else {
            m_painter.drawLine(QPointF(x(run.from), middle), QPointF(x(run.to), middle));
        }
        for (const int end : {run.from, run.to})
            if (end > 0 && end < m_days)
                m_painter.drawLine(QPointF(x(end), middle - stop), QPointF(x(end), middle + stop));
    }

    void thick(const Run& run, double middle, const QColor& fill)
    {
        const double height = rowHeight() * 0.58;
        m_painter.setPen(QPen(m_theme.ink, 1.2));
        m_painter.setBrush(fill);
        m_painter.drawRect(QRectF(x(run.from), middle - height / 2, x(run.to) - x(run.from), height));
    }

    static int start(const std::vector<Run>& runs)
    {
        for (const Run& run : runs)
            if (run.state != SeasonState::outOfSeason)
                return run.from;
        return 0;
    }

    /// From the calendar's start to where it starts this year.
    void dots(const std::vector<Run>& runs, const std::vector<Run>& usual, double middle)
    {
        const int from = std::min(start(runs), start(usual));
        const int to = std::max(start(runs), start(usual));
        if (from == to)
            return;
        QPen pen(m_theme.ink2, 1.4, Qt::CustomDashLine, Qt::RoundCap);
        pen.setDashPattern({0.1, 2.2});
        m_painter.setPen(pen);
        m_painter.drawLine(QPointF(x(from), middle), QPointF(x(to), middle));
    }

    /// Left of the first bar, else right of the last, else on a thin line.
    QRectF wordsRect(const QString& words, const std::vector<Run>& runs, const std::vector<Run>& usual,
                     double middle) const
    {
        const QFontMetrics metrics(m_small);
        const double width = metrics.horizontalAdvance(words);
        const QRectF box(0, middle - metrics.height() / 2.0, width, metrics.height());
        std::vector<QRectF> places;
        const double first = x(std::min(start(runs), start(usual)));
        if (first - width - 10 > m_band.rect.left())
            places.push_back(box.translated(first - width - 6, 0));
        const Run& last = runs.back();
        if (last.state == SeasonState::outOfSeason && x(last.to) - x(last.from) > width + 12)
            places.push_back(box.translated(x(last.from) + 6, 0));
        std::vector<Run> thinRuns;
        std::copy_if(runs.begin(), runs.end(), std::back_inserter(thinRuns), [&](const Run& run) {
            return run.state != SeasonState::expected && x(run.to) - x(run.from) > width + 16;
        });
        std::sort(thinRuns.begin(), thinRuns.end(),
                  [](const Run& a, const Run& b) { return a.to - a.from > b.to - b.from; });
        for (const Run& run : thinRuns)
            for (const double share : {0.5, 0.75, 0.25})
                places.push_back(box.translated(x(run.from) + (x(run.to) - x(run.from) - width) * share, 0));
        const double today = x(m_band.today.dayOfYear() - 1);
        for (const QRectF& place : places)
            if (today < place.left() - 4 || today > place.right() + 4) // not under the needle
                return place;
        return places.empty() ? QRectF() : places.front();
    }

    void needle(const QDate& date, bool open)
    {
        const double at = std::round(x(date.dayOfYear() - 1)) + 0.5;
        const double top = m_band.rect.top() + 1.5;
        const double half = scaled(5, m_font);
        const QColor colour = open ? m_theme.focus : m_theme.nut;
        m_painter.setPen(QPen(m_theme.page, 5));
        m_painter.drawLine(QPointF(at, top + half), QPointF(at, m_base));
        m_painter.setPen(QPen(colour, 2));
        m_painter.drawLine(QPointF(at, top + half), QPointF(at, m_base + 1));
        QPolygonF head;
        head << QPointF(at - half, top) << QPointF(at + half, top) << QPointF(at, top + half * 1.5);
        m_painter.setPen(QPen(colour, 1.6));
        m_painter.setBrush(open ? m_theme.page : colour);
        m_painter.drawPolygon(head);
    }

    QPainter& m_painter;
    const RibbonBand& m_band;
    const Theme& m_theme;
    QFont m_small, m_font;
    int m_days;
    double m_base = 0, m_top = 0;
};

} // namespace

int ribbonBandHeight(const QFont& font)
{
    const QFontMetrics small(roleFont(TextRole::small, font));
    return scaled(7, font) + rowCount * std::max(12, small.height() - scaled(4, font)) + small.height() + 5;
}

void paintRibbonBand(QPainter& painter, const RibbonBand& band, const Theme& theme, const QFont& font)
{
    if (band.rect.width() < 60 || !band.today.isValid())
        return;
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    BandPainter(painter, band, theme, font).paint();
    painter.restore();
}

} // namespace cupule::ui
