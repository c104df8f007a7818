#include "core/rules/custody.h"

#include <algorithm>
#include <set>

#include "tests/rules/custody_chain.h"
#include "tests/support/catch.h"

using namespace cupule;
using cupule::test::at;
using cupule::test::Case;
using cupule::test::codesOf;
using cupule::test::day;
using cupule::test::uidOf;

namespace {

using Codes = std::vector<std::string>;
using Step = CustodyKind;

/// One change to a complete chain, and all that it brings about.
struct Row {
    const char* name;
    std::function<void(Case&)> change;
    Codes expected;
};

// Each omission from a complete chain, with exactly what is then missing.
// Sources: ASTM D4840 (label, seal, who gave and who took with times, receipt, disposal), ISO/IEC 17025 clauses 7.4 and
// 7.8.2 (receipt, report); two bags, debris, witness and order: common practice, no source.
std::vector<Row> omissions()
{
    return {
        {"no number", [](Case& c) { c.sample.number.clear(); }, {"custody.number"}},
        {"a wrong number", [](Case& c) { c.sample.number = "26-TV-0147-*"; }, {"custody.number"}},
        {"no plant part", [](Case& c) { c.sample.plantPart = " "; }, {"custody.plant-part"}},
        {"no collector",
         [](Case& c) {
             c.sample.collector = {};
             c.line(Step::cut).from.clear();
         },
         {"custody.collector"}},
        {"no pieces", [](Case& c) { c.sample.pieces.reset(); }, {"custody.pieces"}},
        {"no cut", [](Case& c) { c.drop(Step::cut); }, {"custody.cut"}},
        {"cut without time", [](Case& c) { c.line(Step::cut).out.reset(); }, {"custody.cut-time"}},
        {"no inner bag", [](Case& c) { c.drop(Step::innerBag); }, {"custody.inner-bag"}},
        {"inner bag without number", [](Case& c) { c.line(Step::innerBag).bag = ""; }, {"custody.inner-bag-number"}},
        {"inner bag without time", [](Case& c) { c.line(Step::innerBag).out.reset(); }, {"custody.inner-bag-time"}},
        {"no outer bag", [](Case& c) { c.drop(Step::outerBag); }, {"custody.outer-bag"}},
        {"outer bag without number", [](Case& c) { c.line(Step::outerBag).bag = ""; }, {"custody.outer-bag-number"}},
        {"outer bag without time", [](Case& c) { c.line(Step::outerBag).out.reset(); }, {"custody.outer-bag-time"}},
        {"outer bag without seal", [](Case& c) { c.line(Step::outerBag).seal = ""; }, {"custody.outer-bag-seal"}},
        {"one number on both bags", [](Case& c) { c.line(Step::outerBag).bag = "b 1041"; }, {"custody.same-bag"}},
        {"nothing about leaving",
         [](Case& c) { c.drop(Step::onSite); },
         {"custody.hygiene-boots", "custody.hygiene-clothes", "custody.hygiene-tools", "custody.hygiene-vehicle",
          "custody.not-confirmed-on-site"}},
        {"not confirmed", [](Case& c) { c.line(Step::onSite).confirmed.reset(); }, {"custody.not-confirmed-on-site"}},
        {"confirmed at no time", [](Case& c) { c.line(Step::onSite).out.reset(); }, {"custody.on-site-time"}},
        {"clothes", [](Case& c) { c.line(Step::onSite).hygiene.clothes = Confirmed::open; }, {"custody.hygiene-clothes"}},
        {"no clothes worn", [](Case& c) { c.line(Step::onSite).hygiene.clothes = Confirmed::noneUsed; },
         {"custody.hygiene-clothes"}},
        {"boots", [](Case& c) { c.line(Step::onSite).hygiene.boots = Confirmed::open; }, {"custody.hygiene-boots"}},
        {"vehicle", [](Case& c) { c.line(Step::onSite).hygiene.vehicle = Confirmed::open; }, {"custody.hygiene-vehicle"}},
        {"tools", [](Case& c) { c.line(Step::onSite).hygiene.tools = Confirmed::open; }, {"custody.hygiene-tools"}},
        {"no giver", [](Case& c) { c.line(Step::handOver).from.clear(); }, {"custody.hand-over-from"}},
        {"no taker", [](Case& c) { c.line(Step::handOver).to.clear(); }, {"custody.hand-over-to"}},
        {"no time of giving", [](Case& c) { c.line(Step::handOver).out.reset(); }, {"custody.hand-over-out"}},
        {"no time of taking", [](Case& c) { c.line(Step::handOver).in.reset(); }, {"custody.hand-over-in"}},
        {"seal not read", [](Case& c) { c.line(Step::handOver).seal.clear(); }, {"custody.hand-over-seal"}},
        {"seal not looked at", [](Case& c) { c.line(Step::handOver).sealWhole.reset(); },
         {"custody.hand-over-seal-whole"}},
        {"no receipt", [](Case& c) { c.drop(Step::receipt); }, {"custody.no-receipt"}},
        {"receipt from nobody", [](Case& c) { c.line(Step::receipt).from.clear(); }, {"custody.receipt-from"}},
        {"receipt by nobody", [](Case& c) { c.line(Step::receipt).to.clear(); }, {"custody.receipt-by"}},
        {"receipt without time",
         [](Case& c) {
             c.line(Step::receipt).in.reset();
             c.line(Step::receipt).out.reset();
         },
         {"custody.receipt-in"}},
        {"seal not read on receipt", [](Case& c) { c.line(Step::receipt).seal.clear(); }, {"custody.receipt-seal"}},
        {"seal not looked at on receipt", [](Case& c) { c.line(Step::receipt).sealWhole.reset(); },
         {"custody.receipt-seal-whole"}},
        {"pieces not counted", [](Case& c) { c.line(Step::receipt).pieces.reset(); }, {"custody.receipt-pieces"}},
        {"no result", [](Case& c) { c.drop(Step::result); }, {"custody.result"}},
        {"result in other words", [](Case& c) { c.line(Step::result).finding = "perhaps"; }, {"custody.result-finding"}},
        {"no report number", [](Case& c) { c.line(Step::result).reportNumber.clear(); }, {"custody.result-report"}},
        {"result without time", [](Case& c) { c.line(Step::result).out.reset(); }, {"custody.result-time"}},
        {"result unsigned", [](Case& c) { c.line(Step::result).signedBy.clear(); }, {"custody.result-signed"}},
        {"no disposal", [](Case& c) { c.drop(Step::disposal); }, {"custody.disposal"}},
        {"disposal in other words", [](Case& c) { c.line(Step::disposal).disposal = "lost"; }, {"custody.disposal-kind"}},
        {"disposal without time", [](Case& c) { c.line(Step::disposal).out.reset(); }, {"custody.disposal-time"}},
        {"destroyed without order", [](Case& c) { c.line(Step::disposal).order.clear(); }, {"custody.disposal-order"}},
        {"destroyed somehow", [](Case& c) { c.line(Step::disposal).method.clear(); }, {"custody.disposal-method"}},
        {"destroyed without witness", [](Case& c) { c.line(Step::disposal).signedBy.clear(); },
         {"custody.disposal-witness"}},
        {"voucher kept nowhere", [](Case& c) { c.line(Step::disposal).disposal = "voucher"; }, {"custody.disposal-place"}},
        {"returned to nobody", [](Case& c) { c.line(Step::disposal).disposal = "returned"; }, {"custody.disposal-to"}},
        {"not cut yet, and no owner's leave",
         [](Case& c) {
             c.drop(Step::cut);
             c.sample.leaveOwner = uidOf(999);
         },
         {"custody.cut", "custody.leave-owner"}},
        {"closed with a break for no reason",
         [](Case& c) {
             CustodyLine& close = c.append(Step::close, "2026-06-17T09:00:00+01:00");
             close.withBreak = true;
             close.from = "MH";
             close.secondPerson = "RB";
         },
         {"custody.close-reason"}},
        {"closed with a break by one person",
         [](Case& c) {
             CustodyLine& close = c.append(Step::close, "2026-06-17T09:00:00+01:00");
             close.withBreak = true;
             close.reason = "late";
             close.from = "MH";
             close.secondPerson = "mh";
         },
         {"custody.close-second-person"}},
    };
}

// Each contradiction, with exactly the break that it is.
// Source: ASTM D4840 and ISO/IEC 17025 clause 7.4.3 (departures on receipt); bags and times: common practice, no source.
std::vector<Row> corruptions()
{
    return {
        {"owner's leave is over", [](Case& c) { c.leaves[0].to = day("2026-06-10"); }, {"custody.leave-owner"}},
        {"authority's leave withdrawn that day", [](Case& c) { c.leaves[1].withdrawn = day("2026-06-11"); },
         {"custody.leave-authority"}},
        {"pieces differ at the cut", [](Case& c) { c.line(Step::cut).pieces = 4; }, {"custody.pieces-differ"}},
        {"pieces differ on receipt", [](Case& c) { c.line(Step::receipt).pieces = 2; }, {"custody.pieces-differ"}},
        {"bagged before it was cut", [](Case& c) { c.line(Step::cut).out = at("2026-06-11T10:06:00+01:00"); },
         {"custody.bag-before-cut"}},
        {"outer bag closed first", [](Case& c) { c.line(Step::outerBag).out = at("2026-06-11T10:04:00+01:00"); },
         {"custody.outer-before-inner"}},
        {"both bags closed at one time", [](Case& c) { c.line(Step::outerBag).out = at("2026-06-11T10:05:00+01:00"); },
         {"custody.same-closing-time"}},
        {"outer bag closed after leaving", [](Case& c) { c.line(Step::outerBag).out = at("2026-06-11T10:40:00+01:00"); },
         {"custody.late-bagging"}},
        {"both bags closed after leaving",
         [](Case& c) {
             c.line(Step::innerBag).out = at("2026-06-11T10:35:00+01:00");
             c.line(Step::outerBag).out = at("2026-06-11T10:40:00+01:00");
         },
         {"custody.late-bagging", "custody.late-bagging"}},
        {"handed over before it was bagged",
         [](Case& c) {
             c.line(Step::handOver).out = at("2026-06-11T10:07:00+01:00");
             c.line(Step::handOver).in = at("2026-06-11T10:07:00+01:00");
         },
         {"custody.late-bagging"}},
        {"confirmed after leaving", [](Case& c) { c.line(Step::onSite).hygiene.leftSite = test::clock("10:15"); },
         {"custody.confirmed-after-leaving"}},
        {"not double-bagged", [](Case& c) { c.line(Step::onSite).confirmed = false; }, {"custody.not-double-bagged"}},
        {"double-bagged only by correction",
         [](Case& c) {
             c.line(Step::onSite).confirmed = false;
             c.correct(Step::onSite).confirmed = true;
         },
         {"custody.confirmed-by-correction"}},
        {"inner bag used before", [](Case& c) { c.bags = {"b1041"}; }, {"custody.bag-used-before"}},
        {"seal used before", [](Case& c) { c.seals = {"S-1", "s-77310"}; }, {"custody.seal-used-before"}},
        {"another sample has the number", [](Case& c) { c.sameNumber = {"W03"}; }, {"custody.sample-number-twice"}},
        {"one person gives and takes",
         [](Case& c) {
             c.line(Step::handOver).to = "mh";
             c.line(Step::receipt).from = "MH";
         },
         {"custody.same-person"}},
        {"another gives than took", [](Case& c) { c.line(Step::receipt).from = "QT"; }, {"custody.not-joined"}},
        {"somebody who was not at the tree gives", [](Case& c) { c.line(Step::handOver).from = "QT"; },
         {"custody.not-joined"}},
        {"taken before given", [](Case& c) { c.line(Step::handOver).in = at("2026-06-11T13:55:00+01:00"); },
         {"custody.in-before-out"}},
        {"two hours in nobody's hands", [](Case& c) { c.line(Step::handOver).in = at("2026-06-11T16:00:00+01:00"); },
         {"custody.gap"}},
        {"given on before it was had",
         [](Case& c) {
             c.line(Step::receipt).out = at("2026-06-11T14:01:00+01:00");
             c.line(Step::receipt).in = at("2026-06-11T14:03:00+01:00");
             c.line(Step::receipt).written = at("2026-06-11T14:03:00+01:00");
         },
         {"custody.out-before-in"}},
        {"another seal", [](Case& c) { c.line(Step::receipt).seal = "S-77301"; }, {"custody.seal-differs"}},
        {"a broken seal", [](Case& c) { c.line(Step::handOver).sealWhole = false; }, {"custody.seal-broken"}},
        // "record of transfer written later than it happened without saying so": ASTM D4840; the hours are common practice
        {"a hand-over written two days later", [](Case& c) { c.line(Step::handOver).written = at("2026-06-13T14:00:00+01:00"); },
         {"custody.written-afterwards-unsaid"}},
        {"a result before receipt", [](Case& c) { c.line(Step::result).out = at("2026-06-12T08:00:00+01:00"); },
         {"custody.result-before-receipt"}},
        {"the laboratory says oak", [](Case& c) { c.line(Step::result).host = "quercus robur"; }, {"custody.host-differs"}},
    };
}

// What is remarked, and neither missing nor broken.
// Source: the hours are the programme's settings (judgement); late writing that says so: ASTM D4840.
std::vector<Row> remarks()
{
    return {
        {"a day under way", [](Case& c) { c.pack.settings.sampleWarnHours = 22; }, {"custody.hours-warn"}},
        {"three days under way", [](Case& c) { c.pack.settings.sampleAskHours = 22; }, {"custody.hours-ask"}},
        {"too long for rearing", [](Case& c) { c.pack.settings.sampleVoidRearingHours = 22; }, {"custody.hours-rearing"}},
        {"a bag written down two days later",
         [](Case& c) { c.line(Step::innerBag).written = at("2026-06-13T14:00:00+01:00"); },
         {"custody.written-afterwards-unsaid"}},
        {"written two days later, said",
         [](Case& c) {
             c.line(Step::handOver).written = at("2026-06-13T14:00:00+01:00");
             c.line(Step::handOver).remark = "from the paper form";
         },
         {"custody.written-afterwards"}},
        {"corrected", [](Case& c) { c.correct(Step::receipt); }, {"custody.corrected"}},
        {"corrected without a word", [](Case& c) { c.correct(Step::receipt).reason.clear(); },
         {"custody.corrected-unexplained"}},
        {"a correction of nothing",
         [](Case& c) {
             CustodyLine& line = c.append(Step::result, "2026-06-15T16:00:00+01:00");
             line = c.line(Step::result);
             line.number = 9;
             line.corrects = 77;
         },
         {"custody.correction-unknown"}},
        {"two lines of one number",
         [](Case& c) { c.line(Step::disposal).number = c.line(Step::result).number; }, {"custody.number-twice"}},
        {"a second inner bag",
         [](Case& c) { c.append(Step::innerBag, "2026-06-11T11:00:00+01:00").bag = "B-9"; }, {"custody.line-twice"}},
        {"later than now", [](Case& c) { c.now = at("2026-06-16T08:00:00Z"); }, {"custody.future"}},
        {"too warm", [](Case& c) { c.line(Step::handOver).celsius = 24; }, {"custody.temperature"}},
        {"found", [](Case& c) { c.line(Step::result).finding = "found"; }, {"custody.found"}},
        {"disposed of before the result", [](Case& c) {
             c.line(Step::disposal).out = at("2026-06-14T09:00:00+01:00");
             c.line(Step::disposal).written = *c.line(Step::disposal).out;
         },
         {"custody.disposed-before-result"}},
        {"another species of host", [](Case& c) { c.line(Step::result).host = "Castanea crenata"; },
         {"custody.host-named-otherwise"}},
        {"host ruled out later", [](Case& c) { c.host = HostAnswer::notHost; }, {"custody.host-ruled-out"}},
        {"visit rejected", [](Case& c) { c.visitRejected = true; }, {"custody.visit-rejected"}},
    };
}

} // namespace

