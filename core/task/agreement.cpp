#include "core/task/agreement.h"

#include <algorithm>
#include <map>
#include <set>

#include "core/rules/deciding.h"
#include "core/store/decisions.h"
#include "core/store/people.h"
#include "core/task/lines.h"

namespace cupule {

namespace {

constexpr std::size_t answers = 3;

/// Accepted, returned, rejected; nothing for an event.
std::optional<std::size_t> answerOf(Outcome outcome)
{
    switch (outcome) {
    case Outcome::accept:
        return 0;
    case Outcome::giveBack:
        return 1;
    case Outcome::reject:
        return 2;
    case Outcome::withdraw:
    case Outcome::reopen:
        break;
    }
    return std::nullopt;
}

struct Judgement {
    std::string by;
    std::size_t answer = 0;
};

/// The first two people who judged one revision since the last reopening of the record; fewer where there were not two.
std::vector<Judgement> independentOnes(const std::vector<Decision>& standing, const std::map<Uid, std::string>& codes)
{
    std::vector<Judgement> judged;
    Uid revision;
    for (const Decision& decision : standing) {
        if (!decision.batch.isNull()) // nobody looked at the record for this
            continue;
        const auto answer = answerOf(decision.outcome);
        if (!answer || decision.revision != revision)
            judged.clear();
        revision = decision.revision;
        const auto code = codes.find(decision.by);
        const std::string by = code == codes.end() ? decision.by.text() : code->second;
        const bool again = std::any_of(judged.begin(), judged.end(), [&](const Judgement& one) { return one.by == by; });
        if (answer && !again && judged.size() < 2)
            judged.push_back({by, *answer});
    }
    return judged;
}

/// By which code a person counts: the first one of all entries that are the same person.
Result<std::map<Uid, std::string>> codesOf(Session& session)
{
    const auto people = session.store().people().all();
    if (!people)
        return fail(people.error());
    std::map<Uid, std::string> codes;
    for (const Person& person : *people) {
        const std::set<Uid> entries = everyEntryOf(person.id, *people);
        std::string code = person.code;
        for (const Person& other : *people)
            if (entries.contains(other.id))
                code = std::min(code, other.code);
        codes[person.id] = code;
    }
    return codes;
}

/// Counts what two people, or many, said of records.
class Counting {
public:
    void add(std::vector<Judgement> judged, const std::vector<Decision>& decisions)
    {
        if (judged.size() < 2)
            return;
        std::sort(judged.begin(), judged.end(), [](const Judgement& a, const Judgement& b) { return a.by < b.by; });
        AnswerTable& table = m_tables[{judged[0].by, judged[1].by}];
        if (table.empty())
            table.assign(answers, std::vector<std::int64_t>(answers));
        ++table[judged[0].answer][judged[1].answer];
        std::vector<std::int64_t> row(answers);
        for (const Judgement& one : judged) {
            ++row[one.answer];
            m_people.insert(one.by);
        }
        m_rows.push_back(std::move(row));
        for (const Decision& decision : decisions) {
            const CivilDate day = CivilDate::of(decision.at);
            m_first = m_first ? std::min(*m_first, day) : day;
            m_last = m_last ? std::max(*m_last, day) : day;
        }
    }

    [[nodiscard]] VerifierAgreement result() const
    {
        VerifierAgreement result;
        result.records = static_cast<int>(m_rows.size());
        result.verifiers = static_cast<int>(m_people.size());
        result.first = m_first;
        result.last = m_last;
        for (const auto& [pair, table] : m_tables)
            if (const auto agreement = agreementOfTwo(table))
                result.pairs.push_back({pair.first, pair.second, table, *agreement});
        std::stable_sort(result.pairs.begin(), result.pairs.end(), [](const VerifierPair& a, const VerifierPair& b) {
            return a.agreement.things > b.agreement.things;
        });
        if (m_people.size() > 2)
            result.all = agreementOfMany(m_rows);
        return result;
    }

private:
    std::map<std::pair<std::string, std::string>, AnswerTable> m_tables;
    AnswerTable m_rows;
    std::set<std::string> m_people;
    std::optional<CivilDate> m_first, m_last;
};

} // namespace

Result<VerifierAgreement> verifierAgreement(Session& session)
{
    const auto codes = codesOf(session);
    if (!codes)
        return fail(codes.error());
    const auto all = session.store().decisions().ofManyDecided();
    if (!all)
        return fail(all.error());
    Counting counting;
    for (std::size_t from = 0; from < all->size();) {
        std::vector<Decision> ofRecord;
        for (const Uid visit = (*all)[from].visit; from < all->size() && (*all)[from].visit == visit; ++from)
            ofRecord.push_back((*all)[from]);
        counting.add(independentOnes(standingDecisions(ofRecord), *codes), ofRecord);
    }
    return counting.result();
}

} // namespace cupule
