// An invented vale with its people, for tests of use cases: one store, a clock that stands still, seeded chance, and a
// profile of its own for everyone. All people and places are invented.

#pragma once

#include <memory>
#include <stdexcept>
#include <string>
#include <vector>

#include "core/base/clock.h"
#include "core/base/random.h"
#include "core/record/photo.h"
#include "core/task/day.h"
#include "core/task/review.h"
#include "core/task/samples.h"
#include "core/task/session.h"

namespace cupule::test {

/// Throws where it was refused, so that what builds on it cannot go on.
void done(const Status& status);

CivilDate day(int year, int month, int dayOfMonth);
/// 2026-06-11 (green galls stand on the leaves) at this hour, UTC.
Instant at(int hour, int minute = 0);

class Vale {
public:
    /// Makes the store as the office, on 11 June 2026.
    explicit Vale(bool demonstration = false);

    Profile profile(const std::string& code, const std::string& name, const std::vector<Role>& roles);
    /// Opens the store as somebody; their profile is made on the first call.
    std::unique_ptr<Session> as(const std::string& code);
    std::unique_ptr<Session> open(const Profile& profile, bool readOnly = false);

    [[nodiscard]] const std::string& folder() const { return m_folder; }
    [[nodiscard]] std::string store() const { return m_folder + "/vale.cupule"; }
    FixedClock clock;
    SeededRandom random{11};

private:
    std::string m_folder;
};

/// A tree at a place of the National Grid, in a site where one is named.
Tree treeAt(Session& session, const std::string& label, const std::string& reference, const std::string& site = {});
/// A position read from a grid reference.
Position placeAt(Session& session, const std::string& reference);

/// Characters that make it a chestnut beyond doubt (host key: simple alternate leaves with pointed teeth, 16 counted on
/// one side, husk with dense spines), and effort and hygiene without gaps.
Visit sound(Visit visit);
/// The same with a fresh gall on a leaf, and a photo that shows it kept in the store.
Visit withGall(Session& session, Visit visit);
/// The same with nothing seen.
Visit withNothing(Session& session, Visit visit);
/// A photo of a visit; `evidence` are ids of signs and characters.
PhotoNote photoOf(Session& session, const Visit& visit, const std::vector<std::string>& evidence);

/// Begins a visit at the tree, fills it with `fill`, leaves it.
template <class Fill>
Visit visitTo(Session& session, const Tree& tree, Fill fill)
{
    const Visit begun = newVisit(session, Uid{}, tree.id).value();
    const Visit filled = fill(session, begun);
    done(changeVisit(session, begun, filled, "filled in"));
    done(leaveVisit(session, begun.id));
    return filled;
}
/// The same, handed in.
template <class Fill>
Visit handedIn(Session& session, const Tree& tree, Fill fill)
{
    const Visit visit = visitTo(session, tree, fill);
    const HandInPage page = handIn(session, visit.date, visit.observer).value();
    for (const auto& line : page.goes)
        if (line.id == visit.id)
            return visit;
    throw std::logic_error("the visit was not handed in");
}

/// A decision on the newest revision.
Decision decision(Session& session, const Uid& visit, Outcome outcome, const std::vector<std::string>& reasons = {});

/// The code of the fault, or empty where there is none.
template <class Value>
std::string faultOf(const Result<Value>& result)
{
    return result ? std::string() : result.error().code;
}

} // namespace cupule::test
