#include "bytes.hpp"

#include <algorithm>

#include "character.hpp"

namespace rakewright {
namespace {

constexpr Bytes ordinary_bytes() {
    Bytes bytes{};
    for (std::size_t c = 0x20; c < 0x7F; ++c) bytes[c] = true;
    bytes['\t'] = true;
    return bytes;
}

/// What is wrong with the character at `i`; nothing if it may stand in a job.
const char* trouble_with(std::string_view text, std::size_t i, const Character& character) {
    if (!character.is_text) return "these bytes are not UTF-8 text";
    if (character.code == 0xFEFF) return "a byte order mark stands here";
    if (!is_control(character.code) || character.code == '\t') return nullptr;
    if (character.code == '\r' && i + 1 < text.size() && text[i + 1] == '\n') return nullptr;
    return "a control character stands here";
}

bool is_utf_16(std::string_view text) {
    return text.compare(0, 2, "\xFF\xFE") == 0 || text.compare(0, 2, "\xFE\xFF") == 0 ||
           (text.size() > 1 && (text[0] == 0) != (text[1] == 0));
}

}  // namespace

void scan_bytes(std::string_view text, std::vector<Refusal>& refusals) {
    if (text.size() > largest_job) {
        refusals.push_back(refusal_at(0, 0, "the job is larger than " + std::to_string(largest_job >> 20) + " MiB"));
        return;
    }
    if (is_utf_16(text)) {
        refusals.push_back(refusal_at(0, 0, "the job is UTF-16 text", "a text file saved as UTF-8"));
        return;
    }
    static constexpr Bytes ordinary = ordinary_bytes();
    std::size_t line = 0;
    const auto refuse = [&](std::size_t i, std::size_t size, std::string sentence, const char* expected) {
        if (refusals.size() < most_kept) refusals.push_back(refusal_at(i, size, std::move(sentence), expected));
        return std::min(text.find('\n', i), text.size());
    };
    for (std::size_t i = 0; i < text.size();) {
        if (text[i] == '%' && i == line) {
            i = refuse(i, 1, "a line may not start with '%'", "no YAML directives; quote a text that starts so");
            continue;
        }
        const std::size_t end = std::min(text.size(), line + longest_line);
        while (i < end && has(ordinary, text[i])) ++i;
        if (i == text.size()) return;
        if (text[i] == '\n') {
            line = ++i;
            continue;
        }
        const Character character = character_at(text, i);
        if (i - line >= longest_line)
            i = refuse(line, 1, "the line is longer than " + std::to_string(longest_line) + " bytes",
                       "one key or list item a line");
        else if (const char* const trouble = trouble_with(text, i, character))
            i = refuse(i, character.size, trouble, "a plain text file saved as UTF-8");
        else
            i += character.size;
    }
}

}  // namespace rakewright
