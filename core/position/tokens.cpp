#include "core/position/tokens.h"

#include <algorithm>
#include <charconv>
#include <optional>

#include "core/position/notation_detail.h"

namespace cupule::notation {

namespace {

enum class Commas : std::uint8_t { separate, decimal };

/// Whether commas between digits are decimal signs. Other commas always separate.
Result<Commas> commasOf(std::string_view text, char decimal)
{
    int inner = 0;
    bool point = false;
    bool apart = false; // something else than a comma parts two numbers
    bool bare = false;  // a comma between a digit and a sign, without a blank
    for (std::size_t at = 0; at < text.size(); ++at) {
        const char c = text[at];
        const bool digitBefore = at > 0 && isDigit(text[at - 1]);
        const bool digitAfter = at + 1 < text.size() && isDigit(text[at + 1]);
        if (c == ',' && digitBefore && digitAfter)
            ++inner;
        else if (c == ',')
            bare =
                bare || (digitBefore && at + 1 < text.size() && (text[at + 1] == '-' || text[at + 1] == '+'));
        else if (c == '.')
            point = point || digitBefore || digitAfter;
        if (c == ',' && (digitBefore || digitAfter) && !(digitBefore && digitAfter))
            apart = true;
        apart = apart || (at > 0 && (c == ' ' || c == ';' || c == degree || isLetter(c)));
    }
    if (inner == 0)
        return Commas::separate;
    if (decimal == '.')
        return Commas::separate;
    if (point && (inner > 1 || decimal == ','))
        return refuse("ambiguous-comma");
    if (point)
        return Commas::separate;
    if (inner > 2 || bare || (inner == 2 && !apart))
        return refuse("ambiguous-comma");
    return apart || decimal == ',' ? Commas::decimal : Commas::separate;
}

/// Words behind numbers.
struct Unit {
    std::string_view word;
    Mark mark;
};
constexpr Unit units[] = {{"DEGREES", Mark::degrees}, {"DEGREE", Mark::degrees}, {"DEGS", Mark::degrees},
                          {"DEG", Mark::degrees},     {"D", Mark::degrees},      {"MINUTES", Mark::minutes},
                          {"MINS", Mark::minutes},    {"MIN", Mark::minutes},    {"M", Mark::minutes},
                          {"SECONDS", Mark::seconds}, {"SECS", Mark::seconds},   {"SEC", Mark::seconds}};

struct Named {
    std::string_view word;
    char name;
    bool isLabel;
};
constexpr Named names[] = {{"N", 'N', false},       {"S", 'S', false},         {"E", 'E', false},
                           {"W", 'W', false},       {"NORTH", 'N', false},     {"SOUTH", 'S', false},
                           {"EAST", 'E', false},    {"WEST", 'W', false},      {"NORTHING", 'N', false},
                           {"EASTING", 'E', false}, {"NORTHINGS", 'N', false}, {"EASTINGS", 'E', false},
                           {"LAT", 'N', true},      {"LATITUDE", 'N', true},   {"LON", 'E', true},
                           {"LONG", 'E', true},     {"LNG", 'E', true},        {"LONGITUDE", 'E', true}};

class Taker {
public:
    Taker(std::string_view text, Commas commas) : m_text(text), m_commas(commas) {}
    Tokens take();

private:
    [[nodiscard]] bool isDecimalSign(std::size_t at) const
    {
        const char c = at < m_text.size() ? m_text[at] : ' ';
        return c == '.' || (c == ',' && m_commas == Commas::decimal && at > 0 && isDigit(m_text[at - 1]) &&
                            at + 1 < m_text.size() && isDigit(m_text[at + 1]));
    }
    void takeNumber();
    void takeWord();
    void takeDash();
    void takeMark();
    void nameAngle(const Named& named);
    bool takeUnit(std::string_view& word);
    void markLast(Mark mark);
    Number* last() { return m_tokens.count > 0 ? &m_tokens.number[m_tokens.count - 1] : nullptr; }

