// The custody record of one sample as a paper that goes with it: what was taken and by whose leave, every line, what is
// missing and what is broken, room for the next change of hands, cautions. Leaves stand by their reference, givers are
// not named. The place stands with its datum and uncertainty: the paper travels in a bag of its own to those who must know
// where it was cut.
//
// Sources: ASTM D4840 (possession recorded at every stage), ISO/IEC 17025 clause 7.4, and the pack's cautions.

#pragma once

#include "core/report/document.h"
#include "core/report/label.h"
#include "core/rules/custody.h"

namespace cupule::report {

struct CustodyRecordData {
    SampleFacts facts;
    SampleStatus status;
    RecordState visitState = RecordState::draft;
    std::vector<Regime> regimes; ///< in force at the place
    SampleLimits limits;         ///< hours of the programme, as they are in force
    bool limitsProposed = true;  ///< nobody in the programme has set them
    std::string mayMove;         ///< who may move a sample, in the programme's words; empty = nobody has set it
    std::string tell;            ///< whom a find is told; empty = nobody has set it
    CivilDate made;
    std::int64_t journalLines = 0;
    bool journalWhole = true;
};

Document custodyRecord(const CustodyRecordData& data, const Pack& pack, const Words& words);

} // namespace cupule::report
