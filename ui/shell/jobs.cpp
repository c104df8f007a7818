#include "ui/shell/jobs.h"

#include <chrono>

#include <QMetaObject>

#include "ui/bridge/text.h"
#include "ui/shell/workbench.h"

namespace cupule::ui {

Jobs::Jobs(Workbench& bench) : QObject(nullptr), m_bench(bench) {}

Jobs::~Jobs()
{
    stopAll();
}

void Jobs::start(const QString& title, Work work, Finished finished)
{
    m_waiting.push_back({title, std::move(work), std::move(finished)});
    if (!m_running)
        next();
}

void Jobs::cancel()
{
    m_thread.request_stop();
}

void Jobs::stopAll()
{
    m_waiting.clear();
    if (m_thread.joinable()) {
        m_thread.request_stop();
        m_thread.join();
    }
    m_running = false;
}

void Jobs::next()
{
    if (m_waiting.empty())
        return;
    Job job = std::move(m_waiting.front());
    m_waiting.pop_front();
    m_title = job.title;
    m_finished = std::move(job.finished);
    m_running = true;
    Q_EMIT begun(m_title);

    const std::string path = utf8(m_bench.storePath());
    const Profile profile = m_bench.profile();
    const auto today = m_bench.fixedToday();
    const bool hidden = m_bench.isHidden();
    m_thread = std::jthread([this, path, profile, today, hidden, work = std::move(job.work)](std::stop_token stop) {
        Progress progress;
        progress.stop = stop;
        auto told = std::chrono::steady_clock::now() - std::chrono::seconds(1);
        progress.report = [this, told](std::int64_t done, std::int64_t whole) mutable {
            const auto now = std::chrono::steady_clock::now();
            if (now - told < std::chrono::milliseconds(50))
                return;
            told = now;
            QMetaObject::invokeMethod(
                this, [this, done, whole] { Q_EMIT progressed(done, whole); }, Qt::QueuedConnection);
        };
        const SystemClock clock;
        SystemRandom random;
        Status status;
        { // the store is closed before the end is told: folding its log in takes a while, and the window waits for this thread
            auto session = Session::open(path, profile, clock, random);
            if (session) {
                if (today)
                    (*session)->setToday(*today);
                (*session)->setHidden(hidden);
                status = work(**session, progress);
            } else {
                status = tl::unexpected<Fault>(session.error());
            }
        }
        QMetaObject::invokeMethod(
            this, [this, status] { end(status); }, Qt::QueuedConnection);
    });
}

void Jobs::end(const Status& status)
{
    if (m_thread.joinable())
        m_thread.join();
    m_running = false;
    const auto finished = std::move(m_finished);
    m_finished = {};
    Q_EMIT ended();
    if (finished)
        finished(status);
    if (!m_running)
        next();
}

} // namespace cupule::ui
