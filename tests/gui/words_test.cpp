// No code of core is without a sentence: the lists are core's own, or are read off its sources.

#include "tests/support/catch.h"

#include <filesystem>
#include <fstream>
#include <regex>
#include <set>
#include <sstream>

#include <QCoreApplication>
#include <QDirIterator>
#include <QFile>
#include <QRegularExpression>

#include "core/protocol/pack_reader.h"
#include "core/rules/checks.h"
#include "core/rules/custody.h"
#include "tests/gui/gui_support.h"
#include "ui/bridge/plurals.h"
#include "ui/bridge/text.h"
#include "ui/bridge/words.h"

using namespace cupule;
using namespace cupule::ui;

namespace {

/// Every string literal of the form "room.what" below a folder, comments left out. The tests run at the top
/// of the checkout.
std::set<std::string> codesIn(const std::string& folder)
{
    std::set<std::string> codes;
    const std::regex form("\"([a-z][a-z0-9]*(?:-[a-z0-9]+)*\\.[a-z][a-z0-9]*(?:-[a-z0-9]+)*)\"");
    for (const auto& entry : std::filesystem::recursive_directory_iterator(folder)) {
        if (entry.path().extension() != ".cpp" && entry.path().extension() != ".h")
            continue;
        std::ifstream file(entry.path());
        for (std::string line; std::getline(file, line);) {
            line = line.substr(0, line.find("//"));
            for (auto it = std::sregex_iterator(line.begin(), line.end(), form); it != std::sregex_iterator();
                 ++it)
                codes.insert((*it)[1]);
        }
    }
    return codes;
}

bool isFileName(const std::string& code)
{
    static const std::set<std::string> endings{"json", "html", "csv", "sql", "db",  "gpkg",  "gpx",
                                               "jpg",  "png",  "xml", "tif", "gsb", "cupule"};
    return endings.contains(code.substr(code.find('.') + 1));
}

Finding findingOf(std::string_view code)
{
    Finding finding;
    finding.code = std::string(code);
    finding.field = "observations/S02/measure";
    return finding;
}

bool wellFormed(const QString& words)
{
    const bool ends = words.endsWith(u'.') || words.endsWith(u'?') || words.endsWith(u'!');
    return !words.isEmpty() && ends && !words.contains(u'{') && !words.contains(QStringLiteral("  ")) &&
           words.at(0).isUpper() == words.at(0).isLetter();
}

} // namespace

TEST_CASE("every check has a sentence for each of its codes", "[gui][words]")
{
    const Pack& pack = builtInPack();
    for (const Check& check : allChecks())
        for (const std::string_view code : check.codes) {
            Finding finding = findingOf(code);
            for (const SeasonQuestion& question : pack.seasonQuestions)
                if (question.code == code)
                    finding.arguments.push_back({"words", question.words});
            const QString words = findingText(finding, &pack);
            CAPTURE(std::string(code), utf8(words));
            CHECK(!words.isEmpty());
            CHECK(!words.contains(u'{'));
        }
}

TEST_CASE("a season question of the pack speaks in the pack's own words", "[gui][words]")
{
    REQUIRE(!builtInPack().seasonQuestions.empty());
    for (const SeasonQuestion& question : builtInPack().seasonQuestions) {
        Finding finding = findingOf(question.code);
        finding.arguments = {{"words", question.words}};
        CHECK(findingText(finding, &builtInPack()) == text(question.words));
    }
}

TEST_CASE("every custody code has a sentence and a short form", "[gui][words]")
{
    REQUIRE(custodyCodes().size() > 50);
    for (const std::string_view code : custodyCodes()) {
        CAPTURE(std::string(code));
        Finding finding = findingOf(code);
        finding.arguments = {{"hours", "30"}, {"limitHours", "24"}, {"line", "3"}};
        CHECK(wellFormed(findingText(finding)));
        CHECK(!custodyText(std::string(code)).isEmpty());
    }
}

TEST_CASE("why a signed file is refused is said in words", "[gui][words]")
{
    const Fault line{"bundle.line", FaultKind::refused, {{"file", "day.zip"}, {"line", "3"}, {"part", "journal"}, {"why", "hash"}}, {}, {}};
    CHECK(faultWords(line).what == QStringLiteral("Line 3 of journal in day.zip does not hold: it was changed after it was written."));
    for (const char* what : {"decision", "told", "erasure", "key-note", "skill"}) {
        const Fault theirs{"bundle.not-theirs", FaultKind::refused, {{"who", "LP"}, {"what", what}}, {}, {}};
        CAPTURE(what);
        CHECK(faultWords(theirs).what.startsWith(QStringLiteral("The key of LP may not say this: ")));
        CHECK(faultWords(theirs).what.size() > QStringLiteral("The key of LP may not say this: .").size() + static_cast<qsizetype>(qstrlen(what)));
    }
}

