// Finds the bytes that can mean something to the tokenizer, 64 at a time. For csv/tokenizer.cpp only.
//
// SSE2 is part of every x86-64; other machines take the plain loop, with the same result.

#pragma once

#include <cstdint>

#if defined(__SSE2__)
#include <emmintrin.h>
#endif

namespace cupule::csv_detail {

/// Bit i is set where p[i] is the delimiter, a quote, or a control byte up to CR (line ends, NUL and a few that mean
/// nothing). Reads 64 bytes, whatever they hold.
inline std::uint64_t specialBytes(const char* p, char delimiter)
{
#if defined(__SSE2__)
    const __m128i carriageReturn = _mm_set1_epi8('\r');
    const __m128i quote = _mm_set1_epi8('"');
    const __m128i separator = _mm_set1_epi8(delimiter);
    const auto sixteen = [&](int at) {
        const __m128i bytes = _mm_loadu_si128(reinterpret_cast<const __m128i*>(p + at));
        const __m128i low = _mm_cmpeq_epi8(_mm_min_epu8(bytes, carriageReturn), bytes);
        const __m128i hit = _mm_or_si128(_mm_or_si128(low, _mm_cmpeq_epi8(bytes, quote)),
                                         _mm_cmpeq_epi8(bytes, separator));
        return static_cast<std::uint64_t>(static_cast<unsigned>(_mm_movemask_epi8(hit)));
    };
    return sixteen(0) | sixteen(16) << 16 | sixteen(32) << 32 | sixteen(48) << 48;
#else
    std::uint64_t bits = 0;
    for (unsigned i = 0; i < 64; ++i) {
        const auto c = static_cast<unsigned char>(p[i]);
        if (c <= '\r' || c == '"' || p[i] == delimiter)
            bits |= std::uint64_t{1} << i;
    }
    return bits;
#endif
}

/// True where no byte has its high bit set.
inline bool isAscii(const char* p, std::size_t count)
{
    std::size_t i = 0;
#if defined(__SSE2__)
    for (; i + 16 <= count; i += 16)
        if (_mm_movemask_epi8(_mm_loadu_si128(reinterpret_cast<const __m128i*>(p + i))) != 0)
            return false;
#endif
    for (; i < count; ++i)
        if ((static_cast<unsigned char>(p[i]) & 0x80U) != 0)
            return false;
    return true;
}

} // namespace cupule::csv_detail
