// Samples and their custody: opening one, adding lines, closing, laboratory results.

#pragma once

#include <string>
#include <vector>

#include "core/record/leave.h"
#include "core/rules/custody.h"
#include "core/task/session.h"

namespace cupule {

struct SampleLine {
    Uid id;
    std::string number, treeLabel;
    SampleState state = SampleState::collected;
    int missing = 0, breaks = 0;
};

struct SamplePage {
    Sample sample;
    std::vector<CustodyLine> lines;         ///< all, in order, also those corrected later
    SampleStatus status;
    std::string treeLabel, siteName;
    CivilDate visitDate;
    RecordState visitState = RecordState::draft;
    std::vector<Leave> leaves;              ///< the two that it names
    std::vector<Regime> regimes;            ///< in force at the place; shown at disposal
    SampleLimits limits;                    ///< of the programme, as they are in force
    bool limitsProposed = true;             ///< nobody in the programme has set them
    std::string mayMove;                    ///< who may move a sample, as the programme has it; empty = nobody has set it
};

Result<std::vector<SampleLine>> sampleLines(Session& session);
Result<SamplePage> samplePage(Session& session, const Uid& sample);
/// By number as typed (case and dashes do not matter). Of several with the same number the one after `shown`, so that asking again comes to
/// each. Fault "sample.unknown".
Result<Uid> sampleByNumber(Session& session, const std::string& number, const Uid& shown = {});

/// Opens a sample on a visit with the number that it names, which must have been reserved for a label, else with the next of
/// the block in the profile (core/task/sample_numbers.h, with the faults of both). Leaves that are not named are looked for.
/// What keeps it from being opened is in `why`; then there is no sample.
/// `alreadyTaken`: the material lies there without leave; it is recorded, with the break, so that the authority can be told.
/// Roles sampleHandler, volunteer.
struct SampleOpening {
    std::optional<Sample> sample;
    std::vector<Finding> why;
};
Result<SampleOpening> openSample(Session& session, const Sample& wanted, bool alreadyTaken = false);
/// Appends a line (number and written are set here). Refused with "custody.correction" where `corrects` names no line,
/// with "custody.closed" where the sample is closed and the line corrects nothing. A result "found" reopens a decided
/// visit. Roles sampleHandler, volunteer; for receipt, result and disposal also office.
Result<SamplePage> addCustodyLine(Session& session, const CustodyLine& line);

struct Closing {
    bool closed = false;
    SamplePage page;                        ///< page.status.missing says what keeps it open
};
/// Whole, or with a break (reason and second person, who is somebody else). Never an error when refused: `closed` is false.
Result<Closing> closeSample(Session& session, const Uid& sample, bool withBreak, const std::string& reason,
                            const std::string& secondPerson);

/// New, or changed where the id is known (can be undone). Roles volunteer, trainer, sampleHandler, office.
/// Faults "leave.scopes" (none), "leave.dates".
Result<Leave> addLeave(Session& session, const Leave& leave);
/// Role office. Faults "regime.issuer" (empty), "regime.dates", "regime.dry-galls".
Result<Regime> addRegime(Session& session, const Regime& regime);
Result<std::vector<Leave>> allLeaves(Session& session);
Result<std::vector<Regime>> allRegimes(Session& session);

} // namespace cupule
