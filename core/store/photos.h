// Photo notes: what a picture is and what it is evidence for. The picture itself: core/store/media.h.

#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "core/record/photo.h"
#include "core/store/store.h"

namespace cupule {

/// What a picture looks like: core/rules/photo_likeness.h.
struct PhotoLikeness {
    Uid photo;
    std::uint64_t hash = 0;
};

class Photos {
public:
    explicit Photos(StoreCore& core) : m_core(core) {}
    Status save(Change& change, const PhotoNote& photo);
    Result<std::optional<PhotoNote>> find(const Uid& id);
    Result<std::vector<PhotoNote>> ofVisit(const Uid& visit);
    Result<std::vector<PhotoNote>> ofTree(const Uid& tree);
    Result<std::vector<PhotoNote>> tray();                                   ///< those of no visit yet, without known copies
    Result<std::vector<PhotoNote>> copies();                                 ///< those that a person put aside as known copies
    Result<std::vector<PhotoNote>> withPicture(const std::string& sha256);   ///< the same picture, wherever it is used

    /// Computed from the picture: no revision, no journal line. Nothing: it cannot be shown, or has no contrast.
    Status setLikeness(Change& change, const Uid& photo, std::optional<std::uint64_t> hash);
    Result<std::vector<PhotoLikeness>> likenesses();                         ///< of all photos that have one
    /// Photos whose pictures nobody has looked at yet, those taken in last first.
    Result<std::vector<PhotoNote>> notLookedAt(int most);

private:
    StoreCore& m_core;
};

} // namespace cupule
