// A tree's page as rows of stories: its past, its characters, its places. No widget here.

#pragma once

#include <functional>
#include <vector>

#include "core/protocol/pack.h"
#include "core/task/trees.h"
#include "ui/trees/story_list.h"

namespace cupule::ui {

/// Newest first, with a heading for each year and a word where years passed without a visit.
std::vector<StoryRow> timeLineRows(const TreePage& page);
std::vector<StoryRow> evidenceRows(const TreePage& page, const Pack& pack);
/// One place a line, oldest first; empty where there is none or only one.
QString placeLines(const TreePage& page, const std::function<QString(const Position&)>& words);

} // namespace cupule::ui
