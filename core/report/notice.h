// The notice of a suspected find, for the plant-health authority: one page with what a record should hold, as far as the store
// has it. What it has not is said, not left out. It goes by hand or by post of the person who must tell; nothing here sends it.
//
// Sources: elements of a pest record after ISPM 8 (FAO, 1998 list, from memory) and ISPM 6 (FAO, 2018, from memory); ISPM 27's list of
// what a diagnosis records (second-hand). The status of a place and any measures are the authority's to say.

#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/record/decision.h"
#include "core/record/leave.h"
#include "core/record/photo.h"
#include "core/record/sample.h"
#include "core/record/visit.h"
#include "core/report/document.h"
#include "core/report/words.h"
#include "core/rules/host.h"
#include "core/rules/season.h"

namespace cupule::report {

struct NoticeSign {
    Observation observation;
    SeasonState season = SeasonState::expected;
};

struct NoticeSample {
    std::string number;
    SampleState state = SampleState::collected;
    std::string reportNumber; ///< empty = no report yet
    std::string finding;      ///< what the laboratory found, in its words
};

struct NoticeDecision {
    Decision decision;
    std::string by; ///< code and name, or code
};

struct NoticeEarlier {
    CivilDate date;
    std::string summary; ///< stable code of VisitLine
    RecordState state = RecordState::draft;
};

struct NoticeData {
    std::string storeName;
    bool demonstration = false;
    CivilDate made;
    std::string madeBy;
    std::string tell; ///< whom the programme tells, in its words; empty = nobody has set it
    bool names = true; ///< people by name, else by code alone

    Visit visit;
    RecordState state = RecordState::draft;
    bool oneOfTwo = false;
    bool newGround = false;
    std::string tree, site;
    std::optional<Position> place;
    HostVerdict host;
    std::vector<NoticeSign> signs; ///< those that were seen
    std::string observer;          ///< code and name, or code
    std::vector<std::string> companions;
    std::vector<PhotoNote> photos;
    std::vector<NoticeSample> samples;
    std::vector<NoticeDecision> decisions; ///< those that may be seen
    std::vector<NoticeEarlier> earlier;    ///< other visits to the tree, newest first
    std::optional<double> nearestFindMetres;
    std::string nearestFindTree;
    std::vector<Regime> regimes; ///< in force there that day
    std::vector<Leave> leaves;   ///< in force there that day
    std::optional<Told> told;
};

Document notice(const NoticeData& data, const Pack& pack, const Words& words);

} // namespace cupule::report
