// Every question that a case can ask has words, with every option and every reason.

#include "tests/gui/gui_support.h"

#include <set>

#include <QRegularExpression>

#include "core/protocol/pack_reader.h"
#include "core/training/custody_order.h"
#include "ui/bridge/words_practice.h"
#include "ui/training/confusion_table.h"

using namespace cupule;

namespace {

/// A sentence with a place left open, an id of the pack or a stored name in it.
bool isRaw(const QString& words)
{
    static const QRegularExpression raw(QStringLiteral("%[0-9]|[{}]|\\b[KS][0-9]{2}\\b|-judged|gall-line|wrong-host|#"));
    return words.isEmpty() || words.contains(raw);
}

} // namespace

TEST_CASE("every question of practice, its options and what stands behind the key have words", "[gui][words][practice]")
{
    const Pack& pack = builtInPack();
    int asked = 0;
    std::set<AskedKind> kinds;
    for (const int month : {1, 4, 6, 10})
        for (const Topic& topic : topicsOf(pack, {"MAR", month, 2026})) {
            CHECK(!isRaw(ui::topicText(topic, pack)));
            CaseRequest request;
            request.seed = 5;
            request.number = month;
            request.topic = topic;
            request.step = 1 + month % 5;
            request.place = {"MAR", month, 2026};
            const auto practice = makeCase(pack, request);
            for (const AskedItem& item : practice ? practice->asked : std::vector<AskedItem>{}) {
                ++asked;
                kinds.insert(item.kind);
                INFO(askedName(item.kind) << " " << item.subject);
                CHECK(!isRaw(ui::askedText(item, pack)));
                CHECK(!isRaw(ui::subjectText(item.kind, item.subject, pack)));
                for (const std::string& option : item.options) {
                    INFO(option);
                    CHECK(!isRaw(ui::optionText(item, option, pack)));
                }
                if (const QString because = ui::becauseText(item, pack); !because.isEmpty())
                    CHECK(!isRaw(because));
            }
        }
    CHECK(asked > 200);
    CHECK(kinds.size() == std::size(askedKinds));
    for (const std::string_view step : custodySteps())
        CHECK(!isRaw(ui::custodyStepText(std::string(step))));
    for (const AskedKind kind : askedKinds)
        CHECK(!isRaw(ui::askedKindText(kind)));
    for (const DifficultyStep& step : difficultySteps())
        CHECK(!isRaw(ui::difficultyText(step)));
}

TEST_CASE("ready is a word, and what is not known yet is never called not ready", "[gui][words][practice]")
{
    CHECK(ui::readinessText(Readiness::ready) == QStringLiteral("Ready"));
    CHECK(ui::readinessText(Readiness::notYetKnown) == QStringLiteral("not yet known"));
}

TEST_CASE("what somebody was measured to find is said with its interval, and few answers are said to be few", "[gui][words][practice]")
{
    // Wilson's interval of 15 in 148 is 0.0624 to 0.1605: Newcombe 1998, Stat. Med. 17:857-872, Table I; of 0 in 20 it ends at 0.1611, so that of 20 in 20
    // begins at 0.8389.
    ToldSign sign{{20, 15, 20, "S02", 148}, Share{15.0 / 148, wilson(15, 148)}, Share{1, wilson(20, 20)}, true};
    CHECK(ui::skillText(sign) == QStringLiteral("finds 15 of 148 (6 to 16 %), says no rightly 20 of 20 (84 to 100 %); few answers"));
    sign.few = false;
    CHECK(ui::skillText(sign) == QStringLiteral("finds 15 of 148 (6 to 16 %), says no rightly 20 of 20 (84 to 100 %)"));
    sign.found.reset();
    sign.passed.reset();
    CHECK(ui::skillText(sign) == QStringLiteral("was never shown it, was never shown it absent"));
}

TEST_CASE("in a table of what was taken for what a right answer is never marked as a wrong one", "[gui][practice]")
{
    const std::vector<Tally> tallies{{AskedKind::host, "castanea-sativa", "yes", "yes", 7}, {AskedKind::host, "castanea-sativa", "yes", "no", 2},
                                     {AskedKind::sign, "S01", "no", "no", 3},               {AskedKind::sign, "S01", "no", "yes", 3}};
    const auto results = practiceResults(tallies, {}, {});
    REQUIRE(results.confusions.size() == 2);
    for (const Confusion& confusion : results.confusions) {
        ui::ConfusionModel model(nullptr);
        model.setConfusion(confusion, &builtInPack());
        const int right = confusion.kind == AskedKind::host ? 1 : 0, wrong = 1 - right;   // columns: no, yes, could not be judged
        CHECK(model.cell(0, right) == ui::ConfusionModel::Cell::right);
        CHECK(model.cell(0, wrong) == ui::ConfusionModel::Cell::often);
        CHECK(model.cell(0, 2) == ui::ConfusionModel::Cell::none);
    }
}
