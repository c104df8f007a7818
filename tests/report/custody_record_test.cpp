#include "core/report/custody_record.h"

#include "core/base/text.h"
#include "core/report/html.h"
#include "tests/report/sample_facts.h"
#include "tests/support/catch.h"

using namespace cupule;
using namespace cupule::report;

namespace {

CustodyRecordData record()
{
    CustodyRecordData data;
    data.facts = test::wholeSample();
    data.status.state = SampleState::moving;
    data.made = *CivilDate::make(2026, 6, 12);
    data.journalLines = 12;
    data.limits = {24, 72, 96};
    return data;
}

std::string page(const CustodyRecordData& data)
{
    return toHtml(custodyRecord(data, test::samplePack(), Words()));
}

bool says(const CustodyRecordData& data, const std::string& part)
{
    const std::string html = page(data);
    CAPTURE(html, part);
    return html.find(part) != std::string::npos;
}

} // namespace

TEST_CASE("a custody record holds every line with all that it says", "[report][custody-record]")
{
    const CustodyRecordData data = record();
    CHECK(says(data, "Custody record of sample 26-TV-0147-H"));
    CHECK(says(data, "out 11 June 2026, 17.00 +01; in 11 June 2026, 17.05 +01"));
    CHECK(says(data, "IC to courier"));
    CHECK(says(data, "seal 008813; seal whole; travel: consignment 77-104"));
    CHECK(says(data, "bag 1041-A"));
    CHECK(says(data, "11 June 2026, 20.01 +01"));
    CHECK(says(data, "State: on its way."));
    CHECK(custodyRecord(data, test::samplePack(), Words()).code == "26-TV-0147-H");
}

TEST_CASE("every member of a custody line reaches the record", "[report][custody-record]")
{
    CustodyRecordData data = record();
    CustodyLine line = test::line(5, CustodyKind::result, test::at(12, 9, 0));
    line.place = "placeword";
    line.bag = "bagword";
    line.seal = "sealword";
    line.sealWhole = false;
    line.pieces = 4711;
    line.condition = "conditionword";
    line.travel = "travelword";
    line.celsius = 6.5;
    line.confirmed = false;
    line.from = "fromword";
    line.to = "toword";
    line.reportNumber = "reportword";
    line.finding = "not found";
    line.method = "methodword";
    line.limits = "limitsword";
    line.host = "hostword";
    line.signedBy = "signedword";
    line.disposal = "returned";
    line.order = "orderword";
    line.reason = "reasonword";
    line.secondPerson = "secondword";
    line.remark = "remarkword";
    line.withBreak = true;
    line.corrects = 4;
    data.facts.lines.push_back(line);
    const std::string html = page(data);
    for (const char* part : {"placeword", "bagword", "sealword", "seal not whole", "4711", "conditionword", "travelword",
                             "6.5 °C", "both bags not closed", "fromword to toword", "reportword", "finding: not found",
                             "methodword", "limitsword", "hostword", "signed: signedword", "returned", "orderword",
                             "reasonword", "secondword", "remarkword", "closed with a break", "in place of line 4",
                             "corrected by line 5"}) {
        CAPTURE(part);
        CHECK(html.find(part) != std::string::npos);
    }
}

TEST_CASE("leaves stand by reference, and a leave that is lacking is said", "[report][custody-record]")
{
    CustodyRecordData data = record();
    CHECK(says(data, "TV-31"));
    CHECK_FALSE(says(data, "Quillfeather"));
    CHECK(says(data, "No leave of the owner or occupier is noted."));
    CHECK_FALSE(says(data, "No leave of the authority is noted."));
    data.facts.leaves[0].withdrawn = CivilDate::make(2026, 6, 10);
    CHECK(says(data, "withdrawn from 10 June 2026"));
    data.facts.leaves.clear();
    CHECK(says(data, "No leave of the authority is noted. Tell the authority"));
}

