// Where the text of a table comes from: a file read piece by piece and turned into UTF-8 on the way.
//
//  - Bounded memory at any size: one buffer of 256 KiB a stage.
//  - UTF-8 passes through byte for byte; what is not well-formed is judged row by row (csv/table.h).
//  - A source belongs to one thread at a time.

#pragma once

#include <cstddef>
#include <cstdint>
#include <memory>
#include <span>
#include <string>
#include <string_view>

#include "core/base/result.h"

namespace cupule {

/// How the bytes of a file are to be read. `named` is any other encoding that the machine's iconv knows.
enum class TextEncoding { utf8, utf16le, utf16be, windows1252, named };

struct EncodingChoice {
    TextEncoding encoding = TextEncoding::utf8;
    std::string name = "UTF-8";   ///< as shown, and as iconv wants it where `named`
    bool operator==(const EncodingChoice&) const = default;
};

/// Reads "utf-8", "UTF-16LE", "latin1", "iso-8859-1" (read as Windows-1252, its superset for text), "windows-1252",
/// "iso-8859-7" and so on, in any case. Fault "csv.encoding" (usage) where nobody knows the name.
Result<EncodingChoice> encodingNamed(std::string_view name);

class ByteSource {
public:
    virtual ~ByteSource() = default;
    /// Puts up to out.size() bytes in `out`; 0 is the end. Fault "file.read".
    virtual Result<std::size_t> read(std::span<char> out) = 0;
};

/// Opens a file as it lies on the disk. Faults "file.open", "file.folder".
Result<std::unique_ptr<ByteSource>> openFile(const std::string& path);

/// Text in memory, given out in pieces of at most `piece` bytes. The text must outlive the source.
std::unique_ptr<ByteSource> textSource(std::string_view text, std::size_t piece = std::size_t{1} << 18);

/// Turns the bytes of another source into UTF-8 and drops a byte-order mark at the start. What has no meaning in
/// the encoding becomes U+FFFD.
std::unique_ptr<ByteSource> decoded(std::unique_ptr<ByteSource> bytes, const EncodingChoice& encoding);

} // namespace cupule
