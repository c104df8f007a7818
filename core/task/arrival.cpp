#include "core/task/arrival.h"

#include <algorithm>
#include <set>

#include "core/base/hash.h"
#include "core/store/bundles.h"
#include "core/store/journal.h"

namespace cupule {

namespace {

/// Each older key's word for the next one, up to the key that signed.
Status chainHolds(const Manifest& manifest)
{
    std::string newest;
    for (const KeyFollows& each : manifest.follows) {
        const auto older = publicKeyFrom(each.older);
        Signature signature{};
        const bool joins = newest.empty() || newest == each.older;
        if (!older || !joins || !bytesFromHex(each.signature, signature)
            || !verifies(*older, followText(each.older, each.newer), signature))
            return fail("key.follows", FaultKind::refused, {{"key", manifest.key}});
        newest = each.newer;
    }
    if (!newest.empty() && newest != manifest.key)
        return fail("key.follows", FaultKind::refused, {{"key", manifest.key}});
    return {};
}

/// A new key counts as vouched for where an earlier one that holds for this person speaks for it.
Result<KeyStanding> standingOf(Session& session, const Manifest& manifest)
{
    const auto plain = keyStanding(session, manifest.key, manifest.authorPerson, manifest.authorCode);
    if (!plain || *plain == KeyStanding::vouched || *plain == KeyStanding::otherPerson || *plain == KeyStanding::withdrawn)
        return plain;
    for (const KeyFollows& each : manifest.follows) {
        const auto older = session.store().keys().find(each.older);
        if (!older)
            return fail(older.error());
        if (*older && (*older)->holds() && (*older)->person == manifest.authorPerson)
            return KeyStanding::follows;
    }
    return plain;
}

/// Finds the first line of each chain that stands here with another hash. A line that stands here vouches for those before it, whose hashes
/// went into its own, so that only one in many has to be asked for.
class Parting {
public:
    explicit Parting(Session& session) : m_session(session) {}
    Status look(const BundleLine& line)
    {
        if (m_settled.contains(line.incarnation))
            return {};
        const bool goesOn = !m_run.empty() && m_run.back().incarnation == line.incarnation && m_run.back().branch == line.branch && line.before.empty();
        if (!goesOn || m_run.size() >= asked)
            if (auto done = ask(); !done)
                return done;
        m_run.push_back(line);
        return {};
    }
    Result<std::vector<PartedChain>> found()
    {
        if (auto done = ask(); !done)
            return fail(done.error());
        return std::move(m_parted);
    }

private:
    static constexpr std::size_t asked = 64;

    Status ask()
    {
        const std::vector<BundleLine> run = std::exchange(m_run, {});
        if (run.empty() || m_settled.contains(run.back().incarnation))
            return {};
        const auto last = standsHere(run.back());
        if (!last)
            return fail(last.error());
        for (std::size_t i = 0; !*last && i < run.size() && !m_settled.contains(run[i].incarnation); ++i)
            if (auto each = standsHere(run[i], true); !each)
                return fail(each.error());
        return {};
    }
    /// Where `tell`, a line that does not stand here settles its chain.
    Result<bool> standsHere(const BundleLine& line, bool tell = false)
    {
        const auto known = m_session.store().journal().linesAt(line.incarnation, line.number);
        if (!known)
            return fail(known.error());
        const bool here = std::any_of(known->begin(), known->end(), [&](const LineHere& each) { return hex(each.hash) == line.hash; });
        if (here || !tell)
            return here;
        m_settled.insert(line.incarnation);
        if (!known->empty())
            m_parted.push_back({line.incarnation, line.number, known->front().author, line.author});
        return here;
    }

    Session& m_session;
    std::vector<BundleLine> m_run;         // of one chain, one after the other
    std::vector<PartedChain> m_parted;
    std::set<Uid> m_settled;               // unknown here, or parted already
};

Status refuseKey(Session& session, const Arrival& arrival)
{
    const Manifest& manifest = arrival.file.manifest();
    const auto refuse = [&](const char* code) {
        return fail(code, FaultKind::refused, {{"fingerprint", arrival.fingerprint}, {"key", manifest.key}, {"who", manifest.authorCode}, {"code", manifest.authorCode}});
    };
    switch (arrival.standing) {
    case KeyStanding::vouched:
    case KeyStanding::follows: return {};
    case KeyStanding::unknown: return refuse("key.unknown");
    case KeyStanding::changed: return refuse("key.changed");
    case KeyStanding::sameCode: return refuse("key.same-code");
    case KeyStanding::otherPerson: return refuse("key.other-person");
    case KeyStanding::withdrawn: break;
    }
    const auto known = session.store().keys().find(manifest.key);
    if (!known)
        return fail(known.error());
    const bool before = *known && (*known)->vouched && (*known)->person == manifest.authorPerson && manifest.number <= (*known)->upTo;
    return before ? Status() : Status(refuse("key.withdrawn"));
}

} // namespace

Result<Arrival> lookAtArrival(Session& session, const std::string& path, const BundleLimits& limits, const Progress& progress)
{
    Parting parting(session);
    auto file = BundleFile::open(path, limits, progress, [&](const BundleLine& line) { return parting.look(line); });
    if (!file)
        return fail(file.error());
    if (auto holds = chainHolds(file->manifest()); !holds)
        return fail(holds.error());
    const auto standing = standingOf(session, file->manifest());
    if (!standing)
        return fail(standing.error());
    const auto note = session.store().bundles().find(file->manifest().bundle);
    if (!note)
        return fail(note.error());
    const bool known = *note && (*note)->manifest == file->manifestDigest();
    auto parted = parting.found();
    if (!parted)
        return fail(parted.error());
    std::string digits = fingerprint(*publicKeyFrom(file->manifest().key));
    return Arrival{std::move(*file), std::move(digits), *standing, known, std::move(*parted)};
}

Status mayTakeIn(Session& session, const Arrival& arrival)
{
    const Manifest& manifest = arrival.file.manifest();
    if (manifest.demonstration != session.info().demonstration)
        return fail(manifest.demonstration ? "bundle.demonstration" : "bundle.real", FaultKind::refused);
    const auto note = session.store().bundles().find(manifest.bundle);
    if (!note)
        return fail(note.error());
    if (*note && (*note)->manifest != arrival.file.manifestDigest())
        return fail("bundle.altered", FaultKind::refused, {{"bundle", manifest.bundle.text()}, {"who", manifest.authorCode}});
    return refuseKey(session, arrival);
}

} // namespace cupule
