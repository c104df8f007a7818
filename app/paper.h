// A report as a file.

#pragma once

#include <string>

#include "core/base/result.h"
#include "core/report/document.h"

namespace cupule::app {

/// Pages of A4 where the name ends in .pdf (then fonts are needed), else a page for a browser.
Status writePaper(const std::string& path, const report::Document& paper);

} // namespace cupule::app
