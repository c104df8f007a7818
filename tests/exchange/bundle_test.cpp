#include "core/exchange/bundle/bundle_file.h"

#include <cstdlib>
#include <filesystem>

#include "core/base/file.h"
#include "core/record/json.h"
#include "core/record/practice.h"
#include "tests/exchange/bundle_maker.h"
#include "tests/support/catch.h"
#include "tests/support/shared_data.h"

using namespace cupule;
using test::BundleMaker;

namespace {

struct Whole {
    std::vector<BundleLine> lines;
    std::vector<BundleRecord> records;
    std::vector<BundlePersonal> personal;
    std::string media;
    bool operator==(const Whole&) const = default;
};

Result<Whole> wholeOf(const BundleFile& bundle)
{
    Whole whole;
    const auto keep = [](auto& list) {
        return [&list](const auto& one) -> Status {
            list.push_back(one);
            return {};
        };
    };
    if (auto read = bundle.eachLine(keep(whole.lines)); !read)
        return fail(read.error());
    if (auto read = bundle.eachRecord(keep(whole.records)); !read)
        return fail(read.error());
    if (auto read = bundle.eachPersonal(keep(whole.personal)); !read)
        return fail(read.error());
    auto media = bundle.eachMedium([&](const std::string& sha256, std::string_view bytes) -> Status {
        whole.media += bytes.empty() ? sha256 + ";" : std::string(bytes);
        return {};
    });
    if (!media)
        return fail(media.error());
    return whole;
}

std::string codeOf(const std::string& path, const BundleLimits& limits = {})
{
    const auto bundle = BundleFile::open(path, limits);
    return bundle ? std::string() : bundle.error().code;
}

std::string whyOf(const std::string& path)
{
    const auto bundle = BundleFile::open(path);
    return bundle ? std::string() : bundle.error().code + " " + bundle.error().argument("why");
}

/// The text of a part exchanged, and nothing else.
std::string with(const BundleMaker& maker, const std::string& part, const std::string& text)
{
    auto texts = maker.texts();
    for (auto& [name, content] : texts)
        if (name == part)
            content = text;
    return BundleMaker::zipOf(texts);
}

bool runs(const std::string& command)
{
    return std::system((command + " >/dev/null 2>&1").c_str()) == 0;
}

} // namespace

TEST_CASE("a bundle gives back what was put in", "[bundle]")
{
    const BundleMaker maker;
    const auto bundle = BundleFile::open(maker.write()).value();
    Manifest expected = maker.manifest;
    expected.key = hex(maker.key.publicKey());
    expected.counts = {5, 1, 1, 3, 1};
    expected.parts = bundle.manifest().parts;
    CHECK(bundle.manifest() == expected);
    CHECK(bundle.manifest().parts.size() == 3);
    const Whole whole = wholeOf(bundle).value();
    CHECK(whole.lines == maker.lines);
    CHECK(whole.records == maker.records);
    CHECK(whole.personal == maker.personal);
    CHECK(whole.media == maker.picture + hex(sha256(maker.picture)) + ";");
    CHECK(bundle.pack().value().empty());
    CHECK(bundle.manifestDigest() == hex(sha256(toJson(bundle.manifest()))));
}

TEST_CASE("what is read is what was verified, also where the file was exchanged in between", "[bundle]")
{
    const BundleMaker maker, other(2);
    for (const std::int64_t keptBytes : {BundleLimits().keptBytes, std::int64_t{0}}) {
        CAPTURE(keptBytes);
        const std::string path = maker.write();
        BundleLimits limits;
        limits.keptBytes = keptBytes;
        const auto bundle = BundleFile::open(path, limits).value();
        std::filesystem::copy_file(other.write(), path, std::filesystem::copy_options::overwrite_existing);
        std::vector<BundleLine> lines;
        const Status read = bundle.eachLine([&](const BundleLine& line) {
            lines.push_back(line);
            return Status();
        });
        CHECK(read.has_value() == (keptBytes > 0));
        if (read)
            CHECK(lines == maker.lines);
        else
            CHECK((read.error().code == "bundle.hash" || read.error().code == "bundle.damaged"));
    }
}

TEST_CASE("the same content makes the same bytes", "[bundle]")
{
    const BundleMaker maker;
    CHECK(readFile(maker.write()).value() == readFile(maker.write()).value());
}

