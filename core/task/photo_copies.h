// Pictures that are likely one picture: offered, and never joined unless a person says so. Nothing is deleted.

#pragma once

#include <map>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "core/record/photo.h"
#include "core/rules/photo_likeness.h"
#include "core/store/photos.h"
#include "core/task/session.h"

namespace cupule {

struct LikelyCopy {
    PhotoNote photo;                        ///< lies in the tray; the smaller one where both do
    PhotoNote other;
    int bits = 0;                           ///< of 64 that differ, at most likelySameBits
};

/// Looks for what a photo resembles among many; keeps what it has read of them.
class CopyFinder {
public:
    CopyFinder(Session& session, std::vector<PhotoLikeness> all) : m_session(session), m_all(std::move(all)) {}
    /// The one that it resembles most, wherever that lies. Not those that were taken at different moments, nor those that a person
    /// told apart.
    Result<std::optional<LikelyCopy>> likeliest(const PhotoNote& photo, std::uint64_t hash);
    /// One more that others may resemble.
    void add(const PhotoNote& photo, std::uint64_t hash);

private:
    Result<const PhotoNote*> note(const Uid& photo);

    Session& m_session;
    std::vector<PhotoLikeness> m_all;
    std::map<Uid, PhotoNote> m_notes;
};

/// For each photo of the tray the one that it resembles most.
Result<std::vector<LikelyCopy>> likelyCopies(Session& session);

/// Looks at every picture nobody has looked at yet, in steps that each are kept. Fault "job.cancelled".
Status lookAtPictures(Session& session, const LookAtPicture& look, const Progress& progress = {});

/// `photo` is the same picture as `of`: it leaves tray and visit, and is kept. Can be undone.
Status sayCopy(Session& session, const Uid& photo, const Uid& of, const std::string& what);
/// They are two pictures, and are not asked about again. Can be undone.
Status sayTwoPictures(Session& session, const Uid& photo, const Uid& other, const std::string& what);

} // namespace cupule
