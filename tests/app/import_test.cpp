// What the program says about files that it takes in: every code in words, every answer by an option.

#include <fstream>
#include <regex>
#include <set>
#include <sstream>

#include "app/words.h"
#include "core/base/file.h"
#include "tests/app/command.h"
#include "tests/support/catch.h"
#include "tests/support/shared_data.h"
#include "ui/bridge/words.h"

using namespace cupule;
using namespace cupule::test;

namespace {

/// Codes in the first column of the tables below a heading of resources/docs/import_kinds.md; the tests run at the top of
/// the checkout.
std::set<std::string> codesBelow(const std::string& heading)
{
    std::ifstream page("resources/docs/import_kinds.md");
    std::set<std::string> codes;
    const std::regex code("`([a-z_-]+)`");
    bool below = false;
    for (std::string line; std::getline(page, line);) {
        if (line.starts_with("#"))
            below = line.find(heading) != std::string::npos;
        if (!below || !line.starts_with("| `"))
            continue;
        const std::string first = line.substr(0, line.find('|', 1));
        for (auto at = std::sregex_iterator(first.begin(), first.end(), code); at != std::sregex_iterator(); ++at)
            codes.insert((*at)[1]);
    }
    return codes;
}

/// Kinds that the importers write, read off their sources.
std::set<std::string> kindsInSources()
{
    std::set<std::string> kinds;
    const std::regex made("(?:kind = |bad\\(|ask\\(row, |say\\(point, |m_label, |ImportQuestion question\\{[a-z.A-Z]+, |"
                          "m_questions.push_back\\(\\{m_path, |string_view \\w+ = |return )\"([a-z]+[-_][a-z_-]+)\"");
    for (const char* file : {"import_gpx", "import_place", "import_resolve", "import_row", "import_table", "import_when",
                             "import_photos", "import_locate"}) {
        std::stringstream source;
        source << std::ifstream("core/task/" + std::string(file) + ".cpp").rdbuf();
        const std::string text = source.str();
        for (auto at = std::sregex_iterator(text.begin(), text.end(), made); at != std::sregex_iterator(); ++at)
            kinds.insert((*at)[1]);
    }
    return kinds;
}

std::string written(Command& command, const std::string& name, const std::string& text)
{
    const std::string path = command.path(name);
    REQUIRE(writeFile(path, text));
    return path;
}

} // namespace

TEST_CASE("every kind, question and note of an import has words, and the page lists every kind", "[app][import]")
{
    const auto kinds = codesBelow("Kinds of import problems");
    const auto questions = codesBelow("Questions about a whole file");
    REQUIRE(kinds.size() > 35);
    REQUIRE(questions.size() == 6);
    for (const auto& known : {kinds, questions})
        for (const auto& kind : known) {
            CAPTURE(kind);
            const std::string words = app::plain(ui::importKindText(kind));
            CHECK((words.ends_with('.') || words.ends_with('?')));
        }
    const auto notes = codesBelow("Notes about a file");
    REQUIRE(notes.size() > 20);
    for (const auto& note : notes) {
        CAPTURE(note);
        const std::string words = app::plain(ui::importNoteText(note + ":7"));
        CHECK(words.ends_with('.'));
        CHECK(words.find('%') == std::string::npos);
    }
    const auto made = kindsInSources();
    REQUIRE(made.size() > 10);
    for (const auto& kind : made) {
        CAPTURE(kind);
        CHECK((kinds.contains(kind) || questions.contains(kind)));
    }
}

TEST_CASE("a row that was set aside says why and what to do", "[app][import]")
{
    Command command;
    REQUIRE(command.as("OF", {"new", command.path("s.cupule")}).code == 0);
    const std::string table = written(command, "day.csv",
                                      "tree,date,grid_ref,gall_size_mm\nT-1,2026-06-10,SO 612 0941,\n"
                                      "T-2,2026-06-10,SI 612 094,\nT-3,2026-06-10,SO 612 094,142\n");
    const Said said = command.as("OF", {"import", command.path("s.cupule"), table});
    CHECK(said.code == 1);
    CHECK(said.says("line 2, grid_ref \"SO 612 0941\": The digits cannot be halved"));
    CHECK(said.says("line 3, grid_ref \"SI 612 094\": No grid uses the letter I"));
    // hard limits of the pack, made from the trade's list of signs
    CHECK(said.says("line 4, gall_size_mm \"142\": No gall has this size. Sizes are in millimetres: is a decimal point lost? "
                    "It lies between 2 and 60."));
    CHECK(said.says("day.set-aside.csv"));
    const auto json = command.json("OF", {"import", command.path("s.cupule"), table}, 1);
    for (const char* key : {"rows", "kept", "known_already", "set_aside", "problems"})
        CHECK(json.contains(key));
    for (const auto& problem : json["problems"]) {
        for (const char* key : {"row", "line", "column", "value", "kind", "cause"})
            CHECK(problem.contains(key));
        CHECK_FALSE(problem["sentence"].get<std::string>().empty());
    }
    CHECK(json["problems"][0]["row"] == 1);
    CHECK(json["problems"][0]["line"] == 2);
    CHECK(json["problems"][0]["cause"] == "odd-digit-count");
}

