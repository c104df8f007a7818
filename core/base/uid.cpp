#include "core/base/uid.h"

#include <algorithm>
#include <cstring>

namespace cupule {

namespace {

int hexValue(char c)
{
    if (c >= '0' && c <= '9')
        return c - '0';
    if (c >= 'a' && c <= 'f')
        return c - 'a' + 10;
    if (c >= 'A' && c <= 'F')
        return c - 'A' + 10;
    return -1;
}

bool isDashAt(std::size_t i)
{
    return i == 8 || i == 13 || i == 18 || i == 23;
}

} // namespace

bool Uid::isNull() const
{
    return std::all_of(bytes.begin(), bytes.end(), [](std::uint8_t b) { return b == 0; });
}

std::string Uid::text() const
{
    if (isNull())
        return {};
    static constexpr char digits[] = "0123456789abcdef";
    std::string out;
    out.reserve(36);
    for (std::uint8_t b : bytes) {
        if (isDashAt(out.size()))
            out += '-';
        out += digits[b >> 4];
        out += digits[b & 15];
    }
    return out;
}

Result<Uid> Uid::parse(std::string_view text)
{
    Uid id;
    if (text.empty())
        return id;
    const auto bad = [&] { return fail("base.uid", FaultKind::data, {{"text", std::string(text)}}); };
    if (text.size() != 36)
        return bad();
    std::size_t byte = 0;
    for (std::size_t i = 0; i < text.size();) {
        if (isDashAt(i)) {
            if (text[i++] != '-')
                return bad();
            continue;
        }
        const int high = hexValue(text[i]);
        const int low = hexValue(text[i + 1]);
        if (high < 0 || low < 0)
            return bad();
        id.bytes[byte++] = static_cast<std::uint8_t>(high * 16 + low);
        i += 2;
    }
    return id;
}

Uid UidMaker::make()
{
    const std::int64_t now = m_clock.now().utcMilliseconds;
    std::uint8_t chance[10];
    m_random.fill(chance);
    if (now > m_lastMilliseconds) {
        m_lastMilliseconds = now;
        m_counter = chance[0];                  // start low, so that the counter has room
    } else if (++m_counter > 0xFFF) {
        ++m_lastMilliseconds;                   // the counter is full: borrow from the future
        m_counter = 0;
    }
    Uid id;
    for (unsigned i = 0; i < 6; ++i)
        id.bytes[i] = static_cast<std::uint8_t>(m_lastMilliseconds >> (40 - 8 * static_cast<int>(i)));
    id.bytes[6] = static_cast<std::uint8_t>(0x70 | (m_counter >> 8));
    id.bytes[7] = static_cast<std::uint8_t>(m_counter & 0xFF);
    id.bytes[8] = static_cast<std::uint8_t>(0x80 | (chance[2] & 0x3F));
    std::copy(chance + 3, chance + 10, id.bytes.begin() + 9);
    return id;
}

void ManyIds::Blocks::fill(std::span<std::uint8_t> out)
{
    for (auto& byte : out) {
        if (m_used == m_block.size()) {
            m_source.fill(m_block);
            m_used = 0;
        }
        byte = m_block[m_used++];
    }
}

ManyIds::ManyIds(const Instant& at, Random& random) : m_clock(at), m_blocks(random), m_maker(m_clock, m_blocks) {}

} // namespace cupule

std::size_t std::hash<cupule::Uid>::operator()(const cupule::Uid& id) const noexcept
{
    std::uint64_t low = 0;
    std::uint64_t high = 0;
    std::memcpy(&low, id.bytes.data(), 8);
    std::memcpy(&high, id.bytes.data() + 8, 8);
    return low ^ (high * 0x9E3779B97F4A7C15ULL);
}
