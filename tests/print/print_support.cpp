#define CATCH_CONFIG_EXTERNAL_INTERFACES
#include "tests/print/print_support.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdio>
#include <memory>

#include <QDir>
#include <QGuiApplication>
#include <QLocale>
#include <QStandardPaths>

#include "core/base/file.h"
#include "core/base/text.h"
#include "tests/support/catch.h"
#include "tests/support/shared_data.h"

namespace cupule::test {

namespace {

constexpr double mmPerInch = 25.4;

std::unique_ptr<QGuiApplication> g_application;

/// Fonts need an application; the test main knows nothing of it.
struct Application : Catch::TestEventListenerBase {
    using TestEventListenerBase::TestEventListenerBase;

    void testRunStarting(const Catch::TestRunInfo&) override
    {
        static int argc = 1;
        static char name[] = "test_print";
        static char* argv[] = {name, nullptr};
        qputenv("QT_QPA_PLATFORM", "offscreen");
        QLocale::setDefault(QLocale(QLocale::English, QLocale::UnitedKingdom));
        g_application = std::make_unique<QGuiApplication>(argc, argv);
    }
    void testRunEnded(const Catch::TestRunStats&) override { g_application.reset(); }
};

CATCH_REGISTER_LISTENER(Application)

std::string outputOf(const std::string& command)
{
    const std::unique_ptr<FILE, int (*)(FILE*)> pipe(popen((command + " 2>/dev/null").c_str(), "r"), &pclose);
    std::string text;
    std::array<char, 4096> buffer{};
    while (const std::size_t got = pipe ? std::fread(buffer.data(), 1, buffer.size(), pipe.get()) : 0)
        text.append(buffer.data(), got);
    return text;
}

std::string kept(const std::string& folder, const std::string& pdf)
{
    const std::string file = folder + "/paper.pdf";
    REQUIRE(writeFile(file, pdf));
    return file;
}

} // namespace

QImage emptyPage()
{
    QImage image(pixels(210), pixels(297), QImage::Format_RGB32);
    const int dotsPerMetre = static_cast<int>(std::lround(testDotsPerInch / mmPerInch * 1000));
    image.setDotsPerMeterX(dotsPerMetre);
    image.setDotsPerMeterY(dotsPerMetre);
    image.fill(Qt::white);
    return image;
}

int pixels(double millimetres)
{
    return static_cast<int>(std::lround(millimetres * testDotsPerInch / mmPerInch));
}

int coloured(const QImage& image)
{
    int count = 0;
    for (int y = 0; y < image.height(); ++y)
        for (int x = 0; x < image.width(); ++x) {
            const QRgb pixel = image.pixel(x, y);
            count += qRed(pixel) == qGreen(pixel) && qGreen(pixel) == qBlue(pixel) ? 0 : 1;
        }
    return count;
}

bool haveTools(const std::vector<std::string>& programs)
{
    for (const auto& program : programs)
        if (QStandardPaths::findExecutable(QString::fromStdString(program)).isEmpty()) {
            skipped(program + " is not installed");
            return false;
        }
    return true;
}

std::vector<std::string> codesIn(const QImage& image)
{
    const std::string file = temporaryFolder() + "/codes.png";
    REQUIRE(image.save(QString::fromStdString(file)));
    std::vector<std::string> codes;
    for (auto& line : split(outputOf("zbarimg --quiet --raw '" + file + "'"), '\n'))
        if (!line.empty())
            codes.push_back(std::move(line));
    std::sort(codes.begin(), codes.end());
    return codes;
}

std::vector<QImage> pagesOf(const std::string& pdf)
{
    const std::string folder = temporaryFolder();
    outputOf("pdftoppm -png -r " + std::to_string(testDotsPerInch) + " '" + kept(folder, pdf) + "' '" + folder + "/page'");
    std::vector<QImage> pages;
    const QDir dir(QString::fromStdString(folder));
    for (const QString& name : dir.entryList({QStringLiteral("page*.png")}, QDir::Files, QDir::Name))
        pages.emplace_back(dir.filePath(name));
    return pages;
}

std::string textOf(const std::string& pdf)
{
    return outputOf("pdftotext -layout '" + kept(temporaryFolder(), pdf) + "' -");
}

} // namespace cupule::test
