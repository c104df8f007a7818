#include "ui/training/slide_painter.h"

#include <algorithm>
#include <cmath>

#include <QCoreApplication>
#include <QLocale>
#include <QPainter>
#include <QPainterPath>

#include "ui/bridge/text.h"
#include "ui/photos/thumbnails.h"
#include "ui/theme/theme.h"
#include "ui/training/callouts.h"
#include "ui/training/figure_shop.h"
#include "ui/training/slide_text.h"

namespace cupule::ui {

namespace {

QString tr(const char* words)
{
    return QCoreApplication::translate("cupule::ui::SlidePainter", words);
}

/// Where the parts of a slide stand.
struct Places {
    QRectF whole, band, foot, title, left, right;
    double height;
    [[nodiscard]] double px(double units) const { return slideLength(units, height); }
};

Places placesOf(const Slide& slide, const QRectF& where, const QFont& font)
{
    Places at;
    at.whole = where;
    at.height = where.height();
    const double edge = at.px(60);
    at.band = QRectF(where.left(), where.top(), where.width(), slide.year.empty() ? 0 : at.px(104));
    at.foot = QRectF(where.left(), where.bottom() - at.px(70), where.width(), at.px(70));
    const double width = where.width() - 2 * edge;
    const QFontMetricsF big(slideFont(font, 42, at.height, QFont::DemiBold));
    double title = big.boundingRect(QRectF(0, 0, width, 1e5), Qt::TextWordWrap, slide.title).height();
    if (!slide.more.isEmpty())
        title += QFontMetricsF(slideFont(font, 21, at.height)).boundingRect(QRectF(0, 0, width, 1e5), Qt::TextWordWrap, slide.more).height();
    at.title = QRectF(where.left() + edge, at.band.bottom() + at.px(26), width, title);
    const double top = at.title.bottom() + at.px(24), bottom = at.foot.top() - at.px(24);
    const bool drawn = slide.figure.has_value();
    at.left = QRectF(at.title.left(), top, drawn ? width * 0.55 : 0, bottom - top);
    at.right = QRectF(at.title.left() + (drawn ? width * 0.58 : 0), top, drawn ? width * 0.42 : width, bottom - top);
    return at;
}

class SlidePainter {
public:
    SlidePainter(QPainter& painter, const QRectF& where, const Slide& slide, const SlideLook& look, const SlideTools& tools)
        : m_painter(painter), m_slide(slide), m_look(look), m_tools(tools), m_theme(tools.theme), m_at(placesOf(slide, where, tools.font)),
          m_pages(pagesOf(slide, m_at.right.size(), m_at.height, tools.font))
    {
    }

    int paint()
    {
        m_painter.fillRect(m_at.whole, m_theme.page);
        const int page = std::min(m_look.page, slidePages(m_slide, m_at.whole.size(), m_tools.font) - 1);
        const int photo = page - static_cast<int>(m_pages.texts.size());
        if (!m_look.figureAlone) {
            paintBand();
            paintTitle();
        }
        if (m_look.figureAlone) {
            const double edge = m_at.px(50);
            paintFigureIn(m_at.whole.adjusted(edge, edge, -edge, -edge), true);
        } else if (photo >= 0) {
            paintPhoto(m_slide.photos[static_cast<std::size_t>(photo)]);
        } else {
            paintLeft();
            paintTexts(m_pages.texts[static_cast<std::size_t>(page)]);
        }
        if (!m_look.figureAlone)
            paintFoot();
        return m_parts;
    }

private:
    [[nodiscard]] QFont font(double points, int weight = QFont::Normal) const { return slideFont(m_tools.font, points, m_at.height, weight); }

    void paintBand()
    {
        if (m_slide.year.empty())
            return;
        m_painter.fillRect(m_at.band, m_theme.panel);
        m_painter.setPen(QPen(m_theme.line, 1));
        m_painter.drawLine(m_at.band.bottomLeft(), m_at.band.bottomRight());
        const double left = m_at.title.left(), width = m_at.title.width(), axis = m_at.band.top() + m_at.px(50);
        const auto x = [&](double day) { return left + width * day / 366; };
        m_painter.setPen(QPen(m_theme.edge, 1));
        m_painter.drawLine(QPointF(x(0), axis), QPointF(x(366), axis));
        paintMonths(x, axis);
        int from = 0;
        for (int day = 1; day <= 366; ++day) {
            if (day < 366 && m_slide.year[static_cast<std::size_t>(day)] == m_slide.year[static_cast<std::size_t>(from)])
                continue;
            paintRun(m_slide.year[static_cast<std::size_t>(from)], x(from), x(day), axis);
            from = day;
        }
        if (m_slide.today.isValid() && m_slide.today.month() == m_slide.month)
            paintNeedle(x(QDate(2024, m_slide.today.month(), m_slide.today.day()).dayOfYear() - 0.5), axis);
    }

