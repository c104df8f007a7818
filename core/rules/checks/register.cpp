// The rules in the order in which findings of one severity are listed: what the record stands on, the claim
// and its host, season, place, photos, repeats, the rest.

#include "core/rules/checks.h"

#include "core/rules/checks/rules.h"

namespace cupule {

const std::vector<Check>& allChecks()
{
    static const std::vector<Check> all{
        {"date_missing", checks::dateMissing, {"date.missing", "date.unreadable"}},
        {"date_future", checks::dateFuture, {"date.future"}},
        {"date_long_ago", checks::dateLongAgo, {"date.long-ago"}},
        {"observer_missing", checks::observerMissing, {"observer.missing"}},
        {"companion_is_observer", checks::companionIsObserver, {"companion.is-observer"}},
        {"tree_missing", checks::treeMissing, {"tree.missing"}},
        {"visit_empty", checks::visitEmpty, {"visit.empty"}},
        {"position_impossible", checks::positionImpossible, {"position.impossible", "position.null-island"}},
        {"gall_on_other_tree", checks::gallOnOtherTree, {"gall.on-other-tree"}},
        {"gall_which", checks::gallWhich, {"gall.which"}},
        {"gall_evidence", checks::gallEvidence, {"gall.no-evidence", "gall.photo-unmarked"}},
        {"sign_on_other_tree", checks::signOnOtherTree, {"sign.on-other-tree"}},
        {"laboratory_claim", checks::laboratoryClaim, {"sign.laboratory"}},
        {"answer_contradicts",
         checks::answerContradicts,
         {"sign.none-and-seen", "sign.counted-not-seen", "sign.seen-none-counted"}},
        {"measure_range", checks::measureRange, {"measure.hard", "measure.unusual"}},
        {"measure_error", checks::measureError, {"measure.error"}},
        {"gall_size", checks::gallSize, {"gall-size.hard", "gall-size.unusual"}},
        {"count_impossible", checks::countImpossible, {"count.impossible", "count.many"}},
        {"character_value", checks::characterValue, {"character.hard"}},
        {"effort_range", checks::effortRange, {"effort.hard", "effort.short", "effort.long"}},
        {"find_far", checks::findFar, {"find.far", "find.first"}},
        {"gall_host_open", checks::gallHostOpen, {"gall.host-open"}},
        {"host_contradicted", checks::hostContradicted, {"host.contradicted"}},
        {"host_not_shown", checks::hostNotShown, {"host.not-shown"}},
        {"season_question", checks::seasonQuestion, {}},
        {"shift_used", checks::shiftUsed, {"shift.beyond-limit", "shift.unsourced"}},
        {"position_missing", checks::positionMissing, {"position.missing"}},
        {"position_off_area", checks::positionOffArea, {"position.off-area"}},
        {"position_coarse", checks::positionCoarse, {"position.coarse"}},
        {"position_outside_site", checks::positionOutsideSite, {"position.outside-site"}},
        {"tree_moved", checks::treeMoved, {"tree.moved"}},
        {"photo_time", checks::photoTime, {"photo.other-day", "photo.other-time", "photo.undated"}},
        {"photo_place", checks::photoPlace, {"photo.other-place"}},
        {"photo_shared", checks::photoShared, {"photo.used-twice"}},
        {"same_day_twice", checks::sameDayTwice, {"visit.repeats", "visit.same-day"}},
        {"distortion_alone", checks::distortionAlone, {"distortion.no-gall"}},
        {"sign_points_elsewhere", checks::signPointsElsewhere, {"sign.points-elsewhere"}},
        {"nothing_incomplete", checks::nothingIncomplete, {"nothing.incomplete", "nothing.not-judged"}},
        {"nothing_no_crown", checks::nothingNoCrown, {"nothing.no-crown"}},
        {"answered_twice", checks::answeredTwice, {"sign.twice", "character.twice"}},
        {"computed_claim", checks::computedClaim, {"sign.computed"}},
        {"ground_not_asked", checks::groundNotAsked, {"character.ground-not-asked"}},
        {"hygiene_open", checks::hygieneOpen, {"hygiene.open"}},
        {"left_before_visit", checks::leftBeforeVisit, {"hygiene.left-before-visit"}},
        {"effort_missing", checks::effortMissing, {"effort.missing"}},
        {"nothing_host", checks::nothingHost, {"nothing.host-open", "nothing.not-host"}},
        {"nothing_after_find", checks::nothingAfterFind, {"nothing.after-find"}},
        {"gall_few_photos", checks::gallFewPhotos, {"gall.few-photos"}},
        {"disease_route", checks::diseaseRoute, {"disease.own-route"}},
        {"unknown_to_pack",
         checks::unknownToPack,
         {"sign.unknown", "character.unknown", "character.state-unknown", "count.class-unknown"}},
    };
    return all;
}

std::vector<std::string_view> packCodes(const Pack& pack)
{
    std::vector<std::string_view> codes;
    for (const SeasonQuestion& question : pack.seasonQuestions)
        codes.push_back(question.code);
    return codes;
}

} // namespace cupule
