#include "ui/bridge/words_audit.h"

#include <set>

#include "core/protocol/built_in.h"
#include "tests/gui/gui_support.h"

using namespace cupule;
using namespace cupule::ui;

namespace {

AuditPage passed(std::int64_t size, std::int64_t wrong, std::int64_t drawn, double reached)
{
    AuditPage page;
    page.line.state = AuditState::passed;
    page.line.records = size;
    page.line.auditor.name = "Jonah Kerr";
    page.result.emplace();
    page.result->size = {size, wrong, drawn, reached};
    page.result->seed = "00000000000000ff";
    return page;
}

} // namespace

TEST_CASE("every state of a batch, and every reason to leave one, has words", "[gui][words][audit]")
{
    std::set<QString> words;
    for (const AuditState state : {AuditState::open, AuditState::passed, AuditState::failed, AuditState::givenUp})
        words.insert(auditStateWord(state));
    CHECK(words.size() == 4);
    words.clear();
    for (const char* why : {"revised", "decided", "struck", "conflict", "findings", "may-not"})
        words.insert(auditLeftText(why));
    CHECK(words.size() == 6);
    CHECK_FALSE(words.contains(QString()));
}

TEST_CASE("a confidence is never rounded up, an upper bound never down", "[gui][words][audit]")
{
    CHECK(confidenceText(0.95) == QStringLiteral("95 %"));
    CHECK(confidenceText(0.94999) == QStringLiteral("94.9 %"));
    CHECK(confidenceText(1) == QStringLiteral("100 %"));
    CHECK(confidenceText(0.99999) == QStringLiteral("99.9 %"));
    // 14 of 300 are 4.67 %
    CHECK(auditClaimText(passed(300, 15, 54, 0.9512))
          == QStringLiteral("None of the 54 drawn was disagreed with: with 95.1 % confidence at most 14 of the 300 records are wrong, 4.7 %."));
    CHECK(auditClaimText(passed(100, 1, 95, 0.95)).endsWith(QStringLiteral("with 95 % confidence none of the 100 records is wrong.")));
    CHECK(auditClaimText(passed(8, 1, 8, 1)) == QStringLiteral("All 8 records were looked at, and none was disagreed with."));
}

TEST_CASE("a claim says what it rests on", "[gui][words][audit]")
{
    AuditPage page = passed(300, 15, 54, 0.9512);
    CHECK(auditGroundsText(page).join(QLatin1Char(' ')).contains(QStringLiteral("how well Jonah Kerr sees wrong ones is not known")));
    page.result->rejected = {4, 5, Interval{0.376, 0.964}};
    page.result->reachedBySkill = 0.61;
    const QString words = auditGroundsText(page).join(QLatin1Char(' '));
    CHECK(words.contains(QStringLiteral("if Jonah Kerr sees every wrong record")));
    CHECK(words.contains(QStringLiteral("4 of 5 (95 % interval 37.6 % to 96.4 %)")));
    CHECK(words.contains(QStringLiteral("sees no more than 37.6 % of what is wrong, the confidence is 61 %")));
    CHECK(words.contains(QStringLiteral("seed 00000000000000ff")));
    page.result->rejected = {0, 1, Interval{0, 0.793}};
    page.result->reachedBySkill = 0;
    const QString blind = auditGroundsText(page).join(QLatin1Char(' '));
    CHECK(blind.contains(QStringLiteral("it cannot be said that Jonah Kerr sees any wrong record")));
    CHECK_FALSE(blind.contains(QStringLiteral("sees no more than")));
}
