// The verbs that print: what they write is read back from the paper.

#include "core/base/file.h"
#include "tests/app/command.h"
#include "tests/print/print_support.h"
#include "tests/support/catch.h"
#include "ui/shell/settings.h"

using namespace cupule;
using namespace cupule::test;

namespace {

/// A demonstration store with one sample, opened without leave.
std::string sampled(Command& command)
{
    return command.json("MH", {"sample", "open", command.vale(), "W03@2026-06-11", "--part", "leaf with galls", "--pieces", "3",
                               "--already-taken"})["number"];
}

} // namespace

TEST_CASE("labels are written for the samples named, and say that the store is a demonstration", "[print][verbs]")
{
    Command command;
    const std::string number = sampled(command), file = command.path("labels.pdf");
    const auto said = command.json("MH", {"labels", command.vale(), number, "--out", file, "--ask", "the office, box 12"});
    CHECK(said["labels"] == 3);
    CHECK(said["sheets"] == 1);
    CHECK(said["numbers"][0] == number);
    CHECK(said["demonstration"] == true);
    if (!haveTools({"zbarimg", "pdftoppm", "pdftotext"}))
        return;
    const std::string pdf = readFile(file).value();
    CHECK(codesIn(pagesOf(pdf).at(0)) == std::vector<std::string>(3, number));
    const std::string text = textOf(pdf);
    CHECK(text.find("the office, box 12") != std::string::npos);
    CHECK(text.find("Demonstration: invented, no real sample") != std::string::npos);
    CHECK(text.find("record W03@2026-06-11, square SO60") != std::string::npos);
    CHECK(text.find("612") == std::string::npos); // of its exact place, SO 612 094
}

TEST_CASE("a sheet without room for a label is refused and nothing is written", "[print][verbs]")
{
    Command command;
    const std::string number = sampled(command), file = command.path("labels.pdf");
    const auto refused = command.json("MH", {"labels", command.vale(), number, "--out", file, "--sheet", "12x4"}, 2);
    CHECK(refused["error"] == "labels.sheet");
    CHECK(refused["sentence"].get<std::string>().find("84 × 57 mm") != std::string::npos);
    CHECK_FALSE(readFile(file));
    CHECK(command.as("MH", {"labels", command.vale(), "26-TV-0001-0", "--out", file}).code == 3);
    CHECK_FALSE(readFile(file));
}

TEST_CASE("blank labels reserve their numbers, are printed again by number, and one of them becomes a sample", "[print][verbs]")
{
    Command command;
    const std::string store = command.vale(), file = command.path("along.pdf");
    const auto said = command.json("MH", {"labels", store, "--blank", "3", "--out", file});
    REQUIRE(said["numbers"].size() == 3);
    CHECK(said["labels"] == 9);
    const std::string number = said["numbers"][1], last = said["numbers"][2];
    const auto again = command.json("MH", {"labels", store, number, "--out", command.path("again.pdf")});
    CHECK(again["numbers"] == nlohmann::json::array({number}));
    CHECK(again["labels"] == 3);
    const auto opened = command.json("MH", {"sample", "open", store, "W03@2026-06-11", "--part", "leaf with galls", "--already-taken",
                                            "--number", number});
    CHECK(opened["number"] == number);
    CHECK(command.json("MH", {"sample", "open", store, "W03@2026-06-11", "--part", "leaf with galls", "--already-taken", "--number",
                              number},
                       1)["error"] == "sample.number-used");
    CHECK(sampled(command) > last); // none of the reserved ones
    CHECK(command.json("MH", {"labels", store, "--out", file}, 2)["error"] == "labels.which");
    CHECK(command.json("MH", {"labels", store, number, "--blank", "2", "--out", file}, 2)["error"] == "labels.which");
    CHECK(command.json("MH", {"labels", store, "--blank", "101", "--out", file}, 2)["error"] == "sample.reserve-count");
    if (!haveTools({"zbarimg", "pdftoppm"}))
        return;
    const std::vector<QImage> pages = pagesOf(readFile(file).value());
    REQUIRE(pages.size() == 2); // eight places to a sheet of plain paper
    CHECK(codesIn(pages[0]).size() == 8);
    CHECK(codesIn(pages[1]) == std::vector<std::string>{last});
}