TEST_CASE("a complete chain lacks nothing and may close whole", "[rules][custody]")
{
    const SampleStatus status = Case().status();
    CHECK(codesOf(status.missing) == Codes{});
    CHECK(codesOf(status.breaks) == Codes{});
    CHECK(codesOf(status.remarks) == Codes{});
    CHECK(status.canCloseWhole);
    CHECK_FALSE(status.canCloseWithBreak);
    CHECK_FALSE(status.mustBeVoid);
    CHECK(status.state == SampleState::disposed);
    REQUIRE(status.hoursSinceSeal);
    CHECK(*status.hoursSinceSeal == Approx(22.8666666).epsilon(1e-6));   // 10:09 to 09:01 on the day after
    CHECK(status.chain.size() == 8);
    for (const ChainLink& link : status.chain)
        CHECK(link.state == LinkState::whole);
}

TEST_CASE("each single omission is named, and nothing else", "[rules][custody]")
{
    const Row row = GENERATE(from_range(omissions()));
    CAPTURE(row.name);
    Case changed;
    row.change(changed);
    const SampleStatus status = changed.status();
    CHECK(codesOf(status.missing) == row.expected);
    CHECK(codesOf(status.breaks) == Codes{});
    CHECK_FALSE(status.canCloseWhole);
    CHECK_FALSE(status.canCloseWithBreak);
    CHECK_FALSE(status.mustBeVoid);
    for (const Finding& finding : status.missing) {
        CHECK(finding.severity == Severity::stop);
        CHECK_FALSE(finding.field.empty());
        CHECK_FALSE(finding.source.empty());
    }
    const auto open = std::count_if(status.chain.begin(), status.chain.end(),
                                    [](const ChainLink& link) { return !link.lacking.empty(); });
    CHECK(open >= 1);
}

