// What can be seen when, and what a "nothing seen" is worth. Windows are the pack's; the observed leafing of chestnut
// moves them within the pack's limit. No degree-day model of the pest exists with a source, so none is here.

#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/protocol/pack.h"
#include "core/record/visit.h"
#include "core/rules/host.h"

namespace cupule {

enum class SeasonState { expected, possible, outOfSeason };

struct SeasonContext {
    std::string region;
    int shiftDays = 0;                      ///< observed leafing minus reference; negative = early
};

struct SignSeason {
    SeasonState state = SeasonState::outOfSeason;
    std::string reason;                     ///< stable code: "peak", "before-peak", "after-peak", "persists", "moved-window", "not-yet", "over", "never-answered"
    Window published;
    Window moved;                           ///< the published window with its peak moved
};

/// The shift that is used: nothing beyond the pack's limit counts. `limited` says that it was beyond.
struct UsedShift {
    int days = 0;
    bool limited = false;
};
UsedShift usedShift(int observedDays, const Pack& pack);
/// Observed leafing date against the region's reference date of that year; the fallback from height is
/// `2.5 days for each 100 m above the reference station`.
std::optional<int> leafingShift(CivilDate observed, const std::string& region, const Pack& pack);

SignSeason seasonOf(const Sign& sign, CivilDate date, const SeasonContext& context, const Pack& pack);

/// Field gall lines that are expected or possible on that date, in the pack's order.
std::vector<const Sign*> gallLinesInSeason(CivilDate date, const SeasonContext& context, const Pack& pack);

/// All gall lines in season answered "not seen" (or none on the tree), and none seen.
bool nothingSeen(const Visit& visit, const SeasonContext& context, const Pack& pack);

/// A gall line or a laboratory find seen on a host that is not ruled out.
struct Positive {
    bool positive = false;
    bool earlierGenerationOnly = false;
    std::vector<std::string> signs;
};
Positive positiveOf(const Visit& visit, HostAnswer host, const Pack& pack);

struct Worth {
    char calendar = '0';                    ///< of the date alone: 'A', 'B', 'C' or '0'
    char shifted = '0';                     ///< of the date with the shift in force
    char letter = '0';                      ///< after conditions and host; 0 unless nothing was seen
    std::vector<std::string> missing;       ///< condition ids of the pack, all at once
    std::string reason;                     ///< stable code of what set the letter: "calendar", "conditions", "no-effort", "host-open", "host-ruled-out", "not-a-null"
    std::string why;                        ///< the pack's words for that month
};

struct WorthContext {
    SeasonContext season;
    HostAnswer host = HostAnswer::cannotTell;
    int crownPhotos = 0;                    ///< dated photographs of the crown
    int shootPhotos = 0;                    ///< dated photographs of a shoot
};
char worthOfDate(CivilDate date, const SeasonContext& context, const Pack& pack);
Worth worthOf(const Visit& visit, const WorthContext& context, const Pack& pack);

} // namespace cupule
