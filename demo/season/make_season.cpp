// Writes the inputs of the demonstration into a folder: spring.csv, summer.csv, receiver.gpx, photos/spring/*.jpg,
// photos/summer/*.jpg, and photos/IMG_0461.jpg of the visit that is entered by hand. Seeded; the same each time.
//
//   make_season FOLDER

#include <filesystem>
#include <iostream>

#include <exiv2/exiv2.hpp>
#include <fmt/format.h>

#include <QBuffer>
#include <QGuiApplication>

#include "core/base/file.h"
#include "core/position/transform.h"
#include "demo/season/rows.h"
#include "ui/figures/figure.h"

using namespace cupule;
using namespace cupule::demo;

namespace {

struct Fix {
    double latitude = 0, longitude = 0;
};

/// What a photo is to look like and what its camera wrote.
struct DemoPhoto {
    std::string file;
    std::string tree, date;                 ///< the row that it belongs to
    const char* figure;
    const char* colour = "";
    double gallMillimetres = 0;
    int minutesAfter = 2;
    int daysWrong = 0;                      ///< a camera clock that runs behind
    double metresAway = 4;
    double blur = 0;
};

/// Of the visit that walk.sh enters by hand, at about ten past ten.
constexpr const char* handPhoto = "IMG_0461.jpg";

const std::vector<DemoPhoto>& photos()
{
    static const std::vector<DemoPhoto> all{
        {"IMG_0411.jpg", "T-03", "2026-06-11", "gall_midrib", "green", 14.2},
        {"IMG_0412.jpg", "T-03", "2026-06-11", "shoot_castanea", "", 0, 3},
        {"IMG_0413.jpg", "T-03", "2026-06-11", "leaf_castanea", "", 0, 4},
        {"IMG_0402.jpg", "Q-01", "2026-06-11", "shoot_castanea"},
        {"IMG_0403.jpg", "Q-02", "2026-06-11", "shoot_castanea"},
        {"IMG_0405.jpg", "Q-04", "2026-06-11", "leaf_castanea"},
        {"IMG_0407.jpg", "T-01", "2026-06-11", "shoot_castanea", "", 0, 2, 3},
        {"IMG_0460.jpg", "T-01", "2026-06-27", "gall_shoot_tip", "pink", 11},
        {handPhoto, "T-03", "2026-06-27", "gall_midrib", "pink", 16.5},
        {"IMG_0520.jpg", "T-05", "2026-07-25", "gall_exit_holes", "red", 18},
        {"IMG_0521.jpg", "L-03", "2026-07-25", "gall_shoot_tip", "green", 12.5},
        {"IMG_0522.jpg", "L-03", "2026-07-25", "leaf_castanea", "", 0, 3},
        {"IMG_0523.jpg", "L-04", "2026-07-25", "shoot_castanea", "", 0, 2, 0, 4200},
        {"IMG_0440.jpg", "H-08", "2026-06-20", "leaf_aesculus"},
        {"IMG_0441.jpg", "P-05", "2026-06-13", "look_puckered", "", 0, 2, 0, 4, 3},
        {"IMG_0610.jpg", "T-03", "2026-09-12", "gall_dry_twig", "dry", 15},
        {"IMG_0640.jpg", "T-01", "2026-10-17", "gall_dry_twig", "dry", 12},
        {"IMG_0641.jpg", "T-03", "2026-10-17", "gall_dry_twig", "dry", 15},
        {"IMG_0642.jpg", "T-05", "2026-10-17", "gall_dry_twig", "dry", 17},
        {"IMG_0643.jpg", "T-06", "2026-10-17", "gall_dry_twig", "dry", 13},
    };
    return all;
}

std::optional<Fix> fixOf(Projector& projector, double easting, double northing)
{
    PositionOptions options;
    options.system = "OSGB";
    const auto position = projector.read(fmt::format("{:.0f} {:.0f}", easting, northing), options);
    if (!position)
        return std::nullopt;
    return Fix{position->latitude, position->longitude};
}

/// Degrees, minutes and hundredths of a second, as cameras write them.
std::string exifDegrees(double degrees)
{
    degrees = std::abs(degrees);
    const int d = static_cast<int>(degrees);
    const int m = static_cast<int>((degrees - d) * 60);
    const int s = static_cast<int>(((degrees - d) * 60 - m) * 6000);
    return fmt::format("{}/1 {}/1 {}/100", d, m, s);
}

void writeExif(const std::string& path, const SeasonRow& row, const DemoPhoto& photo, const Fix& fix)
{
    auto image = Exiv2::ImageFactory::open(path);
    Exiv2::ExifData exif;
    const int minute = row.minuteOfDay + photo.minutesAfter;
    const CivilDate day{row.date.days - photo.daysWrong};
    exif["Exif.Photo.DateTimeOriginal"] =
        fmt::format("{:04d}:{:02d}:{:02d} {:02d}:{:02d}:12", day.year(), day.month(), day.day(), minute / 60, minute % 60);
    exif["Exif.Photo.OffsetTimeOriginal"] = "+01:00";
    exif["Exif.Image.Orientation"] = std::uint16_t{1};
    exif["Exif.Image.ImageDescription"] = "Drawn for a demonstration; not a photograph";
    exif["Exif.GPSInfo.GPSLatitudeRef"] = fix.latitude < 0 ? "S" : "N";
    exif["Exif.GPSInfo.GPSLatitude"] = exifDegrees(fix.latitude);
    exif["Exif.GPSInfo.GPSLongitudeRef"] = fix.longitude < 0 ? "W" : "E";
    exif["Exif.GPSInfo.GPSLongitude"] = exifDegrees(fix.longitude);
    image->setExifData(exif);
    image->writeMetadata();
}

/// The row that a photo belongs to; for the one of the visit by hand, the tree on that day.
std::optional<SeasonRow> rowOf(const DemoPhoto& photo, const std::vector<SeasonRow>& rows)
{
    for (const SeasonRow& row : rows)
        if (row.tree.label == photo.tree && row.date.text() == photo.date)
            return row;
    if (photo.file != handPhoto)
        return std::nullopt;
    SeasonRow row;
    for (const ValeTree& tree : trees())
        if (tree.label == photo.tree)
            row.tree = tree;
    row.date = *CivilDate::parse(photo.date);
    row.minuteOfDay = 608;
    return row;
}

std::string folderOf(const DemoPhoto& photo)
{
    return photo.file == handPhoto ? "" : isEarly(*CivilDate::parse(photo.date)) ? "spring/" : "summer/";
}

bool writePhoto(const std::string& folder, const DemoPhoto& photo, const std::vector<SeasonRow>& rows, Projector& projector)
{
    if (const auto found = rowOf(photo, rows)) {
        const SeasonRow& row = *found;
        const auto fix = fixOf(projector, row.tree.eastingMetres + photo.metresAway, row.tree.northingMetres);
        if (!fix)
            return false;
        ui::PhotoSpec spec;
        spec.figure = plateOf(photo.figure, static_cast<std::uint32_t>(photo.file[6] * 100 + photo.file[7]));
        if (const auto tone = gallToneNamed(photo.colour))
            spec.figure.galls = {{.tone = *tone, .millimetres = photo.gallMillimetres, .exitHoles = -1}};
        spec.size = QSize(1200, 900);
        spec.blur = photo.blur;
        QByteArray bytes;
        QBuffer buffer(&bytes);
        const std::string path = folder + "/" + folderOf(photo) + photo.file;
        if (!ui::figurePhoto(spec).save(&buffer, "JPEG", 82)
            || !writeFile(path, std::string_view(bytes.constData(), static_cast<std::size_t>(bytes.size()))))
            return false;
        writeExif(path, row, photo, *fix);
        return true;
    }
    return false;
}

std::string gpx(Projector& projector)
{
    std::string out = "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n"
                      "<gpx version=\"1.1\" creator=\"Tharn Vale demonstration\" xmlns=\"http://www.topografix.com/GPX/1/1\">\n";
    int minute = 560;
    for (const ValeTree& tree : trees()) {
        const auto fix = fixOf(projector, tree.eastingMetres, tree.northingMetres);
        if (!fix)
            continue;
        out += fmt::format("  <wpt lat=\"{:.6f}\" lon=\"{:.6f}\"><time>2026-05-09T{:02d}:{:02d}:00Z</time><name>{}</name>"
                           "<desc>{}, {}</desc></wpt>\n",
                           fix->latitude, fix->longitude, minute / 60, minute % 60, tree.label, kindLetters(tree.kind),
                           tree.site == 1 ? "Tanner&apos;s Hanger" : sites()[tree.site].name);
        minute += 4;
    }
    return out + "</gpx>\n";
}

int complain(const std::string& words)
{
    std::cerr << words << '\n';
    return 1;
}

} // namespace

