// What leaves a store in one bundle: whole contents with the journal lines that stand for them.
//
//  - For the day: visits that are handed in, with the trees, sites, people, leaves, photos, samples and custody lines that they name,
//    whole history, and what their recorders withdrew; less what is in a bundle that was acknowledged. Drafts never leave; the lines about them do, without content, so
//    that the chain stays whole.
//  - Decisions: all of them, with what was told to the authority, changes of state, the people who decided, erasures, and which bundles
//    came in.
//  - What people agreed to have told of their measured detection goes with the day and with reference, where personal data goes; what was taken
//    back of it goes always, once it had gone. Whoever is neither trainer nor office hands out their own alone. What was withdrawn never goes again.
//  - Reference, for verifiers: sites, regimes, what is known of keys, people, and accepted finds with their trees. Who may not decide
//    for whom travels here alone; elsewhere a person goes as they were before that was said.

#pragma once

#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "core/store/bundles.h"
#include "core/store/journal.h"

namespace cupule {

struct GoingRecord {
    std::string type;                      ///< "revision", "event", "decision", "custody", "told", "erasure", "key-note", "skill"
    std::string noun;                      ///< of a revision
    Uid id;                                ///< of the revision; null for all else
    Uid entity;
    std::vector<Uid> parents;
    Uid incarnation;
    std::int64_t number = 0;
    std::string content;
    std::optional<Digest> commitment;
    int branch = 0;                        ///< of the chain its line stands in, see GoingChain
};

struct GoingLine {
    JournalLine line;
    std::optional<Digest> before;          ///< where the line before does not go as well
    int branch = 0;
};

struct GoingChain {
    Incarnation incarnation;               ///< with the chain's last number as `lines`
    Digest hash{};                         ///< of that
    std::int64_t going = 0;                ///< lines
    int branch = 0;                        ///< counts chains of the same incarnation: of a copied laptop, or with a gap
};

struct GoingPersonal {
    std::string noun;
    Uid entity;
    Digest commitment{};
    std::optional<Digest> salt;            ///< nothing once erased
    std::string payload;
};

enum class GoingKind { day, decision, reference };

struct Going {
    std::vector<GoingRecord> records;
    std::vector<GoingLine> lines;
    std::vector<GoingChain> chains;
    std::vector<GoingPersonal> personal;
    std::vector<std::string> pictures;     ///< SHA-256 of the pictures of photos that go
    bool picturesAbsent = false;           ///< some photos came in without theirs
    std::vector<CarriedLine> carried;
    std::vector<Uid> acknowledges;         ///< bundles that came in; decisions only
    std::int64_t visits = 0;
    bool corrections = false;              ///< every visit has gone before
    bool practice = false;                 ///< there is something about measured detection
};

/// Where records and lines go one by one, instead of being gathered in Going: a season does not fit into memory.
struct GoingTake {
    std::function<Status(const GoingRecord&)> record;
    std::function<Status(const GoingLine&)> line;
};

struct GoingWish {
    bool whole = false;                    ///< what was acknowledged, too: for a store that has nothing of it yet
    bool office = true;                    ///< with what is known of keys, and with erasures, which are the office's to say
    bool personal = true;                  ///< what is personal goes along beside the records
    bool practice = true;                  ///< with what is told of measured detection
    Uid practiceOf = {};                   ///< of this person alone; null = of everybody
};

class Outgoing {
public:
    explicit Outgoing(StoreCore& core) : m_core(core) {}
    Result<Going> collect(GoingKind kind, const GoingWish& wish = {}, const GoingTake& take = {});

private:
    StoreCore& m_core;
};

} // namespace cupule
