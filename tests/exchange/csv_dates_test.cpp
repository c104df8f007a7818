#include "core/exchange/csv/dates.h"

#include <algorithm>

#include "core/exchange/problem.h"
#include "tests/support/catch.h"

using namespace cupule;

namespace {

std::string shown(const Result<DateCell, DateFault>& read)
{
    if (!read)
        return std::string(dateFaultKind(read.error()));
    std::string out = read->date.text();
    if (read->time)
        out.append(" ").append(read->time->text());
    if (read->offsetMinutes)
        out.append(" ").append(std::to_string(*read->offsetMinutes));
    return out;
}

DateEvidence evidenceOf(const std::vector<std::string>& cells)
{
    DateEvidence evidence;
    for (std::size_t i = 0; i < cells.size(); ++i)
        evidence.add(cells[i], static_cast<std::int64_t>(i + 1));
    return evidence;
}

using Verdict = DateEvidence::Verdict;

} // namespace

TEST_CASE("Dates that need no order are read in every usual form", "[csv][dates]")
{
    // Forms: ISO 8601-1:2019, 5.2.2.1 (calendar dates), 5.4.2 (date and time); the others are common practice, no source.
    const auto [cell, expected] = GENERATE(table<std::string, std::string>({
        {"2024-05-02", "2024-05-02"},
        {" 2024-05-02 ", "2024-05-02"},
        {"2024/5/2", "2024-05-02"},
        {"2024.05.02", "2024-05-02"},
        {"20240502", "2024-05-02"},
        {"2 May 2024", "2024-05-02"},
        {"2nd May 2024", "2024-05-02"},
        {"02-May-24", "2024-05-02"},
        {"2 sept. 2024", "2024-09-02"},
        {"May 2, 2024", "2024-05-02"},
        {"2024-May-02", "2024-05-02"},
        {"1 January 1969", "1969-01-01"},
        {"2024-05-02T09:14", "2024-05-02 09:14"},
        {"2024-05-02 9:14:05", "2024-05-02 09:14:05"},
        {"2020-01-01T15:00:00Z", "2020-01-01 15:00 0"},
        {"2020-01-01T15:00:00+03:00", "2020-01-01 15:00 180"},
        {"2020-01-01T15:00:00.250-0330", "2020-01-01 15:00 -210"},
        {"2 May 2024 2:30 PM", "2024-05-02 14:30"},
        {"2 May 2024, 12:05 am", "2024-05-02 00:05"},
        {"2024-02-29", "2024-02-29"},
        {"05/05/2024", "2024-05-05"},
    }));
    CAPTURE(cell);
    CHECK(shown(readDate(cell, {})) == expected);
}

TEST_CASE("What is no date is refused by kind", "[csv][dates]")
{
    const auto [cell, expected] = GENERATE(table<std::string, std::string>({
        {"2023-02-29", "impossible_date"},     // no leap year
        {"2019-13-01", "impossible_date"},
        {"2019-00-10", "impossible_date"},
        {"31 June 2024", "impossible_date"},
        {"32/01/2024", "impossible_date"},
        {"2024-05-02 25:00", "impossible_date"},
        {"45/45/2024", "impossible_date"},
        {"04/05/2023", "ambiguous-date"},
        {"23/05/2023", "ambiguous-date"},      // proved for the column by the evidence, never by the row
        {"yesterday", "unreadable-date"},
        {"2024", "unreadable-date"},           // a year alone is no day count of 1905
        {"2024-05", "unreadable-date"},
        {"2024-05-02 noon", "unreadable-date"},
        {"2024-05-02T", "unreadable-date"},
        {"2-5/2024", "unreadable-date"},
        {"1.2", "unreadable-date"},
        {"May", "unreadable-date"},
        {"2 Floréal 2024", "unreadable-date"},
        {"-45072", "unreadable-date"},
        {"123456789012", "unreadable-date"},
        {"", ""},
        {"  ", ""},
    }));
    CAPTURE(cell);
    CHECK(shown(readDate(cell, {})) == expected);
}

