// What a screen may show of exact places and of people. Hiding protects a screen, nothing more: the store itself is not encrypted.
//
//  - The hidden mode (Session::setHidden) is for visitors: every page that core hands out is without exact places, people's names, names
//    of sites (the name of a wood is an exact place) and free text, and nothing can be written meanwhile ("session.hidden").
//  - Otherwise everybody sees the whole of their own work, and the region's records wholly only as a verifier or as the office; others see
//    the square and the code.

#pragma once

#include <vector>

#include "core/task/day.h"
#include "core/task/samples.h"
#include "core/task/surroundings.h"
#include "core/task/trees.h"

namespace cupule {

struct Sight {
    bool places = true;                     ///< exact; else the square that "new ground" goes by
    bool people = true;                     ///< names; else codes alone
    [[nodiscard]] bool whole() const { return places && people; }
};

/// Of the pages of one's own work.
Sight ownSight(const Session& session);
/// Of the region's records: by role.
Sight reviewSight(const Session& session);

/// The square that holds it, with that square's uncertainty; to a tenth of a degree where no grid reaches.
Position coarsePosition(Session& session, const Position& position);
std::optional<Position> coarsePosition(Session& session, const std::optional<Position>& position);

void hide(const Sight& sight, Person& person);
void hide(const Sight& sight, VisitLine& line);
void hide(const Sight& sight, std::vector<VisitLine>& lines);
void hide(const Sight& sight, std::vector<HistoryLine>& history);
void hide(Session& session, const Sight& sight, Tree& tree);
void hide(const Sight& sight, Site& site);
void hide(Session& session, const Sight& sight, PhotoNote& photo);
void hide(Session& session, const Sight& sight, VisitPage& page);
void hide(Session& session, const Sight& sight, TreePage& page);
void hide(const Sight& sight, SamplePage& page);
void hide(const Sight& sight, std::vector<TreeLine>& lines);
/// Neighbours, visits and photos would tell the place by what lies around it: only the square is left.
void hide(Session& session, const Sight& sight, Surroundings& around);

} // namespace cupule
