// A store in a temporary folder with a clock that stands still and seeded chance, and small invented records for it.

#pragma once

#include <filesystem>
#include <memory>
#include <stdexcept>
#include <string>

#include "core/store/decisions.h"
#include "core/store/journal.h"
#include "core/store/leaves.h"
#include "core/store/people.h"
#include "core/store/photos.h"
#include "core/store/places.h"
#include "core/store/samples.h"
#include "core/store/store.h"
#include "core/store/visits.h"
#include "tests/support/shared_data.h"

namespace cupule::test {

template <class T>
T need(Result<T> result)
{
    if (!result)
        throw std::runtime_error(result.error().code + " " + result.error().technical);
    if constexpr (!std::is_void_v<T>)
        return std::move(*result);
}

/// Removed at once, not at the end: a program of many trials would fill the disk.
struct OwnFolder {
    std::string path = temporaryFolder();
    OwnFolder() = default;
    OwnFolder(const OwnFolder&) = delete;
    OwnFolder& operator=(const OwnFolder&) = delete;
    ~OwnFolder()
    {
        std::error_code ignored;
        std::filesystem::remove_all(path, ignored);
    }
};

struct Bench {
    FixedClock clock{Instant{1'781'000'000'000, 60}};   // 2026-06-09
    SeededRandom random{42};
    OwnFolder own;
    std::string folder = own.path;
    std::string path = folder + "/day.cupule";
    Uid device = UidMaker(clock, random).make();
    UidMaker ids{clock, random};
    std::unique_ptr<Store> store;

    [[nodiscard]] OpenRequest request() const { return {.device = device, .seen = {}, .waitMilliseconds = 50, .backupFolder = {}}; }
    [[nodiscard]] StoreServices services() { return {clock, random}; }
    Store& create(bool demonstration = false)
    {
        NewStore description;
        description.name = "Tharn Vale";
        description.demonstration = demonstration;
        store = need(Store::create(path, description, request(), services()));
        return *store;
    }
    Store& reopen()
    {
        store.reset();
        store = need(Store::open(path, request(), services()));
        return *store;
    }
    template <class Work>
    void change(Work&& work)
    {
        Change change = need(store->begin({}));
        work(change);
        need(change.commit());
    }

    Person person(const std::string& code, const std::string& name)
    {
        Person person;
        person.id = ids.make();
        person.code = code;
        person.name = name;
        person.contact = code + "@tharn.example";
        return person;
    }
    Site site(const std::string& name)
    {
        Site site;
        site.id = ids.make();
        site.name = name;
        return site;
    }
    Tree tree(const std::string& label, const Uid& site = {}, double latitude = 52, double longitude = -2)
    {
        Tree tree;
        tree.id = ids.make();
        tree.label = label;
        tree.site = site;
        tree.position = Position{};
        tree.position->latitude = latitude;
        tree.position->longitude = longitude;
        tree.position->uncertaintyMetres = 7;
        return tree;
    }
    Visit visit(const Tree& tree, const Person& observer, const char* date, const std::string& note = {})
    {
        Visit visit;
        visit.id = ids.make();
        visit.tree = tree.id;
        visit.observer = observer.id;
        visit.date = need(CivilDate::parse(date));
        visit.note = note;
        return visit;
    }
};

/// One of everything, as a day makes it: `trees[1]` has a submitted visit that was accepted.
struct Season {
    Person observer, verifier;
    Site site;
    std::vector<Tree> trees;
    std::vector<Visit> visits;
    Sample sample;
    Leave leave;
    Regime regime;
    PhotoNote photo;
    Decision decision;
    Uid revision;
};

inline Season makeSeason(Bench& bench)
{
    Season s;
    Store& store = *bench.store;
    s.observer = bench.person("MH", "Marl Hollin");
    s.verifier = bench.person("VE", "Verrin Ede");
    s.site = bench.site("Millbrook Copse");
    s.site.note = "gate by the weir";
    for (const char* label : {"T-1", "T-2", "T-10"})
        s.trees.push_back(bench.tree(label, s.site.id, 52 + 0.01 * static_cast<double>(s.trees.size()), -2));
    s.trees.push_back(bench.tree("Lone oak"));
    for (const Tree& tree : s.trees)
        s.visits.push_back(bench.visit(tree, s.observer, "2026-06-09", "leaves curled near " + tree.label));
    bench.change([&](Change& c) {
        need(store.people().save(c, s.observer));
        need(store.people().save(c, s.verifier));
        need(store.sites().save(c, s.site));
        for (const Tree& tree : s.trees)
            need(store.trees().save(c, tree));
        for (const Visit& visit : s.visits)
            need(store.visits().saveDraft(c, visit, {}));
    });
    bench.change([&](Change& c) {
        for (const Visit& visit : s.visits)
            need(store.visits().leave(c, visit.id));
        VisitShown shown;
        shown.positive = true;
        shown.summary = "gall";
        shown.signs = {"S01", "S02"};
        shown.queueRank = 3;
        s.revision = need(store.visits().revise(c, s.visits[1], shown, "submitted"));
        s.leave.id = bench.ids.make();
        s.leave.giverName = "Orrin Pell";
        s.leave.site = s.site.id;
        s.leave.from = s.visits[0].date;
        s.leave.scopes = {LeaveScope::enter, LeaveScope::sample};
        need(store.leaves().save(c, s.leave));
        s.regime.id = bench.ids.make();
        s.regime.from = s.visits[0].date;
        s.regime.dryGalls = "keep";
        need(store.leaves().save(c, s.regime));
        s.sample.id = bench.ids.make();
        s.sample.number = "26-TV-0147-H";
        s.sample.visit = s.visits[1].id;
        need(store.samples().save(c, s.sample));
        CustodyLine line;
        line.id = bench.ids.make();
        line.sample = s.sample.id;
        line.written = c.at();
        line.bag = "B1";
        need(store.samples().addLine(c, line));
        s.photo.id = bench.ids.make();
        s.photo.visit = s.visits[1].id;
        s.photo.sha256 = hex(sha256("picture"));
        need(store.photos().save(c, s.photo));
    });
    bench.change([&](Change& c) {
        s.decision.id = bench.ids.make();
        s.decision.visit = s.visits[1].id;
        s.decision.revision = s.revision;
        s.decision.by = s.verifier.id;
        s.decision.at = c.at();
        need(store.decisions().add(c, s.decision));
        VisitStanding standing = need(store.visits().row(s.visits[1].id))->standing;
        standing.state = RecordState::accepted;
        standing.decided = s.revision;
        need(store.visits().setStanding(c, s.visits[1].id, standing, "accepted", ""));
        FindPlace find;
        find.date = s.visits[1].date;
        find.latitude = 52.01;
        find.longitude = -2;
        need(store.decisions().setFind(c, s.visits[1].id, find));
        need(store.decisions().add(c, Told{s.visits[1].id, c.at(), "VE", "plant health authority", "R1"}));
    });
    return s;
}

} // namespace cupule::test
