// A small bundle made by hand: one person, one tree, one visit and a picture, with the journal lines that stand for them.

#pragma once

#include <string>
#include <vector>

#include "core/base/clock.h"
#include "core/base/hash.h"
#include "core/base/random.h"
#include "core/exchange/bundle/bundle_file.h"

namespace cupule::test {

class BundleMaker {
public:
    explicit BundleMaker(std::uint64_t seed = 1);

    /// As a store would give it; each may be spoilt before it is written.
    Manifest manifest;
    std::vector<BundleLine> lines;
    std::vector<BundleRecord> records;
    std::vector<BundlePersonal> personal;
    std::string pack;

    /// Links the lines anew and puts chain and counts of the manifest right, after something was changed.
    void link();
    [[nodiscard]] BundleParts parts() const;
    /// Written as it stands, signed; the path.
    std::string write() const;
    /// A zip of these parts in this order, whatever they are; the path.
    static std::string zipOf(const std::vector<std::pair<std::string, std::string>>& parts);
    /// The parts of a well-formed bundle, to be put together again otherwise.
    [[nodiscard]] std::vector<std::pair<std::string, std::string>> texts() const;

    SigningKey key;
    std::string picture = "the bytes of a picture";

private:
    void add(const std::string& kind, const std::string& noun, const Uid& entity, const std::string& content,
             const std::string& commitment = {});
    UidMaker m_ids;
};

} // namespace cupule::test
