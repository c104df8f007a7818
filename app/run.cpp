#include "app/run.h"

namespace cupule::app {

namespace {

int exitCode(FaultKind kind)
{
    switch (kind) {
    case FaultKind::refused: return refused;
    case FaultKind::usage: return misunderstood;
    case FaultKind::data:
    case FaultKind::io: return broken;
    }
    return broken;
}

} // namespace

Result<Profile> Run::profile() const
{
    return loadProfile(profileFolder(m_shared.profile));
}

Result<CivilDate> Run::today() const
{
    if (m_shared.today.empty())
        return CivilDate::of(m_around.clock.now());
    auto date = CivilDate::parse(m_shared.today);
    if (!date)
        return cupule::fail(date.error().code, FaultKind::usage,
                            {{"option", "--today"}, {"value", m_shared.today}});
    return date;
}

Result<std::unique_ptr<Session>> Run::open(const std::string& store, bool readOnly)
{
    const auto who = profile();
    if (!who)
        return cupule::fail(who.error());
    const auto date = today();
    if (!date)
        return cupule::fail(date.error());
    auto session = Session::open(store, *who, m_around.clock, m_around.random, readOnly);
    if (!session)
        return session;
    if (!m_shared.today.empty())
        (*session)->setToday(*date);
    if ((*session)->info().demonstration)
        markDemonstration();
    if (const auto& shorter = (*session)->shorter())
        complain(words().text(
            "Take care: this store knows less than this device remembers. It remembers line {seen} of "
            "its journal, the store ends at line {found}. It may be a copy or a restored backup; look "
            "for the file that was last worked on.",
            {{"seen", std::to_string(shorter->seenNumber)},
             {"found", std::to_string(shorter->foundNumber)}}));
    return session;
}

void Run::markDemonstration()
{
    m_demonstration = true;
}

void Run::say(const char* english, const Arguments& arguments)
{
    line(words().text(english, arguments));
}

void Run::line(const std::string& text)
{
    if (m_shared.json)
        return;
    if (m_demonstration && !m_said)
        m_around.out << words().text("Demonstration: everything in this store is invented.") << '\n';
    m_said = true;
    m_around.out << text << '\n';
}

void Run::give(nlohmann::json result)
{
    if (!m_shared.json)
        return;
    if (m_demonstration && result.is_object())
        result["demonstration"] = true;
    m_around.out << result.dump(2, ' ', false, nlohmann::json::error_handler_t::replace) << '\n';
}

void Run::complain(const std::string& text)
{
    m_around.err << text << '\n';
}

int Run::fail(const Fault& fault)
{
    const std::string sentence = words().fault(fault);
    complain(sentence);
    nlohmann::json result{{"error", fault.code}, {"sentence", sentence}};
    for (const auto& [name, value] : fault.arguments)
        result["arguments"][name] = value;
    if (!fault.place.file.empty())
        result["file"] = fault.place.file;
    if (!fault.place.field.empty())
        result["field"] = fault.place.field;
    if (!fault.technical.empty())
        result["technical"] = fault.technical;
    give(std::move(result));
    return exitCode(fault.kind);
}

} // namespace cupule::app
