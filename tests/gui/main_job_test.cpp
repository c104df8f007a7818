// The main job in the window with real key presses: a visit entered and handed in, decided by somebody else, a sample
// opened and closed. What the store holds afterwards is read back through the use cases.

#include "tests/gui/at_desk.h"

#include <algorithm>
#include <fstream>

using namespace cupule;
using cupule::test::Desk;
using cupule::test::FindStore;
using cupule::test::person;

namespace {

std::string state(const Visit& visit, const char* character)
{
    for (const CharacterSeen& seen : visit.characters)
        if (seen.character == character)
            return seen.state;
    return {};
}

} // namespace

TEST_CASE("a visit is entered by keyboard alone and handed in", "[gui][main-job]")
{
    Desk desk;
    desk.key(Qt::Key_N, Qt::ControlModifier);
    CHECK(desk.focusName() == QStringLiteral("treeLabel"));
    desk.type("T-01");
    desk.key(Qt::Key_Return);
    CHECK(desk.only().tree.value().label == "T-01");
    desk.type("SO 5487 4391");
    desk.key(Qt::Key_Return);
    REQUIRE(desk.only().visit.position.has_value());
    CHECK(desk.only().visit.position->squareMetres == 10);
    desk.key(Qt::Key_Tab); // with whom
    desk.key(Qt::Key_Tab); // leaf arrangement
    desk.key(Qt::Key_1);
    CHECK(state(desk.only().visit, "K01") == "alternate");
    desk.key(Qt::Key_1); // the focus has gone on to the leaf type
    CHECK(state(desk.only().visit, "K02") == "simple");
    CHECK(desk.focusName() == QStringLiteral("long-slender-catkins")); // what decides most in June
    desk.key(Qt::Key_1);
    CHECK(desk.only().host.answer == HostAnswer::host);

    desk.key(Qt::Key_Down, Qt::ControlModifier);
    CHECK(desk.focusName() == QStringLiteral("minutes"));
    CHECK(!desk.button("nothingSeen").isEnabled()); // effort first
    desk.type("12");
    desk.key(Qt::Key_Tab);
    desk.type("1");
    desk.key(Qt::Key_Tab);
    desk.type("60");
    desk.key(Qt::Key_Tab);
    desk.type("6");
    desk.key(Qt::Key_Tab);
    desk.type("g"); // a letter answers and goes on
    desk.type("f");
    desk.type(" ");
    desk.key(Qt::Key_Tab);
    desk.type(" ");
    const Effort effort = desk.only().visit.effort;
    CHECK(effort.minutes == 12);
    CHECK(effort.trees == 1);
    CHECK(effort.crownPercent == 60);
    CHECK(effort.heightMetres == 6.0);
    CHECK(effort.light == "good");
    CHECK(effort.leaves == "open");
    CHECK(effort.binoculars == true);
    CHECK(effort.innerCrown == true);
    desk.key(Qt::Key_F7);
    CHECK(desk.only().nothing);
    CHECK(desk.focusName() == QStringLiteral("clothes")); // before leaving
    desk.key(Qt::Key_Up, Qt::ControlModifier);
    CHECK(desk.focusName() == QStringLiteral("checklist"));
    desk.key(Qt::Key_Down, Qt::ControlModifier);
    desk.type("ccnn");
    desk.type("1140");
    desk.key(Qt::Key_Return);
    const Hygiene hygiene = desk.only().visit.hygiene;
    CHECK(hygiene.clothes == Confirmed::done);
    CHECK(hygiene.boots == Confirmed::done);
    CHECK(hygiene.vehicle == Confirmed::noneUsed);
    CHECK(hygiene.tools == Confirmed::noneUsed);
    CHECK(hygiene.leftSite.value().text() == "11:40");

    desk.inDialog([](QDialog& dialog) { QTest::keyClick(&dialog, Qt::Key_Return); });
    desk.key(Qt::Key_Return, Qt::ControlModifier);
    CHECK(desk.only().state == RecordState::submitted);
}

