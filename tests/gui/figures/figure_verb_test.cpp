// The verb that writes the figures.

#include "tests/support/catch.h"

#include <QImage>

#include "core/base/file.h"
#include "tests/app/command.h"
#include "ui/figures/sheet.h"

using namespace cupule;
using namespace cupule::test;

TEST_CASE("figures are written as SVG and PNG, with a sheet of all of them", "[app][figures]")
{
    Command command;
    const std::string folder = command.path("plates");
    const auto said = command.run({"figures", folder, "--only", "leaf_castanea", "gall_midrib", "--pixels", "400", "--json"}).json();
    CHECK(said["figures"] == nlohmann::json({"leaf_castanea", "gall_midrib"}));
    for (const char* name : {"leaf_castanea", "gall_midrib"}) {
        CAPTURE(name);
        CHECK(readFile(folder + "/" + name + ".svg").value() ==
              ui::figureSvg(ui::plate(QString::fromLatin1(name))).toStdString());
        const QImage picture(QString::fromStdString(folder + "/" + name + ".png"));
        CHECK(std::max(picture.width(), picture.height()) == 400);
    }
    const QImage sheet(QString::fromStdString(folder + "/contact.png"));
    CHECK(sheet.width() > 3 * 100);
}

TEST_CASE("the sheet holds as many seeds of each figure as are asked for, the first one as the file beside it", "[app][figures]")
{
    Command command;
    const auto sheetOf = [&](const char* name, std::vector<std::string> more) {
        std::vector<std::string> words{"figures", command.path(name), "--only", "leaf_castanea", "leaf_fagus", "--pixels", "64"};
        words.insert(words.end(), more.begin(), more.end());
        CHECK(command.run(words).code == 0);
        return QImage(QString::fromStdString(command.path(name) + "/contact.png"));
    };
    const QImage usual = sheetOf("usual", {}), two = sheetOf("two", {"--seeds", "2"}), below = sheetOf("below", {"--seeds", "2", "--across", "1"});
    CHECK(usual.width() == 3 * two.width() / 2);
    CHECK(usual.height() == two.height());
    CHECK(below.width() == two.width() / 2);
    CHECK(below.height() == 2 * two.height());
    const QImage later = sheetOf("later", {"--seeds", "1", "--across", "1", "--seed", "2"}); // its first cell is the second of the others
    CHECK(later.copy(0, 0, later.width(), 180) == below.copy(later.width(), 0, later.width(), 180));
    CHECK(command.run({"figures", command.path("none"), "--seeds", "0"}).code == 2);
}

TEST_CASE("a figure that there is not is named, and nothing is written", "[app][figures]")
{
    Command command;
    const std::string folder = command.path("plates");
    const auto refused = command.run({"figures", folder, "--only", "leaf_of_nothing", "--json"});
    CHECK(refused.code == 2);
    CHECK(refused.json()["error"] == "name.unknown");
    CHECK_FALSE(readFile(folder + "/contact.png"));
    CHECK(command.run({"figures", command.path("a") + "/\n/b", "--only", "leaf_castanea", "--pixels", "10"}).code == 2);
}
