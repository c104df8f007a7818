#include "app/verbs/audit_words.h"

#include <charconv>

#include "app/text.h"
#include "app/words.h"
#include "core/record/names.h"
#include "ui/bridge/words_audit.h"

namespace cupule::app {

namespace {

Json namedJson(const AuditNamed& record)
{
    return {{"id", record.visit.text()}, {"tree", record.treeLabel}, {"date", record.date.text()}};
}

Json skillJson(const AuditSkill& skill)
{
    Json json{{"right", skill.right}, {"shown", skill.shown}};
    if (skill.share)
        json["interval_95"] = {skill.share->lower, skill.share->upper};
    return json;
}

} // namespace

void BatchVerb::declareBatch(CLI::App& options)
{
    declareStore(options);
    options.add_option("BATCH", m_batch, "which batch, by its number")->required();
}

Result<std::unique_ptr<Session>> BatchVerb::openBatch(Run& run, bool readOnly)
{
    auto session = run.open(m_store, readOnly);
    if (!session)
        return session;
    const auto id = findAudit(**session, m_batch);
    if (!id)
        return fail(id.error());
    m_id = *id;
    return session;
}

Json auditLineJson(const AuditLine& line)
{
    return {{"id", line.id.text()},
            {"number", line.number},
            {"state", name(line.state)},
            {"made", line.made == Instant{} ? std::string() : instantText(line.made)},
            {"maker", line.maker.code},
            {"auditor", line.auditor.code},
            {"records", line.records},
            {"answered", line.answered},
            {"to_answer", line.toAnswer}};
}

Json auditSizeJson(const AuditSize& size)
{
    return {{"records", size.size}, {"wrong", size.wrong}, {"drawn", size.drawn}, {"confidence_reached", size.reached}};
}

Json auditPageJson(const AuditPage& page)
{
    Json json = auditLineJson(page.line);
    json["confidence"] = page.confidence;
    json["tolerable"] = page.tolerable;
    if (!page.result)
        return json;
    const AuditResult& result = *page.result;
    json["size"] = auditSizeJson(result.size);
    json["seed"] = result.seed;
    json["known_accepted"] = skillJson(result.accepted);
    json["known_rejected"] = skillJson(result.rejected);
    if (result.reachedBySkill)
        json["confidence_by_skill"] = *result.reachedBySkill;
    json["disagreements"] = Json::array();
    for (const auto& record : result.disagreements) {
        Json one = namedJson(record);
        one["outcome"] = name(record.outcome);
        one["reasons"] = record.reasons;
        one["remark"] = record.remark;
        json["disagreements"].push_back(std::move(one));
    }
    json["left"] = Json::array();
    for (const auto& record : result.left) {
        Json one = namedJson(record);
        one["why"] = record.why;
        json["left"].push_back(std::move(one));
    }
    return json;
}

void sayBatch(Run& run, const AuditPage& page, const Pack& pack)
{
    run.say("Batch {number}, of {records} records by {maker}, audited by {auditor}: {state}.",
            {{"number", std::to_string(page.line.number)},
             {"records", std::to_string(page.line.records)},
             {"maker", page.line.maker.code},
             {"auditor", page.line.auditor.code},
             {"state", plain(ui::auditStateWord(page.line.state))}});
    run.line(plain(ui::auditClaimText(page)));
    for (const auto& line : ui::auditGroundsText(page))
        run.line("  " + plain(line));
    if (!page.result)
        return;
    for (const auto& record : page.result->disagreements)
        run.line("  " + plain(ui::auditDisagreementText(record, pack)));
    for (const auto& record : page.result->left)
        run.say("  {tree}, {date}, left the batch. {why}", {{"tree", record.treeLabel},
                                                            {"date", run.words().date(record.date)},
                                                            {"why", plain(ui::auditLeftText(record.why))}});
}

Result<double> readShare(const std::string& typed)
{
    double value = 0;
    const char* end = typed.data() + typed.size();
    const auto read = std::from_chars(typed.data(), end, value);
    const bool percent = read.ptr != end && std::string(read.ptr, end) == "%";
    if (read.ec != std::errc() || (read.ptr != end && !percent))
        return fail("audit.share", FaultKind::usage);
    return percent || value >= 1 ? value / 100 : value;
}

} // namespace cupule::app
