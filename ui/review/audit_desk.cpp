#include "ui/review/audit_desk.h"

#include <memory>

#include "core/task/photos.h"
#include "ui/bridge/text.h"
#include "ui/bridge/words.h"

namespace cupule::ui {

AuditDesk::AuditDesk(Workbench& bench, QObject* parent) : QObject(parent), m_bench(bench)
{
    connect(&bench.jobs(), &Jobs::progressed, this, &AuditDesk::progressed);
}

void AuditDesk::refresh()
{
    auto lines = auditLines(*m_bench.session());
    if (lines)
        m_lines = std::move(*lines);
    else
        m_trouble = faultText(lines.error());
    Q_EMIT changed();
}

std::optional<AuditPage> AuditDesk::page(const Uid& audit)
{
    auto page = auditPage(*m_bench.session(), audit);
    return page ? std::optional(std::move(*page)) : std::nullopt;
}

std::vector<Person> AuditDesk::auditors()
{
    auto people = auditorsFor(*m_bench.session());
    return people ? std::move(*people) : std::vector<Person>();
}

bool AuditDesk::kept(const Status& status)
{
    m_trouble = status ? QString() : faultText(status.error());
    Q_EMIT changed();
    return status.has_value();
}

void AuditDesk::run(const QString& title, Jobs::Work work, const std::function<void()>& then)
{
    m_busy = true;
    m_trouble.clear();
    Q_EMIT changed();
    m_bench.jobs().start(title, std::move(work), [this, then](const Status& status) {
        m_busy = false;
        if (!status)
            m_trouble = faultText(status.error());
        refresh();
        if (status && then)
            then();
    });
}

void AuditDesk::offer(const AuditWanted& wanted, const std::function<void(const AuditOffer&)>& then)
{
    auto found = std::make_shared<AuditOffer>();
    run(tr("Looking through routine records"),
        [found, wanted](Session& session, const Progress& progress) -> Status {
            auto offer = auditOffer(session, wanted, progress);
            if (!offer)
                return tl::unexpected<Fault>(offer.error());
            *found = std::move(*offer);
            return {};
        },
        [found, then] { then(*found); });
}

void AuditDesk::make(const AuditWanted& wanted, const std::function<void(const Uid&)>& then)
{
    auto made = std::make_shared<Uid>();
    run(tr("Drawing a batch"),
        [made, wanted](Session& session, const Progress& progress) -> Status {
            const auto audit = makeAudit(session, wanted, progress);
            if (!audit)
                return tl::unexpected<Fault>(audit.error());
            *made = *audit;
            return {};
        },
        [this, made, then] {
            m_bench.tellChanged();
            then(*made);
        });
}

void AuditDesk::finish(const Uid& audit)
{
    run(tr("Closing a batch"),
        [audit](Session& session, const Progress& progress) -> Status {
            const auto page = finishAudit(session, audit, progress);
            if (!page)
                return tl::unexpected<Fault>(page.error());
            return {};
        },
        [this] { m_bench.tellChanged(); });
}

void AuditDesk::undo(const Uid& audit)
{
    run(tr("Taking a batch back"),
        [audit](Session& session, const Progress& progress) -> Status {
            const auto page = undoAudit(session, audit, progress);
            if (!page)
                return tl::unexpected<Fault>(page.error());
            return {};
        },
        [this] { m_bench.tellChanged(); });
}

void AuditDesk::giveUp(const Uid& audit)
{
    if (kept(giveUpAudit(*m_bench.session(), audit)))
        m_bench.tellChanged();
    refresh();
}

std::optional<BlindRecord> AuditDesk::next(const Uid& audit)
{
    auto record = nextToAudit(*m_bench.session(), audit);
    if (!record) {
        kept(tl::unexpected<Fault>(record.error()));
        return std::nullopt;
    }
    return std::move(*record);
}

bool AuditDesk::answer(const Uid& audit, const AuditAnswer& answer)
{
    return kept(answerAudit(*m_bench.session(), audit, answer));
}

bool AuditDesk::takeBack(const Uid& audit)
{
    return kept(takeAnswerBack(*m_bench.session(), audit));
}

std::vector<const Reason*> AuditDesk::reasonsFor(Outcome outcome) const
{
    std::vector<const Reason*> found;
    for (const Reason& reason : pack().reasons)
        if (outcome == Outcome::reject ? reason.reject : reason.giveBack)
            found.push_back(&reason);
    return found;
}

QString AuditDesk::photoPath(const Uid& photo)
{
    const auto path = cupule::photoPath(*m_bench.session(), photo);
    return path ? text(*path) : QString();
}

} // namespace cupule::ui
