// Long work off the window's thread: one job at a time, in the order asked for, each with its own Session on the same
// store, progress, cancel, and exactly one end. Results are delivered on the window's thread.

#pragma once

#include <deque>
#include <functional>
#include <memory>
#include <thread>

#include <QElapsedTimer>
#include <QObject>
#include <QString>
#include <QTimer>

#include "core/base/progress.h"
#include "core/task/session.h"

namespace cupule::ui {

class Workbench;

class Jobs : public QObject {
    Q_OBJECT
public:
    using Work = std::function<Status(Session&, const Progress&)>;
    using Finished = std::function<void(const Status&)>;

    explicit Jobs(Workbench& bench);
    ~Jobs() override;
    /// `finished` gets "job.cancelled" where it was cancelled.
    void start(const QString& title, Work work, Finished finished);
    void cancel();
    /// Cancels and waits for the running job; drops those not begun.
    void stopAll();
    [[nodiscard]] bool busy() const { return m_running || !m_waiting.empty(); }
    [[nodiscard]] QString title() const { return m_title; }

Q_SIGNALS:
    void begun(const QString& title);
    void progressed(qint64 done, qint64 whole);    ///< at most 20 times a second
    void ended();

private:
    struct Job {
        QString title;
        Work work;
        Finished finished;
    };
    void next();
    void end(const Status& status);

    Workbench& m_bench;
    std::deque<Job> m_waiting;
    std::function<void(const Status&)> m_finished;
    QString m_title;
    std::jthread m_thread;
    bool m_running = false;
};

} // namespace cupule::ui
