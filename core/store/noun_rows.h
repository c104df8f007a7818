// The rows of nouns: content and the columns taken from it. Repositories write them after an edit, merging after something came in.
// What a noun names must be there ("store.reference"). Inside the store room only.

#pragma once

#include <set>

#include "core/record/leave.h"
#include "core/record/person.h"
#include "core/record/photo.h"
#include "core/record/place.h"
#include "core/record/sample.h"
#include "core/record/visit.h"
#include "core/store/store_core.h"

namespace cupule {

void putPerson(StoreCore& core, const Person& person, const std::string& content, const std::optional<Digest>& commitment, const Written& at);
void putSite(StoreCore& core, const Site& site, const std::string& content, const Written& at);
/// With its words, and with the visits of entries that it was merged with or split from.
void putTree(StoreCore& core, const Tree& tree, const std::string& content, const Written& at);
void putPhoto(StoreCore& core, const PhotoNote& photo, const std::string& content, const Written& at);
void putSample(StoreCore& core, const Sample& sample, const std::string& content, const Written& at);
void putLeave(StoreCore& core, const Leave& leave, const std::string& content, const std::optional<Digest>& commitment, const Written& at);
void putRegime(StoreCore& core, const Regime& regime, const std::string& content, const Written& at);
/// The rows that a visit names.
struct VisitNames {
    std::optional<std::int64_t> tree, observer;
};
/// A visit that came in: submitted where its row is new, that is, not `there`; state and flags are settled afterwards, and a new one
/// stands in the queue only once it is judged. Its tree is not counted here.
void putVisit(StoreCore& core, const Visit& visit, const VisitNames& named, bool there, const std::string& content, const Written& at);

/// A note that came in; what it tells, and of whom, follows by fillSkills.
void putSkill(StoreCore& core, const Uid& note, const std::string& content, const LineMark& line);
/// Notes of which what they tell and the person are here now: says whom they are of. The people, each once.
std::set<Uid> fillSkills(StoreCore& core);

} // namespace cupule
