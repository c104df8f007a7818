#include "core/report/label.h"

#include "core/base/text.h"
#include "core/report/moments.h"
#include "tests/report/sample_facts.h"
#include "tests/support/catch.h"

using namespace cupule;
using namespace cupule::report;
using test::samplePack;

namespace {

/// The words of a row, blanks as "_" and boxes as "[]".
std::string said(const Label& label, const std::string& name)
{
    std::string out;
    for (const auto& row : label.rows)
        if (row.name == name)
            for (const auto& part : row.parts)
                out += (out.empty() ? "" : " ") + (part.kind == LabelPart::Kind::blank ? "_"
                                                   : part.kind == LabelPart::Kind::box ? "[]" + part.words
                                                                                       : part.words);
    return out;
}

std::vector<Label> labelsOf(const SampleFacts& facts)
{
    return sampleLabels(facts, "", samplePack(), Words());
}

} // namespace

TEST_CASE("a sample has a label for each bag and for its papers, all with the same number", "[report][label]")
{
    const auto labels = labelsOf(test::wholeSample());
    REQUIRE(labels.size() == 3);
    CHECK(labels[0].kind == LabelKind::innerBag);
    CHECK(labels[1].kind == LabelKind::outerBag);
    CHECK(labels[2].kind == LabelKind::document);
    CHECK(labels[0].bag == "1041-A");
    CHECK(labels[1].bag == "1041-B");
    CHECK(labels[2].bag.empty());
    for (const Label& label : labels) {
        CHECK(label.number == "26-TV-0147-H");
        CHECK(label.where == "record T-03@2026-06-11, square SO54");
        CHECK(label.hazard == "Suspect regulated pest. Do not open outside containment.");
        CHECK(label.ask == "Ask Tharn Vale, by the number above");
        CHECK(static_cast<int>(label.rows.size()) <= mostLabelRows);
        CHECK(said(label, "taken") == "11 June 2026, 11.35 +01, by IC, Ines Calloway");
        CHECK(said(label, "what") == "leaf with galls × 3");
        CHECK(said(label, "leave") == "TV-31, of the authority, to 30 September 2026");
        CHECK(label.title.ends_with(", part 1 of 1"));
        CHECK(label.demonstration.empty());
    }
    CHECK(said(labels[0], "closed") == "11 June 2026, 11.38 +01");
    CHECK(said(labels[0], "state") == "with holes");
    CHECK(said(labels[1], "seal") == "008813 closed 11 June 2026, 11.41 +01");
    CHECK(said(labels[1], "taken in") == "_ h by _ seal whole []yes []no");
    CHECK(said(labels[2], "place") == "52.09000 N, 2.66000 W, WGS 84, ± 76 m");
    CHECK(said(labels[0], "place").empty()); // in other hands only the square
}

TEST_CASE("what is not known yet stays free for a pencil", "[report][label]")
{
    const auto labels = labelsOf(test::bareSample());
    CHECK(labels[0].bag.empty());
    CHECK(said(labels[0], "taken") == "11 June 2026, _ h by IC");
    CHECK(said(labels[0], "what") == "leaf with galls × _");
    CHECK(said(labels[0], "host") == "_");
    CHECK(said(labels[0], "closed") == "_ h by _");
    CHECK(said(labels[0], "state") == "[]fresh []dry []with holes []no holes");
    CHECK(said(labels[1], "seal") == "_ closed _ h by _");
    CHECK(said(labels[0], "leave") == "None of the authority is noted.");
    CHECK(said(labels[2], "place") == "_");
}

TEST_CASE("a corrected line stands on the label as corrected", "[report][label]")
{
    SampleFacts facts = test::wholeSample();
    CustodyLine again = facts.lines[2];
    again.number = 5;
    again.corrects = 3;
    again.seal = "008831";
    facts.lines.push_back(again);
    CHECK(said(labelsOf(facts)[1], "seal") == "008831 closed 11 June 2026, 11.41 +01");
}

TEST_CASE("a label names no giver of a leave and keeps the authority's words off", "[report][label]")
{
    // the words that trade practice keeps for the authority; common practice, no source
    SampleFacts facts = test::wholeSample();
    facts.demonstration = true;
    for (const Label& label : labelsOf(facts)) {
        CHECK(label.demonstration.find("invented") != std::string::npos);
        std::string all = label.title + label.where + label.hazard + label.ask + label.demonstration;
        for (const auto& row : label.rows)
            for (const auto& part : row.parts)
                all += part.words;
        all = lowerAscii(all);
        for (const char* word : {"infest", "disease-free", "certified", "quarantine", "quillfeather"}) {
            CAPTURE(word);
            CHECK(all.find(word) == std::string::npos);
        }
    }
    CHECK(sampleLabels(facts, "the office, box 12", samplePack(), Words())[0].ask ==
          "Ask the office, box 12, by the number above");
    facts.answers = "the survey office, box 7";
    CHECK(sampleLabels(facts, "", samplePack(), Words())[0].ask == "Ask the survey office, box 7, by the number above");
}

TEST_CASE("a reserved number has its labels, with nothing but the number and room for a pencil", "[report][label]")
{
    SampleFacts store;
    store.storeName = "Tharn Vale";
    store.answers = "the office, box 12";
    const auto labels = reservedLabels("26-TV-0147-H", store, "", samplePack(), Words());
    REQUIRE(labels.size() == 3);
    for (const Label& label : labels) {
        CHECK(label.reserved);
        CHECK(label.number == "26-TV-0147-H");
        CHECK(label.where == "record");
        CHECK(label.bag.empty());
        CHECK(label.hazard == "Suspect regulated pest. Do not open outside containment.");
        CHECK(label.ask == "Ask the office, box 12, by the number above");
        CHECK(static_cast<int>(label.rows.size()) <= mostLabelRows);
        CHECK(said(label, "taken") == "_ _ h by _");
        CHECK(said(label, "what") == "_ × _");
        CHECK(said(label, "host") == "_");
        CHECK(said(label, "leave") == "_");
    }
    CHECK(said(labels[0], "state") == "[]fresh []dry []with holes []no holes");
    CHECK(said(labels[1], "seal") == "_ closed _ h by _");
    CHECK(said(labels[2], "why") == "_");
}

TEST_CASE("moments stand with their wall clock and offset", "[report][moments]")
{
    const Words words;
    CHECK(momentWords({0, std::nullopt}, words) == "1 January 1970, 0.00 UTC");
    CHECK(momentWords({0, 60}, words) == "1 January 1970, 1.00 +01");
    CHECK(momentWords({0, -210}, words) == "31 December 1969, 20.30 -03:30");
    CHECK(momentWords({-1, 0}, words) == "31 December 1969, 23.59 UTC");
    CHECK(momentWords({23 * 3'600'000LL + 59 * 60'000LL, 345}, words) == "2 January 1970, 5.44 +05:45");
}
