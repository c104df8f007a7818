#include "core/exchange/photo/heif_size_detail.h"

namespace cupule::photo_detail {

namespace {

std::uint32_t bigEndian(std::string_view bytes)
{
    std::uint32_t value = 0;
    for (std::size_t i = 0; i < 4; ++i)
        value = value << 8 | static_cast<unsigned char>(bytes[i]);
    return value;
}

/// Takes the first box off `rest`: its four letters and its content. False where there is none, or a broken one.
bool takeBox(std::string_view& rest, std::string_view& name, std::string_view& content)
{
    if (rest.size() < 8)
        return false;
    std::uint64_t size = bigEndian(rest);
    std::size_t header = 8;
    if (size == 1 && rest.size() >= 16) {
        size = static_cast<std::uint64_t>(bigEndian(rest.substr(8))) << 32 | bigEndian(rest.substr(12));
        header = 16;
    } else if (size == 0) {
        size = rest.size();
    }
    if (size < header || size > rest.size())
        return false;
    name = rest.substr(4, 4);
    content = rest.substr(header, static_cast<std::size_t>(size) - header);
    rest.remove_prefix(static_cast<std::size_t>(size));
    return true;
}

std::string_view child(std::string_view boxes, std::string_view wanted)
{
    std::string_view name;
    std::string_view content;
    while (takeBox(boxes, name, content))
        if (name == wanted)
            return content;
    return {};
}

} // namespace

std::optional<std::pair<std::uint32_t, std::uint32_t>> heifSize(std::string_view bytes)
{
    const auto meta = child(bytes, "meta");
    if (meta.size() < 4)
        return std::nullopt;
    auto properties = child(child(meta.substr(4), "iprp"), "ipco");
    std::optional<std::pair<std::uint32_t, std::uint32_t>> largest;
    std::uint64_t most = 0;
    std::string_view name;
    std::string_view content;
    while (takeBox(properties, name, content)) {
        if (name != "ispe" || content.size() < 12)
            continue;
        const std::uint32_t width = bigEndian(content.substr(4));
        const std::uint32_t height = bigEndian(content.substr(8));
        if (const std::uint64_t area = std::uint64_t{width} * height; area > most) {
            most = area;
            largest = {width, height};
        }
    }
    return largest;
}

} // namespace cupule::photo_detail