TEST_CASE("what a file leaves open is asked, with the option that answers", "[app][import]")
{
    Command command;
    const std::string store = command.path("s.cupule");
    REQUIRE(command.as("OF", {"new", store}).code == 0);
    const std::string table = written(command, "day.csv", "tree,date\nT-1,04/05/2026\n");
    const Said asked = command.as("OF", {"import", store, table});
    CHECK(asked.code == 1);
    CHECK(asked.says("dmy: 04/05/2026 = 2026-05-04"));
    CHECK(asked.says("mdy: 04/05/2026 = 2026-04-05"));
    CHECK(asked.says("--date-order"));
    CHECK(command.json("OF", {"import", store, table, "--date-order", "dmy"})["kept"] == 1);

    const std::string columns = command.path("columns.json");
    const std::string foreign = written(command, "baum.csv", "Baum,date\nT-9,2026-05-04\n");
    CHECK(command.as("OF", {"import", store, foreign, "--save-columns", columns}).says("Answer with --columns."));
    std::string mapping = readFile(columns).value();
    mapping.replace(mapping.find("\"remark\""), 8, "\"tree\"");
    REQUIRE(writeFile(columns, mapping));
    CHECK(command.json("OF", {"import", store, foreign, "--columns", columns})["kept"] == 1);

    const std::string route = written(command, "walk.gpx",
                                      "<gpx version=\"1.1\" xmlns=\"http://www.topografix.com/GPX/1/1\"><rte>"
                                      "<rtept lat=\"51.9\" lon=\"-2.5\"><name>T-7</name></rtept></rte></gpx>");
    CHECK(command.as("OF", {"import", store, route}).says("Answer with --route-points."));
    CHECK(command.json("OF", {"import", store, route, "--route-points"})["kept"] == 1);

    const std::string turned = written(command, "turned.csv", "tree,date,lat,lon\nT-5,2026-05-04,-123.1,49.2\n");
    CHECK(command.as("OF", {"import", store, turned}).says("--swapped"));
    CHECK(command.json("OF", {"import", store, turned, "--swapped"})["kept"] == 1);
}

TEST_CASE("the same picture sent smaller is noticed, and a person says what it is", "[app][import]")
{
    // qarmin/czkawka issue 1199: the same picture again, smaller and without EXIF; another tree 30 s later is no copy
    const auto folder = test::sharedPath("reference/cases/C15");
    if (!folder) {
        test::skipped("reference cases are not there");
        return;
    }
    Command command;
    const std::string store = command.path("s.cupule");
    REQUIRE(command.as("MH", {"new", store}).code == 0);
    REQUIRE(command.as("MH", {"import", store, *folder + "/original.jpg"}).code == 0);
    CHECK(command.as("MH", {"import", store, *folder + "/original.jpg"}).says("the same file as original.jpg"));
    const Said said = command.as("MH", {"import", store, *folder + "/sent_by_messenger.jpg", *folder + "/other_tree_same_minute.jpg"});
    CHECK(said.says("sent_by_messenger.jpg: It looks like original.jpg"));
    CHECK_FALSE(said.says("other_tree_same_minute.jpg: It looks like"));
    const auto photo = command.json("MH", {"photo", store, "sent_by_messenger.jpg", "--copy-of", "original.jpg"});
    CHECK(photo.contains("copyOf"));
    CHECK(command.json("MH", {"undo", store})["what"] == "photo");
    CHECK(command.json("MH", {"photo", store, "sent_by_messenger.jpg", "--copy-of", "original.jpg"}).contains("copyOf"));
    const auto apart = command.json("MH", {"photo", store, "sent_by_messenger.jpg", "--no-copy-of", "original.jpg"});
    CHECK(apart["notWith"].size() == 1);
    CHECK_FALSE(apart.contains("copyOf"));
}

TEST_CASE("a file that cannot be opened among others is named, and the others are taken in", "[app][import]")
{
    Command command;
    const std::string store = command.path("s.cupule");
    REQUIRE(command.as("OF", {"new", store}).code == 0);
    const std::string table = written(command, "day.csv", "tree,date\nT-1,2026-05-04\n");
    const Said said = command.as("OF", {"import", store, table, command.path("lost.csv")});
    CHECK(said.code == 3);
    CHECK(said.says("kept: 1"));
    CHECK(said.says("could not be opened"));
}
