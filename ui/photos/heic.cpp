#include "ui/photos/heic.h"

#include <memory>

#include <libheif/heif.h>

#include <QFile>
#include <QLibrary>

namespace cupule::ui {

namespace {

constexpr int largestSide = 20000;   // no camera's picture is larger

/// The functions of the library that are used, by their declared types.
struct Heif {
    QLibrary library{QStringLiteral("heif"), 1};
    decltype(&heif_context_alloc) contextAlloc = function<decltype(&heif_context_alloc)>("heif_context_alloc");
    decltype(&heif_context_free) contextFree = function<decltype(&heif_context_free)>("heif_context_free");
    decltype(&heif_context_read_from_memory_without_copy) read =
        function<decltype(&heif_context_read_from_memory_without_copy)>("heif_context_read_from_memory_without_copy");
    decltype(&heif_context_get_primary_image_handle) primary =
        function<decltype(&heif_context_get_primary_image_handle)>("heif_context_get_primary_image_handle");
    decltype(&heif_image_handle_release) handleRelease =
        function<decltype(&heif_image_handle_release)>("heif_image_handle_release");
    decltype(&heif_decode_image) decode = function<decltype(&heif_decode_image)>("heif_decode_image");
    decltype(&heif_image_release) imageRelease = function<decltype(&heif_image_release)>("heif_image_release");
    decltype(&heif_image_get_width) width = function<decltype(&heif_image_get_width)>("heif_image_get_width");
    decltype(&heif_image_get_height) height = function<decltype(&heif_image_get_height)>("heif_image_get_height");
    decltype(&heif_image_get_plane_readonly) plane =
        function<decltype(&heif_image_get_plane_readonly)>("heif_image_get_plane_readonly");

    template <class Function>
    Function function(const char* name)
    {
        return reinterpret_cast<Function>(library.resolve(name));
    }
    [[nodiscard]] bool whole() const
    {
        return contextAlloc && contextFree && read && primary && handleRelease && decode && imageRelease && width && height && plane;
    }
};

const Heif& heif()
{
    static const Heif loaded;
    return loaded;
}

bool good(const heif_error& error)
{
    return error.code == heif_error_Ok;
}

/// The pixels, copied out of the library's keeping.
QImage pixelsOf(const heif_image* image)
{
    int stride = 0;
    const std::uint8_t* rows = heif().plane(image, heif_channel_interleaved, &stride);
    const int width = heif().width(image, heif_channel_interleaved), height = heif().height(image, heif_channel_interleaved);
    if (rows == nullptr || width <= 0 || height <= 0 || width > largestSide || height > largestSide)
        return {};
    return QImage(rows, width, height, stride, QImage::Format_RGB888).convertToFormat(QImage::Format_RGB32);
}

QImage decoded(heif_context* context)
{
    heif_image_handle* handle = nullptr;
    if (!good(heif().primary(context, &handle)))
        return {};
    const std::unique_ptr<heif_image_handle, void (*)(heif_image_handle*)> handleKept(
        handle, [](heif_image_handle* h) { heif().handleRelease(h); });
    heif_image* image = nullptr;
    if (!good(heif().decode(handle, &image, heif_colorspace_RGB, heif_chroma_interleaved_RGB, nullptr)))
        return {};
    const std::unique_ptr<heif_image, void (*)(heif_image*)> imageKept(image, [](heif_image* i) { heif().imageRelease(i); });
    return pixelsOf(image);
}

} // namespace

bool isHeic(const QString& path)
{
    // ISO/IEC 14496-12, 4.3: a file type box first; its brands as in ISO/IEC 23008-12
    QFile file(path);
    if (!file.open(QIODevice::ReadOnly))
        return false;
    const QByteArray head = file.read(12);
    const QByteArray brand = head.mid(8, 4);
    return head.mid(4, 4) == "ftyp" && (brand.startsWith("hei") || brand.startsWith("hev") || brand == "mif1" || brand == "msf1");
}

QImage readHeic(const QString& path)
{
    QFile file(path);
    if (!heif().whole() || !file.open(QIODevice::ReadOnly))
        return {};
    const QByteArray bytes = file.readAll();
    const std::unique_ptr<heif_context, void (*)(heif_context*)> context(heif().contextAlloc(),
                                                                          [](heif_context* c) { heif().contextFree(c); });
    if (!context || !good(heif().read(context.get(), bytes.constData(), static_cast<std::size_t>(bytes.size()), nullptr)))
        return {};
    return decoded(context.get());
}

} // namespace cupule::ui
