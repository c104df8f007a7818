// Why a position could not be read, or was read with a doubt.

#include "ui/bridge/words.h"

#include <QCoreApplication>

#include "ui/bridge/text.h"
#include "ui/bridge/words_fill.h"

namespace cupule::ui {

namespace {

#define SAY(code, text)                                                                                      \
    {                                                                                                        \
        code, QT_TRANSLATE_NOOP("reading", text)                                                             \
    }
constexpr Sentence positions[] = {
    SAY("empty", "nothing is typed."),
    SAY("not-a-grid-reference", "this is no notation of a position that is known here."),
    SAY("odd-digit-count",
        "the digits cannot be halved into easting and northing: one is missing or too many."),
    SAY("unequal-halves", "the two groups of digits are not equally long."),
    SAY("too-many-digits", "there are more than twelve digits behind the letters."),
    SAY("illegal-letter-I", "no grid uses the letter I for a square. Is it the digit 1?"),
    SAY("illegal-letter-O", "this grid does not use the letter O. Is it the digit 0?"),
    SAY("bad-tetrad-letter", "there is no tetrad O."),
    SAY("letter-digit-confusion", "a digit stands where a letter belongs."),
    SAY("letter-in-digits", "a letter stands among the digits."),
    SAY("mixed-decimals", "the decimals are in a part that has none."),
    SAY("outside-grid", "the place lies off its grid."),
    SAY("ambiguous-number",
        "the numbers can be read in several ways: the letters of the square or the system are missing."),
    SAY("ambiguous-comma", "the commas may separate numbers or mark decimals."),
    SAY("ambiguous-hemisphere", "it is not clear which half of the world is meant."),
    SAY("one-number", "a single number is no position."),
    SAY("too-many-tokens", "there are more parts than a position has."),
    SAY("spreadsheet-mangled",
        "a spreadsheet has turned it into a number or a date. Look it up in the notes."),
    SAY("bad-zone", "there is no such UTM zone: they run from 1 to 60."),
    SAY("bad-column-letter", "this UTM zone has no such column letter."),
    SAY("bad-row-letter", "row letters end at V."),
    SAY("band-mismatch", "the square does not lie in the band named."),
    SAY("two-latitudes", "two latitudes are given."),
    SAY("two-longitudes", "two longitudes are given."),
    SAY("sign-and-letter", "a sign and a letter of the hemisphere stand at one angle. Leave one out."),
    SAY("minutes-out-of-range", "there are 60 minutes or more."),
    SAY("seconds-out-of-range", "there are 60 seconds or more."),
    SAY("latitude-out-of-range", "the latitude is beyond 90 degrees."),
    SAY("longitude-out-of-range", "the longitude is beyond 180 degrees."),
    SAY("iso6709-width", "the angles lack their leading zeros."),
    SAY("unknown-system", "the coordinate system is not known here."),
    SAY("no-transformation", "no transformation reaches this place."),
    // understood, with a doubt
    SAY("null-island", "this is 0, 0, in the sea: it was most likely never set."),
    SAY("sea-square", "this square has no land in it."),
    SAY("outside-area", "this lies outside the area of the programme."),
    SAY("very-coarse", "this is a square of 100 km."),
};
#undef SAY

} // namespace

QString positionSureText(const Position& position)
{
    const auto tr = [](const char* words) { return QCoreApplication::translate("reading", words); };
    QString said = tr("± %1").arg(distanceText(position.uncertaintyMetres));
    if (position.squareMetres > 0)
        said += tr(", the middle of a square of %1").arg(distanceText(position.squareMetres));
    if (position.operation.empty() || position.operation == "none")
        return said;
    said += QStringLiteral("; ") + text(position.operation);
    if (position.operationAccuracyMetres >= 0)
        said += tr(", good to %1").arg(distanceText(position.operationAccuracyMetres));
    return said;
}

QString positionKindText(const std::string& kind)
{
    return sentence(positions, "reading", kind);
}

} // namespace cupule::ui
