// Visits. A draft is saved in place, without a journal line until it is left; from handing in on every change is a revision.
//
// A visit shows the state of its last decided revision; `correctionWaits` says that a later revision is not decided yet.
// `find` gives the newest content (the head); the content that counts is that of revision `decided`.

#pragma once

#include <array>
#include <functional>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "core/record/visit.h"
#include "core/rules/host.h"
#include "core/store/store.h"

namespace cupule {

/// What lists and the queue need of a visit, computed by the rules whenever it is saved.
struct VisitShown {
    HostAnswer host = HostAnswer::cannotTell;
    bool positive = false;
    bool earlierGenerationOnly = false;
    bool nothing = false;
    char worth = '0';
    std::string summary = "empty";             ///< stable code, see VisitLine in core/task/day.h
    std::vector<std::string> signs;            ///< sign ids answered "seen"
    int stops = 0, asks = 0;
    int queueRank = 99;                        ///< rules/deciding.h; lower is looked at earlier
    std::string queueCode;
    bool operator==(const VisitShown&) const = default;
};

struct VisitJudged {
    Uid visit;
    VisitShown shown;
};

struct VisitStanding {
    RecordState state = RecordState::draft;
    bool correctionWaits = false;
    bool oneOfTwo = false;
    bool conflict = false;                     ///< two decisions that did not know of each other
    bool struck = false;                       ///< struck out as a draft, or withdrawn; stays known, is counted nowhere
    Uid head;                                  ///< newest revision; null while a draft
    Uid decided;                               ///< last decided revision, or null
    bool imported = false;
    bool operator==(const VisitStanding&) const = default;
};

struct VisitRow {
    Uid id, tree, observer;
    CivilDate date;
    std::optional<LocalTime> time;
    std::string treeLabel, siteName, observerCode;
    std::optional<GeoPoint> treeAt;            ///< where the tree stands; told of rows of the queue
    VisitStanding standing;
    VisitShown shown;
};

/// Whether anything in the store hangs on a visit; what hangs on none need not be asked for one by one.
struct VisitHas {
    bool photos = true, samples = true, decisions = true;
    bool batches = true;                       ///< it is in a batch of routine records
    bool conflicts = true;                     ///< its versions differ in a field that nobody has settled
};

/// A visit with everything that judging it asks of its own rows.
struct WholeVisit {
    VisitRow row;
    std::string stored;                        ///< the content as it is stored, until it is read; empty where the visit is struck out
    std::optional<Visit> content;
    VisitHas has;
};
/// Reads what is stored. Touches no store.
Status readContents(std::vector<WholeVisit>& visits);

/// What a summary of an observer's past needs of one visit.
struct DecidedVisit {
    RecordState state = RecordState::accepted;
    bool nothing = false;
    std::vector<std::string> signs;            ///< answered "seen"
};

/// A positive that waits in the queue, and where its tree stands.
struct WaitingFind {
    Uid visit, tree;
    int queueRank = 99;
};

enum class QueueShow { waiting, corrections, accepted, rejected, returned };   ///< the first two wait for a decision

/// Which records of a region are wanted; what is left open narrows nothing.
struct QueueFilter {
    QueueShow show = QueueShow::waiting;
    std::vector<std::string> codes = {};       ///< why it stands in the queue: any of these
    std::string sign = {};                     ///< answered "seen"
    Uid site = {}, observer = {};
    std::optional<CivilDate> from = {}, to = {};
    /// Latitude and longitude of the four corners of a square, anticlockwise; edges are taken as straight in degrees, which is
    /// right to some metres for 10 km.
    std::optional<std::array<double, 8>> corners = {};
    std::string words = {};                    ///< all of them, each in the tree's, site's, observer's or visit's words
    bool searchNames = true;                   ///< words are looked for among people's names and codes, too
};

class Visits {
public:
    explicit Visits(StoreCore& core) : m_core(core) {}

    /// A draft, new or changed, in place. Fault "visit.not-draft" once handed in.
    Status saveDraft(Change& change, const Visit& visit, const VisitShown& shown);
    /// The draft is left: one journal line if its content changed since the last one. True where a line was written.
    Result<bool> leave(Change& change, const Uid& visit);
    /// Hands in a draft, or saves a correction of a handed-in visit: a revision on the head, a journal line of this kind
    /// ("submitted", "revised", "undone"), state submitted or "correction waits". Returns the revision.
    Result<Uid> revise(Change& change, const Visit& visit, const VisitShown& shown, const std::string& kind);
    /// State and flags; `head` and `imported` are not taken from here. A journal line where `kind` is not empty.
    Status setStanding(Change& change, const Uid& visit, const VisitStanding& standing, const std::string& kind,
                       const std::string& reason);
    /// What the rules computed, where something around the visits changed.
    Status setShown(Change& change, std::span<const VisitJudged> judged);

    Result<std::optional<Visit>> find(const Uid& id);
    Result<std::optional<VisitRow>> row(const Uid& id);
    Result<std::vector<VisitRow>> ofDay(CivilDate day, const Uid& observer);     ///< null = everyone's; by time, then entry
    Result<std::vector<VisitRow>> ofTree(const Uid& tree);                       ///< newest first, struck ones too
    Result<std::vector<Visit>> contentsOfTree(const Uid& tree);                  ///< newest first, without struck ones
    /// Newest first, struck ones too; contents are still to be read.
    Result<std::vector<WholeVisit>> wholeOfTree(const Uid& tree);
    Result<std::vector<CivilDate>> days(const Uid& observer);                    ///< newest first
    Result<std::vector<VisitRow>> drafts(int most);
    /// Of this observer: sent back by a verifier and not answered yet, the oldest first.
    Result<std::vector<VisitRow>> cameBack(const Uid& observer, int most);
    /// Decided ones of an observer, newest first.
    Result<std::vector<DecidedVisit>> decidedOf(const Uid& observer, int most);
    Result<std::int64_t> count();
    Result<std::int64_t> count(RecordState state);
    /// Any window of all visits, newest day first; nothing = every state.
    Result<std::vector<VisitRow>> window(std::optional<RecordState> state, std::int64_t from, int count);

    /// The verifier's queue: submitted ones and waiting corrections, by rank, then day, then entry.
    Result<std::int64_t> queueCount();
    Result<std::vector<VisitRow>> queue(std::int64_t from, int count);
    /// The record after `visit` in the queue (first one where null); nothing at the end.
    Result<std::optional<VisitRow>> queueNext(const Uid& visit);

    /// Positives in the queue whose tree stands within a box that holds everything nearer than `metres`, and all whose tree has no place.
    Result<std::vector<WaitingFind>> waitingFinds(double latitude, double longitude, double metres);

    /// The records that a filter wants, at most `most`: waiting ones in the order of the queue, decided ones newest first. Costs by the
    /// number of records it has to look at, unlike the windows above.
    Result<std::vector<Uid>> queueMatching(const QueueFilter& filter, int most);

    /// Goes through all visits in order of entry; stops when `take` returns false.
    Status each(const std::function<bool(const VisitRow&, const Visit&)>& take);

private:
    StoreCore& m_core;
};

} // namespace cupule
