#include "ui/shell/workbench.h"

#include <QDir>

#include "ui/bridge/text.h"

namespace cupule::ui {

Workbench::Workbench(const QString& profileFolder, QObject* parent) : QObject(parent), m_profileFolder(profileFolder)
{
    if (auto profile = loadProfile(utf8(profileFolder)))
        m_profile = std::move(*profile);
    m_settings = std::make_unique<Settings>(profileFolder + QStringLiteral("/window.ini"));
    m_jobs = std::make_unique<Jobs>(*this);
}

Workbench::~Workbench()
{
    m_jobs->stopAll();
}

Status Workbench::makeProfileFor(const Person& person, const std::vector<Role>& roles)
{
    auto made = makeProfile(utf8(m_profileFolder), person, roles, m_clock, m_random);
    if (!made)
        return tl::unexpected<Fault>(made.error());
    m_profile = std::move(*made);
    return {};
}

Status Workbench::open(const QString& path)
{
    auto session = Session::open(utf8(path), *m_profile, m_clock, m_random);
    if (!session)
        return tl::unexpected<Fault>(session.error());
    opened(std::move(*session), path);
    return {};
}

Status Workbench::create(const QString& path, const NewStore& description)
{
    auto session = Session::create(utf8(path), description, *m_profile, m_clock, m_random);
    if (!session)
        return tl::unexpected<Fault>(session.error());
    opened(std::move(*session), path);
    return {};
}

void Workbench::opened(std::unique_ptr<Session> session, const QString& path)
{
    close();
    m_session = std::move(session);
    m_path = QDir(path).absolutePath();
    if (m_today)
        m_session->setToday(*m_today);
    m_session->setHidden(m_hidden);
    m_settings->set(Setting::lastStore, m_path);
    Q_EMIT storeOpened();
    Q_EMIT storeReady();
}

void Workbench::close()
{
    if (!m_session)
        return;
    m_jobs->stopAll();
    m_session.reset();
    m_path.clear();
    Q_EMIT storeClosed();
}

void Workbench::setToday(CivilDate date)
{
    m_today = date;
    if (m_session)
        m_session->setToday(date);
}

void Workbench::setHidden(bool hidden)
{
    if (hidden == m_hidden)
        return;
    m_hidden = hidden;
    if (m_session)
        m_session->setHidden(hidden);
    Q_EMIT hiddenChanged(hidden);
    tellChanged();
}

void Workbench::tellChanged()
{
    Q_EMIT storeChanged();
}

} // namespace cupule::ui
