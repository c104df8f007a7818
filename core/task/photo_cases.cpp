#include "core/task/photo_cases.h"

#include <algorithm>

#include "core/store/media.h"
#include "core/store/people.h"
#include "core/store/practice.h"

namespace cupule {

namespace {

tl::unexpected<Fault> badForm(const std::string& why)
{
    return fail("photo-case.form", FaultKind::usage, {{"why", why}});
}

Result<std::vector<KeyedPhotoCase>> keyed(Session& session)
{
    const auto cases = session.store().practice().photoCases();
    if (!cases)
        return fail(cases.error());
    const auto keys = session.store().practice().photoKeys();
    if (!keys)
        return fail(keys.error());
    return keyedCases(*cases, *keys);
}

Result<std::string> codeOf(Session& session, const Uid& person)
{
    const auto found = session.store().people().find(person);
    if (!found)
        return fail(found.error());
    return *found ? (*found)->code : std::string();
}

} // namespace

Result<PhotoCase> addPhotoCase(Session& session, PhotoCase made)
{
    if (auto may = session.needOneOf({Role::trainer, Role::office}); !may)
        return fail(may.error());
    for (std::string& picture : made.pictures) {
        auto taken = session.store().media().keepFile(picture);
        if (!taken)
            return fail(taken.error());
        picture = *taken;
    }
    made.id = session.ids().make();
    made.by = session.me();
    if (const std::string why = photoCaseFault(made); !why.empty())
        return badForm(why);
    auto change = session.begin();
    if (!change)
        return fail(change.error());
    made.at = change->at();
    if (auto kept = session.store().practice().addPhotoCase(*change, made); !kept)
        return fail(kept.error());
    if (auto committed = session.commit(*change); !committed)
        return fail(committed.error());
    return made;
}

Result<std::vector<std::string>> photoCasePictures(Session& session, const PhotoCase& photoCase)
{
    std::vector<std::string> paths;
    for (const std::string& picture : photoCase.pictures) {
        auto path = session.store().media().path(picture);
        if (!path)
            return fail(std::move(path.error()));
        paths.push_back(std::move(*path));
    }
    return paths;
}

Status addPhotoKey(Session& session, const Uid& photoCase, const std::vector<PhotoTruth>& truths)
{
    if (auto may = session.needOneOf({Role::trainer, Role::office}); !may)
        return may;
    const auto cases = session.store().practice().photoCases();
    if (!cases)
        return fail(cases.error());
    const auto found = std::ranges::find(*cases, photoCase, &PhotoCase::id);
    if (found == cases->end())
        return fail("photo-case.unknown", FaultKind::usage, {{"id", photoCase.text()}});
    PhotoKey key{{}, session.me(), session.ids().make(), photoCase, truths};
    if (const std::string why = photoKeyFault(key, *found); !why.empty())
        return badForm(why);
    auto change = session.begin();
    if (!change)
        return fail(change.error());
    key.at = change->at();
    if (auto kept = session.store().practice().addPhotoKey(*change, key); !kept)
        return kept;
    return session.commit(*change);
}

Result<std::vector<PhotoCaseLine>> photoCaseLines(Session& session)
{
    if (auto may = session.needOneOf({Role::trainer, Role::office}); !may)
        return fail(may.error());
    auto cases = keyed(session);
    if (!cases)
        return fail(cases.error());
    std::vector<PhotoCaseLine> lines;
    for (KeyedPhotoCase& each : *cases) {
        const bool mine = std::ranges::find(each.keys, session.me(), &PhotoKey::by) != each.keys.end();
        PhotoCaseLine line{std::move(each), mine};
        if (!mine) {
            line.keyed.keys.clear();
            line.keyed.agreed.clear();
            line.keyed.apart.clear();
            line.keyed.open = line.keyed.photoCase.questions;
        }
        lines.push_back(std::move(line));
    }
    return lines;
}

Result<std::vector<KeyMakers>> keyMakers(Session& session)
{
    if (auto may = session.needOneOf({Role::trainer, Role::office}); !may)
        return fail(may.error());
    const auto cases = keyed(session);
    if (!cases)
        return fail(cases.error());
    std::vector<KeyMakers> makers;
    for (KeyAgreement& agreement : keyAgreements(*cases)) {
        const auto one = codeOf(session, agreement.one);
        const auto other = codeOf(session, agreement.other);
        if (!one || !other)
            return fail(one ? other.error() : one.error());
        makers.push_back({*one, *other, std::move(agreement)});
    }
    return makers;
}

Result<std::optional<PhotoRound>> nextPhotoCase(Session& session, const PracticeRound& round)
{
    if (round.done())
        return std::optional<PhotoRound>();
    const auto cases = keyed(session);
    if (!cases)
        return fail(cases.error());
    const auto answers = session.store().practice().answers(round.session.id);
    if (!answers)
        return fail(answers.error());
    const auto& kinds = round.session.plan.kinds;
    for (const KeyedPhotoCase& each : *cases) {
        const bool answered = std::ranges::find(*answers, each.photoCase.id.text(), &PracticeAnswer::caseId) != answers->end();
        PhotoRound next{each.photoCase, each.agreed};
        std::erase_if(next.asked, [&](const AskedItem& item) { return !kinds.empty() && std::ranges::find(kinds, askedName(item.kind)) == kinds.end(); });
        if (!answered && !next.asked.empty())
            return std::optional(std::move(next));
    }
    return std::optional<PhotoRound>();
}

Status answerPhotoCase(Session& session, PracticeRound& round, const PhotoRound& photo, const std::vector<AnsweredItem>& answers, int seconds)
{
    PracticeCase asked;
    asked.asked = photo.asked;
    asked.number = round.nextNumber();
    return keepAnswers(session, round, asked, photo.photoCase.id.text(), answers, seconds);
}

} // namespace cupule
