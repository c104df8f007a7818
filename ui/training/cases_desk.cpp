#include "ui/training/cases_desk.h"

#include <algorithm>

#include "ui/bridge/text.h"

namespace cupule::ui {

namespace {

constexpr int everyPhoto = 4; // so often a trainer's photo stands between the drawings, while there are any

} // namespace

CasesDesk::CasesDesk(Workbench& bench, QObject* parent) : QObject(parent), m_bench(bench)
{
    connect(&bench, &Workbench::storeClosed, this, [this] {
        m_lines.clear();
        m_round.reset();
        m_case.reset();
        m_photo.reset();
        m_phase = Phase::setup;
    });
}

bool CasesDesk::forOthers() const
{
    return m_bench.session()->needOneOf({Role::trainer, Role::office}).has_value();
}

void CasesDesk::refresh()
{
    Session& session = *m_bench.session();
    auto lines = practiceLines(session);
    auto cohorts = practiceCohorts(session);
    if (!lines || !cohorts)
        return m_bench.complain(!lines ? lines.error() : cohorts.error());
    m_lines = std::move(*lines);
    m_cohorts = std::move(*cohorts);
    Q_EMIT listChanged();
}

bool CasesDesk::begin(PracticeWish wish, const QString& code, const QString& name)
{
    Session& session = *m_bench.session();
    if (!code.isEmpty() && utf8(code) != session.profile().person.code) {
        const auto person = recruit(session, utf8(code), utf8(name));
        if (!person) {
            m_bench.complain(person.error());
            return false;
        }
        wish.person = *person;
    }
    take(beginPractice(session, wish));
    return m_phase != Phase::setup;
}

bool CasesDesk::resume(const Uid& practice)
{
    take(openPractice(*m_bench.session(), practice));
    return m_phase != Phase::setup;
}

void CasesDesk::take(Result<PracticeRound> round)
{
    if (!round)
        return m_bench.complain(round.error());
    m_round = std::move(*round);
    showCase();
}

QString CasesDesk::picture() const
{
    const auto paths = photoCasePictures(*m_bench.session(), m_photo->photoCase);
    return paths && !paths->empty() ? text(paths->front()) : QString();
}

void CasesDesk::stop()
{
    m_round.reset();
    m_case.reset();
    m_photo.reset();
    m_phase = Phase::setup;
    refresh();
    Q_EMIT changed();
}

void CasesDesk::showCase()
{
    m_answers.clear();
    m_order.clear();
    m_photo.reset();
    m_case.reset();
    m_number = m_round->nextNumber();
    if (!m_round->done() && !m_round->session.plan.series && m_number % everyPhoto == 0)
        if (auto photo = nextPhotoCase(*m_bench.session(), *m_round))
            m_photo = std::move(*photo);
    if (!m_photo)
        m_case = nextCase(*m_bench.session(), *m_round);
    m_phase = m_photo || m_case ? Phase::asking : Phase::done;
    m_clock.start();
    Q_EMIT changed();
}

void CasesDesk::give(const std::string& option)
{
    if (m_phase != Phase::asking)
        return;
    if (item().kind == AskedKind::order) {
        m_order.push_back(option);
        if (m_order.size() + 1 == item().options.size()) // the last one is left over
            for (const std::string& each : item().options)
                if (std::find(m_order.begin(), m_order.end(), each) == m_order.end()) {
                    m_order.push_back(each);
                    break;
                }
        if (m_order.size() == item().options.size())
            m_phase = Phase::sureness;
    } else {
        m_given = option;
        if (option == saidNotJudged)
            return answered({});
        m_phase = Phase::sureness;
    }
    Q_EMIT changed();
}

void CasesDesk::sure(int percent)
{
    if (m_phase == Phase::sureness)
        answered(percent);
}

void CasesDesk::back()
{
    if (m_phase == Phase::sureness || (m_phase == Phase::asking && !m_order.empty())) {
        m_phase = Phase::asking;
        if (!m_order.empty())
            m_order.pop_back();
        Q_EMIT changed();
    }
}

void CasesDesk::answered(std::optional<int> percent)
{
    const AskedItem& at = item();
    m_answers.push_back(at.kind == AskedKind::order ? answerToOrder(at, m_order, percent) : answerTo(at, m_given, percent));
    m_order.clear();
    m_phase = Phase::asking;
    if (m_answers.size() == asked().size())
        return finishCase();
    Q_EMIT changed();
}

void CasesDesk::finishCase()
{
    const int seconds = static_cast<int>(m_clock.elapsed() / 1000);
    Session& session = *m_bench.session();
    const Status kept = m_photo ? answerPhotoCase(session, *m_round, *m_photo, m_answers, seconds) : answerCase(session, *m_round, *m_case, m_answers, seconds);
    if (!kept) {
        m_bench.complain(kept.error());
        return stop();
    }
    if (m_round->session.plan.feedbackAtEnd)
        return showCase();
    m_phase = Phase::feedback;
    Q_EMIT changed();
}

void CasesDesk::next()
{
    if (m_phase == Phase::feedback)
        showCase();
}

} // namespace cupule::ui
