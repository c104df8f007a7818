// A document as one HTML file: self-contained (no link, no script, no font from elsewhere), escaped, readable on a
// small screen, printable with banner and foot on every page (they stand in the head and foot of a page table, which
// browsers repeat).

#pragma once

#include <string>
#include <string_view>

#include "core/report/document.h"

namespace cupule::report {

/// &, <, >, " and ' as entities; control characters that no HTML may hold are left out.
std::string escapeHtml(std::string_view text);
std::string toHtml(const Document& document);
/// A bar for each value, with its label and number; no meaning in colour. `fill` and `ink` are colours of SVG.
std::string barsSvg(const Figure& figure, std::string_view fill = "#5c6a62", std::string_view ink = "#1d2320");

} // namespace cupule::report
