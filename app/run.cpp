#include "app/run.h"

#include <algorithm>
#include <cctype>
#include <cstdlib>

#include "core/task/keep.h"

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

/// Letters and digits of the name under which somebody is logged in, in capitals; "ME" where there are none.
std::string loginCode()
{
    std::string code;
    for (const char* variable : {"USER", "LOGNAME"})
        if (const char* login = std::getenv(variable); login != nullptr && code.empty())
            for (const char* at = login; *at != '\0' && code.size() < 6; ++at)
                if (std::isalnum(static_cast<unsigned char>(*at)) != 0)
                    code += static_cast<char>(std::toupper(static_cast<unsigned char>(*at)));
    return code.empty() ? "ME" : code;
}

} // namespace

Result<Profile> Run::profile() const
{
    return loadProfile(profileFolder(m_shared.profile));
}

Result<Profile> Run::profileOrNew()
{
    auto known = profile();
    if (known || known.error().code != "profile.missing")
        return known;
    Person person;
    person.code = loginCode();
    auto made = makeProfile(profileFolder(m_shared.profile), person, {Role::volunteer}, clock(), random());
    if (made)
        complain(words().text("There was no profile yet. Made one in {folder}: {code}, a volunteer. \"cupule profile "
                              "change\" gives it your code, your name and your roles.",
                              {{"folder", made->folder}, {"code", person.code}}));
    return made;
}

Result<CivilDate> Run::today() const
{
    if (m_shared.today.empty())
        return CivilDate::of(m_clock.now());
    auto date = CivilDate::parse(m_shared.today);
    if (!date)
        return cupule::fail(date.error().code, FaultKind::usage,
                            {{"option", "--today"}, {"value", m_shared.today}});
    return date;
}

Result<std::unique_ptr<Session>> Run::open(const std::string& store, bool readOnly)
{
    const auto who = profileOrNew();
    if (!who)
        return cupule::fail(who.error());
    const auto date = today();
    if (!date)
        return cupule::fail(date.error());
    auto session = Session::open(store, *who, m_clock, m_around.random, readOnly);
    if (!session && readOnly && session.error().code == "store.older-read-only") {
        // reading must not fail for a form that writing would bring up to date
        if (auto writing = Session::open(store, *who, m_clock, m_around.random); !writing)
            return session;
        else
            sayUpgraded(**writing, store);
        session = Session::open(store, *who, m_clock, m_around.random, readOnly);
    }
    if (!session)
        return session;
    sayUpgraded(**session, store);
    if (!m_shared.today.empty())
        (*session)->setToday(*date);
    if ((*session)->info().demonstration)
        if (auto marked = markDemonstration((*session)->info().zone); !marked)
            return cupule::fail(marked.error());
    if (const auto& shorter = (*session)->shorter())
        complain(words().text(
            "Take care: this store knows less than this device remembers. It remembers line {seen} of "
            "its journal, the store ends at line {found}. It may be a copy or a restored backup; look "
            "for the file that was last worked on.",
            {{"seen", std::to_string(shorter->seenNumber)},
             {"found", std::to_string(shorter->foundNumber)}}));
    if (!(*session)->info().readOnly)
        backUpOnceADay(**session);
    return session;
}

void Run::sayUpgraded(const Session& session, const std::string& store)
{
    if (session.opening() == Opening::upgraded)
        complain(words().text("{file} was of an older form and has been brought up to date. A copy of what it was lies in "
                              "{file}.backups.",
                              {{"file", store}}));
}

void Run::backUpOnceADay(Session& session)
{
    if (const auto kept = dailyBackUp(session); !kept)
        complain(words().text("Today's backup could not be made. {why}", {{"why", words().fault(kept.error())}}));
}

Status Run::markDemonstration(const std::string& zone)
{
    m_demonstration = true;
    if (m_shared.today.empty())
        return {};
    const auto date = today();
    if (!date)
        return cupule::fail(date.error());
    m_clock.goBy(*date, zone);
    return {};
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
