// Photo notes: what a picture is and what it is evidence for. The picture itself: core/store/media.h.

#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/record/photo.h"
#include "core/store/store.h"

namespace cupule {

class Photos {
public:
    explicit Photos(StoreCore& core) : m_core(core) {}
    Status save(Change& change, const PhotoNote& photo);
    Result<std::optional<PhotoNote>> find(const Uid& id);
    Result<std::vector<PhotoNote>> ofVisit(const Uid& visit);
    Result<std::vector<PhotoNote>> ofTree(const Uid& tree);
    Result<std::vector<PhotoNote>> tray();                                   ///< those of no visit yet
    Result<std::vector<PhotoNote>> withPicture(const std::string& sha256);   ///< the same picture, wherever it is used

private:
    StoreCore& m_core;
};

} // namespace cupule
