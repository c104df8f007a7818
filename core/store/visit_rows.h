// How a visit stands in its row. Inside the store room only.

#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "core/record/names.h"
#include "core/store/store_core.h"
#include "core/store/visits.h"

namespace cupule {

/// Columns in the order in which readVisitRow takes them, with tree, site and observer joined.
#define VISIT_ROW_COLUMNS \
    "visit.uid, tree.uid, person.uid, visit.day, visit.second, tree.label, site.name, person.code, " \
    "visit.state, visit.correction_waits, visit.one_of_two, visit.conflict, visit.struck, visit.head, visit.decided, visit.imported, " \
    "visit.host, visit.positive, visit.earlier, visit.none_seen, visit.worth, visit.summary, visit.signs, visit.stops, visit.asks, " \
    "visit.queue_rank, visit.queue_code"
inline constexpr int visitRowColumns = 27;
#define VISIT_ROW_FROM \
    " FROM visit LEFT JOIN tree ON tree.id = visit.tree LEFT JOIN site ON site.id = tree.site " \
    "LEFT JOIN person ON person.id = visit.observer "

VisitRow readVisitRow(const Query& q);
std::vector<VisitRow> readVisitRows(Query& q);
void bindShown(Query& q, const VisitShown& shown);
/// Sign ids with blanks between them, as the row keeps them.
std::string joinedSigns(const std::vector<std::string>& signs);

/// The canonical text of an event: state and flags after it, and why.
std::string eventContent(const Uid& visit, const VisitStanding& standing, std::string_view kind, std::string_view reason);

} // namespace cupule
