// Batches of routine records: making one, the auditor's round, and what a batch came to.

#include <QTemporaryDir>

#include "core/task/audit.h"
#include "tests/gui/picture_book.h"
#include "tests/gui/whole_window.h"
#include "ui/bridge/dates.h"
#include "ui/review/audit_dialog.h"

namespace cupule::test {

namespace {

enum class Shows { list, making, round, passed };

/// The dialog over the store of the pictures; the other verifier is made for them.
class Batches : public QWidget {
public:
    explicit Batches(Shows shows) : m_window(pictureLook(), pictureStore().profile)
    {
        if (pictureStore().today.isValid())
            m_window.bench().setToday(ui::fromDate(pictureStore().today));
        m_window.openStore(pictureStore().store);
        const Uid audit = shows == Shows::making ? Uid{} : prepare(shows);
        auto* dialog = new ui::AuditDialog(m_window.bench(), &m_window);
        if (shows == Shows::making)
            dialog->showMaking();
        else if (shows == Shows::round)
            dialog->showRound(audit);
        showWithin(*this, *dialog);
        waitForJobs(m_window.bench());
    }

private:
    std::unique_ptr<Session> other()
    {
        Person person;
        person.id = m_window.bench().session()->ids().make();
        person.code = "NB";
        person.name = "Noor Blake";
        const auto profile = makeProfile(m_folder.filePath(QStringLiteral("second")).toStdString(), person, {Role::verifier}, m_clock, m_random);
        auto session = profile ? Session::open(m_window.bench().storePath().toStdString(), *profile, m_clock, m_random)
                               : tl::unexpected<Fault>(profile.error());
        if (!session)
            return nullptr;
        (*session)->setToday(m_window.bench().session()->today());
        return std::move(*session);
    }
    Uid prepare(Shows shows)
    {
        const auto them = other();
        Session& me = *m_window.bench().session();
        if (them == nullptr)
            return {};
        Session& maker = shows == Shows::round ? *them : me;
        Session& auditor = shows == Shows::round ? me : *them;
        AuditWanted wanted;
        wanted.auditor = auditor.me();
        const auto audit = makeAudit(maker, wanted);
        if (!audit || shows != Shows::passed)
            return audit.value_or(Uid{});
        while (true) {
            const auto next = nextToAudit(auditor, *audit);
            if (!next || !*next || !answerAudit(auditor, *audit, {(*next)->page.visit.id, Outcome::accept, {}, {}}))
                break;
        }
        static_cast<void>(finishAudit(maker, *audit));
        return *audit;
    }

    QTemporaryDir m_folder;
    SystemClock m_clock;
    SystemRandom m_random;
    WholeWindow m_window;
};

bool addAll()
{
    for (const auto& [name, shows] : {std::pair{"batch-list", Shows::list}, std::pair{"batch-making", Shows::making},
                                      std::pair{"batch-round", Shows::round}, std::pair{"batch-passed", Shows::passed}})
        addPicture({QString::fromLatin1(name), [shows = shows] { return std::make_unique<Batches>(shows); }, false, 1120, true});
    return true;
}

const bool added = addAll();

} // namespace

} // namespace cupule::test
