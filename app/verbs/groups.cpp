#include "app/verbs/verbs.h"

namespace cupule::app {

void StoreVerb::declareStore(CLI::App& options)
{
    options.add_option("STORE", m_store, "the store, a file")->required();
}

const std::vector<VerbGroup>& verbGroups()
{
    static const std::vector<VerbGroup> groups{
        {"To begin", {makeProfileMake, makeProfileShow, makeProfileChange, makeNew, makeKeyVerb}},
        {"A day's work",
         {makeImport, makeEnter, makePhoto, makeCorrect, makeStrike, makeCheck, makeHandIn, makeUndo, makeRedo,
          makeSeason, makePosition}},
        {"Trees", {makeTreeMark, makeTreeMerge, makeTreeSplit}},
        {"Looking things up", {makeList, makeShow}},
        {"Files that travel", {makeMerge, makeVouch, makeWithdrawKey}},
        {"Deciding", {makeQueue, makeDecide, makeUndecide, makeReopen, makeTold, makeNotice}},
        {"Deciding many at once",
         {makeAuditMake, makeAuditList, makeAuditNext, makeAuditAnswer, makeAuditTakeBack, makeAuditFinish, makeAuditShow,
          makeAuditGiveUp, makeAuditUndo}},
        {"Samples and permission",
         {makeSampleOpen, makeSampleLine, makeSampleClose, makeSampleShow, makeLabels, makeCustodyRecord,
          makeLeaveAdd, makeLeaveWithdraw, makeRegimeAdd, makeProgramme}},
        {"People", {makePersonAdd, makePersonChange, makePersonErase}},
        {"Looking after a store", {makeProve, makeHealth, makeBackUp, makeAccount}},
        {"Practice", {makePractice, makeSkill, makeFigures}}};
    return groups;
}

} // namespace cupule::app
