#include "core/task/sight.h"

#include <cmath>

#include "core/position/geodesic.h"
#include "core/task/ground.h"

namespace cupule {

namespace {

constexpr Sight nothing{false, false};

/// To a tenth of a degree, where no grid reaches.
Position rounded(const Position& position)
{
    Position coarse;
    const auto tenth = [](double degrees) { return std::round(degrees * 10) / 10; };
    coarse.latitude = tenth(position.latitude);
    coarse.longitude = tenth(position.longitude);
    coarse.system = "WGS84";
    coarse.obtained = position.obtained;
    coarse.uncertaintyMetres = distanceMetres(coarse.latitude, coarse.longitude, coarse.latitude + 0.05, coarse.longitude + 0.05);
    return coarse;
}

/// People, laboratories and places of a custody line are typed as free text.
void hideLine(CustodyLine& line)
{
    for (std::string* words : {&line.from, &line.to, &line.place, &line.signedBy, &line.secondPerson, &line.remark, &line.travel, &line.reason,
                               &line.limits, &line.order})
        words->clear();
}

} // namespace

Sight ownSight(const Session& session)
{
    return session.hidden() ? nothing : Sight{};
}

Sight reviewSight(const Session& session)
{
    const Profile& profile = session.profile();
    return session.hidden() || !(profile.is(Role::verifier) || profile.is(Role::office)) ? nothing : Sight{};
}

Position coarsePosition(Session& session, const Position& position)
{
    const std::string square = coarseSquare(session, position);
    const auto projector = session.projector();
    if (square.empty() || !projector)
        return rounded(position);
    auto coarse = (*projector)->read(square);
    if (!coarse || coarse->squareMetres <= 0)
        return rounded(position);
    coarse->obtained = position.obtained;
    return std::move(*coarse);
}

std::optional<Position> coarsePosition(Session& session, const std::optional<Position>& position)
{
    return position ? std::optional(coarsePosition(session, *position)) : std::nullopt;
}

void hide(const Sight& sight, Person& person)
{
    if (sight.people)
        return;
    person.name.clear();
    person.contact.clear();
}

void hide(const Sight& sight, VisitLine& line)
{
    if (!sight.places)
        line.siteName.clear();
}

void hide(const Sight& sight, std::vector<VisitLine>& lines)
{
    for (VisitLine& line : lines)
        hide(sight, line);
}

void hide(const Sight& sight, std::vector<HistoryLine>& history)
{
    for (HistoryLine& line : history) {
        hide(sight, line.line);
        if (!sight.people)
            line.remark.clear();
    }
}

void hide(Session& session, const Sight& sight, Tree& tree)
{
    if (!sight.places)
        tree.position = coarsePosition(session, tree.position);
    if (!sight.whole())
        tree.note.clear();
}

void hide(const Sight& sight, Site& site)
{
    if (!sight.places) {
        site.name.clear();
        site.boundary.clear();
    }
    if (!sight.whole())
        site.note.clear();
}

void hide(Session& session, const Sight& sight, PhotoNote& photo)
{
    if (!sight.places)
        photo.position = coarsePosition(session, photo.position);
    if (!sight.whole()) {
        photo.originalName.clear();
        photo.caption.clear();
    }
}

void hide(Session& session, const Sight& sight, VisitPage& page)
{
    if (sight.whole())
        return;
    page.mayEdit = false;
    if (!sight.places)
        page.visit.position = coarsePosition(session, page.visit.position);
    page.visit.note.clear();
    page.visit.remarks.clear();
    page.visit.leafingFrom.clear();
    for (Observation& observation : page.visit.observations)
        observation.note.clear();
    for (ChecklistLine& line : page.checklist)
        line.observation.note.clear();
    if (page.tree)
        hide(session, sight, *page.tree);
    if (page.site)
        hide(sight, *page.site);
    hide(sight, page.observer);
    for (Person& companion : page.companions)
        hide(sight, companion);
    for (PhotoNote& photo : page.photos)
        hide(session, sight, photo);
    for (Sample& sample : page.samples)
        sample.note.clear();
    hide(sight, page.history);
    if (page.decided) {
        hide(sight, page.decided->by);
        page.decided->decision.remark.clear();
    }
}

void hide(Session& session, const Sight& sight, TreePage& page)
{
    if (sight.whole())
        return;
    hide(session, sight, page.tree);
    for (Tree& entry : page.merged)
        hide(session, sight, entry);
    if (page.site)
        hide(sight, *page.site);
    hide(sight, page.visits);
    for (PhotoNote& photo : page.photos)
        hide(session, sight, photo);
    for (Sample& sample : page.samples)
        sample.note.clear();
    if (sight.places)
        return;
    for (TreePlace& place : page.places)
        place.position = coarsePosition(session, place.position);
}

namespace {

/// Who gave and who held stands in the finding as it was typed.
void hidePeople(std::vector<Finding>& findings)
{
    for (Finding& finding : findings)
        for (Argument& argument : finding.arguments)
            if (argument.name == "giver" || argument.name == "holder" || argument.name == "name")
                argument.value.assign(1, '?');
}

} // namespace

void hide(const Sight& sight, SamplePage& page)
{
    if (sight.whole())
        return;
    page.siteName.clear();
    page.sample.note.clear();
    for (CustodyLine& line : page.lines)
        hideLine(line);
    for (ChainLink& link : page.status.chain)
        link.who.clear();
    for (Leave& leave : page.leaves)
        leave.giverName.clear();
    page.mayMove.clear();
    for (std::vector<Finding>* findings : {&page.status.missing, &page.status.breaks, &page.status.remarks})
        hidePeople(*findings);
}

void hide(const Sight& sight, std::vector<TreeLine>& lines)
{
    if (sight.places)
        return;
    for (TreeLine& line : lines) {
        line.siteName.clear();
        line.position.clear();
        line.uncertaintyMetres = 0;
    }
}

void hide(Session& session, const Sight& sight, Surroundings& around)
{
    if (sight.places)
        return;
    around.neighbours.clear();
    around.visits.clear();
    around.photos.clear();
    around.place = coarsePosition(session, around.place);
    if (around.site)
        hide(sight, *around.site);
}

} // namespace cupule
