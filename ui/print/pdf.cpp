#include "ui/print/pdf.h"

#include <functional>

#include <QBuffer>
#include <QPainter>
#include <QPdfWriter>

#include "ui/print/document_paper.h"
#include "ui/print/label_paper.h"

// Outside any namespace, as the macro wants it.
static void loadMarks()
{
    Q_INIT_RESOURCE(cupule);
}

namespace cupule::ui {

namespace {

constexpr int dotsPerInch = 1200;

/// One page after the other into memory: a file is written whole or not at all.
std::string pdf(const std::string& title, const std::function<void(QPdfWriter&, QPainter&)>& paint)
{
    loadMarks();
    QBuffer buffer;
    buffer.open(QIODevice::WriteOnly);
    {
        QPdfWriter writer(&buffer);
        writer.setResolution(dotsPerInch);
        writer.setPageSize(QPageSize(QPageSize::A4));
        writer.setPageMargins(QMarginsF());
        writer.setTitle(QString::fromStdString(title));
        writer.setCreator(QStringLiteral("Cupule"));
        QPainter painter(&writer);
        paint(writer, painter);
    }
    return buffer.data().toStdString();
}

} // namespace

std::string labelSheetsPdf(const std::vector<report::Label>& labels, const SheetSetup& setup)
{
    return pdf(labels.empty() ? std::string() : labels.front().number, [&](QPdfWriter& writer, QPainter& painter) {
        paintLabelSheets(painter, labels, setup, [&] { writer.newPage(); });
    });
}

std::string documentPdf(const report::Document& document)
{
    return pdf(document.title, [&](QPdfWriter& writer, QPainter& painter) {
        DocumentPaper(document, &writer).paintAll(painter, [&] { writer.newPage(); });
    });
}

} // namespace cupule::ui
