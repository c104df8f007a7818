#include <algorithm>
#include <map>
#include <set>
#include <unordered_map>
#include <unordered_set>

#include "core/base/hash.h"
#include "core/exchange/bundle/bundle_file.h"
#include "core/exchange/bundle/lines_ahead.h"
#include "core/record/person.h"
#include "core/record/json.h"
#include "core/record/practice.h"
#include "core/store/journal.h"

namespace cupule {

namespace {

tl::unexpected<Fault> refuse(const char* code, const std::string& file, const std::string& part, Arguments arguments = {})
{
    arguments.insert(arguments.begin(), {{"file", file}, {"part", part}});
    return fail(Fault{code, FaultKind::refused, std::move(arguments), {file, 0, 0, -1, std::string(part)}, {}});
}

tl::unexpected<Fault> badLine(const std::string& file, std::string_view part, std::int64_t line, const std::string& why)
{
    Fault fault{"bundle.line", FaultKind::refused,
                {{"file", file}, {"part", std::string(part)}, {"line", std::to_string(line)}, {"why", why}},
                {file, 0, line, -1, std::string(part)}, {}};
    return fail(std::move(fault));
}

constexpr std::size_t keptPiece = 1 << 18;
constexpr std::int64_t mostReserved = 1'000'000;   // places; what the manifest says is not proven yet

bool isHex64(const std::string& text)
{
    return digestFromHex(text).has_value();
}

/// Counts that can be counts, of this note.
bool isSkillOf(const Uid& note, const std::string& payload)
{
    const auto skill = fromJson<Skill>(payload);
    return skill && skill->id == note && std::ranges::all_of(skill->signs, [](const SignSkill& sign) {
        return sign.found >= 0 && sign.found <= sign.there && sign.passed >= 0 && sign.passed <= sign.absent;
    });
}

/// Cuts pieces into lines; what stays without a line feed at the end is a fault of the caller.
class Lines {
public:
    Lines(std::int64_t longest, const std::function<Status(std::string_view, std::int64_t)>& take) : m_longest(longest), m_take(take) {}

    enum class Told { fine, tooLong, unfinished };
    Result<Told> add(std::string_view piece)
    {
        if (piece.empty())
            return m_rest.empty() ? Told::fine : Told::unfinished;
        while (!piece.empty()) {
            const auto end = piece.find('\n');
            std::string_view line = piece.substr(0, end);
            if (!m_rest.empty() || end == std::string_view::npos)
                line = m_rest += line;
            if (static_cast<std::int64_t>(line.size()) > m_longest)
                return Told::tooLong;
            if (end == std::string_view::npos)
                break;
            if (auto taken = m_take(line, ++m_number); !taken)
                return fail(taken.error());
            m_rest.clear();
            piece.remove_prefix(end + 1);
        }
        return Told::fine;
    }
    [[nodiscard]] std::int64_t number() const { return m_number; }

private:
    std::int64_t m_longest;
    const std::function<Status(std::string_view, std::int64_t)>& m_take;
    std::string m_rest;
    std::int64_t m_number = 0;
};

struct LineKey {
    Uid incarnation;
    std::int64_t number = 0;
    int branch = 0;
    bool operator==(const LineKey&) const = default;
};
struct LineKeyHash {
    std::size_t operator()(const LineKey& key) const noexcept
    {
        return std::hash<Uid>()(key.incarnation) ^ static_cast<std::size_t>(key.number + key.branch * 7919) * 0x9E3779B97F4A7C15ULL;
    }
};
struct LineFacts {
    Digest digest{};
    Uid entity;
    bool used = false;
};

} // namespace

/// Unpacking is told to stop, but tells nothing itself: it goes on beside whoever reports.
template <class Line>
Status BundleFile::linesRead(const std::string& part, const std::function<Line(std::string_view)>& read,
                             const std::function<Status(Line&, std::int64_t number)>& use, const Progress& progress, std::string* kept) const
{
    const Progress beside{{}, progress.stop};
    return LinesAhead<Line>::run(
        [&](const std::function<Status(std::string_view)>& add) {
            return lines(part, [&](std::string_view text, std::int64_t) { return add(text); }, beside, kept);
        },
        read, use);
}

/// Everything that can be said about a bundle without a store.
class BundleVerifier {
public:
    BundleVerifier(BundleFile& bundle, const Progress& progress, const std::function<Status(const BundleLine&)>& eachLine)
        : m_bundle(bundle), m_manifest(bundle.m_manifest), m_file(bundle.m_zip.path()), m_progress(progress), m_eachLine(eachLine)
    {
    }

