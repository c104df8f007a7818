#include "tests/task/vale.h"

#include <filesystem>

#include "core/base/hash.h"
#include "core/store/media.h"
#include "core/store/photos.h"
#include "core/store/places.h"
#include "core/task/nouns.h"
#include "tests/support/shared_data.h"

namespace cupule::test {

void done(const Status& status)
{
    if (!status)
        throw std::runtime_error(status.error().code);
}

CivilDate day(int year, int month, int dayOfMonth)
{
    return CivilDate::make(year, month, dayOfMonth).value();
}

Instant at(int hour, int minute)
{
    return {(static_cast<std::int64_t>(day(2026, 6, 11).days) * 1440 + hour * 60 + minute) * 60'000, 0};
}

Vale::Vale(bool demonstration) : clock(at(12)), m_folder(temporaryFolder())
{
    NewStore wanted;
    wanted.name = "Tharn Vale";
    wanted.region = "MAR";
    wanted.kind = "office";
    wanted.demonstration = demonstration;
    Session::create(store(), wanted, profile("OF", "Olwen Fry", {Role::office}), clock, random).value();
}

Profile Vale::profile(const std::string& code, const std::string& name, const std::vector<Role>& roles)
{
    const std::string folder = m_folder + "/" + code;
    if (std::filesystem::exists(folder))
        return loadProfile(folder).value();
    Person person;
    person.code = code;
    person.name = name;
    Profile made = makeProfile(folder, person, roles, clock, random).value();
    made.sampleBlock = "TV";
    done(saveProfile(made));
    return made;
}

std::unique_ptr<Session> Vale::as(const std::string& code)
{
    if (code == "MH")
        return open(profile(code, "Mary Hill", {Role::volunteer, Role::sampleHandler}));
    if (code == "JB")
        return open(profile(code, "John Brook", {Role::volunteer}));
    if (code == "OF")
        return open(profile(code, "Olwen Fry", {Role::office}));
    return open(profile(code, "Verifier " + code, {Role::verifier, Role::volunteer}));
}

std::unique_ptr<Session> Vale::open(const Profile& who, bool readOnly)
{
    return Session::open(store(), who, clock, random, readOnly).value();
}

Position placeAt(Session& session, const std::string& reference)
{
    Position place = session.projector().value()->read(reference).value();
    place.obtained = "typed";
    return place;
}

Tree treeAt(Session& session, const std::string& label, const std::string& reference, const std::string& site)
{
    Uid where;
    if (!site.empty()) {
        if (const auto known = findNoun(session, Noun::site, site)) {
            where = *known;
        } else {
            Site wanted;
            wanted.name = site;
            where = newSite(session, wanted).value().id;
        }
    }
    return newTree(session, label, where, placeAt(session, reference)).value();
}

Visit sound(Visit visit)
{
    const auto character = [&](const char* id, const char* state, std::optional<double> value = {}) {
        CharacterSeen seen;
        seen.character = id;
        seen.state = state;
        seen.value = value;
        visit.characters.push_back(seen);
    };
    character("K01", "alternate");
    character("K02", "simple");
    character("K03", "teeth-with-points", 18);
    character("K13", "long-slender-catkins");
    visit.effort.minutes = 12;
    visit.effort.trees = 1;
    visit.effort.crownPercent = 70;
    visit.effort.heightMetres = 5;
    visit.effort.binoculars = true;
    visit.effort.innerCrown = true;
    visit.effort.light = "good";
    visit.effort.leaves = "open";
    visit.hygiene = {Confirmed::done, Confirmed::done, Confirmed::noneUsed, Confirmed::noneUsed, std::nullopt};
    return visit;
}

PhotoNote photoOf(Session& session, const Visit& visit, const std::vector<std::string>& evidence)
{
    PhotoNote photo;
    photo.id = session.ids().make();
    photo.visit = visit.id;
    photo.sha256 = session.store().media().keep(photo.id.text()).value();
    photo.originalName = "IMG_" + photo.id.text().substr(30) + ".jpg";
    photo.bytes = 1000;
    photo.format = "JPEG";
    photo.takenDate = visit.date;
    photo.evidenceFor = evidence;
    auto change = session.begin().value();
    done(session.store().photos().save(change, photo));
    done(session.commit(change));
    return photo;
}

Visit withGall(Session& session, Visit visit)
{
    visit = sound(std::move(visit));
    Observation gall;
    gall.sign = "S02";
    gall.answer = Answer::seen;
    gall.measure = 14;
    visit.observations.push_back(gall);
    photoOf(session, visit, {"S02", "K03"});
    return visit;
}

Visit withNothing(Session& session, Visit visit)
{
    return answerNothingSeen(sound(std::move(visit)), session.seasonToday(), session.pack()).value();
}

Decision decision(Session& session, const Uid& visit, Outcome outcome, const std::vector<std::string>& reasons)
{
    Decision wanted;
    wanted.visit = visit;
    wanted.revision = visitPage(session, visit).value().headRevision;
    wanted.outcome = outcome;
    wanted.reasons = reasons;
    return wanted;
}

} // namespace cupule::test
