// Practice in words: questions, their options, why an answer is right, topics, steps of difficulty, readiness. Qt Core only.

#pragma once

#include <QString>

#include "core/task/skill.h"
#include "core/training/case.h"
#include "core/training/results.h"

namespace cupule::ui {

/// The question: "Is this a chestnut?"
QString askedText(const AskedItem& item, const Pack& pack);
/// One of its options as it is chosen: "Yes", "Leaf margin: regular teeth", "could not be judged".
QString optionText(const AskedItem& item, const std::string& option, const Pack& pack);
/// What stands behind the key: "Leaf arrangement and leaf type decide it." Empty where nothing does.
QString becauseText(const AskedItem& item, const Pack& pack);
/// "sweet chestnut told from other trees", "Gall on the shoot tip", "what is written down".
QString topicText(const Topic& topic, const Pack& pack);
/// A subject of results, short: the kind of tree, the sign; of other kinds what is asked.
QString subjectText(AskedKind kind, const std::string& subject, const Pack& pack);
/// What was there, or was said, as a row or column of a table: an id, "yes", "none", "not-judged".
QString saidText(AskedKind kind, const std::string& said, const Pack& pack);
/// The kind of question, for headings: "Is it a chestnut", "Is the sign there".
QString askedKindText(AskedKind kind);
/// "Step 2: galls of 9 to 20 mm, 1 other cause, half of the cases have a gall".
QString difficultyText(const DifficultyStep& step);
/// "Ready" or "not yet known".
QString readinessText(Readiness readiness);
/// A code of custodySteps().
QString custodyStepText(const std::string& code);

/// "finds 17 of 20 (64 to 95 %), says no rightly 19 of 20 (76 to 99 %); few answers". The ranges hold 95 of 100.
QString skillText(const ToldSign& sign);

} // namespace cupule::ui
