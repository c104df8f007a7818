// What the rules say about one visit with everything known around it, and what lists show of it. Pure; any thread.

#pragma once

#include <optional>
#include <span>
#include <string>
#include <vector>

#include "core/rules/checks.h"
#include "core/rules/deciding.h"
#include "core/rules/host.h"
#include "core/rules/season.h"
#include "core/store/decisions.h"
#include "core/store/visits.h"

namespace cupule {

/// PhotoNote::evidenceFor may hold these besides ids of signs and characters: what a "nothing seen" asks for.
inline constexpr const char* crownEvidence = "crown";
inline constexpr const char* shootEvidence = "shoot";

/// What lies around a visit.
struct VisitFacts {
    std::optional<Tree> tree;
    std::optional<Site> site;
    SeasonContext season;
    std::vector<PhotoNote> photos;
    std::vector<SharedPhoto> sharedPhotos;
    std::vector<OtherVisit> others;             ///< to the same tree, without struck ones
    std::vector<CharacterSeen> otherCharacters; ///< seen on those, without rejected ones
    std::vector<Sample> samples;
    bool laboratoryReport = false;              ///< a laboratory has said what it saw in one of them
    std::optional<FindAway> nearestFind;        ///< accepted, of an earlier day; only looked for where galls are claimed
    bool newGround = false;                     ///< only meaningful for a positive
    bool returnedBefore = false;
    bool fieldsApart = false;                   ///< its versions differ in a field that nobody has settled
    BatchPlace batch = BatchPlace::none;        ///< of the newest revision
};

struct Judged {
    HostVerdict host;                           ///< joined over the visits to the tree
    Positive positive;
    bool nothing = false;
    Worth worth;
    std::vector<Finding> findings;
    QueuePlace place;
    VisitShown shown;
};

/// Characters of the visit and those of other visits, each (character, state, value) once; what could not be judged here
/// is left out where another visit answers it.
std::vector<CharacterSeen> joinCharacters(std::span<const CharacterSeen> own, std::span<const CharacterSeen> others);

/// `host` is the verdict joined over the tree's visits.
Judged judgeVisit(const Visit& visit, const VisitStanding& standing, const VisitFacts& facts, const Pack& pack,
                  CivilDate today, const HostVerdict& host);

/// "empty", "nothing-seen", "gall", "older-gall", "not-host", "other-signs", "incomplete".
std::string summaryOf(const Visit& visit, HostAnswer host, const Positive& positive, bool nothing);
std::vector<std::string> signsSeen(const Visit& visit);
/// A field gall line or a laboratory find is claimed, whatever the tree.
bool claimsGall(const Visit& visit, const Pack& pack);

} // namespace cupule