int main(int argc, char** argv)
{
    if (argc != 2)
        return complain("usage: make_season FOLDER");
    qputenv("QT_QPA_PLATFORM", "offscreen");
    qputenv("QT_LOGGING_RULES", "*.warning=false");
    const QGuiApplication app(argc, argv);
    Exiv2::LogMsg::setLevel(Exiv2::LogMsg::mute);
    const std::string folder = argv[1];
    std::error_code error;
    for (const char* below : {"spring", "summer"})
        std::filesystem::create_directories(folder + "/photos/" + below, error);
    auto projector = Projector::create({});
    if (!projector)
        return complain("no projector: " + projector.error().code);
    const auto rows = seasonRows();
    if (!writeFile(folder + "/spring.csv", asCsv(rows, true)) || !writeFile(folder + "/summer.csv", asCsv(rows, false))
        || !writeFile(folder + "/receiver.gpx", gpx(*projector)))
        return complain("cannot write into " + folder);
    for (const DemoPhoto& photo : photos())
        if (!writePhoto(folder + "/photos", photo, rows, *projector))
            return complain("no photo " + photo.file);
    // The same picture sent again under another name.
    std::filesystem::copy_file(folder + "/photos/spring/IMG_0402.jpg", folder + "/photos/spring/from_maud.jpg",
                               std::filesystem::copy_options::overwrite_existing, error);
    std::cout << "Two tables with " << rows.size() << " rows, " << trees().size() << " points of a receiver, "
              << photos().size() + 1 << " photos (drawn by the program, with the tags that a camera writes).\n";
    return error ? complain("cannot copy a photo") : 0;
}