TEST_CASE("each single contradiction is its break, and leaves only closing with a break", "[rules][custody]")
{
    const Row row = GENERATE(from_range(corruptions()));
    CAPTURE(row.name);
    Case changed;
    row.change(changed);
    const SampleStatus status = changed.status();
    CHECK(codesOf(status.missing) == Codes{});
    CHECK(codesOf(status.breaks) == row.expected);
    CHECK_FALSE(status.canCloseWhole);
    CHECK(status.canCloseWithBreak != status.mustBeVoid);
    CHECK(status.mustBeVoid == (row.expected == Codes{"custody.not-double-bagged"}));
    const auto broken = std::count_if(status.chain.begin(), status.chain.end(),
                                      [](const ChainLink& link) { return link.state == LinkState::broken; });
    CHECK(broken >= 1);
}

TEST_CASE("remarks neither keep a sample open nor break its chain", "[rules][custody]")
{
    const Row row = GENERATE(from_range(remarks()));
    CAPTURE(row.name);
    Case changed;
    row.change(changed);
    const SampleStatus status = changed.status();
    CHECK(codesOf(status.remarks) == row.expected);
    CHECK(codesOf(status.breaks) == Codes{});
    CHECK(status.canCloseWhole);
}

TEST_CASE("every custody code is met in the tables", "[rules][custody]")
{
    std::set<std::string> met{"custody.close-not-good", "custody.void-reason"};   // in tests of their own, below
    for (const auto& rows : {omissions(), corruptions(), remarks()})
        for (const Row& row : rows)
            met.insert(row.expected.begin(), row.expected.end());
    std::set<std::string> listed;
    for (const std::string_view code : custodyCodes())
        listed.insert(std::string(code));
    CHECK(met == listed);
    CHECK(listed.size() == custodyCodes().size());
}

