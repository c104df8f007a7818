// Rows of the reference tables (RFC 4180), read in place and by column name.

#pragma once

#include <map>
#include <string>
#include <vector>

namespace cupule::test {

using Row = std::map<std::string, std::string>;

/// All rows of a table below a shared folder, `reference/geo` or another; none, and a word on it, where it is absent.
std::vector<Row> referenceRows(const std::string& file, const std::string& folder = "reference/geo");

/// All numbers of a text, in order: "E=651409.903 N=313177.270" gives two.
std::vector<double> numbersIn(const std::string& text);

} // namespace cupule::test
