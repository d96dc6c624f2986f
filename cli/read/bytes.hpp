#pragma once

#include <array>
#include <string_view>
#include <vector>

#include "refusal.hpp"

namespace rakewright {

/// The limits of a job's bytes. Beyond any of them it is refused.
inline constexpr std::size_t largest_job = std::size_t{64} << 20;  // bytes
inline constexpr std::size_t longest_line = std::size_t{64} << 10;

/// How many refusals are kept of one job: a file that is no job at all must not fill the memory with them.
inline constexpr std::size_t most_kept = 10'000;

/// Which bytes are in a set, looked up.
using Bytes = std::array<bool, 256>;
inline bool has(const Bytes& bytes, char c) { return bytes[static_cast<unsigned char>(c)]; }

constexpr Bytes bytes_of(std::string_view text) {
    Bytes bytes{};
    for (const char c : text) bytes[static_cast<unsigned char>(c)] = true;
    return bytes;
}

/// What is wrong with the bytes of a job, the first of each line at most: what is no UTF-8, control characters, lines
/// that are too long, a percent sign in front of a line.
void scan_bytes(std::string_view text, std::vector<Refusal>& refusals);

}  // namespace rakewright
