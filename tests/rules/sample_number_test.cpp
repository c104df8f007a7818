#include "core/rules/sample_number.h"

#include <array>
#include <cstdio>
#include <memory>
#include <set>
#include <string>
#include <vector>

#include "core/base/file.h"
#include "core/base/random.h"
#include "core/base/text.h"
#include "tests/support/catch.h"
#include "tests/support/shared_data.h"

using namespace cupule;

namespace {

constexpr std::string_view letters = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ";

char anyOf(Random& random, std::string_view from)
{
    return from[random.below(from.size())];
}

/// A number of the issued form without dashes: two digits, two characters, four digits, check.
std::string issued(Random& random)
{
    for (;;) {
        const std::string block{anyOf(random, letters), anyOf(random, letters)};
        const auto number = makeSampleNumber(static_cast<int>(random.below(100)), block,
                                             1 + static_cast<int>(random.below(9999)));
        if (!number)
            continue;
        std::string bare = number->text();
        std::erase(bare, '-');
        return bare;
    }
}

/// Output of a command, or nothing where it failed.
std::optional<std::string> outputOf(const std::string& command)
{
    std::unique_ptr<FILE, int (*)(FILE*)> pipe(popen(command.c_str(), "r"), nullptr);
    if (!pipe)
        return std::nullopt;
    std::string text;
    std::array<char, 4096> buffer{};
    while (const std::size_t got = std::fread(buffer.data(), 1, buffer.size(), pipe.get()))
        text.append(buffer.data(), got);
    return pclose(pipe.release()) == 0 ? std::optional(text) : std::nullopt;
}

/// An interpreter that has the reference library.
std::string pythonWithReference()
{
    for (const char* python : {"python3", "/usr/bin/python3"})
        if (outputOf(std::string(python) + " -c 'import stdnum.iso7064.mod_37_2' 2>/dev/null"))
            return python;
    return {};
}

} // namespace

// Source: ISO 7064:2003, MOD 37-2, by its reference implementation python3-stdnum (module stdnum.iso7064.mod_37_2,
// whose own documentation gives G123489654321 with check Y).
TEST_CASE("the check character is that of ISO 7064 MOD 37-2", "[rules][sample-number]")
{
    CHECK(iso7064Mod37_2("G123489654321") == 'Y');
    CHECK(iso7064Mod37_2("G1234-8965-4321") == 'Y');
    CHECK(iso7064Mod37_2("") == '1');
}

// Source: python3-stdnum as packaged by Debian, asked for a few thousand numbers.
TEST_CASE("check characters agree with the reference library over thousands of numbers", "[rules][sample-number]")
{
    const std::string python = pythonWithReference();
    if (python.empty()) {
        test::skipped("python3-stdnum is not installed");
        return;
    }
    SeededRandom random(37);
    std::vector<std::string> texts;
    std::string input;
    for (int i = 0; i < 4000; ++i) {
        std::string text;
        for (std::size_t length = 1 + random.below(14); text.size() < length;)
            text += anyOf(random, letters);
        input += text + '\n';
        texts.push_back(std::move(text));
    }
    const std::string file = test::temporaryFolder() + "/numbers.txt";
    REQUIRE(writeFile(file, input));
    const auto output = outputOf(python + " -c 'import sys; from stdnum.iso7064 import mod_37_2 as m\n"
                                          "for line in open(sys.argv[1]): print(m.calc_check_digit(line.strip()))' "
                                 + file);
    REQUIRE(output);
    std::string ours;
    int stars = 0;
    for (const std::string& text : texts) {
        ours += iso7064Mod37_2(text);
        ours += '\n';
        stars += ours[ours.size() - 2] == '*' ? 1 : 0;
    }
    CHECK(ours == *output);
    CHECK(stars > 0);
}

// Source: ISO 7064:2003, which promises that a pure system finds every single wrong character and every swap of two
// neighbours; shown here for each place of the issued form over the whole alphabet.
TEST_CASE("every single wrong character is found at every place", "[rules][sample-number]")
{
    SeededRandom random(1);
    for (int i = 0; i < 60; ++i) {
        const std::string good = issued(random);
        for (std::size_t place = 0; place < good.size(); ++place) {
            for (const char first : letters) {
                std::string body = good.substr(0, good.size() - 1);
                if (place < body.size())
                    body[place] = first;
                const char check = place < body.size() ? iso7064Mod37_2(body) : first;
                if (place == body.size() && first == good.back())
                    continue;
                for (const char other : letters) {
                    if (place == body.size() || other == first)
                        continue;
                    std::string wrong = body;
                    wrong[place] = other;
                    REQUIRE(iso7064Mod37_2(wrong) != check);
                }
                if (place == body.size())
                    REQUIRE(iso7064Mod37_2(body) != check);
            }
        }
    }
}

