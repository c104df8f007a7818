// What the tests of papers share: pages as images, and codes read by a decoder that is not ours.

#pragma once

#include <functional>
#include <optional>
#include <string>
#include <vector>

#include <QImage>
#include <QPainter>

namespace cupule::test {

inline constexpr int testDotsPerInch = 200;

/// An empty page of A4.
QImage emptyPage();
/// Pixels for a length.
int pixels(double millimetres);
/// Whether these programs of others are installed; where not, the case has been marked as skipped.
bool haveTools(const std::vector<std::string>& programs);
/// Pixels that are neither black, white nor grey.
int coloured(const QImage& image);
/// What the decoder reads from an image, sorted.
std::vector<std::string> codesIn(const QImage& image);
/// The pages of a PDF.
std::vector<QImage> pagesOf(const std::string& pdf);
/// The text of a PDF, page after page, form feeds between.
std::string textOf(const std::string& pdf);

} // namespace cupule::test
