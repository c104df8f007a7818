// The measuring dialog with an invented photo, its lines set.

#include <QMouseEvent>
#include <QTemporaryDir>
#include <QTest>

#include "core/protocol/pack_reader.h"
#include "tests/gui/picture_book.h"
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
        spec.figure.kind = QStringLiteral("gall_midrib");
        spec.figure.gallMillimetres = 14;
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

const bool added = addPicture({QStringLiteral("measure"), measured, true}) &&
                   addPicture({QStringLiteral("measure-first"), [] { return opened("S02"); }, true}) &&
                   addPicture({QStringLiteral("measure-colour"), colour, true}) &&
                   addPicture({QStringLiteral("photos-look"), [] { return opened(""); }, true});

} // namespace

} // namespace cupule::test
