// The file of rows that were set aside: what was wrong in four columns of our own, then each row as it stands.
//
//  - Our columns come first, so that a row with too few or too many fields keeps its text byte for byte. An import of the
//    mended file passes over them.
//  - Written beside its place while the import runs and moved there at the end; nothing stays behind otherwise.

#pragma once

#include <array>
#include <fstream>
#include <memory>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "core/task/import_table.h"

namespace cupule {

class AsideFile {
public:
    /// `target` is the wanted path; `exact` false: a free name near it is taken. `source` is never overwritten.
    AsideFile(std::string target, bool exact, std::string source, const TableReader& table);
    ~AsideFile();
    AsideFile(const AsideFile&) = delete;
    AsideFile& operator=(const AsideFile&) = delete;

    /// Fault "file.write".
    Status add(const TableBatch& batch);
    /// The path it has now; empty where nothing was set aside. Fault "file.write".
    Result<std::string> finish();

private:
    Status begin();
    void write(std::string_view raw, std::span<const ImportProblem> problems);
    std::string m_target, m_source, m_part, m_header;
    bool m_exact;
    bool m_ours;                           ///< the source holds our columns already
    char m_delimiter;
    std::ofstream m_out;
    std::string m_line;
};

/// Our four columns of one row: what was wrong with it, of several problems one after the other.
std::array<std::string, 4> asideCells(std::span<const ImportProblem> problems);
/// Writes rows of what is no table: `headings` after our columns, then each row with our cells first. Path and fault as
/// AsideFile::finish.
Result<std::string> writeAsideTable(const std::string& target, bool exact, const std::string& source,
                                    const std::vector<std::string>& headings,
                                    const std::vector<std::vector<std::string>>& rows);
/// `<folder of the store>/<name of the file>.set-aside.csv`
std::string asidePath(const std::string& store, const std::string& file);

} // namespace cupule
