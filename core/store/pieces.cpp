#include "core/store/pieces.h"

#include <algorithm>
#include <iterator>

namespace cupule {

namespace {

/// The name of a further piece: every store makes the same one from the same first line. Version 8 of RFC 9562: bits of one's own making.
Uid nameOf(const JournalLine& line)
{
    const Digest made = sha256("cupule-piece-1\n" + line.incarnation.text() + "\n" + std::to_string(line.number) + "\n" + hex(line.hash) + "\n");
    Uid name;
    std::copy_n(made.begin(), name.bytes.size(), name.bytes.begin());
    name.bytes[6] = static_cast<std::uint8_t>((name.bytes[6] & 0x0F) | 0x80);
    name.bytes[8] = static_cast<std::uint8_t>((name.bytes[8] & 0x3F) | 0x80);
    return name;
}

} // namespace

ChainOwner ownerOf(StoreCore& core, std::int64_t chain)
{
    Query q(core.db, "SELECT coalesce(piece.of, incarnation.uid), piece.chain IS NOT NULL, piece.first, piece.before "
                     "FROM incarnation LEFT JOIN piece ON piece.chain = incarnation.id WHERE incarnation.id = :chain");
    if (!q.bind(":chain", chain).step())
        return {};
    ChainOwner owner{q.uid(0), q.flag(1), 1, {}};
    if (owner.cameIn) {
        owner.first = q.integer(2);
        owner.before = q.digest(3);
    }
    return owner;
}

std::vector<std::int64_t> chainsOf(StoreCore& core, const Uid& incarnation)
{
    std::vector<std::int64_t> chains;
    Query q(core.db, "SELECT id FROM incarnation WHERE uid = :uid UNION SELECT chain FROM piece WHERE of = :uid ORDER BY 1");
    q.bind(":uid", incarnation);
    while (q.step())
        chains.push_back(q.integer(0));
    return chains;
}

Digest Pieces::hashAt(std::int64_t chain, std::int64_t number)
{
    Query q(m_core.db, "SELECT hash FROM journal WHERE chain = :chain AND number = :number");
    return q.bind(":chain", chain).bind(":number", number).step() ? q.digest(0) : Digest{};
}

void Pieces::add(Chain& chain, const Piece& piece)
{
    chain.byFirst.emplace(piece.first, chain.pieces.size());
    chain.byLast.emplace(piece.last, chain.pieces.size());
    chain.longest = std::max(chain.longest, piece.last - piece.first + 1);
    chain.pieces.push_back(piece);
}

Pieces::Chain& Pieces::chainOf(const Uid& incarnation)
{
    const auto known = m_chains.find(incarnation);
    if (known != m_chains.end())
        return known->second;
    Chain& made = m_chains[incarnation];
    for (const std::int64_t chain : chainsOf(m_core, incarnation)) {
        const ChainOwner owner = ownerOf(m_core, chain);
        Query last(m_core.db, "SELECT number, hash FROM journal WHERE chain = :chain ORDER BY number DESC LIMIT 1");
        if (last.bind(":chain", chain).step())
            add(made, {chain, owner.first, last.integer(0), last.digest(1), !owner.cameIn});
    }
    return made;
}

Pieces::Piece Pieces::begin(const Incarnation& incarnation, const JournalLine& line, const Digest& before)
{
    Query taken(m_core.db, "SELECT 1 FROM incarnation WHERE uid = :uid");
    const bool named = taken.bind(":uid", incarnation.id).step();
    Query q(m_core.db, "INSERT INTO incarnation (uid, device, begun_utc, begun_offset, why) VALUES (:uid, :device, :utc, :offset, :why)");
    q.bind(":uid", named || line.number != 1 ? nameOf(line) : incarnation.id).bind(":device", incarnation.device);
    q.bind(":utc", incarnation.begun.utcMilliseconds).bind(":offset", incarnation.begun.offsetMinutes).bind(":why", incarnation.why).run();
    const std::int64_t chain = m_core.db.lastRowId();
    Query p(m_core.db, "INSERT INTO piece (chain, of, first, before) VALUES (:chain, :of, :first, :before)");
    p.bind(":chain", chain).bind(":of", incarnation.id).bind(":first", line.number).bind(":before", before).run();
    return {chain, line.number, line.number, line.hash, false};
}

/// No piece that could hold the number begins earlier than the longest one is long.
std::optional<std::int64_t> Pieces::standsIn(const Chain& chain, const JournalLine& line)
{
    for (auto at = chain.byFirst.upper_bound(line.number - chain.longest); at != chain.byFirst.end() && at->first <= line.number; ++at) {
        const Piece& piece = chain.pieces[at->second];
        if (line.number <= piece.last && hashAt(piece.chain, line.number) == line.hash)
            return piece.chain;
    }
    return std::nullopt;
}

Pieces::Put Pieces::put(const Incarnation& incarnation, const JournalLine& line, const Digest& before)
{
    Chain& chain = chainOf(incarnation.id);
    if (const auto known = standsIn(chain, line))
        return {{*known, line.number}, false};
    auto [at, end] = chain.byLast.equal_range(line.number - 1);
    while (at != end && (chain.pieces[at->second].here || chain.pieces[at->second].hash != before))
        ++at;
    std::size_t into = chain.pieces.size();
    if (at == end) {
        add(chain, begin(incarnation, line, before));
    } else {
        into = at->second;
        chain.byLast.erase(at);
        chain.byLast.emplace(line.number, into);
    }
    Piece& piece = chain.pieces[into];
    Query q(m_core.db, "INSERT INTO journal (chain, number, at_utc, at_offset, author, kind, noun, entity, digest, commitment, hash) "
                       "VALUES (:chain, :number, :utc, :offset, :author, :kind, :noun, :entity, :digest, :commitment, :hash)");
    q.bind(":chain", piece.chain).bind(":number", line.number).bind(":utc", line.at.utcMilliseconds);
    q.bind(":offset", line.at.offsetMinutes).bind(":author", line.author).bind(":kind", line.kind).bind(":noun", line.noun);
    q.bind(":entity", line.entity).bind(":digest", line.digest).bind(":commitment", line.commitment).bind(":hash", line.hash).run();
    piece.last = line.number;
    piece.hash = line.hash;
    chain.longest = std::max(chain.longest, piece.last - piece.first + 1);
    return {{piece.chain, line.number}, true};
}

} // namespace cupule
