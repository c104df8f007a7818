// Two entries of one tree, and one entry of two trees. Everything here is a revision that can be undone, also after a restart.
//
//  - Merging says of one entry that the tree is kept under another. Nothing is rewritten: a visit goes on naming the entry under
//    which it was made, so that what was decided on it stands; visits, photos and samples are found under the kept entry.
//  - Splitting takes that back, at any time. What was done under the kept entry stays there.
//  - Where one entry turns out to be two trees, visits are moved to a new entry: a draft in place, a handed-in visit by a
//    correction, which is decided anew.

#pragma once

#include <string>
#include <vector>

#include "core/task/trees.h"

namespace cupule {

/// What merging would do, to be said before it is done. Nothing is kept of it.
struct MergeMeaning {
    Tree kept, other;                       ///< the entries under which the two trees are kept now
    HostAnswer keptHost = HostAnswer::cannotTell, otherHost = HostAnswer::cannotTell;   ///< as they stand
    HostVerdict host;                       ///< of both together
    std::vector<VisitLine> moving;          ///< visits that come over, newest first
    int photos = 0, samples = 0;            ///< that come with them
    struct Changed {
        VisitLine before, after;
    };
    std::vector<Changed> changed;           ///< visits of either whose summary, worth or number of findings becomes another
    std::vector<CivilDate> twice;           ///< days on which one observer visited both, each once
    std::optional<double> metres;           ///< between their places, where both are known
    double explainedMetres = 0;             ///< how far apart one tree may be placed
    bool otherSite = false;                 ///< they stand in different sites
};
/// Roles volunteer, trainer, verifier, office. Faults "tree.unknown", "tree.merge-same".
Result<MergeMeaning> mergeMeaning(Session& session, const Uid& kept, const Uid& other);
/// The same roles and faults. Each tree is named by any of its entries.
Status mergeTrees(Session& session, const Uid& kept, const Uid& other, const std::string& what);
/// The entry stands for a tree of its own again. Fault "tree.not-merged".
Status splitTree(Session& session, const Uid& entry, const std::string& what);

/// A new entry in the same site, placed where the first of these visits was, to which they are moved. Roles volunteer, trainer,
/// office. Faults "tree.label", "tree.label-taken", "tree.split-none" (no visit, or all there are), "visit.not-yours".
Result<Tree> splitVisits(Session& session, const Uid& tree, const std::vector<Uid>& visits, const std::string& label,
                         const std::string& what);

} // namespace cupule