TEST_CASE("An order told reads every row in it and refuses what cannot be", "[csv][dates]")
{
    CHECK(shown(readDate("04/05/2023", DateOrder::dayFirst)) == "2023-05-04");
    CHECK(shown(readDate("04/05/2023", DateOrder::monthFirst)) == "2023-04-05");
    CHECK(shown(readDate("4.5.23", DateOrder::dayFirst)) == "2023-05-04");
    CHECK(shown(readDate("05/23/2023", DateOrder::dayFirst)) == "impossible_date");
    CHECK(shown(readDate("23/05/2023", DateOrder::monthFirst)) == "impossible_date");
    CHECK(shown(readDate("2/5/2024 14:30", DateOrder::dayFirst)) == "2024-05-02 14:30");
    // POSIX strptime, %y: 69 to 99 are the 1900s.
    CHECK(shown(readDate("01/02/68", DateOrder::dayFirst)) == "2068-02-01");
    CHECK(shown(readDate("01/02/69", DateOrder::dayFirst)) == "1969-02-01");
    CHECK(readDate("01/02/69", DateOrder::dayFirst)->twoDigitYear);
}

TEST_CASE("Day counts of spreadsheets are read and told", "[csv][dates]")
{
    // ECMA-376 Part 1, 18.17.4.1: the 1900 system; values as Python's 1899-12-30 + n days gives them.
    const auto whole = readDate("45072", {});
    CHECK(shown(whole) == "2023-05-26");
    CHECK(whole->dayCount);
    CHECK(shown(readDate("45073.604166666664", {})) == "2023-05-27 14:30");
    CHECK(shown(readDate("45073,604166666664", {})) == "2023-05-27 14:30");
    CHECK(shown(readDate("45073.999999", {})) == "2023-05-28 00:00");
    CHECK(readDate("60", {}).error() == DateFault::neverWas);
    CHECK(shown(readDate("10000", {})) == "1927-05-18");
    CHECK(shown(readDate("109574", {})) == "2199-12-31");
    CHECK(shown(readDate("9999", {})) == "unreadable-date");
    CHECK(shown(readDate("109575", {})) == "unreadable-date");
}

TEST_CASE("One row that can only be a day settles the whole column", "[csv][dates]")
{
    const auto decision = evidenceOf({"04/05/2023", "05/06/2023", "", "23/05/2023"}).decide();
    CHECK(decision.verdict == Verdict::settled);
    CHECK(decision.order == DateOrder::dayFirst);
    CHECK(decision.dayProof == DateEvidence::Sample{4, "23/05/2023"});
    const auto american = evidenceOf({"04/05/2023", "05/23/2023"}).decide();
    CHECK(american.order == DateOrder::monthFirst);
    CHECK(american.monthProof == DateEvidence::Sample{2, "05/23/2023"});
}

TEST_CASE("A column that reads both ways is asked about, with the cells that differ", "[csv][dates]")
{
    const auto evidence = evidenceOf({"05/05/2023", "02/05/2024", "01/12/2024"});
    const auto decision = evidence.decide();
    CHECK(decision.verdict == Verdict::ask);
    CHECK_FALSE(decision.order);
    CHECK(decision.open == std::vector<DateEvidence::Sample>{{2, "02/05/2024"}, {3, "01/12/2024"}});
    CHECK(evidence.decide(DateOrder::monthFirst).order == DateOrder::monthFirst);
}

TEST_CASE("Rows that prove different orders are a contradiction, not a majority", "[csv][dates]")
{
    const auto decision = evidenceOf({"23/05/2023", "24/05/2023", "05/23/2023"}).decide();
    CHECK(decision.verdict == Verdict::contradiction);
    CHECK_FALSE(decision.order);
    CHECK(decision.dayProof->row == 1);
    CHECK(decision.monthProof->row == 3);
}

