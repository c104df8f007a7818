// Random tables with faults injected into some rows: the good rows are all kept, the bad ones all set aside, whatever the
// delimiter, the line ends, the quoting and the order of the columns.

#include <algorithm>

#include "core/base/random.h"
#include "tests/support/catch.h"
#include "tests/task/import_fixture.h"

using namespace cupule;
using test::ImportBench;

namespace {

struct Made {
    std::string text;
    std::vector<std::int64_t> bad;             ///< rows
    std::vector<std::string> goodLabels;
};

class Maker {
public:
    explicit Maker(std::uint64_t seed) : m_random(seed) {}

    Made table()
    {
        m_delimiter = ",;\t|"[m_random.below(4)];
        m_end = std::vector<std::string>{"\n", "\r\n", "\r"}[m_random.below(3)];
        std::vector<std::size_t> order{0, 1, 2, 3, 4, 5, 6};
        for (std::size_t i = order.size(); i > 1; --i)
            std::swap(order[i - 1], order[m_random.below(i)]);
        const std::vector<std::string> headings{"tree", "grid_ref", "date", "observer", "gall_count", "gall_size_mm", "notes"};
        Made made;
        write(made.text, headings, order);
        const std::size_t rows = 20 + m_random.below(120);
        for (std::size_t row = 1; row <= rows; ++row) {
            auto cells = goodRow(row);
            const bool bad = m_random.below(5) == 0;
            if (bad) {
                spoil(cells);
                made.bad.push_back(static_cast<std::int64_t>(row));
            } else {
                made.goodLabels.push_back(cells[0]);
            }
            write(made.text, cells, order);
        }
        return made;
    }

private:
    std::vector<std::string> goodRow(std::size_t row)
    {
        const std::string digits = std::to_string(100000 + m_random.below(900000)) + std::to_string(10 + m_random.below(90));
        const std::vector<std::string> notes{"", "plain", "with, comma; semicolon", "said \"so\"", "two\nlines", "  blanks  ",
                                             "tab\there", "pipe | here", "ch\xC3\xA2taignier", "=1+1", "'", "#"};
        return {"T-" + std::to_string(row), "SU " + digits, "2026-0" + std::to_string(1 + m_random.below(6)) + "-1" + std::to_string(m_random.below(10)),
                "AF", std::to_string(m_random.below(30)), std::to_string(2 + m_random.below(58)), notes[m_random.below(notes.size())]};
    }

    void spoil(std::vector<std::string>& cells)
    {
        switch (m_random.below(8)) {
        case 0: cells[0].clear(); break;
        case 1: cells[1] = "SI" + cells[1].substr(2); break;
        case 2: cells[1].pop_back(); break;
        case 3: cells[2] = "2026-02-30"; break;
        case 4: cells[2] = "2031-05-01"; break;
        case 5: cells[2] = "next week"; break;
        case 6: cells[4] = "-1"; break;
        default: cells[5] = "61"; break;
        }
    }

    void write(std::string& text, const std::vector<std::string>& cells, const std::vector<std::size_t>& order)
    {
        for (std::size_t i = 0; i < order.size(); ++i) {
            std::string cell = cells[order[i]];
            const bool must = cell.find_first_of("\"\n\r") != std::string::npos || cell.find(m_delimiter) != std::string::npos
                              || (i == 0 && cell.starts_with('#'));
            if (must || m_random.below(6) == 0) {
                for (std::size_t at = cell.find('"'); at != std::string::npos; at = cell.find('"', at + 2))
                    cell.insert(at, "\"");
                cell = '"' + cell + '"';
            }
            text += (i == 0 ? "" : std::string(1, m_delimiter)) + cell;
        }
        text += m_end;
    }

    SeededRandom m_random;
    char m_delimiter = ',';
    std::string m_end;
};

} // namespace

TEST_CASE("no good row is lost and no bad one kept, whatever the table looks like", "[import][property]")
{
    for (std::uint64_t seed = 1; seed <= 40; ++seed) {
        CAPTURE(seed);
        const Made made = Maker(seed).table();
        ImportBench bench;
        ImportOptions options;
        options.dryRun = seed % 4 == 0;
        const auto report = bench.table(made.text, options);
        CAPTURE(made.text.substr(0, 400));
        REQUIRE(report.questions.empty());
        CHECK(report.kept == static_cast<std::int64_t>(made.goodLabels.size()));
        CHECK(report.setAside == static_cast<std::int64_t>(made.bad.size()));
        std::vector<std::int64_t> rows;
        for (const auto& problem : report.problems)
            if (!problem.kept && (rows.empty() || rows.back() != problem.row))
                rows.push_back(problem.row);
        CHECK(rows == made.bad);
        if (options.dryRun)
            continue;
        CHECK(bench.visits().size() == made.goodLabels.size());
        const auto again = bench.table(made.text);
        CHECK(again.kept == 0);
        CHECK(again.knownAlready == report.kept);
    }
}
