#include "ui/print/label_paper.h"

#include <algorithm>

#include "core/report/label.h"
#include "core/rules/sample_number.h"
#include "tests/print/print_support.h"
#include "tests/report/sample_facts.h"
#include "tests/support/catch.h"
#include "ui/print/code.h"
#include "ui/print/paper.h"
#include "ui/print/pdf.h"

using namespace cupule;
using namespace cupule::test;
using report::Label;

namespace {

/// Labels of as many samples as asked for, each with a number of its own.
std::vector<Label> labelsOf(int samples)
{
    std::vector<Label> labels;
    for (int running = 1; samples > 0; ++running) {
        const auto number = makeSampleNumber(26, "TV", running * 7);
        if (!number)
            continue;
        --samples;
        report::SampleFacts facts = samples % 2 == 0 ? wholeSample() : bareSample();
        facts.sample.number = number->text();
        for (auto& label : report::sampleLabels(facts, {}, samplePack(), Words()))
            labels.push_back(std::move(label));
    }
    return labels;
}

QImage sheetOf(const std::vector<Label>& labels, const ui::SheetSetup& setup, int sheet = 0)
{
    QImage page = emptyPage();
    QPainter painter(&page);
    ui::paintLabelSheet(painter, labels, setup, sheet);
    return page;
}

QImage labelOn(const QImage& page, const ui::SheetSetup& setup, int at)
{
    const QRectF place = setup.place(at);
    return page.copy(pixels(place.left()), pixels(place.top()), pixels(place.width()), pixels(place.height()));
}

/// The longest black line of each row of pixels; the longest of them, in pixels.
int longestLine(const QImage& image, int fromRow, int toRow)
{
    int longest = 0;
    for (int y = fromRow; y < toRow; ++y)
        for (int x = 0, run = 0; x < image.width(); ++x) {
            run = qGray(image.pixel(x, y)) < 128 ? run + 1 : 0;
            longest = std::max(longest, run);
        }
    return longest;
}

} // namespace

// Decoder: zbarimg of Debian's zbar-tools, which knows nothing of us.
TEST_CASE("the code of every label of a sheet reads back as its number", "[print][labels]")
{
    if (!haveTools({"zbarimg"}))
        return;
    for (const char* text : {"4x2", "5x2 top=6 bottom=6 down=0 across=0", "3x1", "4x2 free=3"}) {
        const auto setup = *ui::readSheet(QString::fromLatin1(text));
        const auto labels = labelsOf(4);
        int read = 0;
        for (int sheet = 0; sheet < ui::sheetsFor(labels.size(), setup); ++sheet) {
            const QImage page = sheetOf(labels, setup, sheet);
            for (int at = 0; at < setup.perSheet(); ++at) {
                const QImage one = labelOn(page, setup, at);
                const int index = sheet * setup.perSheet() + at - (setup.free - 1);
                CAPTURE(text, sheet, at);
                if (index < 0 || index >= static_cast<int>(labels.size())) {
                    CHECK(codesIn(one).empty());
                    continue;
                }
                CHECK(codesIn(one) == std::vector{labels[static_cast<std::size_t>(index)].number});
                ++read;
            }
        }
        CHECK(read == static_cast<int>(labels.size()));
    }
}

TEST_CASE("labels of reserved numbers read back, the one of the papers too, and leave room for a pencil", "[print][labels]")
{
    if (!haveTools({"zbarimg", "pdftoppm", "pdftotext"}))
        return;
    report::SampleFacts store;
    store.storeName = "Tharn Vale";
    std::vector<Label> labels;
    for (const int running : {7, 21, 35})
        for (auto& label : report::reservedLabels(makeSampleNumber(26, "TV", running)->text(), store, {}, samplePack(), Words()))
            labels.push_back(std::move(label));
    REQUIRE(labels[2].kind == report::LabelKind::document);
    for (const char* sheet : {"4x2", "5x2 top=6 bottom=6 down=0 across=0"}) {
        const auto setup = *ui::readSheet(QString::fromLatin1(sheet));
        const std::string pdf = ui::labelSheetsPdf(labels, setup);
        const auto pages = pagesOf(pdf);
        for (std::size_t i = 0; i < labels.size(); ++i) {
            const int at = static_cast<int>(i);
            CAPTURE(sheet, i);
            CHECK(codesIn(labelOn(pages[static_cast<std::size_t>(at / setup.perSheet())], setup, at % setup.perSheet())) ==
                  std::vector{labels[i].number});
        }
        const std::string text = textOf(pdf);
        CHECK(text.find("@") == std::string::npos); // no record yet
        CHECK(text.find("Do not open outside containment") != std::string::npos);
        // the line behind "record" begins where the word ends and stops before the code
        const QImage one = labelOn(pages[0], setup, 0);
        const int line = pixels(3.4 + 14.6 + 0.5);
        CHECK(longestLine(one, line - 2, line + 3) > pixels(40));
        CHECK(longestLine(one, line - 2, line + 3) < pixels(setup.labelSize().width() - 25));
    }
}

