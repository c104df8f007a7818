#include "tests/exchange/bundle_maker.h"

#include <stdexcept>

#include "core/base/file.h"
#include "core/record/json.h"
#include "core/store/journal.h"
#include "tests/support/shared_data.h"

namespace cupule::test {

namespace {

FixedClock noon({1'781'000'000'000, 60});

SigningKey keyOf(std::uint64_t seed)
{
    SeededRandom random(seed);
    return SigningKey::make(random);
}

std::string freshPath(const std::string& name)
{
    return temporaryFolder() + "/" + name;
}

template <class Line>
std::string textOf(const std::vector<Line>& lines)
{
    std::string text;
    for (const Line& line : lines)
        text += toJson(line) + "\n";
    return text;
}

SeededRandom& chance()
{
    static SeededRandom random(77);
    return random;
}

} // namespace

BundleMaker::BundleMaker(std::uint64_t seed) : key(keyOf(seed)), m_ids(noon, chance())
{
    Person person;
    person.id = m_ids.make();
    person.code = "MH";
    Tree tree;
    tree.id = m_ids.make();
    tree.label = "T-1";
    Visit visit;
    visit.id = m_ids.make();
    visit.tree = tree.id;
    visit.observer = person.id;
    visit.date = *CivilDate::make(2026, 6, 11);
    visit.note = "a gall, \"dry\"";

    manifest.authorCode = "MH";
    manifest.authorPerson = person.id;
    manifest.bundle = m_ids.make();
    manifest.kind = bundleKindName(BundleKind::day);
    manifest.made = noon.now();
    manifest.number = 1;
    manifest.program = "test";
    manifest.store = {m_ids.make(), "laptop", "Tharn Vale", "MAR", "Europe/London"};
    const Uid device = m_ids.make(), incarnation = m_ids.make();
    manifest.chains.push_back({noon.now(), device, {}, incarnation, 0, 0, "made"});

    Person named = person;
    named.name = "Marl Hollin";
    named.code.clear();
    BundlePersonal part{{}, person.id, "person", toJson(named), hex(sha256("salt"))};
    Sha256 hash;
    hash.add(std::span<const std::uint8_t>(sha256("salt")));
    hash.add(part.payload);
    part.commitment = hex(hash.finish());
    personal.push_back(part);
    manifest.personal.push_back(part.commitment);

    add("began", "incarnation", incarnation, device.text() + "\nmade");
    records.clear();                       // no content of a record
    add("made", "person", person.id, toJson(person), part.commitment);
    add("made", "tree", tree.id, toJson(tree));
    add("left", "visit", visit.id, toJson(visit));
    records.pop_back();                    // a draft's line travels without its content
    add("submitted", "visit", visit.id, toJson(visit));
    link();
}

void BundleMaker::add(const std::string& kind, const std::string& noun, const Uid& entity, const std::string& content,
                      const std::string& commitment)
{
    const Uid incarnation = manifest.chains.front().incarnation;
    const auto number = static_cast<std::int64_t>(lines.size()) + 1;
    lines.push_back({noon.now(), manifest.authorPerson, {}, commitment, hex(sha256(content)), entity, {}, incarnation, kind, noun, number});
    records.push_back({commitment, content, entity, m_ids.make(), incarnation, noun, number, {}, "revision"});
}

void BundleMaker::link()
{
    Digest before{};
    for (BundleLine& line : lines) {
        JournalLine whole{line.incarnation, line.number, line.at, line.author, line.kind, line.noun, line.entity, {}, {}, {}};
        if (!line.digest.empty())
            whole.digest = digestFromHex(line.digest).value();
        if (!line.commitment.empty())
            whole.commitment = digestFromHex(line.commitment).value();
        if (!line.before.empty())
            before = digestFromHex(line.before).value();
        before = journalHash(whole, before);
        line.hash = hex(before);
    }
    BundleChain& chain = manifest.chains.front();
    chain.lines = static_cast<std::int64_t>(lines.size());
    chain.to = lines.empty() ? 1 : lines.back().number;
    chain.hash = hex(before);
    manifest.counts.visits = 1;
}

BundleParts BundleMaker::parts() const
{
    BundleParts parts{textOf(lines), textOf(records), textOf(personal), pack, {}};
    if (!picture.empty()) {
        const std::string path = freshPath("picture");
        if (!writeFile(path, picture))
            throw std::runtime_error(path);
        parts.media.push_back({hex(sha256(picture)), path, static_cast<std::int64_t>(picture.size())});
    }
    return parts;
}

std::string BundleMaker::write() const
{
    const std::string path = freshPath("made.zip");
    if (const auto written = writeBundle(path, manifest, parts(), key); !written)
        throw std::runtime_error(written.error().code + " " + written.error().technical);
    return path;
}

std::string BundleMaker::zipOf(const std::vector<std::pair<std::string, std::string>>& parts)
{
    const std::string path = freshPath("put-together.zip");
    auto zip = ZipWriter::begin(path, noon.now());
    for (const auto& [name, text] : parts)
        if (!zip || !zip->addText(name, text))
            throw std::runtime_error(name);
    if (!zip->finish())
        throw std::runtime_error(path);
    return path;
}

std::vector<std::pair<std::string, std::string>> BundleMaker::texts() const
{
    std::vector<std::pair<std::string, std::string>> texts;
    const ZipFile zip = ZipFile::open(write(), {}).value();
    for (const ZipPart& part : zip.parts())
        texts.emplace_back(part.name, zip.text(part.name).value());
    return texts;
}

} // namespace cupule::test
