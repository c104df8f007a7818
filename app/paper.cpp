#include "app/paper.h"

#include "core/base/file.h"
#include "core/base/text.h"
#include "core/report/html.h"
#include "ui/print/pdf.h"

namespace cupule::app {

Status writePaper(const std::string& path, const report::Document& paper)
{
    return writeFile(path, lowerAscii(path).ends_with(".pdf") ? ui::documentPdf(paper) : report::toHtml(paper));
}

} // namespace cupule::app
