#include "core/task/merge.h"

#include <algorithm>
#include <map>
#include <set>

#include "core/record/json.h"
#include "core/record/practice.h"
#include "core/store/backup.h"
#include "core/store/bundles.h"
#include "core/store/media.h"
#include "core/task/keep.h"
#include "core/task/settle_merged.h"

namespace cupule {

namespace {

using ChainName = std::pair<Uid, int>;

std::optional<Digest> digestOrNone(const std::string& text)
{
    return text.empty() ? std::nullopt : std::optional(*digestFromHex(text));
}

/// Roles that stand behind the signature: those of its key, or of the vouched one that it follows.
Result<std::vector<Role>> rolesBehind(Session& session, const Manifest& manifest)
{
    std::vector<std::string> keys{manifest.key};
    for (const KeyFollows& each : manifest.follows)
        keys.push_back(each.older);
    std::vector<Role> roles;
    for (const std::string& key : keys) {
        const auto known = session.store().keys().find(key);
        if (!known)
            return fail(known.error());
        if (*known && (*known)->vouched && (*known)->person == manifest.authorPerson)
            roles.insert(roles.end(), (*known)->roles.begin(), (*known)->roles.end());
    }
    return roles;
}

/// What of this record the signer may not say; empty = all of it may be said.
std::string notTheirs(const BundleRecord& record, const std::vector<Role>& roles, const Uid& author)
{
    const auto is = [&](Role role) { return std::find(roles.begin(), roles.end(), role) != roles.end(); };
    if (record.type == "key-note" || record.type == "erasure")
        return is(Role::office) ? "" : record.type;
    if (record.type == "skill") {
        const auto note = fromJson<SkillNote>(record.content);
        return is(Role::office) || is(Role::trainer) || (note && note->by == author) ? "" : record.type;
    }
    if (record.type == "told")
        return is(Role::office) || is(Role::verifier) ? "" : record.type;
    if (record.type != "decision" || is(Role::office) || is(Role::verifier))
        return {};
    const auto decision = fromJson<Decision>(record.content);
    return decision && decision->outcome == Outcome::withdraw && decision->by == author ? "" : record.type;
}

/// Of somebody else's detection only trainers and the office tell.
std::string notTheirs(const BundlePersonal& part, const std::vector<Role>& roles, const Uid& author)
{
    const bool ofAnybody = std::ranges::any_of(roles, [](Role role) { return role == Role::office || role == Role::trainer; });
    if (part.noun != "skill" || ofAnybody)
        return {};
    const auto skill = fromJson<Skill>(part.payload);
    return skill && skill->person == author ? "" : part.noun;
}

Status goesOn(const Progress& progress)
{
    return progress.cancelled() ? Status(fail("job.cancelled", FaultKind::refused)) : Status();
}

/// Lines with the hash of the line before each, as the reader has verified them.
Status takeLines(const BundleFile& file, Merger& merger, const Progress& progress)
{
    std::map<ChainName, Incarnation> chains;
    for (const BundleChain& chain : file.manifest().chains)
        chains[{chain.incarnation, chain.branch}] = Incarnation{chain.incarnation, chain.device, chain.begun, chain.why, chain.to, 1, true};
    std::map<ChainName, Digest> last;
    return file.eachLine([&](const BundleLine& line) -> Status {
        if (auto on = goesOn(progress); !on)
            return on;
        const ChainName name{line.incarnation, line.branch};
        const JournalLine full{line.incarnation, line.number,  line.at,     line.author,
                               line.kind,        line.noun,    line.entity, digestOrNone(line.digest),
                               digestOrNone(line.commitment),  *digestFromHex(line.hash)};
        const Digest before = line.before.empty() ? last[name] : *digestFromHex(line.before);
        last[name] = full.hash;
        return merger.line(chains[name], line.branch, full, before);
    });
}

Status takeRecords(const BundleFile& file, const std::vector<Role>& roles, Merger& merger, const Progress& progress)
{
    const Manifest& manifest = file.manifest();
    const auto theirs = [&](const auto& part) -> Status {
        const std::string what = notTheirs(part, roles, manifest.authorPerson);
        if (what.empty())
            return goesOn(progress);
        return fail("bundle.not-theirs", FaultKind::refused, {{"who", manifest.authorCode}, {"what", what}});
    };
    const auto takeRecord = [&](const BundleRecord& record) {
        return merger.record({record.type, record.noun, record.id, record.entity, record.parents, record.incarnation, record.number,
                              record.content, digestOrNone(record.commitment)},
                             record.branch);
    };
    if (auto read = file.eachRecord([&](const BundleRecord& record) {
            const Status may = theirs(record);
            return may ? takeRecord(record) : may;
        });
        !read)
        return read;
    return file.eachPersonal([&](const BundlePersonal& part) {
        const Status may = theirs(part);
        return may ? merger.personal({part.noun, part.entity, *digestFromHex(part.commitment), digestOrNone(part.salt), part.payload}) : may;
    });
}

/// Pictures stand by the hash of their bytes, so one that is kept although the change fails harms nothing.
Result<std::int64_t> takePictures(Session& session, const BundleFile& file, const Progress& progress)
{
    Media media = session.store().media();
    std::int64_t fresh = 0;
    std::string bytes;
    auto read = file.eachMedium([&](const std::string& sha256, std::string_view piece) -> Status {
        if (!piece.empty()) {
            bytes += piece;
            return goesOn(progress);
        }
        if (!media.path(sha256)) {
            if (auto kept = media.keep(bytes); !kept)
                return fail(kept.error());
            ++fresh;
        }
        bytes.clear();
        return {};
    });
    if (!read)
        return fail(read.error());
    return fresh;
}

BundleNote noteOf(const Arrival& arrival)
{
    const Manifest& manifest = arrival.file.manifest();
    BundleNote note{manifest.bundle,   true,          manifest.kind,          manifest.key,     manifest.number, arrival.file.manifestDigest(),
                    manifest.store.id, manifest.made, manifest.counts.visits, manifest.leftOut, {}};
    for (const BundleChain& chain : manifest.chains)
        note.ends.push_back({chain.incarnation, chain.to});
    return note;
}

Result<std::vector<Uid>> acknowledged(Session& session, Change& change, const Manifest& manifest)
{
    std::vector<Uid> now;
    for (const Uid& bundle : manifest.acknowledges) {
        const auto note = session.store().bundles().find(bundle);
        if (!note)
            return fail(note.error());
        const auto before = session.store().bundles().acknowledged(bundle);
        if (!before)
            return fail(before.error());
        if (!*note || (*note)->merged || *before)
            continue;
        if (auto done = session.store().bundles().acknowledge(change, bundle); !done)
            return fail(done.error());
        now.push_back(bundle);
    }
    return now;
}

Result<TakenIn> merged(Session& session, Change& change, const Arrival& arrival, const Progress& progress)
{
    const auto roles = rolesBehind(session, arrival.file.manifest());
    if (!roles)
        return fail(roles.error());
    TakenIn taken;
    Merger merger(change);
    if (auto lines = takeLines(arrival.file, merger, progress); !lines)
        return fail(lines.error());
    if (auto records = takeRecords(arrival.file, *roles, merger, progress); !records)
        return fail(records.error());
    auto done = merger.finish(progress);
    if (!done)
        return fail(done.error());
    taken.merged = std::move(*done);
    auto settled = settleMerged(session, change, taken.merged, progress);
    if (!settled)
        return fail(settled.error());
    taken.settled = std::move(*settled);
    auto known = acknowledged(session, change, arrival.file.manifest());
    if (!known)
        return fail(known.error());
    taken.acknowledged = std::move(*known);
    if (auto noted = session.store().bundles().add(change, noteOf(arrival), taken.merged.carried); !noted)
        return fail(noted.error());
    return taken;
}

} // namespace

Result<TakenIn> takeIn(Session& session, const Arrival& arrival, const TakeIn& how, const Progress& progress)
{
    if (auto may = mayTakeIn(session, arrival); !may)
        return fail(may.error());
    if (arrival.knownAlready) {
        TakenIn known;
        known.knownAlready = true;
        known.merged.known = arrival.file.manifest().counts.records;
        return known;
    }
    auto change = session.begin(ChangeSize::large);
    if (!change)
        return fail(change.error());
    auto taken = merged(session, *change, arrival, progress);
    if (taken && how.look)
        if (auto seen = how.look(*taken); !seen)
            return fail(seen.error());
    if (!taken || how.dryRun)
        return taken;
    const auto pictures = takePictures(session, arrival.file, progress);
    if (!pictures)
        return fail(pictures.error());
    taken->photos = *pictures;
    if (auto kept = session.commit(*change); !kept)
        return fail(kept.error());
    if (taken->merged.erased)
        if (auto followed = eraseInCopies(session); !followed)
            return fail(followed.error());
    return taken;
}

} // namespace cupule