TEST_CASE("a refusal to close names everything that is missing at once", "[rules][custody]")
{
    Case bare;
    bare.lines.clear();
    bare.sample.pieces.reset();
    const Codes missing = codesOf(bare.status().missing);
    for (const char* code :
         {"custody.cut", "custody.pieces", "custody.inner-bag", "custody.outer-bag", "custody.not-confirmed-on-site",
          "custody.hygiene-clothes", "custody.hygiene-boots", "custody.hygiene-vehicle", "custody.hygiene-tools",
          "custody.no-receipt", "custody.result", "custody.disposal"})
        CHECK(std::count(missing.begin(), missing.end(), code) == 1);
    CHECK(missing.size() == 12);
    bare.leaves.clear();
    CHECK(bare.status().missing.size() == 14);

    Case several;
    for (const Row& row : omissions())
        if (row.expected.size() == 1 && std::string(row.name).find("without") != std::string::npos)
            row.change(several);
    CHECK(several.status().missing.size() == 11);
}

TEST_CASE("the state follows what has been put down, and the chain hangs open where it stopped", "[rules][custody]")
{
    const std::vector<std::pair<std::size_t, SampleState>> steps{
        {0, SampleState::collected}, {1, SampleState::collected}, {2, SampleState::collected}, {3, SampleState::sealed},
        {4, SampleState::sealed},    {5, SampleState::moving},    {6, SampleState::received},  {7, SampleState::examined},
        {8, SampleState::disposed}};
    for (const auto& [count, state] : steps) {
        CAPTURE(count);
        Case partial;
        partial.lines.resize(count);
        const SampleStatus status = partial.status();
        CHECK(status.state == state);
        const auto firstOpen = std::find_if(status.chain.begin(), status.chain.end(),
                                            [](const ChainLink& l) { return l.state != LinkState::whole; });
        CHECK((firstOpen == status.chain.end()) == (count == 8));
        if (firstOpen == status.chain.end())
            continue;
        CHECK(firstOpen->state == LinkState::open);
        CHECK(std::all_of(firstOpen + 1, status.chain.end(), [](const ChainLink& l) { return l.state == LinkState::ahead; }));
    }
}