    Status verify()
    {
        for (const auto step : {&BundleVerifier::manifest, &BundleVerifier::namedParts})
            if (auto good = (this->*step)(); !good)
                return good;
        for (const auto step : {&BundleVerifier::journal, &BundleVerifier::records, &BundleVerifier::hashesOfOthers})
            if (auto good = (this->*step)(); !good) {
                const auto same = hashes([](const std::string&) { return true; });   // a part that was changed explains the rest
                return same ? good : same;
            }
        for (const auto step : {&BundleVerifier::personal, &BundleVerifier::counts})
            if (auto good = (this->*step)(); !good)
                return good;
        return {};
    }

private:
    Status manifest()
    {
        const ZipPart* part = m_bundle.m_zip.part(manifestPart);
        if (part == nullptr)
            return refuse("bundle.part-missing", m_file, manifestPart);
        if (part->bytes > m_bundle.m_zip.limits().manifestBytes)
            return refuse("bundle.part-large", m_file, manifestPart,
                          {{"found", std::to_string(part->bytes)}, {"limit", std::to_string(m_bundle.m_zip.limits().manifestBytes)}});
        const auto text = m_bundle.m_zip.text(manifestPart);
        if (!text)
            return fail(text.error());
        auto read = readManifest(*text);
        if (!read) {
            Fault fault = read.error();
            fault.place.file = m_file;
            fault.arguments.push_back({"file", m_file});
            return fail(std::move(fault));
        }
        m_manifest = std::move(*read);
        m_bundle.m_digest = hex(sha256(*text));
        const ZipPart* signed_ = m_bundle.m_zip.part(signaturePart);
        if (signed_ == nullptr)
            return refuse("bundle.part-missing", m_file, signaturePart);
        if (signed_->bytes != 129)
            return refuse("bundle.signature", m_file, signaturePart);
        const auto hexed = m_bundle.m_zip.text(signaturePart);
        if (!hexed)
            return fail(hexed.error());
        Signature signature{};
        if (hexed->back() != '\n' || !bytesFromHex(std::string_view(*hexed).substr(0, 128), signature)
            || !verifies(*publicKeyFrom(m_manifest.key), *text, signature))
            return refuse("bundle.signature", m_file, signaturePart);
        return {};
    }

    /// The manifest names every part but three, and no other; what is named is of a known kind.
    Status namedParts()
    {
        std::set<std::string> named;
        for (const BundlePart& part : m_manifest.parts) {
            const bool medium = part.name == mediaPrefix + part.sha256;
            if (!isHex64(part.sha256) || (!medium && part.name != journalPart && part.name != recordsPart && part.name != packPart))
                return refuse("bundle.part-unknown", m_file, part.name);
            const ZipPart* there = m_bundle.m_zip.part(part.name);
            if (there == nullptr)
                return refuse("bundle.part-missing", m_file, part.name);
            if (there->bytes != part.bytes)
                return refuse("bundle.hash", m_file, part.name);
            if (!named.insert(part.name).second)
                return refuse("bundle.part-twice", m_file, part.name);
            m_bundle.m_hashes[part.name] = part.sha256;
        }
        for (const std::string& must : {journalPart, recordsPart})
            if (!named.contains(must))
                return refuse("bundle.part-missing", m_file, must);
        for (const ZipPart& part : m_bundle.m_zip.parts())
            if (!named.contains(part.name) && part.name != manifestPart && part.name != signaturePart && part.name != personalPartName)
                return refuse("bundle.part-unknown", m_file, part.name);
        return {};
    }

    Status hashes(const std::function<bool(const std::string& name)>& wanted)
    {
        return m_bundle.unpackSame([&](const std::string& name) { return m_bundle.m_hashes.contains(name) && wanted(name); },
                                   [](const ZipPart&, std::string_view) { return Status(); }, m_progress);
    }

