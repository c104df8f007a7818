// Small photos with chosen tags, written by exiv2 into the test's temporary folder.

#pragma once

#include <map>
#include <string>

namespace cupule::test {

/// Keys as exiv2 names them ("Exif.Photo.DateTimeOriginal", "Xmp.exif.GPSLatitude"), values as it reads them.
using PhotoTags = std::map<std::string, std::string>;

/// The path of a JPEG of 8 x 8 pixels with these tags.
std::string madePhoto(const PhotoTags& tags);

/// The bytes of the same picture without tags.
std::string plainJpeg();

} // namespace cupule::test
