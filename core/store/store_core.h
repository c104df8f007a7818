// What all repositories of one store share: the connection, who writes, and the end of this device's chain.
// Inside the store room only; functions throw StoreError.

#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/record/json.h"
#include "core/store/connection.h"
#include "core/store/find_index.h"
#include "core/store/journal.h"
#include "core/store/store.h"

namespace cupule {

/// Where a change stands in the journal.
struct LineMark {
    std::int64_t chain = 0;
    std::int64_t number = 0;
};

struct NewLine {
    std::string_view kind;
    std::string_view noun;
    Uid entity;
    std::optional<Digest> digest = {};
    std::optional<Digest> commitment = {};
};

struct NewRevision {
    std::string_view kind;                 ///< of the journal line
    std::string_view noun;
    Uid entity;
    const std::string& content;
    std::vector<Uid> parents = {};
    std::optional<Digest> commitment = {}; ///< that holds for this revision
    bool newCommitment = false;            ///< and is named by the line
};

struct Written {
    Uid revision;
    LineMark line;
};

class StoreCore {
public:
    /// The device's chain as far as it is known; `number` 0 = not begun.
    struct Chain {
        std::int64_t id = 0;
        Uid uid;
        std::int64_t number = 0;
        Digest hash{};
    };

    explicit StoreCore(const StoreServices& given) : services(given), ids(given.clock, given.random) {}
    ~StoreCore();

    // -- opening
    void readInfo();
    void findChain();                      ///< of the device; compares it with what the profile remembers
    void beginsBecause(std::string why) { m_why = std::move(why); }
    void close();

    // -- a change
    void begin(const Uid& author, ChangeSize size = ChangeSize::usual);
    void commit();
    void rollBack() noexcept;
    [[nodiscard]] bool changing() const { return m_changing; }
    [[nodiscard]] const Instant& at() const { return m_at; }
    [[nodiscard]] const Uid& author() const { return m_author; }
    /// Throws unless the change is still open; SQLite may have rolled it back after a full disk.
    void writing() const;
    /// While set, the change cannot be committed: a write that has no Part of its own is under way, or failed half-way.
    void setHalfWritten(bool half) { m_halfWritten = half; }
    /// From here to the end of the change, what is saved of this noun is a revision on all of its heads, even where its content stays.
    void settle(const Uid& entity) { m_settled = entity; }
    [[nodiscard]] bool settles(const Uid& entity) const { return !m_settled.isNull() && m_settled == entity; }
    LineMark addLine(const NewLine& line);
    Written addRevision(const NewRevision& revision);

    /// Rowid of a noun; 0 where there is none.
    std::int64_t personRow(const Uid& id);
    std::int64_t siteRow(const Uid& id);
    std::int64_t treeRow(const Uid& id);   ///< of the entry under which the tree is kept (tree_entries.h)
    std::int64_t visitRow(const Uid& id);
    std::int64_t sampleRow(const Uid& id);

    Connection db;
    FindIndex finds{db};                   ///< to be told of every change of the table `find`
    StoreServices services;
    UidMaker ids;
    Uid device;
    std::optional<Seen> remembered;
    StoreInfo info;
    Opening opening = Opening::current;
    std::optional<Shorter> shorter;
    Chain chain;
    std::int64_t commits = 0;

private:
    void beginChain();
    void readChainEnd();
    void ended();

    std::string m_why = "opened-here";     // why a new incarnation would begin
    bool m_mustBegin = false;
    bool m_changing = false;
    bool m_halfWritten = false;
    bool m_large = false;
    Chain m_before;
    Uid m_author;
    Instant m_at;
    Uid m_settled;
};

/// Revisions of a noun that are nobody's parent.
std::vector<Uid> headsOf(StoreCore& core, const Uid& entity);

/// One write of a repository within a change: done wholly or not at all, so that a refusal leaves the change usable.
class Part {
public:
    explicit Part(StoreCore& core);
    ~Part();
    Part(const Part&) = delete;
    Part& operator=(const Part&) = delete;
    void keep();

private:
    StoreCore& m_core;
    StoreCore::Chain m_before;
    bool m_kept = false;
};

template <class Work>
auto writtenIn(Change& change, Work&& work) -> Result<std::invoke_result_t<Work, StoreCore&>>
{
    return guarded([&] {
        StoreCore& core = change.core();
        Part part(core);
        if constexpr (std::is_void_v<std::invoke_result_t<Work, StoreCore&>>) {
            work(core);
            part.keep();
        } else {
            auto made = work(core);
            part.keep();
            return made;
        }
    });
}

/// Throws "store.reference" with what is missing where `row` is 0 although `id` names something.
std::optional<std::int64_t> referenced(std::int64_t row, const Uid& id, std::string_view noun);

/// Canonical JSON of a noun that is sure to be readable again. Throws "record.json" where it is not.
template <class Noun>
std::string contentOf(const Noun& noun)
{
    std::string content = toJson(noun);
    const auto back = fromJson<Noun>(content);
    if (!back)
        throw StoreError{back.error()};
    return content;
}

/// A noun from its content; throws where the content is not one (the store was damaged or made by a newer program).
template <class Noun>
Noun nounFrom(std::string_view content)
{
    auto noun = fromJson<Noun>(content);
    if (!noun) {
        Fault fault = noun.error();
        fault.code = "store.damaged";
        fault.arguments.push_back({"can", "restore-backup"});
        throw StoreError{std::move(fault)};
    }
    return std::move(*noun);
}

} // namespace cupule
