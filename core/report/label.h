// The labels of a sample: what stands on the inner bag, on the outer bag and on the papers that go with it. How a label
// comes onto paper is ui/print's matter.
//
//  - The place on a bag is the coarse square: an exact place goes into no hands that do not need it. The label of the papers,
//    which travel in a bag of their own to those who must know where it was cut, carries it.
//  - What is not known yet is left as room for a pencil, so that labels may be printed before the day; a label of a reserved
//    number has nothing but the number.
//
// Sources: the label of a sample as custody guides have it; common practice, no source, but for the identity of the item
// (ISO/IEC 17025, 7.4.2) and the hazard line (pack).

#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/base/civil.h"
#include "core/position/position.h"
#include "core/protocol/pack.h"
#include "core/record/leave.h"
#include "core/record/sample.h"
#include "core/report/words.h"

namespace cupule::report {

/// What the labels and the custody record of one sample are made from (core/task/sample_papers.h gathers it).
struct SampleFacts {
    std::string storeName;
    bool demonstration = false;
    Sample sample;
    std::vector<CustodyLine> lines; ///< all, in order
    std::string tree;
    std::string square;    ///< the coarse square of the tree, or empty
    std::optional<Position> place; ///< of the tree, for the papers
    std::string collector; ///< code
    std::string collectorName;
    std::string answers;   ///< who answers for samples, as the programme has it; empty = not set
    CivilDate visitDate;
    std::vector<Leave> leaves; ///< those that the sample names
};

enum class LabelKind { innerBag, outerBag, document };

/// A value is words, room for a pencil and boxes to tick, one after the other.
struct LabelPart {
    enum class Kind { words, blank, box };
    Kind kind = Kind::words;
    std::string words;      ///< words; box: what stands behind it
    double millimetres = 0; ///< blank: how wide
};

struct LabelRow {
    std::string name;
    std::vector<LabelPart> parts;
};

struct Label {
    LabelKind kind = LabelKind::innerBag;
    std::string title;  ///< "Inner bag, part 1 of 1"
    std::string bag;    ///< number of the bag; empty = room for a pencil; never on a document
    std::string number; ///< of the sample with its check character; the machine-readable code says the same
    std::string where;  ///< record and square; of a reserved number the name of what a pencil writes there
    bool reserved = false; ///< nothing but the number is known: behind `where` is room for a pencil
    std::vector<LabelRow> rows;
    std::string hazard;
    std::string ask; ///< who answers questions
    std::string demonstration; ///< empty = a real store
};

/// The most rows that a label can have; a set-up of sheets must have room for them.
inline constexpr int mostLabelRows = 6;

/// Inner bag, outer bag, document. `ask`: whom to ask; empty = as the facts have it, else the store's name. It must not be a
/// home address.
std::vector<Label> sampleLabels(const SampleFacts& facts, const std::string& ask, const Pack& pack, const Words& words);
/// The same for a number that is reserved and has no sample yet. Of the facts only store, demonstration and answers count.
std::vector<Label> reservedLabels(const std::string& number, const SampleFacts& facts, const std::string& ask, const Pack& pack,
                                  const Words& words);

} // namespace cupule::report
