// Lines that wait in a file until a bundle is put together, so that a season of them need not fit into memory.

#pragma once

#include <cstdint>
#include <memory>
#include <string>
#include <string_view>

#include "core/base/hash.h"
#include "core/base/result.h"

namespace cupule {

class LineFile {
public:
    /// Makes the file anew; it goes again with this object. Faults "file.write", "file.full".
    static Result<LineFile> begin(const std::string& path);
    LineFile(LineFile&&) noexcept;
    LineFile& operator=(LineFile&&) = delete;
    ~LineFile();
    /// Adds the line feed. Faults as above.
    Status add(std::string_view line);
    /// Then it can be read. Faults as above.
    Status finish();
    [[nodiscard]] const std::string& path() const;
    [[nodiscard]] std::int64_t bytes() const;
    [[nodiscard]] std::int64_t lines() const;
    /// Of the whole, after finish(); 64 hexadecimal digits.
    [[nodiscard]] const std::string& sha256() const;

private:
    struct Inside;
    explicit LineFile(std::unique_ptr<Inside> inside);
    std::unique_ptr<Inside> m;
};

} // namespace cupule
