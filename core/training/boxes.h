// Which topic comes next: those that were confused come back soon, those that are known after ever longer.
//
// The rule is that of Leitner's boxes (S. Leitner 1972, So lernt man lernen, Herder, Freiburg; from memory): every topic begins in box 1; a
// right answer moves it one box on, a wrong one back to box 1, wherever it was. A topic of box n is due 3, 6, 12, 24 or 48 cases after it was
// last met (intervals that double: common practice, no source; counted in cases, since an evening has no days). "Could not be judged" is
// wrong unless the key says so. Where one sign was taken for another, both go back.
//
// The difficulty that follows the answers is a staircase (H. Levitt 1971, J. Acoust. Soc. Am. 49:467-477; from memory): one step up after three
// cases in a row without a wrong answer, one down after a case with one.

#pragma once

#include <cstdint>
#include <span>
#include <vector>

#include "core/training/case.h"
#include "core/training/results.h"

namespace cupule {

inline constexpr int boxCount = 5;
inline constexpr int dueAfterCases[boxCount] = {3, 6, 12, 24, 48};

struct Box {
    Topic topic;
    int box = 1;                           ///< 1 to 5
    int lastCase = 0;                      ///< number of the case in which it was last met; 0 = never
    int right = 0, wrong = 0;
    bool operator==(const Box&) const = default;
};

/// A case that was answered.
struct GivenCase {
    int number = 1;
    int step = 1;
    std::vector<AnsweredItem> items;
};

/// The topic by which an answer is counted.
Topic topicOf(const AnsweredItem& item);

/// In the order of `topics`; answers about other topics are passed over.
std::vector<Box> boxesAfter(std::span<const Topic> topics, std::span<const GivenCase> given);
/// All topics, the next one first: those that are due, the longest overdue for their box first, then the others; what was never met counts
/// as just due. Equal ones in an order that is drawn from the seed and the number of the case.
std::vector<Topic> dueOrder(std::span<const Box> boxes, int nextNumber, std::uint64_t seed);
/// Of a series: every topic once in each round, in an order drawn from the seed; the answers play no part.
std::vector<Topic> seriesOrder(std::span<const Topic> topics, int nextNumber, std::uint64_t seed);

/// The step for the next case, from `first` on.
int stepAfter(std::span<const GivenCase> given, int first);

/// What cases must be about to practise what was confused (results.h): each subject, and of looks also what it was taken for. Which character
/// decides is practised on the trees. In order, each once.
std::vector<Topic> topicsToPractise(std::span<const NextPractice> next);

} // namespace cupule
