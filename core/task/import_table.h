// A table file as rows that are good and rows that are set aside, in batches. Reading and checks only: no transformation,
// nothing from the store.
//
//  - What only a person can answer about the whole file (day before month or the other way round, which column names the
//    tree) is a question; nothing is read on until it is answered.
//  - The order of dates is looked for only when a cell needs it: then the rest of the file is gone through once.
//  - Memory does not grow with the file. One thread at a time.

#pragma once

#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "core/base/progress.h"
#include "core/exchange/csv/table.h"
#include "core/task/import.h"
#include "core/task/import_row.h"

namespace cupule {

struct AsideRow {
    std::int64_t row = 0;
    std::size_t rawBegin = 0, rawLength = 0;   ///< in the batch's text
    std::size_t firstProblem = 0, problems = 0;
};

struct TableBatch {
    std::vector<TableRow> rows;            ///< the first `good` of them count; the rest keeps its memory
    std::size_t good = 0;
    std::string raw;                       ///< records as they stand, one after the other
    std::vector<ImportProblem> problems;
    std::vector<AsideRow> aside;
    /// Sets aside a row that had been good.
    void loseRow(TableRow& row, ImportProblem problem);

    std::int64_t read = 0;                 ///< rows, blank ones not counted
    std::int64_t bytes = 0;                ///< of the file so far
};

/// What is needed besides the file.
struct TableContext {
    const Pack* pack = nullptr;
    CivilDate today;
    std::string zone;                      ///< of the store
    std::string observer;                  ///< of rows that name none, where the options say nothing
};

class TableReader {
public:
    static constexpr std::size_t batchRows = 512;

    /// Faults "file.*", "csv.*", "columns.*", "position.unknown-system", "zone.unknown". Where `questions()` is not empty
    /// afterwards, nothing may be read.
    static Result<std::unique_ptr<TableReader>> open(const std::string& path, const ImportOptions& options,
                                                     const TableContext& context, const Progress& progress);

    /// Fills the batch; false at the end, or where a question came up. `take` false: checks only, rows stay empty.
    Result<bool> next(TableBatch& batch, bool take = true);

    [[nodiscard]] const std::vector<ImportQuestion>& questions() const { return m_questions; }
    [[nodiscard]] const ImportColumns& columns() const { return m_columns; }
    [[nodiscard]] const CsvDialect& dialect() const { return m_dialect; }
    [[nodiscard]] const std::string& headerText() const { return m_reader->headerText(); }
    /// What was found out about the file, "code:argument".
    [[nodiscard]] std::vector<std::string> notes() const;
    /// The columns and the dialect as they were used, to be saved.
    [[nodiscard]] ColumnMapping mapping() const;

private:
    TableReader(std::string path, const ImportOptions& options, const TableContext& context);
    Status settle(const Progress& progress);
    Status settleRows(const ColumnMapping& saved);
    Status tellOrder(const std::string& order);
    void askForColumns();
    Status settleOrder();
    void askForOrder(const DateEvidence::Decision& decision);
    Result<bool> checkRow(const CsvRow& row, TableBatch& batch, bool take);
    void setAside(const CsvRow& row, TableBatch& batch);
    void setAsideFlawed(const CsvRow& row, TableBatch& batch);

    std::string m_path;
    ImportOptions m_options;
    TableContext m_context;
    CsvDialect m_dialect;
    ImportColumns m_columns;
    std::optional<CsvReader> m_reader;
    std::optional<RowReader> m_rows;
    CheckedRow m_checked;
    std::vector<ImportQuestion> m_questions;
    std::optional<DateOrder> m_order;
    std::string m_orderProof;
    bool m_orderSettled = false;
    std::int64_t m_blank = 0, m_dayCounts = 0, m_shortYears = 0;
};

/// The whole file, read and checked, nothing else.
struct TableCheck {
    std::int64_t rows = 0, good = 0, setAside = 0;
    std::vector<ImportProblem> problems;
    std::vector<ImportQuestion> questions;
    std::vector<std::string> notes;
};
Result<TableCheck> checkTable(const std::string& path, const ImportOptions& options, const TableContext& context,
                              const Progress& progress = {});

} // namespace cupule
