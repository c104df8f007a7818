#include "ui/daysheet/photos_desk.h"

#include <algorithm>
#include <memory>

#include "core/task/import.h"
#include "core/task/photos.h"
#include "ui/bridge/text.h"
#include "ui/daysheet/photo_words.h"
#include "ui/photos/picture.h"

namespace cupule::ui {

PhotosDesk::PhotosDesk(DayDesk& day, Workbench& bench, QObject* parent) : QObject(parent), m_day(day), m_bench(bench)
{
    connect(&day, &DayDesk::dayChanged, this, [this] {
        if (m_shown)
            refresh();
    });
    connect(&day, &DayDesk::pageChanged, this, [this] {
        if (m_shown)
            Q_EMIT changed();   // which visit is open
    });
    connect(&bench, &Workbench::storeClosed, this, [this] {
        m_shown = false;
        m_rows.clear();
        m_copies.clear();
        m_paths.clear();
        m_typed.clear();
    });
}

void PhotosDesk::setShown(bool shown)
{
    m_shown = shown;
    if (shown)
        refresh();
}

void PhotosDesk::refresh()
{
    if (m_bench.session() == nullptr)
        return;
    Session& session = *m_bench.session();
    auto ground = photoGround(session, day());
    if (!ground)
        return m_bench.complain(ground.error());
    m_ground = std::move(*ground);
    m_placed.clear();
    for (const VisitLine& line : m_day.lines()) {
        auto photos = photosOfVisit(session, line.id);
        if (!photos)
            return m_bench.complain(photos.error());
        std::move(photos->begin(), photos->end(), std::back_inserter(m_placed));
    }
    auto aside = copyPhotos(session);
    if (!aside)
        return m_bench.complain(aside.error());
    m_aside = std::move(*aside);
    std::erase_if(m_copies, [&](const LikelyCopy& copy) {
        return std::none_of(m_ground.tray.begin(), m_ground.tray.end(), [&](const PhotoNote& photo) {
            const auto& apart = photo.notWith;
            return photo.id == copy.photo.id && std::find(apart.begin(), apart.end(), copy.other.id) == apart.end();
        });
    });
    propose();
}

void PhotosDesk::propose()
{
    PhotoProposals proposals = proposeFrom(m_ground, isSetByHand() ? std::optional(m_typed.at(day())) : std::nullopt);
    m_inUse = proposals.secondsAhead;
    m_rows.clear();
    for (const PhotoNote& photo : m_ground.tray) {
        PhotoRow row;
        row.photo = photo;
        const auto proposal = std::find_if(proposals.photos.begin(), proposals.photos.end(),
                                           [&](const PhotoProposal& p) { return p.photo.id == photo.id; });
        row.kind = proposal == proposals.photos.end() ? PhotoRow::Kind::otherDay
                   : proposal->matches.empty()        ? PhotoRow::Kind::loose
                                                      : PhotoRow::Kind::proposed;
        if (proposal != proposals.photos.end())
            row.matches = std::move(proposal->matches);
        const auto copy = std::find_if(m_copies.begin(), m_copies.end(), [&](const LikelyCopy& c) { return c.photo.id == photo.id; });
        if (copy != m_copies.end())
            row.copy = *copy;
        m_rows.push_back(std::move(row));
    }
    std::stable_sort(m_rows.begin(), m_rows.end(), [](const PhotoRow& a, const PhotoRow& b) { return a.kind < b.kind; });
    for (const PhotoNote& photo : m_placed) {
        PhotoRow row;
        row.kind = PhotoRow::Kind::placed;
        row.photo = photo;
        m_rows.push_back(std::move(row));
    }
    for (const PhotoNote& photo : m_aside) {
        PhotoRow row;
        row.kind = PhotoRow::Kind::aside;
        row.photo = photo;
        if (const auto original = storedPhoto(*m_bench.session(), photo.copyOf))
            row.original = photoName(*original);
        m_rows.push_back(std::move(row));
    }
    Q_EMIT changed();
}

int PhotosDesk::count(PhotoRow::Kind kind) const
{
    return static_cast<int>(std::count_if(m_rows.begin(), m_rows.end(), [&](const PhotoRow& row) { return row.kind == kind; }));
}

const VisitLine* PhotosDesk::visit(const Uid& id) const
{
    const auto at = std::find_if(m_day.lines().begin(), m_day.lines().end(), [&](const VisitLine& line) { return line.id == id; });
    return at == m_day.lines().end() ? nullptr : &*at;
}

std::vector<std::string> PhotosDesk::mayShow(const PhotoRow& row)
{
    if (!row.photo.evidenceFor.empty())
        return row.photo.evidenceFor;
    std::vector<std::string> ids;
    const Uid visit = row.matches.empty() ? row.photo.visit : row.matches.front().visit;
    if (const auto page = visitPage(*m_bench.session(), visit))
        for (const Observation& observation : page->visit.observations)
            if (observation.answer == Answer::seen)
                ids.push_back(observation.sign);
    return ids;
}

QString PhotosDesk::path(const Uid& photo)
{
    const QString id = text(photo.text());
    const auto known = m_paths.constFind(id);
    if (known != m_paths.constEnd())
        return *known;
    return *m_paths.insert(id, m_day.photoPath(photo));
}

void PhotosDesk::setSecondsAhead(std::optional<double> seconds)
{
    if (seconds)
        m_typed[day()] = *seconds;
    else
        m_typed.erase(day());
    propose();
}

/// What was changed is shown at once, everywhere.
void PhotosDesk::after(const Status& status, const QString& said)
{
    if (!status)
        return m_bench.complain(status.error());
    m_bench.say(said);
    m_bench.tellChanged();
}

void PhotosDesk::take(const PhotoRow& row, std::size_t match)
{
    if (match >= row.matches.size())
        return;
    putWith(row, row.matches[match].visit);
}

void PhotosDesk::putWith(const PhotoRow& row, const Uid& to)
{
    const VisitLine* line = visit(to);
    const QString label = line != nullptr ? text(line->treeLabel) : QString();
    after(takeProposals(*m_bench.session(), {{row.photo.id, to}}, utf8(tr("photo to %1").arg(label))),
          tr("%1 lies with %2 now.").arg(photoName(row.photo), label));
}

int PhotosDesk::takenAtOnce() const
{
    return static_cast<int>(std::count_if(m_rows.begin(), m_rows.end(),
                                          [](const PhotoRow& row) { return !row.matches.empty() && !row.copy; }));
}

void PhotosDesk::takeAll()
{
    std::vector<PhotoAndVisit> pairs;
    for (const PhotoRow& row : m_rows)
        if (!row.matches.empty() && !row.copy)
            pairs.push_back({row.photo.id, row.matches.front().visit});
    if (pairs.empty())
        return;
    const int count = static_cast<int>(pairs.size());
    after(takeProposals(*m_bench.session(), pairs, utf8(tr("%n photos to their visits", nullptr, count))),
          tr("%n photos lie with their visits now.", nullptr, count));
}

void PhotosDesk::refuse(const PhotoRow& row)
{
    if (row.matches.empty())
        return;
    after(refuseVisits(*m_bench.session(), row.photo.id, {row.matches.front().visit}, utf8(tr("photo not of that visit"))),
          tr("%1 stays in the tray, and that visit is not proposed for it again.").arg(photoName(row.photo)));
}

void PhotosDesk::backToTray(const PhotoRow& row)
{
    PhotoNote changed = row.photo;
    changed.visit = {};
    changed.copyOf = {};
    after(changePhoto(*m_bench.session(), changed, utf8(tr("photo back to the tray"))),
          tr("%1 lies in the tray again.").arg(photoName(row.photo)));
}

void PhotosDesk::setShows(const PhotoRow& row, const std::vector<std::string>& evidence)
{
    PhotoNote changed = row.photo;
    changed.evidenceFor = evidence;
    after(changePhoto(*m_bench.session(), changed, utf8(tr("what a photo shows"))),
          tr("Saved: what %1 shows.").arg(photoName(row.photo)));
}

void PhotosDesk::sayCopy(const LikelyCopy& copy)
{
    const auto done = cupule::sayCopy(*m_bench.session(), copy.photo.id, copy.other.id, utf8(tr("photo put aside as a copy")));
    after(done, tr("%1 is put aside as a copy. The file is kept.").arg(photoName(copy.photo)));
}

void PhotosDesk::sayTwoPictures(const LikelyCopy& copy)
{
    const auto done = cupule::sayTwoPictures(*m_bench.session(), copy.photo.id, copy.other.id, utf8(tr("two pictures")));
    after(done, tr("%1 and %2 are two pictures. They are not asked about again.")
                    .arg(photoName(copy.photo), photoName(copy.other)));
}

void PhotosDesk::goToDayOf(const PhotoRow& row)
{
    if (row.photo.takenDate)
        m_day.setDay(*row.photo.takenDate);
}

void PhotosDesk::run(const QString& title, const std::function<Status(Session&, const Progress&)>& work,
                     const std::function<void(const Status&)>& finished)
{
    m_busy = true;
    Q_EMIT busyChanged();
    auto copies = std::make_shared<std::vector<LikelyCopy>>();
    m_bench.jobs().start(
        title,
        [work, copies](Session& session, const Progress& progress) -> Status {
            if (auto done = work(session, progress); !done)
                return done;
            if (auto looked = lookAtPictures(session, lookAtPicture, progress); !looked)
                return looked;
            auto found = likelyCopies(session);
            if (!found)
                return tl::unexpected<Fault>(found.error());
            *copies = std::move(*found);
            return {};
        },
        [this, copies, finished](const Status& status) {
            m_busy = false;
            if (status)
                m_copies = std::move(*copies);
            m_bench.tellChanged();
            Q_EMIT busyChanged();
            finished(status);
        });
}

QString PhotosDesk::takenInWords(const ImportReport& report) const
{
    QStringList parts{tr("%n photos taken in", nullptr, static_cast<int>(report.kept))};
    if (report.knownAlready > 0)
        parts << tr("%n here already, the same file", nullptr, static_cast<int>(report.knownAlready));
    if (!m_copies.empty())
        parts << tr("%n look like one that is here", nullptr, static_cast<int>(m_copies.size()));
    const auto unread = std::count_if(report.problems.begin(), report.problems.end(),
                                      [](const ImportProblem& problem) { return !problem.kept; });
    if (unread > 0)
        parts << tr("%n could not be read", nullptr, static_cast<int>(unread));
    QString words = parts.join(QStringLiteral(", ")) + QLatin1Char('.');
    for (const ImportProblem& problem : report.problems)
        if (!problem.kept)
            words += QLatin1Char(' ') + text(problem.file).section(QLatin1Char('/'), -1) + QLatin1Char('.');
    return words;
}

void PhotosDesk::takeIn(const QStringList& paths)
{
    std::vector<std::string> all;
    for (const QString& path : paths)
        all.push_back(utf8(path));
    ImportOptions options;
    options.photosToTray = true;
    options.look = lookAtPicture;
    auto report = std::make_shared<ImportReport>();
    run(tr("Taking in photos"),
        [all, options, report](Session& session, const Progress& progress) -> Status {
            auto made = importFiles(session, all, options, progress);
            if (!made)
                return tl::unexpected<Fault>(made.error());
            *report = std::move(*made);
            return {};
        },
        [this, report](const Status& status) {
            if (!status && status.error().code == "job.cancelled")
                Q_EMIT told(tr("Stopped. What was taken in before lies in the tray; take the rest in again when you like."));
            else if (!status)
                m_bench.complain(status.error());
            else
                Q_EMIT told(takenInWords(*report));
        });
}

void PhotosDesk::lookForCopies()
{
    if (m_busy || m_ground.tray.empty() || m_bench.session()->info().readOnly)
        return;
    run(tr("Looking for copies among the photos"), [](Session&, const Progress&) { return Status(); },
        [this](const Status& status) {
            if (!status && status.error().code != "job.cancelled")
                m_bench.complain(status.error());
        });
}

} // namespace cupule::ui
