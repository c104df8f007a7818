#include "core/task/photo_copies.h"

#include <algorithm>

#include "core/store/media.h"
#include "core/task/photos.h"

namespace cupule {

namespace {

constexpr int lookedAtOnce = 20;   // pictures to a change

bool toldApart(const PhotoNote& one, const PhotoNote& other)
{
    const auto says = [](const PhotoNote& photo, const Uid& id) {
        return std::find(photo.notWith.begin(), photo.notWith.end(), id) != photo.notWith.end();
    };
    return says(one, other.id) || says(other, one.id);
}

std::int64_t pixels(const PhotoNote& photo)
{
    return std::int64_t{photo.widthPixels} * photo.heightPixels;
}

bool isLarger(const PhotoNote& one, const PhotoNote& other)
{
    return std::pair(pixels(one), other.id) > std::pair(pixels(other), one.id);
}

} // namespace

Result<const PhotoNote*> CopyFinder::note(const Uid& photo)
{
    if (const auto known = m_notes.find(photo); known != m_notes.end())
        return &known->second;
    auto stored = storedPhoto(m_session, photo);
    if (!stored)
        return fail(stored.error());
    return &m_notes.emplace(photo, std::move(*stored)).first->second;
}

void CopyFinder::add(const PhotoNote& photo, std::uint64_t hash)
{
    m_all.push_back({photo.id, hash});
    m_notes.emplace(photo.id, photo);
}

Result<std::optional<LikelyCopy>> CopyFinder::likeliest(const PhotoNote& photo, std::uint64_t hash)
{
    std::vector<std::pair<int, Uid>> near;
    for (const PhotoLikeness& other : m_all)
        if (const int bits = bitsApart(hash, other.hash); bits <= likelySameBits && other.photo != photo.id)
            near.emplace_back(bits, other.photo);
    std::sort(near.begin(), near.end());
    for (const auto& [bits, id] : near) {
        const auto other = note(id);
        if (!other)
            return fail(other.error());
        if ((*other)->copyOf.isNull() && !takenApart(photo, **other) && !toldApart(photo, **other))
            return LikelyCopy{photo, **other, bits};
    }
    return std::nullopt;
}

Result<std::vector<LikelyCopy>> likelyCopies(Session& session)
{
    const auto tray = trayPhotos(session);
    if (!tray)
        return fail(tray.error());
    auto all = session.store().photos().likenesses();
    if (!all)
        return fail(all.error());
    std::map<Uid, std::uint64_t> hashes;
    for (const PhotoLikeness& one : *all)
        hashes.emplace(one.photo, one.hash);
    CopyFinder finder(session, std::move(*all));
    std::map<Uid, LikelyCopy> best;   // of each photo that may be the copy
    for (const PhotoNote& photo : *tray) {
        const auto hash = hashes.find(photo.id);
        if (hash == hashes.end())
            continue;
        auto copy = finder.likeliest(photo, hash->second);
        if (!copy)
            return fail(copy.error());
        if (!*copy)
            continue;
        if ((*copy)->other.visit.isNull() && isLarger((*copy)->photo, (*copy)->other))
            std::swap((*copy)->photo, (*copy)->other);
        const auto [known, fresh] = best.try_emplace((*copy)->photo.id, **copy);
        if (!fresh && (*copy)->bits < known->second.bits)
            known->second = std::move(**copy);
    }
    std::vector<LikelyCopy> copies;
    for (auto& [photo, copy] : best)
        copies.push_back(std::move(copy));
    return copies;
}

Status lookAtPictures(Session& session, const LookAtPicture& look, const Progress& progress)
{
    std::int64_t done = 0;
    for (;;) {
        const auto some = session.store().photos().notLookedAt(lookedAtOnce);
        if (!some)
            return fail(some.error());
        if (some->empty())
            return {};
        std::vector<std::optional<std::uint64_t>> hashes;
        for (const PhotoNote& photo : *some) {
            if (progress.cancelled())
                return fail("job.cancelled", FaultKind::refused);
            const auto path = session.store().media().path(photo.sha256);
            hashes.push_back(path ? look(*path) : std::nullopt);
            progress.tell(++done, 0);
        }
        auto change = session.begin();
        if (!change)
            return fail(change.error());
        for (std::size_t i = 0; i < some->size(); ++i)
            if (auto set = session.store().photos().setLikeness(*change, (*some)[i].id, hashes[i]); !set)
                return set;
        if (auto kept = session.commit(*change); !kept)
            return kept;
    }
}

Status sayCopy(Session& session, const Uid& photo, const Uid& of, const std::string& what)
{
    auto stored = storedPhoto(session, photo);
    const auto original = storedPhoto(session, of);
    if (!stored || !original)
        return fail(stored ? original.error() : stored.error());
    stored->copyOf = original->id;
    stored->visit = {};
    return changePhoto(session, *stored, what);
}

Status sayTwoPictures(Session& session, const Uid& photo, const Uid& other, const std::string& what)
{
    auto stored = storedPhoto(session, photo);
    if (!stored)
        return fail(stored.error());
    if (std::find(stored->notWith.begin(), stored->notWith.end(), other) == stored->notWith.end())
        stored->notWith.push_back(other);
    return changePhoto(session, *stored, what);
}

} // namespace cupule
