#include "core/base/hash.h"

#include <fstream>

#include "tests/support/catch.h"
#include "tests/support/shared_data.h"

using namespace cupule;

namespace {

struct Row {
    std::string message;
    std::string expected;
};

} // namespace

// Source: NIST, FIPS 180-4 examples for SHA-256 (one-block, two-block and empty messages).
TEST_CASE("SHA-256 gives the digests of the published examples", "[base][hash]")
{
    const auto row = GENERATE(values<Row>({
        {"", "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855"},
        {"abc", "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad"},
        {"abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq",
         "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1"},
        {std::string(1'000'000, 'a'), "cdc76e5c9914fb9281a1c7e284d73e67f1809a48a497200e046d39ccc7112cd0"},
    }));
    CAPTURE(row.message.size());
    CHECK(hex(sha256(row.message)) == row.expected);

    Sha256 piecewise;
    for (std::size_t at = 0; at < row.message.size(); at += 7)
        piecewise.add(std::string_view(row.message).substr(at, 7));
    CHECK(hex(piecewise.finish()) == row.expected);
}

TEST_CASE("a file's digest is that of its bytes, and a missing file is named", "[base][hash]")
{
    const std::string path = test::temporaryFolder() + "/a";
    std::ofstream(path) << "abc";
    CHECK(hex(sha256OfFile(path).value()) == "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
    const auto missing = sha256OfFile(path + "b");
    REQUIRE_FALSE(missing);
    CHECK(missing.error().code == "file.open");
}

TEST_CASE("a digest reads back from its hexadecimal text and from nothing else", "[base][hash]")
{
    const Digest digest = sha256("abc");
    CHECK(digestFromHex(hex(digest)).value() == digest);
    CHECK_FALSE(digestFromHex(hex(digest).substr(1)));
    CHECK_FALSE(digestFromHex(std::string(64, 'g')));
}
