// No other kind of tree of the key comes out as a chestnut, whatever a volunteer truthfully answers about it.
//
// For each kind that is no host: all combinations of one to four characters, every state that the kind may
// show (shades merged), counts and lengths left out or at both ends of its range, seen on the tree or fallen
// where that is possible. Where the key has no row for a kind, anything may be met there, so every state is
// tried, and values at both ends and at the programme's limits (15 teeth, 16 cm). In both regions, in a month
// with leaves, a bare one and one with fruit.

#include <algorithm>
#include <cstdint>
#include <random>
#include <set>
#include <string>
#include <vector>

#include "core/protocol/pack_reader.h"
#include "core/rules/host_key.h"
#include "tests/rules/seen.h"
#include "tests/support/catch.h"

using namespace cupule;
using cupule::test::fallen;
using cupule::test::seen;

namespace {

using Answers = std::vector<CharacterSeen>;

std::vector<std::optional<double>> valuesOf(const Character& character, const KindRow* row)
{
    std::vector<std::optional<double>> values{std::nullopt};
    if (character.unit.empty())
        return values;
    if (row != nullptr && (row->min || row->max)) {
        values.push_back(row->min.value_or(character.hardMin));
        values.push_back(row->max.value_or(character.hardMax));
        return values;
    }
    values.push_back(character.hardMin);
    values.push_back(character.hardMax);
    for (const CountedLimit& limit : builtInPack().countedLimits)
        if (limit.measuredBy == character.id)
            values.push_back(limit.atLeast);
    return values;
}

/// Everything that may truthfully be answered about one character of one kind of tree.
Answers answersOf(const Kind& kind, const Character& character)
{
    const KindRow* row = builtInPack().row(kind.id, character.id);
    Answers answers;
    const auto add = [&](const std::string& state, bool onTreeToo) {
        for (const auto& value : valuesOf(character, row)) {
            if (state.empty() && !value)
                continue;
            if (onTreeToo)
                answers.push_back(seen(character.id, state, value));
            if (character.onGroundToo && !value)
                answers.push_back(fallen(character.id, state, false, value));
        }
    };
    if (character.states.empty())
        add("", true);
    for (const CharacterState& state : character.states) {
        const auto shows = [&](const std::vector<std::string>& ids) {
            return std::find(ids.begin(), ids.end(), state.id) != ids.end();
        };
        if (row == nullptr || shows(row->states))
            add(state.id, true);
        else if (shows(row->groundStates))
            add(state.id, false);
    }
    return answers;
}

std::vector<Answers> allAnswersOf(const Kind& kind)
{
    std::vector<Answers> all;
    for (const Character& character : builtInPack().characters)
        if (character.decidesHost)
            all.push_back(answersOf(kind, character));
    return all;
}

std::vector<HostContext> contexts()
{
    return {{"MAR", 6}, {"MAR", 1}, {"MAR", 10}, {"STH", 6}, {"STH", 1}, {"STH", 10}};
}

/// Tries every way to add up to `more` answers of characters from `from` on; counts what it judged.
class Trial {
public:
    Trial(const HostKey& key, const std::vector<Answers>& all, HostContext context)
        : m_key(key), m_all(all), m_context(std::move(context))
    {
    }

    void run(std::size_t from, int more)
    {
        for (std::size_t i = from; i < m_all.size(); ++i)
            for (const CharacterSeen& answer : m_all[i]) {
                m_chosen.push_back(answer);
                ++judged;
                const HostAnswer verdict = m_key.answer(m_chosen, m_context);
                hosts += verdict == HostAnswer::host ? 1 : 0;
                notHosts += verdict == HostAnswer::notHost ? 1 : 0;
                if (more > 1)
                    run(i + 1, more - 1);
                m_chosen.pop_back();
            }
    }

    std::int64_t judged = 0, hosts = 0, notHosts = 0;

private:
    const HostKey& m_key;
    const std::vector<Answers>& m_all;
    HostContext m_context;
    Answers m_chosen;
};

/// One answer about each character, drawn at random.
Answers drawn(const std::vector<Answers>& all, std::mt19937& chance)
{
    Answers answers;
    for (const Answers& choices : all)
        if (!choices.empty())
            answers.push_back(choices[chance() % choices.size()]);
    return answers;
}

} // namespace

TEST_CASE("No other kind comes out as a chestnut from one to three answers, in any month tried",
          "[host][brute]")
{
    const HostKey key(builtInPack());
    for (const Kind& kind : builtInPack().kinds) {
        if (kind.host)
            continue;
        CAPTURE(kind.name);
        const auto all = allAnswersOf(kind);
        for (const HostContext& context : contexts()) {
            Trial trial(key, all, context);
            trial.run(0, 3);
            CHECK(trial.hosts == 0);
            CHECK(trial.judged > 5'000);
        }
    }
}

TEST_CASE("No other kind comes out as a chestnut from four answers", "[host][brute]")
{
    const HostKey key(builtInPack());
    for (const Kind& kind : builtInPack().kinds) {
        if (kind.host)
            continue;
        CAPTURE(kind.name);
        const auto all = allAnswersOf(kind);
        Trial trial(key, all, {"MAR", 6});
        trial.run(0, 4);
        CHECK(trial.hosts == 0);
        CHECK(trial.judged > 50'000);
    }
}

TEST_CASE("No other kind comes out as a chestnut when everything is answered", "[host][brute]")
{
    const HostKey key(builtInPack());
    std::mt19937 chance(16);
    for (const Kind& kind : builtInPack().kinds) {
        if (kind.host)
            continue;
        CAPTURE(kind.name);
        const auto all = allAnswersOf(kind);
        int hosts = 0;
        for (int round = 0; round < 2'000; ++round) {
            const Answers answers = drawn(all, chance);
            for (const HostContext& context : contexts())
                hosts += key.answer(answers, context) == HostAnswer::host ? 1 : 0;
        }
        CHECK(hosts == 0);
    }
}

TEST_CASE("No chestnut is ever ruled out by what it shows, and many are confirmed", "[host][brute]")
{
    const HostKey key(builtInPack());
    for (const Kind& kind : builtInPack().kinds) {
        if (!kind.host)
            continue;
        CAPTURE(kind.name);
        const auto all = allAnswersOf(kind);
        for (const HostContext& context : contexts()) {
            Trial trial(key, all, context);
            trial.run(0, 3);
            CHECK(trial.notHosts == 0);
            CHECK(trial.hosts > 100);
        }
    }
}

TEST_CASE("An answer about another tree's fallen fruit never confirms", "[host][brute]")
{
    const HostKey key(builtInPack());
    for (const Kind& kind : builtInPack().kinds) {
        if (kind.host)
            continue;
        CAPTURE(kind.name);
        auto all = allAnswersOf(kind);
        // Husks, nuts and leaves of a chestnut next to it lie under the tree; the question was answered
        // honestly or not at all.
        for (const char* id : {"K03", "K05", "K15", "K17"})
            for (const CharacterState& state : builtInPack().character(id)->states)
                for (const std::optional<bool> near : {std::optional<bool>(true), std::optional<bool>()})
                    all.push_back({fallen(id, state.id, near, 20)});
        Trial trial(key, all, {"MAR", 11});
        trial.run(0, 2);
        CHECK(trial.hosts == 0);
    }
}