    std::string_view m_text;
    Commas m_commas;
    Tokens m_tokens;
    std::size_t m_at = 0;
    Number m_next;
};

Tokens Taker::take()
{
    while (m_at < m_text.size() && !m_tokens.malformed && !m_tokens.tooMany) {
        const char c = m_text[m_at];
        if (isDigit(c) || (c == '.' && m_at + 1 < m_text.size() && isDigit(m_text[m_at + 1])))
            takeNumber();
        else if (isLetter(c))
            takeWord();
        else if (c == '-' || c == '+')
            takeDash();
        else
            takeMark();
    }
    m_tokens.malformed = m_tokens.malformed || m_next.sign != 0;
    return m_tokens;
}

void Taker::takeNumber()
{
    if (m_tokens.count == m_tokens.number.size()) {
        m_tokens.tooMany = true;
        return;
    }
    std::array<char, 160> digits;
    std::size_t length = 0;
    for (; m_at < m_text.size() && (isDigit(m_text[m_at]) || isDecimalSign(m_at)); ++m_at) {
        const bool sign = !isDigit(m_text[m_at]);
        if (sign && m_next.hasPoint) {
            m_tokens.malformed = true;
            return;
        }
        m_next.hasPoint = m_next.hasPoint || sign;
        m_next.decimals += m_next.hasPoint && !sign ? 1 : 0;
        m_next.wholeDigits += !m_next.hasPoint ? 1 : 0;
        digits[length++] = sign ? '.' : m_text[m_at];
    }
    std::from_chars(digits.data(), digits.data() + length, m_next.value);
    m_tokens.number[m_tokens.count++] = m_next;
    m_next = {};
}

void Taker::markLast(Mark mark)
{
    Number* number = last();
    if (number == nullptr || number->mark != Mark::none || m_next.sign != 0)
        m_tokens.malformed = true;
    else
        number->mark = mark;
}

void Taker::takeMark()
{
    const char c = m_text[m_at++];
    const bool digitBefore = m_at >= 2 && (isDigit(m_text[m_at - 2]) || m_text[m_at - 2] == '.');
    if (c == degree) {
        markLast(Mark::degrees);
    } else if (c == prime) {
        const bool twice = m_at < m_text.size() && m_text[m_at] == prime;
        m_at += twice ? 1 : 0;
        markLast(twice ? Mark::seconds : Mark::minutes);
    } else if (c == doublePrime) {
        markLast(Mark::seconds);
    } else if (c == ':' && digitBefore && last() != nullptr) {
        const bool second = m_tokens.count >= 2 && m_tokens.number[m_tokens.count - 2].byColon &&
                            m_tokens.number[m_tokens.count - 2].mark == Mark::degrees;
        markLast(second ? Mark::minutes : Mark::degrees);
        last()->byColon = true;
    } else if (c == ',' || c == ';' || c == '/') {
        m_next.separated = true;
    } else if (c != ' ' && c != ':' && c != '=' && !(c == '.' && m_at >= 2 && isLetter(m_text[m_at - 2]))) {
        m_tokens.malformed = true;
    }
}

void Taker::takeDash()
{
    const char c = m_text[m_at];
    char before = m_at > 0 ? m_text[m_at - 1] : ',';
    const bool blankAfter = m_at + 1 < m_text.size() && m_text[m_at + 1] == ' ';
    if (before == ' ' && blankAfter && m_at > 1)
        before = m_text[m_at - 2];
    ++m_at;
    if (m_next.sign != 0) {
        m_tokens.malformed = true;
        return;
    }
    m_next.sign = c;
    m_next.glued = before != ' ' && before != ',' && before != ';' && before != ':' && before != '=' &&
                   before != '/' && !isLetter(before);
}

bool Taker::takeUnit(std::string_view& word)
{
    Number* number = last();
    if (number == nullptr || number->mark != Mark::none)
        return false;
    for (const auto& unit : units) {
        if (word == unit.word) {
            number->mark = unit.mark;
            word = {};
            return true;
        }
    }
    // Seconds follow minutes: the first S of "49.08sN" or of "49.08s".
    const bool afterMinutes =
        m_tokens.count >= 2 && m_tokens.number[m_tokens.count - 2].mark == Mark::minutes;
    if (word.front() == 'S' && afterMinutes &&
        (word.size() == 1 || (word.size() == 2 && isHemisphere(word[1])))) {
        number->mark = Mark::seconds;
        word.remove_prefix(1);
        return true;
    }
    const bool metresOf = word.size() == 2 && word[0] == 'M' && number->wholeDigits >= 5;
    if (metresOf || (word.size() == 2 && (word[0] == 'D' || word[0] == 'M') && isHemisphere(word[1]))) {
        number->mark = word[0] == 'D' ? Mark::degrees : metresOf ? Mark::none : Mark::minutes;
        word.remove_prefix(1);
        return true;
    }
    return false;
}

void Taker::nameAngle(const Named& named)
{
    auto& used = named.isLabel ? m_tokens.labels : m_tokens.letters;
    const std::size_t room = named.isLabel ? m_tokens.label.size() : m_tokens.letter.size();
    if (used == room) {
        m_tokens.tooMany = true;
        return;
    }
    (named.isLabel ? m_tokens.label[used] : m_tokens.letter[used]) = {named.name, m_tokens.count};
    ++used;
}

void Taker::takeWord()
{
    std::size_t end = m_at;
    while (end < m_text.size() && isLetter(m_text[end]))
        ++end;
    std::string_view word = m_text.substr(m_at, end - m_at);
    m_at = end;
    m_tokens.malformed = m_tokens.malformed || m_next.sign != 0;
    takeUnit(word);
    if (word.empty())
        return;
    for (const auto& named : names) {
        if (word == named.word) {
            nameAngle(named);
            return;
        }
    }
    m_tokens.unknownWord = true;
}

} // namespace

bool Tokens::hasMark() const
{
    return std::ranges::any_of(numbers(), [](const Number& n) { return n.mark != Mark::none; });
}

Result<Tokens> takeApart(std::string_view text, char decimal)
{
    const auto commas = commasOf(text, decimal);
    if (!commas)
        return fail(commas.error());
    Tokens tokens = Taker(text, *commas).take();
    tokens.commaDecimals = *commas == Commas::decimal;
    return tokens;
}

} // namespace cupule::notation
