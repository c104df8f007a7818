// The record at a glance, in words: what is claimed, the facts it rests on, why it stands where it stands.

#pragma once

#include <QString>

#include "core/task/review.h"

namespace cupule::ui {

QString claimText(const VisitPage& visit, const Pack& pack);
QString factsHtml(const VisitPage& visit, const Pack& pack);
/// Why it stands here, the distance to the nearest accepted find against what spread explains, told or not, samples.
QString standingHtml(const ReviewPage& page, const Pack& pack);
/// Decisions so far, beside each other where two disagree; the tree's past; the observer's past; where the record came from.
QString historyHtml(const ReviewPage& page, const Pack& pack);

} // namespace cupule::ui
