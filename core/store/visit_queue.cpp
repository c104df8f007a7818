// The queue, narrowed: which of the records are wanted.

#include "core/record/names.h"
#include "core/store/store_core.h"
#include "core/store/visits.h"
#include "core/store/words.h"

namespace cupule {

namespace {

constexpr const char* latitude = "coalesce(tree.latitude, visit.content ->> '$.position.latitude')";
constexpr const char* longitude = "coalesce(tree.longitude, visit.content ->> '$.position.longitude')";

std::string named(const char* name, std::size_t number)
{
    return std::string(name) + std::to_string(number);
}

/// Conditions of one filter, and the values that they name.
class Narrowing {
public:
    Narrowing(StoreCore& core, const QueueFilter& filter) : m_core(core), m_filter(filter), m_words(wordQueries(core.db, filter.words)) {}

    [[nodiscard]] std::string sql() const
    {
        std::string sql = "SELECT visit.uid FROM visit LEFT JOIN tree ON tree.id = visit.tree WHERE " + base() + codes();
        if (!m_filter.sign.empty())
            sql += " AND instr(' ' || visit.signs || ' ', :sign) > 0";
        if (!m_filter.site.isNull())
            sql += " AND tree.site = :site";
        if (!m_filter.observer.isNull())
            sql += " AND visit.observer = :observer";
        if (m_filter.from)
            sql += " AND visit.day >= :from";
        if (m_filter.to)
            sql += " AND visit.day <= :to";
        sql += square() + words();
        return sql + (waits() ? " ORDER BY visit.queue_rank, visit.day, visit.id" : " ORDER BY visit.day DESC, visit.id DESC") + " LIMIT :most";
    }

    void bind(Query& q, int most) const
    {
        if (!waits())
            q.bind(":state", state());
        for (std::size_t i = 0; i < m_filter.codes.size(); ++i)
            q.bind(named(":code", i).c_str(), m_filter.codes[i]);
        if (!m_filter.sign.empty())
            q.bind(":sign", ' ' + m_filter.sign + ' ');
        if (!m_filter.site.isNull())
            q.bind(":site", m_core.siteRow(m_filter.site));
        if (!m_filter.observer.isNull())
            q.bind(":observer", m_core.personRow(m_filter.observer));
        if (m_filter.from)
            q.bind(":from", *m_filter.from);
        if (m_filter.to)
            q.bind(":to", *m_filter.to);
        for (std::size_t i = 0; m_filter.corners && i < m_filter.corners->size(); ++i)
            q.bind(named(":corner", i).c_str(), (*m_filter.corners)[i]);
        for (std::size_t i = 0; i < m_words.size(); ++i)
            q.bind(named(":word", i).c_str(), m_words[i]);
        q.bind(":most", most);
    }

private:
    [[nodiscard]] bool waits() const { return m_filter.show == QueueShow::waiting || m_filter.show == QueueShow::corrections; }

    [[nodiscard]] std::string_view state() const
    {
        return name(m_filter.show == QueueShow::accepted   ? RecordState::accepted
                    : m_filter.show == QueueShow::rejected ? RecordState::rejected
                                                           : RecordState::returned);
    }

    /// As the partial indices have it, so that they are used.
    [[nodiscard]] std::string base() const
    {
        if (!waits())
            return "visit.state = :state AND visit.state <> 'draft' AND visit.struck = 0";
        return m_filter.show == QueueShow::waiting ? "visit.queued = 1" : "visit.queued = 1 AND visit.correction_waits = 1";
    }

    [[nodiscard]] std::string codes() const
    {
        std::string list;
        for (std::size_t i = 0; i < m_filter.codes.size(); ++i)
            list += (i == 0 ? "" : ", ") + named(":code", i);
        return list.empty() ? list : " AND visit.queue_code IN (" + list + ")";
    }

    /// To the left of each edge.
    [[nodiscard]] std::string square() const
    {
        std::string sql;
        for (std::size_t i = 0; m_filter.corners && i < 4; ++i) {
            const std::size_t next = (i + 1) % 4;
            const std::string y = named(":corner", 2 * i), x = named(":corner", 2 * i + 1);
            const std::string nextY = named(":corner", 2 * next), nextX = named(":corner", 2 * next + 1);
            sql += " AND (" + nextX + " - " + x + ") * (" + latitude + " - " + y + ") - (" + nextY + " - " + y + ") * (" + longitude + " - "
                   + x + ") >= 0";
        }
        return sql;
    }

    [[nodiscard]] std::string words() const
    {
        std::string sql;
        for (std::size_t i = 0; i < m_words.size(); ++i) {
            const std::string word = named(":word", i);
            const auto in = [&](const std::string& table) {
                return " IN (SELECT rowid FROM " + table + " WHERE " + table + " MATCH " + word + ")";
            };
            sql += " AND (visit.tree" + in("tree_words") + " OR tree.site" + in("site_words") + " OR visit.id" + in("visit_words");
            sql += (m_filter.searchNames ? " OR visit.observer" + in("person_words") : std::string()) + ")";
        }
        return sql;
    }

    StoreCore& m_core;
    const QueueFilter& m_filter;
    std::vector<std::string> m_words;
};

} // namespace

Result<std::vector<Uid>> Visits::queueMatching(const QueueFilter& filter, int most)
{
    return guarded([&] {
        const Narrowing narrowing(m_core, filter);
        Query q(m_core.db, narrowing.sql());
        narrowing.bind(q, most);
        std::vector<Uid> found;
        while (q.step())
            found.push_back(q.uid(0));
        return found;
    });
}

} // namespace cupule
