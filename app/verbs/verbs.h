// Makers of every verb. One file a verb beside this one.

#pragma once

#include "app/verb.h"

namespace cupule::app {

/// A verb that works on a store, named first.
class StoreVerb : public Verb {
protected:
    void declareStore(CLI::App& options);
    std::string m_store;
};

std::unique_ptr<Verb> makeProfileMake();
std::unique_ptr<Verb> makeProfileShow();
std::unique_ptr<Verb> makeProfileChange();
std::unique_ptr<Verb> makeKeyVerb();
std::unique_ptr<Verb> makeMerge();
std::unique_ptr<Verb> makeVouch();
std::unique_ptr<Verb> makeWithdrawKey();
std::unique_ptr<Verb> makeNew();
std::unique_ptr<Verb> makePosition();
std::unique_ptr<Verb> makeSeason();
std::unique_ptr<Verb> makeImport();
std::unique_ptr<Verb> makeEnter();
std::unique_ptr<Verb> makeCorrect();
std::unique_ptr<Verb> makeStrike();
std::unique_ptr<Verb> makePhoto();
std::unique_ptr<Verb> makeCheck();
std::unique_ptr<Verb> makeHandIn();
std::unique_ptr<Verb> makeTreeMark();
std::unique_ptr<Verb> makeTreeMerge();
std::unique_ptr<Verb> makeTreeSplit();
std::unique_ptr<Verb> makeUndo();
std::unique_ptr<Verb> makeRedo();
std::unique_ptr<Verb> makeList();
std::unique_ptr<Verb> makeShow();
std::unique_ptr<Verb> makeQueue();
std::unique_ptr<Verb> makeDecide();
std::unique_ptr<Verb> makeUndecide();
std::unique_ptr<Verb> makeReopen();
std::unique_ptr<Verb> makeTold();
std::unique_ptr<Verb> makeAuditMake();
std::unique_ptr<Verb> makeAuditList();
std::unique_ptr<Verb> makeAuditShow();
std::unique_ptr<Verb> makeAuditNext();
std::unique_ptr<Verb> makeAuditAnswer();
std::unique_ptr<Verb> makeAuditTakeBack();
std::unique_ptr<Verb> makeAuditFinish();
std::unique_ptr<Verb> makeAuditGiveUp();
std::unique_ptr<Verb> makeAuditUndo();
std::unique_ptr<Verb> makeNotice();
std::unique_ptr<Verb> makeSampleOpen();
std::unique_ptr<Verb> makeSampleLine();
std::unique_ptr<Verb> makeSampleClose();
std::unique_ptr<Verb> makeSampleShow();
std::unique_ptr<Verb> makeLabels();
std::unique_ptr<Verb> makeCustodyRecord();
std::unique_ptr<Verb> makeLeaveAdd();
std::unique_ptr<Verb> makeLeaveWithdraw();
std::unique_ptr<Verb> makeRegimeAdd();
std::unique_ptr<Verb> makeProgramme();
std::unique_ptr<Verb> makePersonAdd();
std::unique_ptr<Verb> makePersonChange();
std::unique_ptr<Verb> makePersonErase();
std::unique_ptr<Verb> makeProve();
std::unique_ptr<Verb> makeHealth();
std::unique_ptr<Verb> makeBackUp();
std::unique_ptr<Verb> makeAccount();
std::unique_ptr<Verb> makePractice();
std::unique_ptr<Verb> makeSkill();
std::unique_ptr<Verb> makeFigures();

} // namespace cupule::app
