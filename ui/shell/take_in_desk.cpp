#include "ui/shell/take_in_desk.h"

#include <QFileInfo>
#include <QPointer>

#include "core/task/bundle_limits.h"
#include "ui/bridge/text.h"
#include "ui/shell/workbench.h"

namespace cupule::ui {

struct TakeInDesk::Found {
    std::shared_ptr<const Seen> seen;
    TakenIn taken;
    CameInPage cameIn;
};

TakeInDesk::TakeInDesk(Workbench& bench, const QString& path, QObject* parent) : QObject(parent), m_bench(bench), m_path(path) {}

TakeInDesk::~TakeInDesk()
{
    m_stop.request_stop();
}

QString TakeInDesk::fileName() const
{
    return QFileInfo(m_path).fileName();
}

const Pack& TakeInDesk::pack() const
{
    return m_bench.session()->pack();
}

void TakeInDesk::cancel()
{
    m_stop.request_stop();
}

void TakeInDesk::look()
{
    m_seen.reset();
    run(Phase::looking, tr("Reading a signed file"), true);
}

void TakeInDesk::takeIn()
{
    run(Phase::taking, tr("Taking in a signed file"), false);
}

bool TakeInDesk::vouch(Vouching vouching)
{
    vouching.key = m_seen->arrival.file.manifest().key;
    vouching.person = m_seen->arrival.file.manifest().authorPerson;
    vouching.code = m_seen->arrival.file.manifest().authorCode;
    const auto done = cupule::vouch(*m_bench.session(), vouching);
    m_vouchFault = done ? std::nullopt : std::optional(done.error());
    if (done) {
        m_bench.tellChanged();
        look();
    }
    return done.has_value();
}

/// Reads the file and says whose it is.
Status TakeInDesk::read(Session& session, const std::string& path, const Progress& progress, Found& result)
{
    if (session.hidden())                  // a file's name may be a person's or a wood's
        return fail("session.hidden", FaultKind::refused);
    const auto limits = bundleLimits(session);
    if (!limits)
        return fail(limits.error());
    auto arrival = lookAtArrival(session, path, *limits, progress);
    if (!arrival)
        return fail(arrival.error());
    auto page = arrivalPage(session, *arrival);
    if (!page)
        return fail(page.error());
    result.seen = std::make_shared<const Seen>(Seen{std::move(*arrival), std::move(*page)});
    return {};
}

Status TakeInDesk::take(Session& session, bool dry, const Progress& progress, Found& result)
{
    const TakeIn how{dry, [&](const TakenIn& taken) -> Status {
                         auto cameIn = cameInPage(session, taken);
                         if (!cameIn)
                             return fail(cameIn.error());
                         result.cameIn = std::move(*cameIn);
                         return {};
                     }};
    auto taken = cupule::takeIn(session, result.seen->arrival, how, progress);
    if (!taken)
        return fail(taken.error());
    result.taken = std::move(*taken);
    return {};
}

/// What is taken in is what was read and shown before: its parts are verified once more as they stream by.
void TakeInDesk::run(Phase phase, const QString& title, bool dry)
{
    m_phase = phase;
    m_fault.reset();
    m_stop = std::stop_source();
    auto result = std::make_shared<Found>();
    result->seen = m_seen;
    auto work = [result, path = utf8(m_path), dry, stop = m_stop](Session& session, const Progress& given) mutable -> Status {
        const std::stop_callback both(given.stop, [&stop] { stop.request_stop(); });   // the window may be closed meanwhile
        Progress progress = given;
        progress.stop = stop.get_token();
        if (!result->seen)
            if (auto known = read(session, path, progress, *result); !known)
                return known;
        return take(session, dry, progress, *result);
    };
    m_bench.jobs().start(title, std::move(work), [self = QPointer(this), result, dry](const Status& status) {
        if (self != nullptr)
            self->found(status, result, dry);
    });
    Q_EMIT changed();
}

void TakeInDesk::found(const Status& status, const std::shared_ptr<Found>& result, bool dry)
{
    if (result->seen)
        m_seen = result->seen;
    if (status) {
        m_taken = std::move(result->taken);
        m_cameIn = std::move(result->cameIn);
        m_phase = m_taken.knownAlready ? Phase::known : dry ? Phase::ready : Phase::done;
        if (m_phase == Phase::done)
            m_bench.tellChanged();
    } else {
        m_fault = status.error();
        const bool strange = m_fault->code == "key.unknown" || m_fault->code == "key.changed" || m_fault->code == "key.same-code";
        const bool stopped = m_fault->code == "job.cancelled" && !dry;
        m_phase = strange ? Phase::strange : stopped ? Phase::ready : Phase::refused;
    }
    Q_EMIT changed();
}

} // namespace cupule::ui
