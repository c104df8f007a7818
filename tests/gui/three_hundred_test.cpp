// An evening at the review desk: three hundred records decided with the keys that a person presses.

#include "tests/gui/review_scene.h"

#include "ui/review/review_view.h"

using namespace cupule;
using cupule::test::Desk;
using cupule::test::EveningStore;
using cupule::test::person;

namespace {

constexpr int records = 300;

enum class Say { accept, giveBack, reject };

/// By the number in the label, so that it can be told again afterwards.
Say sayOf(const std::string& label)
{
    const int number = std::stoi(label.substr(2));
    return number % 10 == 3 ? Say::giveBack : number % 25 == 4 ? Say::reject : Say::accept;
}

void decideByKeys(Desk& desk, Say say)
{
    desk.key(Qt::Key_Return, Qt::ControlModifier);
    desk.key(say == Say::accept ? Qt::Key_1 : say == Say::giveBack ? Qt::Key_2 : Qt::Key_3);
    if (say != Say::accept)
        desk.key(Qt::Key_1);
    if (say == Say::giveBack) {
        desk.key(Qt::Key_Tab);
        desk.type("Which leaf?");
    }
    desk.key(Qt::Key_Return, Qt::ControlModifier);
}

} // namespace

TEST_CASE("three hundred records are decided in an evening, by keys alone", "[gui][review]")
{
    const EveningStore store(records);
    Desk ruth(person("RA", "Ruth Abara"), {Role::verifier}, store.path);
    ruth.key(Qt::Key_4, Qt::ControlModifier);
    auto* view = ruth.window.findChild<ui::ReviewView*>();
    REQUIRE(view != nullptr);
    REQUIRE(view->desk().count() == records);
    const int before = ruth.presses;
    std::vector<Uid> seen;
    for (int i = 0; i < records; ++i) {
        REQUIRE(view->desk().page().has_value());
        const VisitPage& page = view->desk().page()->visit;
        const Uid visit = page.visit.id;
        CAPTURE(i, page.tree->label);
        REQUIRE(std::find(seen.begin(), seen.end(), visit) == seen.end());   // each stands there once
        seen.push_back(visit);
        decideByKeys(ruth, sayOf(page.tree->label));
        REQUIRE(view->desk().count() == records - i - 1);
    }
    CHECK_FALSE(view->desk().page().has_value());
    int differ = 0;
    for (const Uid& visit : seen) {
        const VisitPage page = visitPage(ruth.session(), visit).value();
        const Say said = sayOf(page.tree->label);
        const RecordState wanted = said == Say::accept ? RecordState::accepted : said == Say::giveBack ? RecordState::returned : RecordState::rejected;
        differ += page.state == wanted ? 0 : 1;
    }
    CHECK(differ == 0);
    CAPTURE(ruth.presses - before);
    CHECK(ruth.presses - before < 5 * records);   // three for a plain yes
}
