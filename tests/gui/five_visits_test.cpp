// Five visits of five kinds, from an empty Day to handed in by keys alone: what the store holds afterwards field by field,
// its journal included; then all of it undone and done again, also after a restart.

#include "tests/gui/at_desk.h"

#include <algorithm>
#include <map>

#include <QFile>

#include "core/record/json.h"
#include "core/store/journal.h"
#include "tests/gui/dated_photo.h"
#include "ui/daysheet/photo_list.h"
#include "ui/daysheet/photos_page.h"
#include "ui/widgets/message_strip.h"

using namespace cupule;
using cupule::test::Desk;

namespace {

constexpr int patience = 20000; // ms, for a job on another thread; never waited for in full

/// A store of Maud's on this device, with the leaves that a sample needs.
struct MaudsStore {
    QTemporaryDir folder;
    QString profile = folder.filePath(QStringLiteral("maud"));
    QString path = folder.filePath(QStringLiteral("vale.cupule"));

    MaudsStore()
    {
        SystemClock clock;
        SystemRandom random;
        auto maud = makeProfile(profile.toStdString(), test::person("MH", "Maud Harrow"), {Role::volunteer, Role::sampleHandler}, clock, random);
        REQUIRE(maud);
        maud->sampleBlock = "TV";
        REQUIRE(saveProfile(*maud));
        const auto session = Session::create(path.toStdString(), test::tharnVale(), *maud, clock, random).value();
        session->setToday(*CivilDate::make(2026, 6, 20));
        test::allowSamples(*session);
    }
};

void begin(Desk& desk, const char* label, const char* time, const char* position)
{
    desk.key(Qt::Key_N, Qt::ControlModifier);
    desk.type(label);
    desk.key(Qt::Key_Return);
    REQUIRE(desk.focusName() == QStringLiteral("position"));
    desk.key(Qt::Key_Backtab, Qt::ShiftModifier);
    desk.type(time);
    desk.key(Qt::Key_Tab);
    desk.type(position);
    desk.key(Qt::Key_Return);
    desk.key(Qt::Key_Tab); // with whom
    desk.key(Qt::Key_Tab); // leaf arrangement
}

void effort(Desk& desk, std::initializer_list<const char*> numbers)
{
    desk.key(Qt::Key_Down, Qt::ControlModifier);
    REQUIRE(desk.focusName() == QStringLiteral("minutes"));
    for (const char* number : numbers) {
        desk.type(number);
        desk.key(Qt::Key_Tab);
    }
    desk.type("gf "); // light, leaves, binoculars
    desk.key(Qt::Key_Tab);
    desk.type(" "); // lower and inner crown
}

/// Clothes and boots clean, no vehicle, no tools; then when the place was left.
void leaving(Desk& desk, const char* time)
{
    REQUIRE(desk.focusName() == QStringLiteral("clothes"));
    desk.type("ccnn");
    desk.type(time);
    desk.key(Qt::Key_Return);
}

void plainVisit(Desk& desk)
{
    begin(desk, "T-01", "0910", "SO 5487 4391");
    desk.type("111");
    effort(desk, {"12", "1", "60", "6"});
    desk.key(Qt::Key_F7);
    leaving(desk, "0930");
}

/// Into the list of signs: the first line is seen, measured and counted, every other gall line is answered "not seen".
void galls(Desk& desk, const char* size, const char* count)
{
    desk.key(Qt::Key_F7);
    desk.key(Qt::Key_Up, Qt::ControlModifier);
    REQUIRE(desk.focusName() == QStringLiteral("checklist"));
    desk.key(Qt::Key_Home);
    desk.key(Qt::Key_1);
    desk.key(Qt::Key_Return);
    desk.type(size);
    desk.key(Qt::Key_Return);
    desk.key(Qt::Key_Up);
    desk.type("c");
    REQUIRE(desk.focusName() == QStringLiteral("signCount"));
    desk.type(count);
    desk.key(Qt::Key_Tab);
}

void toLeaving(Desk& desk)
{
    desk.window.findChild<QWidget*>(QStringLiteral("checklist"))->setFocus(Qt::TabFocusReason);
    desk.key(Qt::Key_Down, Qt::ControlModifier);
}

void gallVisit(Desk& desk)
{
    begin(desk, "T-02", "1020", "SO 5490 4391");
    desk.type("111");
    effort(desk, {"20", "2", "80", "5"});
    galls(desk, "14", "7");
    const auto* notice = desk.window.findChild<ui::MessageStrip*>(QStringLiteral("standingNotice"));
    CHECK(notice->isVisible());
    CHECK(notice->what().startsWith(QStringLiteral("Leave it on the tree")));
    toLeaving(desk);
    leaving(desk, "1045");
}

void otherTree(Desk& desk)
{
    begin(desk, "T-03", "1050", "SO 5493 4391");
    desk.type("2"); // leaves in pairs
    effort(desk, {"3", "1", "90", "3"});
    toLeaving(desk);
    leaving(desk, "1055");
}

void unreachable(Desk& desk)
{
    begin(desk, "T-04", "1100", "SO 5496 4391");
    desk.type("3"); // cannot be judged
    desk.type("5");
    effort(desk, {"5", "1", "10", "2"});
    desk.key(Qt::Key_Down, Qt::ControlModifier);
    REQUIRE(desk.focusName() == QStringLiteral("checklist"));
    desk.key(Qt::Key_Home);
    for (int line = 0; line < 30; ++line)
        desk.key(Qt::Key_3);
    toLeaving(desk);
    leaving(desk, "1110");
}

/// Photos go to their page; what is proposed for a visit is taken there.
void takeIn(Desk& desk, const QStringList& files)
{
    REQUIRE(QTest::qWaitFor([&] { return !desk.window.bench().jobs().busy(); }, patience));
    desk.answers->files = files;
    desk.key(Qt::Key_O, Qt::ControlModifier | Qt::ShiftModifier);
    auto* page = desk.window.findChild<ui::PhotosPage*>();
    REQUIRE(page != nullptr);
    REQUIRE(QTest::qWaitFor([&] { return !page->desk().isBusy() && page->desk().count(ui::PhotoRow::Kind::proposed) == files.size(); }, patience));
    page->list()->setFocus(Qt::TabFocusReason);
    desk.key(Qt::Key_A); // all that is proposed
    desk.key(Qt::Key_Escape);
}

QStringList photos(Desk& desk)
{
    QStringList paths;
    for (const QTime& time : {QTime(10, 22), QTime(11, 32)}) {
        const QString path = desk.window.file(QStringLiteral("img-%1.jpg").arg(time.hour()));
        QFile file(path);
        REQUIRE(file.open(QIODevice::WriteOnly));
        file.write(test::datedJpeg(test::patches(static_cast<unsigned>(time.hour()), {640, 480}), QDateTime(QDate(2026, 6, 20), time)));
        paths << path;
    }
    return paths;
}

/// By Tab from the end of the page, as somebody without a mouse.
void sampleVisit(Desk& desk)
{
    begin(desk, "T-05", "1130", "SO 5499 4391");
    desk.type("111");
    effort(desk, {"25", "1", "70", "6"});
    galls(desk, "9.5", "3");
    toLeaving(desk);
    leaving(desk, "1200");
    takeIn(desk, photos(desk));
    for (int stop = 0; stop < 60 && desk.focusName() != QStringLiteral("takeSample"); ++stop)
        desk.key(Qt::Key_Tab);
    REQUIRE(desk.focusName() == QStringLiteral("takeSample"));
    desk.inDialog([](QDialog& dialog) {
        auto* pieces = dialog.findChild<QWidget*>(QStringLiteral("samplePieces"));
        pieces->setFocus(Qt::TabFocusReason);
        QTest::keyClick(pieces, Qt::Key_3);
        QTest::keyClick(pieces, Qt::Key_Return);
    });
    desk.key(Qt::Key_Space);
    desk.takeKeysBack();
    CHECK(desk.window.currentPlace()->id() == QStringLiteral("samples"));
    desk.key(Qt::Key_1, Qt::ControlModifier);
}

std::vector<VisitPage> pages(Desk& desk)
{
    std::vector<VisitPage> all;
    for (const VisitLine& line : desk.visits())
        all.push_back(visitPage(desk.session(), line.id).value());
    return all;
}

std::map<std::string, std::string> contents(Desk& desk)
{
    std::map<std::string, std::string> all;
    for (const VisitPage& page : pages(desk)) {
        all[page.visit.id.text()] = toJson(page.visit);
        if (page.tree)
            all[page.tree->id.text()] = toJson(*page.tree);
    }
    return all;
}

const Observation* seen(const Visit& visit)
{
    const auto at = std::find_if(visit.observations.begin(), visit.observations.end(), [](const Observation& o) { return o.answer == Answer::seen; });
    return at == visit.observations.end() ? nullptr : &*at;
}

void checkShared(const VisitPage& page, const char* label, const char* time, const char* left)
{
    INFO(label);
    CHECK(page.tree.value().label == label);
    CHECK(page.visit.date.text() == "2026-06-20");
    CHECK(page.visit.time.value().text() == time);
    CHECK(page.observer.code == "MH");
    CHECK(page.companions.empty());
    CHECK(page.visit.position.value().squareMetres == 10);
    CHECK(page.visit.position->obtained == "typed");
    CHECK(page.tree->position.value() == *page.visit.position);
    CHECK(page.visit.effort.light == "good");
    CHECK(page.visit.effort.leaves == "open");
    CHECK(page.visit.effort.binoculars == true);
    CHECK(page.visit.effort.innerCrown == true);
    CHECK(page.visit.hygiene.clothes == Confirmed::done);
    CHECK(page.visit.hygiene.boots == Confirmed::done);
    CHECK(page.visit.hygiene.vehicle == Confirmed::noneUsed);
    CHECK(page.visit.hygiene.tools == Confirmed::noneUsed);
    CHECK(page.visit.hygiene.leftSite.value().text() == left);
    for (const Finding& finding : page.findings)
        CHECK((finding.severity == Severity::stop ? finding.code : std::string()) == "");
}

void checkEffort(const Effort& effort, int minutes, int trees, int crown, double height)
{
    CHECK(effort.minutes == minutes);
    CHECK(effort.trees == trees);
    CHECK(effort.crownPercent == crown);
    CHECK(effort.heightMetres == height);
}

void checkFind(const VisitPage& page, double size, int count)
{
    CHECK(page.host.answer == HostAnswer::host);
    CHECK(page.positive.positive);
    REQUIRE(seen(page.visit) != nullptr);
    CHECK(seen(page.visit)->measure == size);
    CHECK(!seen(page.visit)->measureError);
    CHECK(seen(page.visit)->count == count);
    CHECK(seen(page.visit)->countClass.empty());
    CHECK(page.photos.size() == 1);
}

void checkFields(Desk& desk)
{
    const auto all = pages(desk);
    REQUIRE(all.size() == 5);
    checkShared(all[0], "T-01", "09:10", "09:30");
    checkEffort(all[0].visit.effort, 12, 1, 60, 6);
    CHECK(all[0].nothing);
    CHECK(all[0].host.answer == HostAnswer::host);
    CHECK(all[0].worth.letter != '0');
    checkShared(all[1], "T-02", "10:20", "10:45");
    checkEffort(all[1].visit.effort, 20, 2, 80, 5);
    checkFind(all[1], 14, 7);
    checkShared(all[2], "T-03", "10:50", "10:55");
    checkEffort(all[2].visit.effort, 3, 1, 90, 3);
    CHECK(all[2].host.answer == HostAnswer::notHost);
    CHECK(all[2].visit.observations.empty());
    REQUIRE(all[2].visit.characters.size() == 1);
    CHECK(all[2].visit.characters[0].state == "opposite");
    checkShared(all[3], "T-04", "11:00", "11:10");
    checkEffort(all[3].visit.effort, 5, 1, 10, 2);
    CHECK(all[3].host.answer == HostAnswer::cannotTell);
    REQUIRE(all[3].visit.characters.size() == 2);
    for (const CharacterSeen& character : all[3].visit.characters)
        CHECK((character.notJudged && character.state.empty()));
    CHECK(all[3].visit.observations.size() > 3);
    for (const Observation& observation : all[3].visit.observations)
        CHECK(observation.answer == Answer::notJudged);
    CHECK(!all[3].nothing);
    checkShared(all[4], "T-05", "11:30", "12:00");
    checkEffort(all[4].visit.effort, 25, 1, 70, 6);
    checkFind(all[4], 9.5, 3);
    REQUIRE(all[4].samples.size() == 1);
    CHECK(all[4].samples[0].pieces == 3);
    CHECK(all[4].samples[0].number.starts_with("26-TV-0001"));
    CHECK(!all[4].samples[0].leaveOwner.isNull());
    CHECK(!all[4].samples[0].leaveAuthority.isNull());
}

std::vector<std::string> kindsOf(Desk& desk, const Uid& noun)
{
    std::vector<std::string> kinds;
    for (const JournalLine& line : std::vector<JournalLine>(desk.session().store().journal().ofEntity(noun).value())) {
        CHECK(line.author == desk.session().me());
        kinds.push_back(line.kind);
    }
    return kinds;
}

void checkJournal(Desk& desk)
{
    for (const VisitPage& page : pages(desk)) {
        INFO(page.tree.value().label);
        CHECK(page.state == RecordState::submitted);
        const auto kinds = kindsOf(desk, page.visit.id);
        CHECK(std::count(kinds.begin(), kinds.end(), "submitted") == 1);
        REQUIRE(!kinds.empty());
        CHECK(kinds.back() == "submitted");
        CHECK(!kindsOf(desk, page.tree->id).empty());
        for (const PhotoNote& photo : page.photos)
            CHECK(!kindsOf(desk, photo.id).empty());
        for (const Sample& sample : page.samples)
            CHECK(!kindsOf(desk, sample.id).empty());
    }
    const Proof proof = proveJournal(desk.session(), {}).value();
    CHECK(proof.whole);
}

void allBack(Desk& desk)
{
    int steps = 0;
    for (; steps < 400 && !undoState(desk.session()).undo.empty(); ++steps)
        desk.key(Qt::Key_Z, Qt::ControlModifier);
    CHECK(steps > 50);
    CHECK(undoState(desk.session()).undo.empty());
    CHECK(desk.visits().empty());
}

void allAgain(Desk& desk)
{
    for (int steps = 0; steps < 400 && !undoState(desk.session()).redo.empty(); ++steps)
        desk.key(Qt::Key_Z, Qt::ControlModifier | Qt::ShiftModifier);
    CHECK(undoState(desk.session()).redo.empty());
}

} // namespace

TEST_CASE("five visits of five kinds go in by keys, are undone and done again, also after a restart, and are handed in", "[gui][main-job][five]")
{
    const MaudsStore store;
    std::map<std::string, std::string> entered;
    {
        Desk desk(store.profile, store.path);
        CHECK(desk.visits().empty());
        plainVisit(desk);
        gallVisit(desk);
        otherTree(desk);
        unreachable(desk);
        sampleVisit(desk);
        checkFields(desk);
        entered = contents(desk);
        allBack(desk);
        allAgain(desk);
        CHECK(contents(desk) == entered);
    }
    Desk desk(store.profile, store.path);
    CHECK(contents(desk) == entered);
    allBack(desk);
    allAgain(desk);
    CHECK(contents(desk) == entered);
    checkFields(desk);
    desk.inDialog([](QDialog& dialog) { QTest::keyClick(&dialog, Qt::Key_Return); });
    desk.key(Qt::Key_Return, Qt::ControlModifier);
    checkFields(desk);
    checkJournal(desk);
    CHECK(contents(desk) == entered);
}