    /// Journal and records are hashed while they are read.
    Status hashesOfOthers()
    {
        return hashes([](const std::string& name) { return name != journalPart && name != recordsPart; });
    }

    /// Reads the lines of a part, and keeps them unpacked where that asks for little enough.
    template <class Line>
    Status linesOf(const std::string& part, const std::function<Line(std::string_view)>& read,
                   const std::function<Status(Line&, std::int64_t number)>& use)
    {
        const ZipFile& zip = m_bundle.m_zip;
        const bool little = zip.part(journalPart)->bytes + zip.part(recordsPart)->bytes <= zip.limits().keptBytes;
        std::string kept;
        auto done = m_bundle.linesRead<Line>(part, read, use, m_progress, little ? &kept : nullptr);
        if (done && little)
            m_bundle.m_kept.emplace(part, std::move(kept));
        return done;
    }

    Status journal()
    {
        for (const BundleChain& chain : m_manifest.chains)
            if (chain.incarnation.isNull() || chain.device.isNull() || chain.lines < 0 || chain.to < 1 || !isHex64(chain.hash)
                || chain.branch < 0
                || !m_chains.emplace(std::pair(chain.incarnation, chain.branch), ChainSeen{&chain, 0, 0, {}}).second)
                return refuse("bundle.manifest", m_file, manifestPart, {{"path", "/chains"}, {"why", "value"}});
        m_lines.reserve(static_cast<std::size_t>(std::clamp<std::int64_t>(m_manifest.counts.records, 0, mostReserved)));
        auto read = linesOf<Result<BundleLine>>(
            journalPart, &readBundleLine, [&](const Result<BundleLine>& line, std::int64_t number) { return journalLine(line, number); });
        if (!read)
            return read;
        for (const auto& [incarnation, seen] : m_chains)
            if (seen.lines != seen.said->lines || (seen.last == seen.said->to && hex(seen.hash) != seen.said->hash))
                return refuse("bundle.counts", m_file, journalPart);
        return {};
    }

    Status journalLine(const Result<BundleLine>& line, std::int64_t number)
    {
        if (!line)
            return badLine(m_file, journalPart, number, line.error().argument("why"));
        const auto chain = m_chains.find({line->incarnation, line->branch});
        if (chain == m_chains.end() || line->number <= chain->second.last || line->number > chain->second.said->to)
            return badLine(m_file, journalPart, number, "chain");
        ChainSeen& seen = chain->second;
        const bool follows = line->number == seen.last + 1 && (seen.last > 0 || line->number == 1);
        if (follows != line->before.empty())
            return badLine(m_file, journalPart, number, "before");
        JournalLine whole{line->incarnation, line->number, line->at, line->author, line->kind, line->noun, line->entity, {}, {}, {}};
        Digest before = seen.hash;
        for (const auto& [from, into] : {std::pair{&line->digest, &whole.digest}, std::pair{&line->commitment, &whole.commitment}}) {
            if (from->empty())
                continue;
            const auto digest = digestFromHex(*from);
            if (!digest)
                return badLine(m_file, journalPart, number, "value");
            *into = *digest;
        }
        if (!follows) {
            const auto given = digestFromHex(line->before);
            if (!given)
                return badLine(m_file, journalPart, number, "value");
            before = *given;
        }
        whole.hash = journalHash(whole, before);
        if (hex(whole.hash) != line->hash)
            return badLine(m_file, journalPart, number, "hash");
        seen.last = line->number;
        seen.hash = whole.hash;
        ++seen.lines;
        if (whole.digest)
            m_lines.emplace(LineKey{line->incarnation, line->number, line->branch}, LineFacts{*whole.digest, line->entity, false});
        return m_eachLine ? m_eachLine(*line) : Status();
    }

    Status records()
    {
        return linesOf<Checked>(recordsPart, &checked, [&](const Checked& line, std::int64_t number) { return record(line, number); });
    }

    /// A record with all that can be said about it without the others.
    struct Checked {
        Result<BundleRecord> record;
        Digest digest{};
        Status content;
    };
    static Checked checked(std::string_view text)
    {
        Checked line{readBundleRecord(text), {}, {}};
        if (line.record) {
            line.digest = sha256(line.record->content);
            line.content = checkContent(*line.record);
        }
        return line;
    }

