#include <algorithm>

#include "core/base/hash.h"
#include "core/exchange/bundle/bundle_file.h"

namespace cupule {

namespace {

std::int64_t linesIn(std::string_view text)
{
    return std::count(text.begin(), text.end(), '\n');
}

void name(Manifest& manifest, const std::string& part, const BundleLines& lines)
{
    manifest.parts.push_back({lines.bytes, part, lines.sha256});
}

void fillIn(Manifest& manifest, const BundleParts& parts, const SigningKey& key)
{
    manifest.key = hex(key.publicKey());
    manifest.counts.lines = parts.journal.lines;
    manifest.counts.records = parts.records.lines;
    manifest.counts.personal = linesIn(parts.personal);
    manifest.counts.media = static_cast<std::int64_t>(parts.media.size());
    manifest.parts.clear();
    name(manifest, journalPart, parts.journal);
    name(manifest, recordsPart, parts.records);
    if (!parts.pack.empty())
        name(manifest, packPart, parts.pack);
    for (const BundleMedium& medium : parts.media)
        manifest.parts.push_back({medium.bytes, mediaPrefix + medium.sha256, medium.sha256});
    std::sort(manifest.personal.begin(), manifest.personal.end());
}

Status putAll(ZipWriter& zip, const std::string& manifest, const BundleParts& parts, const SigningKey& key)
{
    const std::pair<const std::string&, BundleLines> lines[] = {{manifestPart, manifest},
                                                                {signaturePart, hex(key.sign(manifest)) + "\n"},
                                                                {journalPart, parts.journal},
                                                                {recordsPart, parts.records},
                                                                {personalPartName, parts.personal},
                                                                {packPart, parts.pack}};
    for (const auto& [part, each] : lines) {
        if (each.bytes == 0 && (part == personalPartName || part == packPart))
            continue;
        if (auto put = each.path.empty() ? zip.addText(part, each.text) : zip.addFile(part, each.path, each.bytes, true); !put)
            return put;
    }
    for (const BundleMedium& medium : parts.media)
        if (auto put = zip.addFile(mediaPrefix + medium.sha256, medium.path, medium.bytes); !put)
            return put;
    return zip.finish();
}

} // namespace

BundleLines::BundleLines(std::string whole)
    : text(std::move(whole)), bytes(static_cast<std::int64_t>(text.size())), lines(linesIn(text)), sha256(hex(cupule::sha256(text)))
{
}

BundleLines::BundleLines(const LineFile& file) : path(file.path()), bytes(file.bytes()), lines(file.lines()), sha256(file.sha256()) {}

Result<Manifest> writeBundle(const std::string& path, Manifest manifest, const BundleParts& parts, const SigningKey& key,
                             const Progress& progress)
{
    fillIn(manifest, parts, key);
    std::int64_t whole = 0;
    for (const BundlePart& part : manifest.parts)
        whole += part.bytes;
    const Progress told{[&](std::int64_t done, std::int64_t) { progress.tell(done, whole); }, progress.stop};
    auto zip = ZipWriter::begin(path, manifest.made, told);
    if (!zip)
        return fail(zip.error());
    if (auto put = putAll(*zip, toJson(manifest), parts, key); !put)
        return fail(put.error());
    return manifest;
}

Result<bool> eraseInBundle(const std::string& path, const std::function<bool(const std::string& commitment)>& erased)
{
    const auto bundle = BundleFile::open(path);
    if (!bundle)
        return fail(bundle.error());
    std::string kept;
    bool some = false;
    auto read = bundle->eachPersonal([&](const BundlePersonal& line) -> Status {
        if (erased(line.commitment))
            some = true;
        else
            kept += toJson(line) + "\n";
        return {};
    });
    if (!read)
        return fail(read.error());
    if (!some)
        return false;
    const auto from = ZipFile::open(path, {});
    if (!from)
        return fail(from.error());
    auto zip = ZipWriter::begin(path, bundle->manifest().made);
    if (!zip)
        return fail(zip.error());
    for (const ZipPart& part : from->parts()) {
        const bool medium = part.name.starts_with(mediaPrefix);
        auto put = part.name == personalPartName ? zip->addText(part.name, kept) : zip->copy(*from, part.name, !medium);
        if (!put)
            return fail(put.error());
    }
    if (auto done = zip->finish(); !done)
        return fail(done.error());
    return true;
}

} // namespace cupule
