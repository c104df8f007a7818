#include "ui/print/document_paper.h"

#include <algorithm>
#include <cmath>
#include <numeric>

#include <QAbstractTextDocumentLayout>
#include <QCoreApplication>
#include <QSvgRenderer>
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
constexpr double body = 9, small = 8, heading = 11.5, title = 16; // points
constexpr double codeSide = 16;             // mm, modules alone
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

/// Fills the text document, block by block.
class Filler {
public:
    Filler(QTextDocument& text, double dotsPerMm)
        : m_drawings(new Drawings(&text)), m_cursor(&text), m_dotsPerMm(dotsPerMm)
    {
        text.documentLayout()->registerHandler(Drawings::type, m_drawings);
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
        const double points = block.level <= 2 ? heading : body;
        paragraph(block.text, PaperType::strong, points, 2.2 * blockGap, true);
    }
    void operator()(const Paragraph& block)
    {
        paragraph(block.text, block.tone == Tone::caution ? PaperType::strong : PaperType::plain,
                  block.tone == Tone::note ? small : body, blockGap, false);
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
            paragraph(item, PaperType::plain, body, 1, false);
            if (list == nullptr)
                list = m_cursor.createList(format);
            else
                list->add(m_cursor.block());
        }
    }
    void operator()(const Table& block)
    {
        if (!block.caption.empty())
            paragraph(block.caption, PaperType::strong, small, blockGap, true);
        else
            gap();
        if (block.columns.empty())
            return;
        const int columns = static_cast<int>(block.columns.size());
        QTextTable* table = m_cursor.insertTable(static_cast<int>(block.rows.size()) + 1, columns, tableFormat(block));
        for (int column = 0; column < columns; ++column)
            cell(*table, 0, column, block.columns[static_cast<std::size_t>(column)].title, block, PaperType::strong);
        for (int row = 0; row < static_cast<int>(block.rows.size()); ++row) {
            const auto& cells = block.rows[static_cast<std::size_t>(row)];
            for (int column = 0; column < columns; ++column) {
                const auto at = static_cast<std::size_t>(column);
                cell(*table, row + 1, column, at < cells.size() ? cells[at] : std::string(), block, PaperType::plain);
            }
        }
        m_cursor.movePosition(QTextCursor::End);
    }
    void operator()(const Figure& block)
    {
        paragraph(block.caption, PaperType::strong, small, blockGap, true);
        paragraph({}, PaperType::plain, body, 1, false);
        const QByteArray svg = QByteArray::fromStdString(barsSvg(block));
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
        if (withNext)
            format.setBottomMargin(2);
        m_cursor.insertBlock(format);
        write(m_cursor, text, type, points);
    }
    void gap()
    {
        QTextBlockFormat format;
        format.setLineHeight(blockGap, QTextBlockFormat::FixedHeight);
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
        format.setHeaderRowCount(1);
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
};

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
    : m_document(document), m_text(std::make_unique<QTextDocument>())
{
    const double dotsPerMm = device->logicalDpiX() / mmPerInch;
    m_text->documentLayout()->setPaintDevice(device);
    m_text->setDocumentMargin(0);
    m_text->setIndentWidth(listIndent);
    m_text->setDefaultFont(paperFont(PaperType::plain, body));
    Filler fill(*m_text, dotsPerMm);
    fill.head(document);
    for (const Block& block : document.blocks)
        std::visit(fill, block);
    m_text->setPageSize(content.size() * dotsPerMm);
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
    painter.setClipRect(part);
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
