// Batches of routine "nothing seen" records and their blind audits. No widget here; what takes long goes over the jobs.

#pragma once

#include <functional>
#include <optional>
#include <vector>

#include <QObject>

#include "core/task/audit.h"
#include "ui/shell/workbench.h"

namespace cupule::ui {

class AuditDesk : public QObject {
    Q_OBJECT
public:
    explicit AuditDesk(Workbench& bench, QObject* parent = nullptr);
    /// Reads the list anew.
    void refresh();
    [[nodiscard]] const std::vector<AuditLine>& lines() const { return m_lines; }
    [[nodiscard]] std::optional<AuditPage> page(const Uid& audit);
    [[nodiscard]] std::vector<Person> auditors();
    [[nodiscard]] const Pack& pack() const { return m_bench.session()->pack(); }
    [[nodiscard]] bool busy() const { return m_busy; }
    void cancel() { m_bench.jobs().cancel(); }
    /// What went wrong last, in words; empty after something went well.
    [[nodiscard]] const QString& trouble() const { return m_trouble; }

    /// `then` gets what could go into a batch with this auditor; not called where that failed.
    void offer(const AuditWanted& wanted, const std::function<void(const AuditOffer&)>& then);
    void make(const AuditWanted& wanted, const std::function<void(const Uid&)>& then);
    void finish(const Uid& audit);
    void undo(const Uid& audit);
    void giveUp(const Uid& audit);

    [[nodiscard]] std::optional<BlindRecord> next(const Uid& audit);
    bool answer(const Uid& audit, const AuditAnswer& answer);
    bool takeBack(const Uid& audit);
    [[nodiscard]] std::vector<const Reason*> reasonsFor(Outcome outcome) const;
    [[nodiscard]] QString photoPath(const Uid& photo);

Q_SIGNALS:
    /// The list, what is busy, or what went wrong.
    void changed();
    void progressed(qint64 done, qint64 whole);

private:
    void run(const QString& title, Jobs::Work work, const std::function<void()>& then);
    bool kept(const Status& status);

    Workbench& m_bench;
    std::vector<AuditLine> m_lines;
    QString m_trouble;
    bool m_busy = false;
};

} // namespace cupule::ui
