// Practice cases that trainers make from their own photos. Two people give their own key, each without the other's; what they agree on is asked.
// Roles trainer, office.

#pragma once

#include <string>
#include <vector>

#include "core/task/practice.h"
#include "core/training/photo_key.h"

namespace cupule {

/// Takes the pictures into the store's media folder. `made.pictures` holds paths of files; id, moment and maker are filled in. Faults
/// "photo-case.form" (argument "why": as of photoCaseFault), those of the media folder, "file.open".
Result<PhotoCase> addPhotoCase(Session& session, PhotoCase made);
/// Where its pictures lie, in their order. Fault "media.missing".
Result<std::vector<std::string>> photoCasePictures(Session& session, const PhotoCase& photoCase);
/// One's own key; a later one takes the place of an earlier. Faults "photo-case.unknown", "photo-case.form".
Status addPhotoKey(Session& session, const Uid& photoCase, const std::vector<PhotoTruth>& truths);

struct PhotoCaseLine {
    KeyedPhotoCase keyed;
    bool keyedByMe = false;                ///< until then the others' keys are not shown: `keyed.keys` holds one's own alone, what is agreed
                                           ///< and apart is empty
};
Result<std::vector<PhotoCaseLine>> photoCaseLines(Session& session);
/// Kappa between every two makers of keys, by kind of question; their codes.
struct KeyMakers {
    std::string one, other;
    KeyAgreement agreement;
};
Result<std::vector<KeyMakers>> keyMakers(Session& session);

/// The next photo case of a session that has an agreed key and was not answered in it, as a case without drawings; its pictures are those of
/// `photoCase`. Only questions of the kinds that the session asks. Nothing where none is left.
struct PhotoRound {
    PhotoCase photoCase;
    std::vector<AskedItem> asked;
};
Result<std::optional<PhotoRound>> nextPhotoCase(Session& session, const PracticeRound& round);
/// Keeps the answers as the next case of the session.
Status answerPhotoCase(Session& session, PracticeRound& round, const PhotoRound& photo, const std::vector<AnsweredItem>& answers, int seconds);

} // namespace cupule
