#include "ui/training/results_desk.h"

#include <algorithm>

#include "core/base/hash.h"
#include "ui/bridge/text.h"

namespace cupule::ui {

namespace {

/// An order that says nothing of anybody.
void mix(std::vector<RecruitResults>& recruits)
{
    const auto place = [](const RecruitResults& recruit) { return sha256("order " + recruit.person.text()); };
    std::sort(recruits.begin(), recruits.end(), [&](const RecruitResults& a, const RecruitResults& b) { return place(a) < place(b); });
}

const SubjectResult* find(const PracticeResults& results, const ResultSubject& wanted)
{
    const bool together = wanted.kind == AskedKind::sign && wanted.subject.empty();
    const auto& list = together ? results.groups : results.subjects;
    const auto at = std::find_if(list.begin(), list.end(), [&](const SubjectResult& one) { return together || (one.kind == wanted.kind && one.subject == wanted.subject); });
    return at == list.end() ? nullptr : &*at;
}

} // namespace

ResultsDesk::ResultsDesk(Workbench& bench, QObject* parent) : QObject(parent), m_bench(bench)
{
    connect(&bench, &Workbench::storeClosed, this, [this] {
        m_cohort.reset();
        m_recruit.reset();
        m_shown = -1;
        m_wish = {};
        m_names = true;
    });
}

void ResultsDesk::refresh()
{
    Session& session = *m_bench.session();
    if (auto cohorts = practiceCohorts(session))
        m_cohorts = std::move(*cohorts);
    if (const auto rules = practiceRules(session))
        m_rules = *rules;
    m_counting = true;
    const int asked = ++m_asked;
    const bool forAll = session.needOneOf({Role::trainer, Role::office}).has_value();
    auto found = std::make_shared<CohortResults>();
    m_bench.jobs().start(tr("Counting practice answers"),
                         [found, wish = m_wish, names = m_names, forAll, me = session.me()](Session& own, const Progress&) -> Status {
                             if (forAll) {
                                 auto results = cohortResults(own, wish);
                                 if (!results)
                                     return fail(results.error());
                                 *found = std::move(*results);
                                 if (!names)
                                     mix(found->recruits);
                                 return {};
                             }
                             auto results = recruitResults(own, me, wish); // a recruit sees the own results
                             if (!results)
                                 return fail(results.error());
                             found->results = results->results;
                             found->next = results->next;
                             found->recruits = {std::move(*results)};
                             return {};
                         },
                         [this, found, asked](const Status& status) {
                             if (asked != m_asked)
                                 return;
                             m_counting = false;
                             if (!status && status.error().code != "job.cancelled")
                                 m_bench.complain(status.error());
                             m_cohort = status && found->results.answers > 0 ? found : nullptr;
                             m_recruit.reset();
                             if (m_cohort != nullptr && m_shown >= static_cast<int>(m_cohort->recruits.size()))
                                 m_shown = -1;
                             Q_EMIT listChanged();
                             countShown();
                         });
}

void ResultsDesk::setCohort(const std::optional<std::string>& cohort)
{
    m_wish.cohort = cohort;
    m_shown = -1;
    refresh();
}

void ResultsDesk::setNames(bool shown)
{
    m_names = shown;
    m_shown = -1; // recruits come in another order
    refresh();
}

void ResultsDesk::setSubject(const ResultSubject& subject)
{
    m_subject = subject;
    Q_EMIT listChanged();
}

void ResultsDesk::show(int recruit)
{
    if (recruit == m_shown)
        return;
    m_shown = recruit;
    countShown();
}

/// Confusions, calibration and curve of one recruit come with a count of their own.
void ResultsDesk::countShown()
{
    m_recruit.reset();
    Q_EMIT shownChanged();
    if (m_shown < 0 || m_cohort == nullptr)
        return;
    const Uid person = m_cohort->recruits[static_cast<std::size_t>(m_shown)].person;
    auto found = std::make_shared<RecruitResults>();
    m_bench.jobs().start(tr("Counting practice answers"),
                         [found, wish = m_wish, person](Session& own, const Progress&) -> Status {
                             auto results = recruitResults(own, person, wish);
                             if (!results)
                                 return fail(results.error());
                             *found = std::move(*results);
                             return {};
                         },
                         [this, found, shown = m_shown, cohort = m_cohort](const Status& status) {
                             if (shown != m_shown || cohort != m_cohort)
                                 return;
                             if (!status && status.error().code != "job.cancelled")
                                 m_bench.complain(status.error());
                             if (status)
                                 m_recruit = found;
                             Q_EMIT shownChanged();
                         });
}

std::vector<ResultSubject> ResultsDesk::subjects() const
{
    std::vector<ResultSubject> all;
    if (m_cohort == nullptr)
        return all;
    if (!m_cohort->results.groups.empty())
        all.push_back({});
    for (const AskedKind kind : {AskedKind::host, AskedKind::sign, AskedKind::conclude})
        for (const SubjectResult& one : m_cohort->results.subjects)
            if (one.kind == kind && (kind == AskedKind::sign ? !one.subject.empty() : one.subject.empty()))
                all.push_back({one.kind, one.subject});
    return all;
}

const PracticeResults* ResultsDesk::results() const
{
    if (m_shown >= 0)
        return m_recruit != nullptr ? &m_recruit->results : nullptr;
    return m_cohort != nullptr ? &m_cohort->results : nullptr;
}

const std::vector<NextPractice>& ResultsDesk::next() const
{
    static const std::vector<NextPractice> none;
    if (m_cohort == nullptr)
        return none;
    return m_shown >= 0 ? m_cohort->recruits[static_cast<std::size_t>(m_shown)].next : m_cohort->next;
}

Uid ResultsDesk::shownPerson() const
{
    if (m_cohort == nullptr)
        return {};
    if (m_shown >= 0)
        return m_cohort->recruits[static_cast<std::size_t>(m_shown)].person;
    const Session& session = *m_bench.session();
    return session.needOneOf({Role::trainer, Role::office}) ? Uid{} : session.me();
}

QString ResultsDesk::nameOf(int recruit) const
{
    if (recruit < 0)
        return tr("all %1").arg(m_cohort != nullptr ? m_cohort->recruits.size() : 0);
    const RecruitResults& at = m_cohort->recruits[static_cast<std::size_t>(recruit)];
    if (!m_names)
        return tr("recruit %1").arg(recruit + 1);
    return !at.name.empty() ? text(at.name) : !at.code.empty() ? text(at.code) : tr("nobody named");
}

const SubjectResult* ResultsDesk::resultOf(int recruit) const
{
    if (m_cohort == nullptr)
        return nullptr;
    return find(recruit < 0 ? m_cohort->results : m_cohort->recruits[static_cast<std::size_t>(recruit)].results, m_subject);
}

} // namespace cupule::ui