TEST_CASE("another program, written after the page that describes bundles, reads and proves one", "[bundle]")
{
    // Python's zipfile and hashlib and Info-ZIP's unzip, all independent of libarchive; resources/docs/bundle.md.
    const BundleMaker maker;
    const std::string path = maker.write();
    if (!runs("python3 -c 'import zipfile'") || !runs("unzip -v"))
        return test::skipped("python3 or unzip is not installed");
    CHECK(runs("unzip -t " + path));
    const std::string script = test::temporaryFolder() + "/read.py";
    REQUIRE(writeFile(script, "import datetime, hashlib, json, sys, zipfile\n"
                              "z = zipfile.ZipFile(sys.argv[1])\n"
                              "assert z.testzip() is None\n"
                              "m = json.loads(z.read('manifest.json'))\n"
                              "assert z.namelist()[:2] == ['manifest.json', 'manifest.sig'], z.namelist()\n"
                              "for p in m['parts']:\n"
                              "    b = z.read(p['name'])\n"
                              "    assert len(b) == p['bytes'] and hashlib.sha256(b).hexdigest() == p['sha256'], p\n"
                              "lines = {(l['incarnation'], l['number']): l for l in map(json.loads, z.read('journal.jsonl').splitlines())}\n"
                              "for r in map(json.loads, z.read('records.jsonl').splitlines()):\n"
                              "    l = lines[r['incarnation'], r['number']]\n"
                              "    assert hashlib.sha256(r['content'].encode()).hexdigest() == l['digest'], r\n"
                              "before = '0' * 64\n"
                              "for l in map(json.loads, z.read('journal.jsonl').splitlines()):\n"
                              "    at = datetime.datetime.fromisoformat(l['at'].replace('Z', '+00:00'))\n"
                              "    offset = '' if l['at'].endswith('-00:00') else '%d' % (at.utcoffset().total_seconds() // 60)\n"
                              "    text = ['cupule-journal-1', l['incarnation'], str(l['number']), '%d' % round(at.timestamp() * 1000), offset]\n"
                              "    text += [l.get(k, '') for k in ('author', 'kind', 'noun', 'entity', 'digest', 'commitment')]\n"
                              "    text += [l.get('before', before), '']\n"
                              "    before = hashlib.sha256('\\n'.join(text).encode()).hexdigest()\n"
                              "    assert before == l['hash'], l\n"
                              "for p in map(json.loads, z.read('personal.jsonl').splitlines()):\n"
                              "    d = hashlib.sha256(bytes.fromhex(p['salt']) + p['payload'].encode()).hexdigest()\n"
                              "    assert d == p['commitment'] and d in m['personal'], p\n"));
    CHECK(runs("python3 " + script + " " + path));
}

TEST_CASE("personal data may be left out or erased, and the manifest still verifies", "[bundle]")
{
    BundleMaker maker;
    auto texts = maker.texts();
    std::erase_if(texts, [](const auto& part) { return part.first == personalPartName; });
    const auto bundle = BundleFile::open(BundleMaker::zipOf(texts));
    REQUIRE(bundle);
    CHECK(wholeOf(*bundle)->personal.empty());
    CHECK(bundle->manifest().personal.size() == 1);
    CHECK(codeOf(with(maker, personalPartName, "")).empty());
}

TEST_CASE("a signature by another key, or over another manifest, is refused", "[bundle][hostile]")
{
    const BundleMaker maker, other(2);
    const std::string manifest = toJson(BundleFile::open(maker.write())->manifest());
    CHECK(codeOf(with(maker, signaturePart, hex(other.key.sign(manifest)) + "\n")) == "bundle.signature");
    CHECK(codeOf(with(maker, signaturePart, hex(maker.key.sign(manifest + " ")) + "\n")) == "bundle.signature");
    CHECK(codeOf(with(maker, signaturePart, hex(maker.key.sign(manifest)))) == "bundle.signature");
    CHECK(codeOf(with(maker, signaturePart, hex(maker.key.sign(manifest)) + "\n")).empty());
}

TEST_CASE("parts that are missing, unknown or other than signed are refused by name", "[bundle][hostile]")
{
    const BundleMaker maker;
    for (const std::string& part : {manifestPart, signaturePart, journalPart, recordsPart, mediaPrefix + hex(sha256(maker.picture))}) {
        CAPTURE(part);
        auto texts = maker.texts();
        std::erase_if(texts, [&](const auto& each) { return each.first == part; });
        const auto bundle = BundleFile::open(BundleMaker::zipOf(texts));
        REQUIRE_FALSE(bundle);
        CHECK(bundle.error().code == "bundle.part-missing");
        CHECK(bundle.error().argument("part") == part);
    }
    auto more = maker.texts();
    more.emplace_back("notes.txt", "read me");
    CHECK(codeOf(BundleMaker::zipOf(more)) == "bundle.part-unknown");
    CHECK(codeOf(with(maker, recordsPart, "")) == "bundle.hash");
    std::string picture = maker.picture;
    picture[4] = 'X';
    CHECK(codeOf(with(maker, mediaPrefix + hex(sha256(maker.picture)), picture)) == "bundle.hash");
}

