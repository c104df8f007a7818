#include "ui/print/label_paper.h"

#include <algorithm>

#include <QCoreApplication>

#include "ui/print/code.h"
#include "ui/print/paper.h"
#include "ui/theme/mark_painter.h"

namespace cupule::ui {

namespace {

using report::Label;
using report::LabelKind;
using report::LabelPart;

constexpr double padding = 3.4;    // from the edge of a label to what it says; the double frame lies within
constexpr double codeSide = 15;    // modules alone
static_assert(codeSide >= smallestCode);
static_assert(a4.width() == sheetWidth && a4.height() == sheetHeight);
constexpr double nameWidth = 15.5; // of a row's name
constexpr double body = 8, number = 16, second = 7.5;
constexpr double footHeight = 9.2;   // hazard line and whom to ask
constexpr double thick = 0.45, hair = 0.18;
constexpr double boxSide = 2.5, space = 1.1;
constexpr double scaleLine = 100; // mm; proves the scale of a print
constexpr double wordsAbove = 10;               // margin from which on a line of words stands above the labels
constexpr double roomForLine = 6, roomForWords = 10; // margin below

QString tr(const char* english)
{
    return QCoreApplication::translate("cupule", english);
}

QString utf16(const std::string& text)
{
    return QString::fromStdString(text);
}

void paintFrame(const Paper& paper, const Label& label, const QRectF& where)
{
    const auto frame = [&](double inset, double radius) {
        const QRectF inside = where.adjusted(inset, inset, -inset, -inset);
        paper.painter().drawRoundedRect(paper.dots(inside), paper.dots(radius), paper.dots(radius));
    };
    paper.pen(thick);
    frame(thick / 2, label.kind == LabelKind::document ? 0 : 2);
    if (label.kind == LabelKind::outerBag)
        frame(1.4, 1.2);
}

/// Title, number, tree and square on the left, the code on the right. Gives where the next part begins.
double paintHead(const Paper& paper, const Label& label, const QRectF& inside)
{
    const CodeModules code = codeOf(label.number);
    const double side = withQuietZone(code, codeSide);
    // the quiet zone may reach over the padding, never over the frame
    const double over = padding - 2.1;
    const QRectF place(inside.right() - side + over, inside.top() - over, side, side);
    paintCode(paper.painter(), paper.dots(place), code);

    const double width = place.left() - inside.left() - 1;
    double x = inside.left() + paper.text({inside.left(), inside.top() + 3.2}, utf16(label.title),
                                          paperFont(PaperType::strong, body)) + 2;
    if (label.kind != LabelKind::document) {
        const QString mark = label.kind == LabelKind::innerBag ? QStringLiteral("thing-bag-inner") : QStringLiteral("thing-bag-outer");
        paintMarkAsVector(paper.painter(), paper.dots(QRectF(x, inside.top() - 0.4, 4.4, 4.4)), mark, Qt::black);
        x += 6;
        if (label.bag.empty()) {
            paper.pen(hair);
            paper.line({x, inside.top() + 3.6}, {x + 18, inside.top() + 3.6});
        } else {
            paper.textWithin({x, inside.top() + 3.2}, inside.left() + width - x, utf16(label.bag), PaperType::ids, body);
        }
    }
    paper.textWithin({inside.left(), inside.top() + 10.2}, width, utf16(label.number), PaperType::idsStrong, number);
    const double whereLine = inside.top() + 14.6;
    paper.textWithin({inside.left(), whereLine}, width, utf16(label.where), PaperType::plain, body);
    if (label.reserved) {
        const double room = paper.textWidth(utf16(label.where), paperFont(PaperType::plain, body)) + space;
        paper.pen(hair);
        paper.line({inside.left() + room, whereLine + 0.5}, {inside.left() + width, whereLine + 0.5});
    }
    if (!label.demonstration.empty())
        paper.textWithin({inside.left(), inside.top() + 18.2}, width, utf16(label.demonstration), PaperType::strong, second);
    return place.bottom();
}

void paintRow(const Paper& paper, const report::LabelRow& row, double left, double right, double baseline)
{
    paper.text({left, baseline}, utf16(row.name), paperFont(PaperType::plain, second));
    double x = left + nameWidth;
    const bool wordsAlone = row.parts.size() == 1 && row.parts.front().kind == LabelPart::Kind::words;
    for (const LabelPart& part : row.parts) {
        const QFont font = paperFont(PaperType::plain, body);
        if (part.kind == LabelPart::Kind::blank) {
            paper.pen(hair);
            paper.line({x, baseline + 0.5}, {std::min(x + part.millimetres, right), baseline + 0.5});
            x += part.millimetres + space;
        } else if (part.kind == LabelPart::Kind::box) {
            paper.pen(2 * hair);
            paper.painter().drawRect(paper.dots(QRectF(x, baseline - boxSide + 0.2, boxSide, boxSide)));
            x += boxSide + space;
            x += paper.text({x, baseline}, utf16(part.words), font) + 2 * space;
        } else if (wordsAlone) {
            paper.textWithin({x, baseline}, right - x, utf16(part.words), PaperType::plain, body);
        } else {
            x += paper.text({x, baseline}, utf16(part.words), font) + space;
        }
    }
}

/// A closed box, struck through.
void paintDoNotOpen(const Paper& paper, const QRectF& where)
{
    paper.pen(thick);
    paper.painter().drawRect(paper.dots(where.adjusted(0, 0.8, -0.8, 0)));
    paper.pen(1.6 * thick);
    paper.line(where.bottomLeft() + QPointF(-0.6, 0.6), where.topRight() + QPointF(0.6, -0.6));
}

void paintFoot(const Paper& paper, const Label& label, const QRectF& inside)
{
    const double top = inside.bottom() - footHeight;
    paper.pen(hair);
    paper.line({inside.left(), top}, {inside.right(), top});
    paintDoNotOpen(paper, QRectF(inside.left() + 0.6, top + 2.6, 4.6, 4.6));
    const double left = inside.left() + 8;
    paper.textWithin({left, top + 4.2}, inside.right() - left, utf16(label.hazard), PaperType::strong, body);
    paper.textWithin({left, top + 8}, inside.right() - left, utf16(label.ask), PaperType::plain, second);
}

void paintLabel(const Paper& paper, const Label& label, const QRectF& where)
{
    const QRectF inside = where.adjusted(padding, padding, -padding, -padding);
    paintFrame(paper, label, where);
    const double head = paintHead(paper, label, inside);
    paper.pen(hair);
    paper.line({inside.left(), head}, {inside.right(), head});
    const double room = inside.bottom() - footHeight - head;
    const double step = std::min(5.0, room / report::mostLabelRows);
    double baseline = head + step * 0.78;
    for (const auto& row : label.rows) {
        paintRow(paper, row, inside.left(), inside.right(), baseline);
        baseline += step;
    }
    paintFoot(paper, label, inside);
}

/// In the margin below, if it has room: a sheet of labels without margins has none, and there the edges of the labels show
/// the scale.
void paintScale(const Paper& paper, const SheetSetup& setup)
{
    if (setup.bottom < roomForLine)
        return;
    const double y = a4.height() - setup.bottom + std::min(4.0, setup.bottom / 3);
    const double left = (a4.width() - scaleLine) / 2;
    paper.pen(0.3);
    paper.line({left, y}, {left + scaleLine, y});
    for (const double tick : {0.0, scaleLine / 2, scaleLine})
        paper.line({left + tick, y - 1.2}, {left + tick, y + 1.2});
    if (setup.bottom < roomForWords)
        return;
    const QString words = tr("this line is 100 mm long when the sheet is printed at 100 %");
    const QFont font = paperFont(PaperType::plain, second);
    paper.text({(a4.width() - paper.textWidth(words, font)) / 2, y + 4.4}, words, font);
}

void paintWordsAbove(const Paper& paper, const SheetSetup& setup, int sheet, int sheets)
{
    const QSizeF size = setup.labelSize();
    const QFont font = paperFont(PaperType::plain, second);
    const QString place = tr("sheet %1 of %2").arg(sheet + 1).arg(sheets);
    const double y = setup.top - 3, right = a4.width() - std::max(setup.right, 5.0), left = std::max(setup.left, 5.0);
    const double width = paper.textWidth(place, font);
    paper.text({right - width, y}, place, font);
    paper.textWithin({left, y}, right - width - left - 4,
                     tr("%1 labels to a sheet, %2 × %3 mm. Print at 100 %. Write in pencil. Single frame: inner bag. Double "
                        "frame: outer bag.")
                         .arg(setup.perSheet())
                         .arg(size.width(), 0, 'f', 0)
                         .arg(size.height(), 0, 'f', 0),
                     PaperType::plain, second);
}

} // namespace

int sheetsFor(std::size_t labels, const SheetSetup& setup)
{
    const int places = static_cast<int>(labels) + setup.free - 1;
    return (places + setup.perSheet() - 1) / setup.perSheet();
}

void paintLabelSheet(QPainter& painter, const std::vector<Label>& labels, const SheetSetup& setup, int sheet)
{
    const Paper paper(painter);
    painter.setRenderHint(QPainter::Antialiasing);
    if (setup.top >= wordsAbove)
        paintWordsAbove(paper, setup, sheet, sheetsFor(labels.size(), setup));
    for (int at = 0; at < setup.perSheet(); ++at) {
        const int label = sheet * setup.perSheet() + at - (setup.free - 1);
        if (label >= 0 && label < static_cast<int>(labels.size()))
            paintLabel(paper, labels[static_cast<std::size_t>(label)], setup.place(at));
    }
    paintScale(paper, setup);
}

void paintLabelSheets(QPainter& painter, const std::vector<Label>& labels, const SheetSetup& setup,
                      const std::function<void()>& nextPage)
{
    for (int sheet = 0; sheet < sheetsFor(labels.size(), setup); ++sheet) {
        if (sheet > 0)
            nextPage();
        paintLabelSheet(painter, labels, setup, sheet);
    }
}

} // namespace cupule::ui