TEST_CASE("a printed file of labels reads back whole", "[print][labels]")
{
    if (!haveTools({"zbarimg", "pdftoppm", "pdftotext"}))
        return;
    const auto labels = labelsOf(5);
    const ui::SheetSetup setup;
    const std::string pdf = ui::labelSheetsPdf(labels, setup);
    const auto pages = pagesOf(pdf);
    REQUIRE(static_cast<int>(pages.size()) == ui::sheetsFor(labels.size(), setup));
    for (std::size_t i = 0; i < labels.size(); ++i) {
        const int at = static_cast<int>(i);
        const QImage& page = pages[static_cast<std::size_t>(at / setup.perSheet())];
        CAPTURE(i);
        CHECK(codesIn(labelOn(page, setup, at % setup.perSheet())) == std::vector{labels[i].number});
    }
    const std::string text = textOf(pdf);
    for (const Label& label : labels)
        CHECK(text.find(label.number) != std::string::npos);
    CHECK(text.find("Do not open outside containment") != std::string::npos);
}

TEST_CASE("the line at the foot of a sheet is 100 mm long", "[print][labels]")
{
    constexpr double line = 100, tick = 0.3; // half a tick stands over each end
    const ui::SheetSetup setup;
    const auto labels = labelsOf(3);
    const QImage page = sheetOf(labels, setup);
    const int below = pixels(297 - setup.bottom + 1);
    CHECK(std::abs(longestLine(page, below, page.height()) - pixels(line + tick)) <= 1);
    if (!haveTools({"pdftoppm"}))
        return;
    const QImage printed = pagesOf(ui::labelSheetsPdf(labels, setup)).at(0);
    CHECK(std::abs(longestLine(printed, below, printed.height()) - pixels(line + tick)) <= 1);
}

TEST_CASE("a sheet is black on white and stays within its margins", "[print][labels]")
{
    const ui::SheetSetup setup;
    const QImage page = sheetOf(labelsOf(3), setup);
    int black = 0, outside = 0;
    for (int y = 0; y < page.height(); ++y)
        for (int x = 0; x < page.width(); ++x) {
            if (qGray(page.pixel(x, y)) > 200)
                continue;
            ++black;
            outside += x < pixels(4) || x > page.width() - pixels(4) ? 1 : 0;
        }
    CHECK(black > 10'000);
    CHECK(outside == 0);
    CHECK(coloured(page) == 0);
}

TEST_CASE("a code keeps four white modules on each side", "[print][code]")
{
    const ui::CodeModules code = ui::codeOf("26-TV-0147-H");
    CHECK(code.side == 21); // the smallest there is (ISO/IEC 18004, version 1)
    const int module = 10, whole = module * (code.side + 2 * ui::quietModules);
    QImage image(whole + 40, whole + 40, QImage::Format_RGB32);
    image.fill(Qt::black);
    QPainter painter(&image);
    ui::paintCode(painter, QRectF(20, 20, whole, whole), code);
    painter.end();
    const int quiet = module * ui::quietModules;
    int notWhite = 0;
    for (int along = 0; along < whole; ++along)
        for (int depth = 0; depth < quiet; ++depth)
            for (const QPoint& at : {QPoint(along, depth), QPoint(along, whole - 1 - depth), QPoint(depth, along),
                                     QPoint(whole - 1 - depth, along)})
                notWhite += qGray(image.pixel(20 + at.x(), 20 + at.y())) == 255 ? 0 : 1;
    CHECK(notWhite == 0);
    CHECK(qGray(image.pixel(20 + quiet + 1, 20 + quiet + 1)) == 0); // corner of the finder pattern
    CHECK(ui::withQuietZone(code, 21) == Approx(29));
    CHECK(ui::codeOf("").side == 0);
    CHECK(ui::codeOf(std::string(10'000, 'A')).side == 0);
}

TEST_CASE("no text on paper is smaller than can be read", "[print][paper]")
{
    for (const auto type : {ui::PaperType::plain, ui::PaperType::strong, ui::PaperType::ids, ui::PaperType::idsStrong})
        for (const double points : {0.0, 1.0, 7.4, 7.5, 12.0})
            CHECK(ui::paperFont(type, points).pointSizeF() == Approx(std::max(points, 7.5)));
}

TEST_CASE("what a label says is not cut off where it is long", "[print][labels]")
{
    if (!haveTools({"pdftotext"}))
        return;
    report::SampleFacts facts = wholeSample();
    facts.sample.hostAsBelieved = "sweet chestnut";
    facts.tree = "NORTH-RIDE-17";
    facts.demonstration = true;
    for (const char* sheet : {"4x2", "5x2 top=6 bottom=6 down=0 across=0"}) {
        const std::string text =
            textOf(ui::labelSheetsPdf(report::sampleLabels(facts, "Tharn Vale survey office, box 12", samplePack(), Words()),
                                      *ui::readSheet(QString::fromLatin1(sheet))));
        CAPTURE(text);
        for (const char* part : {"record NORTH-RIDE-17@2026-06-11, square SO54", "TV-31, of the authority, to 30 September 2026",
                                 "11 June 2026, 11.35 +01, by IC, Ines Calloway", "52.09000 N, 2.66000 W, WGS 84, ± 76 m",
                                 "008813 closed 11 June 2026, 11.41 +01", "Demonstration: invented, no real sample",
                                 "Ask Tharn Vale survey office, box 12, by the number above"})
            CHECK(text.find(part) != std::string::npos);
        CHECK(text.find("…") == std::string::npos);
    }
}