TEST_CASE("a plain visit to a known tree takes the keystrokes that the README says, everything true", "[gui][main-job]")
{
    Desk desk;
    desk.key(Qt::Key_N, Qt::ControlModifier);
    desk.type("T-14");
    desk.key(Qt::Key_Return);
    desk.type("SO 5487 4391");
    desk.key(Qt::Key_Return);
    desk.key(Qt::Key_Tab);
    desk.key(Qt::Key_Tab);
    for (int character = 0; character < 3; ++character)
        desk.key(Qt::Key_1);
    REQUIRE(desk.only().host.answer == HostAnswer::host);

    const int before = desk.presses; // the tree is known now, and a chestnut
    desk.key(Qt::Key_N, Qt::ControlModifier);
    desk.type("T-14");
    desk.key(Qt::Key_Return);
    CHECK(desk.focusName() == QStringLiteral("minutes"));
    for (const char* number : {"12", "1", "60", "6"}) {
        desk.type(number);
        desk.key(Qt::Key_Tab);
    }
    desk.type("gf ");
    desk.key(Qt::Key_Tab);
    desk.type(" ");
    desk.key(Qt::Key_F7);
    desk.type("ccnn");
    const int presses = desk.presses - before;
    const auto lines = desk.visits();
    REQUIRE(lines.size() == 2);
    const VisitPage page = visitPage(desk.session(), lines[1].id).value();
    CHECK(page.nothing);
    CHECK(page.visit.tree == visitPage(desk.session(), lines[0].id).value().visit.tree);
    CHECK(page.visit.effort.minutes == 12);
    CHECK(page.visit.effort.leaves == "open");
    CHECK(page.visit.effort.innerCrown == true);
    CHECK(page.visit.hygiene.tools == Confirmed::noneUsed);
    for (const Finding& finding : page.findings)
        CHECK(finding.severity != Severity::stop);
    CAPTURE(presses);
    CHECK(presses <= 30); // what a volunteer's desk aims at
    std::ifstream readme("README.md");
    std::string said((std::istreambuf_iterator<char>(readme)), std::istreambuf_iterator<char>());
    std::replace(said.begin(), said.end(), '\n', ' ');
    CHECK(said.find(std::to_string(presses) + " keystrokes") != std::string::npos);
}

TEST_CASE("nobody decides in the window on what they saw themselves", "[gui][main-job]")
{
    const FindStore store;
    Desk maud(person("MH", "Maud Harrow"), {Role::volunteer, Role::verifier}, store.path);
    maud.key(Qt::Key_4, Qt::ControlModifier);
    CHECK(maud.window.currentPlace()->id() == QStringLiteral("review"));
    CHECK(!maud.button("decide").isVisible());
    maud.key(Qt::Key_Return, Qt::ControlModifier);
    maud.key(Qt::Key_1);
    CHECK(visitPage(maud.session(), store.visit).value().state == RecordState::submitted);
}

TEST_CASE("two verifiers accept a first find by two-step keys, the second without seeing the first", "[gui][main-job]")
{
    const FindStore store;
    {
        Desk ruth(person("RA", "Ruth Abara"), {Role::verifier}, store.path);
        ruth.key(Qt::Key_4, Qt::ControlModifier);
        ruth.key(Qt::Key_1); // a single key decides nothing
        CHECK(reviewPage(ruth.session(), store.visit).value().decisions.empty());
        ruth.key(Qt::Key_Return, Qt::ControlModifier);
        ruth.key(Qt::Key_1);
        CHECK(ruth.focusName() == QStringLiteral("reasons"));
        ruth.key(Qt::Key_1);
        ruth.key(Qt::Key_Return, Qt::ControlModifier);
        const VisitPage page = visitPage(ruth.session(), store.visit).value();
        CHECK(page.state == RecordState::submitted);
        CHECK(page.oneOfTwo);
    }
    Desk jonah(person("JS", "Jonah Stell"), {Role::verifier}, store.path);
    jonah.key(Qt::Key_4, Qt::ControlModifier);
    CHECK(reviewPage(jonah.session(), store.visit).value().decisions.empty());
    jonah.key(Qt::Key_Return, Qt::ControlModifier);
    jonah.key(Qt::Key_1);
    jonah.key(Qt::Key_Return, Qt::ControlModifier);
    CHECK(visitPage(jonah.session(), store.visit).value().state == RecordState::accepted);
}