TEST_CASE("a sample closes whole, or with a break for a reason and with a second person", "[rules][custody]")
{
    Case whole;
    whole.append(Step::close, "2026-06-17T09:00:00+01:00").from = "MH";
    CHECK(whole.status().state == SampleState::closed);
    CHECK_FALSE(whole.status().canCloseWhole);

    Case broken;
    broken.line(Step::receipt).seal = "S-1";
    CHECK(broken.status().canCloseWithBreak);
    CustodyLine& close = broken.append(Step::close, "2026-06-17T09:00:00+01:00");
    close.from = "MH";
    CHECK(broken.status().state == SampleState::disposed);
    CHECK(codesOf(broken.status().remarks) == Codes{"custody.close-not-good"});
    close.withBreak = true;
    close.reason = "misread at the door, photo kept";
    close.secondPerson = "RB";
    CHECK(broken.status().state == SampleState::closedWithBreak);
    CHECK(codesOf(broken.status().breaks) == Codes{"custody.seal-differs"});
}

TEST_CASE("a seal found on another sample later opens a closed one again", "[rules][custody]")
{
    Case closed;
    closed.append(Step::close, "2026-06-17T09:00:00+01:00").from = "MH";
    closed.seals = {"S-77310"};
    const SampleStatus status = closed.status();
    CHECK(status.state == SampleState::disposed);
    CHECK(status.canCloseWithBreak);
    CHECK(codesOf(status.remarks) == Codes{"custody.close-not-good"});
}