    Status record(const Checked& whole, std::int64_t number)
    {
        const auto& record = whole.record;
        if (!record)
            return badLine(m_file, recordsPart, number, record.error().argument("why"));
        const auto line = m_lines.find({record->incarnation, record->number, record->branch});
        if (line == m_lines.end() || line->second.used)
            return badLine(m_file, recordsPart, number, line == m_lines.end() ? "no-line" : "line-twice");
        line->second.used = true;
        if (line->second.digest != whole.digest || line->second.entity != record->entity)
            return badLine(m_file, recordsPart, number, "digest");
        if (record->type == "skill" && m_manifest.format < bundleFormatSkill)
            return badLine(m_file, recordsPart, number, "value");
        if (!whole.content)
            return badLine(m_file, recordsPart, number, whole.content.error().argument("why"));
        if (!record->id.isNull() && !m_revisions.insert(record->id).second)
            return badLine(m_file, recordsPart, number, "doubled");
        if (std::find(record->parents.begin(), record->parents.end(), record->id) != record->parents.end() && !record->id.isNull())
            return badLine(m_file, recordsPart, number, "own-parent");
        if (!record->commitment.empty() && !std::binary_search(m_manifest.personal.begin(), m_manifest.personal.end(), record->commitment))
            return badLine(m_file, recordsPart, number, "commitment");
        if (record->type == "revision" && record->noun == "visit")
            m_visits.insert(record->entity);
        return {};
    }

    Status personal()
    {
        const auto& said = m_manifest.personal;
        if (!std::is_sorted(said.begin(), said.end()) || std::adjacent_find(said.begin(), said.end()) != said.end())
            return refuse("bundle.manifest", m_file, manifestPart, {{"path", "/personal"}, {"why", "value"}});
        if (m_bundle.m_zip.part(personalPartName) == nullptr)
            return {};
        std::set<std::string> seen;
        return m_bundle.lines(personalPartName, [&](std::string_view text, std::int64_t number) -> Status {
            const auto part = readBundlePersonal(text);
            if (!part)
                return badLine(m_file, personalPartName, number, part.error().argument("why"));
            const auto salt = digestFromHex(part->salt);
            if (!salt || !std::binary_search(said.begin(), said.end(), part->commitment) || !seen.insert(part->commitment).second)
                return badLine(m_file, personalPartName, number, "commitment");
            Sha256 hash;
            hash.add(std::span<const std::uint8_t>(*salt));
            hash.add(part->payload);
            if (hex(hash.finish()) != part->commitment)
                return badLine(m_file, personalPartName, number, "commitment");
            const bool person = part->noun == "person" && fromJson<Person>(part->payload);
            const bool leave = part->noun == "leave" && fromJson<Leave>(part->payload);
            const bool skill = part->noun == "skill" && isSkillOf(part->entity, part->payload);
            return person || leave || skill ? Status() : Status(badLine(m_file, personalPartName, number, "value"));
        });
    }

    Status counts()
    {
        BundleCounts found;
        for (const auto& [incarnation, seen] : m_chains)
            found.lines += seen.lines;
        for (const auto& [key, line] : m_lines)
            found.records += line.used ? 1 : 0;
        for (const BundlePart& part : m_manifest.parts)
            found.media += part.name.starts_with(mediaPrefix) ? 1 : 0;
        found.personal = m_manifest.counts.personal;   // as it was signed: lines may have been erased since
        found.visits = static_cast<std::int64_t>(m_visits.size());
        return found == m_manifest.counts ? Status() : Status(refuse("bundle.counts", m_file, manifestPart));
    }

    struct ChainSeen {
        const BundleChain* said = nullptr;
        std::int64_t last = 0;
        std::int64_t lines = 0;
        Digest hash{};
    };