TEST_CASE("a record is returned with a reason and a remark", "[gui][main-job]")
{
    const FindStore store;
    Desk ruth(person("RA", "Ruth Abara"), {Role::verifier}, store.path);
    ruth.key(Qt::Key_4, Qt::ControlModifier);
    ruth.key(Qt::Key_Return, Qt::ControlModifier);
    ruth.key(Qt::Key_2);
    ruth.key(Qt::Key_Return, Qt::ControlModifier); // without a reason nothing is kept
    CHECK(visitPage(ruth.session(), store.visit).value().state == RecordState::submitted);
    ruth.key(Qt::Key_1);
    ruth.key(Qt::Key_Tab);
    ruth.type("Which leaf?");
    ruth.key(Qt::Key_Return, Qt::ControlModifier);
    CHECK(visitPage(ruth.session(), store.visit).value().state == RecordState::returned);
    const auto decisions = reviewPage(ruth.session(), store.visit).value().decisions;
    REQUIRE(decisions.size() == 1);
    CHECK(decisions[0].remark == "Which leaf?");
    CHECK(decisions[0].reasons.size() == 1);

    Desk maud(store.folder.filePath(QStringLiteral("maud")), store.path);   // she reads what is asked of her
    maud.key(Qt::Key_J, Qt::ControlModifier);
    const auto* decided = maud.window.findChild<QLabel*>(QStringLiteral("visitDecided"));
    REQUIRE(decided != nullptr);
    CHECK(decided->isVisible());
    CHECK(decided->text().contains(QStringLiteral("Which leaf?")));
    CHECK(decided->text().contains(QStringLiteral("Ruth Abara")));
    CHECK(decided->text().contains(QStringLiteral("Answer it")));
    auto& cameBack = maud.button("cameBack");
    CHECK(cameBack.isVisible());
    CHECK(cameBack.text() == QStringLiteral("1 visit came back"));
    const Visit asked = visitPage(maud.session(), store.visit).value().visit;
    Visit answered = asked;
    answered.note = "third leaf from the tip";
    REQUIRE(changeVisit(maud.session(), asked, answered, "answer"));
    Q_EMIT maud.window.bench().storeChanged();
    CHECK_FALSE(cameBack.isVisible());
}

TEST_CASE("a sample is refused its closing with everything missing, then closes", "[gui][main-job]")
{
    const FindStore store;
    Desk ines(person("IC", "Ines Calloway"), {Role::sampleHandler}, store.path);
    ines.key(Qt::Key_3, Qt::ControlModifier);
    CHECK(ines.window.currentPlace()->id() == QStringLiteral("samples"));
    ines.key(Qt::Key_Return, Qt::ControlModifier | Qt::ShiftModifier);
    CHECK(samplePage(ines.session(), store.sample).value().status.state == SampleState::collected);
    CHECK(samplePage(ines.session(), store.sample).value().status.missing.size() > 3);

    const auto line = [&](std::initializer_list<std::pair<const char*, const char*>> fields) {
        for (const auto& [name, words] : fields)
            ines.fill(name, words);
        ines.key(Qt::Key_Return, Qt::ControlModifier);
    };
    line({{"out-date", "11.6"}, {"out-time", "1124"}, {"line-from", "MH"}, {"line-place", "T-03"}, {"line-pieces", "3"}});
    line({{"out-date", "11.6"}, {"out-time", "1126"}, {"line-bag", "B-1041"}});
    line({{"out-date", "11.6"}, {"out-time", "1129"}, {"line-bag", "B-1042"}, {"line-seal", "008813"}});
    line({{"out-date", "11.6"}, {"out-time", "1131"}, {"line-confirmed", "y"}, {"line-clothes", "c"}, {"line-boots", "c"},
          {"line-vehicle", "n"}, {"line-tools", "c"}});
    const SampleStatus sealed = samplePage(ines.session(), store.sample).value().status;
    CHECK(sealed.state == SampleState::sealed);
    line({{"out-date", "11.6"}, {"out-time", "1705"}, {"in-date", "11.6"}, {"in-time", "1705"}, {"line-from", "MH"},
          {"line-to", "IC"}, {"line-seal", "008813"}, {"line-sealWhole", "w"}, {"line-remark", "from the paper sheet"}});
    line({{"in-date", "12.6"}, {"in-time", "0910"}, {"line-condition", "sealed, dry"}, {"line-from", "IC"}, {"line-to", "laboratory"}, {"line-seal", "008813"},
          {"line-sealWhole", "w"}, {"line-pieces", "3"}, {"line-remark", "from the laboratory's letter"}});
    line({{"out-date", "15.6"}, {"out-time", "1500"}, {"line-reportNumber", "TL-118"}, {"line-finding", "f"}, {"line-signedBy", "B. Orme"},
          {"line-method", "cut open"}, {"line-limits", "three galls only"}});
    line({{"out-date", "16.6"}, {"out-time", "1100"}, {"line-disposal", "d"}, {"line-method", "autoclave"}, {"line-order", "PH-7"},
          {"line-signedBy", "B. Orme"}});
    const SampleStatus before = samplePage(ines.session(), store.sample).value().status;
    for (const Finding& finding : before.missing)
        UNSCOPED_INFO(finding.code);
    for (const Finding& finding : before.breaks)
        UNSCOPED_INFO(finding.code);
    CHECK(before.canCloseWhole);
    ines.key(Qt::Key_Return, Qt::ControlModifier | Qt::ShiftModifier);
    CHECK(samplePage(ines.session(), store.sample).value().status.state == SampleState::closed);
}
