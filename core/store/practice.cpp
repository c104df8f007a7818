#include "core/store/practice.h"

#include "core/store/personal.h"

namespace cupule {

namespace {

std::int64_t sessionRow(StoreCore& core, const Uid& id)
{
    Query q(core.db, "SELECT id FROM practice_session WHERE uid = :uid");
    return q.bind(":uid", id).step() ? q.integer(0) : 0;
}

/// A person may be left out.
std::optional<std::int64_t> personOf(StoreCore& core, const Uid& person)
{
    return person.isNull() ? std::nullopt : referenced(core.personRow(person), person, "person");
}

#define SELECT_SESSION \
    "SELECT s.content, p.uid, (SELECT count(*) FROM practice_answer AS a WHERE a.session = s.id) FROM practice_session AS s " \
    "LEFT JOIN person AS p ON p.id = s.person "

StoredPractice readSession(const Query& q)
{
    return {nounFrom<PracticeSession>(q.view(0)), q.uid(1), q.integer(2)};
}

/// Rows of sessions that a filter lets through, with whose they are. Few against their answers.
struct Chosen {
    std::int64_t session = 0;
    Uid person;
};

std::vector<Chosen> chosen(StoreCore& core, const PracticeFilter& filter)
{
    std::vector<Chosen> rows;
    const auto take = [&](Query& q) {
        while (q.step())
            rows.push_back({q.integer(0), q.uid(1)});
    };
    if (filter.session) {
        Query q(core.db, "SELECT s.id, p.uid, s.cohort FROM practice_session AS s LEFT JOIN person AS p ON p.id = s.person WHERE s.uid = :session");
        take(q.bind(":session", *filter.session));
    } else if (filter.person) {
        Query q(core.db, "SELECT s.id, p.uid FROM person AS p JOIN practice_session AS s ON s.person = p.id "
                         "WHERE p.uid = :person AND (:any OR s.cohort = :cohort) ORDER BY s.id");
        take(q.bind(":person", *filter.person).bind(":any", !filter.cohort).bind(":cohort", filter.cohort.value_or(std::string())));
    } else if (filter.cohort) {
        Query q(core.db, "SELECT s.id, p.uid FROM practice_session AS s LEFT JOIN person AS p ON p.id = s.person "
                         "WHERE s.cohort = :cohort ORDER BY s.person, s.id");
        take(q.bind(":cohort", *filter.cohort));
    } else {
        Query q(core.db, "SELECT s.id, p.uid FROM practice_session AS s LEFT JOIN person AS p ON p.id = s.person ORDER BY s.person, s.id");
        take(q);
    }
    return rows;
}

} // namespace

void recountPractice(StoreCore& core)
{
    core.db.run("DELETE FROM practice_count;"
                "INSERT INTO practice_count SELECT session, kind, subject, truth, given, count(*) FROM practice_item GROUP BY 1, 2, 3, 4, 5;"
                "DELETE FROM practice_sure;"
                "INSERT INTO practice_sure SELECT session, sure, sum(truth = given), count(*) FROM practice_item WHERE sure IS NOT NULL GROUP BY 1, 2;"
                "DELETE FROM practice_hits;"
                "INSERT INTO practice_hits SELECT session, answer, group_concat(truth = given, '') "
                "FROM (SELECT session, answer, truth, given FROM practice_item ORDER BY session, answer, item) GROUP BY 1, 2");
}

Status Practice::begin(Change& change, const PracticeSession& session, const Uid& person)
{
    return writtenIn(change, [&](StoreCore& core) {
        const auto row = personOf(core, person);
        const std::string content = contentOf(session);
        std::optional<Digest> commitment;
        if (row)
            commitment = keepPersonal(core, "practice", session.id, contentOf(PracticePerson{session.id, person}));
        const LineMark line = core.addLine({"practised", "practice", session.id, sha256(content), commitment});
        Query q(core.db, "INSERT INTO practice_session (uid, person, cohort, series, content, commitment, line_chain, line_number) "
                         "VALUES (:uid, :person, :cohort, :series, :content, :commitment, :chain, :number)");
        q.bind(":uid", session.id).bind(":person", row).bind(":cohort", session.cohort).bind(":series", session.plan.series);
        q.bind(":content", content).bind(":commitment", commitment).bind(":chain", line.chain).bind(":number", line.number).run();
    });
}

Result<std::optional<StoredPractice>> Practice::find(const Uid& session)
{
    return guarded([&]() -> std::optional<StoredPractice> {
        Query q(m_core.db, SELECT_SESSION "WHERE s.uid = :uid");
        if (!q.bind(":uid", session).step())
            return std::nullopt;
        return readSession(q);
    });
}

Result<std::vector<StoredPractice>> Practice::sessions(const Uid& person)
{
    return guarded([&] {
        std::vector<StoredPractice> sessions;
        const auto take = [&](Query& q) {
            while (q.step())
                sessions.push_back(readSession(q));
        };
        if (person.isNull()) {
            Query q(m_core.db, SELECT_SESSION "ORDER BY s.id DESC");
            take(q);
        } else {
            Query q(m_core.db, SELECT_SESSION "WHERE s.person = :person ORDER BY s.id DESC");
            take(q.bind(":person", m_core.personRow(person)));
        }
        return sessions;
    });
}

Result<std::vector<std::string>> Practice::cohorts()
{
    return guarded([&] {
        std::vector<std::string> names;
        Query q(m_core.db, "SELECT DISTINCT cohort FROM practice_session WHERE cohort <> '' ORDER BY cohort");
        while (q.step())
            names.push_back(q.text(0));
        return names;
    });
}

Status Practice::answer(Change& change, const PracticeAnswer& answer)
{
    return writtenIn(change, [&](StoreCore& core) {
        const auto session = referenced(sessionRow(core, answer.session), answer.session, "practice");
        const std::string content = contentOf(answer);
        const LineMark line = core.addLine({"answered", "practice", answer.session, sha256(content)});
        Query q(core.db, "INSERT INTO practice_answer (session, number, case_id, content, line_chain, line_number) "
                         "VALUES (:session, :case, :id, :content, :chain, :number)");
        q.bind(":session", session).bind(":case", answer.number).bind(":id", answer.caseId).bind(":content", content);
        q.bind(":chain", line.chain).bind(":number", line.number).run();
        const std::int64_t row = core.db.lastRowId();
        for (std::size_t i = 0; i < answer.items.size(); ++i) {
            const PracticeItem& item = answer.items[i];
            Query each(core.db, "INSERT INTO practice_item (session, answer, item, kind, subject, truth, given, sure) "
                                "VALUES (:session, :answer, :item, :kind, :subject, :truth, :given, :sure)");
            each.bind(":session", session).bind(":answer", row).bind(":item", static_cast<std::int64_t>(i)).bind(":kind", item.kind);
            each.bind(":subject", item.subject).bind(":truth", item.truth).bind(":given", item.given).bind(":sure", item.sure).run();
        }
    });
}

Result<std::vector<PracticeAnswer>> Practice::answers(const Uid& session)
{
    return guarded([&] {
        std::vector<PracticeAnswer> answers;
        Query q(m_core.db, "SELECT content FROM practice_answer WHERE session = :session ORDER BY number");
        q.bind(":session", sessionRow(m_core, session));
        while (q.step())
            answers.push_back(nounFrom<PracticeAnswer>(q.view(0)));
        return answers;
    });
}

Result<std::vector<PracticeCount>> Practice::counts(const PracticeFilter& filter)
{
    return guarded([&] {
        std::vector<PracticeCount> counts;
        for (const Chosen& row : chosen(m_core, filter)) {
            Query q(m_core.db, "SELECT kind, subject, truth, given, answers FROM practice_count WHERE session = :session");
            q.bind(":session", row.session);
            while (q.step())
                counts.push_back({row.person, q.text(0), q.text(1), q.text(2), q.text(3), q.integer(4)});
        }
        return counts;
    });
}

Result<std::vector<PracticeSureCount>> Practice::sureCounts(const PracticeFilter& filter)
{
    return guarded([&] {
        std::vector<PracticeSureCount> counts;
        for (const Chosen& row : chosen(m_core, filter)) {
            Query q(m_core.db, "SELECT sure, hits, answers FROM practice_sure WHERE session = :session");
            q.bind(":session", row.session);
            while (q.step())
                counts.push_back({row.person, q.whole(0), q.integer(1), q.integer(2)});
        }
        return counts;
    });
}

Status Practice::inOrder(const PracticeFilter& filter, const std::function<void(const Uid& person, std::string_view hits)>& take)
{
    return guarded([&] {
        for (const Chosen& row : chosen(m_core, filter)) {
            Query q(m_core.db, "SELECT hits FROM practice_hits WHERE session = :session ORDER BY answer");
            q.bind(":session", row.session);
            while (q.step())
                take(row.person, q.view(0));
        }
    });
}

Result<std::vector<SeriesAnswer>> Practice::series(const std::string& cohort)
{
    return guarded([&] {
        std::vector<SeriesAnswer> answers;
        Query q(m_core.db, "SELECT a.case_id, i.kind, i.subject, i.given, s.uid FROM practice_session AS s "
                           "JOIN practice_answer AS a ON a.session = s.id JOIN practice_item AS i ON i.session = s.id AND i.answer = a.id "
                           "WHERE s.cohort = :cohort AND s.series = 1");
        q.bind(":cohort", cohort);
        while (q.step())
            answers.push_back({q.text(0), q.text(1), q.text(2), q.text(3), q.uid(4)});
        return answers;
    });
}

} // namespace cupule
