// A file system under SQLite that counts flushes and fails on the n-th write, flush, cut or opening, for ever or once.
// It stands before the machine's own while it lives.

#pragma once

#include <cstdint>
#include <string>

namespace cupule::test {

class FaultVfs {
public:
    FaultVfs();
    ~FaultVfs();
    FaultVfs(const FaultVfs&) = delete;
    FaultVfs& operator=(const FaultVfs&) = delete;

    /// SQLite result code to fail with from the n-th operation on (1 = the next); 0 switches it off.
    void failFrom(std::int64_t n, int code, bool once);
    [[nodiscard]] bool hasFailed() const;
    void resetCounts();
    [[nodiscard]] std::int64_t logFlushes() const;      ///< of -wal files
    [[nodiscard]] std::int64_t fileFlushes() const;     ///< of main files
};

} // namespace cupule::test
