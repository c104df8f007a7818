#include "core/task/samples.h"

#include <algorithm>
#include <functional>

#include "core/rules/sample_number.h"
#include "core/store/decisions.h"
#include "tests/support/catch.h"
#include "tests/task/vale.h"

using namespace cupule;
using namespace cupule::test;

namespace {

bool holds(const std::vector<Finding>& findings, const std::string& code)
{
    return std::any_of(findings.begin(), findings.end(), [&](const Finding& f) { return f.code == code; });
}

/// The two leaves that a sample needs.
void bothLeaves(Session& session, const Uid& site)
{
    Leave owner;
    owner.giver = LeaveGiver::owner;
    owner.giverName = "Ann Field";
    owner.scopes = {LeaveScope::enter, LeaveScope::sample};
    owner.site = site;
    owner.from = day(2026, 5, 1);
    addLeave(session, owner).value();
    Leave authority;
    authority.giver = LeaveGiver::authority;
    authority.scopes = {LeaveScope::sample, LeaveScope::move};
    authority.from = day(2026, 5, 1);
    authority.to = day(2026, 9, 30);
    addLeave(session, authority).value();
}

Sample wantedOn(const Visit& visit)
{
    Sample sample;
    sample.visit = visit.id;
    sample.plantPart = "leaf with galls";
    sample.pieces = 3;
    sample.condition = "fresh";
    return sample;
}

/// A store with a find, both leaves and an open sample.
struct Taken {
    Vale vale;
    std::unique_ptr<Session> mary = vale.as("MH");
    Tree tree = treeAt(*mary, "W03", "SO 612 094", "Weir Wood");
    Visit visit = handedIn(*mary, tree, withGall);
    Sample sample;

    Taken()
    {
        bothLeaves(*mary, tree.site);
        sample = openSample(*mary, wantedOn(visit)).value().sample.value();
    }
    SamplePage add(CustodyKind kind, int hour, int minute, const std::function<void(CustodyLine&)>& fill = {})
    {
        CustodyLine line;
        line.sample = sample.id;
        line.kind = kind;
        line.out = at(hour, minute);
        if (fill)
            fill(line);
        vale.clock.set(std::max(vale.clock.now(), at(hour, minute), [](const Instant& a, const Instant& b) {
            return a.utcMilliseconds < b.utcMilliseconds;
        }));
        return addCustodyLine(*mary, line).value();
    }
    void sealed()
    {
        add(CustodyKind::cut, 12, 10, [](CustodyLine& l) { l.from = "MH"; l.pieces = 3; });
        add(CustodyKind::innerBag, 12, 15, [](CustodyLine& l) { l.bag = "A12"; });
        add(CustodyKind::outerBag, 12, 18, [](CustodyLine& l) { l.bag = "B77"; l.seal = "S881"; });
        add(CustodyKind::onSite, 12, 25, [](CustodyLine& l) {
            l.confirmed = true;
            l.hygiene = {Confirmed::done, Confirmed::done, Confirmed::noneUsed, Confirmed::done, std::nullopt};
        });
    }
    void received(const std::string& seal = "S881")
    {
        add(CustodyKind::receipt, 15, 0, [&](CustodyLine& l) {
            l.from = "MH";
            l.to = "Tharn laboratory";
            l.in = at(15, 5);
            l.seal = seal;
            l.sealWhole = true;
            l.pieces = 3;
        });
    }
    void examinedAndDisposed(const std::string& finding = "found")
    {
        add(CustodyKind::result, 16, 0, [&](CustodyLine& l) {
            l.finding = finding;
            l.reportNumber = "R 7";
            l.signedBy = "Dr Lane";
            l.method = "dissection";
        });
        add(CustodyKind::disposal, 17, 0, [](CustodyLine& l) {
            l.disposal = "destroyed";
            l.method = "autoclave";
            l.order = "PH 12";
            l.signedBy = "T Reed";
            l.place = "Tharn laboratory";
        });
    }
};

} // namespace

TEST_CASE("a sample needs two leaves in force that day, and the refusal names both", "[task][samples]")
{
    Vale vale;
    const auto mary = vale.as("MH");
    const Tree tree = treeAt(*mary, "W03", "SO 612 094", "Weir Wood");
    const Visit visit = handedIn(*mary, tree, withGall);
    const SampleOpening refused = openSample(*mary, wantedOn(visit)).value();
    CHECK_FALSE(refused.sample.has_value());
    CHECK(holds(refused.why, "custody.leave-owner"));
    CHECK(holds(refused.why, "custody.leave-authority"));
    CHECK(sampleLines(*mary).value().empty());
    bothLeaves(*mary, tree.site);
    const SampleOpening opened = openSample(*mary, wantedOn(visit)).value();
    REQUIRE(opened.sample.has_value());
    CHECK(opened.sample->collector == mary->me());
    CHECK_FALSE(opened.sample->leaveOwner.isNull());
    CHECK_FALSE(opened.sample->leaveAuthority.isNull());
}

