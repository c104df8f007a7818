// Small things that the importers share.

#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "core/exchange/problem.h"
#include "core/position/position.h"
#include "core/task/import.h"

namespace cupule {

/// Half the width of where a hand-held receiver or a phone under trees may be, where the file does not say.
/// Common practice, no source.
inline constexpr double receiverMetres = 15;

/// A place that a receiver or a camera gave, warned about where it lies outside the area.
Position devicePosition(double latitude, double longitude, std::string_view obtained, const Pack& pack);

ImportProblem asImportProblem(const ReadProblem& problem, const std::string& file);

/// A fault about one file among several: said, and the other files are still taken in. Faults of the store and a
/// cancelled job are about everything and give nothing.
std::optional<ImportProblem> asFileProblem(const Fault& fault, const std::string& file);

} // namespace cupule
