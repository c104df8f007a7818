// What an import says about rows, files and questions. resources/docs/import_kinds.md lists every code.

#include <cmath>

#include <QCoreApplication>

#include "core/base/civil.h"
#include "core/base/text.h"
#include "ui/bridge/dates.h"
#include "ui/bridge/text.h"
#include "ui/bridge/words.h"
#include "ui/bridge/words_fill.h"

namespace cupule::ui {

namespace {

#define SAY(code, text)                                                                                      \
    {                                                                                                        \
        code, QT_TRANSLATE_NOOP("import", text)                                                              \
    }
constexpr Sentence kinds[] = {
    SAY("absurd-date", "The time lies before satellite receivers or far ahead: the clock was most likely never set."),
    SAY("ambiguous-date", "Day and month can be read both ways."),
    SAY("ambiguous-number", "The number can be read in two ways: a comma may mark decimals or thousands."),
    SAY("bad-encoding", "Some letters are not in the encoding of the file."),
    SAY("bad_grid_letters", "The letters name no square of the grid."),
    SAY("camera-clock", "The camera’s clock and the satellite time of the same photo do not agree."),
    SAY("damaged-metadata", "What the camera wrote into the file is damaged."),
    SAY("damaged-point", "The point is damaged."),
    SAY("digitised-time", "Only the time of scanning is known, not of taking."),
    SAY("future_date", "The date has not come yet."),
    SAY("impossible_date", "There is no such day."),
    SAY("local-time", "The clocks were changed that day: this time did not exist or came twice."),
    SAY("missing-date", "There is no date."),
    SAY("missing-label", "No tree is named."),
    SAY("name-of-several", "Several people have this name, so nobody was put down. Write the code instead."),
    SAY("no-hemisphere", "It is not said whether north or south, east or west is meant."),
    SAY("nul-byte", "The row holds a zero byte, which no program writes on purpose. Is the disk or card sound?"),
    SAY("null-island", "The position is 0, 0, which means that there was none."),
    SAY("odd_digits", "A digit of the grid reference is missing or too many."),
    SAY("position-from-xmp", "The position was read from the picture’s XMP part: a program may have written it later."),
    SAY("position-out-of-range", "There is no such place, either way round."),
    SAY("same-label-elsewhere", "A tree of this label stands farther off than one tree can be, so this became another tree."),
    SAY("size_out_of_range", "No gall has this size. Sizes are in millimetres: is a decimal point lost?"),
    SAY("spreadsheet-day-count", "A spreadsheet has turned the date into a count of days."),
    SAY("spreadsheet-mangled", "A spreadsheet has turned it into a number or a date. Look it up in the notes."),
    SAY("swapped-coordinates", "Latitude and longitude seem to stand in each other’s places."),
    SAY("text-after-quote", "Text stands behind a closing quotation mark, so it is not clear where the cells end."),
    SAY("too-long", "The row is too long to be one row. Is a line end or a quotation mark missing above it?"),
    SAY("unknown-zone", "Nobody knows this time zone."),
    SAY("unreadable-date", "This is no date."),
    SAY("unreadable-elevation", "The height is no number."),
    SAY("unreadable-number", "This is no number."),
    SAY("unreadable-position", "The position could not be read."),
    SAY("unreadable-time", "This is no time of day."),
    SAY("unterminated-quote", "A quotation mark is opened and never closed."),
    SAY("value-out-of-range", "The number is not possible."),
    SAY("wrong-field-count", "The row has more or fewer cells than there are headings."),
    // questions about a whole file
    SAY("date-order", "Day and month can be read both ways. Which comes first?"),
    SAY("encoding", "The encoding of the file cannot be told. Which is it?"),
    SAY("tree-column", "No heading names the tree. Which column is it?"),
    SAY("date-column", "There are answers but no date. Which column is it?"),
    SAY("damaged-gpx", "The file is damaged. Shall the points be taken that can be read?"),
    SAY("route-points", "There are no waypoints, only points of a route. Shall these be taken as trees?"),
};

/// What a note says, by how many or by which; %1 is what stands behind its colon.
constexpr Sentence notes[] = {
    SAY("encoding-guessed", "Read as %1: a guess. Look at a name with an accent; --encoding says otherwise."),
    SAY("encoding", "Read as %1."),
    SAY("delimiter-guessed", "Cells are parted by “%1”: a guess. --delimiter says otherwise."),
    SAY("delimiter", "Cells are parted by “%1”."),
    SAY("decimal", "Decimals are marked by a comma."),
    SAY("header-line", "The headings stand on line %1."),
    SAY("date-order-day-first", "Dates are read day first, as %1 shows."),
    SAY("date-order-month-first", "Dates are read month first, as %1 shows."),
    SAY("day-counts", "Dates that a spreadsheet had turned into counts of days: %1."),
    SAY("two-digit-years", "Dates with two figures for the year: %1."),
    SAY("blank-rows", "Empty rows passed over: %1."),
    SAY("kept-as-remark", "Column “%1” is not known and kept as a remark."),
    SAY("column-twice", "Column “%1” means the same as one before it and is kept as a remark."),
    SAY("list-of-trees", "There is no column of dates: every row is a tree, without a visit."),
    SAY("verdicts-later", "Trees with earlier visits, whose verdict is worked out when they are opened: %1."),
    SAY("problems-not-listed", "Further problems, only in the file of rows set aside: %1."),
    SAY("track-points", "Points of tracks, passed over: %1."),
    SAY("track-points-without-time", "Of these without a time: %1."),
    SAY("route-points", "Points of routes, passed over: %1."),
    SAY("route-points-taken", "Points of routes, taken as trees: %1."),
    SAY("no-waypoints", "There is no waypoint."),
    SAY("positions-given", "Trees that got a better place: %1."),
    SAY("words-added", "Known trees to which a note or girth was added: %1."),
    SAY("zone-unknown", "Taken on %1; the zone of the camera’s clock is not known."),
    SAY("zone-worked-out", "The zone of the camera’s clock was worked out from the satellite time: UTC %1 min."),
    SAY("with-visit", "It lies with the visit of that place and time."),
    SAY("likely-copy", "It looks like %1, which is here already: perhaps the same picture, made smaller. Both are kept; a person decides."),
    SAY("known-picture", "It is the same file as %1, byte for byte, which is here already: nothing was added."),
    SAY("in-the-tray", "No visit fits its place and time: it lies in the tray."),
};
#undef SAY

struct Part {
    std::string code, argument;
};

Part parted(const std::string& note)
{
    const auto colon = note.find(':');
    return colon == std::string::npos ? Part{note, {}} : Part{note.substr(0, colon), note.substr(colon + 1)};
}

/// How to write what was set aside, where that is not plain from the words.
QString formText(const std::string& kind)
{
    const auto words = [](const char* english) { return QCoreApplication::translate("import", english); };
    if (kind == "unknown-zone")
        return words("Write it as Europe/London.");
    if (kind == "unreadable-date")
        return words("Write it as 2026-06-11.");
    return kind == "unreadable-time" ? words("Write it as 14:30.") : QString();
}

/// What stands beside a problem to help, in words.
QString helpText(const std::string& kind, const std::string& suggestion, bool kept)
{
    const auto words = [](const char* english) { return QCoreApplication::translate("import", english); };
    if (suggestion == "swapped?" || kind == "swapped-coordinates")
        return words("If that holds for the whole file, say --swapped.");
    if (suggestion.empty())
        return kept ? QString() : formText(kind);
    if (suggestion.starts_with("--"))
        return words("Say which with %1.").arg(text(suggestion));
    if (kind == "size_out_of_range" || kind == "value-out-of-range")
        return words("It lies between %1.").arg(text(suggestion).replace(QStringLiteral(" to "), words(" and ")));
    if (kind == "local-time" && !kept)
        return words("Was it %1?").arg(text(suggestion));
    if (kind == "same-label-elsewhere")
        return words("The nearest is %1 away. Name the site to tell them apart.")
            .arg(distanceText(parseNumber(suggestion).value_or(0)));
    if (kind == "wrong-field-count")
        return words("Cells and headings: %1.").arg(text(suggestion));
    if (kind == "unterminated-quote")
        return words("It is opened on line %1.").arg(text(suggestion));
    if (kind == "camera-clock")
        return words("They differ by %1.").arg(durationText(std::abs(parseNumber(suggestion).value_or(0)) / 60));
    return words("Perhaps %1?").arg(text(suggestion));
}

} // namespace

QString importKindText(const std::string& kind)
{
    if (const QString words = sentence(kinds, "import", kind); !words.isEmpty())
        return words;
    Fault fault;
    fault.code = kind;
    fault.arguments = {{"file", utf8(QCoreApplication::translate("import", "The file"))}};
    return faultWords(fault).what;
}

QString importProblemText(const std::string& kind, const std::string& cause, const std::string& suggestion, bool kept)
{
    QString words = importKindText(kind);
    const bool causeSaysMore = kind == "unreadable-position" || kind == "bad_grid_letters" || kind == "odd_digits";
    if (const QString why = positionKindText(cause); causeSaysMore && !why.isEmpty())
        words = sentenceStart(why);
    if (kind == "local-time" && kept)
        words = QCoreApplication::translate("import", "The time has no zone: it is kept as it stands.");
    const QString help = helpText(kind, suggestion, kept);
    return help.isEmpty() ? words : words + u' ' + help;
}

QString importNoteText(const std::string& note)
{
    const Part part = parted(note);
    const QString words = sentence(notes, "import", part.code);
    if (!words.contains(QStringLiteral("%1")))
        return words;
    if (const auto date = CivilDate::parse(part.argument))
        return words.arg(plainDate(*date, -1));
    if (part.argument == "points")
        return words.arg(QCoreApplication::translate("import", "the points between the figures", "proof of the order"));
    return words.arg(text(part.argument));
}

} // namespace cupule::ui
