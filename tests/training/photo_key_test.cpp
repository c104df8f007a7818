#include "core/training/photo_key.h"

#include "tests/support/catch.h"

using namespace cupule;

namespace {

Uid id(std::uint8_t number)
{
    Uid uid;
    uid.bytes[15] = number;
    return uid;
}

PhotoCase photoCase(std::uint8_t number)
{
    PhotoCase made;
    made.id = id(number);
    made.pictures = {std::string(64, 'c')};
    made.questions = {{"sign", {}, "S02"}, {"host", {}, ""}, {"look", {"S02", "S16"}, ""}};
    return made;
}

PhotoKey key(std::uint8_t by, const PhotoCase& about, const std::string& sign, const std::string& host, const std::string& look)
{
    PhotoKey made;
    made.by = id(by);
    made.photoCase = about.id;
    made.truths = {{"sign", "S02", sign}, {"host", "", host}};
    if (!look.empty())
        made.truths.push_back({"look", "", look});
    return made;
}

} // namespace

TEST_CASE("only what two people's keys agree on is asked", "[training][photo-key]")
{
    const std::vector<PhotoCase> cases{photoCase(1)};
    const std::vector<PhotoKey> keys{key(7, cases[0], "yes", "yes", "S02"), key(8, cases[0], "yes", "no", "")};
    const auto keyed = keyedCases(cases, keys);
    REQUIRE(keyed.size() == 1);
    REQUIRE(keyed[0].agreed.size() == 1);
    CHECK(keyed[0].agreed[0].subject == "S02");
    CHECK(keyed[0].agreed[0].right == std::vector<std::string>{"yes"});
    CHECK(keyed[0].agreed[0].options == std::vector<std::string>{"yes", "no", "not-judged"});
    REQUIRE(keyed[0].apart.size() == 1);
    CHECK(keyed[0].apart[0].kind == "host");
    REQUIRE(keyed[0].open.size() == 1);
    CHECK(keyed[0].open[0].kind == "look");
}

TEST_CASE("one person's two keys are one opinion, and the last counts", "[training][photo-key]")
{
    const std::vector<PhotoCase> cases{photoCase(1)};
    std::vector<PhotoKey> keys{key(7, cases[0], "yes", "yes", "S02"), key(7, cases[0], "no", "yes", "S02")};
    CHECK(keyedCases(cases, keys)[0].agreed.empty());
    keys.push_back(key(8, cases[0], "no", "yes", "S16"));
    const auto keyed = keyedCases(cases, keys);
    CHECK(keyed[0].agreed.size() == 2);
    CHECK(keyed[0].agreed[0].right == std::vector<std::string>{"no"});
    CHECK(keyed[0].apart.size() == 1);
}

// The teaching example of 50 proposals, kappa 0.40 (as in agreement_test; from memory): 20 both yes, 5, 10, 15 both no.
TEST_CASE("kappa between two makers of keys is that of the published example", "[training][photo-key]")
{
    std::vector<PhotoCase> cases;
    std::vector<PhotoKey> keys;
    const auto add = [&](int count, const char* one, const char* other) {
        for (int i = 0; i < count; ++i) {
            cases.push_back(photoCase(static_cast<std::uint8_t>(cases.size() + 1)));
            cases.back().questions.resize(1);
            PhotoKey first = key(201, cases.back(), one, "yes", "");
            PhotoKey second = key(202, cases.back(), other, "yes", "");
            keys.push_back(first);
            keys.push_back(second);
        }
    };
    add(20, "yes", "yes");
    add(5, "yes", "no");
    add(10, "no", "yes");
    add(15, "no", "no");
    const auto agreements = keyAgreements(keyedCases(cases, keys));
    REQUIRE(agreements.size() == 1);
    CHECK(agreements[0].questions == 50);
    REQUIRE(agreements[0].agreement);
    CHECK(*agreements[0].agreement->kappa == Approx(0.4).margin(1e-9));
}

TEST_CASE("a photo case or a key that cannot be asked is named", "[training][photo-key]")
{
    PhotoCase good = photoCase(1);
    CHECK(photoCaseFault(good).empty());
    PhotoCase bad = good;
    bad.pictures.clear();
    CHECK(photoCaseFault(bad) == "pictures");
    bad = good;
    bad.pictures = {"../x"};
    CHECK(photoCaseFault(bad) == "pictures");
    bad = good;
    bad.questions.clear();
    CHECK(photoCaseFault(bad) == "questions");
    bad.questions = {{"song", {}, ""}};
    CHECK(photoCaseFault(bad) == "questions");
    bad.questions = {{"sign", {}, "S02"}, {"sign", {}, "S02"}};
    CHECK(photoCaseFault(bad) == "questions");
    bad.questions = {{"look", {"S02", "S02"}, ""}};
    CHECK(photoCaseFault(bad) == "options");
    CHECK(photoKeyFault(key(7, good, "yes", "not-judged", "S16"), good).empty());
    CHECK(photoKeyFault(key(7, good, "perhaps", "no", ""), good) == "truth");
    CHECK(photoKeyFault(PhotoKey{}, good) == "questions");
    good.questions.resize(1);
    CHECK(photoKeyFault(key(7, good, "yes", "yes", ""), good) == "questions");
}
