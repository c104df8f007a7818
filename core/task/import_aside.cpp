#include "core/task/import_aside.h"

#include <algorithm>
#include <array>
#include <filesystem>
#include <system_error>

#include "core/base/file.h"

namespace cupule {

namespace {

namespace fs = std::filesystem;

constexpr std::array ours{"problem_column", "problem_kind", "problem_cause", "problem_suggestion"};
constexpr int mostNames = 1000;

bool holdsOurs(const ImportColumns& columns)
{
    return columns.all.size() > ours.size()
           && std::all_of(columns.all.begin(), columns.all.begin() + ours.size(),
                          [](const ImportColumn& column) { return column.field == ImportField::ignored; });
}

/// What stands after our columns; the whole record where they cannot be told.
std::string_view afterOurs(std::string_view raw, char delimiter)
{
    std::size_t fields = 0;
    bool quoted = false;
    for (std::size_t i = 0; i < raw.size(); ++i) {
        quoted = raw[i] == '"' ? !quoted : quoted;
        if (raw[i] == delimiter && !quoted && ++fields == ours.size())
            return raw.substr(i + 1);
    }
    return raw;
}

void addField(std::string& line, std::string_view text, char delimiter)
{
    const bool plain = text.find_first_of("\"\r\n") == std::string_view::npos
                       && text.find(delimiter) == std::string_view::npos;
    if (plain) {
        line += text;
        return;
    }
    line += '"';
    for (const char c : text) {
        line += c;
        if (c == '"')
            line += c;
    }
    line += '"';
}

bool sameContent(const std::string& a, const std::string& b)
{
    std::ifstream first(a, std::ios::binary), second(b, std::ios::binary);
    std::array<char, 1 << 16> one{}, other{};
    while (first && second) {
        first.read(one.data(), one.size());
        second.read(other.data(), other.size());
        if (first.gcount() != second.gcount() || !std::equal(one.begin(), one.begin() + first.gcount(), other.begin()))
            return false;
    }
    return first.eof() && second.eof();
}

/// The wanted name, or the first numbered one that is free or holds the same as `part` already.
std::string freeName(const std::string& target, bool exact, const std::string& source, const std::string& part)
{
    std::error_code error;
    const auto usable = [&](const std::string& name) {
        if (fs::equivalent(name, source, error))
            return false;
        return exact || !fs::exists(name, error) || sameContent(name, part);
    };
    const fs::path path(target);
    std::string name = target;
    for (int number = 2; !usable(name) && number < mostNames; ++number)
        name = (path.parent_path() / (path.stem().string() + "-" + std::to_string(number) + path.extension().string()))
                   .string();
    return name;
}

} // namespace

std::string asidePath(const std::string& store, const std::string& file)
{
    std::string stem = fs::path(file).stem().string();
    if (const auto again = stem.find(".set-aside"); again != std::string::npos && again > 0)
        stem.resize(again);
    return (fs::path(store).parent_path() / (stem + ".set-aside.csv")).string();
}

AsideFile::AsideFile(std::string target, bool exact, std::string source, const TableReader& table)
    : m_target(std::move(target)), m_source(std::move(source)), m_header(table.headerText()), m_exact(exact),
      m_ours(holdsOurs(table.columns())), m_delimiter(table.dialect().delimiter)
{
}

AsideFile::~AsideFile()
{
    if (m_part.empty())
        return;
    m_out.close();
    std::error_code ignored;
    fs::remove(m_part, ignored);
}

Status AsideFile::begin()
{
    m_part = m_target + ".part";
    m_out.open(m_part, std::ios::binary | std::ios::trunc);
    m_line.clear();
    for (const auto* name : ours)
        (m_line += name) += m_delimiter;
    m_line += m_ours ? afterOurs(m_header, m_delimiter) : std::string_view(m_header);
    m_line += '\n';
    m_out << m_line;
    return m_out ? Status() : fail("file.write", FaultKind::io, {{"file", m_target}});
}

void AsideFile::write(std::string_view raw, std::span<const ImportProblem> problems)
{
    m_line.clear();
    for (const auto& text : asideCells(problems)) {
        addField(m_line, text, m_delimiter);
        m_line += m_delimiter;
    }
    m_line += m_ours ? afterOurs(raw, m_delimiter) : raw;
    m_line += '\n';
    m_out << m_line;
}

Status AsideFile::add(const TableBatch& batch)
{
    if (batch.aside.empty())
        return {};
    if (m_part.empty())
        if (auto begun = begin(); !begun)
            return begun;
    for (const auto& row : batch.aside)
        write(std::string_view(batch.raw).substr(row.rawBegin, row.rawLength),
              std::span(batch.problems).subspan(row.firstProblem, row.problems));
    return m_out ? Status() : fail("file.write", FaultKind::io, {{"file", m_target}});
}

Result<std::string> AsideFile::finish()
{
    if (m_part.empty())
        return std::string();
    m_out.close();
    const std::string name = freeName(m_target, m_exact, m_source, m_part);
    std::error_code error;
    if (!m_out.fail())
        fs::rename(m_part, name, error);
    if (m_out.fail() || error)
        return fail("file.write", FaultKind::io, {{"file", name}});
    m_part.clear();
    return name;
}

std::array<std::string, 4> asideCells(std::span<const ImportProblem> problems)
{
    constexpr std::array parts{&ImportProblem::column, &ImportProblem::kind, &ImportProblem::cause,
                               &ImportProblem::suggestion};
    std::array<std::string, parts.size()> cells;
    for (std::size_t i = 0; i < parts.size(); ++i)
        for (const auto& problem : problems)
            if (!(problem.*parts[i]).empty())
                cells[i] += (cells[i].empty() ? "" : " / ") + problem.*parts[i];
    return cells;
}

Result<std::string> writeAsideTable(const std::string& target, bool exact, const std::string& source,
                                    const std::vector<std::string>& headings,
                                    const std::vector<std::vector<std::string>>& rows)
{
    std::string text;
    const auto line = [&](const std::vector<std::string>& cells) {
        for (std::size_t i = 0; i < cells.size(); ++i) {
            text += i > 0 ? "," : "";
            addField(text, cells[i], ',');
        }
        text += '\n';
    };
    std::vector<std::string> first(ours.begin(), ours.end());
    first.insert(first.end(), headings.begin(), headings.end());
    line(first);
    for (const auto& row : rows)
        line(row);
    const std::string part = target + ".part";
    if (auto written = writeFile(part, text); !written)
        return fail(written.error());
    const std::string name = freeName(target, exact, source, part);
    std::error_code error;
    fs::rename(part, name, error);
    if (error)
        return fail("file.write", FaultKind::io, {{"file", name}});
    return name;
}

} // namespace cupule
