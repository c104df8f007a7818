// Renders named widgets and screens to PNG files, to be looked at after every change of a screen:
//
//   pictures OUTDIR [--only NAME]... [--size WxH]... [--theme light|dark]... [--text PERCENT]...
//            [--store FILE --profile DIR [--today DATE] [--day DATE]]
//
// Without options: everything, whole windows at 1366x700, 1366x768 and 1920x1080, light and dark, text 100,
// 150, 175 %.

#include <cstdio>
#include <filesystem>

#include <QApplication>
#include <QCommandLineParser>
#include <QDialog>
#include <QDir>
#include <QLayout>
#include <QTemporaryDir>
#include <QTest>
#include <QVBoxLayout>

#include "tests/gui/picture_book.h"
#include "ui/bridge/plurals.h"
#include "ui/map/outline.h"
#include "ui/photos/thumbnails.h"
#include "ui/shell/workbench.h"
#include "ui/theme/theme.h"
#include "ui/training/figure_shop.h"

namespace cupule::test {

namespace {

PictureStore g_store;
ui::Look* g_look = nullptr;

std::vector<Picture>& book()
{
    static std::vector<Picture> all;
    return all;
}

struct Wanted {
    QStringList only, sizes, themes, texts;
    QString folder;
};

QSize sizeOf(const QString& text)
{
    const QStringList parts = text.split(QLatin1Char('x'));
    return parts.size() == 2 ? QSize(parts[0].toInt(), parts[1].toInt()) : QSize();
}

/// Widgets may lay themselves out in several steps; three passes settle them all.
void settle(QWidget& widget)
{
    for (int pass = 0; pass < 3; ++pass) {
        QCoreApplication::sendPostedEvents();
        QCoreApplication::processEvents();
        if (widget.layout())
            widget.layout()->activate();
    }
}

/// Photos are decoded, large figures painted and outlines of maps made beside the window.
void waitForPhotos(QWidget& widget)
{
    (void)widget.grab();   // asks for what is seen
    (void)QTest::qWaitFor([] { return ui::Outlines::all().isSettled(); }, 20000);
    for (ui::Thumbnails* photos : widget.findChildren<ui::Thumbnails*>())
        (void)QTest::qWaitFor([photos] { return photos->isSettled(); }, 20000);
    for (ui::FigureShop* figures : widget.findChildren<ui::FigureShop*>())
        (void)QTest::qWaitFor([&] { (void)widget.grab(); return figures->isSettled(); }, 20000);
}

bool save(QWidget& widget, const QString& path)
{
    settle(widget);
    waitForPhotos(widget);
    const bool good = widget.grab().save(path);
    std::printf("%s%s\n", qPrintable(path), good ? "" : " could not be written");
    return good;
}

bool renderWindow(const Picture& picture, const Wanted& wanted, const QString& rest)
{
    bool good = true;
    for (const QString& size : wanted.sizes) {
        const std::unique_ptr<QWidget> widget = picture.make();
        widget->resize(sizeOf(size));
        widget->show();
        good &= save(*widget, wanted.folder + QStringLiteral("/%1-%2-%3.png").arg(picture.name, size, rest));
    }
    return good;
}

bool renderPart(const Picture& picture, const Wanted& wanted, const QString& rest)
{
    const std::unique_ptr<QWidget> widget = picture.make();
    widget->resize(picture.width, 100);
    widget->show();
    settle(*widget);
    const int height =
        widget->hasHeightForWidth() ? widget->heightForWidth(picture.width) : widget->sizeHint().height();
    widget->resize(picture.width, height);
    return save(*widget, wanted.folder + QStringLiteral("/%1-%2.png").arg(picture.name, rest));
}

bool render(const Wanted& wanted, ui::Look& look)
{
    bool good = true;
    for (const QString& theme : wanted.themes)
        for (const QString& text : wanted.texts) {
            look.setMode(theme == QLatin1String("dark") ? ui::Look::Mode::dark : ui::Look::Mode::light);
            look.setTextPercent(text.toInt());
            for (const Picture& picture : pictures()) {
                if (!wanted.only.isEmpty() && !wanted.only.contains(picture.name))
                    continue;
                if (picture.needsStore && g_store.store.isEmpty())
                    continue;
                const QString rest = theme + QLatin1Char('-') + text;
                good &= picture.wholeWindow ? renderWindow(picture, wanted, rest)
                                            : renderPart(picture, wanted, rest);
            }
        }
    return good;
}

QStringList valuesOr(const QCommandLineParser& parser, const QString& option, const QStringList& otherwise)
{
    return parser.isSet(option) ? parser.values(option) : otherwise;
}

} // namespace

bool addPicture(Picture picture)
{
    book().push_back(std::move(picture));
    return true;
}

void showWithin(QWidget& page, QDialog& dialog)
{
    dialog.setMinimumSize(dialog.size());
    auto* row = new QVBoxLayout(&page);
    row->setContentsMargins(0, 0, 0, 0);
    row->addWidget(&dialog);
    dialog.setWindowFlags(Qt::Widget);
    dialog.show();
}

void waitForJobs(ui::Workbench& bench)
{
    while (bench.jobs().busy())
        QCoreApplication::processEvents(QEventLoop::WaitForMoreEvents);
}

const std::vector<Picture>& pictures()
{
    return book();
}

const PictureStore& pictureStore()
{
    return g_store;
}

ui::Look& pictureLook()
{
    return *g_look;
}

/// The store and the profile are copied: opening writes to both.
bool copyStore(const QCommandLineParser& parser, const QTemporaryDir& folder)
{
    const QString store = parser.value(QStringLiteral("store"));
    g_store.today = QDate::fromString(parser.value(QStringLiteral("today")), Qt::ISODate);
    g_store.day = QDate::fromString(parser.value(QStringLiteral("day")), Qt::ISODate);
    if (store.isEmpty())
        return true;
    namespace fs = std::filesystem;
    const fs::path to = folder.path().toStdString();
    std::error_code error;
    fs::copy_file(store.toStdString(), to / "store.cupule", error);
    if (!error)
        fs::copy(store.toStdString() + ".media", to / "store.cupule.media", fs::copy_options::recursive,
                 error);
    if (!error)
        fs::copy(parser.value(QStringLiteral("profile")).toStdString(), to / "profile",
                 fs::copy_options::recursive, error);
    g_store.store = folder.filePath(QStringLiteral("store.cupule"));
    g_store.profile = folder.filePath(QStringLiteral("profile"));
    return !error;
}

int run(QApplication& app)
{
    ui::EnglishPlurals plurals;
    QApplication::installTranslator(&plurals);
    QCommandLineParser parser;
    parser.addPositionalArgument(QStringLiteral("OUTDIR"), QStringLiteral("folder for the PNG files"));
    for (const char* name : {"only", "size", "theme", "text", "store", "profile", "today", "day"})
        parser.addOption({QString::fromLatin1(name), {}, QString::fromLatin1(name)});
    parser.process(app);
    if (parser.positionalArguments().size() != 1) {
        std::fputs(
            "usage: pictures OUTDIR [--only NAME] [--size WxH] [--theme light|dark] [--text PERCENT]\n"
            "       [--store FILE --profile DIR [--today DATE] [--day DATE]]\n",
            stderr);
        return 2;
    }
    Wanted wanted;
    wanted.folder = parser.positionalArguments().front();
    wanted.only = parser.values(QStringLiteral("only"));
    wanted.sizes =
        valuesOr(parser, QStringLiteral("size"),
                 {QStringLiteral("1366x700"), QStringLiteral("1366x768"), QStringLiteral("1920x1080")});
    wanted.themes =
        valuesOr(parser, QStringLiteral("theme"), {QStringLiteral("light"), QStringLiteral("dark")});
    wanted.texts = valuesOr(parser, QStringLiteral("text"),
                            {QStringLiteral("100"), QStringLiteral("150"), QStringLiteral("175")});
    if (!QDir().mkpath(wanted.folder))
        return 3;
    const QTemporaryDir copies;
    if (!copyStore(parser, copies)) {
        std::fputs("the store or the profile could not be copied\n", stderr);
        return 3;
    }
    ui::Look look(app);
    g_look = &look;
    look.apply();
    return render(wanted, look) ? 0 : 3;
}

} // namespace cupule::test

int main(int argc, char** argv)
{
    qputenv("QT_QPA_PLATFORM", "offscreen");
    QApplication app(argc, argv);
    return cupule::test::run(app);
}
