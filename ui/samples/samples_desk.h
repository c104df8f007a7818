// Samples and the chain that is open. No widget here.

#pragma once

#include <optional>
#include <vector>

#include <QDate>
#include <QObject>
#include <QTime>

#include "core/task/samples.h"
#include "ui/shell/workbench.h"

namespace cupule::ui {

class SamplesDesk : public QObject {
    Q_OBJECT
public:
    explicit SamplesDesk(Workbench& bench, QObject* parent = nullptr);
    void refresh();
    [[nodiscard]] const std::vector<SampleLine>& lines() const { return m_lines; }
    [[nodiscard]] const std::optional<SamplePage>& page() const { return m_page; }
    [[nodiscard]] const Pack& pack() const { return m_bench.session()->pack(); }
    [[nodiscard]] CivilDate today() const { return m_bench.session()->today(); }
    void show(const Uid& sample);

    /// A wall-clock time in the store's zone as a moment; nothing, with the reason told, where it never was or was twice.
    std::optional<Instant> moment(const QDate& date, const QTime& time);
    /// The day and time of a moment where the store's zone holds.
    [[nodiscard]] std::pair<QDate, QTime> wallClock(const Instant& at) const;

    /// True where the line was kept.
    bool addLine(CustodyLine line);
    /// The kind of line that the first open link wants.
    [[nodiscard]] CustodyKind wantedKind() const;
    /// The kind of line that a link wants next, or is made of.
    [[nodiscard]] CustodyKind kindOf(const ChainLink& link) const;
    /// Shows the sample whose number was typed or scanned off a label; says what else the number is.
    void find(const QString& number);
    /// Reserves numbers for labels; empty where that was refused.
    std::vector<std::string> reserve(int count);
    /// Reserved and not used yet.
    [[nodiscard]] std::vector<std::string> reserved();
    bool close(bool withBreak, const QString& reason, const QString& secondPerson);
    bool addLeave(const Leave& leave);
    [[nodiscard]] std::vector<Site> sites();

Q_SIGNALS:
    void listChanged();
    void pageChanged();

private:
    Workbench& m_bench;
    std::vector<SampleLine> m_lines;
    std::optional<SamplePage> m_page;
};

} // namespace cupule::ui
