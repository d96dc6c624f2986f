#pragma once

#include <cstddef>
#include <string_view>

namespace rakewright {

/// A character of a UTF-8 text. Where the bytes are no UTF-8, one byte with `is_text` false.
struct Character {
    char32_t code = 0;
    std::size_t size = 1;
    bool is_text = false;
};

/// The character that starts at byte `i` of a text; `i` below its size. RFC 3629: no overlong forms, no surrogates.
inline Character character_at(std::string_view text, std::size_t i) {
    const auto byte = [&](std::size_t k) { return i + k < text.size() ? static_cast<unsigned char>(text[i + k]) : 0u; };
    const auto rest = [&](std::size_t k) { return static_cast<char32_t>(byte(k) & 0x3F); };
    const auto follows = [&](std::size_t k, unsigned low = 0x80, unsigned high = 0xBF) {
        return byte(k) >= low && byte(k) <= high;
    };
    const unsigned lead = byte(0);
    if (lead < 0x80) return {lead, 1, true};
    if (lead >= 0xC2 && lead <= 0xDF && follows(1)) return {(lead & 0x1F) << 6 | rest(1), 2, true};
    if (lead >= 0xE0 && lead <= 0xEF && follows(1, lead == 0xE0 ? 0xA0 : 0x80, lead == 0xED ? 0x9F : 0xBF) &&
        follows(2))
        return {(lead & 0x0F) << 12 | rest(1) << 6 | rest(2), 3, true};
    if (lead >= 0xF0 && lead <= 0xF4 && follows(1, lead == 0xF0 ? 0x90 : 0x80, lead == 0xF4 ? 0x8F : 0xBF) &&
        follows(2) && follows(3))
        return {(lead & 0x07) << 18 | rest(1) << 12 | rest(2) << 6 | rest(3), 4, true};
    return {lead, 1, false};
}

/// Whether a terminal obeys it instead of showing it: control characters, line separators, the byte order mark, and
/// those that turn the direction of writing, so that a line is not what it looks like. A tab and a line's end are.
inline bool is_control(char32_t code) {
    return code < 0x20 || (code >= 0x7F && code < 0xA0) || (code >= 0x2028 && code <= 0x202E) ||
           (code >= 0x2066 && code <= 0x2069) || code == 0xFEFF;
}

/// How many columns of a terminal it takes: 0 for marks that stand on the one before, 2 for wide ones (Unicode's East
/// Asian Width, W and F, by blocks), else 1.
inline int columns_of(char32_t code) {
    struct Block {
        char32_t first, last;
    };
    static constexpr Block marks[] = {{0x300, 0x36F},   {0x1AB0, 0x1AFF}, {0x1DC0, 0x1DFF}, {0x200B, 0x200F},
                                      {0x20D0, 0x20FF}, {0xFE00, 0xFE0F}, {0xFE20, 0xFE2F}};
    static constexpr Block wide[] = {{0x1100, 0x115F},  {0x2E80, 0x303E}, {0x3041, 0x4DBF},   {0x4E00, 0xA4CF},
                                     {0xA960, 0xA97C},  {0xAC00, 0xD7A3}, {0xF900, 0xFAFF},   {0xFE30, 0xFE6F},
                                     {0xFF01, 0xFF60},  {0xFFE0, 0xFFE6}, {0x1F300, 0x1F64F}, {0x1F900, 0x1F9FF},
                                     {0x20000, 0x3FFFD}};
    if (code < 0x300) return 1;
    for (const Block& block : marks)
        if (code >= block.first && code <= block.last) return 0;
    for (const Block& block : wide)
        if (code >= block.first && code <= block.last) return 2;
    return 1;
}

}  // namespace rakewright
