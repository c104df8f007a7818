#include "ui/print/document_paper.h"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <set>

#include <QAbstractTextDocumentLayout>
#include <QCoreApplication>
#include <QSvgRenderer>
#include <QTextBlock>
#include <QTextCursor>
#include <QTextDocument>
#include <QTextList>
#include <QTextObjectInterface>
#include <QTextTable>

#include "core/report/html.h"
#include "ui/print/code.h"
#include "ui/print/paper.h"

namespace cupule::ui {

namespace {

using namespace report;

constexpr double mmPerInch = 25.4;
constexpr QRectF content{18, 17, 174, 256}; // of a page, mm
constexpr double banner = 8, foot = 278;    // mm from the upper edge
constexpr double bodyText = 9, small = 8, heading = 11.5, title = 16; // points
constexpr double pageEdge = 0.3;            // mm of a page's ends that are not painted
constexpr double codeSide = 16;             // mm, modules alone
static_assert(codeSide >= smallestCode);
constexpr double figureWidth = 170, figureHeight = 34;
constexpr double cellPadding = 3, byHandPadding = 11, rule = 0.6; // Qt's text units, 1/96 inch
constexpr double blockGap = 5, listIndent = 16;

QString utf16(const std::string& text)
{
    return QString::fromStdString(text);
}

/// Something painted that stands in the text like one large letter.
struct Drawing {
    QSizeF size; ///< dots
    std::function<void(QPainter&, const QRectF&)> paint;
};

class Drawings final : public QObject, public QTextObjectInterface {
    Q_OBJECT
    Q_INTERFACES(QTextObjectInterface)
public:
    static constexpr int type = QTextFormat::UserObject + 1;
    static constexpr int index = QTextFormat::UserProperty + 1;

    using QObject::QObject;
    void insert(QTextCursor& at, Drawing drawing)
    {
        QTextCharFormat format;
        format.setObjectType(type);
        format.setProperty(index, static_cast<int>(m_drawings.size()));
        m_drawings.push_back(std::move(drawing));
        at.insertText(QString(QChar::ObjectReplacementCharacter), format);
    }
    QSizeF intrinsicSize(QTextDocument*, int, const QTextFormat& format) override { return of(format).size; }
    void drawObject(QPainter* painter, const QRectF& where, QTextDocument*, int, const QTextFormat& format) override
    {
        of(format).paint(*painter, where);
    }

private:
    [[nodiscard]] const Drawing& of(const QTextFormat& format) const
    {
        return m_drawings[static_cast<std::size_t>(format.property(index).toInt())];
    }
    std::vector<Drawing> m_drawings;
};

/// A place before which a page may end: a block of the document, or a row of a table (from 1; 0 = the block itself).
using Place = std::pair<std::size_t, int>;

/// What must stay on one page, and where it lies in the text.
struct Piece {
    Place place;
    int first = 0, last = 0; ///< positions
    bool withNext = false;   ///< a heading stays with what it is the heading of
};

/// Fills the text document, block by block; a new page begins before each of `breaks`.
class Filler {
public:
    Filler(QTextDocument& text, double dotsPerMm, const std::set<Place>& breaks)
        : m_drawings(new Drawings(&text)), m_cursor(&text), m_dotsPerMm(dotsPerMm), m_breaks(breaks)
    {
        text.documentLayout()->registerHandler(Drawings::type, m_drawings);
    }
    std::vector<Piece> pieces;

    void body(const std::vector<Block>& blocks)
    {
        for (m_block = 0; m_block < blocks.size(); ++m_block)
            std::visit(*this, blocks[m_block]);
    }

    void head(const Document& document)
    {
        QTextTableFormat format;
        format.setWidth(QTextLength(QTextLength::PercentageLength, 100));
        format.setBorder(0);
        const CodeModules code = codeOf(document.code);
        const double side = withQuietZone(code, codeSide) * m_dotsPerMm;
        const double codeShare = code.side > 0 ? 100 * withQuietZone(code, codeSide) / content.width() + 1 : 0;
        format.setColumnWidthConstraints({QTextLength(QTextLength::PercentageLength, 100 - codeShare),
                                          QTextLength(QTextLength::PercentageLength, codeShare)});
        QTextTable* table = m_cursor.insertTable(1, 2, format);
        QTextCursor words = table->cellAt(0, 0).firstCursorPosition();
        write(words, document.title, PaperType::strong, title);
        words.insertBlock();
        write(words, document.subtitle, PaperType::plain, small);
        if (code.side > 0) {
            QTextCursor right = table->cellAt(0, 1).firstCursorPosition();
            QTextBlockFormat flush;
            flush.setAlignment(Qt::AlignRight);
            right.setBlockFormat(flush);
            m_drawings->insert(right, {QSizeF(side, side), [code](QPainter& painter, const QRectF& where) {
                                           paintCode(painter, where, code);
                                       }});
        }
        m_cursor.movePosition(QTextCursor::End);
    }

