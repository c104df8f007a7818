// The open store as the window knows it: profile, session, jobs, settings. Every desk gets a reference to it and no more.

#pragma once

#include <memory>
#include <optional>

#include <QObject>
#include <QString>

#include "core/base/clock.h"
#include "core/base/random.h"
#include "core/task/session.h"
#include "ui/shell/jobs.h"
#include "ui/shell/settings.h"

namespace cupule::ui {

class Workbench : public QObject {
    Q_OBJECT
public:
    /// `profileFolder` may not exist yet; hasProfile() is false then.
    explicit Workbench(const QString& profileFolder, QObject* parent = nullptr);
    ~Workbench() override;

    [[nodiscard]] bool hasProfile() const { return m_profile.has_value(); }
    [[nodiscard]] const Profile& profile() const { return *m_profile; }
    Status makeProfileFor(const Person& person, const std::vector<Role>& roles);

    Status open(const QString& path);
    Status create(const QString& path, const NewStore& description);
    void close();
    /// Null while no store is open.
    [[nodiscard]] Session* session() const { return m_session.get(); }
    [[nodiscard]] QString storePath() const { return m_path; }

    /// A fixed "today" for tests, pictures and the demonstration.
    void setToday(CivilDate date);
    [[nodiscard]] std::optional<CivilDate> fixedToday() const { return m_today; }

    /// The hidden mode, for visitors (core/task/sight.h); holds for every store until it is switched off.
    void setHidden(bool hidden);
    [[nodiscard]] bool isHidden() const { return m_hidden; }

    [[nodiscard]] Jobs& jobs() { return *m_jobs; }
    [[nodiscard]] Settings& settings() { return *m_settings; }

    /// A desk changed something: everybody who shows it looks again.
    void tellChanged();
    /// One line for the status bar.
    void say(const QString& words) { Q_EMIT said(words); }
    void complain(const Fault& fault) { Q_EMIT failed(fault); }

Q_SIGNALS:
    /// Desks start anew.
    void storeOpened();
    /// After every storeOpened(): the store may be shown.
    void storeReady();
    void storeClosed();
    void storeChanged();
    void hiddenChanged(bool hidden);
    void said(const QString& words);
    void failed(const cupule::Fault& fault);
    /// Somebody wants another place to show a noun: "day", "trees", "samples", "review".
    void goToAsked(const QString& place, const cupule::Uid& noun);

private:
    void opened(std::unique_ptr<Session> session, const QString& path);

    SystemClock m_clock;
    SystemRandom m_random;
    QString m_profileFolder;
    std::optional<Profile> m_profile;
    std::optional<CivilDate> m_today;
    bool m_hidden = false;
    std::unique_ptr<Session> m_session;
    QString m_path;
    std::unique_ptr<Settings> m_settings;
    std::unique_ptr<Jobs> m_jobs;
};

} // namespace cupule::ui
