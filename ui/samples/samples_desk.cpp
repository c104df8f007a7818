#include "ui/samples/samples_desk.h"

#include "core/base/zone.h"
#include "core/task/day.h"
#include "core/task/sample_numbers.h"
#include "ui/bridge/dates.h"
#include "ui/bridge/text.h"

namespace cupule::ui {

SamplesDesk::SamplesDesk(Workbench& bench, QObject* parent) : QObject(parent), m_bench(bench)
{
    connect(&bench, &Workbench::storeClosed, this, [this] {
        m_lines.clear();
        m_page.reset();
    });
}

void SamplesDesk::refresh()
{
    if (m_bench.session() == nullptr)
        return;
    auto lines = sampleLines(*m_bench.session());
    if (lines)
        m_lines = std::move(*lines);
    else
        m_bench.complain(lines.error());
    Q_EMIT listChanged();
    if (m_page)
        show(m_page->sample.id);
    else if (!m_lines.empty())
        show(m_lines.front().id);
    else
        Q_EMIT pageChanged();
}

void SamplesDesk::show(const Uid& sample)
{
    auto page = samplePage(*m_bench.session(), sample);
    if (page) {
        m_page = std::move(*page);
    } else {
        m_bench.complain(page.error());
        m_page.reset();
    }
    Q_EMIT pageChanged();
}

std::optional<Instant> SamplesDesk::moment(const QDate& date, const QTime& time)
{
    if (!date.isValid() || !time.isValid())
        return std::nullopt;
    const auto reading = readLocal(m_bench.session()->info().zone, fromDate(date), fromTime(time));
    if (!reading) {
        m_bench.complain(reading.error());
        return std::nullopt;
    }
    if (reading->kind != LocalReading::Kind::once) {
        m_bench.complain(Fault{reading->kind == LocalReading::Kind::never ? "time.never" : "time.twice",
                               FaultKind::refused,
                               {{"time", fromTime(time).text()}, {"date", fromDate(date).text()}},
                               {},
                               {}});
        return std::nullopt;
    }
    return reading->first;
}

std::pair<QDate, QTime> SamplesDesk::wallClock(const Instant& at) const
{
    const auto local = inZone(m_bench.session()->info().zone, at.utcMilliseconds);
    const Instant shown = local ? *local : at;
    const std::int64_t ms = shown.utcMilliseconds + shown.offsetMinutes.value_or(0) * 60'000LL;
    const CivilDate day = CivilDate::of(shown);
    return {toDate(day), QTime::fromMSecsSinceStartOfDay(static_cast<int>(ms - day.days * 86'400'000LL))};
}

bool SamplesDesk::addLine(CustodyLine line)
{
    if (!m_page)
        return false;
    line.sample = m_page->sample.id;
    auto page = addCustodyLine(*m_bench.session(), line);
    if (!page) {
        m_bench.complain(page.error());
        return false;
    }
    m_bench.say(tr("Line %1 is kept.").arg(page->lines.size()));
    m_bench.tellChanged();
    return true;
}

CustodyKind SamplesDesk::kindOf(const ChainLink& link) const
{
    if (link.kind == "inner-bag")
        return CustodyKind::innerBag;
    if (link.kind == "outer-bag")
        return link.line == 0 ? CustodyKind::outerBag : CustodyKind::onSite;
    if (link.kind == "laboratory")
        return CustodyKind::receipt;
    if (link.kind == "result")
        return CustodyKind::result;
    if (link.kind == "disposal")
        return CustodyKind::disposal;
    return link.kind == "hands" ? CustodyKind::handOver : CustodyKind::cut;
}

CustodyKind SamplesDesk::wantedKind() const
{
    if (!m_page)
        return CustodyKind::cut;
    if (m_page->status.mustBeVoid)
        return CustodyKind::voided;
    if (m_page->status.state == SampleState::voided)
        return CustodyKind::disposal;
    for (const ChainLink& link : m_page->status.chain) {
        if (link.state == LinkState::whole || link.state == LinkState::broken) // a broken one is not mended by one more line
            continue;
        if (link.kind != "tree")
            return kindOf(link);
    }
    return CustodyKind::handOver;
}

void SamplesDesk::find(const QString& number)
{
    Session& session = *m_bench.session();
    const auto sample = sampleByNumber(session, utf8(number), m_page ? m_page->sample.id : Uid{});
    if (sample)
        return show(*sample);
    if (const auto reserved = reservedNumber(session, utf8(number)))
        return m_bench.say(tr("%1 is on a printed label and has no sample yet. Open the sample from its visit.").arg(text(*reserved)));
    m_bench.complain(sample.error());
}

std::vector<std::string> SamplesDesk::reserve(int count)
{
    auto numbers = reserveNumbers(*m_bench.session(), count);
    if (!numbers) {
        m_bench.complain(numbers.error());
        return {};
    }
    m_bench.tellChanged();
    return std::move(*numbers);
}

std::vector<std::string> SamplesDesk::reserved()
{
    auto numbers = reservedNumbers(*m_bench.session());
    return numbers ? std::move(*numbers) : std::vector<std::string>{};
}

bool SamplesDesk::close(bool withBreak, const QString& reason, const QString& secondPerson)
{
    if (!m_page)
        return false;
    auto closing = closeSample(*m_bench.session(), m_page->sample.id, withBreak, utf8(reason), utf8(secondPerson));
    if (!closing) {
        m_bench.complain(closing.error());
        return false;
    }
    m_bench.say(closing->closed ? tr("Sample %1 is closed.").arg(text(m_page->sample.number))
                                : tr("Sample %1 cannot close yet: the list says what is missing.")
                                      .arg(text(m_page->sample.number)));
    m_bench.tellChanged();
    return closing->closed;
}

bool SamplesDesk::addLeave(const Leave& leave)
{
    const auto added = cupule::addLeave(*m_bench.session(), leave);
    if (!added) {
        m_bench.complain(added.error());
        return false;
    }
    m_bench.say(tr("The leave is kept."));
    m_bench.tellChanged();
    return true;
}

std::vector<Site> SamplesDesk::sites()
{
    auto sites = allSites(*m_bench.session());
    return sites ? *sites : std::vector<Site>{};
}

} // namespace cupule::ui
