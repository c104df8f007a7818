// The one way in which core says that something outside the program went wrong.
//
//  - A Fault carries a stable code, arguments and a place. It carries no prose for users: sentences are made
//    at the edge (ui/bridge/words), so that window and command line say the same.
//  - Codes never change once released. `resources/docs/faults.md` lists them.
//  - Impossible states are asserted, not returned.

#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include <tl/expected.hpp>

namespace cupule {

/// Where a fault was met. Unknown parts stay at their defaults.
struct Place {
    std::string file;          ///< name as the user gave it
    std::int64_t row = 0;      ///< data row, counted from 1 after the header; 0 = unknown
    std::int64_t line = 0;     ///< physical line on which the row begins, from 1; 0 = unknown
    std::int64_t byte = -1;    ///< offset from the start of the file; -1 = unknown
    std::string field;         ///< column, JSON path or field name
};

/// A named value inside a fault or finding; `name` is stable, `value` is text in the C locale.
struct Argument {
    std::string name;
    std::string value;
    bool operator==(const Argument&) const = default;
};
using Arguments = std::vector<Argument>;

/// Broad category, for exit codes and for deciding what to offer.
enum class FaultKind {
    refused,   ///< a rule said no; exit 1
    usage,     ///< the question was not understood; exit 2
    data,      ///< what was read is not what it should be; exit 3
    io,        ///< the machine would not do it; exit 3
};

struct Fault {
    std::string code;                    ///< stable, "room.what", e.g. "store.foreign"
    FaultKind kind = FaultKind::data;
    Arguments arguments = {};
    Place place = {};
    std::string technical = {};          ///< text of a library; shown behind "Details" only

    /// Value of a named argument, or empty.
    [[nodiscard]] std::string argument(std::string_view name) const;
};

template <class T, class E = Fault>
using Result = tl::expected<T, E>;
using Status = Result<void>;

inline tl::unexpected<Fault> fail(Fault fault)
{
    return tl::unexpected<Fault>(std::move(fault));
}
inline tl::unexpected<Fault> fail(std::string code, FaultKind kind, Arguments arguments = {})
{
    return tl::unexpected<Fault>(Fault{std::move(code), kind, std::move(arguments), {}, {}});
}

} // namespace cupule
