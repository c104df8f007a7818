#include <algorithm>

#include "app/json.h"
#include "app/verbs/verbs.h"
#include "core/base/text.h"
#include "core/record/json.h"
#include "core/task/nouns.h"
#include "core/task/photos.h"

namespace cupule::app {

namespace {

class PhotoVerb final : public StoreVerb {
public:
    const char* name() const override { return "photo"; }
    const char* summary() const override { return "Say which visit a photo belongs to, and what it shows"; }
    const char* usage() const override
    {
        return "STORE PHOTO [--visit VISIT] [--shows WHAT] [--caption TEXT] [--copy-of PHOTO] [--no-copy-of PHOTO]";
    }
    const char* prose() const override
    {
        return "Puts a photo with a visit, or out of the tray in which photos lie that no visit claims by place and "
               "time; and says what can be seen on it. A gall needs a photo that shows it, and the verifier needs one "
               "character of the tree on a photo. Where the import says that it looks like another one, you say whether it is the "
               "same picture: a copy leaves its visit and the tray and is kept. The picture itself is never changed.";
    }
    const char* examples() const override
    {
        return "cupule photo vale.cupule IMG_0411.jpg --visit W03@2026-06-11 --shows S02,K03";
    }
    void declare(CLI::App& options) override
    {
        declareStore(options);
        options.add_option("PHOTO", m_photo, "name of the file as it was taken in, or its id")->required();
        options.add_option("--visit", m_visit, "the visit it belongs to; \"none\" puts it into the tray");
        options.add_option("--shows", m_shows,
                           "signs and characters on it by number, crown or shoot, with commas between; \"nothing\" "
                           "clears it");
        options.add_option("--caption", m_caption, "a few words");
        options.add_option("--copy-of", m_copyOf, "it is the same picture as that one: put it aside, keep the file");
        options.add_option("--no-copy-of", m_noCopyOf, "it only looks like that one: do not ask again, and take it back where it was put aside");
    }
    Result<int> run(Run& run) override
    {
        const auto session = run.open(m_store);
        if (!session)
            return fail(session.error());
        auto photo = found(**session);
        if (!photo)
            return fail(photo.error());
        if (auto filled = fill(*photo, **session); !filled)
            return fail(filled.error());
        if (auto changed = changePhoto(**session, *photo, "photo"); !changed)
            return fail(changed.error());
        run.give(contentJson(toJson(*photo)));
        if (!photo->copyOf.isNull()) {
            run.say("{photo} is put aside as a copy. The file is kept.", {{"photo", photo->originalName}});
            return done;
        }
        const Pack& pack = (*session)->pack();
        std::string shows;
        for (const auto& id : photo->evidenceFor) {
            const Sign* sign = pack.sign(id);
            const Character* character = pack.character(id);
            shows += (shows.empty() ? "" : "; ") + (sign ? sign->name : character ? character->name : id);
        }
        run.say(shows.empty() ? "{photo}: what it shows is not said." : "{photo} shows: {shows}.",
                {{"photo", photo->originalName}, {"shows", shows}});
        return done;
    }

private:
    Result<PhotoNote> found(Session& session) const
    {
        return named(session, m_photo);
    }
    static Result<PhotoNote> named(Session& session, const std::string& name)
    {
        const auto id = findNoun(session, Noun::photo, name);
        if (!id)
            return fail(id.error());
        const auto one = oneNoun(session, Noun::photo, *id);
        return one ? fromJson<PhotoNote>(one->content) : fail(one.error());
    }
    Status fill(PhotoNote& photo, Session& session) const
    {
        if (!m_caption.empty())
            photo.caption = m_caption;
        if (m_visit == "none") {
            photo.visit = {};
        } else if (!m_visit.empty()) {
            const auto visit = findNoun(session, Noun::visit, m_visit);
            if (!visit)
                return fail(visit.error());
            photo.visit = *visit;
        }
        if (auto compared = compare(photo, session); !compared)
            return compared;
        if (m_shows.empty())
            return {};
        photo.evidenceFor.clear();
        const auto plainWords = plainEvidence();
        for (const auto& part : split(m_shows == "nothing" ? std::string() : m_shows, ',')) {
            const std::string id(trim(part));
            if (id.empty())
                continue;
            const bool known = session.pack().sign(id) != nullptr || session.pack().character(id) != nullptr ||
                               std::find(plainWords.begin(), plainWords.end(), id) != plainWords.end();
            if (!known)
                return fail("field.value", FaultKind::usage, {{"field", "--shows"}, {"value", id}});
            photo.evidenceFor.push_back(id);
        }
        return {};
    }

    Status compare(PhotoNote& photo, Session& session) const
    {
        if (m_copyOf.empty() && m_noCopyOf.empty())
            return {};
        const auto other = named(session, m_copyOf.empty() ? m_noCopyOf : m_copyOf);
        if (!other)
            return fail(other.error());
        if (m_copyOf.empty()) {
            photo.copyOf = {};
            if (std::find(photo.notWith.begin(), photo.notWith.end(), other->id) == photo.notWith.end())
                photo.notWith.push_back(other->id);
        } else {
            photo.copyOf = other->id;
            photo.visit = {};
        }
        return {};
    }

    std::string m_photo, m_visit, m_shows, m_caption, m_copyOf, m_noCopyOf;
};

} // namespace

std::unique_ptr<Verb> makePhoto()
{
    return std::make_unique<PhotoVerb>();
}

} // namespace cupule::app
