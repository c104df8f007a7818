// The verifier's queue and the record that is open. No widget here. Deciding takes two steps: the view opens the decision,
// a digit chooses; nothing here has a default.

#pragma once

#include <functional>
#include <optional>
#include <vector>

#include <QObject>

#include "core/task/agreement.h"
#include "core/task/conflicts.h"
#include "core/task/queue.h"
#include "ui/shell/workbench.h"

namespace cupule::ui {

class ReviewDesk : public QObject {
    Q_OBJECT
public:
    /// A queue longer than this is looked through beside the window.
    static constexpr int shortQueue = 20000;

    explicit ReviewDesk(Workbench& bench, QObject* parent = nullptr);
    void refresh();
    /// Of the list as it is narrowed.
    [[nodiscard]] int count() const;
    /// All that wait, however the list is narrowed.
    [[nodiscard]] int waiting() const { return m_count; }
    /// More match than are listed.
    [[nodiscard]] bool isCut() const { return m_found.more; }
    [[nodiscard]] bool isLooking() const { return m_looking; }

    [[nodiscard]] const QueueWanted& wanted() const { return m_wanted; }
    /// Narrows the list and shows its first record; without a change where it is refused.
    void narrow(const QueueWanted& wanted);
    [[nodiscard]] std::vector<NamedWanted> kept();
    bool keep(const QString& name, const QueueWanted& wanted);
    void forget(const QString& name);
    [[nodiscard]] std::vector<Site> sites();
    [[nodiscard]] std::vector<Person> people();
    [[nodiscard]] CivilDate today() const { return m_bench.session()->today(); }

    [[nodiscard]] std::vector<ConflictLine> conflicts();
    [[nodiscard]] std::optional<ConflictPage> conflict(const Uid& entity);
    /// True where it was settled.
    bool settle(const ConflictPage& page, const Settlement& settlement);
    [[nodiscard]] std::optional<VerifierAgreement> agreement();
    /// Everything the map of the open record shows.
    [[nodiscard]] Session& session() { return *m_bench.session(); }
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
    /// `laboratory`: accepted on a report, whose number is needed.
    bool decide(Outcome outcome, const std::vector<std::string>& reasons, const QString& remark, bool laboratory, const QString& reportNumber);
    void undoDecision();
    void reopen(const QString& remark);
    void recordTold(const QString& to, const QString& reference);
    void goToTree();
    void goToSample(const Uid& sample);

Q_SIGNALS:
    void listChanged();
    void pageChanged();

private:
    [[nodiscard]] bool isNarrowed() const { return !m_wanted.isPlain(); }
    void lookThrough(const std::function<void()>& then);
    [[nodiscard]] Uid after(const Uid& visit);

    Workbench& m_bench;
    int m_count = 0;
    QueueWanted m_wanted;
    QueueFound m_found;                     ///< of a narrowed list
    bool m_looking = false;
    std::optional<ReviewPage> m_page;
    Uid m_next;                             ///< to be shown with the next look
    Uid m_lastDecided;
};

} // namespace cupule::ui
