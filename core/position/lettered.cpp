// References with the square letters of the British National Grid and the Irish Grid.
//
// Sources: Ordnance Survey, "A guide to coordinate systems in Great Britain": 500 km letters counted from the
// false
//          origin in S, 100 km letters from the north-west, I left out; the published layout of the Irish
//          Grid (25 letters from the north-west, I left out). Squares with land: from memory.

#include "core/position/notation_detail.h"

#include <cmath>

#include <fmt/format.h>

namespace cupule::notation {

namespace {

constexpr double eastEdge = 700'000;
constexpr double northEdge = 1'300'000;
constexpr double quadrantSide = 5'000;
constexpr double tetradSide = 2'000;
constexpr double sides[] = {100'000, 10'000, 1'000, 100, 10, 1, 0.1};
constexpr std::string_view britishLand = "HP HT HU HW HX HY HZ NA NB NC ND NF NG NH NJ NK NL NM NN NO NR NS "
                                         "NT NU NW NX NY NZ OV SC SD SE SH SJ SK SM "
                                         "SN SO SP SR SS ST SU SV SW SX SY SZ TA TF TG TL TM TQ TR TV ";
constexpr std::string_view irishSea = "AEKPUYZ";
constexpr GridSystem british{GridSystem::Kind::osgb, 0, true};
constexpr GridSystem irish{GridSystem::Kind::ig, 0, true};

/// Place of a letter in the 25 that are used.
int letterIndex(char letter)
{
    return letter - 'A' - (letter > 'I' ? 1 : 0);
}

/// The letters of a text without gaps up to the first digit; more than `out` holds are only counted.
struct Head {
    std::array<char, 4> letters{};
    std::size_t count = 0;
    std::size_t end = 0; ///< where the digits begin
};

Head headOf(std::string_view text)
{
    Head head;
    for (; head.end < text.size() && !isDigit(text[head.end]); ++head.end) {
        const char c = text[head.end];
        if (isLetter(c)) {
            if (head.count < head.letters.size())
                head.letters[head.count] = c;
            ++head.count;
        } else if (!isGap(c)) {
            head.count = head.letters.size() + 1;
        }
    }
    return head;
}

/// The text with look-alike letters behind the square letters made digits.
std::string mended(std::string_view text)
{
    std::string out(text);
    bool digitsBegun = false;
    for (char& c : out) {
        digitsBegun = digitsBegun || isDigit(c);
        if (!digitsBegun)
            continue;
        c = c == 'I' || c == 'L' ? '1'
            : c == 'O'           ? '0'
            : c == 'S'           ? '5'
            : c == 'B'           ? '8'
            : c == 'Z'           ? '2'
                                 : c;
    }
    return out;
}

/// A lone 0 or 5 glued to one letter stands for O or S ("S0 612 094", "S0612094").
std::optional<std::string> digitForLetter(std::string_view text, const Head& head, const DigitRun& run,
                                          const Reading& reading)
{
    const bool wantsIrish = reading.hasSystem && reading.named.system.kind == GridSystem::Kind::ig;
    const char digit = text[head.end];
    if (wantsIrish || !run.firstGlued || (digit != '0' && digit != '5'))
        return std::nullopt;
    const bool alone = run.firstGroup == 1 && run.groups > 1;
    const bool odd = run.count % 2 != 0;
    if (!(alone && (odd || digit == '0')) && !(odd && digit == '0'))
        return std::nullopt;
    const std::string letters{head.letters[0], digit == '0' ? 'O' : 'S'};
    if (!britishSquare(letters[0], letters[1]))
        return std::nullopt;
    return letters;
}

/// Suffix letters of a 10 km square.
Result<ParsedPosition> withTail(GridSystem system, Corner corner, const DigitRun& run, std::string_view text)
{
    if (run.count != 2)
        return refuse("letter-in-digits", mended(text));
    ParsedPosition hectad = *inSquare(system, corner, run);
    if (run.tailCount == 2) {
        const char northSouth = run.tail[0];
        const char eastWest = run.tail[1];
        if ((northSouth != 'N' && northSouth != 'S') || (eastWest != 'E' && eastWest != 'W'))
            return refuse("letter-in-digits", mended(text));
        hectad.cornerEasting += eastWest == 'E' ? quadrantSide : 0;
        hectad.cornerNorthing += northSouth == 'N' ? quadrantSide : 0;
        hectad.squareMetres = quadrantSide;
    } else {
        if (run.tail[0] == 'O')
            return refuse("bad-tetrad-letter");
        const int index = run.tail[0] - 'A' - (run.tail[0] > 'O' ? 1 : 0);
        hectad.cornerEasting += tetradSide * (index / 5);
        hectad.cornerNorthing += tetradSide * (index % 5);
        hectad.squareMetres = tetradSide;
    }
    hectad.uncertaintyMetres = hectad.squareMetres / std::sqrt(2.0);
    return hectad;
}

Result<ParsedPosition> onGrid(GridSystem system, Corner corner, const DigitRun& run, std::string_view text)
{
    auto parsed = run.tailCount > 0 ? withTail(system, corner, run, text) : inSquare(system, corner, run);
    if (parsed && isSeaSquare(system.kind, corner))
        parsed->warning = PositionWarning::seaSquare;
    return parsed;
}

Result<ParsedPosition> readBritish(std::string_view text, const Head& head)
{
    const char first = head.letters[0];
    const char second = head.letters[1];
    if (first == 'I' || second == 'I') {
        const bool prefix = first == 'I' && irishSquare(second).has_value();
        return prefix ? refuse("illegal-letter-I", {}, fmt::format("{} {}", second, text.substr(head.end)))
                      : refuse("illegal-letter-I");
    }
    const auto run = readDigits(text.substr(head.end));
    if (!run)
        return fail(run.error());
    const auto corner = britishSquare(first, second);
    if (!corner)
        return refuse("outside-grid");
    return onGrid(british, *corner, *run, text);
}

Result<ParsedPosition> readIrish(std::string_view text, const Head& head, const Reading& reading)
{
    constexpr int finest = 10;
    if (head.letters[0] == 'I')
        return refuse("illegal-letter-I");
    auto run = readDigits(text.substr(head.end));
    if (!run)
        return fail(run.error());
    run->firstGlued = head.end == 1;
    if (run->count > 0)
        if (const auto letters = digitForLetter(text, head, *run, reading))
            return refuse("letter-digit-confusion", *letters,
                          fmt::format("{}{}", *letters, text.substr(head.end + 1)));
    // Twelve figures are read as a letter in front of full metres (ITM has no letters), never as a tenth of a
    // metre.
    if (run->count == finest + 2)
        return refuse("not-a-grid-reference");
    return onGrid(irish, *irishSquare(head.letters[0]), *run, text);
}

} // namespace

std::optional<Corner> britishSquare(char first, char second)
{
    if (!isLetter(first) || !isLetter(second) || first == 'I' || second == 'I')
        return std::nullopt;
    const int big = letterIndex(first);
    const int small = letterIndex(second);
    const Corner corner{(big % 5 - 2) * 5 * squareSide + (small % 5) * squareSide,
                        (3 - big / 5) * 5 * squareSide + (4 - small / 5) * squareSide};
    if (corner.easting < 0 || corner.easting >= eastEdge || corner.northing < 0 ||
        corner.northing >= northEdge)
        return std::nullopt;
    return corner;
}

std::optional<Corner> irishSquare(char letter)
{
    if (!isLetter(letter) || letter == 'I')
        return std::nullopt;
    const int index = letterIndex(letter);
    return Corner{(index % 5) * squareSide, (4 - index / 5) * squareSide};
}

bool isSeaSquare(GridSystem::Kind grid, Corner corner)
{
    if (grid == GridSystem::Kind::ig) {
        for (const char letter : irishSea)
            if (const auto sea = irishSquare(letter);
                sea->easting == corner.easting && sea->northing == corner.northing)
                return true;
        return false;
    }
    const auto isLand = [] {
        std::array<std::array<bool, 13>, 7> land{};
        for (std::size_t at = 0; at + 1 < britishLand.size(); at += 3) {
            const Corner of = *britishSquare(britishLand[at], britishLand[at + 1]);
            land[static_cast<std::size_t>(of.easting / squareSide)]
                [static_cast<std::size_t>(of.northing / squareSide)] = true;
        }
        return land;
    };
    static const auto land = isLand();
    return !land[static_cast<std::size_t>(corner.easting / squareSide)]
                [static_cast<std::size_t>(corner.northing / squareSide)];
}

Result<DigitRun> readDigits(std::string_view rest)
{
    DigitRun run;
    int commas = 0;
    int letters = 0;
    const auto digitAt = [&](std::size_t at) { return at < rest.size() && isDigit(rest[at]); };
    for (std::size_t at = 0; at < rest.size(); ++at) {
        const char c = rest[at];
        if (isDigit(c)) {
            if (letters > 0)
                return refuse("letter-in-digits");
            if (at == 0 || !isDigit(rest[at - 1]))
                ++run.groups;
            if (run.count < 12)
                run.digits[static_cast<std::size_t>(run.count)] = c;
            ++run.count;
            run.firstGroup += run.groups == 1 ? 1 : 0;
        } else if (isLetter(c)) {
            if (letters < 2)
                run.tail[static_cast<std::size_t>(letters)] = c;
            ++letters;
        } else if (!isGap(c)) {
            return refuse("not-a-grid-reference");
        } else if (at > 0 && digitAt(at - 1) && digitAt(at + 1)) {
            commas += c == ',' ? 1 : 0;
            if (c == '.' || commas > 1)
                return refuse("mixed-decimals");
        }
    }
    if (letters > 2)
        return refuse("not-a-grid-reference");
    run.tailCount = letters;
    return run;
}

Result<ParsedPosition> inSquare(GridSystem system, Corner corner, const DigitRun& run)
{
    if (run.count % 2 != 0)
        return refuse("odd-digit-count");
    if (run.count > 12)
        return refuse("too-many-digits");
    if (run.groups == 2 && run.firstGroup * 2 != run.count)
        return refuse("unequal-halves");
    const int half = run.count / 2;
    double east = 0;
    double north = 0;
    for (int i = 0; i < half; ++i) {
        east = east * 10 + (run.digits[static_cast<std::size_t>(i)] - '0');
        north = north * 10 + (run.digits[static_cast<std::size_t>(i + half)] - '0');
    }
    const double side = sides[half];
    ParsedPosition parsed;
    parsed.system = system;
    parsed.cornerEasting = corner.easting + (half == 6 ? east / 10 : east * side);
    parsed.cornerNorthing = corner.northing + (half == 6 ? north / 10 : north * side);
    parsed.squareMetres = side;
    parsed.uncertaintyMetres = side / std::sqrt(2.0);
    parsed.warning = half == 0 ? PositionWarning::veryCoarse : PositionWarning::none;
    return parsed;
}

std::optional<ParsedPosition> plainBritish(std::string_view text)
{
    const auto upper = [](char c) { return c >= 'a' && c <= 'z' ? static_cast<char>(c - 32) : c; };
    if (text.size() < 4)
        return std::nullopt;
    const auto corner = britishSquare(upper(text[0]), upper(text[1]));
    if (!corner)
        return std::nullopt;
    DigitRun run;
    for (std::size_t at = 2; at < text.size(); ++at) {
        const char c = text[at];
        if (c == ' ')
            continue;
        if (!isDigit(c) || run.count == 12)
            return std::nullopt;
        if (at == 2 || text[at - 1] == ' ')
            ++run.groups;
        run.digits[static_cast<std::size_t>(run.count++)] = c;
        run.firstGroup += run.groups == 1 ? 1 : 0;
    }
    if (run.count == 0 || run.count % 2 != 0 || (run.groups == 2 && run.firstGroup * 2 != run.count))
        return std::nullopt;
    ParsedPosition parsed = *inSquare(british, *corner, run);
    if (isSeaSquare(GridSystem::Kind::osgb, *corner))
        parsed.warning = PositionWarning::seaSquare;
    return parsed;
}

Result<ParsedPosition> readLettered(std::string_view text, const Reading& reading)
{
    const Head head = headOf(text);
    // "N/A" names no square.
    const bool lettersOnly = head.end == text.size();
    if ((head.count != 1 && head.count != 2) || (lettersOnly && text.find_first_of("/.,-_;:") != text.npos))
        return refuse("not-a-grid-reference");
    auto parsed = head.count == 2 ? readBritish(text, head) : readIrish(text, head, reading);
    if (!parsed && parsed.error().code == "position.letter-in-digits" && parsed.error().arguments.empty())
        return refuse("letter-in-digits", mended(text));
    return parsed;
}

std::optional<std::string> meantLetters(std::string_view text)
{
    if (text.size() < 3 || (text[0] != '5' && text[0] != '0') || !isLetter(text[1]))
        return std::nullopt;
    const std::string letters{text[0] == '5' ? 'S' : 'O', text[1]};
    const auto run = readDigits(text.substr(2));
    if (!britishSquare(letters[0], letters[1]) || !run || run->tailCount > 0 || run->count == 0)
        return std::nullopt;
    return letters;
}

} // namespace cupule::notation