TEST_CASE("breaks are named, with what they do to the result", "[report][custody-record]")
{
    CustodyRecordData data = record();
    CHECK_FALSE(says(data, "never sole proof"));
    Finding broken;
    broken.code = "custody.seal-differs";
    data.status.breaks = {broken};
    CHECK(says(data, "Broken, and stays so:"));
    CHECK(says(data, "custody.seal differs"));
    CHECK(says(data, "the result is never sole proof"));
    data.status.mustBeVoid = true;
    CHECK(says(data, "this sample can never close"));
}

TEST_CASE("an open sample leaves room for the next hands, a closed one does not", "[report][custody-record]")
{
    CustodyRecordData data = record();
    CHECK(says(data, "Next changes of hands"));
    for (const SampleState over : {SampleState::closed, SampleState::closedWithBreak, SampleState::voided}) {
        data.status.state = over;
        CHECK_FALSE(says(data, "Next changes of hands"));
    }
}

TEST_CASE("a custody record carries hazard line, cautions and limits, and what the authority asks", "[report][custody-record]")
{
    CustodyRecordData data = record();
    Regime regime;
    regime.issuer = "the office of the Marches";
    regime.dryGalls = "keep";
    regime.notify = "the duty officer";
    data.regimes = {regime};
    CHECK(says(data, "Suspect regulated pest. Do not open outside containment."));
    CHECK(says(data, "closed car in the sun"));
    CHECK_FALSE(says(data, "No ladders."));
    CHECK(says(data, "never of the tree or the site"));
    CHECK(says(data, "the office of the Marches"));
    CHECK(says(data, "Not an official finding."));
    CHECK(says(data, "The journal behind this paper holds: 12 lines"));
    data.journalWhole = false;
    CHECK(says(data, "does not hold"));
}

TEST_CASE("a custody record says what the programme has set, and what is still its to set", "[report][custody-record]")
{
    CustodyRecordData data = record();
    const char* hours = "warned of after 24 hours from the seal, asked about after 72, of no use for rearing after 96.";
    CHECK(says(data, hours));
    CHECK(says(data, "Proposed limits"));
    CHECK(says(data, "nobody has: ask the authority before it is moved"));
    CHECK(says(data, "nobody has: ask the coordinator or the authority"));
    data.limits = {12, 36, 48};
    data.limitsProposed = false;
    data.mayMove = "Tobias Wren";
    data.tell = "plant-health office, 01632 960 100";
    CHECK(says(data, "Limits of the programme: warned of after 12 hours from the seal, asked about after 36"));
    CHECK(says(data, "samples are moved by: Tobias Wren."));
    CHECK(says(data, "Tell of a find: plant-health office, 01632 960 100."));
    CHECK_FALSE(says(data, "Proposed limits"));
    CHECK_FALSE(says(data, "nobody has"));
}

TEST_CASE("a custody record names place and collector for the laboratory, and no giver of a leave", "[report][custody-record]")
{
    // Place with datum and uncertainty: Darwin Core terms (TDWG, version table of 2026-08-15); origin and place of the host:
    // IPPC, ISPM 27.
    const CustodyRecordData data = record();
    CHECK(says(data, "52.09000 N, 2.66000 W, WGS 84, ± 76 m"));
    CHECK(says(data, "IC, Ines Calloway"));
    CHECK_FALSE(says(data, "Quillfeather"));
}

TEST_CASE("a custody record of a demonstration says so, and keeps the authority's words off", "[report][custody-record]")
{
    // the words that trade practice keeps for the authority; common practice, no source
    CustodyRecordData data = record();
    CHECK(custodyRecord(data, test::samplePack(), Words()).demonstration.empty());
    data.facts.demonstration = true;
    CHECK(custodyRecord(data, test::samplePack(), Words()).demonstration.find("invented") != std::string::npos);
    const std::string html = lowerAscii(page(data));
    for (const char* word : {"infest", "disease-free", "pest-free", "certified", "quarantine"}) {
        CAPTURE(word);
        CHECK(html.find(word) == std::string::npos);
    }
}