TEST_CASE("Points between the parts mean day first", "[csv][dates]")
{
    // Unicode CLDR 42, dates/calendars/gregorian: every short pattern of the form x.y.z begins with d or y.
    const auto decision = evidenceOf({"02.05.2024", "03.05.2024"}).decide();
    CHECK(decision.verdict == Verdict::settled);
    CHECK(decision.order == DateOrder::dayFirst);
    CHECK(decision.bySeparator);
    CHECK(evidenceOf({"02.05.2024", "02/05/2024"}).decide().verdict == Verdict::ask);
    CHECK(evidenceOf({"02.05.2024", "05.23.2024"}).decide().verdict == Verdict::contradiction);
}

TEST_CASE("Columns without numbers in doubt need no order", "[csv][dates]")
{
    const auto evidence = evidenceOf({"2024-05-02", "2 May 2024", "45072", "", "60", "soon", "05/05/2024"});
    CHECK(evidence.decide().verdict == Verdict::notNeeded);
    CHECK(evidence.cells == 6);
    CHECK(evidence.dayCounts == 1);
    CHECK(evidence.unreadable == 2);
    CHECK(evidence.needOrder == 1);
}

TEST_CASE("Evidence does not depend on anything but the set of cells", "[csv][dates][property]")
{
    std::vector<std::string> cells = {"04/05/2023", "05/06/2023", "23/05/2023", "45072", "2 May 2024"};
    std::sort(cells.begin(), cells.end());
    do {
        CHECK(evidenceOf(cells).decide().order == DateOrder::dayFirst);
    } while (std::next_permutation(cells.begin(), cells.end()));
}

TEST_CASE("Every day from 1970 to 2070 reads back in every form that writes it", "[csv][dates][property]")
{
    static const char* months[] = {"January", "February", "March",     "April",   "May",      "June",
                                   "July",    "August",   "September", "October", "November", "December"};
    for (std::int32_t days = 0; days < 36525; days += 7) {
        const CivilDate date{days};
        const std::string y = std::to_string(date.year());
        const std::string m = std::to_string(date.month());
        const std::string d = std::to_string(date.day());
        const std::string name = months[date.month() - 1];
        for (const auto& text : {y + "-" + m + "-" + d, d + " " + name + " " + y, d + "-" + name.substr(0, 3) + "-" + y,
                                 name + " " + d + ", " + y}) {
            CAPTURE(text);
            REQUIRE(readDate(text, {})->date == date);
        }
        REQUIRE(readDate(d + "/" + m + "/" + y, DateOrder::dayFirst)->date == date);
        REQUIRE(readDate(m + "/" + d + "/" + y, DateOrder::monthFirst)->date == date);
        if (days + 25569 >= 10000)
            REQUIRE(readDate(std::to_string(days + 25569), {})->date == date);
    }
}

TEST_CASE("Times of day are read as people write them", "[csv][dates]")
{
    const auto time = [](const char* cell) {
        const auto read = readTime(cell);
        if (!read)
            return std::string("fault ").append(std::to_string(static_cast<int>(read.error())));
        std::string text = read->time.text();
        if (read->offsetMinutes)
            text.append(" ").append(std::to_string(*read->offsetMinutes));
        return text;
    };
    CHECK(time("9:14") == "09:14");
    CHECK(time("09:14:30") == "09:14:30");
    CHECK(time("9.14") == "09:14");
    CHECK(time("2:30 pm") == "14:30");
    CHECK(time("12:00 AM") == "00:00");
    CHECK(time("15:00:00+03:00") == "15:00 180");
    CHECK(time("15:00:00Z") == "15:00 0");
    CHECK(time("0.604166667") == "14:30");      // ECMA-376: a time is a part of a day
    CHECK(time("0.25") == "fault 2");           // 25 past midnight or six in the morning
    CHECK(time("24:00") == "fault 3");
    CHECK(time("13:00 pm") == "fault 3");
    CHECK(time("9:7") == "fault 2");
    CHECK(time("noon") == "fault 2");
    CHECK(time("") == "fault 1");
}

TEST_CASE("Names of orders are those of the command line", "[csv][dates]")
{
    CHECK(dateOrderNamed("day-first") == DateOrder::dayFirst);
    CHECK(dateOrderNamed("MDY") == DateOrder::monthFirst);
    CHECK(dateOrderNamed("ymd").error().code == "csv.date-order");
}