TEST_CASE("every swap of two neighbours is found at every place", "[rules][sample-number]")
{
    SeededRandom random(2);
    for (int i = 0; i < 20; ++i) {
        const std::string good = issued(random);
        for (std::size_t place = 0; place + 2 < good.size(); ++place)
            for (const char a : letters)
                for (const char b : letters) {
                    std::string body = good.substr(0, good.size() - 1);
                    body[place] = a;
                    body[place + 1] = b;
                    const char check = iso7064Mod37_2(body);
                    std::swap(body[place], body[place + 1]);
                    REQUIRE((a == b || iso7064Mod37_2(body) != check));
                }
        // The check itself swapped with the character before it.
        for (const char last : letters) {
            std::string body = good.substr(0, good.size() - 1);
            body.back() = last;
            const char check = iso7064Mod37_2(body);
            body.back() = check;
            REQUIRE((check == last || check == '*' || iso7064Mod37_2(body) != last));
        }
    }
}

// What the two cases above show for a few numbers holds for all: what one character does to the check does not depend on the
// others, so that a pair found out in one number is found out in every number.
TEST_CASE("what a character does to the check does not depend on its neighbours", "[rules][sample-number]")
{
    const auto valueOf = [](char c) { return static_cast<int>((std::string(letters) + '*').find(c)); };
    SeededRandom random(3);
    std::set<std::string> bodies{"00000000"};
    while (bodies.size() < 200)
        bodies.insert(issued(random).substr(0, 8));
    for (std::size_t place = 0; place < 8; ++place) {
        std::set<int> seen;
        for (const char c : letters) {
            std::set<int> moves;
            for (std::string body : bodies) {
                body[place] = '0';
                const int without = valueOf(iso7064Mod37_2(body));
                body[place] = c;
                moves.insert((valueOf(iso7064Mod37_2(body)) - without + 37) % 37);
            }
            REQUIRE(moves.size() == 1);
            seen.insert(*moves.begin());
        }
        CHECK(seen.size() == letters.size()); // no two characters do the same
    }
}

TEST_CASE("a number reads back as it was made, also in lower case and without dashes", "[rules][sample-number]")
{
    const auto made = makeSampleNumber(26, "TV", 147);
    REQUIRE(made);
    CHECK(made->text().substr(0, 11) == "26-TV-0147-");
    std::string bare = made->text();
    std::erase(bare, '-');
    for (const std::string& typed : {made->text(), lowerAscii(made->text()), bare, "  " + made->text() + "\n",
                                     std::string("26 TV 0147 ") + made->check,
                                     std::string("26\u2013TV\u20130147\u2011") + made->check}) {
        CAPTURE(typed);
        const auto read = readSampleNumber(typed);
        REQUIRE(read);
        CHECK(read->text() == made->text());
        CHECK(read->year == 26);
        CHECK(read->block == "TV");
        CHECK(read->running == 147);
    }
}

TEST_CASE("what is no sample number is refused by its form, and a wrong one by its check", "[rules][sample-number]")
{
    const std::string good = makeSampleNumber(26, "TV", 147)->text();
    for (const std::string& text : {std::string(), std::string("26-TV-0147"), good + "1", std::string("T").append(good, 1),
                                    std::string("26-TV-0000-4"), std::string("26-TV-01A7-H"), std::string("26-TV-0147-*"),
                                    std::string("26-T\u00C9-0147-H"), std::string("26/TV/0147/H"),
                                    std::string("\xFF\xFE"), std::string(100'000, '2')}) {
        CAPTURE(text.substr(0, 30));
        REQUIRE_FALSE(readSampleNumber(text));
        CHECK(readSampleNumber(text).error().code == "sample-number.form");
    }
    std::string wrong = good;
    wrong[6] = wrong[6] == '9' ? '8' : '9';
    REQUIRE_FALSE(readSampleNumber(wrong));
    CHECK(readSampleNumber(wrong).error().code == "sample-number.check");
}

TEST_CASE("numbers whose check would be a star are not issued, nor numbers outside the form", "[rules][sample-number]")
{
    int stars = 0;
    std::set<std::string> texts;
    for (int running = 1; running <= 9999; ++running) {
        const std::string digits = std::to_string(10'000 + running).substr(1);
        const bool star = iso7064Mod37_2("26TV" + digits) == '*';
        const auto number = makeSampleNumber(26, "TV", running);
        REQUIRE(number.has_value() != star);
        stars += star ? 1 : 0;
        if (number)
            texts.insert(number->text());
    }
    CHECK(stars > 200);   // one in 37
    CHECK(texts.size() == static_cast<std::size_t>(9999 - stars));
    for (const auto& [year, block, running] :
         std::vector<std::tuple<int, const char*, int>>{{-1, "TV", 1}, {100, "TV", 1}, {26, "T", 1}, {26, "TVX", 1},
                                                        {26, "tv", 1}, {26, "T*", 1}, {26, "TV", 0}, {26, "TV", 10'000}})
        CHECK_FALSE(makeSampleNumber(year, block, running));
}