TEST_CASE("every fault in the sources of core has a sentence", "[gui][words]")
{
    std::set<std::string> codes;
    for (const char* room :
         {"base", "position", "record", "protocol", "rules", "store", "exchange", "report", "task"})
        codes.merge(codesIn(std::string("core/") + room));
    REQUIRE(codes.size() > 150);
    std::set<std::string> without;
    for (const std::string& code : codes) {
        if (isFileName(code) || code.starts_with("season."))
            continue;
        Fault fault;
        fault.code = code;
        if (findingText(findingOf(code)).isEmpty() && faultText(fault).isEmpty() &&
            packFaultText({"/signs/0", code, "x"}).isEmpty())
            without.insert(code);
    }
    std::ostringstream list;
    for (const std::string& code : without)
        list << code << ' ';
    CAPTURE(list.str());
    CHECK(without.empty());
}

TEST_CASE("every kind that the position and import pages list has words", "[gui][words]")
{
    // core/position/notation.h and core/exchange/problem.h
    for (const char* kind : {"empty",
                             "not-a-grid-reference",
                             "odd-digit-count",
                             "unequal-halves",
                             "too-many-digits",
                             "illegal-letter-I",
                             "illegal-letter-O",
                             "bad-tetrad-letter",
                             "letter-digit-confusion",
                             "letter-in-digits",
                             "mixed-decimals",
                             "outside-grid",
                             "ambiguous-number",
                             "ambiguous-comma",
                             "ambiguous-hemisphere",
                             "one-number",
                             "too-many-tokens",
                             "spreadsheet-mangled",
                             "bad-zone",
                             "bad-column-letter",
                             "bad-row-letter",
                             "band-mismatch",
                             "two-latitudes",
                             "two-longitudes",
                             "sign-and-letter",
                             "minutes-out-of-range",
                             "seconds-out-of-range",
                             "latitude-out-of-range",
                             "longitude-out-of-range",
                             "iso6709-width",
                             "unknown-system",
                             "no-transformation",
                             "null-island",
                             "sea-square",
                             "outside-area",
                             "very-coarse"}) {
        CAPTURE(kind);
        CHECK(!positionKindText(kind).isEmpty());
    }
    std::ifstream header("core/exchange/problem.h");
    std::stringstream whole;
    whole << header.rdbuf();
    const std::string source = whole.str();
    const std::regex form("string_view \\w+ = \"([^\"]+)\"");
    int kinds = 0;
    for (auto it = std::sregex_iterator(source.begin(), source.end(), form); it != std::sregex_iterator();
         ++it, ++kinds) {
        CAPTURE((*it)[1].str());
        CHECK(!importKindText((*it)[1]).isEmpty());
    }
    CHECK(kinds > 20);
}

TEST_CASE("codes of host, season, worth, queue and deciding have words", "[gui][words]")
{
    // core/rules/host.h, season.h, deciding.h and core/task/day.h, keep.h say these lists.
    for (const char* code :
         {"two-organs", "diagnostic", "counted-margin", "margin-alone", "winter-organ", "kinds-left",
          "contradiction", "ground-not-asked", "ground-other-tree", "ground-not-accepted"})
        CHECK(!hostLackingText(code).isEmpty());
    for (const char* code : {"peak", "before-peak", "after-peak", "persists", "moved-window", "not-yet",
                             "over", "never-answered", "no-window"}) {
        SignSeason season;
        season.reason = code;
        CHECK(wellFormed(seasonText(season)));
    }
    for (const char* code :
         {"calendar", "conditions", "no-effort", "host-open", "host-ruled-out", "not-a-null"}) {
        Worth worth;
        worth.reason = code;
        CHECK(!worthText(worth, builtInPack()).isEmpty());
    }
    for (const char* code : {"new-ground", "one-of-two", "conflict", "fields-apart", "positive", "answered", "doubtful-null",
                             "batch-failed", "routine-null", "in-batch", "other", "decided"})
        CHECK(wellFormed(queueText(code)));
    for (const char* code : {"no-role", "observer", "companion", "trainer", "landowner", "may-not-decide-for",
                             "decided-before", "first-of-two"})
        CHECK(wellFormed(mayNotText(code)));
    for (const char* code :
         {"empty", "nothing-seen", "gall", "older-gall", "not-host", "other-signs", "incomplete"})
        CHECK(!summaryWord(code).isEmpty());
    for (const char* why : {"hash", "gap", "content", "commitment", "shorter-than-seen"})
        CHECK(!proofText(why).isEmpty());
    for (const char* kind :
         {"tree", "cut", "inner-bag", "outer-bag", "hands", "laboratory", "result", "disposal"})
        CHECK(!linkWord(kind).isEmpty());
}