    BundleFile& m_bundle;
    Manifest& m_manifest;
    const std::string& m_file;
    const Progress& m_progress;
    const std::function<Status(const BundleLine&)>& m_eachLine;
    std::map<std::pair<Uid, int>, ChainSeen> m_chains;   // by incarnation and branch
    std::unordered_map<LineKey, LineFacts, LineKeyHash> m_lines;
    std::unordered_set<Uid> m_revisions, m_visits;
};

Result<BundleFile> BundleFile::open(const std::string& path, const BundleLimits& limits, const Progress& progress,
                                    const std::function<Status(const BundleLine&)>& eachLine)
{
    auto zip = ZipFile::open(path, limits);
    if (!zip)
        return fail(zip.error());
    BundleFile bundle(std::move(*zip));
    if (auto good = BundleVerifier(bundle, progress, eachLine).verify(); !good)
        return fail(good.error());
    return bundle;
}

/// What the manifest has a hash for must still have it, whenever it is read.
Status BundleFile::unpackSame(const std::function<bool(const std::string& name)>& wanted, const ZipFile::Take& take,
                              const Progress& progress) const
{
    Sha256 hash;
    return m_zip.unpack(
        wanted,
        [&](const ZipPart& part, std::string_view bytes) -> Status {
            if (!bytes.empty()) {
                hash.add(bytes);
                return take(part, bytes);
            }
            const std::string found = hex(hash.finish());
            const auto said = m_hashes.find(part.name);
            if (said != m_hashes.end() && said->second != found)
                return refuse("bundle.hash", m_zip.path(), part.name);
            return take(part, bytes);
        },
        progress);
}

Status BundleFile::pieces(const std::string& part, const std::function<Status(std::string_view bytes)>& take, const Progress& progress) const
{
    const auto kept = m_kept.find(part);
    if (kept == m_kept.end())
        return unpackSame([&](const std::string& name) { return name == part; },
                          [&](const ZipPart&, std::string_view bytes) { return take(bytes); }, progress);
    for (std::string_view rest = kept->second; !rest.empty(); rest.remove_prefix(std::min(rest.size(), keptPiece))) {
        if (progress.cancelled())
            return fail("job.cancelled", FaultKind::refused);
        if (auto taken = take(rest.substr(0, keptPiece)); !taken)
            return taken;
    }
    return take({});
}

Status BundleFile::lines(const std::string& part, const std::function<Status(std::string_view line, std::int64_t number)>& take,
                         const Progress& progress, std::string* kept) const
{
    Lines lines(m_zip.limits().lineBytes, take);
    if (kept != nullptr)
        kept->reserve(static_cast<std::size_t>(m_zip.part(part)->bytes));
    return pieces(
        part,
        [&](std::string_view bytes) -> Status {
            const auto told = lines.add(bytes);
            if (!told)
                return fail(told.error());
            if (*told != Lines::Told::fine)
                return badLine(m_zip.path(), part, lines.number() + 1, *told == Lines::Told::tooLong ? "long" : "unfinished");
            if (kept != nullptr)
                *kept += bytes;
            return {};
        },
        progress);
}

template <class Line>
Status BundleFile::linesUsed(const std::string& part, Result<Line> (*read)(std::string_view), const std::function<Status(const Line&)>& take) const
{
    return linesRead<Result<Line>>(part, read, [&](const Result<Line>& line, std::int64_t number) -> Status {
        if (!line)
            return badLine(m_zip.path(), part, number, line.error().argument("why"));
        return take(*line);
    });
}

Status BundleFile::eachLine(const std::function<Status(const BundleLine&)>& take) const
{
    return linesUsed<BundleLine>(journalPart, &readBundleLine, take);
}

Status BundleFile::eachRecord(const std::function<Status(const BundleRecord&)>& take) const
{
    return linesUsed<BundleRecord>(recordsPart, &readBundleRecord, take);
}

Status BundleFile::eachPersonal(const std::function<Status(const BundlePersonal&)>& take) const
{
    return linesUsed<BundlePersonal>(personalPartName, &readBundlePersonal, take);
}

Status BundleFile::eachMedium(const std::function<Status(const std::string& sha256, std::string_view bytes)>& take) const
{
    return unpackSame([](const std::string& name) { return name.starts_with(mediaPrefix); },
                      [&](const ZipPart& part, std::string_view bytes) { return take(part.name.substr(mediaPrefix.size()), bytes); });
}

Result<std::string> BundleFile::pack() const
{
    return m_zip.part(packPart) == nullptr ? Result<std::string>(std::string()) : m_zip.text(packPart);
}

} // namespace cupule