    template <class X> void paintMonths(const X& x, double axis)
    {
        for (int month = 1; month <= 12; ++month) {
            const QDate first(2024, month, 1);
            const double start = x(first.dayOfYear() - 1), end = x(first.dayOfYear() - 1 + first.daysInMonth());
            const bool here = month == m_slide.month;
            m_painter.setPen(QPen(m_theme.edge, 1));
            m_painter.drawLine(QPointF(start, axis - m_at.px(6)), QPointF(start, axis + m_at.px(6)));
            m_painter.setFont(font(15, here ? QFont::Bold : QFont::Normal));
            m_painter.setPen(here ? m_theme.ink : m_theme.ink2);
            m_painter.drawText(QRectF(start, axis + m_at.px(14), end - start, m_at.px(36)), Qt::AlignCenter, QLocale().standaloneMonthName(month));
        }
    }

    void paintRun(SeasonState state, double from, double to, double axis)
    {
        if (state == SeasonState::outOfSeason)
            return;
        if (state == SeasonState::possible) {
            m_painter.setPen(QPen(m_theme.ink, m_at.px(4)));
            m_painter.drawLine(QPointF(from, axis), QPointF(to, axis));
            m_painter.setPen(QPen(m_theme.ink, m_at.px(2.5)));
            for (const double end : {from, to})
                m_painter.drawLine(QPointF(end, axis - m_at.px(11)), QPointF(end, axis + m_at.px(11)));
            return;
        }
        m_painter.setPen(QPen(m_theme.ink, m_at.px(2)));
        m_painter.setBrush(m_slide.fill.isValid() ? m_slide.fill : m_theme.leaf);
        m_painter.drawRect(QRectF(from, axis - m_at.px(13), to - from, m_at.px(26)));
    }

    void paintNeedle(double x, double axis)
    {
        m_painter.setPen(QPen(m_theme.nut, m_at.px(3)));
        m_painter.drawLine(QPointF(x, m_at.band.top() + m_at.px(10)), QPointF(x, axis + m_at.px(16)));
        QPainterPath head;
        head.moveTo(x - m_at.px(13), m_at.band.top() + m_at.px(6));
        head.lineTo(x + m_at.px(13), m_at.band.top() + m_at.px(6));
        head.lineTo(x, m_at.band.top() + m_at.px(24));
        m_painter.fillPath(head, m_theme.nut);
    }

    void paintTitle()
    {
        m_painter.setPen(m_theme.ink);
        m_painter.setFont(font(42, QFont::DemiBold));
        QRectF used;
        m_painter.drawText(m_at.title, Qt::TextWordWrap | Qt::AlignLeft | Qt::AlignTop, m_slide.title, &used);
        m_painter.setPen(m_theme.ink2);
        m_painter.setFont(font(21));
        m_painter.drawText(QRectF(m_at.title.left(), used.bottom(), m_at.title.width(), m_at.px(400)), Qt::TextWordWrap | Qt::AlignLeft | Qt::AlignTop,
                           m_slide.more);
    }

    void paintLeft()
    {
        if (!m_slide.figure)
            return;
        QRectF room = m_at.left;
        if (!m_slide.others.empty()) {
            const double row = 0.30 * room.height();
            paintOthers(QRectF(room.left(), room.bottom() - row, room.width(), row));
            room.setHeight(room.height() - row - m_at.px(14));
        }
        paintFigureIn(room, true);
    }

