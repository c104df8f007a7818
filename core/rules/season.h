// What can be seen when, and what a "nothing seen" is worth. Windows are the pack's; the observed leafing of
// chestnut moves them within the pack's limit. No degree-day model of the pest exists with a source, so none
// is here.
//
//  - Days of the year are counted as in a year with a 29 February (seasonDay), 1 to 366, and run in a circle.
//  - A moved window only widens: whatever is published as possible stays possible.
//  - Pure functions; any thread may call them.

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
    int shiftDays = 0; ///< observed leafing minus reference; negative = early
};

struct SignSeason {
    SeasonState state = SeasonState::outOfSeason;
    /// Stable code: "peak", "before-peak", "after-peak", "persists" (stays on the tree all year),
    /// "moved-window" (only because the leafing was early or late), "not-yet", "over", "never-answered",
    /// "no-window" (not known there).
    std::string reason;
    Window published;
    Window moved; ///< the published window moved by the sign's share of the shift
};

/// The day on which a date falls in the pack's windows: 1 May is 122 in every year.
int seasonDay(CivilDate date);
int seasonDay(int month, int day); ///< month of [1, 12]
/// Whether a day lies in [first, last], which may run over the new year; last = 0 has no end.
bool inWindow(int day, int first, int last);

/// The shift that is used: what goes beyond the pack's limit does not count. `limited` says that it was
/// beyond, and that the verifier is to be asked.
struct UsedShift {
    int days = 0;
    bool limited = false;
};
UsedShift usedShift(int observedDays, const Pack& pack);
/// Observed leafing date against the region's reference date of that year, in days; nothing where the region
/// is unknown.
std::optional<int> leafingShift(CivilDate observed, const std::string& region, const Pack& pack);
/// The fallback where nobody observed the leafing: metres above the reference station times the pack's days
/// for each 100 m, rounded to the nearest day.
int shiftFromHeight(double metresAboveReference, const Pack& pack);

/// Expected = the moved peak; possible = the published or the moved window, and all year where the sign
/// persists.
SignSeason seasonOf(const Sign& sign, CivilDate date, const SeasonContext& context, const Pack& pack);

/// Whether an answer about a character is of the kind that the question is about, whatever the date.
bool concerns(const SeasonQuestion& question, const CharacterSeen& answer);

/// Field gall lines that are expected or possible on that date, in the pack's order.
std::vector<const Sign*> gallLinesInSeason(CivilDate date, const SeasonContext& context, const Pack& pack);

/// Whether a question of the season is asked on that date. Its quiet time may grow with the shift, never
/// shrink.
bool isAsked(const SeasonQuestion& question, CivilDate date, const SeasonContext& context, const Pack& pack);

/// All gall lines in season answered "not seen" (or none on the tree), no gall line, gall detail or
/// laboratory find seen, and no gall counted or measured anywhere on the visit.
bool nothingSeen(const Visit& visit, const SeasonContext& context, const Pack& pack);

/// Whether something on the visit says that there is a gall although no gall line is answered "seen": a
/// detail of a gall seen, or a count or size above 0.
bool gallWithoutLine(const Visit& visit, const Pack& pack);

/// A gall line or a laboratory find seen on a host that is not ruled out.
struct Positive {
    bool positive = false;
    bool earlierGenerationOnly = false;
    std::vector<std::string> signs;
};
Positive positiveOf(const Visit& visit, HostAnswer host, const Pack& pack);

struct Worth {
    char calendar = '0';              ///< of the date alone: 'A', 'B', 'C' or '0'
    char shifted = '0';               ///< of the date with the shift in force
    char letter = '0';                ///< after conditions and host; 0 unless nothing was seen
    char ifNothing = '0';             ///< what the letter is, or would be were every gall line in season "not seen"
    std::vector<std::string> missing; ///< condition ids of the pack, all at once
    /// Stable code of what set the letter: "calendar", "conditions", "no-effort", "host-open",
    /// "host-ruled-out", "not-a-null".
    std::string reason;
    std::string why; ///< the pack's words for that month
};

struct WorthContext {
    SeasonContext season;
    HostAnswer host = HostAnswer::cannotTell;
    int crownPhotos = 0; ///< dated photographs of the crown
    int shootPhotos = 0; ///< dated photographs of a shoot
};
/// The pack's letter for the half-month in which the date falls once the starts of the half-months are moved
/// by their share of the shift. '0' where the region is unknown.
char worthOfDate(CivilDate date, const SeasonContext& context, const Pack& pack);
/// The shifted letter, one step down where any condition is missing, at most C while the host is open, and 0
/// without minutes, on a ruled-out host, or where something was seen.
Worth worthOf(const Visit& visit, const WorthContext& context, const Pack& pack);

} // namespace cupule