TEST_CASE("names that lead elsewhere, come twice or clash are refused before anything is unpacked", "[bundle][hostile]")
{
    struct Row {
        const char* name;
        const char* code;
    };
    const auto row = GENERATE(values<Row>({{"../outside.txt", "bundle.path-outside"},
                                           {"media/../../outside.txt", "bundle.path-outside"},
                                           {"/etc/outside.txt", "bundle.path-outside"},
                                           {"C:outside.txt", "bundle.path-outside"},
                                           {"media\\..\\outside.txt", "bundle.path-outside"},
                                           {"media//a", "bundle.path-outside"},
                                           {"./manifest.json", "bundle.path-outside"},
                                           {"line\nfeed", "bundle.path-outside"},
                                           {"media/", "bundle.part-kind"},
                                           {"manifest.json", "bundle.part-twice"},
                                           {"Manifest.JSON", "bundle.part-clash"},
                                           {"caf\xC3\xA9.txt", "bundle.part-unknown"}}));
    CAPTURE(row.name);
    auto texts = BundleMaker().texts();
    texts.emplace_back(row.name, "x");
    const auto bundle = BundleFile::open(BundleMaker::zipOf(texts));
    REQUIRE_FALSE(bundle);
    CHECK(bundle.error().code == row.code);
    CHECK(bundle.error().kind == FaultKind::refused);
}

TEST_CASE("limits are told with what was found, and can be moved", "[bundle][hostile]")
{
    BundleMaker maker;
    maker.picture = std::string(3 << 20, 'x');
    const std::string path = maker.write();
    REQUIRE(codeOf(path).empty());
    BundleLimits limits;
    const auto refused = [&](const char* code) {
        const auto bundle = BundleFile::open(path, limits);
        REQUIRE_FALSE(bundle);
        CHECK(bundle.error().code == code);
        CHECK(std::stoll(bundle.error().argument("found")) > std::stoll(bundle.error().argument("limit")));
        limits = {};
    };
    limits.fileBytes = 1000;
    refused("bundle.too-large");
    limits.partBytes = 3 << 20;
    CHECK(BundleFile::open(path, limits));
    limits.partBytes = (3 << 20) - 1;
    refused("bundle.part-large");
    limits.wholeBytes = 3 << 20;
    refused("bundle.whole-large");
    limits.parts = 5;
    refused("bundle.part-count");
    limits.manifestBytes = 100;
    refused("bundle.part-large");
    limits.lineBytes = 100;
    CHECK(whyOf(path).empty());
    CHECK(codeOf(path, limits) == "bundle.line");
    // the same picture, deflated: denser than any bundle
    const auto bomb = BundleFile::open(BundleMaker::zipOf(maker.texts()));
    REQUIRE_FALSE(bomb);
    CHECK(bomb.error().code == "bundle.too-dense");
}

namespace {

std::uint32_t littleAt(const std::string& bytes, std::size_t at)
{
    std::uint32_t value = 0;
    for (std::size_t i = 4; i-- > 0;)
        value = value << 8 | static_cast<unsigned char>(bytes[at + i]);
    return value;
}

/// The same zip file whose headers say that a part unpacks to `by` bytes more. Offsets after PKWARE APPNOTE 4.3.7, 4.3.9 and 4.3.12.
std::string lyingBy(std::string bytes, const std::string& part, std::int32_t by)
{
    constexpr std::size_t centralSize = 24, centralPlace = 42, centralName = 46, localSize = 22;
    const std::size_t name = bytes.rfind(part);
    REQUIRE(name != std::string::npos);
    const std::size_t central = name - centralName;
    REQUIRE(bytes.compare(central, 4, "PK\1\2") == 0);
    const auto raise = [&](std::size_t at) {
        const std::uint32_t said = littleAt(bytes, at) + static_cast<std::uint32_t>(by);
        for (std::size_t i = 0; i < 4; ++i)
            bytes[at + i] = static_cast<char>(said >> (8 * i) & 0xFF);
    };
    const std::size_t local = littleAt(bytes, central + centralPlace);
    if (littleAt(bytes, local + localSize) > 0)        // else it stands behind the part, where nobody looks
        raise(local + localSize);
    raise(central + centralSize);
    return bytes;
}

} // namespace