    void operator()(const Heading& block)
    {
        const double points = block.level <= 2 ? heading : bodyText;
        paragraph(block.text, PaperType::strong, points, 2.2 * blockGap, true);
        pieces.push_back({{m_block, 0}, m_cursor.block().position(), m_cursor.position(), true});
    }
    void operator()(const Paragraph& block)
    {
        paragraph(block.text, block.tone == Tone::caution ? PaperType::strong : PaperType::plain,
                  block.tone == Tone::note ? small : bodyText, blockGap, false);
        pieces.push_back({{m_block, 0}, m_cursor.block().position(), m_cursor.position(), false});
    }
    void operator()(const List& block)
    {
        if (block.items.empty())
            return;
        QTextListFormat format;
        format.setStyle(QTextListFormat::ListDisc);
        format.setIndent(1);
        QTextList* list = nullptr;
        for (const auto& item : block.items) {
            paragraph(item, PaperType::plain, bodyText, 1, false);
            if (list == nullptr)
                list = m_cursor.createList(format);
            else
                list->add(m_cursor.block());
        }
    }
    void operator()(const Table& block)
    {
        if (!block.caption.empty()) {
            paragraph(block.caption, PaperType::strong, small, blockGap, true);
            pieces.push_back({{m_block, 0}, m_cursor.block().position(), m_cursor.position(), true});
        }
        if (block.columns.empty())
            return;
        const int rows = static_cast<int>(block.rows.size());
        // a table that a page ends becomes two, each with its head
        for (int from = 0, to = 0; from < rows || from == 0; from = to) {
            to = from + 1;
            while (to < rows && m_breaks.count({m_block, to + 1}) == 0)
                ++to;
            part(block, from, std::min(to, rows));
        }
    }
    void operator()(const Figure& block)
    {
        paragraph(block.caption, PaperType::strong, small, blockGap, true);
        paragraph({}, PaperType::plain, bodyText, 1, false);
        const QByteArray svg = QByteArray::fromStdString(barsSvg(block, "#000", "#000"));
        m_drawings->insert(m_cursor, {QSizeF(figureWidth, figureHeight) * m_dotsPerMm,
                                      [svg](QPainter& painter, const QRectF& where) {
                                          QSvgRenderer renderer(svg);
                                          renderer.setAspectRatioMode(Qt::KeepAspectRatio);
                                          renderer.render(&painter, where);
                                      }});
        if (!block.inWords.empty())
            paragraph(block.inWords, PaperType::plain, small, 1, false);
    }

private:
    /// Rows [from, to) of a table under its head.
    void part(const Table& block, int from, int to)
    {
        gap(m_breaks.count({m_block, from + 1}) > 0);
        const int columns = static_cast<int>(block.columns.size());
        QTextTable* table = m_cursor.insertTable(to - from + 1, columns, tableFormat(block));
        for (int column = 0; column < columns; ++column)
            cell(*table, 0, column, block.columns[static_cast<std::size_t>(column)].title, block, PaperType::strong);
        for (int row = from; row < to; ++row) {
            const auto& cells = block.rows[static_cast<std::size_t>(row)];
            const int at = row - from + 1;
            for (int column = 0; column < columns; ++column) {
                const auto index = static_cast<std::size_t>(column);
                cell(*table, at, column, index < cells.size() ? cells[index] : std::string(), block, PaperType::plain);
            }
            pieces.push_back({{m_block, row + 1}, table->cellAt(at, 0).firstPosition(),
                              table->cellAt(at, columns - 1).lastPosition(), false});
        }
        m_cursor.movePosition(QTextCursor::End);
    }
    static void write(QTextCursor& at, const std::string& text, PaperType type, double points)
    {
        QTextCharFormat format;
        format.setFont(paperFont(type, points));
        format.setForeground(Qt::black);
        at.insertText(utf16(text), format);
    }
    void paragraph(const std::string& text, PaperType type, double points, double above, bool withNext)
    {
        QTextBlockFormat format;
        format.setTopMargin(above);
        if (m_breaks.count({m_block, 0}) > 0)
            format.setPageBreakPolicy(QTextFormat::PageBreak_AlwaysBefore);
        if (withNext)
            format.setBottomMargin(2);
        m_cursor.insertBlock(format);
        write(m_cursor, text, type, points);
    }
    void gap(bool newPage)
    {
        QTextBlockFormat format;
        format.setLineHeight(blockGap, QTextBlockFormat::FixedHeight);
        if (newPage)
            format.setPageBreakPolicy(QTextFormat::PageBreak_AlwaysBefore);
        m_cursor.insertBlock(format);
    }
    /// Columns share the width by their longest cell, long texts by less than their length: they can be broken.
    static QList<QTextLength> shares(const Table& block)
    {
        constexpr double shortest = 5, longest = 40, bend = 0.6;
        std::vector<double> weights;
        for (std::size_t column = 0; column < block.columns.size(); ++column) {
            auto length = static_cast<double>(utf16(block.columns[column].title).size());
            for (const auto& row : block.rows)
                if (column < row.size())
                    length = std::max(length, static_cast<double>(utf16(row[column]).size()));
            weights.push_back(std::pow(std::clamp(length, shortest, longest), bend));
        }
        const double sum = std::accumulate(weights.begin(), weights.end(), 0.0);
        QList<QTextLength> out;
        for (const double weight : weights)
            out.append(QTextLength(QTextLength::PercentageLength, 100 * weight / sum));
        return out;
    }
    static QTextTableFormat tableFormat(const Table& block)
    {
        QTextTableFormat format;
        format.setWidth(QTextLength(QTextLength::PercentageLength, 100));
        format.setColumnWidthConstraints(shares(block));
        format.setBorder(0);
        format.setBorderCollapse(true);
        format.setCellSpacing(0);
        format.setCellPadding(cellPadding);
        format.setHeaderRowCount(1); // for a row longer than a page
        return format;
    }
    static void cell(QTextTable& table, int row, int column, const std::string& text, const Table& block, PaperType type)
    {
        QTextTableCell place = table.cellAt(row, column);
        QTextTableCellFormat look;
        look.setBottomBorder(row == 0 ? 2 * rule : rule);
        look.setBottomBorderStyle(QTextFrameFormat::BorderStyle_Solid);
        look.setBottomBorderBrush(Qt::black);
        if (block.byHand) {
            look.setRightBorder(rule);
            look.setRightBorderStyle(QTextFrameFormat::BorderStyle_Solid);
            look.setRightBorderBrush(Qt::black);
        }
        if (block.byHand && row > 0) {
            look.setTopPadding(byHandPadding);
            look.setBottomPadding(byHandPadding);
        }
        place.setFormat(look);
        QTextCursor at = place.firstCursorPosition();
        QTextBlockFormat format;
        if (block.columns[static_cast<std::size_t>(column)].number)
            format.setAlignment(Qt::AlignRight);
        at.setBlockFormat(format);
        write(at, text, type, small);
    }

