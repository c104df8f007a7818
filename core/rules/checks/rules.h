// Every rule, one to a file named like it. Listed with their codes by register.cpp.

#pragma once

#include <vector>

#include "core/rules/checks.h"

namespace cupule::checks {

void dateMissing(const CheckInput& input, std::vector<Finding>& out);
void dateFuture(const CheckInput& input, std::vector<Finding>& out);
void dateLongAgo(const CheckInput& input, std::vector<Finding>& out);
void observerMissing(const CheckInput& input, std::vector<Finding>& out);
void companionIsObserver(const CheckInput& input, std::vector<Finding>& out);
void treeMissing(const CheckInput& input, std::vector<Finding>& out);
void visitEmpty(const CheckInput& input, std::vector<Finding>& out);
void positionImpossible(const CheckInput& input, std::vector<Finding>& out);
void gallOnOtherTree(const CheckInput& input, std::vector<Finding>& out);
void gallWhich(const CheckInput& input, std::vector<Finding>& out);
void gallEvidence(const CheckInput& input, std::vector<Finding>& out);
void signOnOtherTree(const CheckInput& input, std::vector<Finding>& out);
void laboratoryClaim(const CheckInput& input, std::vector<Finding>& out);
void answerContradicts(const CheckInput& input, std::vector<Finding>& out);
void measureRange(const CheckInput& input, std::vector<Finding>& out);
void measureError(const CheckInput& input, std::vector<Finding>& out);
void gallSize(const CheckInput& input, std::vector<Finding>& out);
void countImpossible(const CheckInput& input, std::vector<Finding>& out);
void characterValue(const CheckInput& input, std::vector<Finding>& out);
void effortRange(const CheckInput& input, std::vector<Finding>& out);
void findFar(const CheckInput& input, std::vector<Finding>& out);
void gallHostOpen(const CheckInput& input, std::vector<Finding>& out);
void hostContradicted(const CheckInput& input, std::vector<Finding>& out);
void hostNotShown(const CheckInput& input, std::vector<Finding>& out);
void seasonQuestion(const CheckInput& input, std::vector<Finding>& out);
void shiftUsed(const CheckInput& input, std::vector<Finding>& out);
void positionMissing(const CheckInput& input, std::vector<Finding>& out);
void positionOffArea(const CheckInput& input, std::vector<Finding>& out);
void positionCoarse(const CheckInput& input, std::vector<Finding>& out);
void positionOutsideSite(const CheckInput& input, std::vector<Finding>& out);
void treeMoved(const CheckInput& input, std::vector<Finding>& out);
void photoTime(const CheckInput& input, std::vector<Finding>& out);
void photoPlace(const CheckInput& input, std::vector<Finding>& out);
void photoShared(const CheckInput& input, std::vector<Finding>& out);
void sameDayTwice(const CheckInput& input, std::vector<Finding>& out);
void distortionAlone(const CheckInput& input, std::vector<Finding>& out);
void signPointsElsewhere(const CheckInput& input, std::vector<Finding>& out);
void nothingIncomplete(const CheckInput& input, std::vector<Finding>& out);
void nothingNoCrown(const CheckInput& input, std::vector<Finding>& out);
void answeredTwice(const CheckInput& input, std::vector<Finding>& out);
void computedClaim(const CheckInput& input, std::vector<Finding>& out);
void groundNotAsked(const CheckInput& input, std::vector<Finding>& out);
void hygieneOpen(const CheckInput& input, std::vector<Finding>& out);
void leftBeforeVisit(const CheckInput& input, std::vector<Finding>& out);
void effortMissing(const CheckInput& input, std::vector<Finding>& out);
void nothingHost(const CheckInput& input, std::vector<Finding>& out);
void nothingAfterFind(const CheckInput& input, std::vector<Finding>& out);
void gallFewPhotos(const CheckInput& input, std::vector<Finding>& out);
void diseaseRoute(const CheckInput& input, std::vector<Finding>& out);
void unknownToPack(const CheckInput& input, std::vector<Finding>& out);

} // namespace cupule::checks
