#include "tests/gui/photo_scene.h"

#include <stdexcept>

#include <QDir>
#include <QFile>
#include <QImage>

#include "core/task/day.h"
#include "core/task/import.h"
#include "core/task/photos.h"
#include "core/task/trees.h"
#include "ui/figures/figure.h"
#include "ui/photos/picture.h"

namespace cupule::test {

namespace {

struct Drawn {
    const char* name;
    const char* figure;
    const char* time;              ///< as the camera wrote it; empty: none
    double clockAhead;             ///< 0: no satellite time
    int tree;                      ///< whose place it carries; 0: none
    int daysAgo;
    ui::PhotoSpec::Ground ground;
    double turn;                   ///< degrees: no two are to look alike
};

using Ground = ui::PhotoSpec::Ground;

constexpr Drawn drawn[] = {
    {"IMG_0611.jpg", "shoot_castanea", "09:12", 600, 1, 0, Ground::sky, 0},
    {"IMG_0612.jpg", "leaf_castanea", "09:15", 0, 0, 0, Ground::paper, 70},
    {"IMG_0613.jpg", "gall_midrib", "14:13", 604, 2, 0, Ground::leaves, 0},
    {"IMG_0614.jpg", "gall_shoot_tip", "14:19", 0, 0, 0, Ground::bark, 20},
    {"IMG_0615.jpg", "twig_castanea", "19:40", 0, 0, 0, Ground::sky, 95},
    {"IMG_0616.jpg", "husk_castanea", "11:05", 0, 0, 3, Ground::bark, 180},
    {"sent.jpg", "gall_midrib", "", 0, 0, 0, Ground::leaves, 0},
};

template <class T>
T need(Result<T> result)
{
    if (!result)
        throw std::runtime_error(result.error().code);
    return std::move(*result);
}

QImage picture(const Drawn& photo)
{
    ui::PhotoSpec spec;
    spec.figure = plateOf(photo.figure);
    spec.figure.view.turnDegrees = photo.turn;
    spec.ground = photo.ground;
    spec.size = {800, 600};
    return ui::figurePhoto(spec);
}

void tag(Session& session, const Drawn& photo, const std::vector<Position>& places)
{
    for (PhotoNote note : need(trayPhotos(session))) {
        if (note.originalName != photo.name)
            continue;
        if (*photo.time != 0) {
            note.takenDate = CivilDate{session.today().days - photo.daysAgo};
            note.takenTime = need(LocalTime::parse(photo.time));
        }
        if (photo.clockAhead > 0)
            note.clockAheadSeconds = photo.clockAhead;
        if (photo.tree > 0) {
            note.position = places[static_cast<std::size_t>(photo.tree) - 1];
            note.position->uncertaintyMetres = 15;
            note.position->latitude += 0.0001;   // 11 m
        }
        if (const auto changed = changePhoto(session, note, "tags"); !changed)
            throw std::runtime_error(changed.error().code);
    }
}

} // namespace

void drawPhotos(const QString& folder)
{
    QDir().mkpath(folder);
    for (const Drawn& photo : drawn) {
        const QString path = folder + QLatin1Char('/') + QString::fromLatin1(photo.name);
        const bool sent = qstrcmp(photo.name, "sent.jpg") == 0;
        const QImage image = sent ? picture(photo).scaled(320, 240, Qt::IgnoreAspectRatio, Qt::SmoothTransformation) : picture(photo);
        if (!image.save(path, "JPG", sent ? 60 : 88))
            throw std::runtime_error("a picture could not be written");
    }
}

void makePhotoScene(Session& session, const QString& folder)
{
    std::vector<Position> places;
    for (const auto& [label, reference, time] :
         {std::tuple("T-1", "SO 61200 09400", "09:00"), std::tuple("T-2", "SO 62200 09400", "14:00")}) {
        const Visit begun = need(newVisit(session, {}, {}));
        Visit visit = begun;
        visit.position = need(need(session.projector())->read(reference, {}));
        visit.tree = need(newTree(session, label, {}, visit.position)).id;
        visit.time = need(LocalTime::parse(time));
        visit.observations.resize(1);
        visit.observations[0].sign = "S02";
        visit.observations[0].answer = Answer::seen;
        places.push_back(*visit.position);
        if (const auto done = changeVisit(session, begun, visit, "scene"); !done)
            throw std::runtime_error(done.error().code);
    }
    drawPhotos(folder);
    ImportOptions options;
    options.photosToTray = true;
    options.look = ui::lookAtPicture;
    need(importFiles(session, {folder.toStdString()}, options));
    for (const Drawn& photo : drawn)
        tag(session, photo, places);
}

} // namespace cupule::test
