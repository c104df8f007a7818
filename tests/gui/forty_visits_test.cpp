// A whole day from a script of keys, without the mouse, and what the store holds afterwards. The script lies beside this file.

#include "tests/gui/at_desk.h"

#include <QFile>
#include <QRegularExpression>

using namespace cupule;
using cupule::test::Desk;

namespace {

struct Scripted {
    QString keys;
    std::string summary;
    int minutes = 0;
};

std::vector<Scripted> script()
{
    QFile file(QStringLiteral("tests/gui/forty_visits.keys"));
    REQUIRE(file.open(QIODevice::ReadOnly));
    std::vector<Scripted> visits;
    while (!file.atEnd()) {
        const QString line = QString::fromUtf8(file.readLine()).remove(QLatin1Char('\n'));
        const QStringList parts = line.split(QStringLiteral(" | "));
        if (!line.startsWith(QLatin1Char('#')) && parts.size() == 3)
            visits.push_back({parts[0], parts[1].toStdString(), parts[2].toInt()});
    }
    return visits;
}

void play(Desk& desk, const QString& keys)
{
    static const QHash<QString, std::pair<int, Qt::KeyboardModifiers>> named{
        {QStringLiteral("enter"), {Qt::Key_Return, {}}},
        {QStringLiteral("tab"), {Qt::Key_Tab, {}}},
        {QStringLiteral("down"), {Qt::Key_Down, {}}},
        {QStringLiteral("home"), {Qt::Key_Home, {}}},
        {QStringLiteral("f7"), {Qt::Key_F7, {}}},
        {QStringLiteral("ctrl+n"), {Qt::Key_N, Qt::ControlModifier}},
        {QStringLiteral("ctrl+down"), {Qt::Key_Down, Qt::ControlModifier}},
        {QStringLiteral("ctrl+up"), {Qt::Key_Up, Qt::ControlModifier}},
    };
    static const QRegularExpression token(QStringLiteral("<([^>]+)>|([^<]+)"));
    for (auto at = token.globalMatch(keys); at.hasNext();) {
        const auto match = at.next();
        if (const auto key = named.find(match.captured(1)); key != named.end())
            desk.key(key->first, key->second);
        else
            desk.type(match.captured(2).toUtf8().constData());
    }
}

} // namespace

TEST_CASE("a day of forty visits goes in by keys alone, from an empty Day to handed in", "[gui][main-job][forty]")
{
    const auto visits = script();
    REQUIRE(visits.size() == 40);
    Desk desk;
    for (const Scripted& visit : visits)
        play(desk, visit.keys);
    auto lines = desk.visits();
    REQUIRE(lines.size() == 40);
    for (std::size_t i = 0; i < lines.size(); ++i) {
        INFO("visit " << i + 1 << ", " << lines[i].treeLabel);
        CHECK(lines[i].summary == visits[i].summary);
        const VisitPage page = visitPage(desk.session(), lines[i].id).value();
        CHECK(page.visit.effort.minutes == visits[i].minutes);
        CHECK(page.visit.hygiene.clothes == Confirmed::done);
        CHECK(page.visit.hygiene.tools == Confirmed::noneUsed);
        for (const Finding& finding : page.findings)
            CHECK((finding.severity == Severity::stop ? finding.code : std::string()) == "");
    }
    CHECK(countTrees(desk.session(), {}).value() == 24);
    desk.inDialog([](QDialog& dialog) { QTest::keyClick(&dialog, Qt::Key_Return); });
    desk.key(Qt::Key_Return, Qt::ControlModifier);
    for (const VisitLine& line : desk.visits())
        CHECK(line.state == RecordState::submitted);
}
