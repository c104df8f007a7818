// The three verdicts of the host key in words, each with what it rests on.

#include "tests/gui/gui_support.h"

#include "core/protocol/pack_reader.h"
#include "core/rules/host.h"
#include "ui/bridge/words.h"

using namespace cupule;

namespace {

CharacterSeen seen(const char* character, const char* state, std::optional<double> value = {})
{
    CharacterSeen out;
    out.character = character;
    out.state = state;
    out.value = value;
    return out;
}

QString said(const std::vector<CharacterSeen>& characters)
{
    return ui::hostText(judgeHost(characters, builtInPack(), {"MAR", 6}), builtInPack());
}

} // namespace

TEST_CASE("a verdict says what it is and what it rests on", "[gui][words]")
{
    const Pack& pack = builtInPack();
    const auto words = [&](const char* character, const char* state) {
        return QString::fromStdString(pack.state(character, state)->words);
    };
    const QString host = said({seen("K01", "alternate"), seen("K02", "simple"), seen("K13", "long-slender-catkins")});
    CAPTURE(host);
    CHECK(host.startsWith(QStringLiteral("Is a chestnut (")));
    CHECK(host.contains(words("K13", "long-slender-catkins")));

    const QString other = said({seen("K01", "opposite")});
    CAPTURE(other);
    CHECK(other.startsWith(QStringLiteral("Is not a chestnut, because of: ")));
    CHECK(other.contains(words("K01", "opposite")));

    const QString open = said({seen("K01", "alternate"), seen("K02", "simple")});
    CAPTURE(open);
    CHECK(open.startsWith(QStringLiteral("Cannot tell yet. Agrees with a chestnut: ")));
    CHECK(open.contains(words("K01", "alternate")));
    CHECK(open.contains(QStringLiteral("Lacking: ")));

    CHECK(said({}) == QStringLiteral("Cannot tell yet: nothing is answered."));
}

TEST_CASE("a number that was counted stands with its character", "[gui][words]")
{
    const QString counted = said({seen("K01", "alternate"), seen("K02", "simple"), seen("K03", "teeth-with-points", 18)});
    CAPTURE(counted);
    CHECK(counted.contains(QStringLiteral("(18)")));
    const QString often = said({seen("K01", "alternate"), seen("K02", "simple"), seen("K03", "teeth-with-points", 22),
                                seen("K03", "teeth-with-points", 18), seen("K03", "teeth-with-points", 22)});
    CAPTURE(often);
    CHECK(often.contains(QStringLiteral("(18, 22)")));
    CHECK(often.count(QString::fromStdString(builtInPack().state("K03", "teeth-with-points")->words)) == 1);
}

TEST_CASE("one contradiction leaves it open and is named", "[gui][words]")
{
    // One other contradiction is "cannot tell yet", contradiction named: decisions on the trade, 13.
    const Pack& pack = builtInPack();
    for (const KindRow& row : pack.key) {
        if (row.mark != Mark::contradicts || row.states.empty())
            continue;
        const HostVerdict verdict =
            judgeHost(std::vector{seen(row.character.c_str(), row.states.front().c_str())}, pack, {"MAR", 6});
        if (verdict.answer != HostAnswer::cannotTell || verdict.contradictions.size() != 1)
            continue;
        CHECK(ui::hostText(verdict, pack).contains(QStringLiteral("Speaks against one: ")));
        return;
    }
    FAIL("no character of the pack contradicts alone");
}
