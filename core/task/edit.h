// Saving a visit with everything that is computed from it: what lists show, the tree's verdict, what the tree's other
// visits show. Inside the task room only.

#pragma once

#include <string>
#include <vector>

#include "core/record/photo.h"
#include "core/store/undo_log.h"
#include "core/task/facts.h"

namespace cupule {

/// The profile's person and every entry of the store that is the same person.
Result<std::vector<Uid>> mySelves(Session& session);
/// Observer or companion; for a draft also a trainer or the office, who take in what others wrote.
Result<bool> mayEdit(Session& session, const Visit& visit, const VisitStanding& standing);

/// A draft is saved in place where `kind` is empty; otherwise a revision with a journal line of that kind is written.
Status saveVisit(Session& session, Change& change, const Visit& visit, const std::string& kind = {});
/// Saves those photos that differ from what is stored, and what lists show of their visits; as changePhoto. For the undo log.
Result<std::vector<UndoPart>> savePhotos(Session& session, Change& change, const std::vector<PhotoNote>& changed);
/// Computes again what lists show of a visit.
Status refreshVisit(Session& session, Change& change, const Uid& visit);
/// Computes the tree's verdict again, and what its visits show; all of them, or only those that a change of `visit` can
/// have touched.
Status refreshTree(Session& session, Change& change, const Uid& tree);
/// The same from what was read of it within this change.
Status refreshTree(Session& session, Change& change, const Uid& tree, TreeVisits& all);
Status refreshAround(Session& session, Change& change, const Visit& visit);
/// After an accepted find came or went: the places in the queue of waiting finds near it. What else lists show of those farther off
/// is made again when they are next touched.
Status refreshWaitingFinds(Session& session, Change& change, const FindPlace& find);

/// Joined over the visits of a tree that are neither struck out nor rejected.
Result<HostVerdict> verdictOfTree(Session& session, const Uid& tree, NextCharacters next = NextCharacters::name);

} // namespace cupule
