// Taking in one signed file: it is read and tried out beside the window, its key is vouched for where nobody has yet, and on a yes it is
// taken in. No widget here.

#pragma once

#include <memory>
#include <optional>
#include <stop_token>

#include <QObject>

#include "core/task/arrival_page.h"

namespace cupule::ui {

class Workbench;

class TakeInDesk : public QObject {
    Q_OBJECT
public:
    enum class Phase {
        looking,  ///< it is being read and tried out
        refused,  ///< for good: fault() says why
        strange,  ///< its key is unknown here, or another than the one known: nothing of it until somebody vouches
        known,    ///< it was taken in, or written, by this store before
        ready,    ///< tried out, nothing kept
        taking,
        done,
    };

    TakeInDesk(Workbench& bench, const QString& path, QObject* parent = nullptr);
    ~TakeInDesk() override;
    void look();
    void takeIn();
    /// Key, person and code are filled in here. False where it was refused; vouchFault() says why. The file is looked at anew.
    bool vouch(Vouching vouching);
    /// What runs is stopped and nothing of it kept.
    void cancel();

    [[nodiscard]] Phase phase() const { return m_phase; }
    [[nodiscard]] bool isRunning() const { return m_phase == Phase::looking || m_phase == Phase::taking; }
    [[nodiscard]] QString fileName() const;
    /// Null until the file was read and is sound.
    [[nodiscard]] const Arrival* arrival() const { return m_seen ? &m_seen->arrival : nullptr; }
    [[nodiscard]] const ArrivalPage& page() const { return m_seen->page; }
    [[nodiscard]] const std::optional<Fault>& fault() const { return m_fault; }
    [[nodiscard]] const std::optional<Fault>& vouchFault() const { return m_vouchFault; }
    /// What was tried out or taken in.
    [[nodiscard]] const TakenIn& taken() const { return m_taken; }
    [[nodiscard]] const CameInPage& cameIn() const { return m_cameIn; }
    [[nodiscard]] const Pack& pack() const;

Q_SIGNALS:
    void changed();

private:
    struct Seen {
        Arrival arrival;
        ArrivalPage page;
    };
    struct Found;
    static Status read(Session& session, const std::string& path, const Progress& progress, Found& result);
    static Status take(Session& session, bool dry, const Progress& progress, Found& result);
    void run(Phase phase, const QString& title, bool dry);
    void found(const Status& status, const std::shared_ptr<Found>& result, bool dry);

    Workbench& m_bench;
    QString m_path;
    Phase m_phase = Phase::looking;
    std::shared_ptr<const Seen> m_seen;
    TakenIn m_taken;
    CameInPage m_cameIn;
    std::optional<Fault> m_fault, m_vouchFault;
    std::stop_source m_stop;
};

} // namespace cupule::ui