    void paintOthers(const QRectF& row)
    {
        const double width = row.width() / std::max<double>(3, static_cast<double>(m_slide.others.size()));
        m_painter.setPen(QPen(m_theme.line, 1));
        m_painter.drawLine(row.topLeft(), row.topRight());
        for (std::size_t i = 0; i < m_slide.others.size(); ++i) {
            const SlideFigure& other = m_slide.others[i];
            const QRectF cell(row.left() + width * static_cast<double>(i), row.top(), width, row.height());
            const double words = QFontMetricsF(font(16)).height();
            const QRectF room = cell.adjusted(m_at.px(10), m_at.px(10), -m_at.px(10), -words - m_at.px(6));
            if (const PaintedFigure* painted = m_tools.figures.of(other.figure, room.size().toSize(), ratio()))
                m_painter.drawImage(room.topLeft(), painted->image);
            m_painter.setFont(font(16));
            m_painter.setPen(m_theme.ink2);
            const QString fitted = QFontMetricsF(font(16)).elidedText(other.words, Qt::ElideRight, cell.width());
            m_painter.drawText(QRectF(cell.left(), cell.bottom() - words, cell.width(), words), Qt::AlignCenter, fitted);
        }
    }

    /// The figure with what can be pointed at, and its usual size below where that is in millimetres.
    void paintFigureIn(const QRectF& room, bool pointing)
    {
        if (!m_slide.figure)
            return;
        Depiction spec = *m_slide.figure;
        spec.view.scaleBar = m_slide.usualMax <= 0;
        QRectF place = room;
        if (m_slide.usualMax > 0)
            place.setBottom(place.bottom() - m_at.px(64));
        const double beside = pointing ? 0.23 * place.width() : 0;
        QRectF inner = place.adjusted(beside, 0, -beside, 0);
        const PaintedFigure* painted = m_tools.figures.of(spec, inner.size().toSize(), ratio());
        if (painted != nullptr && painted->parts.empty() && beside > 0) { // nothing to point at: larger
            inner = place;
            painted = m_tools.figures.of(spec, inner.size().toSize(), ratio());
        }
        if (painted == nullptr)
            return;
        m_parts = static_cast<int>(painted->parts.size());
        const CalloutLook look{m_theme, font(20), m_at.px(1), m_look.pointed};
        paintPointed(m_painter, inner.topLeft().toPoint(), *painted, look);
        if (pointing)
            paintCallouts(m_painter, place, inner.topLeft().toPoint(), *painted, look);
        if (m_slide.usualMax > 0)
            paintUsualSize(QRectF(place.left(), place.bottom(), place.width(), room.bottom() - place.bottom()), painted->scale);
    }

    void paintUsualSize(const QRectF& row, double scale)
    {
        const QString words = tr("usual size");
        m_painter.setFont(font(17));
        const double named = QFontMetricsF(m_painter.font()).horizontalAdvance(words) + m_at.px(18);
        double width = m_slide.usualMax * scale;
        if (width > row.width() - named - m_at.px(120)) { // too long at this scale: in words alone
            m_painter.setPen(m_theme.ink2);
            m_painter.drawText(row, Qt::AlignRight | Qt::AlignVCenter,
                               words + QLatin1Char(' ') + tr("%1 to %2 mm").arg(numberText(m_slide.usualMin), numberText(m_slide.usualMax)));
            return;
        }
        const double left = row.center().x() - 0.5 * (width - named), y = row.top() + m_at.px(22);
        m_painter.setPen(m_theme.ink2);
        m_painter.drawText(QRectF(row.left(), y - m_at.px(20), left - m_at.px(16) - row.left(), m_at.px(40)), Qt::AlignRight | Qt::AlignVCenter, words);
        m_painter.setPen(QPen(m_theme.ink, m_at.px(3)));
        m_painter.drawLine(QPointF(left, y), QPointF(left + width, y));
        double before = -1e9;
        for (const double millimetres : {0.0, m_slide.usualMin, m_slide.usualMax}) {
            const double x = left + millimetres * scale;
            m_painter.setPen(QPen(m_theme.ink, m_at.px(3)));
            m_painter.drawLine(QPointF(x, y - m_at.px(9)), QPointF(x, y + m_at.px(9)));
            const QString number = tr("%1 mm").arg(numberText(millimetres));
            const double across = QFontMetricsF(font(15)).horizontalAdvance(number);
            if (millimetres <= 0 || x - across / 2 < before)
                continue;
            before = x + across / 2 + m_at.px(8);
            m_painter.setFont(font(15));
            m_painter.setPen(m_theme.ink2);
            m_painter.drawText(QRectF(x - m_at.px(80), y + m_at.px(10), m_at.px(160), m_at.px(30)), Qt::AlignHCenter | Qt::AlignTop, number);
        }
    }

