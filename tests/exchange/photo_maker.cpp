#include "tests/exchange/photo_maker.h"

#include <exiv2/exiv2.hpp>

#include "tests/exchange/outside.h"

namespace cupule::test {

std::string plainJpeg()
{
    // JPEG (ITU-T T.81): start, JFIF header, frame of 8 x 8 with one component, start of scan, end.
    using namespace std::string_literals;
    return "\xFF\xD8"
           "\xFF\xE0\x00\x10JFIF\x00\x01\x01\x00\x00\x01\x00\x01\x00\x00"
           "\xFF\xC0\x00\x0B\x08\x00\x08\x00\x08\x01\x01\x11\x00"
           "\xFF\xDA\x00\x08\x01\x01\x00\x00\x3F\x00\x00"
           "\xFF\xD9"s;
}

std::string madePhoto(const PhotoTags& tags)
{
    static int number = 0;
    const std::string path = writtenFile("made" + std::to_string(++number) + ".jpg", plainJpeg());
    const auto image = Exiv2::ImageFactory::open(path);
    image->readMetadata();
    for (const auto& [key, value] : tags) {
        if (key.starts_with("Xmp."))
            image->xmpData()[key] = value;
        else
            image->exifData()[key] = value;
    }
    image->writeMetadata();
    return path;
}

} // namespace cupule::test
