#include "tests/task/devices.h"

#include <algorithm>

#include "core/record/json.h"
#include "core/store/decisions.h"
#include "core/store/journal.h"
#include "core/store/photos.h"
#include "core/store/places.h"
#include "core/store/revisions.h"
#include "core/store/samples.h"
#include "core/store/visits.h"
#include "core/record/names.h"
#include "tests/support/shared_data.h"

namespace cupule::test {

Person personOf(const std::string& code, const std::string& name, std::uint64_t seed)
{
    SeededRandom random(seed);
    Person person;
    person.id = UidMaker(FixedClock(at(8)), random).make();
    person.code = code;
    person.name = name;
    return person;
}

Device::Device(const std::string& folder, const Person& person, const std::vector<Role>& roles, std::uint64_t seed, std::int64_t wrongBy)
    : clock(Instant{at(12).utcMilliseconds + wrongBy, 0}), random(seed), m_folder(folder)
{
    profile = makeProfile(folder, person, roles, clock, random).value();
    NewStore wanted;
    wanted.name = folder.substr(folder.rfind('/') + 1);
    wanted.region = "MAR";
    m_session = Session::create(folder + "/store.cupule", wanted, profile, clock, random).value();
    m_session->setToday(day(2026, 6, 11));
    done(m_session->begin().value().commit());
}

void Device::reopen()
{
    m_session.reset();
    m_session = Session::open(m_folder + "/store.cupule", profile, clock, random).value();
    m_session->setToday(day(2026, 6, 11));
}

std::string Device::handOut(GoingKind kind, bool whole)
{
    HandOut wanted;
    wanted.kind = kind;
    wanted.whole = whole;
    wanted.out = m_folder + "/out" + std::to_string(++m_files) + ".zip";
    const auto handed = cupule::handOut(*m_session, wanted);
    if (handed)
        return wanted.out;
    if (handed.error().code != "bundle.nothing")
        throw std::runtime_error(handed.error().code);
    return {};
}

Result<TakenIn> Device::takeIn(const std::string& path, const cupule::TakeIn& how)
{
    const auto arrival = lookAtArrival(*m_session, path);
    if (!arrival)
        return fail(arrival.error());
    return cupule::takeIn(*m_session, *arrival, how);
}

std::string Device::key() const
{
    return ownKey(profile.folder).value().key;
}

void Device::trust(Device& other)
{
    const auto known = m_session->store().keys().find(other.key()).value();
    if (known && known->holds())
        return;
    auto change = m_session->begin().value();
    KeyNote note{m_session->ids().make(), other.key(), KeyStep::vouched, other.session().me(), other.profile.roles, 0, m_session->me(), change.at(), {}};
    done(m_session->store().keys().add(change, note));
    done(m_session->commit(change));
}

namespace {

std::string ids(const std::vector<Uid>& list)
{
    std::string text;
    for (const Uid& id : list)
        text += " " + id.text();
    return text;
}

void addStanding(const VisitRow& row, std::vector<std::string>& lines)
{
    const VisitStanding& s = row.standing;
    lines.push_back("stands " + row.id.text() + " " + std::string(name(s.state)) + (s.correctionWaits ? " waits" : "")
                    + (s.oneOfTwo ? " one-of-two" : "") + (s.conflict ? " conflict" : "") + (s.struck ? " struck" : "") + " head "
                    + s.head.text() + " decided " + s.decided.text() + " tree " + row.tree.text());
    if (s.struck)                          // what lists show of it is as it was when it was struck out
        return;
    lines.push_back("shows " + row.id.text() + " signs " + std::to_string(row.shown.signs.size()) + " rank " + std::to_string(row.shown.queueRank) + " host "
                    + std::to_string(static_cast<int>(row.shown.host)));
}

} // namespace

std::vector<std::string> stateOf(Session& session)
{
    Store& store = session.store();
    std::vector<std::string> lines;
    const auto revisions = [&](const Uid& entity) {
        const auto all = store.revisions().ofEntity(entity).value();
        for (const Revision& each : all)
            lines.push_back("revision " + each.noun + " " + each.id.text() + " of" + ids(each.parents) + " " + hex(each.digest));
        lines.push_back("heads " + entity.text() + ids(store.revisions().heads(entity).value()) + " conflicts "
                        + std::to_string(store.revisions().openConflicts(entity).value()));
    };
    done(store.visits().each([&](const VisitRow& row, const Visit& visit) {
        if (row.standing.head.isNull())
            return true;
        addStanding(row, lines);
        lines.push_back("visit " + toJson(visit));
        revisions(visit.id);
        const auto decisions = store.decisions().ofVisit(visit.id).value();
        for (const Decision& each : decisions)
            lines.push_back("decision " + toJson(each));
        const auto photos = store.photos().ofVisit(visit.id).value();
        for (const PhotoNote& each : photos)
            lines.push_back("photo " + toJson(each));
        const auto samples = store.samples().ofVisit(visit.id).value();
        for (const Sample& each : samples)
            lines.push_back("sample " + toJson(each));
        const auto tree = store.trees().find(visit.tree).value();
        if (tree) {
            lines.push_back("tree " + toJson(*tree));
            revisions(tree->id);
        }
        return true;
    }));
    const auto finds = store.decisions().findsInBox(-180, -90, 180, 90, 1'000'000).value();
    for (const FindPlace& each : finds)
        lines.push_back("find " + each.visit.text() + " " + std::to_string(each.date.days));
    std::sort(lines.begin(), lines.end());
    lines.erase(std::unique(lines.begin(), lines.end()), lines.end());
    return lines;
}

std::vector<std::string> differences(const std::vector<std::string>& one, const std::vector<std::string>& other)
{
    std::vector<std::string> gone, come;
    std::set_difference(one.begin(), one.end(), other.begin(), other.end(), std::back_inserter(gone));
    std::set_difference(other.begin(), other.end(), one.begin(), one.end(), std::back_inserter(come));
    for (std::string& line : gone)
        line = "- " + line;
    for (const std::string& line : come)
        gone.push_back("+ " + line);
    return gone;
}

} // namespace cupule::test
