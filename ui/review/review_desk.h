// The verifier's queue and the record that is open. No widget here. Deciding takes two steps: the view opens the decision,
// a digit chooses; nothing here has a default.

#pragma once

#include <optional>
#include <vector>

#include <QObject>

#include "core/task/review.h"
#include "ui/shell/workbench.h"

namespace cupule::ui {

class ReviewDesk : public QObject {
    Q_OBJECT
public:
    explicit ReviewDesk(Workbench& bench, QObject* parent = nullptr);
    void refresh();
    [[nodiscard]] int count() const { return m_count; }
    [[nodiscard]] std::vector<QueueLine> rows(int from, int count);
    [[nodiscard]] const std::optional<ReviewPage>& page() const { return m_page; }
    [[nodiscard]] const Pack& pack() const { return m_bench.session()->pack(); }
    void show(const Uid& visit);
    /// To the record at a place in the queue.
    void showRow(int row);
    [[nodiscard]] QString photoPath(const Uid& photo);

    /// Reasons of the pack that stand for this outcome, in its order.
    [[nodiscard]] std::vector<const Reason*> reasonsFor(Outcome outcome) const;
    /// True where the decision was kept; the next record of the queue is shown then.
    bool decide(Outcome outcome, const std::vector<std::string>& reasons, const QString& remark, const QString& reportNumber);
    void undoDecision();
    void reopen(const QString& remark);
    void recordTold(const QString& to, const QString& reference);
    void goToTree();
    void goToSample(const Uid& sample);

Q_SIGNALS:
    void listChanged();
    void pageChanged();

private:
    Workbench& m_bench;
    int m_count = 0;
    std::optional<ReviewPage> m_page;
    Uid m_lastDecided;
};

} // namespace cupule::ui