    void paintTexts(const std::vector<int>& blocks)
    {
        double y = m_at.right.top();
        for (const int index : blocks) {
            const SlideText& block = m_slide.texts[static_cast<std::size_t>(index)];
            const double height = textHeight(block, m_pages.points, m_at.right.width(), m_at.height, m_tools.font);
            paintBlock(block, QRectF(m_at.right.left(), y, m_at.right.width(), height));
            y += height + m_at.px(blockGap);
        }
    }

    void paintBlock(const SlideText& block, const QRectF& where)
    {
        QRectF room = where;
        if (block.framed) {
            paintFrame(where);
            const double padding = m_at.px(framePadding);
            room = where.adjusted(padding, padding, -padding, -padding);
        } else {
            m_painter.fillRect(QRectF(where.left(), where.top(), m_at.px(6), where.height()), m_theme.line);
            room.setLeft(where.left() + m_at.px(24));
        }
        double y = room.top();
        if (!block.head.isEmpty()) {
            m_painter.setFont(font(0.72 * m_pages.points, QFont::DemiBold));
            m_painter.setPen(m_theme.ink2);
            m_painter.drawText(QRectF(room.left(), y, room.width(), room.height()), Qt::AlignLeft | Qt::AlignTop, block.head);
            y += headHeight(m_pages.points, m_at.height, m_tools.font);
        }
        m_painter.setFont(font(m_pages.points));
        m_painter.setPen(m_theme.ink);
        for (const QString& line : block.lines) {
            QRectF used;
            m_painter.drawText(QRectF(room.left(), y, room.width(), m_at.height), Qt::TextWordWrap | Qt::AlignLeft | Qt::AlignTop, line, &used);
            y += used.height() + m_at.px(lineGap);
        }
    }

    /// What must not be concluded: an ink frame over a hatched rim, told apart without colour.
    void paintFrame(const QRectF& where)
    {
        m_painter.save();
        QPainterPath rim;
        rim.addRect(where);
        const double inset = m_at.px(14);
        rim.addRect(where.adjusted(inset, inset, -inset, -inset));
        m_painter.setClipPath(rim, Qt::IntersectClip);
        m_painter.setPen(QPen(m_theme.line, m_at.px(1.6)));
        for (double x = where.left() - where.height(); x < where.right(); x += m_at.px(15))
            m_painter.drawLine(QPointF(x, where.bottom()), QPointF(x + where.height(), where.top()));
        m_painter.restore();
        m_painter.setPen(QPen(m_theme.ink, m_at.px(3)));
        m_painter.setBrush(Qt::NoBrush);
        m_painter.drawRect(where);
    }

    void paintPhoto(const SlidePhoto& photo)
    {
        const bool drawn = m_slide.figure.has_value();
        const double top = m_at.title.bottom() + m_at.px(20), bottom = m_at.foot.top() - m_at.px(20), width = m_at.title.width();
        if (drawn)
            paintFigureIn(QRectF(m_at.title.left(), top, 0.36 * width, bottom - top), false);
        const double from = m_at.title.left() + (drawn ? 0.39 * width : 0);
        QRectF room(from, top, m_at.title.right() - from, bottom - top);
        const double words = photo.words.isEmpty() ? 0 : QFontMetricsF(font(20)).height() + m_at.px(8);
        room.setBottom(room.bottom() - words);
        const QImage image = m_tools.photos.of(photo.path);
        m_painter.setFont(font(20));
        m_painter.setPen(m_theme.ink2);
        if (photo.path.isEmpty() || m_tools.photos.failed(photo.path)) {
            m_painter.drawText(room, Qt::AlignCenter | Qt::TextWordWrap, tr("This photo is not here. Add it again from its file."));
        } else if (!image.isNull()) {
            QSizeF fitted = QSizeF(image.size()).scaled(room.size(), Qt::KeepAspectRatio);
            const QRectF target(room.left() + (room.width() - fitted.width()) / 2, room.top() + (room.height() - fitted.height()) / 2, fitted.width(), fitted.height());
            m_painter.setRenderHint(QPainter::SmoothPixmapTransform);
            m_painter.drawImage(target, image);
        }
        m_painter.drawText(QRectF(room.left(), room.bottom() + m_at.px(8), room.width(), words), Qt::AlignCenter, photo.words);
    }

