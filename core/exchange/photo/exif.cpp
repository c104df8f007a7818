#include <cstdint>
#include <mutex>

#include <exiv2/exiv2.hpp>

#include "core/base/text.h"
#include "core/exchange/photo/exif_detail.h"

namespace cupule::photo_detail {

namespace {

constexpr std::size_t longestText = 400;
constexpr std::size_t longestComplaint = 1000;

// Where the library's messages go while this thread reads a photo: its handler is a bare function.
thread_local std::string* complaints = nullptr;

/// Errors count, warnings are the small sins of every second camera, and a maker's own directory is no one else's.
void hear(int level, const char* message)
{
    const std::string_view text(message);
    const bool makersOwn = text.find("considered invalid; not read") != std::string_view::npos;
    if (complaints != nullptr && level >= Exiv2::LogMsg::error && !makersOwn && complaints->size() < longestComplaint)
        complaints->append(text);
}

/// The library keeps its state in globals that must be made before a second thread comes.
void prepareLibrary()
{
    static std::once_flag once;
    std::call_once(once, [] {
        Exiv2::LogMsg::setHandler(&hear);
        Exiv2::XmpParser::initialize();
        Exiv2::enableBMFF(true);
    });
}

struct Hearing {
    explicit Hearing(std::string& into) { complaints = &into; }
    ~Hearing() { complaints = nullptr; }
    Hearing(const Hearing&) = delete;
    Hearing& operator=(const Hearing&) = delete;
};

const Exiv2::Exifdatum* find(const Exiv2::ExifData& data, std::string_view group, int tag)
{
    for (const auto& datum : data)
        if (datum.tag() == tag && datum.groupName() == group)
            return &datum;
    return nullptr;
}

std::string textOf(const Exiv2::ExifData& data, std::string_view group, int tag)
{
    const auto* datum = find(data, group, tag);
    if (datum == nullptr || datum->typeId() != Exiv2::asciiString || datum->size() > static_cast<long>(longestText))
        return {};
    const std::string text = datum->toString();
    return std::string(trim(std::string_view(text).substr(0, text.find('\0'))));
}

Fractions fractionsOf(const Exiv2::ExifData& data, int tag)
{
    Fractions out;
    const auto* datum = find(data, "GPSInfo", tag);
    if (datum == nullptr)
        return out;
    out.state = Fractions::State::empty;
    const long count = datum->count();
    if (count == 0 || datum->size() == 0)
        return out;
    out.state = Fractions::State::unreadable;
    if (datum->size() <= static_cast<long>(longestText))
        out.text = datum->toString();
    if (datum->typeId() != Exiv2::unsignedRational || count > 3)
        return out;
    for (long i = 0; i < count; ++i) {
        const auto [above, below] = datum->toRational(i);
        if (above == 0 && below == 0) {
            out.state = Fractions::State::empty;
            return out;
        }
        // the library gives signed numbers for what is stored unsigned
        if (below != 0)
            out.parts.push_back(static_cast<double>(static_cast<std::uint32_t>(above))
                                / static_cast<double>(static_cast<std::uint32_t>(below)));
    }
    if (static_cast<long>(out.parts.size()) == count)
        out.state = Fractions::State::read;
    return out;
}

std::string xmpText(const Exiv2::XmpData& data, const char* key)
{
    const auto datum = data.findKey(Exiv2::XmpKey(key));
    if (datum == data.end() || datum->size() > static_cast<long>(longestText))
        return {};
    const std::string text = datum->toString();
    return std::string(trim(text));
}

void readExif(const Exiv2::ExifData& exif, Tags& tags)
{
    if (const auto* datum = find(exif, "Image", 0x0112); datum != nullptr && datum->count() > 0)
        tags.orientation = static_cast<int>(datum->toLong());
    tags.dateTimeOriginal = textOf(exif, "Photo", 0x9003);
    tags.dateTimeDigitized = textOf(exif, "Photo", 0x9004);
    tags.subSecOriginal = textOf(exif, "Photo", 0x9291);
    tags.offsetOriginal = textOf(exif, "Photo", 0x9011);
    tags.latitudeRef = textOf(exif, "GPSInfo", 0x0001);
    tags.latitude = fractionsOf(exif, 0x0002);
    tags.longitudeRef = textOf(exif, "GPSInfo", 0x0003);
    tags.longitude = fractionsOf(exif, 0x0004);
    tags.altitude = fractionsOf(exif, 0x0006);
    if (const auto* datum = find(exif, "GPSInfo", 0x0005); datum != nullptr && datum->count() > 0)
        tags.belowSea = datum->toLong() == 1;
    tags.gpsTime = fractionsOf(exif, 0x0007);
    tags.gpsDate = textOf(exif, "GPSInfo", 0x001D);
}

void readXmp(const Exiv2::XmpData& xmp, Tags& tags)
{
    tags.xmpDateTimeOriginal = xmpText(xmp, "Xmp.exif.DateTimeOriginal");
    tags.xmpLatitude = xmpText(xmp, "Xmp.exif.GPSLatitude");
    tags.xmpLongitude = xmpText(xmp, "Xmp.exif.GPSLongitude");
    tags.xmpAltitude = xmpText(xmp, "Xmp.exif.GPSAltitude");
    tags.xmpBelowSea = xmpText(xmp, "Xmp.exif.GPSAltitudeRef") == "1";
    if (const auto datum = xmp.findKey(Exiv2::XmpKey("Xmp.tiff.Orientation")); datum != xmp.end() && !tags.orientation)
        tags.orientation = static_cast<int>(datum->toLong());
}

} // namespace

Tags readTags(std::string_view bytes)
{
    prepareLibrary();
    Tags tags;
    std::string heard;
    const Hearing hearing(heard);
    try {
        const auto image = Exiv2::ImageFactory::open(reinterpret_cast<const Exiv2::byte*>(bytes.data()),
                                                     static_cast<long>(bytes.size()));
        tags.isPicture = image->mimeType().starts_with("image/");
        try {
            image->readMetadata();
        } catch (const std::exception& error) {
            tags.damaged = true;
            heard += error.what();
        }
        tags.width = image->pixelWidth();
        tags.height = image->pixelHeight();
        readExif(image->exifData(), tags);
        readXmp(image->xmpData(), tags);
    } catch (const std::exception& error) {
        tags.damaged = true;
        heard += error.what();
    }
    tags.damaged = tags.damaged || !heard.empty();
    tags.complaint = madeUtf8(trim(heard));
    return tags;
}

} // namespace cupule::photo_detail
