// The measuring dialog with an invented photo, its lines set.

#include <QAction>
#include <QMouseEvent>
#include <QTemporaryDir>
#include <QTest>

#include "core/protocol/pack_reader.h"
#include "tests/gui/picture_book.h"
#include "tests/gui/photo_scene.h"
#include "tests/gui/whole_window.h"
#include "ui/bridge/text.h"
#include "ui/daysheet/evidence_dialog.h"
#include "ui/daysheet/photo_list.h"
#include "ui/daysheet/photos_page.h"
#include "ui/figures/figure.h"
#include "ui/photos/measure_dialog.h"
#include "ui/photos/photo_canvas.h"

namespace cupule::test {

namespace {

using namespace cupule::ui;

/// An invented photo: a painted gall with a ruler, as the demonstration has them.
QString inventedPhoto()
{
    static const QTemporaryDir folder;
    static const QString path = [] {
        PhotoSpec spec;
        spec.figure = plateOf("gall_midrib");
        spec.figure.galls = {{.millimetres = 14}};
        const QString file = folder.filePath(QStringLiteral("gall.jpg"));
        figurePhoto(spec).save(file);
        return file;
    }();
    return path;
}

std::unique_ptr<QWidget> dialog(const std::string& sign)
{
    MeasureRequest request;
    request.sign = sign;
    request.tree = QStringLiteral("T-03");
    request.figure = QStringLiteral("gall_midrib");
    request.knownMillimetres = 100;
    return std::make_unique<MeasureDialog>(
        std::vector<PhotoToMeasure>{{inventedPhoto(), QStringLiteral("gall.jpg")}}, request, builtInPack());
}

void drag(PhotoCanvas& canvas, const QPointF& from, const QPointF& to)
{
    QTest::mousePress(&canvas, Qt::LeftButton, {}, canvas.toScreen(from).toPoint());
    QTest::mouseMove(&canvas, canvas.toScreen(to).toPoint());
    QTest::mouseRelease(&canvas, Qt::LeftButton, {}, canvas.toScreen(to).toPoint());
}

/// As large as it opens: lines are set on the picture as it lies then.
std::unique_ptr<QWidget> opened(const std::string& sign)
{
    auto made = dialog(sign);
    auto* measuring = static_cast<MeasureDialog*>(made.get());
    made->show();
    (void)QTest::qWaitFor([measuring] { return measuring->isSettled(); }, 20000);
    return made;
}

std::unique_ptr<QWidget> measured()
{
    auto made = opened("S02");
    PhotoCanvas& canvas = *static_cast<MeasureDialog*>(made.get())->canvas();
    drag(canvas, {115, 1128}, {855, 1093});
    drag(canvas, {680, 458}, {775, 486});
    return made;
}

std::unique_ptr<QWidget> colour()
{
    auto made = opened("S02");
    QTest::keyClick(static_cast<MeasureDialog*>(made.get())->canvas(), Qt::Key_C);
    return made;
}

/// Day of a new store, the photos of the scene in its tray; P and then these keys.
std::unique_ptr<QWidget> page(bool scene, const QString& photo, std::initializer_list<Qt::Key> keys)
{
    static const QTemporaryDir folder;
    auto window = std::make_unique<WholeWindow>(pictureLook());
    Person person;
    person.code = "MH";
    person.name = "Maud Harrow";
    window->bench().setToday(*CivilDate::make(2026, 6, 20));
    if (!window->openEmpty(person, {Role::volunteer, Role::sampleHandler}))
        return window;
    if (scene)
        makePhotoScene(*window->bench().session(), folder.path());
    window->bench().tellChanged();
    window->goToPlace(QStringLiteral("day"));
    window->resize(1366, 768);
    window->show();
    window->findChild<QAction*>(QStringLiteral("day-photos"))->trigger();
    auto* shown = window->findChild<PhotosPage*>();
    (void)QTest::qWaitFor([shown] { return !shown->desk().isBusy(); }, 30000);
    PhotoList& list = *shown->list();
    for (int row = 0; row < list.photos().rowCount(); ++row)
        if (const PhotoRow* at = list.photos().row(list.model()->index(row, 0)); at != nullptr && text(at->photo.originalName) == photo)
            list.setCurrentIndex(list.model()->index(row, 0));
    list.setFocus();
    for (const Qt::Key key : keys)
        QTest::keyClick(window->focusWidget(), key);
    (void)window->grab();   // asks for the small pictures
    (void)QTest::qWaitFor([shown] { return shown->isSettled(); }, 30000);
    return window;
}

/// What a photo of the scene shows, asked after it lies with its visit.
std::unique_ptr<QWidget> shows()
{
    QWidget* window = page(true, QStringLiteral("IMG_0613.jpg"), {Qt::Key_A}).release();
    const PhotoRow* row = window->findChild<PhotosPage*>()->list()->current();
    auto dialog = std::make_unique<EvidenceDialog>(static_cast<WholeWindow*>(window)->bench(), row != nullptr ? row->photo : PhotoNote(),
                                                   builtInPack());
    QObject::connect(dialog.get(), &QObject::destroyed, window, [window] { delete window; });
    return dialog;
}

const bool pagesAdded =
    addPicture({QStringLiteral("photos-shows"), shows, false, 460}) &&
    addPicture({QStringLiteral("photos-empty"), [] { return page(false, {}, {}); }, true}) &&
    addPicture({QStringLiteral("photos-proposed"), [] { return page(true, QStringLiteral("IMG_0611.jpg"), {}); }, true}) &&
    addPicture({QStringLiteral("photos-clock"), [] { return page(true, QStringLiteral("IMG_0612.jpg"), {Qt::Key_K, Qt::Key_Up}); }, true}) &&
    addPicture({QStringLiteral("photos-copy"), [] { return page(true, QStringLiteral("sent.jpg"), {}); }, true}) &&
    addPicture({QStringLiteral("photos-loose"), [] { return page(true, QStringLiteral("IMG_0615.jpg"), {}); }, true}) &&
    addPicture({QStringLiteral("photos-taken"), [] { return page(true, QStringLiteral("IMG_0613.jpg"), {Qt::Key_A}); }, true});

const bool added = addPicture({QStringLiteral("measure"), measured, true}) &&
                   addPicture({QStringLiteral("measure-first"), [] { return opened("S02"); }, true}) &&
                   addPicture({QStringLiteral("measure-colour"), colour, true}) &&
                   addPicture({QStringLiteral("photos-look"), [] { return opened(""); }, true});

} // namespace

} // namespace cupule::test
