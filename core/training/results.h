// What practice answers say about one recruit, or about a cohort: how far a yes and a no can be believed, sign by sign, what is
// confused with what, whether people know how sure they may be, how they learn, and what to practise next.
//
//  - "Could not be judged" where the key has an answer is counted in two ways: left out (`judged`), and against the person (`strict`: a
//    missed one where something was there, a false alarm where not). Readiness goes by `strict`, so that nobody becomes ready by not judging.
//    Why both are shown: Shinkins et al. 2013, BMJ 346:f2778 (from memory).
//  - Where the key itself says that it cannot be judged, the answer counts for neither; it is in `open`.
//  - Answers of one person about one kind of drawing are not independent trials: intervals are a guide, and narrower than they should be.

#pragma once

#include <cstdint>
#include <map>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "core/training/agreement.h"
#include "core/training/answer.h"
#include "core/training/calibration.h"

namespace cupule {

/// Shares out of fewer than this are said to be out of few (common practice, no source).
inline constexpr std::int64_t fewAnswers = 30;

/// What the programme asks of a recruit. No figure is published; the defaults are a judgement, to be set by each programme.
struct ReadyLimits {
    double sensitivity = 0.8;              ///< 0 to 1
    double specificity = 0.8;
    bool operator==(const ReadyLimits&) const = default;
};

/// decisions: ready when the lower 95 % bound reaches the limit, otherwise not yet known; never "not ready".
enum class Readiness { notYetKnown, ready };

struct SubjectResult {
    AskedKind kind = AskedKind::sign;
    std::string subject;                   ///< empty: all of the kind together
    YesNoTable table;                      ///< judged answers only
    std::int64_t notJudgedThere = 0;       ///< "could not be judged" although it was there, and could be seen
    std::int64_t notJudgedAbsent = 0;
    std::int64_t open = 0, openRight = 0;  ///< where nobody can tell, and how often that was said
    Accuracy judged, strict;
    std::optional<double> yesIsRight, noIsRight;   ///< of `judged`, at the stated prevalence
    std::optional<PairAgreement> withKey;  ///< Cohen's kappa between the answers and the key: yes, no, could not be judged
    bool fewThere = true, fewAbsent = true;
    Readiness readiness = Readiness::notYetKnown;
    /// The fewest further answers, all right, after which the lower bound reaches the limit; 0 once it does. Nothing beyond 1000.
    std::optional<std::int64_t> yesToGo, noToGo;
};

/// What was there against what was said.
struct Confusion {
    AskedKind kind = AskedKind::look;
    std::vector<std::string> truths;       ///< rows: of looks the sign, of hosts the kind of tree, of signs the sign there or not
    std::vector<std::string> right;        ///< of each row the answer that is right
    std::vector<std::string> given;        ///< columns; the last is "could not be judged"
    AnswerTable counts;
    [[nodiscard]] std::int64_t total() const;
};

/// A pair of things that are taken for one another, worst first.
struct Confused {
    AskedKind kind = AskedKind::look;
    std::string truth, given;
    std::int64_t times = 0, of = 0;        ///< of all answers where `truth` was true
};

/// A run of answers in the order in which they were given.
struct CurvePoint {
    std::int64_t from = 0, to = 0;         ///< numbers of the answers, from 1
    Share right;
};

struct PracticeResults {
    std::int64_t answers = 0, right = 0;
    std::vector<SubjectResult> subjects;   ///< questions of yes or no, all of a kind first, then each subject
    std::vector<SubjectResult> groups;     ///< the gall lines together: what a "nothing seen" rests on
    std::vector<Confusion> confusions;
    std::vector<Confused> confused;
    std::optional<Calibration> calibration;
    std::vector<CurvePoint> curve;
};

struct ResultsRequest {
    double prevalence = 0.1;               ///< 0 to 1: the share that is there, at which predictive values are stated
    ReadyLimits limits;
    std::vector<std::string> gallLines;    ///< ids of the signs that are counted together
};

/// Everything but the curve.
PracticeResults practiceResults(std::span<const Tally> tallies, std::span<const SureTally> sure, const ResultsRequest& request);
/// One subject alone, or (empty) all of the kind; nothing where nobody was asked.
std::optional<SubjectResult> resultOf(std::span<const Tally> tallies, AskedKind kind, const std::string& subject, const ResultsRequest& request);

/// `right` in the order in which the answers were given, in runs of `length` (> 0); the last may be shorter.
std::vector<CurvePoint> learningCurve(const std::vector<bool>& right, std::int64_t length);

/// The fewest further answers, all right, after which the lower 95 % bound of hits/total reaches `limit` (0 to below 1). Nothing beyond 1000.
std::optional<std::int64_t> answersToGo(std::int64_t hits, std::int64_t total, double limit);

/// What to practise next.
struct NextPractice {
    AskedKind kind = AskedKind::sign;
    std::string subject;
    std::string takenFor;                  ///< what it is taken for, where that is known
    double wrong = 0;                      ///< share of wrong and unjudged answers, 0 to 1
    std::int64_t answers = 0;
};
/// Subjects by their share of wrong answers, the worst first, at most `most`: those with at least one wrong. Few answers are pulled
/// towards one half (one right and one wrong added: Laplace's rule), so that a single slip does not lead the list.
std::vector<NextPractice> practiseNext(std::span<const Tally> tallies, std::size_t most);

} // namespace cupule
