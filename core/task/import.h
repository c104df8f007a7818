// Taking in CSV, GPX and photos. A dry run is the same code without the commit. Good rows are kept, every bad row is reported
// with row, line, column, what it holds and why, and written to a file that can be mended and imported again.
// Importing the same file twice adds nothing.

#pragma once

#include <cstdint>
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "core/base/progress.h"
#include "core/rules/photo_likeness.h"
#include "core/task/session.h"

namespace cupule {

struct ImportOptions {
    bool dryRun = false;
    std::optional<CivilDate> today;         ///< dates after it are set aside
    std::string dateOrder;                  ///< "dmy", "mdy", "ymd"; empty = found or asked
    std::string delimiter;                  ///< "comma", "semicolon", "tab", "pipe" or one character; empty = found
    std::string decimal;                    ///< "point" or "comma"; empty = found
    std::string encoding;                   ///< "utf-8", "windows-1252", "utf-16le", "utf-16be"; empty = found
    std::string zone;                       ///< zone of local times; empty = the store's
    std::string system;                     ///< how bare coordinates are read; empty = decided as for positions
    std::string columnsFile;                ///< saved column mapping
    std::string saveColumnsFile;            ///< where to save the columns as they were matched, also where they are asked about and in a dry run; empty = nowhere
    bool swapped = false;                   ///< latitude and longitude stand in each other's columns; noted in each record
    std::string asideFile;                  ///< where set-aside rows go; empty = beside the store, named after the file
    std::string site;                       ///< name of the site of rows that name none
    std::string observer;                   ///< code or name where rows name none; empty = the profile's person
    bool takeGoodPoints = false;            ///< GPX: read the points that a damaged document still holds
    bool photosToTray = false;              ///< photos: none goes to a visit unseen, all are proposed later
    LookAtPicture look;                     ///< photos: to notice likely copies; empty = they are looked at later
    bool takeRoutePoints = false;           ///< GPX: take route points where there is no waypoint
};

struct ImportProblem {
    std::string file;
    std::int64_t row = 0;                   ///< from 1 after the header; 0 = the file as a whole
    std::int64_t line = 0;
    std::string column;
    std::string value;
    std::string kind;                       ///< resources/docs/import_kinds.md
    std::string cause;                      ///< position kind, empty where no position is involved
    std::string suggestion;
    bool kept = false;                      ///< said, but the row, point or photo was kept all the same
};

/// A question about the whole file that nobody answered: nothing was kept.
struct ImportQuestion {
    std::string file, kind, column;         ///< "date-order", "encoding", ...
    std::vector<std::string> readings;      ///< each as it would be read; "VALUE: ..." where the option takes a value
    std::string option;                     ///< command-line option that answers it
};

struct ImportFile {
    std::string file, format;               ///< "csv", "gpx", "photo"
    std::int64_t rows = 0, kept = 0, knownAlready = 0, setAside = 0;
    std::string asideFile;                  ///< written, or empty
    std::vector<std::string> notes;         ///< what was found out about the file, stable codes with arguments "code:arg"
};

struct ImportReport {
    std::int64_t rows = 0, kept = 0, knownAlready = 0, setAside = 0;
    std::int64_t likelyCopies = 0;          ///< photos that look like one that is here: kept, to be decided
    std::int64_t newTrees = 0, newPeople = 0, newSites = 0;
    std::vector<ImportFile> files;
    std::vector<ImportProblem> problems;    ///< every one
    std::vector<ImportQuestion> questions;
    std::map<std::string, std::int64_t> findings;   ///< drafts with findings, by code
    bool dryRun = false;
};

/// Files may be mixed; a folder stands for the photos in it. All of one file in one transaction.
/// Fault only where nothing could be done at all ("file.open" for a single file, store faults, "job.cancelled": nothing kept).
Result<ImportReport> importFiles(Session& session, const std::vector<std::string>& paths,
                                 const ImportOptions& options, const Progress& progress = {});

} // namespace cupule