TEST_CASE("a header that lies about the size of a part refuses the whole file with that reason", "[bundle][hostile]")
{
    const std::string path = BundleMaker::zipOf(BundleMaker().texts());
    REQUIRE(codeOf(path).empty());
    const std::string whole = readFile(path).value();
    const std::string part = GENERATE(manifestPart, personalPartName);
    const std::int32_t by = GENERATE(-7, -1, 1, 1000);
    CAPTURE(part, by);
    const std::string lying = test::temporaryFolder() + "/lying.zip";
    REQUIRE(writeFile(lying, lyingBy(whole, part, by)));
    CHECK(codeOf(lying) == "bundle.size-lies");
}

TEST_CASE("a journal that does not hold together is refused with the line", "[bundle][hostile]")
{
    BundleMaker maker;
    SECTION("a line changed under its hash")
    {
        maker.lines[2].kind = "changed";
        CHECK(whyOf(maker.write()) == "bundle.line hash");
    }
    SECTION("a line left out")
    {
        maker.lines.erase(maker.lines.begin() + 3);
        maker.manifest.chains[0].lines = 4;
        CHECK(whyOf(maker.write()) == "bundle.line before");
    }
    SECTION("a line left out whose follower says what was before it")
    {
        maker.lines[4].before = maker.lines[3].hash;
        maker.lines.erase(maker.lines.begin() + 3);
        maker.link();
        CHECK(whyOf(maker.write()).empty());
    }
    SECTION("lines in another order")
    {
        std::swap(maker.lines[2], maker.lines[3]);
        CHECK(whyOf(maker.write()) == "bundle.line before");
    }
    SECTION("a line of a chain that the manifest does not name")
    {
        maker.lines[4].incarnation = maker.manifest.bundle;
        CHECK(whyOf(maker.write()) == "bundle.line chain");
    }
    SECTION("a chain that says it came further than its lines")
    {
        maker.manifest.chains[0].lines = 6;
        CHECK(codeOf(maker.write()) == "bundle.counts");
    }
    SECTION("a chain with another end")
    {
        maker.manifest.chains[0].hash = hex(sha256("end"));
        CHECK(codeOf(maker.write()) == "bundle.counts");
    }
}

TEST_CASE("records that are not what the journal says are refused with the line", "[bundle][hostile]")
{
    BundleMaker maker;
    const auto relink = [&](std::size_t record, const std::string& content) {
        maker.records[record].content = content;
        maker.lines[static_cast<std::size_t>(maker.records[record].number) - 1].digest = hex(sha256(content));
        maker.link();
    };
    SECTION("another content")
    {
        maker.records[1].content.replace(maker.records[1].content.find("T-1"), 3, "T-2");
        CHECK(whyOf(maker.write()) == "bundle.line digest");
    }
    SECTION("another noun's id")
    {
        maker.records[1].entity = maker.records[0].entity;
        CHECK(whyOf(maker.write()) == "bundle.line digest");
    }
    SECTION("no line")
    {
        maker.records[1].number = 9;
        CHECK(whyOf(maker.write()) == "bundle.line no-line");
    }
    SECTION("twice")
    {
        maker.records.push_back(maker.records[1]);
        CHECK(whyOf(maker.write()) == "bundle.line line-twice");
    }
    SECTION("a name twice in a content")
    {
        std::string content = maker.records[1].content;
        content.insert(1, "\"label\":\"T-9\",");
        relink(1, content);
        CHECK(whyOf(maker.write()) == "bundle.line doubled");
    }
    SECTION("a content with an unknown member")
    {
        std::string content = maker.records[1].content;
        content.insert(1, "\"colour\":\"red\",");
        relink(1, content);
        CHECK(whyOf(maker.write()) == "bundle.line unknown");
    }
    SECTION("a content that is not canonical")
    {
        relink(1, maker.records[1].content + " ");
        CHECK(whyOf(maker.write()) == "bundle.line value");
    }
    SECTION("the content of another noun")
    {
        maker.records[1].noun = "site";
        CHECK(whyOf(maker.write()) == "bundle.line unknown");
    }
    SECTION("a type that nobody knows")
    {
        maker.records[1].type = "rumour";
        CHECK(whyOf(maker.write()) == "bundle.line value");
    }
    SECTION("its own parent")
    {
        maker.records[1].parents = {maker.records[1].id};
        CHECK(whyOf(maker.write()) == "bundle.line own-parent");
    }
    SECTION("personal data that the manifest does not know of")
    {
        maker.manifest.personal.clear();
        maker.personal.clear();
        CHECK(whyOf(maker.write()) == "bundle.line commitment");
    }
    SECTION("personal data that is not what was committed to")
    {
        maker.personal[0].payload.replace(maker.personal[0].payload.find("Marl"), 4, "Mark");
        CHECK(whyOf(maker.write()) == "bundle.line commitment");
    }
    SECTION("what is told of detection, in a form that has none of it")
    {
        SkillNote note;
        note.id = maker.records[1].entity;
        BundleRecord& record = maker.records[1];
        record = {{}, toJson(note), note.id, {}, record.incarnation, {}, record.number, {}, "skill"};
        maker.lines[2].digest = hex(sha256(record.content));
        maker.link();
        CHECK(whyOf(maker.write()) == "bundle.line value");
        maker.manifest.format = 2;
        CHECK(codeOf(maker.write()).empty());
        Skill skill;
        skill.id = note.id;
        skill.signs = {{10, 13, 8, "S01", 12}};        // found more often than it was there
        BundlePersonal part{{}, note.id, "skill", toJson(skill), hex(sha256("salt"))};
        const auto commit = [&] {
            Sha256 hash;
            hash.add(std::span<const std::uint8_t>(sha256("salt")));
            hash.add(part.payload);
            part.commitment = hex(hash.finish());
            maker.personal = {part};
            maker.manifest.personal.push_back(part.commitment);
        };
        commit();
        CHECK(whyOf(maker.write()) == "bundle.line value");
        skill.signs[0].found = 12;
        part.payload = toJson(skill);
        commit();
        CHECK(codeOf(maker.write()).empty());
    }
    SECTION("fewer visits than said")
    {
        maker.manifest.counts.visits = 2;
        CHECK(codeOf(maker.write()) == "bundle.counts");
    }
}

