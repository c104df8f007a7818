#include "ui/review/review_desk.h"

#include "core/task/photos.h"
#include "ui/bridge/text.h"

namespace cupule::ui {

ReviewDesk::ReviewDesk(Workbench& bench, QObject* parent) : QObject(parent), m_bench(bench)
{
    connect(&bench, &Workbench::storeClosed, this, [this] {
        m_count = 0;
        m_page.reset();
        m_lastDecided = {};
    });
}

void ReviewDesk::refresh()
{
    if (m_bench.session() == nullptr)
        return;
    const auto count = countQueue(*m_bench.session());
    if (!count)
        m_bench.complain(count.error());
    m_count = count.value_or(0);
    Q_EMIT listChanged();
    if (m_page)
        show(m_page->visit.visit.id);
    else
        showRow(0);
}

std::vector<QueueLine> ReviewDesk::rows(int from, int count)
{
    auto lines = queueLines(*m_bench.session(), from, count);
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
    const auto lines = m_count > 0 ? rows(std::min(row, m_count - 1), 1) : std::vector<QueueLine>{};
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

bool ReviewDesk::decide(Outcome outcome, const std::vector<std::string>& reasons, const QString& remark,
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
    wanted.laboratory = !reportNumber.isEmpty();
    wanted.reportNumber = utf8(reportNumber);
    const Uid next = nextInQueue(*m_bench.session(), wanted.visit).value_or(Uid{}); // where it stood, before it leaves
    const auto page = cupule::decide(*m_bench.session(), wanted);
    if (!page) {
        m_bench.complain(page.error());
        return false;
    }
    m_lastDecided = wanted.visit;
    m_bench.say(page->oneOfTwo ? tr("Kept. A second verifier decides too: one of two.") : tr("Decided and kept."));
    const auto count = countQueue(*m_bench.session());
    m_count = count.value_or(0);
    m_page.reset();
    m_bench.tellChanged();
    Q_EMIT listChanged();
    if (next.isNull())
        showRow(m_count - 1);
    else
        show(next);
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
