#include "ui/daysheet/day_desk.h"

#include <algorithm>
#include <cmath>

#include "core/task/photos.h"
#include "core/task/programme.h"
#include "core/task/sample_numbers.h"
#include "ui/bridge/text.h"
#include "ui/bridge/words.h"

namespace cupule::ui {

DayDesk::DayDesk(Workbench& bench, QObject* parent) : QObject(parent), m_bench(bench)
{
    connect(&bench, &Workbench::storeOpened, this, [this] {
        m_page.reset();
        m_day = m_bench.session()->today();
        // what was begun earlier and not handed in comes first; otherwise it is today's work
        const auto days = daysWithVisits(*m_bench.session(), m_bench.session()->me());
        if (!days || days->empty())
            return;
        const auto lines = visitsOfDay(*m_bench.session(), days->front(), m_bench.session()->me());
        const bool open = lines && std::any_of(lines->begin(), lines->end(),
                                               [](const VisitLine& line) { return line.state == RecordState::draft; });
        if (open)
            m_day = std::min(m_day, days->front());
    });
    connect(&bench, &Workbench::storeClosed, this, [this] {
        m_page.reset();
        m_lines.clear();
    });
}

template <class T>
bool DayDesk::good(const Result<T>& result)
{
    if (!result)
        m_bench.complain(result.error());
    return result.has_value();
}

const Pack& DayDesk::pack() const
{
    return m_bench.session()->pack();
}

void DayDesk::refresh()
{
    if (m_bench.session() == nullptr || m_saving)
        return;
    loadLines();
    Q_EMIT dayChanged();
    if (m_page)
        loadPage(m_page->visit.id);
    else if (!m_lines.empty())
        loadPage(m_lines.front().id);
    else
        Q_EMIT pageChanged();
}

void DayDesk::loadLines()
{
    auto lines = visitsOfDay(*m_bench.session(), m_day, Uid{});
    if (good(lines))
        m_lines = std::move(*lines);
    auto back = cupule::cameBack(*m_bench.session());
    if (good(back))
        m_cameBack = std::move(*back);
}

void DayDesk::showCameBack()
{
    if (m_cameBack.empty())
        return;
    const Uid open = m_page ? m_page->visit.id : Uid{};
    auto next = std::find_if(m_cameBack.begin(), m_cameBack.end(), [&](const VisitLine& line) { return line.id == open; });
    if (next != m_cameBack.end())
        ++next;
    show((next == m_cameBack.end() ? m_cameBack.front() : *next).id);
}

void DayDesk::loadPage(const Uid& visit)
{
    auto page = visitPage(*m_bench.session(), visit);
    if (page)
        m_page = std::move(*page);
    else
        m_page.reset();
    Q_EMIT pageChanged();
}

void DayDesk::setDay(CivilDate day)
{
    if (day == m_day)
        return;
    leave();
    m_day = day;
    m_page.reset();
    refresh();
}

void DayDesk::stepDay(int step)
{
    auto days = daysWithVisits(*m_bench.session(), Uid{});
    if (!good(days))
        return;
    std::optional<CivilDate> best;
    for (const CivilDate& candidate : *days) {
        if (step < 0 && candidate < m_day && (!best || candidate > *best))
            best = candidate;
        if (step > 0 && candidate > m_day && (!best || candidate < *best))
            best = candidate;
    }
    if (!best && step > 0 && m_day < m_bench.session()->today())
        best = m_bench.session()->today();
    if (best)
        setDay(*best);
}

void DayDesk::show(const Uid& visit)
{
    if (m_page && m_page->visit.id == visit)
        return;
    leave();
    loadPage(visit);
    if (m_page && m_page->visit.date != m_day) {
        m_day = m_page->visit.date;
        loadLines();
        Q_EMIT dayChanged();
    }
}

void DayDesk::stepVisit(int step)
{
    if (m_lines.empty())
        return;
    std::ptrdiff_t at = -1;
    for (std::size_t i = 0; i < m_lines.size(); ++i)
        if (m_page && m_lines[i].id == m_page->visit.id)
            at = static_cast<std::ptrdiff_t>(i);
    const auto next = std::clamp<std::ptrdiff_t>(at + step, 0, static_cast<std::ptrdiff_t>(m_lines.size()) - 1);
    show(m_lines[static_cast<std::size_t>(next)].id);
}

void DayDesk::startVisit()
{
    Session& session = *m_bench.session();
    const Uid after = m_page ? m_page->visit.id : Uid{};
    leave();
    auto visit = newVisit(session, after, Uid{});
    if (!good(visit))
        return;
    if (after.isNull() && visit->date != m_day && m_day <= session.today()) {
        Visit moved = *visit;
        moved.date = m_day;
        if (good(changeVisit(session, *visit, moved, utf8(tr("date")))))
            visit = moved;
    }
    m_day = visit->date;
    loadLines();
    Q_EMIT dayChanged();
    loadPage(visit->id);
    m_bench.tellChanged();
}

void DayDesk::leave()
{
    if (m_page && m_page->state == RecordState::draft && m_bench.session() != nullptr)
        (void)good(leaveVisit(*m_bench.session(), m_page->visit.id));
}

void DayDesk::strikeOut(const QString& reason)
{
    if (!m_page || !good(cupule::strikeOut(*m_bench.session(), m_page->visit.id, utf8(reason))))
        return;
    m_page.reset();
    m_bench.tellChanged();
    refresh();
}

void DayDesk::edit(const QString& what, const std::function<void(Visit&)>& change)
{
    editWith(what, {}, change);
}

void DayDesk::editWith(const QString& what, const std::vector<PhotoNote>& photos, const std::function<void(Visit&)>& change)
{
    if (!m_page)
        return;
    Visit changed = m_page->visit;
    change(changed);
    if (changed == m_page->visit && photos.empty())
        return;
    const bool wasPositive = m_page->positive.positive;
    const bool saved = good(changeVisit(*m_bench.session(), m_page->visit, changed, photos, utf8(what)));
    if (saved)
        m_day = changed.date;
    m_saving = true;
    loadLines();
    Q_EMIT dayChanged();
    loadPage(changed.id);
    if (saved)
        m_bench.say(m_page && m_page->revisions > 0 ? tr("Saved as revision %1: %2.").arg(m_page->revisions).arg(what)
                                                    : tr("Saved: %1.").arg(what));
    m_bench.tellChanged();
    m_saving = false;
    if (!wasPositive && m_page && m_page->positive.positive)
        Q_EMIT standingNoticeDue();
}

void DayDesk::editTree(const QString& what, const std::function<void(Tree&)>& change)
{
    if (!m_page || !m_page->tree)
        return;
    Tree changed = *m_page->tree;
    change(changed);
    if (changed == *m_page->tree || !good(changeTree(*m_bench.session(), changed, utf8(what))))
        return;
    m_bench.say(tr("Saved: %1.").arg(what));
    m_saving = true;
    loadLines();
    Q_EMIT dayChanged();
    loadPage(m_page->visit.id);
    m_bench.tellChanged();
    m_saving = false;
}

void DayDesk::answer(const QString& sign, Answer answer)
{
    const std::string id = utf8(sign);
    const Sign* known = pack().sign(id);
    edit(known != nullptr ? text(known->name) : sign, [&](Visit& visit) {
        auto at = std::find_if(visit.observations.begin(), visit.observations.end(),
                               [&](const Observation& o) { return o.sign == id; });
        if (at == visit.observations.end()) {
            if (answer == Answer::open)
                return;
            visit.observations.push_back({});
            at = visit.observations.end() - 1;
            at->sign = id;
        }
        at->answer = answer;
        if (answer != Answer::seen) {
            at->measure.reset();
            at->measureError.reset();
            at->count.reset();
            at->countClass.clear();
        }
        if (answer == Answer::open)
            visit.observations.erase(at);
    });
}

double millimetresOf(const Sign& sign)
{
    return sign.unit == "mm" ? 1 : sign.unit == "cm" ? 10 : 0;
}

void DayDesk::setMeasure(const std::string& sign, std::optional<double> value, std::optional<double> uncertainty,
                         const std::vector<PhotoNote>& photos)
{
    editWith(tr("size of %1").arg(text(sign)), photos, [&](Visit& visit) {
        for (Observation& observation : visit.observations) {
            if (observation.sign != sign)
                continue;
            observation.measure = value;
            observation.measureError = uncertainty;
        }
    });
}

void DayDesk::measure(const QString& sign, double value)
{
    setMeasure(utf8(sign), std::isnan(value) ? std::nullopt : std::optional<double>(value), std::nullopt);
}

void DayDesk::takeMeasure(const PhotoNote& photo, const PhotoMeasure& measure)
{
    const Sign* sign = pack().sign(measure.sign);
    if (!mayEdit() || sign == nullptr || millimetresOf(*sign) == 0)
        return;
    PhotoNote changed = photo;
    std::erase_if(changed.measures, [&](const PhotoMeasure& earlier) { return earlier.sign == measure.sign; });
    changed.measures.push_back(measure);
    setMeasure(measure.sign, measure.millimetres / millimetresOf(*sign), measure.uncertaintyMillimetres / millimetresOf(*sign),
               {changed});
}

QString DayDesk::photoPath(const Uid& photo)
{
    const auto path = cupule::photoPath(*m_bench.session(), photo);
    return path ? text(*path) : QString();
}

void DayDesk::count(const QString& sign, std::optional<int> counted, const QString& countClass)
{
    edit(tr("count of %1").arg(sign), [&](Visit& visit) {
        for (Observation& observation : visit.observations) {
            if (observation.sign != utf8(sign))
                continue;
            observation.count = counted;
            observation.countClass = counted ? std::string() : utf8(countClass);
        }
    });
}

void DayDesk::answerNothingSeen()
{
    if (!m_page)
        return;
    auto answered = cupule::answerNothingSeen(m_page->visit, m_page->season, pack());
    if (!good(answered))
        return;
    edit(tr("all gall lines not seen"), [&](Visit& visit) { visit = *answered; });
}

const CharacterSeen* DayDesk::seen(const QString& character) const
{
    if (!m_page)
        return nullptr;
    for (const CharacterSeen& candidate : m_page->visit.characters)
        if (candidate.character == utf8(character))
            return &candidate;
    return nullptr;
}

namespace {

CharacterSeen& entryFor(Visit& visit, const std::string& id)
{
    for (CharacterSeen& candidate : visit.characters)
        if (candidate.character == id)
            return candidate;
    visit.characters.push_back({});
    visit.characters.back().character = id;
    return visit.characters.back();
}

void dropEmpty(Visit& visit)
{
    std::erase_if(visit.characters,
                  [](const CharacterSeen& c) { return c.state.empty() && !c.value && !c.notJudged; });
}

} // namespace

void DayDesk::character(const QString& id, const QString& state)
{
    const Character* known = pack().character(utf8(id));
    edit(known != nullptr ? text(known->name) : id, [&](Visit& visit) {
        CharacterSeen& entry = entryFor(visit, utf8(id));
        entry.notJudged = state == QStringLiteral("?");
        entry.state = entry.notJudged ? std::string() : utf8(state);
        if (entry.notJudged)
            entry.value.reset();
        dropEmpty(visit);
    });
}

void DayDesk::characterValue(const QString& id, std::optional<double> value)
{
    const Character* known = pack().character(utf8(id));
    edit(known != nullptr ? text(known->valueWords) : id, [&](Visit& visit) {
        CharacterSeen& entry = entryFor(visit, utf8(id));
        entry.value = value;
        if (value)
            entry.notJudged = false;
        dropEmpty(visit);
    });
}

void DayDesk::characterOnGround(const QString& id, bool onGround, std::optional<bool> otherTreeNear)
{
    edit(tr("where it lay"), [&](Visit& visit) {
        CharacterSeen& entry = entryFor(visit, utf8(id));
        entry.onGround = onGround;
        entry.otherTreeNear = onGround ? otherTreeNear : std::nullopt;
        dropEmpty(visit);
    });
}

std::vector<TreeHit> DayDesk::findTrees(const QString& typed)
{
    if (!m_page)
        return {};
    const Uid site = m_page->site ? m_page->site->id : Uid{};
    auto hits = cupule::findTrees(*m_bench.session(), utf8(typed), site, m_page->visit.position, 12);
    return hits ? *hits : std::vector<TreeHit>{};
}

void DayDesk::chooseTree(const Uid& tree)
{
    edit(tr("tree"), [&](Visit& visit) { visit.tree = tree; });
}

void DayDesk::makeTree(const QString& label)
{
    if (!m_page || label.trimmed().isEmpty())
        return;
    const Uid site = m_page->site ? m_page->site->id : Uid{};
    auto tree = newTree(*m_bench.session(), utf8(label.trimmed()), site, m_page->visit.position);
    if (good(tree))
        chooseTree(tree->id);
}

std::vector<Site> DayDesk::sites()
{
    auto sites = allSites(*m_bench.session());
    return sites ? *sites : std::vector<Site>{};
}

void DayDesk::chooseSite(const QString& name)
{
    if (!m_page || !m_page->tree)
        return;
    Uid chosen;
    for (const Site& site : sites())
        if (text(site.name).compare(name.trimmed(), Qt::CaseInsensitive) == 0)
            chosen = site.id;
    if (chosen.isNull() && !name.trimmed().isEmpty()) {
        Site fresh;
        fresh.name = utf8(name.trimmed());
        auto made = newSite(*m_bench.session(), fresh);
        if (!good(made))
            return;
        chosen = made->id;
    }
    editTree(tr("site"), [&](Tree& tree) { tree.site = chosen; });
}

void DayDesk::setCompanions(const QString& codes)
{
    auto people = allPeople(*m_bench.session());
    if (!good(people))
        return;
    std::vector<Uid> companions;
    for (const QString& part : codes.split(QLatin1Char(','), Qt::SkipEmptyParts)) {
        const QString wanted = part.trimmed();
        const auto at = std::find_if(people->begin(), people->end(), [&](const Person& person) {
            return text(person.code).compare(wanted, Qt::CaseInsensitive) == 0
                   || text(person.name).compare(wanted, Qt::CaseInsensitive) == 0;
        });
        if (at == people->end()) {
            m_companionsTyped = codes;
            Q_EMIT pageChanged();
            Q_EMIT personUnknown(wanted);
            return;
        }
        companions.push_back(at->id);
    }
    edit(tr("companions"), [&](Visit& visit) { visit.companions = companions; });
}

void DayDesk::addPerson(const QString& code, const QString& name)
{
    Person person;
    person.code = utf8(code);
    person.name = utf8(name);
    if (good(newPerson(*m_bench.session(), person)))
        setCompanions(m_companionsTyped);
}

QString DayDesk::whomToTell()
{
    const auto set = programme(*m_bench.session());
    return set ? text(set->tell) : QString();
}

QString DayDesk::believedHost() const
{
    if (!m_page || m_page->host.answer != HostAnswer::host)
        return {};
    const auto& left = m_page->host.kindsLeft;
    const Kind* kind = left.size() == 1 ? pack().kind(left.front()) : nullptr;
    return kind != nullptr ? text(kind->commonName) : tr("a chestnut, species open");
}

int DayDesk::waitingLabels()
{
    const auto numbers = reservedNumbers(*m_bench.session());
    return numbers ? static_cast<int>(numbers->size()) : 0;
}

Result<SampleOpening> DayDesk::openSample(const Sample& wanted, bool alreadyTaken)
{
    Sample sample = wanted;
    sample.visit = m_page->visit.id;
    auto opening = cupule::openSample(*m_bench.session(), sample, alreadyTaken);
    if (opening && opening->sample)
        m_bench.tellChanged();
    return opening;
}

std::optional<HandInPage> DayDesk::handInPage()
{
    leave();
    auto page = cupule::handInPage(*m_bench.session(), m_day, Uid{});
    return good(page) ? std::optional(*page) : std::nullopt;
}

std::optional<HandInPage> DayDesk::handIn()
{
    auto page = cupule::handIn(*m_bench.session(), m_day, Uid{});
    if (!good(page))
        return std::nullopt;
    m_bench.say(tr("%n visits are handed in.", nullptr, static_cast<int>(page->goes.size())) + QLatin1Char(' ')
                + tr("Ctrl+Shift+W writes them into a file for the verifier."));
    m_bench.tellChanged();
    refresh();
    return *page;
}

} // namespace cupule::ui
