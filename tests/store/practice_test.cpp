#include "core/store/practice.h"

#include <algorithm>

#include "core/store/backup.h"
#include "core/store/health.h"
#include "core/store/store_core.h"
#include "tests/store/store_fixture.h"
#include "tests/support/catch.h"

namespace cupule {

namespace {

using test::Bench;
using test::need;

PracticeSession sessionOf(Bench& bench, const std::string& cohort, bool series = false)
{
    PracticeSession session;
    session.id = bench.ids.make();
    session.cohort = cohort;
    session.plan.protocol = "pack";
    session.plan.region = "MAR";
    session.plan.series = series;
    return session;
}

PracticeAnswer answerOf(const PracticeSession& session, int number, const std::string& given, std::optional<int> sure = 80)
{
    PracticeAnswer answer;
    answer.session = session.id;
    answer.number = number;
    answer.caseId = "case" + std::to_string(number);
    answer.items = {{given, "sign", "S01", sure, "yes"}, {"no", "host", "fagus-sylvatica", 60, "no"}};
    return answer;
}

/// Two people of one cohort, one of another, and one who is not named.
struct Evening {
    Person one, other;
    std::vector<PracticeSession> sessions;
};

Evening evening(Bench& bench)
{
    Evening e{bench.person("AA", "Ada Alder"), bench.person("BB", "Bo Birch"), {}};
    Store& store = *bench.store;
    for (const char* cohort : {"vale", "vale", "hill", "vale"})
        e.sessions.push_back(sessionOf(bench, cohort, true));
    bench.change([&](Change& c) {
        need(store.people().save(c, e.one));
        need(store.people().save(c, e.other));
        need(store.practice().begin(c, e.sessions[0], e.one.id));
        need(store.practice().begin(c, e.sessions[1], e.other.id));
        need(store.practice().begin(c, e.sessions[2], e.one.id));
        need(store.practice().begin(c, e.sessions[3], {}));
    });
    for (const PracticeSession& session : e.sessions)
        for (int number = 1; number <= 3; ++number)
            bench.change([&](Change& c) { need(store.practice().answer(c, answerOf(session, number, number == 3 ? "not-judged" : "yes", number == 3 ? std::nullopt : std::optional(80)))); });
    return e;
}

std::int64_t total(const std::vector<PracticeCount>& counts)
{
    std::int64_t sum = 0;
    for (const PracticeCount& count : counts)
        sum += count.count;
    return sum;
}

} // namespace

TEST_CASE("sessions and answers come back as they were kept", "[store][practice]")
{
    Bench bench;
    bench.create();
    const Evening e = evening(bench);
    bench.reopen();
    auto practice = bench.store->practice();
    const auto found = need(practice.find(e.sessions[1].id));
    REQUIRE(found);
    CHECK(found->session == e.sessions[1]);
    CHECK(found->person == e.other.id);
    CHECK(found->cases == 3);
    CHECK(need(practice.answers(e.sessions[1].id)).at(1) == answerOf(e.sessions[1], 2, "yes"));
    CHECK(need(practice.sessions()).size() == 4);
    CHECK(need(practice.sessions(e.one.id)).size() == 2);
    CHECK(need(practice.cohorts()) == std::vector<std::string>{"hill", "vale"});
    CHECK_FALSE(need(practice.find(bench.ids.make())));
}

TEST_CASE("answers are counted for a person, a cohort, a session or all", "[store][practice]")
{
    Bench bench;
    bench.create();
    const Evening e = evening(bench);
    auto practice = bench.store->practice();
    CHECK(total(need(practice.counts({}))) == 24);
    CHECK(total(need(practice.counts({e.one.id, {}, {}}))) == 12);
    CHECK(total(need(practice.counts({e.one.id, "vale", {}}))) == 6);
    CHECK(total(need(practice.counts({{}, "vale", {}}))) == 18);
    CHECK(total(need(practice.counts({{}, {}, e.sessions[3].id}))) == 6);
    CHECK(need(practice.counts({{}, "nowhere", {}})).empty());
    std::int64_t missed = 0;
    for (const PracticeCount& count : need(practice.counts({{}, "vale", {}})))
        missed += count.given == "not-judged" ? count.count : 0;
    CHECK(missed == 3);
    std::int64_t sure = 0, right = 0;
    for (const PracticeSureCount& count : need(practice.sureCounts({{}, "vale", {}}))) {
        sure += count.total;
        right += count.right;
    }
    CHECK(sure == 15);
    CHECK(right == 15);
    std::vector<std::string> order;
    need(practice.inOrder({e.other.id, {}, {}}, [&](const Uid& person, std::string_view hits) {
        CHECK(person == e.other.id);
        order.emplace_back(hits);
    }));
    CHECK(order == std::vector<std::string>{"11", "11", "01"});
    CHECK(need(practice.series("vale")).size() == 18);
}

TEST_CASE("a case is answered once, in a session that is there", "[store][practice]")
{
    Bench bench;
    bench.create();
    const Evening e = evening(bench);
    Change change = need(bench.store->begin({}));
    CHECK(bench.store->practice().answer(change, answerOf(e.sessions[0], 3, "yes")).error().argument("constraint") == "practice_answer_session_unique");
    CHECK(bench.store->practice().answer(change, answerOf(sessionOf(bench, ""), 1, "yes")).error().code == "store.reference");
    CHECK(bench.store->practice().begin(change, sessionOf(bench, ""), bench.ids.make()).error().code == "store.reference");
    need(change.commit());
    CHECK(need(bench.store->practice().find(e.sessions[0].id))->cases == 3);
    CHECK(need(bench.store->journal().prove()).whole);
}

TEST_CASE("answers given before a kill are there afterwards", "[store][practice]")
{
    Bench bench;
    bench.create();
    const Evening e = evening(bench);
    const std::string copy = bench.folder + "/killed.cupule";
    {
        Change lost = need(bench.store->begin({}));
        need(bench.store->practice().answer(lost, answerOf(e.sessions[0], 4, "yes")));
        // as a kill leaves it: the file and its log, no closing
        std::filesystem::copy_file(bench.path, copy);
        std::filesystem::copy_file(bench.path + "-wal", copy + "-wal");
    }
    const auto after = need(Store::open(copy, bench.request(), bench.services()));
    CHECK(need(after->practice().find(e.sessions[0].id))->cases == 3);
    CHECK(need(after->practice().answers(e.sessions[0].id)).size() == 3);
    CHECK(need(after->journal().prove()).whole);
}

TEST_CASE("answers are in the journal, and a changed one is found", "[store][practice]")
{
    Bench bench;
    bench.create();
    evening(bench);
    CHECK(need(bench.store->journal().prove()).whole);
    CHECK(need(examineStore(*bench.store)).faults.empty());
    auto& db = bench.store->core().db;
    db.run("DROP TRIGGER practice_answer_append_only; UPDATE practice_answer SET content = replace(content, 'S01', 'S02') WHERE id = 2");
    const auto proof = need(bench.store->journal().prove());
    CHECK_FALSE(proof.whole);
    CHECK(proof.brokenNoun == "practice");
    bool told = false;
    for (const auto& fault : need(examineStore(*bench.store)).faults)
        told = told || fault.what.starts_with("practice-item");
    CHECK(told);
}

/// What is kept of the counts, as text.
std::string countsKept(Connection& db)
{
    std::string kept;
    for (const char* sql : {"SELECT session || kind || subject || truth || given || answers FROM practice_count", "SELECT session || ' ' || sure || ' ' || hits || ' ' || answers FROM practice_sure",
                            "SELECT session || ' ' || answer || ' ' || hits FROM practice_hits"}) {
        Query q(db, std::string(sql));
        while (q.step())
            kept += q.text(0) + '\n';
    }
    return kept;
}

TEST_CASE("answers are counted as they come in, and anew where a count is wrong or an older store comes up to date", "[store][practice]")
{
    Bench bench;
    bench.create();
    evening(bench);
    const std::string before = countsKept(bench.store->core().db);
    CHECK(std::count(before.begin(), before.end(), '\n') == 4 * (3 + 2 + 3)); // a session: three kinds of answer, two of how sure, three cases
    CHECK(before.find("yesyes2") != std::string::npos);
    SECTION("a wrong count")
    {
        const char* wrong = GENERATE("UPDATE practice_count SET answers = answers + 1 WHERE session = 2", "DELETE FROM practice_sure WHERE session = 1",
                                     "UPDATE practice_hits SET hits = '00' WHERE answer = 1");
        bench.store->core().db.run(wrong);
        const auto faults = need(examineStore(*bench.store)).faults;
        REQUIRE(faults.size() == 1);
        CHECK(faults[0].what.starts_with("practice-count"));
        need(rebuildComputed(*bench.store));
    }
    SECTION("a store of the version before")
    {
        bench.store->core().db.run("DROP TRIGGER practice_item_counted; DROP TABLE practice_count; DROP TABLE practice_sure; DROP TABLE practice_hits;"
                                   "CREATE INDEX practice_item_count ON practice_item (session, kind, subject, truth, given);"
                                   "CREATE INDEX practice_item_sure ON practice_item (session, sure, truth, given) WHERE sure IS NOT NULL;"
                                   "PRAGMA user_version = 10");
        bench.reopen();
        CHECK(bench.store->opening() == Opening::upgraded);
    }
    CHECK(countsKept(bench.store->core().db) == before);
    CHECK(need(examineStore(*bench.store)).faults.empty());
}

TEST_CASE("nothing of practice can be changed or taken away", "[store][practice]")
{
    Bench bench;
    bench.create();
    evening(bench);
    auto& db = bench.store->core().db;
    for (const char* sql : {"UPDATE practice_answer SET number = 9", "DELETE FROM practice_item", "UPDATE practice_item SET given = 'yes'",
                            "DELETE FROM practice_session", "UPDATE practice_session SET person = 2", "UPDATE practice_session SET cohort = 'x'"}) {
        CAPTURE(sql);
        CHECK_THROWS_AS(db.run(sql), StoreError);
    }
}

TEST_CASE("an erased person's answers stay without saying whose they are, in the backups too", "[store][practice]")
{
    Bench bench;
    bench.create();
    const Evening e = evening(bench);
    SkillNote note;
    note.id = bench.ids.make();
    Skill skill;
    skill.id = note.id;
    skill.person = e.one.id;
    skill.protocol = "pack";
    skill.signs = {{10, 9, 8, "S01", 12}};
    bench.change([&](Change& c) { need(bench.store->practice().addSkill(c, note, skill)); });
    const std::string backup = need(backUpStore(*bench.store, bench.folder + "/kept"));
    bench.change([&](Change& c) { need(bench.store->people().erase(c, e.one.id, "letter of 1 June")); });
    need(eraseInBackups(*bench.store, bench.folder + "/kept"));
    const auto look = [&](Store& store) {
        auto practice = store.practice();
        CHECK(need(practice.sessions(e.one.id)).empty());
        CHECK(total(need(practice.counts({{}, "vale", {}}))) == 18);
        CHECK(need(practice.find(e.sessions[0].id))->person.isNull());
        CHECK(need(practice.skills(e.one.id)).empty());
        CHECK(store.core().db.number("SELECT count(*) FROM personal WHERE payload IS NOT NULL AND noun IN ('practice', 'skill')") == 1);
    };
    look(*bench.store);
    CHECK(need(bench.store->journal().prove()).whole);
    CHECK(need(examineStore(*bench.store)).faults.empty());
    OpenRequest request = bench.request();
    request.readOnly = true;
    look(*need(Store::open(backup, request, bench.services())));
}

TEST_CASE("photo cases and keys come back in the order in which they were made", "[store][practice]")
{
    Bench bench;
    bench.create();
    PhotoCase photoCase;
    photoCase.id = bench.ids.make();
    photoCase.pictures = {std::string(64, 'a')};
    photoCase.questions = {{"sign", {}, "S02"}};
    PhotoKey key;
    key.id = bench.ids.make();
    key.by = bench.ids.make();
    key.photoCase = photoCase.id;
    key.truths = {{"sign", "S02", "yes"}};
    PhotoKey stray = key;
    stray.photoCase = bench.ids.make();
    bench.change([&](Change& c) {
        need(bench.store->practice().addPhotoCase(c, photoCase));
        need(bench.store->practice().addPhotoKey(c, key));
        CHECK(bench.store->practice().addPhotoKey(c, stray).error().code == "store.reference");
    });
    CHECK(need(bench.store->practice().photoCases()) == std::vector{photoCase});
    CHECK(need(bench.store->practice().photoKeys()) == std::vector{key});
    CHECK(need(bench.store->journal().prove()).whole);
}

TEST_CASE("what is told of a person can be withdrawn", "[store][practice]")
{
    Bench bench;
    bench.create();
    const Evening e = evening(bench);
    SkillNote first, second, withdrawal;
    Skill skill;
    skill.person = e.other.id;
    skill.protocol = "pack";
    for (SkillNote* note : {&first, &second, &withdrawal})
        note->id = bench.ids.make();
    withdrawal.withdraws = first.id;
    bench.change([&](Change& c) {
        skill.id = first.id;
        need(bench.store->practice().addSkill(c, first, skill));
        skill.id = second.id;
        need(bench.store->practice().addSkill(c, second, skill));
        need(bench.store->practice().addSkill(c, withdrawal, {}));
        SkillNote stray = withdrawal;
        stray.withdraws = stray.id = bench.ids.make();
        CHECK(bench.store->practice().addSkill(c, stray, {}).error().code == "store.reference");
    });
    const auto skills = need(bench.store->practice().skills(e.other.id));
    REQUIRE(skills.size() == 2);
    CHECK(skills[0].note.id == second.id);
    CHECK_FALSE(skills[0].withdrawn);
    CHECK(skills[0].skill == skill);
    CHECK(skills[1].withdrawn);
    CHECK(need(bench.store->journal().prove()).whole);
    CHECK(need(examineStore(*bench.store)).faults.empty());
}

} // namespace cupule
