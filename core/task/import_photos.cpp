#include "core/task/import_photos.h"

#include <cmath>
#include <cstdlib>
#include <filesystem>
#include <limits>

#include "core/base/zone.h"
#include "core/exchange/photo/reader.h"
#include "core/position/geodesic.h"
#include "core/store/media.h"
#include "core/store/photos.h"
#include "core/store/places.h"
#include "core/store/visits.h"
#include "core/task/edit.h"
#include "core/task/import_report.h"

namespace cupule {

namespace {

void fillTime(const PhotoTime& time, const std::string& zone, PhotoNote& note)
{
    if (time.source == PhotoTimeSource::none)
        return;
    note.takenDate = time.date;
    note.takenTime = time.time;
    const auto offset = time.offsetMinutes ? time.offsetMinutes : time.workedOutOffsetMinutes;
    if (!offset)
        return;
    note.offsetWorkedOut = !time.offsetMinutes;
    const std::int64_t local = std::int64_t{time.date.days} * 86400 + time.time.secondOfDay;
    const std::int64_t utc = (local - std::int64_t{*offset} * 60) * 1000 + time.milliseconds;
    note.taken = Instant{utc, offset};
    // the day and the hour of the store's zone are those that visits are entered in
    const auto here = inZone(zone, utc);
    if (!here)
        return;
    note.takenDate = CivilDate::of(*here);
    const std::int64_t shown = utc / 1000 + std::int64_t{here->offsetMinutes.value_or(0)} * 60;
    note.takenTime = LocalTime{static_cast<std::int32_t>(shown - std::int64_t{note.takenDate->days} * 86400)};
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

/// How well a visit fits; infinite where something speaks against it or nothing speaks for it.
double misfit(const PhotoNote& photo, const Visit& visit, const std::optional<Tree>& tree, const Settings& settings)
{
    constexpr double never = std::numeric_limits<double>::infinity();
    bool speaksFor = false;
    double sum = 0;
    if (const auto place = placeOf(visit, tree); place && photo.position) {
        const double apart = distanceMetres(place->latitude, place->longitude, photo.position->latitude,
                                            photo.position->longitude);
        const double limit = settings.photoMetres + reachMetres(*place) + reachMetres(*photo.position);
        if (apart > limit)
            return never;
        sum += apart / limit;
        speaksFor = true;
    }
    if (photo.taken && photo.takenTime && visit.time) {
        const double minutes = std::abs(photo.takenTime->secondOfDay - visit.time->secondOfDay) / 60.0;
        if (minutes > settings.photoMinutes)
            return never;
        sum += minutes / settings.photoMinutes;
        speaksFor = true;
    }
    return speaksFor ? sum : never;
}

/// The visit of that day which fits best, or null.
Result<Uid> visitFor(Session& session, const PhotoNote& photo)
{
    if (!photo.takenDate)
        return Uid{};
    const auto rows = session.store().visits().ofDay(*photo.takenDate, {});
    if (!rows)
        return fail(rows.error());
    Uid best;
    double least = std::numeric_limits<double>::infinity();
    for (const auto& row : *rows) {
        if (row.standing.struck)
            continue;
        const auto stored = storedVisit(session, row.id);
        if (!stored)
            return fail(stored.error());
        const auto tree = session.store().trees().find(row.tree);
        if (!tree)
            return fail(tree.error());
        const double fit = misfit(photo, stored->visit, *tree, session.pack().settings);
        if (fit >= least)
            continue;
        const auto may = mayEdit(session, stored->visit, row.standing);
        if (!may)
            return fail(may.error());
        if (*may) {
            least = fit;
            best = row.id;
        }
    }
    return best;
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

Status keep(Session& session, const std::string& path, const PhotoNote& note, const Progress& progress)
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
    if (!note.visit.isNull())
        if (auto done = refreshVisit(session, *change, note.visit); !done)
            return done;
    if (progress.cancelled())
        return fail("job.cancelled", FaultKind::refused);
    return session.commit(*change);
}

} // namespace

Result<ImportFile> importPhoto(Session& session, const std::string& path, const ImportOptions& options,
                               const Progress& progress, ImportReport& report)
{
    ImportFile file;
    file.file = path;
    file.format = "photo";
    if (progress.cancelled())
        return fail("job.cancelled", FaultKind::refused);
    const auto facts = readPhoto(path);
    if (!facts)
        return fail(facts.error());
    file.rows = 1;
    PhotoNote note = noteOf(session, path, *facts);
    const auto same = session.store().photos().withPicture(note.sha256);
    if (!same)
        return fail(same.error());
    if (!same->empty()) {
        file.knownAlready = 1;
        return file;
    }
    const auto visit = visitFor(session, note);
    if (!visit)
        return fail(visit.error());
    note.visit = *visit;
    if (!options.dryRun)
        if (auto kept = keep(session, path, note, progress); !kept)
            return fail(kept.error());
    file.kept = 1;
    tell(*facts, note, options.today.value_or(session.today()), file, report);
    return file;
}

} // namespace cupule
