#include "tests/support/reference_rows.h"

#include <cctype>
#include <cstdlib>

#include "core/base/file.h"
#include "tests/support/shared_data.h"

namespace cupule::test {

namespace {

std::vector<std::vector<std::string>> fieldsOf(const std::string& text)
{
    std::vector<std::vector<std::string>> lines(1, {std::string{}});
    bool quoted = false;
    for (std::size_t at = 0; at < text.size(); ++at) {
        const char c = text[at];
        if (c == '"' && quoted && at + 1 < text.size() && text[at + 1] == '"')
            lines.back().back() += text[at++];
        else if (c == '"')
            quoted = !quoted;
        else if (c == ',' && !quoted)
            lines.back().emplace_back();
        else if (c == '\n' && !quoted)
            lines.push_back({std::string{}});
        else if (c != '\r' || quoted)
            lines.back().back() += c;
    }
    if (lines.back().size() == 1 && lines.back().front().empty())
        lines.pop_back();
    return lines;
}

} // namespace

std::vector<Row> referenceRows(const std::string& below)
{
    const auto path = sharedPath(below);
    if (!path) {
        skipped(below + " is not here");
        return {};
    }
    const auto lines = fieldsOf(readFile(*path).value());
    std::vector<Row> rows;
    for (std::size_t i = 1; i < lines.size(); ++i) {
        Row row;
        for (std::size_t column = 0; column < lines[0].size() && column < lines[i].size(); ++column)
            row[lines[0][column]] = lines[i][column];
        rows.push_back(std::move(row));
    }
    return rows;
}

std::vector<double> numbersIn(const std::string& text)
{
    std::vector<double> numbers;
    for (std::size_t at = 0; at < text.size();) {
        const bool sign = text[at] == '-' && at + 1 < text.size() && std::isdigit(text[at + 1]) != 0;
        if (std::isdigit(static_cast<unsigned char>(text[at])) == 0 && !sign) {
            ++at;
            continue;
        }
        char* end = nullptr;
        numbers.push_back(std::strtod(text.c_str() + at, &end));
        at = static_cast<std::size_t>(end - text.c_str());
    }
    return numbers;
}

} // namespace cupule::test
