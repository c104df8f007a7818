// Papers as PDF files of A4. Needs an application with fonts (QGuiApplication; without a screen under the platform
// "offscreen").

#pragma once

#include <string>
#include <vector>

#include "core/report/document.h"
#include "core/report/label.h"
#include "ui/bridge/label_sheet.h"

namespace cupule::ui {

/// The file as bytes.
std::string labelSheetsPdf(const std::vector<report::Label>& labels, const SheetSetup& setup);
std::string documentPdf(const report::Document& document);

} // namespace cupule::ui
