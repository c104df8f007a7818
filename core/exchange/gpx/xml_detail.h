// What pugixml lets pass and a reader of strangers' files must not: entities nobody declared, control characters,
// documents nested without end. Also brings a document to UTF-8. For gpx/reader.cpp only.

#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/result.h"

namespace cupule::gpx_detail {

struct XmlText {
    std::string text;              ///< UTF-8 without a mark
    bool notAsDeclared = false;    ///< was to be UTF-8 and is not; read as Windows-1252
};
/// By mark, by declaration, else UTF-8. Fault "gpx.encoding" (argument encoding).
Result<XmlText> toUtf8(std::string_view document);

/// A spot at which the document is not well-formed although its tags may join up.
struct XmlSpot {
    std::size_t byte = 0;
    std::string what;      ///< "entity" or "control-character"
    std::string entity;    ///< its name, without & and ;
};
struct XmlCheck {
    std::vector<XmlSpot> spots;   ///< the first thousand
    std::int64_t depth = 0;       ///< the deepest nesting of elements
};
XmlCheck checkXml(std::string_view text);

/// The physical line of a byte, from 1, for offsets that never go back.
class LineCounter {
public:
    explicit LineCounter(std::string_view text) : m_text(text) {}
    std::int64_t lineOf(std::size_t byte);

private:
    std::string_view m_text;
    std::size_t m_at = 0;
    std::int64_t m_line = 1;
};

} // namespace cupule::gpx_detail
