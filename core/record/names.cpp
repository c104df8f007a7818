#include "core/record/names.h"

#include <array>
#include <utility>

namespace cupule {

namespace {

template <class Enum>
struct Table;

template <>
struct Table<Role> {
    static constexpr std::array<std::string_view, 5> names{"volunteer", "sample-handler", "trainer", "verifier",
                                                           "office"};
};
template <>
struct Table<RecordState> {
    static constexpr std::array<std::string_view, 5> names{"draft", "submitted", "accepted", "rejected", "returned"};
};
template <>
struct Table<Answer> {
    static constexpr std::array<std::string_view, 4> names{"open", "seen", "not-seen", "not-judged"};
};
template <>
struct Table<Confirmed> {
    static constexpr std::array<std::string_view, 3> names{"open", "done", "none-used"};
};
template <>
struct Table<SampleState> {
    static constexpr std::array<std::string_view, 9> names{"collected", "sealed",   "moving", "received",         "examined",
                                                           "disposed",  "closed",   "closed-with-break", "void"};
};
template <>
struct Table<CustodyKind> {
    static constexpr std::array<std::string_view, 10> names{"cut",     "inner-bag", "outer-bag", "on-site", "hand-over",
                                                            "receipt", "result",    "disposal",  "close",   "void"};
};
template <>
struct Table<LeaveGiver> {
    static constexpr std::array<std::string_view, 3> names{"owner", "occupier", "authority"};
};
template <>
struct Table<LeaveScope> {
    static constexpr std::array<std::string_view, 5> names{"enter", "photograph", "sample", "move", "pass-on"};
};
template <>
struct Table<Outcome> {
    static constexpr std::array<std::string_view, 5> names{"accept", "reject", "return", "withdraw", "reopen"};
};

template <>
struct Table<KeyStep> {
    static constexpr std::array<std::string_view, 2> names{"vouched", "withdrawn"};
};

template <>
struct Table<AuditEvent> {
    static constexpr std::array<std::string_view, 6> names{"answered", "taken-back", "passed", "failed", "given-up", "undone"};
};
template <>
struct Table<AuditState> {
    static constexpr std::array<std::string_view, 4> names{"open", "passed", "failed", "given-up"};
};

template <class Enum>
std::string_view nameOf(Enum value)
{
    return Table<Enum>::names[static_cast<std::size_t>(value)];
}

} // namespace

std::string_view name(Role value) { return nameOf(value); }
std::string_view name(RecordState value) { return nameOf(value); }
std::string_view name(Answer value) { return nameOf(value); }
std::string_view name(Confirmed value) { return nameOf(value); }
std::string_view name(SampleState value) { return nameOf(value); }
std::string_view name(CustodyKind value) { return nameOf(value); }
std::string_view name(LeaveGiver value) { return nameOf(value); }
std::string_view name(LeaveScope value) { return nameOf(value); }
std::string_view name(Outcome value) { return nameOf(value); }
std::string_view name(KeyStep value) { return nameOf(value); }
std::string_view name(AuditEvent value) { return nameOf(value); }
std::string_view name(AuditState value) { return nameOf(value); }

template <class Enum>
std::optional<Enum> fromName(std::string_view text)
{
    for (std::size_t i = 0; i < Table<Enum>::names.size(); ++i)
        if (Table<Enum>::names[i] == text)
            return static_cast<Enum>(i);
    return std::nullopt;
}

template std::optional<Role> fromName(std::string_view);
template std::optional<RecordState> fromName(std::string_view);
template std::optional<Answer> fromName(std::string_view);
template std::optional<Confirmed> fromName(std::string_view);
template std::optional<SampleState> fromName(std::string_view);
template std::optional<CustodyKind> fromName(std::string_view);
template std::optional<LeaveGiver> fromName(std::string_view);
template std::optional<LeaveScope> fromName(std::string_view);
template std::optional<Outcome> fromName(std::string_view);
template std::optional<KeyStep> fromName(std::string_view);
template std::optional<AuditEvent> fromName(std::string_view);
template std::optional<AuditState> fromName(std::string_view);

} // namespace cupule