TEST_CASE("a manifest of a newer program, or with a member twice, is refused as such", "[bundle][hostile]")
{
    const BundleMaker maker;
    const std::string good = toJson(BundleFile::open(maker.write())->manifest());
    const auto signedAs = [&](std::string manifest) {
        auto texts = maker.texts();
        for (auto& [name, text] : texts)
            text = name == manifestPart ? manifest : name == signaturePart ? hex(maker.key.sign(manifest)) + "\n" : text;
        return BundleMaker::zipOf(texts);
    };
    const auto changed = [&](const std::string& from, const std::string& to) {
        std::string text = good;
        REQUIRE(text.find(from) != std::string::npos);
        return signedAs(text.replace(text.find(from), from.size(), to));
    };
    CHECK(codeOf(signedAs(good)).empty());
    CHECK(codeOf(changed("\"format\":1", "\"format\":3")) == "bundle.newer");
    CHECK(codeOf(changed("\"format\":1", "\"format\":3,\"novelty\":[]")) == "bundle.newer");
    CHECK(codeOf(changed("\"format\":1", "\"format\":0")) == "bundle.manifest");
    CHECK(whyOf(changed("\"number\":1", "\"number\":1,\"number\":2")) == "bundle.manifest doubled");
    CHECK(whyOf(changed("\"number\":1", "\"number\":1,\"novelty\":2")) == "bundle.manifest unknown");
    CHECK(codeOf(changed("\"number\":1", "\"number\":0")) == "bundle.manifest");
    CHECK(codeOf(changed("\"kind\":\"day\"", "\"kind\":\"night\"")) == "bundle.manifest");
    CHECK(codeOf(signedAs("[]")) == "bundle.manifest");
    CHECK(codeOf(signedAs(std::string(100'000, '['))) == "bundle.manifest");
}

TEST_CASE("what is no zip, or only half of one, is refused", "[bundle][hostile]")
{
    const std::string folder = test::temporaryFolder();
    CHECK(codeOf(folder + "/none.zip") == "file.open");
    REQUIRE(writeFile(folder + "/text.zip", "no zip at all"));
    CHECK(codeOf(folder + "/text.zip") == "bundle.not-zip");
    REQUIRE(writeFile(folder + "/empty.zip", ""));
    CHECK_FALSE(codeOf(folder + "/empty.zip").empty());
    const std::string good = readFile(BundleMaker().write()).value();
    for (std::size_t size = 0; size < good.size(); size += 7) {
        REQUIRE(writeFile(folder + "/cut.zip", good.substr(0, size)));
        REQUIRE_FALSE(BundleFile::open(folder + "/cut.zip"));
    }
}
