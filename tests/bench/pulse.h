// How long the event loop stands still while something is done.

#pragma once

#include <algorithm>
#include <functional>

#include <QCoreApplication>
#include <QElapsedTimer>
#include <QObject>
#include <QTimer>

namespace bench {

inline constexpr int quietMilliseconds = 300; // after each piece of work: delayed work belongs to it

/// Beats every millisecond while the event loop turns.
class Pulse : public QObject {
public:
    Pulse()
    {
        m_timer.setTimerType(Qt::PreciseTimer);
        m_timer.setInterval(1);
        connect(&m_timer, &QTimer::timeout, this, [this] {
            m_worst = std::max(m_worst, static_cast<double>(m_since.nsecsElapsed()) / 1e6);
            m_since.restart();
        });
    }
    /// The longest time without a beat while `act` runs and until `done` says yes.
    double worstDuring(const std::function<void()>& act, const std::function<bool()>& done)
    {
        m_worst = 0;
        m_since.start();
        m_timer.start();
        bool acted = false;
        QTimer::singleShot(5, this, [&] {
            act();
            acted = true;
        });
        while (!acted || !done())
            QCoreApplication::processEvents(QEventLoop::WaitForMoreEvents);
        QElapsedTimer quiet;
        quiet.start();
        while (quiet.elapsed() < quietMilliseconds)
            QCoreApplication::processEvents(QEventLoop::WaitForMoreEvents);
        m_timer.stop();
        return m_worst;
    }

private:
    QTimer m_timer;
    QElapsedTimer m_since;
    double m_worst = 0;
};

} // namespace bench