TEST_CASE("sentences carry their numbers with units", "[gui][words]")
{
    Finding finding = findingOf("photo.other-place");
    finding.field = "photos/x";
    finding.arguments = {{"name", "IMG_0031.JPG"}, {"metres", "4210"}, {"limitMetres", "250"}};
    CHECK(findingText(finding) ==
          QStringLiteral(
              "This position is 4.2 km from the photo’s, IMG_0031.JPG. Does the photo belong here?"));

    finding = findingOf("date.future");
    finding.arguments = {{"date", "2026-07-02"}, {"today", "2026-06-11"}};
    CHECK(findingText(finding) == QStringLiteral("The date 2 July 2026 is after today, 11 June 2026."));

    finding = findingOf("hygiene.open");
    finding.arguments = {{"items", "boots tools"}};
    CHECK(findingText(finding) == QStringLiteral("Not confirmed clean before leaving: boots and tools."));

    finding = findingOf("effort.short");
    finding.arguments = {{"minutes", "2"}, {"leastMinutes", "5"}, {"mostMinutes", "20"}};
    CHECK(findingText(finding) == QStringLiteral("2 min at a tree is short: usual is 5 min to 20 min."));
}

TEST_CASE("a fault says what happened, where, what was kept and what to do", "[gui][words]")
{
    Fault fault;
    fault.code = "store.newer";
    fault.arguments = {
        {"file", "vale.cupule"}, {"version", "9"}, {"known", "4"}, {"can", "get-newer-program"}};
    const FaultWords words = faultWords(fault);
    CHECK(words.what ==
          QStringLiteral("vale.cupule was made by a newer Cupule (its form 9; this program knows up to 4)."));
    CHECK(words.kept == QStringLiteral("It is untouched."));
    CHECK(words.toDo == QStringLiteral("Install the newer program."));

    fault = {};
    fault.code = "position.odd-digit-count";
    fault.arguments = {{"value", "TQ 123"}, {"suggestion", ""}};
    CHECK(faultText(fault).startsWith(QStringLiteral("“TQ 123”: the digits cannot be halved")));
    CHECK(faultText(Fault{"nobody.knows", FaultKind::data, {}, {}, {}}).isEmpty());
}

TEST_CASE("a field path is called as people call the field", "[gui][words]")
{
    const Pack& pack = builtInPack();
    CHECK(fieldWords("date", &pack) == QStringLiteral("date"));
    CHECK(fieldWords("outer-bag/seal", &pack) == QStringLiteral("outer bag, seal"));
    CHECK(fieldWords("on-site/hygiene/boots", &pack) == QStringLiteral("before leaving the tree, boots"));
    const QString sign = fieldWords("observations/S02/measure", &pack);
    CHECK(sign.endsWith(QStringLiteral(", size")));
    CHECK(!sign.startsWith(QStringLiteral("S02")));
    CHECK(fieldWords("photos/0198-x", &pack) == QStringLiteral("this photo"));
}

TEST_CASE("every plural of the window has its singular", "[gui][words]")
{
    const QRegularExpression counted(QStringLiteral("tr\\(\"([^\"]*%n[^\"]*)\""));
    int found = 0;
    for (QDirIterator at(QStringLiteral("ui"), {QStringLiteral("*.cpp")}, QDir::Files, QDirIterator::Subdirectories); at.hasNext();) {
        QFile file(at.next());
        REQUIRE(file.open(QIODevice::ReadOnly));
        for (auto match = counted.globalMatch(QString::fromUtf8(file.readAll())); match.hasNext(); ++found) {
            const QString source = match.next().captured(1);
            CHECK((EnglishPlurals::knows(source) ? QString() : source) == QString());
        }
    }
    CHECK(found > 10);
    CHECK(QCoreApplication::translate("any", "%n visits", nullptr, 1) == QStringLiteral("1 visit"));
    CHECK(QCoreApplication::translate("any", "%n visits", nullptr, 2) == QStringLiteral("2 visits"));
}
