// A walk through the whole window that says how long each piece of work held the event loop.

#pragma once

#include <cstdio>
#include <functional>

#include <QElapsedTimer>
#include <QJsonArray>
#include <QJsonObject>
#include <QTest>

#include "tests/bench/pulse.h"
#include "tests/gui/whole_window.h"
#include "tests/task/vale.h"

namespace bench {

class WindowWalk {
public:
    [[nodiscard]] QJsonArray found() const { return m_found; }

protected:
    WindowWalk(cupule::ui::Look& look, const QString& profile) : m_window(look, profile)
    {
        m_window.bench().setToday(cupule::test::day(2026, 6, 11));
        m_window.resize(1366, 768);
        m_window.show();
        m_window.activateWindow();
        QTest::qWait(500);                 // its first painting is no part of what follows
    }
    /// Until no job is left that `act` began.
    void measure(const char* id, const QString& work, const std::function<void()>& act)
    {
        QElapsedTimer clock;
        clock.start();
        const double worst = m_pulse.worstDuring(act, [&] { return !m_window.bench().jobs().busy(); });
        add(id, work, worst);
        std::fprintf(stderr, "window: %-60s %8.1f ms worst, %7.2f s\n", qPrintable(work), worst, static_cast<double>(clock.elapsed()) / 1000);
    }
    void add(const char* id, const QString& work, double worst)
    {
        m_found.append(QJsonObject{{QStringLiteral("id"), QString::fromLatin1(id)}, {QStringLiteral("work"), work}, {QStringLiteral("worst_ms"), worst}});
    }

    cupule::test::WholeWindow m_window;

private:
    Pulse m_pulse;
    QJsonArray m_found;
};

} // namespace bench