TEST_CASE("sample numbers run on in the device's block, with an ISO 7064 check", "[task][samples]")
{
    Taken taken;
    const SampleNumber first = readSampleNumber(taken.sample.number).value();
    CHECK(first.year == 26);
    CHECK(first.block == "TV");
    const Sample second = openSample(*taken.mary, wantedOn(taken.visit)).value().sample.value();
    CHECK(readSampleNumber(second.number).value().running > first.running);
    CHECK(sampleByNumber(*taken.mary, "26tv0001" + std::string(1, first.check)).value() == taken.sample.id);
    CHECK(faultOf(sampleByNumber(*taken.mary, "26-TV-0001-0")) == "sample-number.check");
    Profile without = taken.vale.profile("JB", "John Brook", {Role::volunteer});
    without.sampleBlock.clear();
    const auto john = taken.vale.open(without);
    CHECK(faultOf(openSample(*john, wantedOn(taken.visit))) == "sample.no-block");
}

TEST_CASE("no sample is opened on a tree that is ruled out", "[task][samples]")
{
    Vale vale;
    const auto mary = vale.as("MH");
    const Tree tree = treeAt(*mary, "H01", "SO 612 094", "Weir Wood");
    bothLeaves(*mary, tree.site);
    const Visit visit = visitTo(*mary, tree, [](Session&, Visit begun) {
        CharacterSeen seen;
        seen.character = "K01";
        seen.state = "opposite";
        begun.characters = {seen};
        return begun;
    });
    CHECK(holds(openSample(*mary, wantedOn(visit)).value().why, "custody.host-ruled-out"));
    CHECK(holds(openSample(*mary, wantedOn(visit), true).value().why, "custody.host-ruled-out"));
    CHECK(sampleLines(*mary).value().empty());
}

TEST_CASE("material taken without leave is recorded, with the break", "[task][samples]")
{
    Vale vale;
    const auto mary = vale.as("MH");
    const Visit visit = handedIn(*mary, treeAt(*mary, "W03", "SO 612 094"), withGall);
    const SampleOpening opened = openSample(*mary, wantedOn(visit), true).value();
    REQUIRE(opened.sample.has_value());
    CHECK(opened.why.size() == 2);
    CustodyLine cut;
    cut.sample = opened.sample->id;
    cut.kind = CustodyKind::cut;
    cut.out = at(11);
    const SamplePage page = addCustodyLine(*mary, cut).value();
    CHECK(holds(page.status.breaks, "custody.leave-authority"));
}

TEST_CASE("closing is refused with everything that is missing, then done when nothing is", "[task][samples]")
{
    Taken taken;
    const Closing refused = closeSample(*taken.mary, taken.sample.id, false, "", "").value();
    CHECK_FALSE(refused.closed);
    for (const char* code : {"custody.cut", "custody.inner-bag", "custody.outer-bag", "custody.not-confirmed-on-site",
                             "custody.no-receipt", "custody.result", "custody.disposal"}) {
        CAPTURE(code);
        CHECK(holds(refused.page.status.missing, code));
    }
    CHECK(refused.page.lines.empty());
    taken.sealed();
    CHECK(samplePage(*taken.mary, taken.sample.id).value().status.state == SampleState::sealed);
    taken.received();
    taken.examinedAndDisposed();
    const Closing closed = closeSample(*taken.mary, taken.sample.id, false, "", "").value();
    CAPTURE(closed.page.status.missing.empty() ? std::string() : closed.page.status.missing.front().code);
    CAPTURE(closed.page.status.breaks.empty() ? std::string() : closed.page.status.breaks.front().code);
    CHECK(closed.closed);
    CHECK(closed.page.status.state == SampleState::closed);
    CHECK(closed.page.lines.back().kind == CustodyKind::close);
    const auto again = closeSample(*taken.mary, taken.sample.id, false, "", "").value();
    CHECK(again.closed);
    CHECK(again.page.lines.size() == closed.page.lines.size());
    CustodyLine late;
    late.sample = taken.sample.id;
    late.kind = CustodyKind::handOver;
    CHECK(faultOf(addCustodyLine(*taken.mary, late)) == "custody.closed");
}

TEST_CASE("a broken chain closes only with a reason and a second person", "[task][samples]")
{
    Taken taken;
    taken.sealed();
    taken.received("S999");
    taken.examinedAndDisposed();
    CHECK_FALSE(closeSample(*taken.mary, taken.sample.id, false, "", "").value().closed);
    const Closing bare = closeSample(*taken.mary, taken.sample.id, true, "", "").value();
    CHECK_FALSE(bare.closed);
    CHECK(holds(bare.page.status.missing, "custody.close-reason"));
    CHECK(holds(bare.page.status.missing, "custody.close-second-person"));
    CHECK(holds(bare.page.status.breaks, "custody.seal-differs"));
    const Closing alone = closeSample(*taken.mary, taken.sample.id, true, "seal read wrongly on the road", "mh").value();
    CHECK_FALSE(alone.closed);
    const Closing both = closeSample(*taken.mary, taken.sample.id, true, "seal read wrongly on the road", "JB").value();
    CHECK(both.closed);
    CHECK(both.page.status.state == SampleState::closedWithBreak);
}

