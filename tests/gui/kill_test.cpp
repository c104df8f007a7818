// The program is killed while somebody types: every field that was left is in the store, at most the one being typed is lost.
// The typist is this same program in another process, with real key events, reporting each field once it has left it.

#include "tests/gui/at_desk.h"

#include <cstdio>
#include <cstdlib>

#include <QProcess>

using namespace cupule;
using cupule::test::Desk;
using cupule::test::FindStore;
using cupule::test::person;

namespace {

constexpr auto folderName = "CUPULE_TYPIST_FOLDER";

void report(int visit, const char* field, int value)
{
    std::printf("left %d %s %d\n", visit, field, value);
    std::fflush(stdout);
}

int minutesOf(int visit)
{
    return 1 + visit % 50;
}

int crownOf(int visit)
{
    return 5 + visit % 90;
}

/// What the typist says it has left, line by line, until `lines` are read; then it is killed in the middle of a key.
QStringList typeAndKill(const QString& folder, int lines)
{
    QProcess typist;
    QProcessEnvironment environment = QProcessEnvironment::systemEnvironment();
    environment.insert(QString::fromLatin1(folderName), folder);
    typist.setProcessEnvironment(environment);
    typist.start(QCoreApplication::applicationFilePath(), {QStringLiteral("[.typist]")});
    QStringList left;
    while (left.size() < lines && typist.waitForReadyRead(60000))
        while (typist.canReadLine())
            if (const QString line = QString::fromUtf8(typist.readLine()).trimmed(); line.startsWith(QStringLiteral("left ")))
                left << line;
    typist.kill();
    typist.waitForFinished();
    return left;
}

} // namespace

TEST_CASE("types visits until it is killed", "[.typist]")
{
    const char* folder = std::getenv(folderName);
    REQUIRE(folder != nullptr);
    const QString path = QString::fromUtf8(folder) + QStringLiteral("/vale.cupule");
    Desk desk(person("KT", "Kit Thorne"), {Role::volunteer}, path);
    for (int visit = 1; visit < 500; ++visit) {
        desk.key(Qt::Key_N, Qt::ControlModifier);
        desk.type(("K-" + std::to_string(visit)).c_str());
        desk.key(Qt::Key_Return);
        desk.fill("minutes", std::to_string(minutesOf(visit)).c_str());
        desk.key(Qt::Key_Tab);
        report(visit, "minutes", minutesOf(visit));
        desk.fill("crown", std::to_string(crownOf(visit)).c_str());
        desk.key(Qt::Key_Tab);
        report(visit, "crown", crownOf(visit));
    }
}

TEST_CASE("a killed window loses at most the field being typed", "[gui][kill]")
{
    for (const int lines : {1, 6, 13, 20}) {
        const FindStore store;
        const QStringList left = typeAndKill(store.folder.path(), lines);
        REQUIRE(left.size() >= lines);

        Desk desk(person("MH", "Maud Harrow"), {Role::volunteer}, store.path);
        const auto kept = visitsOfDay(desk.session(), desk.session().today(), {}).value();
        for (const QString& line : left) {
            const QStringList parts = line.split(QLatin1Char(' '));
            const std::string label = "K-" + parts[1].toStdString();
            const auto at = std::find_if(kept.begin(), kept.end(), [&](const VisitLine& v) { return v.treeLabel == label; });
            INFO(line.toStdString());
            REQUIRE(at != kept.end());
            const Effort effort = visitPage(desk.session(), at->id).value().visit.effort;
            CHECK((parts[2] == QStringLiteral("minutes") ? effort.minutes : effort.crownPercent) == parts[3].toInt());
        }
        CHECK(proveJournal(desk.session(), {}).value().whole);
    }
}