    Drawings* m_drawings; // owned by the text document
    QTextCursor m_cursor;
    double m_dotsPerMm;
    const std::set<Place>& m_breaks;
    std::size_t m_block = 0;
};

/// Upper and lower end of what lies between two positions, in dots from the top of the first page.
std::pair<double, double> extent(const QTextDocument& text, const Piece& piece)
{
    double top = 0, bottom = 0;
    for (QTextBlock block = text.findBlock(piece.first); block.isValid() && block.position() <= piece.last; block = block.next()) {
        const QRectF where = text.documentLayout()->blockBoundingRect(block);
        top = block.position() <= piece.first ? where.top() : std::min(top, where.top());
        bottom = std::max(bottom, where.bottom());
    }
    return {top, bottom};
}

/// Adds a break before the first piece that a page tears, or before a heading that it parts from what it heads. False
/// where there is none.
bool mendBreak(const QTextDocument& text, const std::vector<Piece>& pieces, std::set<Place>& breaks)
{
    const double height = text.pageSize().height();
    const auto page = [&](double at) { return static_cast<int>(at / height); };
    for (std::size_t i = 0; i < pieces.size(); ++i) {
        const auto [top, bottom] = extent(text, pieces[i]);
        // a row that Qt moved by itself leaves its rule behind; a table that ends before it does not
        const bool moved = pieces[i].place.second > 1 && page(extent(text, pieces[i - 1]).second - 1) != page(top);
        const bool torn = moved || page(top) != page(bottom - 1);
        const bool alone = pieces[i].withNext && i + 1 < pieces.size() && page(extent(text, pieces[i + 1]).second - 1) != page(top);
        if (!(torn || alone) || breaks.count(pieces[i].place) > 0)
            continue;
        breaks.insert(pieces[i].place);
        if (alone)
            breaks.erase(pieces[i + 1].place); // it follows its heading onto the new page
        return true;
    }
    return false;
}

void paintEdges(const Paper& paper, const Document& document, int page, int pages)
{
    QPainter& painter = paper.painter();
    painter.setPen(Qt::black);
    if (!document.demonstration.empty()) {
        painter.setFont(paperFont(PaperType::strong, small));
        painter.drawText(paper.dots(QRectF(content.left(), banner, content.width(), 5)), Qt::AlignCenter,
                         utf16(document.demonstration));
        paper.pen(0.3);
        painter.drawRect(paper.dots(QRectF(content.left(), banner - 0.6, content.width(), 6.2)));
    }
    paper.pen(0.2);
    paper.line({content.left(), foot - 1.5}, {content.right(), foot - 1.5});
    constexpr double pageWidth = 26;
    painter.setFont(paperFont(PaperType::plain, smallestPaperText));
    painter.drawText(paper.dots(QRectF(content.left(), foot, content.width() - pageWidth, 11)),
                     Qt::AlignLeft | Qt::AlignTop | Qt::TextWordWrap, utf16(document.foot));
    painter.drawText(paper.dots(QRectF(content.right() - pageWidth, foot, pageWidth, 5)), Qt::AlignRight | Qt::AlignTop,
                     QCoreApplication::translate("cupule", "page %1 of %2").arg(page + 1).arg(pages));
}

} // namespace

DocumentPaper::DocumentPaper(const Document& document, QPaintDevice* device)
    : m_document(document)
{
    const double dotsPerMm = device->logicalDpiX() / mmPerInch;
    // Qt tears rows and leaves headings behind: where it does, the page is made to end before them. Each round mends one
    // place, and what is taken back is taken back once for its heading, so it ends.
    std::set<Place> breaks;
    for (bool again = true; again;) {
        m_text = std::make_unique<QTextDocument>();
        m_text->documentLayout()->setPaintDevice(device);
        m_text->setDocumentMargin(0);
        m_text->setIndentWidth(listIndent);
        m_text->setDefaultFont(paperFont(PaperType::plain, bodyText));
        Filler fill(*m_text, dotsPerMm, breaks);
        fill.head(document);
        fill.body(document.blocks);
        m_text->setPageSize(content.size() * dotsPerMm);
        again = mendBreak(*m_text, fill.pieces, breaks);
    }
}

DocumentPaper::~DocumentPaper() = default;

int DocumentPaper::pages() const
{
    return m_text->pageCount();
}

void DocumentPaper::paint(QPainter& painter, int page) const
{
    const Paper paper(painter);
    paintEdges(paper, m_document, page, pages());
    const QSizeF size = m_text->pageSize();
    const QRectF part(0, page * size.height(), size.width(), size.height());
    painter.save();
    painter.translate(paper.dots(content.left()), paper.dots(content.top()) - part.top());
    // Qt paints the rule of a row that another page begins with at both pages' ends
    const double edge = paper.dots(pageEdge);
    painter.setClipRect(part.adjusted(0, edge, 0, -edge));
    QAbstractTextDocumentLayout::PaintContext context;
    context.clip = part;
    context.palette.setColor(QPalette::Text, Qt::black);
    m_text->documentLayout()->draw(&painter, context);
    painter.restore();
}

void DocumentPaper::paintAll(QPainter& painter, const std::function<void()>& nextPage) const
{
    for (int page = 0; page < pages(); ++page) {
        if (page > 0)
            nextPage();
        paint(painter, page);
    }
}

} // namespace cupule::ui

#include "document_paper.moc"
