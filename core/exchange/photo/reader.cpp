#include "core/exchange/photo/reader.h"

#include <algorithm>

#include "core/base/file.h"
#include "core/base/text.h"
#include "core/exchange/photo/exif_detail.h"
#include "core/exchange/photo/heif_size_detail.h"
#include "core/exchange/photo/moment_detail.h"
#include "core/exchange/photo/place_detail.h"

namespace cupule {

namespace {

constexpr int mostPixels = 100'000;   // along one side; more is a claim, not a picture

bool isHeifBrand(std::string_view brand)
{
    static constexpr std::string_view known[] = {"heic", "heix", "hevc", "hevx", "heim", "heis", "mif1", "msf1", "avif", "avis"};
    return std::find(std::begin(known), std::end(known), brand) != std::end(known);
}

PhotoFormat formatOf(std::string_view bytes)
{
    using namespace std::string_view_literals;
    if (bytes.starts_with("\xFF\xD8\xFF"))
        return PhotoFormat::jpeg;
    if (bytes.starts_with("\x89PNG\r\n\x1A\n"))
        return PhotoFormat::png;
    if (bytes.starts_with("II*\0"sv) || bytes.starts_with("MM\0*"sv))
        return PhotoFormat::tiff;
    if (bytes.starts_with("RIFF") && bytes.size() >= 12 && bytes.substr(8, 4) == "WEBP")
        return PhotoFormat::webp;
    if (bytes.size() >= 12 && bytes.substr(4, 4) == "ftyp" && isHeifBrand(bytes.substr(8, 4)))
        return PhotoFormat::heif;
    return PhotoFormat::other;
}

void add(ReadProblems& problems, std::string_view kind, const char* column, std::string_view value,
         std::string detail = {})
{
    ReadProblem problem;
    problem.kind = kind;
    problem.column = column;
    problem.value = shownValue(value);
    problem.detail = std::move(detail);
    problem.keeps = true;
    problems.push_back(std::move(problem));
}

void takeSize(std::string_view bytes, const photo_detail::Tags& tags, PhotoFacts& facts)
{
    std::int64_t width = tags.width;
    std::int64_t height = tags.height;
    if (facts.format == PhotoFormat::heif)
        if (const auto size = photo_detail::heifSize(bytes)) {
            width = size->first;
            height = size->second;
        }
    if (width > 0 && height > 0 && width <= mostPixels && height <= mostPixels) {
        facts.width = static_cast<int>(width);
        facts.height = static_cast<int>(height);
    } else if (width != 0 || height != 0) {
        facts.damaged = true;
        add(facts.problems, kind::damagedMetadata, "size", std::to_string(width) + " x " + std::to_string(height));
    }
}

} // namespace

std::string_view photoFormatName(PhotoFormat format)
{
    switch (format) {
    case PhotoFormat::jpeg:
        return "jpeg";
    case PhotoFormat::png:
        return "png";
    case PhotoFormat::tiff:
        return "tiff";
    case PhotoFormat::webp:
        return "webp";
    case PhotoFormat::heif:
        return "heif";
    case PhotoFormat::other:
        break;
    }
    return "other";
}

std::string_view photoPositionStatusName(PhotoPositionStatus status)
{
    switch (status) {
    case PhotoPositionStatus::none:
        break;
    case PhotoPositionStatus::read:
        return "read";
    case PhotoPositionStatus::readFromXmp:
        return "read-from-xmp";
    case PhotoPositionStatus::noFix:
        return "no-fix";
    case PhotoPositionStatus::noHemisphere:
        return "no-hemisphere";
    case PhotoPositionStatus::unreadable:
        return "unreadable";
    }
    return "none";
}

Result<PhotoFacts> readPhoto(const std::string& path, const PhotoOptions& options)
{
    const auto bytes = readFile(path, options.limitBytes);
    if (!bytes)
        return tl::unexpected<Fault>(bytes.error());
    PhotoFacts facts;
    facts.format = formatOf(*bytes);
    const photo_detail::Tags tags = photo_detail::readTags(*bytes);
    if (facts.format == PhotoFormat::other && !tags.isPicture)
        return fail(Fault{"photo.not-a-picture", FaultKind::data, {{"file", path}}, {path, 0, 0, 0, {}}, tags.complaint});
    facts.bytes = static_cast<std::int64_t>(bytes->size());
    facts.sha256 = sha256(*bytes);
    facts.damaged = tags.damaged;
    if (tags.damaged)
        add(facts.problems, kind::damagedMetadata, "metadata", tags.complaint);
    takeSize(*bytes, tags, facts);
    const int orientation = tags.orientation.value_or(1);
    facts.orientation = orientation >= 1 && orientation <= 8 ? orientation : 1;
    photo_detail::Notes notes = [&](std::string_view kind, const char* column, std::string_view value,
                                    std::string detail) { add(facts.problems, kind, column, value, std::move(detail)); };
    facts.time = photo_detail::timeOf(tags, notes);
    facts.position = photo_detail::positionOf(tags, notes);
    return facts;
}

} // namespace cupule