TEST_CASE("without --sheet the set-up is the one that the window last used", "[print][verbs]")
{
    Command command;
    const std::string number = sampled(command), file = command.path("labels.pdf");
    ui::Settings(QString::fromStdString(command.path("MH") + "/window.ini")).set(ui::Setting::labelSheet, QStringLiteral("1x1"));
    CHECK(command.json("MH", {"labels", command.vale(), number, "--out", file})["sheets"] == 3);
    CHECK(command.json("MH", {"labels", command.vale(), number, "--out", file, "--sheet", "4x2"})["sheets"] == 1);
    ui::Settings(QString::fromStdString(command.path("MH") + "/window.ini")).set(ui::Setting::labelSheet, QStringLiteral("9x9"));
    CHECK(command.json("MH", {"labels", command.vale(), number, "--out", file}, 2)["error"] == "labels.sheet");
}

TEST_CASE("what the programme sets is set by a verb, and stands on labels and record", "[print][verbs]")
{
    Command command;
    const std::string number = sampled(command), store = command.vale(), file = command.path("paper.pdf");
    const auto before = command.json("MH", {"programme", store});
    CHECK(before["tell"] == "");
    CHECK(before["hours"] == nlohmann::json::array({24, 72, 96}));
    CHECK(before["hours_proposed"] == true);
    CHECK(command.as("MH", {"programme", store}).says("the programme's to set"));
    command.json("MH", {"programme", store, "--tell", "plant-health office, 01632 960 100", "--answers", "survey office, box 12"});
    CHECK(command.json("MH", {"programme", store, "--may-move", "anyone"}, 1)["error"] == "role.needed");
    command.json("OF", {"programme", store, "--may-move", "Tobias Wren", "--hours", "12", "36", "48"});
    CHECK(command.json("OF", {"programme", store, "--hours", "48", "36", "12"}, 2)["error"] == "programme.hours");
    const auto set = command.json("MH", {"programme", store});
    CHECK(set["tell"] == "plant-health office, 01632 960 100");
    CHECK(set["may_move"] == "Tobias Wren");
    CHECK(set["hours"] == nlohmann::json::array({12, 36, 48}));
    CHECK(set["hours_proposed"] == false);
    command.json("OF", {"programme", store, "--proposed-hours", "--may-move", ""});
    CHECK(command.json("OF", {"programme", store})["hours_proposed"] == true);
    if (!haveTools({"pdftotext"}))
        return;
    command.json("MH", {"labels", store, number, "--out", file});
    CHECK(textOf(readFile(file).value()).find("Ask survey office, box 12, by the number above") != std::string::npos);
    command.json("MH", {"custody-record", store, number, "--out", file});
    const std::string text = textOf(readFile(file).value());
    CHECK(text.find("Tell of a find: plant-health office, 01632 960 100.") != std::string::npos);
    CHECK(text.find("Who may move a sample is the programme's to set") != std::string::npos);
}

TEST_CASE("the custody record is written with its lines and the mark of a demonstration", "[print][verbs]")
{
    Command command;
    const std::string number = sampled(command), file = command.path("record.pdf");
    command.json("MH", {"sample", "line", command.vale(), number, "cut", "--at", "2026-06-11 13:10", "--from", "MH"});
    const auto said = command.json("MH", {"custody-record", command.vale(), number, "--out", file});
    CHECK(said["number"] == number);
    CHECK(said["lines"] == 1);
    CHECK(said["breaks"].get<int>() > 0);
    if (!haveTools({"pdftotext"}))
        return;
    const std::string text = textOf(readFile(file).value());
    CHECK(text.find("Custody record of sample " + number) != std::string::npos);
    CHECK(text.find("11 June 2026, 13.10 +01") != std::string::npos);
    CHECK(text.find("No leave of the authority is noted. Tell the authority") != std::string::npos);
    CHECK(text.find("every person, place and sample on this paper is invented") != std::string::npos);
    CHECK(text.find("612") == std::string::npos);
}
