#include <sstream>

#include "app/help.h"
#include "app/program.h"
#include "core/base/text.h"
#include "tests/app/command.h"
#include "tests/support/catch.h"

using namespace cupule;
using namespace cupule::test;

namespace {

std::vector<std::string> allVerbs()
{
    std::vector<std::string> names;
    for (const auto& group : app::verbGroups())
        for (const auto make : group.verbs)
            names.emplace_back(make()->name());
    return names;
}

} // namespace

TEST_CASE("help names every verb and stays within 80 columns", "[app][help]")
{
    Command command;
    const Said said = command.run({"help"});
    CHECK(said.code == 0);
    CHECK(said.err.empty());
    for (const auto& name : allVerbs()) {
        CAPTURE(name);
        CHECK(said.says("  " + name));
    }
    for (const auto& line : split(said.out, '\n')) {
        CAPTURE(line);
        CHECK(line.size() <= 100);
    }
    CHECK(command.run({"--help"}).out == said.out);
}

TEST_CASE("every verb has help in prose, with every option explained", "[app][help]")
{
    Command command;
    for (const auto& name : allVerbs()) {
        CAPTURE(name);
        std::vector<std::string> words{"help"};
        for (const auto& word : split(name, ' '))
            words.push_back(word);
        const Said said = command.run(words);
        CHECK(said.code == 0);
        CHECK(said.out.rfind("cupule " + name, 0) == 0);
        CHECK(said.out.size() > 120);
        const auto verb = app::makeVerb(name);
        CLI::App options;
        verb->declare(options);
        for (const CLI::Option* option : options.get_options()) {
            if (option->get_name() == "--help")
                continue;
            CAPTURE(option->get_name());
            CHECK_FALSE(option->get_description().empty());
        }
        for (const auto& line : split(said.out.substr(0, said.out.find("For example:")), '\n')) {
            CAPTURE(line);
            CHECK(line.size() <= 84);   // bytes; quotation marks and dashes take more than one
        }
    }
}

TEST_CASE("help of a family shows all its members", "[app][help]")
{
    Command command;
    const Said said = command.run({"help", "sample"});
    for (const char* name : {"cupule sample open", "cupule sample line", "cupule sample close", "cupule sample show"})
        CHECK(said.says(name));
    const Said bare = command.run({"sample"});
    CHECK(bare.code == 2);
    CHECK(bare.err.find("cupule sample open") != std::string::npos);
}

TEST_CASE("a misspelt verb is answered with the nearest ones", "[app][help]")
{
    Command command;
    const Said said = command.run({"chek", "store"});
    CHECK(said.code == 2);
    CHECK(said.out.empty());
    CHECK(said.err.find("check") != std::string::npos);
    CHECK(command.run({"help", "wolves"}).code == 2);
    CHECK(command.run({"chek", "--json"}).json()["error"] == "usage");
}

TEST_CASE("the window is asked for by nothing, or by the name of a store alone", "[app]")
{
    CHECK(app::wantsWindow({}));
    CHECK(app::wantsWindow({"vale.cupule"}));
    CHECK(app::wantsWindow({"--profile", "/p", "vale.cupule", "--today", "2026-06-11"}));
    CHECK_FALSE(app::wantsWindow({"help"}));
    CHECK_FALSE(app::wantsWindow({"check", "vale.cupule"}));
    CHECK_FALSE(app::wantsWindow({"prove"}));
    CHECK_FALSE(app::wantsWindow({"no-such-file"}));
    CHECK_FALSE(app::wantsWindow({"--help"}));
    CHECK(app::storeForWindow({"--profile", "/p", "vale.cupule"}) == "vale.cupule");
    CHECK(app::optionForWindow({"--profile", "/p", "vale.cupule"}, "--profile") == "/p");
    CHECK(app::optionForWindow({"vale.cupule"}, "--profile").empty());
}

TEST_CASE("text is broken at blanks and keeps its words", "[app][help]")
{
    const std::string text = app::wrapped(std::string(30, 'a') + " " + std::string(30, 'b') + " " + std::string(30, 'c'), 2);
    CHECK(text == "  " + std::string(30, 'a') + " " + std::string(30, 'b') + "\n  " + std::string(30, 'c') + "\n");
    CHECK(app::wrapped("one\n\ntwo", 0) == "one\n\ntwo\n");
}
