#include "core/task/import_photos.h"

#include <filesystem>

#include "core/base/zone.h"
#include "core/exchange/photo/reader.h"
#include "core/store/media.h"
#include "core/store/photos.h"
#include "core/task/edit.h"
#include "core/task/import_report.h"
#include "core/task/photo_copies.h"
#include "core/task/photo_proposals.h"

namespace cupule {

namespace {

std::int64_t localSeconds(CivilDate date, LocalTime time)
{
    return std::int64_t{date.days} * 86400 + time.secondOfDay;
}

/// The wall clock of the store's zone.
std::int64_t localSeconds(const Instant& at)
{
    return at.utcMilliseconds / 1000 + std::int64_t{at.offsetMinutes.value_or(0)} * 60;
}

/// The moment, and the day and the hour of the store's zone, in which visits are entered; nothing where no zone is known.
void fillMoment(const PhotoTime& time, const std::string& zone, PhotoNote& note)
{
    const auto offset = time.offsetMinutes ? time.offsetMinutes : time.workedOutOffsetMinutes;
    if (!offset)
        return;
    note.offsetWorkedOut = !time.offsetMinutes;
    const std::int64_t utc = (localSeconds(time.date, time.time) - std::int64_t{*offset} * 60) * 1000 + time.milliseconds;
    note.taken = Instant{utc, offset};
    const auto here = inZone(zone, utc);
    if (!here)
        return;
    note.takenDate = CivilDate::of(*here);
    note.takenTime = LocalTime{static_cast<std::int32_t>(localSeconds(*here) - localSeconds(*note.takenDate, {}))};
}

void fillTime(const PhotoTime& time, const std::string& zone, PhotoNote& note)
{
    if (time.source == PhotoTimeSource::none)
        return;
    note.takenDate = time.date;
    note.takenTime = time.time;
    fillMoment(time, zone, note);
    if (!time.gps)
        return;
    if (const auto gps = inZone(zone, time.gps->utcMilliseconds))
        note.clockAheadSeconds = static_cast<double>(localSeconds(*note.takenDate, *note.takenTime) - localSeconds(*gps));
}

PhotoNote noteOf(Session& session, const std::string& path, const PhotoFacts& facts)
{
    PhotoNote note;
    note.id = session.ids().make();
    note.sha256 = hex(facts.sha256);
    note.originalName = std::filesystem::path(path).filename().string();
    note.bytes = facts.bytes;
    note.format = photoFormatName(facts.format);
    note.widthPixels = facts.width;
    note.heightPixels = facts.height;
    note.orientation = facts.orientation;
    fillTime(facts.time, session.info().zone, note);
    note.positionStatus = photoPositionStatusName(facts.position.status);
    if (facts.position.status == PhotoPositionStatus::read || facts.position.status == PhotoPositionStatus::readFromXmp)
        note.position = devicePosition(facts.position.latitude, facts.position.longitude, "photo", session.pack());
    return note;
}

void tell(const PhotoFacts& facts, const PhotoNote& note, CivilDate today, ImportFile& file, ImportReport& report)
{
    const auto say = [&](std::string_view kind, const char* tag, const std::string& value) {
        ImportProblem problem;
        problem.file = file.file;
        problem.column = tag;
        problem.value = value;
        problem.kind = kind;
        problem.kept = true;
        report.problems.push_back(std::move(problem));
    };
    for (const auto& problem : facts.problems)
        report.problems.push_back(asImportProblem(problem, file.file));
    if (!note.takenDate)
        say("missing-date", "DateTimeOriginal", {});
    else if (*note.takenDate > today)
        say("future_date", "DateTimeOriginal", note.takenDate->text());
    if (note.takenDate && !note.taken)
        file.notes.push_back("zone-unknown:" + note.takenDate->text());
    if (note.offsetWorkedOut)
        file.notes.push_back("zone-worked-out:" + std::to_string(note.taken->offsetMinutes.value_or(0)));
    file.notes.push_back(note.visit.isNull() ? "in-the-tray:1" : "with-visit:" + note.visit.text());
}

Status keep(Session& session, const std::string& path, const PhotoNote& note, bool looked,
            std::optional<std::uint64_t> likeness, const Progress& progress)
{
    // the picture first: a note must never point to a picture that is not there
    const auto kept = session.store().media().keepFile(path, progress);
    if (!kept)
        return fail(kept.error());
    auto change = session.begin();
    if (!change)
        return fail(change.error());
    if (auto saved = session.store().photos().save(*change, note); !saved)
        return saved;
    if (looked)
        if (auto set = session.store().photos().setLikeness(*change, note.id, likeness); !set)
            return set;
    if (!note.visit.isNull())
        if (auto done = refreshVisit(session, *change, note.visit); !done)
            return done;
    if (progress.cancelled())
        return fail("job.cancelled", FaultKind::refused);
    return session.commit(*change);
}

} // namespace

/// The visit of that day which fits best, or null.
Result<Uid> PhotoImport::visitFor(const PhotoNote& photo)
{
    if (!photo.takenDate || m_options.photosToTray)
        return Uid{};
    auto known = m_visits.find(*photo.takenDate);
    if (known == m_visits.end()) {
        auto visits = visitsForPhotos(m_session, *photo.takenDate);
        if (!visits)
            return fail(visits.error());
        known = m_visits.emplace(*photo.takenDate, std::move(*visits)).first;
    }
    const auto matches = matchVisits(photo, known->second, {}, m_session.pack().settings);
    return matches.empty() ? Uid{} : matches.front().visit;
}

/// Notes which photo this one looks like; what it looks like is then known for those that come after it.
Status PhotoImport::noteCopy(const PhotoNote& note, std::uint64_t likeness, ImportFile& file)
{
    if (!m_copies) {
        auto all = m_session.store().photos().likenesses();
        if (!all)
            return fail(all.error());
        m_copies.emplace(m_session, std::move(*all));
    }
    const auto copy = m_copies->likeliest(note, likeness);
    if (!copy)
        return fail(copy.error());
    if (*copy) {
        file.notes.push_back("likely-copy:" + (*copy)->other.originalName);
        ++m_report.likelyCopies;
    }
    if (!m_options.dryRun)
        m_copies->add(note, likeness);
    return {};
}

Result<ImportFile> PhotoImport::take(const std::string& path)
{
    ImportFile file;
    file.file = path;
    file.format = "photo";
    if (m_progress.cancelled())
        return fail("job.cancelled", FaultKind::refused);
    const auto facts = readPhoto(path);
    if (!facts)
        return fail(facts.error());
    file.rows = 1;
    PhotoNote note = noteOf(m_session, path, *facts);
    const auto same = m_session.store().photos().withPicture(note.sha256);
    if (!same)
        return fail(same.error());
    if (!same->empty()) {
        file.knownAlready = 1;
        file.notes.push_back("known-picture:" + same->front().originalName);
        return file;
    }
    const auto visit = visitFor(note);
    if (!visit)
        return fail(visit.error());
    note.visit = *visit;
    const bool looks = static_cast<bool>(m_options.look);
    const auto likeness = looks ? m_options.look(path) : std::nullopt;
    if (!m_options.dryRun)
        if (auto kept = keep(m_session, path, note, looks, likeness, m_progress); !kept)
            return fail(kept.error());
    file.kept = 1;
    tell(*facts, note, m_options.today.value_or(m_session.today()), file, m_report);
    if (likeness)
        if (auto noted = noteCopy(note, *likeness, file); !noted)
            return fail(noted.error());
    return file;
}

} // namespace cupule