TEST_CASE("without confirmed double-bagging nothing closes", "[task][samples]")
{
    Taken taken;
    taken.sealed();
    taken.add(CustodyKind::onSite, 12, 40, [](CustodyLine& l) {
        l.corrects = 4;
        l.reason = "the outer bag was closed at the car";
        l.confirmed = false;
        l.hygiene = {Confirmed::done, Confirmed::done, Confirmed::noneUsed, Confirmed::done, std::nullopt};
    });
    taken.received();
    taken.examinedAndDisposed("not found");
    CHECK(samplePage(*taken.mary, taken.sample.id).value().status.mustBeVoid);
    CHECK_FALSE(closeSample(*taken.mary, taken.sample.id, true, "reason", "JB").value().closed);
}

TEST_CASE("a line that corrects must name one that is there, and lines are numbered in order", "[task][samples]")
{
    Taken taken;
    taken.sealed();
    CustodyLine wrong;
    wrong.sample = taken.sample.id;
    wrong.kind = CustodyKind::outerBag;
    wrong.corrects = 9;
    CHECK(faultOf(addCustodyLine(*taken.mary, wrong)) == "custody.correction");
    const auto lines = samplePage(*taken.mary, taken.sample.id).value().lines;
    REQUIRE(lines.size() == 4);
    for (std::size_t i = 0; i < lines.size(); ++i)
        CHECK(lines[i].number == static_cast<int>(i) + 1);
}

TEST_CASE("a laboratory that found it opens the decided visit again", "[task][samples]")
{
    Taken taken;
    const auto v1 = taken.vale.as("V1");
    decide(*v1, decision(*v1, taken.visit.id, Outcome::giveBack, {"tree-not-shown"})).value();
    taken.sealed();
    taken.received();
    taken.examinedAndDisposed("found");
    const ReviewPage page = reviewPage(*v1, taken.visit.id).value();
    CHECK(page.visit.state == RecordState::submitted);
    CHECK(page.decisions.back().outcome == Outcome::reopen);
    CHECK(page.decisions.back().reportNumber == "R 7");
    CHECK(countQueue(*v1).value() == 1);
}

TEST_CASE("what only a laboratory can see may stand once it has reported, and not before", "[task][samples]")
{
    Taken taken;
    const Pack& pack = taken.mary->pack();
    const auto sign = std::find_if(pack.signs.begin(), pack.signs.end(),
                                   [](const Sign& s) { return s.group == SignGroup::laboratory; });
    REQUIRE(sign != pack.signs.end());
    const auto claim = [&] {
        const Visit before = visitPage(*taken.mary, taken.visit.id).value().visit;
        Visit claimed = before;
        claimed.observations.push_back({});
        claimed.observations.back().sign = sign->id;
        claimed.observations.back().answer = Answer::seen;
        done(changeVisit(*taken.mary, before, claimed, "laboratory"));
        return holds(visitPage(*taken.mary, taken.visit.id).value().findings, "sign.laboratory");
    };
    CHECK(claim());
    taken.sealed();
    taken.received();
    taken.examinedAndDisposed("found");
    CHECK_FALSE(holds(visitPage(*taken.mary, taken.visit.id).value().findings, "sign.laboratory"));
    const auto line = visitPage(*taken.mary, taken.visit.id).value();
    CHECK(line.positive.positive);
}

TEST_CASE("samples are for handlers and volunteers, regimes for the office", "[task][samples]")
{
    Taken taken;
    const auto verifier = taken.vale.open(taken.vale.profile("VV", "Vera Vane", {Role::verifier}));
    CHECK(faultOf(openSample(*verifier, wantedOn(taken.visit))) == "role.needed");
    CHECK(faultOf(closeSample(*verifier, taken.sample.id, false, "", "")) == "role.needed");
    Regime regime;
    regime.issuer = "Plant health office";
    regime.dryGalls = "keep";
    regime.from = day(2026, 1, 1);
    CHECK(faultOf(addRegime(*taken.mary, regime)) == "role.needed");
    const auto office = taken.vale.as("OF");
    REQUIRE(addRegime(*office, regime));
    CHECK(samplePage(*taken.mary, taken.sample.id).value().regimes.size() == 1);
    regime.dryGalls = "burn";
    CHECK(faultOf(addRegime(*office, regime)) == "regime.dry-galls");
    Leave leave;
    leave.from = day(2026, 1, 1);
    CHECK(faultOf(addLeave(*taken.mary, leave)) == "leave.scopes");
    leave.scopes = {LeaveScope::enter};
    leave.to = day(2025, 1, 1);
    CHECK(faultOf(addLeave(*taken.mary, leave)) == "leave.dates");
}
