#include "core/task/hand_out.h"

#include <algorithm>
#include <cstdio>
#include <filesystem>

#include "core/exchange/bundle/bundle_file.h"
#include "core/protocol/built_in.h"
#include "core/store/media.h"
#include "core/store/people.h"
#include "core/task/keys.h"

namespace cupule {

namespace {

namespace fs = std::filesystem;

Status mayHandOut(const Session& session, GoingKind kind)
{
    switch (kind) {
    case GoingKind::day: return session.needOneOf({Role::volunteer, Role::sampleHandler, Role::trainer, Role::office});
    case GoingKind::decision: return session.needOneOf({Role::verifier, Role::office});
    case GoingKind::reference: return session.need(Role::office);
    }
    return {};
}

std::string hexOrEmpty(const std::optional<Digest>& digest)
{
    return digest ? hex(*digest) : std::string();
}

std::string lineText(const GoingLine& going)
{
    const JournalLine& line = going.line;
    return toJson(BundleLine{line.at, line.author, hexOrEmpty(going.before), hexOrEmpty(line.commitment), hexOrEmpty(line.digest), line.entity,
                             hex(line.hash), line.incarnation, line.kind, line.noun, line.number, going.branch});
}

std::string recordText(const GoingRecord& each)
{
    return toJson(BundleRecord{hexOrEmpty(each.commitment), each.content, each.entity, each.id, each.incarnation, each.noun, each.number,
                               each.parents, each.type, each.branch});
}

std::string personalText(const std::vector<GoingPersonal>& personal)
{
    std::string text;
    for (const GoingPersonal& each : personal)
        if (each.salt)
            text += toJson(BundlePersonal{hex(each.commitment), each.entity, each.noun, each.payload, hex(*each.salt)}) + "\n";
    return text;
}

std::string kindOf(GoingKind kind, const Going& going)
{
    if (kind == GoingKind::decision)
        return std::string(bundleKindName(BundleKind::decision));
    if (kind == GoingKind::reference)
        return std::string(bundleKindName(BundleKind::reference));
    return std::string(bundleKindName(going.corrections ? BundleKind::correction : BundleKind::day));
}

Result<Manifest> manifestOf(Session& session, const HandOut& wanted, const Going& going, const OwnKey& own)
{
    Manifest manifest;
    manifest.acknowledges = going.acknowledges;
    manifest.authorPerson = session.me();
    manifest.authorCode = session.profile().person.code;
    manifest.bundle = session.ids().make();
    for (const GoingChain& each : going.chains)
        manifest.chains.push_back({each.incarnation.begun, each.incarnation.device, hex(each.hash), each.incarnation.id, each.going,
                                   each.incarnation.lines, each.incarnation.why, each.branch});
    manifest.counts.visits = going.visits;
    manifest.demonstration = session.info().demonstration;
    manifest.follows = own.follows;
    manifest.format = going.practice ? bundleFormatSkill : bundleFormat;
    manifest.kind = kindOf(wanted.kind, going);
    if (!wanted.personal)
        manifest.leftOut.emplace_back("personal");
    if (!wanted.photos || going.picturesAbsent)
        manifest.leftOut.emplace_back("photos");
    if (!wanted.practice)
        manifest.leftOut.emplace_back("practice");
    manifest.made = session.clock().now();
    const auto number = session.store().bundles().nextNumber(own.key);
    if (!number)
        return fail(number.error());
    manifest.number = *number;
    for (const GoingPersonal& each : going.personal)
        manifest.personal.push_back(hex(each.commitment));
    manifest.program = CUPULE_VERSION;
    const StoreInfo& info = session.info();
    manifest.store = {info.id, info.kind, info.name, info.region, info.zone};
    return manifest;
}

/// The lines of a bundle, beside where it will lie.
struct Waiting {
    LineFile journal, records;
};

Result<Waiting> waitingLines(Session& session)
{
    const std::string folder = session.store().bundles().folder();
    std::error_code ignored;
    fs::create_directories(folder, ignored);
    const std::string path = folder + "/" + session.ids().make().text();
    auto journal = LineFile::begin(path + ".journal");
    if (!journal)
        return fail(journal.error());
    auto records = LineFile::begin(path + ".records");
    if (!records)
        return fail(records.error());
    return Waiting{std::move(*journal), std::move(*records)};
}

Result<Going> collected(Session& session, const HandOut& wanted, Waiting& waiting, const Progress& progress)
{
    std::int64_t gathered = 0;
    const auto add = [&](LineFile& file, const std::string& line) -> Status {
        if (progress.cancelled())
            return fail("job.cancelled", FaultKind::refused);
        progress.tell(++gathered, 0);
        return file.add(line);
    };
    const GoingTake take{[&](const GoingRecord& record) { return add(waiting.records, recordText(record)); },
                         [&](const GoingLine& line) { return add(waiting.journal, lineText(line)); }};
    const bool everybodys = session.profile().is(Role::trainer) || session.profile().is(Role::office);
    const GoingWish wish{wanted.whole, session.profile().is(Role::office), wanted.personal, wanted.practice, everybodys ? Uid{} : session.me()};
    auto going = session.store().outgoing().collect(wanted.kind, wish, take);
    if (!going)
        return going;
    for (LineFile* file : {&waiting.journal, &waiting.records})
        if (auto done = file->finish(); !done)
            return fail(done.error());
    return going;
}

Result<BundleParts> partsOf(Session& session, const HandOut& wanted, const Going& going, const Waiting& waiting)
{
    BundleParts parts{waiting.journal, waiting.records, {}, {}, {}};
    if (wanted.personal)
        parts.personal = personalText(going.personal);
    if (wanted.kind == GoingKind::reference)
        parts.pack = builtInPackText();
    if (!wanted.photos)
        return parts;
    for (const std::string& sha256 : going.pictures) {
        const auto path = session.store().media().path(sha256);
        if (!path)
            return fail(path.error());
        std::error_code error;
        parts.media.push_back({sha256, *path, static_cast<std::int64_t>(fs::file_size(*path, error))});
    }
    return parts;
}

BundleNote noteOf(const Manifest& manifest, const std::string& digest)
{
    BundleNote note{manifest.bundle, false,         manifest.kind,          manifest.key,     manifest.number, digest,
                    manifest.store.id, manifest.made, manifest.counts.visits, manifest.leftOut, {}};
    for (const BundleChain& chain : manifest.chains)
        note.ends.push_back({chain.incarnation, chain.to});
    return note;
}

/// The last bundle of this key and kind that carries exactly this, if its file is still kept.
Result<std::optional<BundleNote>> same(Session& session, const HandOut& wanted, const Going& going, const std::string& key)
{
    auto carried = going.carried;
    std::sort(carried.begin(), carried.end());
    auto notes = session.store().bundles().all();
    if (!notes)
        return fail(notes.error());
    const bool day = wanted.kind == GoingKind::day;
    for (auto note = notes->rbegin(); note != notes->rend(); ++note) {
        const bool ofDay = note->kind == bundleKindName(BundleKind::day) || note->kind == bundleKindName(BundleKind::correction);
        if (note->merged || note->key != key || (day ? !ofDay : note->kind != kindOf(wanted.kind, going)))
            continue;
        const auto before = session.store().bundles().carried(note->id);
        if (!before)
            return fail(before.error());
        const auto left = [&](const char* what) {
            return std::find(note->leftOut.begin(), note->leftOut.end(), what) != note->leftOut.end();
        };
        const bool alike = *before == carried && left("photos") == (!wanted.photos || going.picturesAbsent) && left("personal") == !wanted.personal
                           && left("practice") == !wanted.practice
                           && fs::exists(session.store().bundles().keptAt(note->id));
        return alike ? std::optional<BundleNote>(*note) : std::nullopt;
    }
    return std::nullopt;
}

/// Beside the target first, so that no half file has its name.
Status copied(const std::string& from, const std::string& to)
{
    const std::string beside = to + ".writing";
    std::error_code error;
    fs::copy_file(from, beside, fs::copy_options::overwrite_existing, error);
    if (!error)
        fs::rename(beside, to, error);
    if (!error)
        return {};
    std::error_code ignored;
    fs::remove(beside, ignored);
    const char* code = error == std::errc::no_space_on_device ? "file.full" : "file.write";
    return fail(Fault{code, FaultKind::io, {{"file", to}}, {to, 0, 0, -1, {}}, error.message()});
}

Result<HandedOut> given(Session& session, const BundleNote& note, const BundleCounts& counts, const std::string& out, bool again)
{
    const std::string kept = session.store().bundles().keptAt(note.id);
    if (auto there = copied(kept, out); !there)
        return fail(there.error());
    std::error_code error;
    return HandedOut{note, counts, static_cast<std::int64_t>(fs::file_size(out, error)), again};
}

/// Written and read back; the file goes again unless it is kept.
class Kept {
public:
    explicit Kept(std::string path) : m_path(std::move(path)) {}
    ~Kept()
    {
        std::error_code ignored;
        if (!m_keep)
            fs::remove(m_path, ignored);
    }
    Kept(const Kept&) = delete;
    Kept& operator=(const Kept&) = delete;
    void keep() { m_keep = true; }

private:
    std::string m_path;
    bool m_keep = false;
};

Result<HandedOut> written(Session& session, Change& change, const HandOut& wanted, const Going& going, const Waiting& waiting,
                          const SigningKey& key, const OwnKey& own, const Progress& progress)
{
    auto manifest = manifestOf(session, wanted, going, own);
    if (!manifest)
        return fail(manifest.error());
    const auto parts = partsOf(session, wanted, going, waiting);
    if (!parts)
        return fail(parts.error());
    Bundles bundles = session.store().bundles();
    const std::string path = bundles.keptAt(manifest->bundle);
    Kept kept(path);
    auto done = writeBundle(path, std::move(*manifest), *parts, key, progress);
    if (!done)
        return fail(done.error());
    const auto back = BundleFile::open(path, {}, Progress{{}, progress.stop});
    if (!back)
        return fail(back.error());
    const BundleNote note = noteOf(*done, back->manifestDigest());
    if (auto noted = bundles.add(change, note, going.carried); !noted)
        return fail(noted.error());
    if (auto stands = session.commit(change); !stands)
        return fail(stands.error());
    kept.keep();
    return given(session, note, done->counts, wanted.out, false);
}

} // namespace

Result<HandedOut> handOut(Session& session, const HandOut& wanted, const Progress& progress)
{
    if (auto may = mayHandOut(session, wanted.kind); !may)
        return fail(may.error());
    const auto own = ownKey(session.profile().folder);
    if (!own)
        return fail(own.error());
    const auto key = signingKey(session.profile().folder, wanted.passphrase);
    if (!key)
        return fail(key.error());
    auto change = session.begin();
    if (!change)
        return fail(change.error());
    auto waiting = waitingLines(session);
    if (!waiting)
        return fail(waiting.error());
    const auto going = collected(session, wanted, *waiting, progress);
    if (!going)
        return fail(going.error());
    if (waiting->records.lines() == 0 && going->acknowledges.empty())
        return fail("bundle.nothing", FaultKind::refused);
    const auto before = same(session, wanted, *going, own->key);
    if (!before)
        return fail(before.error());
    if (!*before)
        return written(session, *change, wanted, *going, *waiting, *key, *own, progress);
    const auto kept = BundleFile::open(session.store().bundles().keptAt((*before)->id));
    if (!kept)
        return fail(kept.error());
    return given(session, **before, kept->manifest().counts, wanted.out, true);
}

Status eraseInKeptBundles(Session& session)
{
    const std::string folder = session.store().bundles().folder();
    Status all;
    std::error_code ignored;
    for (fs::directory_iterator at(folder, ignored), end; at != end; at.increment(ignored)) {
        if (at->path().extension() != ".zip")
            continue;
        // A damaged one must not keep the others from being cleaned.
        const auto done = eraseInBundle(at->path().string(), [&](const std::string& commitment) {
            const auto erased = session.store().people().erased(commitment);
            if (!erased && all)
                all = fail(erased.error());
            return erased && *erased;
        });
        if (!done && all)
            all = fail(done.error());
    }
    return all;
}

} // namespace cupule
