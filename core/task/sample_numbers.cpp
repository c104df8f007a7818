#include "core/task/sample_numbers.h"

#include <algorithm>
#include <filesystem>

#include <nlohmann/json.hpp>

#include "core/base/file.h"
#include "core/base/text.h"
#include "core/rules/sample_number.h"
#include "core/store/samples.h"
#include "core/store/settings.h"
#include "core/task/number_block.h"

namespace cupule {

namespace {

using Json = nlohmann::json;

constexpr int mostRunning = 9999;

std::string twoDigits(int year)
{
    return std::to_string(100 + year).substr(1);
}

/// Setting whose value is the incarnation that the block belongs to.
std::string ownerKey(const std::string& block)
{
    return "sample-block." + block;
}

constexpr std::string_view reservedPrefix = "sample-reserved.";

/// Setting whose value is the runs of reserved numbers, "12-20,33-40".
std::string reservedKey(int year, const std::string& block)
{
    return std::string(reservedPrefix) + twoDigits(year) + block;
}

struct NumberRun {
    int first = 0, last = 0;
};

std::vector<NumberRun> readRuns(const std::string& text)
{
    std::vector<NumberRun> runs;
    for (const std::string& part : split(text, ',')) {
        const auto ends = split(part, '-');
        if (ends.size() != 2)
            continue;
        const auto first = parseWhole(ends[0]), last = parseWhole(ends[1]);
        if (first && last && *first >= 1 && *first <= *last && *last <= mostRunning)
            runs.push_back({*first, *last});
    }
    return runs;
}

std::string memoryFile(const Profile& profile)
{
    return (std::filesystem::path(profile.folder) / "numbers.json").string();
}

/// What the device remembers of its blocks, by block: the incarnation, and the highest number of each year.
Json memoryOf(const Session& session)
{
    if (session.info().demonstration)
        return Json::object();
    const auto text = readFile(memoryFile(session.profile()), 1 << 20);
    Json json = text ? Json::parse(*text, nullptr, false) : Json();
    return json.is_object() ? json : Json::object();
}

struct BlockMemory {
    std::string incarnation; ///< empty = the block is nobody's yet
    int highest = 0;         ///< running number in that year
};

BlockMemory memoryOf(const Session& session, const std::string& block, int year)
{
    const Json all = memoryOf(session);
    BlockMemory memory;
    const auto own = all.find(block);
    if (own == all.end() || !own->is_object())
        return memory;
    if (const auto at = own->find("incarnation"); at != own->end() && at->is_string())
        memory.incarnation = at->get<std::string>();
    if (const auto at = own->find(twoDigits(year)); at != own->end() && at->is_number_integer())
        memory.highest = at->get<int>();
    return memory;
}

} // namespace

Result<NumberBlock> NumberBlock::open(Session& session, Change& change, int year)
{
    const std::string& block = session.profile().sampleBlock;
    if (block.empty())
        return fail("sample.no-block", FaultKind::refused, {{"who", session.profile().person.code}});
    NumberBlock opened(session, block, year % 100);
    opened.m_incarnation = session.store().seen()->incarnation; // a change has begun one
    const auto owner = session.store().settings().get(ownerKey(block));
    if (!owner)
        return fail(owner.error());
    const BlockMemory memory = memoryOf(session, block, opened.m_year);
    const std::string own = opened.m_incarnation.text();
    if ((*owner && **owner != own) || (!memory.incarnation.empty() && memory.incarnation != own))
        return fail("sample.block-elsewhere", FaultKind::refused, {{"block", block}});
    if (!*owner)
        if (auto set = session.store().settings().set(change, ownerKey(block), own); !set)
            return fail(set.error());
    const auto issued = session.store().samples().highestRunning(opened.m_year, block);
    if (!issued)
        return fail(issued.error());
    const auto reserved = session.store().settings().get(reservedKey(opened.m_year, block));
    if (!reserved)
        return fail(reserved.error());
    opened.m_highest = std::max(*issued, memory.highest);
    for (const NumberRun& run : readRuns(reserved->value_or("")))
        opened.m_highest = std::max(opened.m_highest, run.last);
    return opened;
}

Result<std::string> NumberBlock::next()
{
    while (m_highest < mostRunning)
        if (const auto number = makeSampleNumber(m_year, m_block, ++m_highest))
            return number->text();
    return fail("sample.block-used-up", FaultKind::refused, {{"block", m_block}});
}

Result<std::string> NumberBlock::reserved(Session& session, const std::string& typed)
{
    const auto read = readSampleNumber(typed);
    if (!read)
        return fail(read.error());
    const std::string number = read->text();
    const auto known = session.store().samples().byNumber(number);
    if (!known)
        return fail(known.error());
    if (*known)
        return fail("sample.number-used", FaultKind::refused, {{"number", number}});
    const auto runs = session.store().settings().get(reservedKey(read->year, read->block));
    if (!runs)
        return fail(runs.error());
    for (const NumberRun& run : readRuns(runs->value_or("")))
        if (run.first <= read->running && read->running <= run.last)
            return number;
    // a store restored from an older copy does not know the labels; the device that printed them does
    if (read->block == session.profile().sampleBlock &&
        read->running <= memoryOf(session, read->block, read->year).highest)
        return number;
    return fail("sample.number-not-reserved", FaultKind::refused, {{"number", number}});
}

void NumberBlock::remember() const
{
    if (m_session->info().demonstration)
        return;
    Json memory = memoryOf(*m_session);
    Json own = memory.value(m_block, Json::object());
    if (!own.is_object())
        own = Json::object();
    own["incarnation"] = m_incarnation.text();
    own[twoDigits(m_year)] = m_highest;
    memory[m_block] = std::move(own);
    static_cast<void>(writeFile(memoryFile(m_session->profile()), memory.dump(1) + "\n"));
}

Result<std::vector<std::string>> reserveNumbers(Session& session, int count)
{
    if (auto may = session.needOneOf({Role::sampleHandler, Role::volunteer}); !may)
        return fail(may.error());
    if (count < 1 || count > mostReservedAtOnce)
        return fail("sample.reserve-count", FaultKind::usage,
                    {{"count", std::to_string(count)}, {"most", std::to_string(mostReservedAtOnce)}});
    auto change = session.begin();
    if (!change)
        return fail(change.error());
    const int year = session.today().year() % 100;
    auto block = NumberBlock::open(session, *change, year);
    if (!block)
        return fail(block.error());
    std::vector<std::string> numbers;
    while (static_cast<int>(numbers.size()) < count) {
        auto number = block->next();
        if (!number)
            return fail(number.error());
        numbers.push_back(std::move(*number));
    }
    const std::string key = reservedKey(year, session.profile().sampleBlock);
    const auto before = session.store().settings().get(key);
    if (!before)
        return fail(before.error());
    const auto running = [](const std::string& number) { return std::to_string(readSampleNumber(number)->running); };
    const std::string run = running(numbers.front()) + '-' + running(numbers.back());
    const std::string after = before->value_or("").empty() ? run : **before + ',' + run;
    if (auto set = session.store().settings().set(*change, key, after); !set)
        return fail(set.error());
    if (auto kept = session.commit(*change); !kept)
        return fail(kept.error());
    block->remember();
    return numbers;
}

std::optional<std::string> reservedNumber(Session& session, const std::string& typed)
{
    auto number = NumberBlock::reserved(session, typed);
    return number ? std::optional(std::move(*number)) : std::nullopt;
}

Result<std::vector<std::string>> reservedNumbers(Session& session)
{
    const auto settings = session.store().settings().all();
    if (!settings)
        return fail(settings.error());
    std::vector<std::string> numbers;
    for (const auto& [key, value] : *settings) {
        if (!key.starts_with(reservedPrefix) || key.size() != reservedPrefix.size() + 4)
            continue;
        const int year = parseWhole(key.substr(reservedPrefix.size(), 2)).value_or(0);
        const std::string block = key.substr(reservedPrefix.size() + 2);
        for (const NumberRun& run : readRuns(value))
            for (int running = run.first; running <= run.last; ++running)
                if (const auto number = makeSampleNumber(year, block, running))
                    numbers.push_back(number->text());
    }
    std::sort(numbers.begin(), numbers.end());
    std::vector<std::string> open;
    for (std::string& number : numbers) {
        const auto used = session.store().samples().byNumber(number);
        if (!used)
            return fail(used.error());
        if (!*used)
            open.push_back(std::move(number));
    }
    return open;
}

} // namespace cupule
