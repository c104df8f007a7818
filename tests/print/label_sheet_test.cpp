#include "ui/bridge/label_sheet.h"

#include "tests/support/catch.h"

using namespace cupule::ui;

TEST_CASE("labels lie on the sheet without touching each other or leaving it", "[print][sheet]")
{
    for (const char* text : {"4x2", "5x2 top=6 bottom=6 down=0 across=0", "1x1", "3x2 left=10 right=12 down=4.5"}) {
        CAPTURE(text);
        const auto setup = readSheet(QString::fromLatin1(text));
        REQUIRE(setup);
        const QRectF sheet(0, 0, 210.001, 297.001);
        for (int i = 0; i < setup->perSheet(); ++i) {
            CHECK(sheet.contains(setup->place(i)));
            for (int j = 0; j < i; ++j) {
                const QRectF both = setup->place(i).intersected(setup->place(j));
                CHECK(both.width() * both.height() < 1e-6);
            }
        }
        CHECK(setup->place(setup->perSheet() - 1).right() == Approx(210 - setup->right));
        CHECK(setup->place(setup->perSheet() - 1).bottom() == Approx(297 - setup->bottom));
    }
}

TEST_CASE("a set-up reads back as it is written", "[print][sheet]")
{
    SheetSetup setup;
    setup.rows = 5;
    setup.top = setup.bottom = 6;
    setup.down = 0;
    setup.across = 2.5;
    setup.free = 4;
    REQUIRE(setup.fits());
    const auto read = readSheet(sheetText(setup));
    REQUIRE(read);
    CHECK(*read == setup);
    CHECK(*readSheet(QStringLiteral("4X2")) == SheetSetup());
}

TEST_CASE("a set-up that does not read or has no room for a label is none", "[print][sheet]")
{
    for (const char* text : {"", "4", "x2", "0x2", "4x0", "4x2 top", "4x2 top=wide", "4x2 height=3", "4x2 left=-1", "4x2 free=0",
                             "4x2 free=9", "6x2", "4x3", "4x2 left=60", "4x2 top=nan", "4x2 left=inf", "100x100", "-4x2"}) {
        CAPTURE(text);
        CHECK_FALSE(readSheet(QString::fromLatin1(text)));
    }
}
