// Sentences for every code that core hands out: what the window shows and what the command line prints.
//
//  - Each function answers for its whole family; a code without a sentence gives an empty text, and
//    tests/gui/words_test.cpp proves that no code of core is without one.
//  - Short and exact: "This position is 4.2 km from the photo's." Numbers in the user's locale, with units.
//  - Qt Core only, so that a program without a window can use it.

#pragma once

#include <optional>
#include <string>

#include <QString>
#include <QStringList>

#include "core/base/result.h"
#include "core/protocol/pack.h"
#include "core/protocol/pack_reader.h"
#include "core/record/decision.h"
#include "core/record/leave.h"
#include "core/record/person.h"
#include "core/record/sample.h"
#include "core/record/visit.h"
#include "core/rules/finding.h"
#include "core/rules/host.h"
#include "core/rules/season.h"

namespace cupule::ui {

// ---- checks (words_findings.cpp, words_custody.cpp)

/// One sentence, or two: what is wrong, and what to do where that is not plain. `pack` names signs and
/// characters.
QString findingText(const Finding& finding, const Pack* pack = nullptr);
/// "stop", "ask", "note".
QString severityWord(Severity severity);
/// A field path as people call the field: "observations/S02/measure" is "size of gall on a leaf midrib".
QString fieldWords(const std::string& path, const Pack* pack = nullptr);

// ---- faults (words_faults.cpp)

/// What happened and where, what was kept, what to do; each may be empty except the first.
struct FaultWords {
    QString what, where, kept, toDo;
    /// All of them, one after the other.
    [[nodiscard]] QString all() const;
};
FaultWords faultWords(const Fault& fault);
QString faultText(const Fault& fault);
/// What is wrong in a protocol pack, with its path.
QString packFaultText(const PackFault& fault);
/// A kind of the position list ("odd-digit-count", "null-island"), error or warning.
QString positionKindText(const std::string& kind);
/// "± 7 m, the middle of a square of 10 m; OSGB36 to WGS 84 (6), good to 2 m".
QString positionSureText(const Position& position);

// ---- taking files in (words_import.cpp)

/// A kind of the import list ("wrong-field-count"), the fault of a whole file, or a question about one ("date-order").
QString importKindText(const std::string& kind);
/// Why a row, point or photo was set aside, or doubted and kept: kind, cause and suggestion of ImportProblem in words.
QString importProblemText(const std::string& kind, const std::string& cause, const std::string& suggestion, bool kept);
/// A note about a file, "code:argument".
QString importNoteText(const std::string& note);

// ---- host and season (words_trade.cpp)

/// With the evidence: "Is a chestnut (sweet chestnut): teeth with points (18) and long slender catkins." "Is not a chestnut,
/// because of: leaves opposite." "Cannot tell yet. Agrees with a chestnut: ... Lacking: ..."
QString hostText(const HostVerdict& verdict, const Pack& pack);
/// Two or three words for lists: "chestnut", "not a chestnut", "not settled".
QString hostWord(HostAnswer answer);
/// A code of HostVerdict::lacking or HostEvidence::why.
QString hostLackingText(const std::string& code);
/// Why this character comes next.
QString nextCharacterText(const NextCharacter& next, const HostVerdict& verdict, const Pack& pack);

/// "expected", "possible", "out of season".
QString seasonWord(SeasonState state);
/// A code of SignSeason::reason.
QString seasonText(const SignSeason& season);
/// "spring 6 days late", "calendar, no spring observed yet".
QString shiftText(std::optional<int> days, bool limited = false);
/// What a letter means: "strong evidence".
QString worthWord(char letter);
/// Why this letter: code of Worth::reason with what is missing.
QString worthText(const Worth& worth, const Pack& pack);
/// What a "nothing seen" is or would be worth as the effort stands, and what each missing part does to it.
QString effortText(const Worth& worth, HostAnswer host, const Pack& pack);

// ---- words of enums and codes (words_names.cpp)

QString stateWord(RecordState state);
QString sampleStateWord(SampleState state);
QString answerWord(Answer answer);
QString confirmedWord(Confirmed value);
QString roleWord(Role role);
QString outcomeWord(Outcome outcome);
/// Name and code, or the code alone where no name is known.
QString personWords(const Person& person);
/// Reasons of the pack as sentences.
QString reasonsText(const std::vector<std::string>& reasons, const Pack& pack);
/// "returned, Ruth Abara (RA), 12 June 2026, 19.52. How long ... ?"
QString decisionText(const Decision& decision, const Person& by, const Pack& pack);
QString custodyKindWord(CustodyKind kind);
QString leaveGiverWord(LeaveGiver giver);
QString leaveScopeWord(LeaveScope scope);
/// "read", "second hand", "judgement", "common practice, no source", "from memory".
QString basisWord(Basis basis);
/// ChainLink::kind.
QString linkWord(const std::string& kind);
/// A code of ChainLink::lacking or of a custody finding: what would close the link.
QString custodyText(const std::string& code);
/// VisitLine::summary.
QString summaryWord(const std::string& code);
/// Why this record stands here in the queue: QueuePlace::code.
QString queueText(const std::string& code);
/// Why this person may not decide: mayNotDecide().
QString mayNotText(const std::string& code);
/// Proof::brokenWhy.
QString proofText(const std::string& why);
/// HealthItem::code and ::advice.
QString healthText(const std::string& code);
QString healthAdviceText(const std::string& code);

} // namespace cupule::ui
