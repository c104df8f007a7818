// The verbs that print: what they write is read back from the paper.

#include "core/base/file.h"
#include "tests/app/command.h"
#include "tests/print/print_support.h"
#include "tests/support/catch.h"

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
