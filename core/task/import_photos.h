// Takes in photos: of each its note, its picture by hash, and the visit that it belongs to where that is plain.
//
//  - The same picture again adds nothing. The file is never written to.
//  - A visit of the same day is the photo's where their places agree within the pack's distance and both uncertainties,
//    or, where the zone of the photo is known, their times within the pack's minutes. What speaks against a visit rules it
//    out; of several the nearest is taken. Where nothing speaks for one, the photo lies in the tray.
//    Nothing is put with a visit where options.photosToTray says so.
//  - A picture that looks like one that is here is kept, noted ("likely-copy"), and left to a person.
//  - A photo without a date keeps none; a camera that says 0, 0 gave no position.

#pragma once

#include <cstdint>
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "core/rules/photo_match.h"
#include "core/task/import.h"
#include "core/task/photo_copies.h"

namespace cupule {

class PhotoImport {
public:
    /// Appends what is found to `report`. All must outlive it.
    PhotoImport(Session& session, const ImportOptions& options, const Progress& progress, ImportReport& report)
        : m_session(session), m_options(options), m_progress(progress), m_report(report)
    {
    }
    /// Faults as importFiles.
    Result<ImportFile> take(const std::string& path);
    /// Visits came in meanwhile: they are read again.
    void forgetVisits() { m_visits.clear(); }

private:
    Result<Uid> visitFor(const PhotoNote& photo);
    Status noteCopy(const PhotoNote& note, std::uint64_t likeness, ImportFile& file);

    Session& m_session;
    const ImportOptions& m_options;
    const Progress& m_progress;
    ImportReport& m_report;
    std::map<CivilDate, std::vector<MatchVisit>> m_visits;
    std::optional<CopyFinder> m_copies;
};

} // namespace cupule
