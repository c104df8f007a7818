#include "core/exchange/csv/date_form_detail.h"

#include <charconv>

#include "core/exchange/csv/cell_detail.h"

namespace cupule::csv_detail {

namespace {

/// Walks over a text; every `take` moves past what it found or leaves everything as it is.
struct Walker {
    std::string_view text;
    std::size_t at = 0;

    [[nodiscard]] bool ended() const { return at >= text.size(); }
    [[nodiscard]] char here() const { return ended() ? '\0' : text[at]; }

    bool take(char c)
    {
        if (here() != c || ended())
            return false;
        ++at;
        return true;
    }
    /// Digits, at most nine; `count` says how many.
    std::optional<int> number(std::size_t& count)
    {
        const std::size_t from = at;
        int value = 0;
        while (!ended() && isDigit(here()) && at - from < 9)
            value = value * 10 + (text[at++] - '0');
        count = at - from;
        return count > 0 && !(isDigit(here()) && !ended()) ? std::optional(value) : std::nullopt;
    }
    std::string_view word()
    {
        const std::size_t from = at;
        while (!ended() && isLetter(here()))
            ++at;
        return text.substr(from, at - from);
    }
    std::size_t blanks()
    {
        const std::size_t from = at;
        while (!ended() && here() == ' ')
            ++at;
        return at - from;
    }
};

bool isSeparator(char c)
{
    return c == '-' || c == '/' || c == '.';
}

int fullYear(int year, std::size_t digits)
{
    return digits == 4 ? year : year >= 69 ? 1900 + year : 2000 + year;
}

/// What stands behind the date: nothing, or a T, a comma or blanks and then a time.
bool takeClock(Walker& walk, DateForm& form)
{
    if (walk.ended())
        return true;
    const bool comma = walk.take(',');
    const bool parted = walk.blanks() > 0 || (!comma && (walk.take('T') || walk.take('t')));
    form.clock = walk.text.substr(walk.at);
    return parted && !form.clock.empty();
}

/// Three numbers: 2024-05-02, 02/05/2024.
bool threeNumbers(Walker walk, DateForm& form)
{
    std::size_t digits[3];
    int value[3];
    char separator = '\0';
    for (int i = 0; i < 3; ++i) {
        const auto number = walk.number(digits[i]);
        if (!number)
            return false;
        value[i] = *number;
        if (i == 2)
            break;
        const char c = walk.here();
        if (!isSeparator(c) || (i == 1 && c != separator))
            return false;
        separator = c;
        walk.take(c);
    }
    const bool middle = digits[1] == 1 || digits[1] == 2;
    const bool short0 = digits[0] == 1 || digits[0] == 2;
    const bool short2 = digits[2] == 1 || digits[2] == 2;
    if (middle && digits[0] == 4 && short2) {
        form.kind = DateForm::Kind::settled;
        form.year = value[0];
        form.month = value[1];
        form.day = value[2];
    } else if (middle && short0 && (digits[2] == 4 || digits[2] == 2)) {
        form.kind = DateForm::Kind::twoNumbers;
        form.first = value[0];
        form.second = value[1];
        form.twoDigitYear = digits[2] == 2;
        form.year = fullYear(value[2], digits[2]);
        form.points = separator == '.';
    } else {
        return false;
    }
    return takeClock(walk, form);
}

/// A separator, or blanks with a comma or a point before them.
bool takeGap(Walker& walk)
{
    if (walk.take('-') || walk.take('/'))
        return true;
    const bool sign = walk.take(',') || walk.take('.');
    return walk.blanks() > 0 || sign;
}

bool takeDay(Walker& walk, DateForm& form)
{
    std::size_t digits = 0;
    const auto day = walk.number(digits);
    if (!day || digits > 2)
        return false;
    form.day = *day;
    if (isLetter(walk.here())) {
        const std::size_t back = walk.at;
        const auto ending = lowerAscii(walk.word());
        if (ending != "st" && ending != "nd" && ending != "rd" && ending != "th")
            walk.at = back;
    }
    return true;
}

bool takeYear(Walker& walk, DateForm& form)
{
    std::size_t digits = 0;
    const auto year = walk.number(digits);
    if (!year || (digits != 4 && digits != 2))
        return false;
    form.twoDigitYear = digits == 2;
    form.year = fullYear(*year, digits);
    return true;
}

bool takeMonthWord(Walker& walk, DateForm& form)
{
    form.month = monthNamed(walk.word());
    return form.month != 0;
}

/// A month as a word: 2 May 2024, 2-May-24, May 2, 2024, 2024-May-02.
bool withMonthWord(Walker walk, DateForm& form)
{
    bool read = false;
    if (isLetter(walk.here())) {
        read = takeMonthWord(walk, form) && takeGap(walk) && takeDay(walk, form) && takeGap(walk)
               && takeYear(walk, form);
    } else {
        Walker other = walk;
        std::size_t digits = 0;
        const auto year = other.number(digits);
        if (year && digits == 4) {
            walk = other;
            form.year = *year;
            read = takeGap(walk) && takeMonthWord(walk, form) && takeGap(walk) && takeDay(walk, form);
        } else {
            read = takeDay(walk, form);
            takeGap(walk);
            read = read && takeMonthWord(walk, form) && takeGap(walk) && takeYear(walk, form);
        }
    }
    form.kind = DateForm::Kind::settled;
    return read && takeClock(walk, form);
}

/// Digits alone, perhaps with a fraction: 20240502, 45072, 45073.604166.
bool oneNumber(std::string_view text, DateForm& form)
{
    const auto end = text.find_first_not_of("0123456789");
    const auto whole = text.substr(0, end);
    if (whole.empty() || whole.size() > 8)
        return false;
    const auto value = [](std::string_view digits) {
        int number = 0;
        std::from_chars(digits.data(), digits.data() + digits.size(), number);
        return number;
    };
    if (end == std::string_view::npos && whole.size() == 8) {
        form.kind = DateForm::Kind::settled;
        form.year = value(whole.substr(0, 4));
        form.month = value(whole.substr(4, 2));
        form.day = value(whole.substr(6, 2));
        return true;
    }
    form.kind = DateForm::Kind::dayCount;
    form.wholeDays = value(whole);
    if (end == std::string_view::npos)
        return true;
    const auto fraction = text.substr(end + 1);
    if ((text[end] != '.' && text[end] != ',') || fraction.empty()
        || fraction.find_first_not_of("0123456789") != std::string_view::npos)
        return false;
    const std::string digits = "0." + std::string(fraction);
    std::from_chars(digits.data(), digits.data() + digits.size(), form.partOfDay);
    return true;
}

bool takeOffset(Walker& walk, std::optional<int>& minutes, bool& possible)
{
    if (walk.take('Z') || walk.take('z')) {
        minutes = 0;
        return true;
    }
    if (lowerAscii(walk.text.substr(walk.at)) == "utc") {
        walk.at = walk.text.size();
        minutes = 0;
        return true;
    }
    const bool minus = walk.here() == '-';
    if (!walk.take('+') && !walk.take('-'))
        return false;
    std::size_t digits = 0;
    auto hours = walk.number(digits);
    if (!hours || (digits != 2 && digits != 4))
        return false;
    int rest = 0;
    if (digits == 4) {
        rest = *hours % 100;
        hours = *hours / 100;
    } else if (walk.take(':')) {
        const auto more = walk.number(digits);
        if (!more || digits != 2)
            return false;
        rest = *more;
    }
    possible = possible && *hours <= 18 && rest <= 59;
    minutes = (minus ? -1 : 1) * (*hours * 60 + rest);
    return true;
}

/// AM and PM: 12 AM is midnight, 12 PM noon.
bool takeHalf(Walker& walk, int& hour, bool& possible)
{
    const auto half = lowerAscii(walk.text.substr(walk.at, 2));
    if (half != "am" && half != "pm")
        return false;
    walk.at += 2;
    possible = possible && hour >= 1 && hour <= 12;
    hour = hour % 12 + (half == "pm" ? 12 : 0);
    return true;
}

bool takeSeconds(Walker& walk, char separator, int& seconds)
{
    if (!walk.take(separator))
        return true;
    std::size_t digits = 0;
    const auto read = walk.number(digits);
    if (!read || digits != 2)
        return false;
    seconds = *read;
    if (walk.take('.') || walk.take(',')) {
        const std::size_t from = walk.at;
        while (isDigit(walk.here()))
            ++walk.at;
        return walk.at > from;
    }
    return true;
}

} // namespace

ClockForm readClock(std::string_view text)
{
    ClockForm form;
    Walker walk{text};
    std::size_t digits = 0;
    const auto hourRead = walk.number(digits);
    const char separator = walk.here();
    if (!hourRead || digits > 2 || (separator != ':' && separator != '.'))
        return form;
    walk.take(separator);
    const auto minute = walk.number(digits);
    int seconds = 0;
    if (!minute || digits != 2 || !takeSeconds(walk, separator, seconds))
        return form;
    int hour = *hourRead;
    form.possible = true;
    walk.blanks();
    takeHalf(walk, hour, form.possible);
    walk.blanks();
    takeOffset(walk, form.offsetMinutes, form.possible);
    form.read = walk.ended();
    form.possible = form.possible && hour < 24 && *minute < 60 && seconds < 60;
    form.time = LocalTime{hour * 3600 + *minute * 60 + seconds};
    return form;
}

DateForm readForm(std::string_view text)
{
    const Walker walk{text};
    for (const auto read : {+[](Walker w, DateForm& f) { return oneNumber(w.text, f); }, &threeNumbers, &withMonthWord}) {
        DateForm form;
        if (read(walk, form))
            return form;
    }
    return {};
}

} // namespace cupule::csv_detail
