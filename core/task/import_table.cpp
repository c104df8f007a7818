#include "core/task/import_table.h"

#include <algorithm>

#include "core/base/text.h"
#include "core/base/zone.h"

namespace cupule {

namespace {

const std::string& told(const std::string& option, const std::string& other)
{
    return option.empty() ? other : option;
}

Result<DialectChoice> choiceOf(const ImportOptions& options, const ColumnMapping& saved)
{
    DialectChoice choice;
    if (const auto text = told(options.delimiter, saved.delimiter); !text.empty()) {
        if (const auto named = delimiterNamed(text))
            choice.delimiter = *named;
        else if (text.size() == 1 && text[0] > ' ' && text[0] != '"')
            choice.delimiter = text[0];
        else
            return fail(named.error());
    }
    if (const auto text = told(options.decimal, saved.decimal); !text.empty()) {
        const auto named = decimalNamed(text);
        if (!named)
            return fail(named.error());
        choice.decimal = *named;
    }
    if (const auto text = told(options.encoding, saved.encoding); !text.empty()) {
        const auto named = encodingNamed(text);
        if (!named)
            return fail(named.error());
        choice.encoding = *named;
    }
    return choice;
}

std::string_view orderName(DateOrder order)
{
    return order == DateOrder::dayFirst ? "day-first" : "month-first";
}

std::string orderOption(DateOrder order)
{
    return order == DateOrder::dayFirst ? "dmy" : "mdy";
}

/// "dmy: 04/05/2023 = 2023-05-04, row 1; ...", each text once.
std::string shownDates(const std::vector<DateEvidence::Sample>& samples, DateOrder order)
{
    std::string shown = orderOption(order) + ":";
    std::vector<std::string> seen;
    for (const auto& sample : samples) {
        if (std::find(seen.begin(), seen.end(), sample.text) != seen.end())
            continue;
        const auto read = readDate(sample.text, order);
        shown += (seen.empty() ? " " : "; ") + sample.text + " = " + (read ? read->date.text() : "-") + ", row " +
                 std::to_string(sample.row);
        seen.push_back(sample.text);
    }
    return shown;
}

std::string delimiterName(char delimiter)
{
    return delimiter == '\t' ? "tab" : std::string(1, delimiter);
}

} // namespace

TableReader::TableReader(std::string path, const ImportOptions& options, const TableContext& context)
    : m_path(std::move(path)), m_options(options), m_context(context)
{
}

void TableBatch::loseRow(TableRow& row, ImportProblem problem)
{
    row.lost = true;
    problem.row = row.row;
    problem.line = row.line;
    const AsideRow lost{row.row, row.rawBegin, row.rawLength, problems.size(), 1};
    problems.push_back(std::move(problem));
    aside.insert(std::upper_bound(aside.begin(), aside.end(), row.row,
                                  [](std::int64_t number, const AsideRow& other) { return number < other.row; }),
                 lost);
}

Result<std::unique_ptr<TableReader>> TableReader::open(const std::string& path, const ImportOptions& options,
                                                       const TableContext& context, const Progress& progress)
{
    std::unique_ptr<TableReader> reader(new TableReader(path, options, context));
    if (auto settled = reader->settle(progress); !settled)
        return fail(settled.error());
    return reader;
}

Status TableReader::settle(const Progress& progress)
{
    ColumnMapping saved;
    if (!m_options.columnsFile.empty()) {
        auto read = readColumnMapping(m_options.columnsFile);
        if (!read)
            return fail(read.error());
        saved = std::move(*read);
    }
    const auto choice = choiceOf(m_options, saved);
    if (!choice)
        return fail(choice.error());
    auto dialect = detectDialect(m_path, *choice, progress);
    if (!dialect)
        return fail(dialect.error());
    m_dialect = std::move(*dialect);
    auto reader = CsvReader::open(m_path, m_dialect);
    if (!reader)
        return fail(reader.error());
    m_reader.emplace(std::move(*reader));
    auto columns = matchColumns(m_reader->headers(), saved, *m_context.pack);
    if (!columns)
        return fail(columns.error());
    m_columns = std::move(*columns);
    if (auto rows = settleRows(saved); !rows)
        return rows;
    askForColumns();
    return tellOrder(told(m_options.dateOrder, saved.dateOrder));
}

Status TableReader::settleRows(const ColumnMapping& saved)
{
    RowSetting setting;
    setting.pack = m_context.pack;
    setting.zone = told(told(m_options.zone, saved.zone), m_context.zone);
    if (const auto known = inZone(setting.zone, 0); !known)
        return fail(known.error());
    setting.system = told(m_options.system, saved.system);
    setting.decimal = m_dialect.decimal;
    setting.today = m_options.today.value_or(m_context.today);
    setting.site = m_options.site;
    setting.swapped = m_options.swapped;
    setting.observer = told(m_options.observer, m_context.observer);
    auto rows = RowReader::create(m_columns, setting);
    if (!rows)
        return fail(rows.error());
    m_rows.emplace(std::move(*rows));
    return {};
}

/// "ymd" says that no cell may need an order.
Status TableReader::tellOrder(const std::string& order)
{
    if (order.empty())
        return {};
    m_orderSettled = true;
    if (order == "ymd" || order == "year-first")
        return {};
    const auto named = dateOrderNamed(order);
    if (!named)
        return fail(named.error());
    m_order = *named;
    m_rows->setOrder(m_order);
    return {};
}

void TableReader::askForColumns()
{
    std::string headings;
    for (const auto& column : m_columns.all)
        headings += (headings.empty() ? "" : ", ") + column.heading + " = " + fieldName(column);
    if (m_dialect.encodingSure == Sureness::guessed && m_dialect.badBytes > 0)
        m_questions.push_back({m_path, "encoding", {}, {m_dialect.encoding.name, "UTF-8"}, "--encoding"});
    if (!m_columns.has(ImportField::tree))
        m_questions.push_back({m_path, "tree-column", {}, {headings}, "--columns"});
    else if (m_columns.listsTrees() && m_columns.holdsAnswers())
        m_questions.push_back({m_path, "date-column", {}, {headings}, "--columns"});
}

void TableReader::askForOrder(const DateEvidence::Decision& decision)
{
    ImportQuestion question{m_path, "date-order", m_columns.find(ImportField::date)->heading, {}, "--date-order"};
    for (const auto order : {DateOrder::dayFirst, DateOrder::monthFirst}) {
        std::vector<DateEvidence::Sample> samples;
        if (decision.verdict == DateEvidence::Verdict::contradiction)
            samples.push_back(order == DateOrder::dayFirst ? *decision.dayProof : *decision.monthProof);
        samples.insert(samples.end(), decision.open.begin(), decision.open.end());
        question.readings.push_back(shownDates(samples, order));
    }
    m_questions.push_back(std::move(question));
}

Status TableReader::settleOrder()
{
    m_orderSettled = true;
    auto reader = CsvReader::open(m_path, m_dialect);
    if (!reader)
        return fail(reader.error());
    const std::size_t column = m_columns.find(ImportField::date)->index;
    DateEvidence evidence;
    CsvRow row;
    for (;;) {
        const auto more = reader->next(row);
        if (!more)
            return fail(more.error());
        if (!*more)
            break;
        if (row.flaw.empty())
            evidence.add(row.fields[column], row.row);
    }
    const auto decision = evidence.decide();
    if (!decision.order) {
        askForOrder(decision);
        return {};
    }
    m_order = decision.order;
    m_rows->setOrder(m_order);
    const auto& proof = *m_order == DateOrder::dayFirst ? decision.dayProof : decision.monthProof;
    m_orderProof = decision.bySeparator || !proof ? "points" : "row " + std::to_string(proof->row);
    return {};
}

void TableReader::setAside(const CsvRow& row, TableBatch& batch)
{
    const AsideRow aside{row.row, batch.raw.size(), row.raw.size(), batch.problems.size(), m_checked.problems.size()};
    batch.raw.append(row.raw);
    for (auto& found : m_checked.problems) {
        ImportProblem problem;
        problem.file = m_path;
        problem.row = row.row;
        problem.line = row.line;
        if (found.column != nullptr) {
            problem.column = found.column->heading;
            problem.value = shownValue(row.fields[found.column->index]);
        }
        if (!found.value.empty())
            problem.value = shownValue(found.value);
        problem.kind = std::move(found.kind);
        problem.cause = std::move(found.cause);
        problem.suggestion = std::move(found.suggestion);
        batch.problems.push_back(std::move(problem));
    }
    batch.aside.push_back(aside);
}

void TableReader::setAsideFlawed(const CsvRow& row, TableBatch& batch)
{
    const ReadProblem flaw = flawProblem(row, m_reader->headers().size());
    batch.aside.push_back({row.row, batch.raw.size(), row.raw.size(), batch.problems.size(), 1});
    batch.raw.append(row.raw);
    ImportProblem problem;
    problem.file = m_path;
    problem.row = flaw.row;
    problem.line = flaw.line;
    problem.value = flaw.value;
    problem.kind = flaw.kind;
    problem.suggestion = flaw.detail;
    batch.problems.push_back(std::move(problem));
}

/// False where a question came up.
Result<bool> TableReader::checkRow(const CsvRow& row, TableBatch& batch, bool take)
{
    bool good = m_rows->check(row.fields, m_checked);
    if (!good && !m_orderSettled && m_rows->needsOrder()) {
        if (auto settled = settleOrder(); !settled)
            return fail(settled.error());
        if (!m_questions.empty())
            return false;
        good = m_rows->check(row.fields, m_checked);
    }
    if (!good) {
        setAside(row, batch);
        return true;
    }
    m_dayCounts += m_checked.when.dayCount ? 1 : 0;
    m_shortYears += m_checked.when.twoDigitYear ? 1 : 0;
    if (!take) {
        ++batch.good;
        return true;
    }
    if (batch.rows.size() == batch.good)
        batch.rows.emplace_back();
    TableRow& out = batch.rows[batch.good++];
    out.row = row.row;
    out.line = row.line;
    out.rawBegin = batch.raw.size();
    out.rawLength = row.raw.size();
    out.lost = false;
    batch.raw.append(row.raw);
    m_rows->take(row.fields, m_checked, out);
    return true;
}

Result<bool> TableReader::next(TableBatch& batch, bool take)
{
    batch.good = 0;
    batch.read = 0;
    batch.raw.clear();
    batch.problems.clear();
    batch.aside.clear();
    CsvRow row;
    while (static_cast<std::size_t>(batch.read) < batchRows) {
        const auto more = m_reader->next(row);
        if (!more)
            return fail(more.error());
        if (!*more)
            return batch.read > 0;
        batch.bytes = row.byte + static_cast<std::int64_t>(row.raw.size());
        if (row.blank) {
            ++m_blank;
            continue;
        }
        ++batch.read;
        if (!row.flaw.empty()) {
            setAsideFlawed(row, batch);
            continue;
        }
        const auto goesOn = checkRow(row, batch, take);
        if (!goesOn || !*goesOn)
            return goesOn;
    }
    return true;
}

std::vector<std::string> TableReader::notes() const
{
    std::vector<std::string> out;
    const auto note = [&](const std::string& code, const std::string& argument) { out.push_back(code + ":" + argument); };
    if (m_dialect.encodingSure == Sureness::guessed)
        note("encoding-guessed", m_dialect.encoding.name);
    else if (m_dialect.encoding.encoding != TextEncoding::utf8)
        note("encoding", m_dialect.encoding.name);
    if (m_dialect.delimiter != ',')
        note(m_dialect.delimiterSure == Sureness::guessed ? "delimiter-guessed" : "delimiter",
             delimiterName(m_dialect.delimiter));
    if (m_dialect.decimal != '.')
        note("decimal", "comma");
    if (m_dialect.headerLine > 1)
        note("header-line", std::to_string(m_dialect.headerLine));
    if (m_order && !m_orderProof.empty())
        note(std::string("date-order-") + std::string(orderName(*m_order)), m_orderProof);
    const auto counted = [&](const char* code, std::int64_t count) {
        if (count > 0)
            note(code, std::to_string(count));
    };
    counted("day-counts", m_dayCounts);
    counted("two-digit-years", m_shortYears);
    counted("blank-rows", m_blank);
    for (const auto& column : m_columns.all)
        if (column.field == ImportField::remark)
            note("kept-as-remark", column.heading);
    for (const auto& heading : m_columns.twice)
        note("column-twice", heading);
    if (m_columns.listsTrees() && m_questions.empty())
        note("list-of-trees", std::to_string(m_columns.all.size()));
    return out;
}

ColumnMapping TableReader::mapping() const
{
    ColumnMapping out;
    for (const auto& column : m_columns.all)
        out.columns.try_emplace(column.heading, fieldName(column));
    out.delimiter = delimiterName(m_dialect.delimiter);
    out.decimal = m_dialect.decimal == ',' ? "comma" : "point";
    out.encoding = m_dialect.encoding.name;
    if (m_order)
        out.dateOrder = orderOption(*m_order);
    out.zone = m_options.zone;
    out.system = m_options.system;
    return out;
}

Result<TableCheck> checkTable(const std::string& path, const ImportOptions& options, const TableContext& context,
                              const Progress& progress)
{
    auto reader = TableReader::open(path, options, context, progress);
    if (!reader)
        return fail(reader.error());
    TableCheck out;
    TableBatch batch;
    while ((*reader)->questions().empty()) {
        const auto more = (*reader)->next(batch, false);
        if (!more)
            return fail(more.error());
        out.rows += batch.read;
        out.good += static_cast<std::int64_t>(batch.good);
        out.setAside += static_cast<std::int64_t>(batch.aside.size());
        std::move(batch.problems.begin(), batch.problems.end(), std::back_inserter(out.problems));
        if (progress.cancelled())
            return fail("job.cancelled", FaultKind::refused);
        progress.tell(batch.bytes, (*reader)->dialect().fileBytes);
        if (!*more)
            break;
    }
    out.questions = (*reader)->questions();
    out.notes = (*reader)->notes();
    return out;
}

} // namespace cupule
