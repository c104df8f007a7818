#include "core/task/session.h"

#include <map>

#include "core/base/text.h"
#include "core/base/zone.h"
#include "core/protocol/pack_reader.h"
#include "core/record/names.h"
#include "core/store/people.h"
#include "core/store/settings.h"
#include "core/task/keys.h"
#include "core/task/change_settings.h"
#include "core/task/seen.h"

namespace cupule {

struct Session::Inside {
    Inside(const Profile& who, const Clock& at, Random& chance)
        : profile(who), clock(at), random(chance), ids(at, chance)
    {
    }

    Profile profile;
    const Clock& clock;
    Random& random;
    UidMaker ids;
    std::unique_ptr<Store> store;
    std::unique_ptr<Projector> projector;
    mutable std::optional<HostKey> hostKey;
    std::optional<CivilDate> today;
    bool hidden = false;
    std::optional<Seen> remembered;
    bool known = false;         ///< the store knows this person
    std::optional<Person> bare; ///< the store's entry, where it is only a code and the profile has the name
    mutable std::map<int, int> shiftOfYear;
};

namespace {

std::string leafingKey(int year)
{
    return "leafing." + std::to_string(year);
}

/// The entry of the profile's person in the store, or nothing. The code counts where the name does not speak against
/// it; else the name, where one person alone has it: an import makes up codes for names.
Result<std::optional<Person>> entryInStore(Store& store, const Person& person)
{
    auto same = store.people().find(person.id);
    if (!same || *same)
        return same;
    auto coded = store.people().byCode(person.code);
    if (!coded)
        return coded;
    if (*coded && ((*coded)->name.empty() || isOnlyCode(**coded) ||
                   lowerAscii(trim((*coded)->name)) == lowerAscii(trim(person.name))))
        return coded;
    if (trim(person.name).empty())
        return std::optional<Person>();
    auto named = store.people().byName(std::string(trim(person.name)));
    if (!named)
        return fail(named.error());
    return named->size() == 1 ? std::optional<Person>(std::move(named->front())) : std::nullopt;
}

} // namespace

Session::Session() = default;

Session::~Session()
{
    if (m == nullptr || m->store == nullptr || m->store->info().readOnly)
        return;
    const auto seen = m->store->seen();
    // What cannot be remembered now is remembered after the next commit; closing must not fail for it.
    if (seen && seen != m->remembered)
        static_cast<void>(rememberSeen(m->profile.folder, m->store->info().id, *seen));
}

Result<std::unique_ptr<Session>> Session::open(const std::string& path, const Profile& profile,
                                               const Clock& clock, Random& random, bool readOnly)
{
    const auto id = Store::idOf(path);
    if (!id)
        return fail(id.error());
    OpenRequest request;
    request.device = profile.device;
    request.readOnly = readOnly;
    request.seen = rememberedSeen(profile.folder, *id);
    auto store = Store::open(path, request, {clock, random});
    if (!store)
        return fail(store.error());
    std::unique_ptr<Session> session(new Session());
    session->m = std::make_unique<Inside>(profile, clock, random);
    session->m->store = std::move(*store);
    session->m->remembered = request.seen;
    auto here = entryInStore(session->store(), profile.person);
    if (!here)
        return fail(here.error());
    if (*here) {
        session->m->profile.person.id = (*here)->id;
        session->m->known = true;
        if (isOnlyCode(**here) && !trim(profile.person.name).empty())
            session->m->bare = std::move(**here);
    }
    return session;
}

Result<std::unique_ptr<Session>> Session::create(const std::string& path, const NewStore& description,
                                                 const Profile& profile, const Clock& clock, Random& random)
{
    NewStore wanted = description;
    const Pack& pack = builtInPack();
    if (wanted.region.empty() && !pack.regions.empty())
        wanted.region = pack.regions.front().id;
    if (pack.region(wanted.region) == nullptr)
        return fail("store.region", FaultKind::usage, {{"region", wanted.region}});
    if (auto zone = inZone(wanted.zone, 0); !zone) {
        Fault fault = zone.error();
        fault.kind = FaultKind::usage;
        return fail(std::move(fault));
    }
    OpenRequest request;
    request.device = profile.device;
    auto store = Store::create(path, wanted, request, {clock, random});
    if (!store)
        return fail(store.error());
    std::unique_ptr<Session> session(new Session());
    session->m = std::make_unique<Inside>(profile, clock, random);
    session->m->store = std::move(*store);
    auto change = session->begin();
    if (!change)
        return fail(change.error());
    if (auto trusted = vouchForMaker(*session, *change); !trusted)
        return fail(trusted.error());
    if (auto kept = session->commit(*change); !kept)
        return fail(kept.error());
    return session;
}

const Pack& Session::pack() const
{
    return builtInPack();
}
const HostKey& Session::hostKey() const
{
    if (!m->hostKey)
        m->hostKey.emplace(pack());
    return *m->hostKey;
}
const Profile& Session::profile() const
{
    return m->profile;
}
Store& Session::store()
{
    return *m->store;
}
const StoreInfo& Session::info() const
{
    return m->store->info();
}
Opening Session::opening() const
{
    return m->store->opening();
}
const std::optional<Shorter>& Session::shorter() const
{
    return m->store->shorter();
}
Result<std::int64_t> Session::dataVersion() const
{
    return m->store->dataVersion();
}
const Clock& Session::clock() const
{
    return m->clock;
}
Random& Session::random()
{
    return m->random;
}
UidMaker& Session::ids()
{
    return m->ids;
}

Result<Projector*> Session::projector()
{
    if (m->projector == nullptr) {
        auto made = Projector::create({m->profile.gridFolder});
        if (!made)
            return fail(made.error());
        m->projector = std::make_unique<Projector>(std::move(*made));
    }
    return m->projector.get();
}

CivilDate Session::today() const
{
    if (m->today)
        return *m->today;
    const Instant now = m->clock.now();
    const auto here = inZone(info().zone, now.utcMilliseconds);
    return CivilDate::of(here ? *here : now);
}

void Session::setToday(CivilDate date)
{
    m->today = date;
}

void Session::setHidden(bool hidden)
{
    m->hidden = hidden;
}

bool Session::hidden() const
{
    return m->hidden;
}

SeasonContext Session::seasonFor(const Visit& visit, const Site* site) const
{
    SeasonContext season;
    season.region = site != nullptr && !site->region.empty() ? site->region : info().region;
    if (visit.leafingShiftDays) {
        season.shiftDays = usedShift(*visit.leafingShiftDays, pack()).days;
        return season;
    }
    const int year = visit.date.year();
    auto found = m->shiftOfYear.find(year);
    if (found == m->shiftOfYear.end()) {
        int days = 0;
        if (const auto date = leafing(year))
            if (const auto shift = leafingShift(*date, info().region, pack()); shift)
                days = usedShift(*shift, pack()).days;
        found = m->shiftOfYear.emplace(year, days).first;
    }
    season.shiftDays = found->second;
    return season;
}

SeasonContext Session::seasonToday() const
{
    Visit visit;
    visit.date = today();
    return seasonFor(visit, nullptr);
}

Status Session::setLeafing(int year, std::optional<CivilDate> observed, const std::string& what)
{
    if (auto may = needOneOf({Role::volunteer, Role::trainer, Role::office}); !may)
        return may;
    if (observed && observed->year() != year)
        return fail("leafing.year", FaultKind::usage,
                    {{"date", observed->text()}, {"year", std::to_string(year)}});
    return changeSettings(*this, {{leafingKey(year), observed ? observed->text() : ""}}, what);
}

std::optional<CivilDate> Session::leafing(int year) const
{
    const auto observed = m->store->settings().get(leafingKey(year));
    if (!observed || !*observed)
        return std::nullopt;
    const auto date = CivilDate::parse(**observed);
    return date ? std::optional(*date) : std::nullopt;
}

Status Session::need(Role role) const
{
    return needOneOf({role});
}

Status Session::needOneOf(std::initializer_list<Role> roles) const
{
    std::string names;
    for (const Role role : roles) {
        if (m->profile.is(role))
            return {};
        if (!names.empty())
            names += ',';
        names += name(role);
    }
    return fail("role.needed", FaultKind::refused, {{"roles", names}, {"who", m->profile.person.code}});
}

Result<Change> Session::begin(ChangeSize size)
{
    if (m->hidden)
        return fail("session.hidden", FaultKind::refused);
    auto change = m->store->begin(me(), size);
    if (!change)
        return change;
    if (m->bare) {
        m->bare->name = m->profile.person.name;
        if (auto saved = m->store->people().save(*change, *m->bare); !saved)
            return fail(saved.error());
    }
    if (m->known)
        return change;
    const auto coded = m->store->people().byCode(m->profile.person.code);
    if (!coded)
        return fail(coded.error());
    if (*coded && (*coded)->id != me())
        return fail("profile.code-taken", FaultKind::refused,
                    {{"code", m->profile.person.code}, {"name", (*coded)->name}});
    if (auto saved = m->store->people().save(*change, m->profile.person); !saved)
        return fail(saved.error());
    return change;
}

Status Session::commit(Change& change)
{
    if (auto kept = change.commit(); !kept)
        return kept;
    m->known = true;
    m->bare.reset();
    m->shiftOfYear.clear(); // the change may have moved a season
    const auto seen = m->store->seen();
    // The commit stands whether or not the profile's folder can be written; closing tries again.
    if (seen && seen != m->remembered && rememberSeen(m->profile.folder, info().id, *seen))
        m->remembered = seen;
    return {};
}

} // namespace cupule
