#include "ui/print/document_paper.h"

#include "core/base/text.h"
#include "core/report/custody_record.h"
#include "tests/print/print_support.h"
#include "tests/report/sample_facts.h"
#include "tests/support/catch.h"
#include "ui/print/pdf.h"

using namespace cupule;
using namespace cupule::report;
using namespace cupule::test;

namespace {

/// A document over several pages: tables whose rows are tall, under headings.
Document longDocument()
{
    Document document;
    document.title = "A long paper";
    document.subtitle = "of several pages";
    document.demonstration = "Demonstration: all of this is invented.";
    document.foot = "Not an official finding.";
    document.code = "26-TV-0147-H";
    document.blocks.emplace_back(Figure{"bars", "Caption", "January: 1, February: 2", {{"J", 1}, {"F", 2}}});
    for (int part = 0; part < 6; ++part) {
        document.blocks.emplace_back(Heading{2, "Heading" + std::to_string(part)});
        Table table{"", {{"Number", true}, {"Words", false}}, {}};
        for (int row = 0; row < 9; ++row) {
            const std::string name = std::to_string(part) + "r" + std::to_string(row);
            std::string words = "first" + name;
            for (int i = 0; i < 30 + 10 * part; ++i)
                words += " filling words";
            table.rows.push_back({std::to_string(row), words + " last" + name});
        }
        document.blocks.emplace_back(std::move(table));
    }
    return document;
}

std::vector<std::string> pageTexts(const std::string& pdf)
{
    auto pages = split(textOf(pdf), '\f');
    if (!pages.empty() && trim(pages.back()).empty())
        pages.pop_back();
    return pages;
}

int pageWith(const std::vector<std::string>& pages, const std::string& part)
{
    for (std::size_t i = 0; i < pages.size(); ++i)
        if (pages[i].find(part) != std::string::npos)
            return static_cast<int>(i);
    return -1;
}

} // namespace

TEST_CASE("banner, foot and number stand on every page, and the table's head on each that it reaches", "[print][document]")
{
    if (!haveTools({"pdftotext"}))
        return;
    const auto pages = pageTexts(ui::documentPdf(longDocument()));
    REQUIRE(pages.size() > 2);
    for (std::size_t i = 0; i < pages.size(); ++i) {
        CAPTURE(pages[i]);
        CHECK(pages[i].find("Demonstration: all of this is invented.") != std::string::npos);
        CHECK(pages[i].find("Not an official finding.") != std::string::npos);
        CHECK(pages[i].find("page " + std::to_string(i + 1) + " of " + std::to_string(pages.size())) != std::string::npos);
        CHECK(pages[i].find("Words") != std::string::npos);
    }
}

TEST_CASE("no row is torn by a page and no heading is left behind", "[print][document]")
{
    if (!haveTools({"pdftotext"}))
        return;
    const auto pages = pageTexts(ui::documentPdf(longDocument()));
    for (int part = 0; part < 6; ++part) {
        for (int row = 0; row < 9; ++row) {
            const std::string name = std::to_string(part) + "r" + std::to_string(row);
            CAPTURE(name);
            CHECK(pageWith(pages, "first" + name) >= 0);
            CHECK(pageWith(pages, "first" + name) == pageWith(pages, "last" + name));
        }
        CHECK(pageWith(pages, "Heading" + std::to_string(part)) == pageWith(pages, "first" + std::to_string(part) + "r0"));
    }
}

TEST_CASE("a row longer than a page goes on over the next and nothing is lost", "[print][document]")
{
    if (!haveTools({"pdftotext"}))
        return;
    Document document;
    document.title = "Long row";
    std::string words;
    for (int i = 0; i < 3000; ++i)
        words += "filling ";
    document.blocks.emplace_back(Heading{2, "Heading"});
    document.blocks.emplace_back(Table{"Caption", {{"Words", false}}, {{words + "lastword"}}});
    document.blocks.emplace_back(Table{"Empty", {{"Nothing", false}}, {}});
    const auto pages = pageTexts(ui::documentPdf(document));
    CHECK(pages.size() >= 2);
    CHECK(pageWith(pages, "lastword") >= 1);
    CHECK(pageWith(pages, "Nothing") >= 1);
}

TEST_CASE("every kind of block comes onto paper", "[print][document]")
{
    if (!haveTools({"pdftotext"}))
        return;
    Document document;
    document.title = "Blocks";
    document.blocks = {Paragraph{"plainword", Tone::plain},
                       Paragraph{"noteword", Tone::note},
                       Paragraph{"cautionword & <b>", Tone::caution},
                       List{{"itemword", "second item"}},
                       List{},
                       Table{},
                       Figure{"bars", "captionword", "inwords", {{"J", 1}, {"F", 2}}}};
    const auto pages = pageTexts(ui::documentPdf(document));
    REQUIRE(pages.size() == 1);
    for (const char* part : {"Blocks", "plainword", "noteword", "cautionword & <b>", "itemword", "second item", "captionword",
                             "inwords"})
        CHECK(pages[0].find(part) != std::string::npos);
}

TEST_CASE("the code at the head of a custody record reads back as its number", "[print][document]")
{
    if (!haveTools({"zbarimg", "pdftoppm"}))
        return;
    CustodyRecordData data;
    data.facts = wholeSample();
    data.facts.demonstration = true;
    const auto pages = pagesOf(ui::documentPdf(custodyRecord(data, samplePack(), Words())));
    REQUIRE_FALSE(pages.empty());
    CHECK(codesIn(pages[0]) == std::vector<std::string>{"26-TV-0147-H"});
}

TEST_CASE("a paper is black on white", "[print][document]")
{
    QImage page = emptyPage();
    QPainter painter(&page);
    const ui::DocumentPaper paper(longDocument(), &page);
    paper.paint(painter, 0);
    painter.end();
    int black = 0;
    for (int y = 0; y < page.height(); ++y)
        for (int x = 0; x < page.width(); ++x)
            black += qGray(page.pixel(x, y)) < 128 ? 1 : 0;
    CHECK(black > 10'000);
    CHECK(coloured(page) == 0);
}
