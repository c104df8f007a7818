#include "ui/review/review_desk.h"

#include <algorithm>
#include <memory>
#include <utility>

#include "core/task/photos.h"
#include "core/task/sight.h"
#include "ui/bridge/text.h"

namespace cupule::ui {

ReviewDesk::ReviewDesk(Workbench& bench, QObject* parent) : QObject(parent), m_bench(bench)
{
    connect(&bench, &Workbench::storeClosed, this, [this] {
        m_count = 0;
        m_wanted = {};
        m_found = {};
        m_looking = false;
        m_page.reset();
        m_lastDecided = {};
    });
}

void ReviewDesk::refresh()
{
    if (m_bench.session() == nullptr)
        return;
    lookThrough([this] {
        Q_EMIT listChanged();
        const Uid shown = m_page ? m_page->visit.visit.id : std::exchange(m_next, Uid{});
        if (shown.isNull())
            showRow(0);
        else
            show(shown);
    });
}

int ReviewDesk::count() const
{
    return isNarrowed() ? static_cast<int>(m_found.visits.size()) : m_count;
}

/// Counts what waits, and finds again what the list is narrowed to: at once, or beside the window where that takes long.
void ReviewDesk::lookThrough(const std::function<void()>& then)
{
    const auto count = countQueue(*m_bench.session());
    if (!count)
        m_bench.complain(count.error());
    m_count = count.value_or(0);
    if (!isNarrowed()) {
        m_found = {};
        then();
        return;
    }
    auto found = std::make_shared<QueueFound>();
    const auto look = [found, wanted = m_wanted](Session& session, const Progress&) -> Status {
        auto all = findInQueue(session, wanted);
        if (!all)
            return tl::unexpected<Fault>(all.error());
        *found = std::move(*all);
        return {};
    };
    const auto took = [this, found, then, wanted = m_wanted](const Status& status) {
        m_looking = false;
        if (wanted != m_wanted)
            return;                         // narrowed anew meanwhile
        if (!status)
            m_bench.complain(status.error());
        m_found = std::move(*found);
        then();
    };
    if (recordsToLookThrough(*m_bench.session(), m_wanted).value_or(0) <= shortQueue) {
        took(look(*m_bench.session(), {}));
        return;
    }
    m_looking = true;
    m_bench.jobs().start(tr("Looking through the records"), look, took);
}

void ReviewDesk::narrow(const QueueWanted& wanted)
{
    if (m_bench.session() == nullptr || wanted == m_wanted)
        return;
    if (const auto may = mayNarrowTo(*m_bench.session(), wanted); !may) {
        m_bench.complain(may.error());
        return;
    }
    m_wanted = wanted;
    m_page.reset();
    refresh();
}

std::vector<NamedWanted> ReviewDesk::kept()
{
    return keptWanted(*m_bench.session()).value_or(std::vector<NamedWanted>{});
}

bool ReviewDesk::keep(const QString& name, const QueueWanted& wanted)
{
    const auto kept = keepWanted(*m_bench.session(), {utf8(name), wanted}, utf8(tr("choice of records")));
    if (!kept)
        m_bench.complain(kept.error());
    return kept.has_value();
}

void ReviewDesk::forget(const QString& name)
{
    if (const auto done = forgetWanted(*m_bench.session(), utf8(name), utf8(tr("choice of records"))); !done)
        m_bench.complain(done.error());
}

std::vector<Site> ReviewDesk::sites()
{
    return page() && !page()->whole ? std::vector<Site>{} : allSites(*m_bench.session()).value_or(std::vector<Site>{});
}

std::vector<Person> ReviewDesk::people()
{
    auto people = allPeople(*m_bench.session()).value_or(std::vector<Person>{});
    for (Person& person : people)
        hide(reviewSight(*m_bench.session()), person);
    return people;
}

std::vector<ConflictLine> ReviewDesk::conflicts()
{
    auto lines = openConflicts(*m_bench.session());
    if (!lines) {
        m_bench.complain(lines.error());
        return {};
    }
    return std::move(*lines);
}

std::optional<ConflictPage> ReviewDesk::conflict(const Uid& entity)
{
    auto page = conflictPage(*m_bench.session(), entity);
    if (!page) {
        m_bench.complain(page.error());
        return std::nullopt;
    }
    return std::move(*page);
}

bool ReviewDesk::settle(const ConflictPage& page, const Settlement& settlement)
{
    if (const auto status = settleConflict(*m_bench.session(), page.line.entity, page.heads, settlement); !status) {
        m_bench.complain(status.error());
        return false;
    }
    m_bench.say(tr("Settled. Every version stays in the journal."));
    m_bench.tellChanged();
    return true;
}

std::optional<VerifierAgreement> ReviewDesk::agreement()
{
    auto agreement = verifierAgreement(*m_bench.session());
    if (!agreement) {
        m_bench.complain(agreement.error());
        return std::nullopt;
    }
    return std::move(*agreement);
}

std::vector<QueueLine> ReviewDesk::rows(int from, int count)
{
    const auto narrowed = [&] {
        const auto first = std::clamp<std::ptrdiff_t>(from, 0, std::ssize(m_found.visits));
        const auto last = std::min<std::ptrdiff_t>(first + count, std::ssize(m_found.visits));
        return queueLinesOf(*m_bench.session(), {m_found.visits.begin() + first, m_found.visits.begin() + last});
    };
    auto lines = isNarrowed() ? narrowed() : queueLines(*m_bench.session(), from, count);
    if (!lines) {
        m_bench.complain(lines.error());
        return {};
    }
    return std::move(*lines);
}

void ReviewDesk::show(const Uid& visit)
{
    auto page = reviewPage(*m_bench.session(), visit);
    if (page) {
        m_page = std::move(*page);
    } else {
        m_bench.complain(page.error());
        m_page.reset();
    }
    Q_EMIT pageChanged();
}

void ReviewDesk::showRow(int row)
{
    const auto lines = count() > 0 ? rows(std::min(row, count() - 1), 1) : std::vector<QueueLine>{};
    if (!lines.empty()) {
        show(lines.front().line.id);
    } else {
        m_page.reset();
        Q_EMIT pageChanged();
    }
}

QString ReviewDesk::photoPath(const Uid& photo)
{
    const auto path = cupule::photoPath(*m_bench.session(), photo);
    return path ? text(*path) : QString();
}

std::vector<const Reason*> ReviewDesk::reasonsFor(Outcome outcome) const
{
    std::vector<const Reason*> found;
    for (const Reason& reason : pack().reasons) {
        const bool stands = outcome == Outcome::accept   ? reason.accept
                            : outcome == Outcome::reject ? reason.reject
                                                         : outcome == Outcome::giveBack && reason.giveBack;
        if (stands)
            found.push_back(&reason);
    }
    return found;
}

/// The record after this one in the list as it is narrowed; null at its end.
Uid ReviewDesk::after(const Uid& visit)
{
    if (!isNarrowed())
        return nextInQueue(*m_bench.session(), visit).value_or(Uid{});
    const auto at = std::find(m_found.visits.begin(), m_found.visits.end(), visit);
    return at == m_found.visits.end() || at + 1 == m_found.visits.end() ? Uid{} : *(at + 1);
}

bool ReviewDesk::decide(Outcome outcome, const std::vector<std::string>& reasons, const QString& remark, bool laboratory,
                        const QString& reportNumber)
{
    if (!m_page)
        return false;
    Decision wanted;
    wanted.visit = m_page->visit.visit.id;
    wanted.revision = m_page->visit.headRevision;
    wanted.outcome = outcome;
    wanted.reasons = reasons;
    wanted.remark = utf8(remark);
    wanted.laboratory = laboratory;
    wanted.reportNumber = utf8(reportNumber);
    const Uid next = after(wanted.visit);   // where it stood, before it leaves
    const auto page = cupule::decide(*m_bench.session(), wanted);
    if (!page) {
        m_bench.complain(page.error());
        return false;
    }
    m_lastDecided = wanted.visit;
    m_bench.say(page->oneOfTwo ? tr("Kept. A second verifier decides too: one of two.") : tr("Decided and kept."));
    m_page.reset();
    m_next = next;
    m_bench.tellChanged();                  // whoever shows the place looks again, at the next one
    if (m_page && !next.isNull())
        return true;
    refresh();
    if (next.isNull())
        showRow(count() - 1);
    return true;
}

void ReviewDesk::undoDecision()
{
    if (m_lastDecided.isNull()) {
        m_bench.say(tr("No decision of this session is left to undo."));
        return;
    }
    if (const auto status = cupule::undoDecision(*m_bench.session(), m_lastDecided); !status) {
        m_bench.complain(status.error());
        return;
    }
    const Uid visit = m_lastDecided;
    m_lastDecided = {};
    m_bench.say(tr("The decision is taken back; both entries stay in the journal."));
    m_bench.tellChanged();
    show(visit);
}

void ReviewDesk::reopen(const QString& remark)
{
    if (!m_page)
        return;
    if (const auto status = cupule::reopen(*m_bench.session(), m_page->visit.visit.id, utf8(remark)); !status)
        m_bench.complain(status.error());
    m_bench.tellChanged();
}

void ReviewDesk::recordTold(const QString& to, const QString& reference)
{
    if (!m_page)
        return;
    Told told;
    told.visit = m_page->visit.visit.id;
    told.at = m_bench.session()->clock().now();
    told.by = m_bench.profile().person.code;
    told.to = utf8(to);
    told.reference = utf8(reference);
    if (const auto status = cupule::recordTold(*m_bench.session(), told); !status)
        m_bench.complain(status.error());
    m_bench.tellChanged();
}

void ReviewDesk::goToTree()
{
    if (m_page && m_page->visit.tree)
        Q_EMIT m_bench.goToAsked(QStringLiteral("trees"), m_page->visit.tree->id);
}

void ReviewDesk::goToSample(const Uid& sample)
{
    Q_EMIT m_bench.goToAsked(QStringLiteral("samples"), sample);
}

} // namespace cupule::ui
