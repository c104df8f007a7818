// A part of the benchmark in a process of its own: the place Review on a region's store that lies there, in the whole window without
// a screen. Written down as JSON: the worst gap of the event loop for each piece of work, and how long a record's photo took.
//
//   bench_window_review STORE PROFILE OUT.json

#include <QAbstractItemView>
#include <QAction>
#include <QApplication>
#include <QTemporaryDir>
#include <QTest>

#include "core/store/media.h"
#include "core/store/photos.h"
#include "core/task/photos.h"
#include "core/task/review.h"
#include "tests/bench/window_program.h"
#include "tests/bench/window_walk.h"
#include "tests/gui/dated_photo.h"
#include "tests/task/vale.h"
#include "ui/bridge/text.h"
#include "ui/photos/thumbnails.h"
#include "ui/theme/theme.h"

namespace {

using namespace cupule;

constexpr int withPhoto = 20;              // records at the head of the queue
constexpr int stepsDown = 30;

/// A photo of 12 million points for each of the first records; once.
void addPhotos(Session& session)
{
    const auto lines = queueLines(session, 0, withPhoto).value();
    for (const QueueLine& line : lines) {
        if (!session.store().photos().ofVisit(line.line.id)->empty())
            continue;
        const QByteArray jpeg = test::datedJpeg(test::patches(static_cast<unsigned>(line.line.date.days), {4000, 3000}), QDateTime(QDate(2026, 6, 11), QTime(9, 0)));
        PhotoNote photo;
        photo.id = session.ids().make();
        photo.visit = line.line.id;
        photo.sha256 = session.store().media().keep(std::string_view(jpeg.constData(), static_cast<std::size_t>(jpeg.size()))).value();
        photo.originalName = "gall.jpg";
        photo.format = "JPEG";
        photo.bytes = jpeg.size();
        photo.evidenceFor = {"S02"};
        auto change = session.begin().value();
        test::done(session.store().photos().save(change, photo));
        test::done(session.commit(change));
    }
}

class ReviewWalk : public bench::WindowWalk {
public:
    ReviewWalk(ui::Look& look, const QString& profile) : WindowWalk(look, profile) {}
    bool all(const QString& store)
    {
        measure("W14", QStringLiteral("opening the store"), [&] { m_window.openStore(store); });
        if (m_window.bench().session() == nullptr)
            return false;
        measure("W15", QStringLiteral("opening the queue"), [&] { m_window.goToPlace(QStringLiteral("review")); });
        m_queue = m_window.findChild<QAbstractItemView*>(QStringLiteral("queue"));
        if (m_queue == nullptr || m_queue->model()->rowCount() == 0)
            return false;
        m_queue->setFocus();
        measure("W16", QStringLiteral("next record, %1 times").arg(stepsDown), [&] { keys(Qt::Key_Down, stepsDown); });
        measure("W17", QStringLiteral("to the end of the queue and back"), [&] {
            keys(Qt::Key_End, 1);
            keys(Qt::Key_Up, 3);
            keys(Qt::Key_Home, 1);
        });
        measure("W18", QStringLiteral("a record decided"), [&] { decide(); });
        measure("W18", QStringLiteral("a decision taken back"), [&] { m_window.findChild<QAction*>(QStringLiteral("review-undo"))->trigger(); });
        measurePhotos();
        return true;
    }

private:
    void keys(Qt::Key key, int times)
    {
        for (int i = 0; i < times; ++i) {
            QTest::keyClick(m_queue, key);
            QCoreApplication::processEvents();
        }
    }
    static void press(Qt::Key key, Qt::KeyboardModifiers modifiers = {})
    {
        if (QWidget* target = QApplication::focusWidget())
            QTest::keyClick(target, key, modifiers);
        QCoreApplication::processEvents();
    }
    void decide()
    {
        press(Qt::Key_Return, Qt::ControlModifier);
        press(Qt::Key_1);
        press(Qt::Key_1);
        press(Qt::Key_Return, Qt::ControlModifier);
    }
    /// From asking for the record until its photo could be painted; the middle of all.
    void measurePhotos()
    {
        Session& session = *m_window.bench().session();
        std::vector<double> all;
        const auto lines = queueLines(session, 0, withPhoto).value();
        for (const QueueLine& line : lines) {
            QElapsedTimer clock;
            clock.start();
            const auto page = reviewPage(session, line.line.id);
            if (!page || page->visit.photos.empty())
                continue;
            const QString path = ui::text(photoPath(session, page->visit.photos.front().id).value());
            ui::Thumbnails pictures(2400, 4);
            while (pictures.of(path).isNull() && !pictures.failed(path))
                QCoreApplication::processEvents(QEventLoop::WaitForMoreEvents);
            all.push_back(static_cast<double>(clock.nsecsElapsed()) / 1e6);
        }
        if (all.empty())
            return;
        std::sort(all.begin(), all.end());
        add("Q5", QStringLiteral("a record's photo of 12 million points, until it is there"), all[all.size() / 2]);
        std::fprintf(stderr, "window: photo %.1f ms, at most %.1f ms\n", all[all.size() / 2], all.back());
    }

    QAbstractItemView* m_queue = nullptr;
};

} // namespace

int main(int argc, char** argv)
{
    return bench::windowProgram(argc, argv, [](ui::Look& look, char** given) -> std::optional<QJsonArray> {
        {
            const FixedClock clock(test::at(12));
            SystemRandom random;
            const auto session = Session::open(given[0], loadProfile(given[1]).value(), clock, random);
            if (!session)
                return std::nullopt;
            addPhotos(**session);
        }
        ReviewWalk walk(look, QString::fromLocal8Bit(given[1]));
        return walk.all(QString::fromLocal8Bit(given[0])) ? std::optional(walk.found()) : std::nullopt;
    });
}
