// Cases made from photos: what is asked of them is only what two people's keys agree on.

#pragma once

#include <optional>
#include <span>
#include <string>
#include <vector>

#include "core/record/practice.h"
#include "core/training/agreement.h"
#include "core/training/case.h"

namespace cupule {

/// A photo case with what all keys about it come to.
struct KeyedPhotoCase {
    PhotoCase photoCase;
    std::vector<PhotoKey> keys;            ///< one of each person: their last
    std::vector<AskedItem> agreed;         ///< questions that two people or more answered, all alike
    std::vector<PhotoQuestion> apart;      ///< answered by two or more, not alike
    std::vector<PhotoQuestion> open;       ///< answered by fewer than two
};

std::vector<KeyedPhotoCase> keyedCases(std::span<const PhotoCase> cases, std::span<const PhotoKey> keys);

/// How far two makers of keys agree over every question that both have answered, one table for each kind of question.
struct KeyAgreement {
    Uid one, other;
    AskedKind kind = AskedKind::sign;
    std::int64_t questions = 0;
    std::optional<PairAgreement> agreement;
};
std::vector<KeyAgreement> keyAgreements(std::span<const KeyedPhotoCase> cases);

/// Why a photo case or a key cannot be kept: "pictures" (none, or no digest), "questions" (none, or of a kind that no photo answers),
/// "options" (a question of choice with fewer than two), "truth" (none of the options). Empty = nothing.
std::string photoCaseFault(const PhotoCase& photoCase);
std::string photoKeyFault(const PhotoKey& key, const PhotoCase& photoCase);

} // namespace cupule
