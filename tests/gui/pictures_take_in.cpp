// A signed file that arrived: its key unknown, another than the known one, tried out, taken in, refused.

#include <QAbstractButton>
#include <QFile>
#include <QTemporaryDir>

#include "core/task/day.h"
#include "core/task/hand_out.h"
#include "core/task/keys.h"
#include "core/task/trees.h"
#include "tests/gui/picture_book.h"
#include "tests/gui/whole_window.h"
#include "ui/bridge/dates.h"
#include "ui/shell/take_in_dialog.h"

namespace cupule::test {

namespace {

enum class Shows { strange, changed, ready, done, refused };

/// The dialog over a new office's store, with a file from the store of the pictures.
class Arrival : public QWidget {
public:
    explicit Arrival(Shows shows) : m_window(pictureLook())
    {
        NewStore office;
        office.name = "Tharn Vale";
        office.kind = "office";
        office.region = "MAR";
        office.zone = "Europe/London";
        office.demonstration = true;
        Person ruth;
        ruth.code = "OF";
        ruth.name = "Orla Finch";
        static_cast<void>(m_window.bench().makeProfileFor(ruth, {Role::office, Role::verifier}));
        static_cast<void>(m_window.bench().create(m_window.file(QStringLiteral("office.cupule")), office));
        waitForJobs(m_window.bench());
        const QString path = m_window.file(QStringLiteral("2026-10-24-RA.zip"));
        prepare(shows, path);
        auto* dialog = new ui::TakeInDialog(m_window.bench(), path, &m_window);
        waitForJobs(m_window.bench());
        if (shows == Shows::done) {
            dialog->findChild<QAbstractButton*>(QStringLiteral("takeInYes"))->click();
            waitForJobs(m_window.bench());
        }
        showWithin(*this, *dialog);
    }

private:
    void prepare(Shows shows, const QString& path)
    {
        const auto author = loadProfile(pictureStore().profile.toStdString());
        const auto session = Session::open(pictureStore().store.toStdString(), *author, m_clock, m_random);
        static_cast<void>(makeKey(author->folder, m_random));   // profiles of the demonstration are from before there were keys
        HandOut wanted;
        wanted.kind = author->is(Role::verifier) ? GoingKind::decision : GoingKind::day;
        wanted.out = path.toStdString();
        wanted.photos = false;
        wanted.whole = true;
        if (!handOut(**session, wanted))
            return;
        const auto own = ownKey(author->folder);
        const auto other = SigningKey::make(m_random).publicKey();
        std::string otherKey;
        for (const std::uint8_t byte : other)
            for (const int half : {byte >> 4, byte & 15})
                otherKey += "0123456789abcdef"[half];
        Vouching vouching;
        vouching.key = shows == Shows::changed ? otherKey : own->key;
        vouching.person = (*session)->me();
        vouching.roles = {Role::verifier, Role::office};
        vouching.typedFingerprint = fingerprint(publicKeyFrom(vouching.key).value());
        if (shows != Shows::strange)
            static_cast<void>(vouch(*m_window.bench().session(), vouching));
        if (shows == Shows::refused) {
            QFile file(path);
            if (file.open(QIODevice::ReadWrite))
                file.resize(file.size() - 1000);
        }
    }

    SystemClock m_clock;
    SystemRandom m_random;
    WholeWindow m_window;
};

bool addAll()
{
    for (const auto& [name, shows] : {std::pair{"take-in-strange", Shows::strange}, std::pair{"take-in-changed", Shows::changed},
                                      std::pair{"take-in-ready", Shows::ready}, std::pair{"take-in-done", Shows::done},
                                      std::pair{"take-in-refused", Shows::refused}})
        addPicture({QString::fromLatin1(name), [shows = shows] { return std::make_unique<Arrival>(shows); }, false, 880, true});
    return true;
}

const bool added = addAll();

} // namespace

} // namespace cupule::test
