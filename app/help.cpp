#include "app/help.h"

#include <algorithm>

#include "core/base/text.h"

namespace cupule::app {

namespace {

constexpr std::size_t columns = 80;
constexpr std::size_t nameWidth = 22;

constexpr const char* opening =
    "Cupule keeps what people see on chestnut trees, checks it while it is being entered, and carries it "
    "through "
    "handing in, deciding and custody without losing who did what. Everything lies in one file, the store. "
    "Nothing needs a network.";
constexpr const char* windowWords =
    "Without a verb, cupule opens its window; with the name of a store it opens that store in the window.";
constexpr const char* sharedWords =
    "Every verb understands --json (the result as JSON), --profile FOLDER (who is working, on which device, "
    "in which "
    "roles; else the folder named by CUPULE_PROFILE, else your own) and --today DATE. Where a visit, a tree "
    "or another "
    "thing is asked for, give its name (a visit is LABEL@DATE, as in W03@2026-06-11), its id, or the "
    "beginning or end "
    "of its id. Exit codes: 0 done, 1 refused or something was found, 2 not understood, 3 data or machine.";

std::size_t widthOf(std::string_view text)
{
    std::size_t width = 0;
    for (std::size_t at = 0; at < text.size(); ++width)
        nextCodePoint(text, at);
    return width;
}

/// An option with its value is one part, in brackets or not.
std::vector<std::string> usageParts(const std::string& usage)
{
    std::vector<std::string> parts;
    int depth = 0;
    for (const auto& word : split(usage, ' ')) {
        const bool value =
            !parts.empty() && (depth > 0 || (parts.back().starts_with("--") && !word.starts_with("-") &&
                                             !word.starts_with("[")));
        if (value)
            parts.back() += " " + word;
        else
            parts.push_back(word);
        depth += static_cast<int>(std::count(word.begin(), word.end(), '[') -
                                  std::count(word.begin(), word.end(), ']'));
    }
    return parts;
}

/// What CLI11 calls the kind of value says nothing to people; the description does.
std::string optionLine(const CLI::Option& option)
{
    std::string left = "  ";
    left += option.get_positional() ? option.get_name(true) : option.get_name(false, true);
    if (!option.get_positional() && option.get_items_expected_min() > 0)
        left += " ...";
    std::string description = wrapped(option.get_description(), static_cast<int>(nameWidth) + 2);
    if (left.size() < nameWidth + 1)
        return description.replace(0, nameWidth + 2, left + std::string(nameWidth + 2 - left.size(), ' '));
    return left + "\n" + description;
}

/// The first line, broken between its parts; what follows hangs under the first word after the name.
std::string usageLines(const Verb& verb)
{
    const std::string lead = std::string("cupule ") + verb.name() + " ";
    const std::string margin(std::min<std::size_t>(lead.size(), 16), ' ');
    std::string out = lead;
    std::size_t width = lead.size();
    for (const auto& part : usageParts(verb.usage())) {
        if (width + part.size() > columns && width > margin.size()) {
            out.erase(out.find_last_not_of(' ') + 1);
            out += "\n" + margin;
            width = margin.size();
        }
        out += part + " ";
        width += part.size() + 1;
    }
    return std::string(trim(out)) + "\n";
}

void writeOne(std::ostream& out, Verb& verb)
{
    CLI::App options;
    options.set_help_flag();
    verb.declare(options);
    out << usageLines(verb) << '\n' << wrapped(verb.prose(), 0);
    bool titled = false;
    for (const CLI::Option* option : options.get_options()) {
        if (option->get_description().empty())
            continue;
        if (!titled)
            out << '\n';
        titled = true;
        out << optionLine(*option);
    }
    if (const std::string examples = verb.examples(); !examples.empty()) {
        out << "\nFor example:\n";
        for (const auto& line : split(examples, '\n'))
            out << "  " << line << '\n';
    }
}

/// Edits that turn one word into the other (Levenshtein, 1965).
std::size_t distance(const std::string& a, const std::string& b)
{
    std::vector<std::size_t> row(b.size() + 1);
    for (std::size_t j = 0; j <= b.size(); ++j)
        row[j] = j;
    for (std::size_t i = 1; i <= a.size(); ++i) {
        std::size_t diagonal = row[0];
        row[0] = i;
        for (std::size_t j = 1; j <= b.size(); ++j) {
            const std::size_t above = row[j];
            row[j] = std::min({row[j] + 1, row[j - 1] + 1, diagonal + (a[i - 1] == b[j - 1] ? 0U : 1U)});
            diagonal = above;
        }
    }
    return row[b.size()];
}

} // namespace

std::string wrapped(std::string_view text, int indent)
{
    const std::string margin(static_cast<std::size_t>(indent), ' ');
    std::string out;
    for (const auto& paragraph : split(text, '\n')) {
        std::string line = margin;
        bool empty = true;
        for (const auto& word : split(paragraph, ' ')) {
            if (word.empty())
                continue;
            if (!empty && widthOf(line) + 1 + widthOf(word) > columns) {
                out += line + "\n";
                line = margin;
                empty = true;
            }
            line += (empty ? "" : " ") + word;
            empty = false;
        }
        out += (empty ? std::string() : line) + "\n";
    }
    return out;
}

void writeHelp(std::ostream& out)
{
    out << wrapped(opening, 0) << '\n' << wrapped(windowWords, 0);
    for (const auto& group : verbGroups()) {
        out << '\n' << group.title << '\n';
        for (const auto make : group.verbs) {
            const auto verb = make();
            const std::string name = verb->name();
            out << "  " << name << std::string(name.size() < 16 ? 16 - name.size() : 1, ' ')
                << verb->summary() << '\n';
        }
    }
    out << '\n' << wrapped(sharedWords, 0) << "\n\"cupule help VERB\" tells more about one.\n";
}

bool writeHelp(std::ostream& out, const std::string& verb)
{
    bool any = false;
    for (const auto& group : verbGroups())
        for (const auto make : group.verbs) {
            const auto each = make();
            const std::string name = each->name();
            if (name != verb && !name.starts_with(verb + " "))
                continue;
            if (any)
                out << '\n';
            any = true;
            writeOne(out, *each);
        }
    return any;
}

std::vector<std::string> nearVerbs(const std::string& word)
{
    std::vector<std::pair<std::size_t, std::string>> near;
    for (const auto& group : verbGroups())
        for (const auto make : group.verbs) {
            const std::string name = make()->name();
            const std::size_t far = distance(lowerAscii(word), name.substr(0, name.find(' ')));
            if (far <= std::max<std::size_t>(1, word.size() / 3))
                near.emplace_back(far, name);
        }
    std::stable_sort(near.begin(), near.end(),
                     [](const auto& a, const auto& b) { return a.first < b.first; });
    std::vector<std::string> names;
    for (const auto& [far, name] : near)
        if (names.size() < 3)
            names.push_back(name);
    return names;
}

} // namespace cupule::app
