// A drawing written as SVG: paths, gradients and clips, with the same order, widths and opacities as on the screen.

#include "ui/figures/drawing.h"

#include <algorithm>
#include <cmath>

#include <QRadialGradient>

namespace cupule::ui {

namespace {

constexpr double thinnest = 0.8, nearest = 0.35; // units of the page

QByteArray number(double value)
{
    QByteArray text = QByteArray::number(std::round(value * 10) / 10, 'f', 1);
    if (text.endsWith(".0"))
        text.chop(2);
    return text == "-0" ? QByteArray("0") : text;
}

/// Path data from point to point in tenths of a unit, each counted from the one before: half as long as whole coordinates.
class PathData {
public:
    explicit PathData(const QPainterPath& path)
    {
        for (int i = 0; i < path.elementCount(); ++i) {
            const QPainterPath::Element element = path.elementAt(i);
            const bool ends = i + 1 == path.elementCount() || path.elementAt(i + 1).isMoveTo();
            if (element.isMoveTo()) {
                command('m');
                put(element, true);
            } else if (element.isLineTo()) {
                if (!ends && std::hypot(element.x - 0.1 * static_cast<double>(m_x), element.y - 0.1 * static_cast<double>(m_y)) < nearest)
                    continue;
                command('l');
                put(element, true);
            } else {
                command('c');
                put(element, false);
                put(path.elementAt(i + 1), false);
                put(path.elementAt(i + 2), true);
                i += 2;
            }
        }
    }
    QByteArray data;

private:
    void command(char c)
    {
        if (c != m_command || c == 'm')
            data += c;
        m_command = c;
    }
    void put(const QPointF& p, bool moves)
    {
        const auto x = std::lround(10 * p.x()), y = std::lround(10 * p.y());
        for (const long value : {x - m_x, y - m_y}) {
            const bool first = data.endsWith('m') || data.endsWith('l') || data.endsWith('c');
            if (value >= 0 && !first)
                data += ' ';
            data += number(0.1 * static_cast<double>(value));
        }
        if (moves) {
            m_x = x;
            m_y = y;
        }
    }
    long m_x = 0, m_y = 0;
    char m_command = ' ';
};

QByteArray pathData(const QPainterPath& path)
{
    return PathData(path).data;
}

QByteArray attribute(const char* key, const QByteArray& value)
{
    return QByteArray(" ") + key + "=\"" + value + '"';
}

QByteArray colour(const char* what, const char* opacity, const QColor& c)
{
    return attribute(what, c.name().toLatin1()) +
           (c.alpha() < 255 ? attribute(opacity, QByteArray::number(c.alphaF(), 'g', 3)) : QByteArray());
}

QByteArray gradientElement(const QBrush& brush, const QTransform& placed, int id)
{
    const QGradient* gradient = brush.gradient();
    const QTransform m = brush.transform() * placed;
    QByteArray where, name;
    const auto put = [&where](const char* key, double value) {
        where += attribute(key, QByteArray::number(value, 'g', 6));
    };
    if (gradient->type() == QGradient::RadialGradient) {
        const auto* radial = static_cast<const QRadialGradient*>(gradient);
        name = "radialGradient";
        put("cx", radial->center().x());
        put("cy", radial->center().y());
        put("r", radial->radius());
        put("fx", radial->focalPoint().x());
        put("fy", radial->focalPoint().y());
    } else {
        const auto* linear = static_cast<const QLinearGradient*>(gradient);
        name = "linearGradient";
        put("x1", linear->start().x());
        put("y1", linear->start().y());
        put("x2", linear->finalStop().x());
        put("y2", linear->finalStop().y());
    }
    QByteArray matrix;
    for (const double value : {m.m11(), m.m12(), m.m21(), m.m22(), m.dx(), m.dy()})
        matrix += QByteArray::number(value, 'g', 6) + ' ';
    QByteArray text = '<' + name + attribute("id", 'g' + QByteArray::number(id)) + attribute("gradientUnits", "userSpaceOnUse") + where +
                      attribute("gradientTransform", "matrix(" + matrix + ')') + '>';
    for (const QGradientStop& stop : gradient->stops())
        text += "<stop" + attribute("offset", QByteArray::number(stop.first, 'g', 3)) + colour("stop-color", "stop-opacity", stop.second) + "/>";
    return text + "</" + name + '>';
}

} // namespace

QByteArray Drawing::svg(const QTransform& placed, const QSize& page, const QString& title, const QByteArray& after) const
{
    const double scale = std::sqrt(std::abs(placed.determinant()));
    QByteArray defs, body;
    for (std::size_t i = 0; i < m_clips.size(); ++i)
        defs += "<clipPath" + attribute("id", 'c' + QByteArray::number(i)) + "><path" +
                attribute("clip-rule", m_clips[i].fillRule() == Qt::WindingFill ? "nonzero" : "evenodd") +
                attribute("d", pathData(placed.map(m_clips[i]))) + "/></clipPath>\n";
    int gradients = 0;
    for (const Item& item : m_items) {
        if (scale < item.finest)
            continue;
        QByteArray look;
        if (item.brush.style() == Qt::NoBrush) {
            look += attribute("fill", "none");
        } else if (item.brush.gradient()) {
            defs += gradientElement(item.brush, placed, gradients) + '\n';
            look += attribute("fill", "url(#g" + QByteArray::number(gradients++) + ')');
        } else {
            look += colour("fill", "fill-opacity", item.brush.color());
        }
        if (item.path.fillRule() == Qt::OddEvenFill && item.brush.style() != Qt::NoBrush)
            look += attribute("fill-rule", "evenodd");
        if (item.pen.style() != Qt::NoPen)
            look += colour("stroke", "stroke-opacity", item.pen.color()) + attribute("stroke-linecap", "round") +
                    attribute("stroke-linejoin", "round") + attribute("stroke-width", number(std::max(thinnest, item.pen.widthF() * scale)));
        if (item.opacity < 1)
            look += attribute("opacity", QByteArray::number(item.opacity, 'g', 3));
        if (item.clip >= 0)
            look += attribute("clip-path", "url(#c" + QByteArray::number(item.clip) + ')');
        body += "<path" + look + attribute("d", pathData(placed.map(item.path))) + "/>\n";
    }
    const QByteArray wide = QByteArray::number(page.width()), high = QByteArray::number(page.height());
    return "<svg" + attribute("xmlns", "http://www.w3.org/2000/svg") + attribute("width", wide) + attribute("height", high) +
           attribute("viewBox", "0 0 " + wide + ' ' + high) + ">\n<title>" + title.toHtmlEscaped().toUtf8() + "</title>\n<defs>\n" + defs +
           "</defs>\n" + body + after + "\n</svg>\n";
}

} // namespace cupule::ui