TEST_CASE("void material still needs its disposal and a reason", "[rules][custody]")
{
    Case single;
    single.line(Step::onSite).confirmed = false;
    single.drop(Step::disposal);
    single.drop(Step::result);
    CHECK(single.status().mustBeVoid);
    single.append(Step::voided, "2026-06-12T10:00:00+01:00");
    CHECK(single.status().state == SampleState::voided);
    CHECK(codesOf(single.status().missing) == Codes{"custody.disposal", "custody.void-reason"});
    single.lines.back().reason = "one bag only";
    CustodyLine& disposal = single.append(Step::disposal, "2026-06-13T10:00:00+01:00");
    disposal.disposal = "returned";
    disposal.to = "MH";
    const SampleStatus status = single.status();
    CHECK(status.missing.empty());
    CHECK(status.state == SampleState::voided);
    CHECK_FALSE(status.mustBeVoid);
    CHECK_FALSE(status.canCloseWhole);
    CHECK_FALSE(status.canCloseWithBreak);
}

TEST_CASE("a correction takes the place of what it corrects, also of a correction", "[rules][custody]")
{
    Case slip;
    slip.line(Step::receipt).seal = "S-77301";
    CHECK(codesOf(slip.status().breaks) == Codes{"custody.seal-differs"});
    slip.correct(Step::receipt).seal = "S-77310";
    CHECK(slip.status().breaks.empty());
    slip.correct(Step::receipt).corrects = 9;
    slip.lines.back().seal = "S-77999";
    CHECK(codesOf(slip.status().breaks) == Codes{"custody.seal-differs"});
    const auto inForce = linesInForce(slip.lines);
    REQUIRE(inForce.size() == 8);
    CHECK(inForce[5].number == 10);
    CHECK(inForce[5].seal == "S-77999");
    CHECK(linesInForce({}).empty());
}

