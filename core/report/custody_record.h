// The custody record of one sample as a paper that goes with it: what was taken and by whose leave, every line, what is
// missing and what is broken, room for the next change of hands, cautions. Leaves stand by their reference, givers are
// not named; the place is the coarse square.
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
    CivilDate made;
    std::int64_t journalLines = 0;
    bool journalWhole = true;
};

Document custodyRecord(const CustodyRecordData& data, const Pack& pack, const Words& words);

} // namespace cupule::report
