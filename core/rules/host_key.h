// The host key of a pack, made ready for many trees: sets of kinds as bits, characters and states looked up
// once.
//
//  - An answer about a character excludes every kind of tree that has a row for it and does not show it. A
//  kind without
//    a row is unknown there and never excluded.
//  - An answer contradicts the host where no kind of host shows it and every kind that does is marked so, or
//  where the
//    state rules out by itself. An answer that no host shows and that is no contradiction excludes nobody.
//  - An answer counts unless it lay on the ground and another tree may have dropped it, or nobody asked
//  whether.
//  - Never changed once built; any thread may judge.
//
// Source: rows and marks of the pack (each with its own source); the terms of the verdict are the
// programme's.

#pragma once

#include <cstdint>
#include <map>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "core/protocol/pack.h"
#include "core/record/visit.h"
#include "core/rules/host.h"

namespace cupule {

class HostKey {
public:
    /// The pack must outlive the key.
    explicit HostKey(const Pack& pack);

    /// The verdict without `next`. Answers may repeat a character (visits joined); unknown ones are passed
    /// over.
    [[nodiscard]] HostVerdict judge(std::span<const CharacterSeen> seen, const HostContext& context) const;
    /// Only the answer of `judge`, for where many trees are judged.
    [[nodiscard]] HostAnswer answer(std::span<const CharacterSeen> seen, const HostContext& context) const;
    /// The characters to look at next, best first; empty once decided. Only what can be seen in that month.
    [[nodiscard]] std::vector<NextCharacter> next(std::span<const CharacterSeen> seen,
                                                  const HostContext& context) const;

private:
    using Kinds = std::uint64_t; ///< one bit a kind, in the pack's order

    struct State {
        Kinds shownBy = 0;     ///< kinds with a row that has the state
        Kinds shownFallen = 0; ///< kinds that show it once fallen
        bool rulesOut = false;
    };
    struct Range {
        std::size_t kind = 0;
        double min = 0, max = 0; ///< infinite where open
    };
    struct Entry {
        const Character* character = nullptr;
        Kinds rows = 0; ///< kinds with a row
        Kinds diagnostic = 0, ifCounted = 0, otherHost = 0,
              contradicting = 0;   ///< kinds whose row is marked so
        std::vector<State> states; ///< in the order of the character's states
        std::vector<Range> ranges;
        std::uint32_t organ = 0; ///< one bit an organ
        bool ofMargin = false;   ///< the margin, what measures it, or the arrangement
    };
    /// One answer, looked up.
    struct Spoken {
        const CharacterSeen* seen = nullptr;
        const Entry* entry = nullptr;
        int state = -1;
        std::optional<double> value;
        Kinds shownBy = 0; ///< kinds with a row that fits the answer
        Mark mark = Mark::shared;
        bool counted = true;
        bool uncountedMargin = false; ///< would be diagnostic if it were counted
    };
    struct Weighed;
    struct Outcomes;

    void readRow(const KindRow& row);
    [[nodiscard]] Entry* entryOf(std::string_view character);
    [[nodiscard]] const Entry* entryOf(std::string_view character) const;
    [[nodiscard]] std::optional<Spoken> lookUp(const CharacterSeen& seen) const;
    [[nodiscard]] static Kinds fitting(const Spoken& spoken);
    void setMark(Spoken& spoken, std::span<const Spoken> all) const;
    [[nodiscard]] bool isCounted(const Entry& entry, std::span<const Spoken> all) const;
    [[nodiscard]] std::vector<Spoken> speak(std::span<const CharacterSeen> seen) const;
    [[nodiscard]] Weighed weigh(std::span<const Spoken> spoken, const HostContext& context) const;
    void decide(Weighed& weighed) const;
    [[nodiscard]] bool confirmsBareTree(const Spoken& spoken, const HostContext& context) const;
    [[nodiscard]] bool isBare(const HostContext& context) const;
    [[nodiscard]] std::vector<std::string> deciders(std::span<const Spoken> spoken,
                                                    const Weighed& weighed) const;
    [[nodiscard]] std::vector<std::string> names(Kinds kinds) const;

    [[nodiscard]] std::optional<NextCharacter> worthOfLooking(const Entry& entry, Kinds left,
                                                              std::span<const CharacterSeen> seen,
                                                              const HostContext& context) const;
    [[nodiscard]] double bits(const Entry& entry, Kinds left) const;
    Kinds spreadValues(const Entry& entry, Kinds left, Outcomes& outcomes) const;
    [[nodiscard]] Kinds toldApart(const Entry& entry, Kinds left) const;

    const Pack* m_pack;
    std::vector<Entry> m_entries; ///< only characters that decide
    std::map<std::string, std::size_t, std::less<>> m_kindIndex;
    Kinds m_hosts = 0, m_all = 0;
};

} // namespace cupule
