#include "app/program.h"

#include <algorithm>
#include <cctype>
#include <filesystem>

#include "app/help.h"

namespace cupule::app {

namespace {

bool isOption(const std::string& word)
{
    return word.size() > 1 && word[0] == '-';
}

/// "-33.45" is a number, no option.
bool isNumber(const std::string& word)
{
    return isOption(word) && (std::isdigit(static_cast<unsigned char>(word[1])) != 0 || word[1] == '.');
}

/// Options that the window takes too, each with a value.
bool isWindowOption(const std::string& word)
{
    return word == "--profile" || word == "--today";
}

std::vector<std::string> plainWords(const std::vector<std::string>& words)
{
    std::vector<std::string> plain;
    for (std::size_t i = 0; i < words.size(); ++i) {
        if (isWindowOption(words[i]))
            ++i;
        else
            plain.push_back(words[i]);
    }
    return plain;
}

bool firstWordOfVerb(const std::string& word)
{
    for (const auto& group : verbGroups())
        for (const auto make : group.verbs) {
            const std::string name = make()->name();
            if (name == word || name.starts_with(word + " "))
                return true;
        }
    return false;
}

bool looksLikeStore(const std::string& word)
{
    std::error_code error;
    return word.ends_with(".cupule") || std::filesystem::is_regular_file(word, error);
}

/// "sample STORE open" and "sample open STORE" are the same: the second word of the name may stand second or third.
std::unique_ptr<Verb> takeVerb(std::vector<std::string>& words)
{
    if (words.empty())
        return nullptr;
    for (const std::size_t at : {std::size_t{1}, std::size_t{2}}) {
        if (at >= words.size())
            break;
        if (auto verb = makeVerb(words[0] + " " + words[at])) {
            words.erase(words.begin() + static_cast<std::ptrdiff_t>(at));
            words.erase(words.begin());
            return verb;
        }
    }
    auto verb = makeVerb(words[0]);
    if (verb)
        words.erase(words.begin());
    return verb;
}

int usageError(const std::string& sentence, const std::string& hint, bool json, const Surroundings& around)
{
    around.err << sentence << '\n' << hint << '\n';
    if (json)
        around.out << nlohmann::json{{"error", "usage"}, {"sentence", sentence}}.dump(2) << '\n';
    return misunderstood;
}

int unknownVerb(const std::string& word, bool json, const Surroundings& around)
{
    std::string hint;
    for (const auto& near : nearVerbs(word))
        hint += (hint.empty() ? "" : ", ") + near;
    const std::string ask = around.words.text("\"cupule help\" lists what there is.");
    return usageError(
        around.words.text("There is no verb \"{word}\", and no store of that name.", {{"word", word}}),
        hint.empty() ? ask : around.words.text("Did you mean {verbs}? ", {{"verbs", hint}}) + ask, json,
        around);
}

/// Numbers below zero go behind "--", where nothing is taken for an option; values of options stay where they are.
std::vector<std::string> numbersLast(const std::vector<std::string>& words, const CLI::App& app)
{
    std::vector<std::string> first, last;
    for (std::size_t i = 0; i < words.size(); ++i) {
        const CLI::Option* option = isOption(words[i]) ? app.get_option_no_throw(words[i]) : nullptr;
        if (isNumber(words[i]) || (!isOption(words[i]) && !last.empty())) {
            last.push_back(words[i]);
            continue;
        }
        first.push_back(words[i]);
        if (option != nullptr && option->get_items_expected_min() > 0 && i + 1 < words.size())
            first.push_back(words[++i]);
    }
    if (!last.empty()) {
        first.emplace_back("--");
        first.insert(first.end(), last.begin(), last.end());
    }
    return first;
}

int runVerb(Verb& verb, const std::vector<std::string>& words, const Surroundings& around)
{
    SharedOptions shared;
    const bool json = std::find(words.begin(), words.end(), "--json") != words.end();
    CLI::App options(verb.summary(), verb.name());
    options.set_help_flag();
    bool help = false;
    options.add_flag("--help,-h", help);
    verb.declare(options);
    options.add_flag("--json", shared.json, "give the result as JSON on standard output");
    options.add_option("--profile", shared.profile, "folder with person, device and roles");
    options.add_option("--today", shared.today, "the day that counts as today, as 2026-06-30");
    if (std::find(words.begin(), words.end(), "--help") != words.end() ||
        std::find(words.begin(), words.end(), "-h") != words.end()) {
        writeHelp(around.out, verb.name());
        return done;
    }
    auto reversed = numbersLast(words, options);
    std::reverse(reversed.begin(), reversed.end());
    try {
        options.parse(reversed);
    } catch (const CLI::ParseError& error) {
        return usageError(
            error.what(),
            around.words.text("\"cupule help {verb}\" says how it goes.", {{"verb", verb.name()}}), json,
            around);
    }
    Run run(around, shared);
    const Result<int> code = verb.run(run);
    return code ? *code : run.fail(code.error());
}

} // namespace

std::unique_ptr<Verb> makeVerb(std::string_view name)
{
    for (const auto& group : verbGroups())
        for (const auto make : group.verbs)
            if (auto verb = make(); verb->name() == name)
                return verb;
    return nullptr;
}

bool wantsWindow(const std::vector<std::string>& words)
{
    const auto plain = plainWords(words);
    if (plain.empty())
        return true;
    return plain.size() == 1 && !isOption(plain[0]) && plain[0] != "help" && !firstWordOfVerb(plain[0]) &&
           looksLikeStore(plain[0]);
}

std::string storeForWindow(const std::vector<std::string>& words)
{
    const auto plain = plainWords(words);
    return plain.empty() ? std::string() : plain.front();
}

std::string optionForWindow(const std::vector<std::string>& words, const std::string& option)
{
    const auto at = std::find(words.begin(), words.end(), option);
    return at == words.end() || at + 1 == words.end() ? std::string() : *(at + 1);
}

bool wantsFonts(const std::vector<std::string>& words)
{
    std::vector<std::string> rest = words;
    const auto verb = takeVerb(rest);
    return verb != nullptr && verb->paints();
}

int runProgram(const std::vector<std::string>& words, const Surroundings& around)
{
    const bool json = std::find(words.begin(), words.end(), "--json") != words.end();
    std::vector<std::string> rest = words;
    const std::string first = rest.empty() ? "help" : rest.front();
    if (first == "--version") {
        around.out << "cupule " << CUPULE_VERSION << '\n';
        return done;
    }
    if (first == "help" || first == "--help" || first == "-h") {
        if (rest.size() < 2) {
            writeHelp(around.out);
            return done;
        }
        std::string asked = rest[1];
        if (rest.size() > 2)
            asked += " " + rest[2];
        return writeHelp(around.out, asked) || writeHelp(around.out, rest[1])
                   ? done
                   : unknownVerb(rest[1], json, around);
    }
    const auto verb = takeVerb(rest);
    if (verb != nullptr)
        return runVerb(*verb, rest, around);
    if (!firstWordOfVerb(first))
        return unknownVerb(first, json, around);
    // a first word that needs a second one ("sample")
    writeHelp(around.err, first);
    return misunderstood;
}

} // namespace cupule::app
