#include <filesystem>
#include <fstream>
#include <iterator>

#include "core/store/backup.h"
#include "core/store/search.h"
#include "core/store/store_core.h"
#include "core/store/undo_log.h"
#include "tests/store/store_fixture.h"
#include "tests/support/catch.h"

namespace cupule {

namespace {

namespace fs = std::filesystem;
using test::Bench;
using test::need;

/// Whether a text stands anywhere in the bytes of a file.
bool liesIn(const std::string& path, const std::string& text)
{
    std::ifstream file(path, std::ios::binary);
    const std::string bytes{std::istreambuf_iterator<char>(file), {}};
    return bytes.find(text) != std::string::npos;
}

bool liesAnywhere(const std::string& folder, const std::string& text)
{
    for (const auto& entry : fs::recursive_directory_iterator(folder))
        if (entry.is_regular_file() && liesIn(entry.path().string(), text))
            return true;
    return false;
}

} // namespace

TEST_CASE("a person's name stands in no content, revision or journal line", "[store]")
{
    Bench bench;
    bench.create();
    const auto s = makeSeason(bench);
    auto& db = bench.store->core().db;
    CHECK(db.number("SELECT count(*) FROM person WHERE content LIKE '%Marl%'") == 0);
    CHECK(db.number("SELECT count(*) FROM revision WHERE content LIKE '%Marl%' OR content LIKE '%tharn.example%'") == 0);
    CHECK(db.number("SELECT count(*) FROM leave WHERE content LIKE '%Orrin%'") == 0);
    CHECK(db.number("SELECT count(*) FROM personal WHERE payload LIKE '%Marl%'") == 1);
    CHECK(need(bench.store->people().find(s.observer.id))->name == "Marl Hollin");
}

TEST_CASE("equal names have different commitments", "[store]")
{
    Bench bench;
    bench.create();
    Person one = bench.person("AA", "Same Name");
    Person two = bench.person("BB", "Same Name");
    two.contact = one.contact;
    bench.change([&](Change& c) {
        need(bench.store->people().save(c, one));
        need(bench.store->people().save(c, two));
    });
    CHECK(bench.store->core().db.number("SELECT count(DISTINCT commitment) FROM personal") == 2);
    CHECK(bench.store->core().db.number("SELECT count(DISTINCT salt) FROM personal") == 2);
}

TEST_CASE("erased personal data lies nowhere any more and the chain stays provable", "[store]")
{
    Bench bench;
    bench.create();
    auto s = makeSeason(bench);
    Person renamed = s.observer;
    renamed.name = "Marl Hollin-Quillfeather";
    bench.change([&](Change& c) {
        need(bench.store->people().save(c, renamed));
        need(bench.store->undoLog().push(c, "person", {{"person", s.observer.id, "", "Quillfeather"}}));
    });
    const std::string backups = bench.folder + "/backups";
    need(backUpStore(*bench.store, backups));
    CHECK(liesAnywhere(bench.folder, "Quillfeather"));
    bench.change([&](Change& c) {
        need(bench.store->people().erase(c, s.observer.id, "letter 12"));
        need(bench.store->leaves().eraseGiver(c, s.leave.id, "letter 13"));
    });
    need(bench.store->people().sweep());
    need(eraseInBackups(*bench.store, backups));

    for (const char* gone : {"Quillfeather", "Marl Hollin", "MH@tharn.example", "Orrin Pell", "quillfeather"})
        CHECK_FALSE(liesAnywhere(bench.folder, gone));
    const auto person = need(bench.store->people().find(s.observer.id));
    CHECK(person->name.empty());
    CHECK(person->contact.empty());
    CHECK(person->code == "MH");
    CHECK(need(bench.store->leaves().find(s.leave.id))->giverName.empty());
    CHECK(need(bench.store->search().find("Hollin", 10)).empty());
    CHECK(need(bench.store->search().find("MH", 10)).size() == 1);
    CHECK_FALSE(need(bench.store->undoLog().nextUndo()));
    CHECK(liesAnywhere(bench.folder, "VE@tharn.example"));   // others stay

    const auto proof = need(bench.reopen().journal().prove());
    CAPTURE(proof.brokenWhy, proof.brokenNumber);
    CHECK(proof.whole);
    CHECK(proof.erased == 3);
    for (const Backup& backup : need(backupsOf(*bench.store, backups))) {
        const auto copy = need(Store::open(backup.path, bench.request(), bench.services()));
        CHECK(need(copy->people().find(s.observer.id))->name.empty());
        CHECK(need(copy->search().find("Quillfeather", 10)).empty());
    }
}

TEST_CASE("an erased person can be given a name again", "[store]")
{
    Bench bench;
    bench.create();
    auto s = makeSeason(bench);
    bench.change([&](Change& c) { need(bench.store->people().erase(c, s.observer.id, "letter 12")); });
    bench.change([&](Change& c) { need(bench.store->people().save(c, s.observer)); });
    CHECK(need(bench.store->people().find(s.observer.id)) == s.observer);
    CHECK(need(bench.store->search().find("Hollin", 10)).size() == 1);
    CHECK(need(bench.store->journal().prove()).whole);
}

TEST_CASE("nobody can be erased who is not there", "[store]")
{
    Bench bench;
    bench.create();
    Change change = need(bench.store->begin({}));
    CHECK(bench.store->people().erase(change, bench.ids.make(), "x").error().code == "store.reference");
    CHECK(bench.store->leaves().eraseGiver(change, bench.ids.make(), "x").error().code == "store.reference");
}

} // namespace cupule