    void paintFoot()
    {
        m_painter.fillRect(m_at.foot, m_theme.panel);
        m_painter.setPen(QPen(m_theme.line, 1));
        m_painter.drawLine(m_at.foot.topLeft(), m_at.foot.topRight());
        double x = m_at.title.left();
        constexpr int mostDots = 30;
        for (int i = 1; i <= m_look.count && m_look.count <= mostDots; ++i) {
            const bool here = i == m_look.number;
            const double r = m_at.px(here ? 9 : 6.5);
            m_painter.setPen(QPen(here ? m_theme.nut : m_theme.ink, m_at.px(2)));
            m_painter.setBrush(here ? QBrush(m_theme.nut) : i < m_look.number ? QBrush(m_theme.ink) : QBrush(Qt::NoBrush));
            m_painter.drawEllipse(QPointF(x + m_at.px(9), m_at.foot.center().y()), r, r);
            x += m_at.px(26);
        }
        m_painter.setFont(font(17));
        m_painter.setPen(m_theme.ink2);
        m_painter.drawText(QRectF(x + m_at.px(18), m_at.foot.top(), m_at.foot.width(), m_at.foot.height()), Qt::AlignLeft | Qt::AlignVCenter,
                           tr("%1 of %2 in %3").arg(m_look.number).arg(m_look.count).arg(QLocale().standaloneMonthName(m_slide.month)));
        if (m_look.keys)
            paintKeys();
    }

    void paintKeys()
    {
        struct Key {
            QString cap, words;
        };
        QList<Key> keys{{tr("Space"), tr("next")}, {tr("B"), tr("back")}};
        if (m_slide.figure)
            keys << Key{tr("F"), tr("figure alone")};
        if (m_parts > 0)
            keys << Key{m_parts == 1 ? QStringLiteral("1") : QStringLiteral("1–%1").arg(m_parts), tr("point")};
        keys << Key{tr("Esc"), tr("end")};
        double right = m_at.title.right();
        const QFontMetricsF metrics(font(16));
        for (auto key = keys.rbegin(); key != keys.rend(); ++key) {
            const double words = metrics.horizontalAdvance(key->words), cap = metrics.horizontalAdvance(key->cap) + m_at.px(18);
            const double middle = m_at.foot.center().y(), half = metrics.height() / 2 + m_at.px(2);
            m_painter.setFont(font(16));
            m_painter.setPen(m_theme.ink2);
            m_painter.drawText(QRectF(right - words, middle - half, words + 2, 2 * half), Qt::AlignCenter, key->words);
            const QRectF box(right - words - m_at.px(12) - cap, middle - half, cap, 2 * half);
            m_painter.setPen(QPen(m_theme.edge, m_at.px(1.6)));
            m_painter.setBrush(m_theme.page);
            m_painter.drawRoundedRect(box, m_at.px(5), m_at.px(5));
            m_painter.setPen(m_theme.ink2);
            m_painter.drawText(box, Qt::AlignCenter, key->cap);
            right = box.left() - m_at.px(34);
        }
    }

    [[nodiscard]] qreal ratio() const { return m_painter.device() != nullptr ? m_painter.device()->devicePixelRatioF() : 1.0; }

    QPainter& m_painter;
    const Slide& m_slide;
    const SlideLook& m_look;
    const SlideTools& m_tools;
    const Theme& m_theme;
    Places m_at;
    SlidePages m_pages;
    int m_parts = 0;
};

} // namespace

int slidePages(const Slide& slide, const QSizeF& size, const QFont& font)
{
    const Places at = placesOf(slide, QRectF(QPointF(0, 0), size), font);
    return static_cast<int>(pagesOf(slide, at.right.size(), at.height, font).texts.size() + slide.photos.size());
}

void paintAhead(const Slide& slide, const QSize& size, const SlideTools& tools)
{
    QImage nowhere(1, 1, QImage::Format_ARGB32_Premultiplied);
    QPainter painter(&nowhere);
    painter.setClipRect(nowhere.rect());
    SlidePainter(painter, QRectF(QPointF(0, 0), QSizeF(size)), slide, {}, tools).paint();
}

int paintSlide(QPainter& painter, const QRectF& where, const Slide& slide, const SlideLook& look, const SlideTools& tools)
{
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setClipRect(where, Qt::IntersectClip);
    const int parts = SlidePainter(painter, where, slide, look, tools).paint();
    painter.restore();
    return parts;
}

} // namespace cupule::ui
