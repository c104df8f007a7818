// One row of a table: first whether it can be read at all, then what it says as a record.
//
//  - `check` decides what is set aside and why; it makes no text and looks nothing up.
//  - `take` fills the record of a row that was checked, from the same cells, and its fingerprint.
//  - Both are compiled for the columns of one table. One thread at a time.

#pragma once

#include <cstdint>
#include <memory>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/hash.h"
#include "core/record/visit.h"
#include "core/store/bulk_import.h"
#include "core/task/import_answers.h"
#include "core/task/import_place.h"
#include "core/task/import_when.h"


namespace cupule {

/// How one table is read, once all questions about it are answered.
struct RowSetting {
    const Pack* pack = nullptr;
    std::string zone;
    std::string system;
    char decimal = '.';
    bool swapped = false;                  ///< latitude and longitude stand in each other's columns
    CivilDate today;
    std::string site;                      ///< of rows that name none
    std::string observer;                  ///< likewise
};

/// What checking found out; views into the cells.
struct CheckedRow {
    std::string_view label;
    RowPlace place;
    RowWhen when;
    std::vector<double> numbers;           ///< one for each number column; NaN where empty
    std::vector<CellProblem> problems;     ///< one for each bad column; empty = good
};

/// A good row on its way into the store.
struct TableRow {
    std::int64_t row = 0, line = 0;
    std::size_t rawBegin = 0, rawLength = 0;   ///< the record as it stands, in the batch's text
    std::string label, site, observer;
    std::vector<std::string> companions;
    std::optional<ParsedPosition> place;
    Visit visit;                           ///< without ids
    std::optional<double> girth;
    Fingerprint fingerprint{};
    bool lost = false;                     ///< no transformation reaches its place: set aside after all
};

class RowReader {
public:
    /// `columns` must outlive the reader. Fault "position.unknown-system".
    static Result<RowReader> create(const ImportColumns& columns, const RowSetting& setting);
    void setOrder(std::optional<DateOrder> order) { m_when.setOrder(order); }
    [[nodiscard]] bool needsOrder() const { return m_when.needsOrder(); }

    /// True where the row is good.
    bool check(std::span<const std::string_view> cells, CheckedRow& out);
    void take(std::span<const std::string_view> cells, const CheckedRow& checked, TableRow& out);

private:
    struct NumberColumn {
        const ImportColumn* column = nullptr;
        double least = 0, most = 0;
        bool whole = false;
        bool size = false;                 ///< a measured gall: kind size_out_of_range
    };

    RowReader(const ImportColumns& columns, const RowSetting& setting, PlaceReader place);
    void addColumn(const ImportColumn& column);
    void checkNumber(const NumberColumn& number, std::string_view cell, CheckedRow& out);
    void takeNumber(const ImportColumn& column, double value, TableRow& out) const;
    void takeNames(std::span<const std::string_view> cells, const CheckedRow& checked, TableRow& out) const;
    void takeWhen(std::span<const std::string_view> cells, const CheckedRow& checked, Visit& visit) const;
    void takePosition(const CheckedRow& checked, TableRow& out) const;
    [[nodiscard]] std::string_view cell(const ImportColumn* column, std::span<const std::string_view> cells) const;

    RowSetting m_setting;
    AnswerReader m_answers;
    PlaceReader m_place;
    WhenReader m_when;
    const ImportColumn* m_label;
    const ImportColumn* m_site;
    const ImportColumn* m_observer;
    const ImportColumn* m_companions;
    const ImportColumn* m_note;
    const ImportColumn* m_date;
    const ImportColumn* m_time;
    const ImportColumn* m_leftSite;
    std::vector<const ImportColumn*> m_codes;
    std::vector<const ImportColumn*> m_remarks;
    std::vector<NumberColumn> m_numbers;
    std::string m_text;                    // of the fingerprint, used again
    std::unique_ptr<Sha256> m_hash;
};

} // namespace cupule
