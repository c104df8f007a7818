// Rows of the reference tables (RFC 4180), read in place and by column name.

#pragma once

#include <map>
#include <string>
#include <vector>

namespace cupule::test {

using Row = std::map<std::string, std::string>;

/// All rows of a table below the shared folder ("reference/geo/gridref_cases.csv"); none, and a word on it that counts as the
/// case's assertion, where it is absent.
std::vector<Row> referenceRows(const std::string& below);

/// All numbers of a text, in order: "E=651409.903 N=313177.270" gives two.
std::vector<double> numbersIn(const std::string& text);

} // namespace cupule::test