TEST_CASE("a courier is known by the consignment number, and a way of travel covers the time", "[rules][custody]")
{
    Case courier;
    CustodyLine& out = courier.line(Step::handOver);
    out.to.clear();
    out.travel = "CN 5512-8";
    out.in = at("2026-06-12T08:59:00+01:00");
    CustodyLine& in = courier.line(Step::receipt);
    in.from.clear();
    in.travel = "CN55128";
    CHECK(courier.status().canCloseWhole);
    in.travel = "CN 9";
    CHECK(codesOf(courier.status().missing) == Codes{"custody.receipt-from"});
}

TEST_CASE("a laboratory may acknowledge what was handed to it", "[rules][custody]")
{
    Case direct;
    direct.line(Step::handOver).to = "Vale Laboratory";
    direct.line(Step::receipt).from.clear();
    CHECK(direct.status().canCloseWhole);
    direct.line(Step::receipt).from = "MH";
    CHECK(direct.status().canCloseWhole);
}

TEST_CASE("a hand-over put down afterwards joins by its times", "[rules][custody]")
{
    Case late;
    late.line(Step::receipt).from = "QT";
    CHECK(codesOf(late.status().breaks) == Codes{"custody.not-joined"});
    CustodyLine between = late.line(Step::handOver);
    between.number = 9;
    between.from = "RB";
    between.to = "QT";
    between.out = at("2026-06-11T18:00:00+01:00");
    between.in = at("2026-06-11T18:01:00+01:00");
    between.remark = "forgotten, from the paper form";
    late.lines.push_back(between);
    CHECK(late.status().breaks.empty());
    CHECK(late.status().chain.size() == 9);
}

// Common practice, no source: taking material needs leave of the place and of the authority, both in force that day.
TEST_CASE("a sample opens only with two leaves in force that day and on no other tree", "[rules][custody]")
{
    const std::vector<Row> rows{
        {"both in force", [](Case&) {}, {}},
        {"neither named, both there",
         [](Case& c) {
             c.sample.leaveOwner = {};
             c.sample.leaveAuthority = {};
         },
         {}},
        {"leave for everywhere", [](Case& c) { c.leaves[0].site = {}; }, {}},
        {"none", [](Case& c) { c.leaves.clear(); }, {"custody.leave-authority", "custody.leave-owner"}},
        {"no authority", [](Case& c) { c.leaves.pop_back(); }, {"custody.leave-authority"}},
        {"only to enter", [](Case& c) { c.leaves[0].scopes = {LeaveScope::enter}; }, {"custody.leave-owner"}},
        {"only to take", [](Case& c) { c.leaves[1].scopes = {LeaveScope::sample}; }, {"custody.leave-authority"}},
        {"not yet", [](Case& c) { c.leaves[0].from = day("2026-06-12"); }, {"custody.leave-owner"}},
        {"last day", [](Case& c) { c.leaves[0].to = day("2026-06-11"); }, {}},
        {"over", [](Case& c) { c.leaves[0].to = day("2026-06-10"); }, {"custody.leave-owner"}},
        {"withdrawn tomorrow", [](Case& c) { c.leaves[0].withdrawn = day("2026-06-12"); }, {}},
        {"withdrawn today", [](Case& c) { c.leaves[0].withdrawn = day("2026-06-11"); }, {"custody.leave-owner"}},
        {"another place", [](Case& c) { c.leaves[1].site = uidOf(7); }, {"custody.leave-authority"}},
        {"the owner cannot speak for the authority",
         [](Case& c) {
             c.leaves[1].giver = LeaveGiver::owner;
         },
         {"custody.leave-authority"}},
        {"host not settled", [](Case& c) { c.host = HostAnswer::cannotTell; }, {}},
        {"host ruled out", [](Case& c) { c.host = HostAnswer::notHost; }, {"custody.host-ruled-out"}},
    };
    const Row row = GENERATE_COPY(from_range(rows));
    CAPTURE(row.name);
    Case opening;
    row.change(opening);
    const auto why = mayOpenSample(opening.sample, day("2026-06-11"), opening.context());
    CHECK(codesOf(why) == row.expected);
    CHECK(blocks(why) == !row.expected.empty());
}
