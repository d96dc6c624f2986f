#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace rakewright {

/// Writes a whole file, or leaves the old one as it was: into a new file beside it, synced, then renamed over it, with
/// the old file's permissions. A target that is not a regular file (a device, a pipe) is written straight. What went
/// wrong, or none.
std::optional<std::string> write_file(const std::string& path, std::string_view text);

/// How writing to standard output ended.
enum class Written { whole, reader_left, failed };

/// Writes to standard output to the last byte. `reader_left`: the other end of the pipe was closed, which is no error.
/// On failure `why` says what.
Written write_out(std::string_view text, std::string& why);

/// Reads a whole file, or standard input for "-"; none if it cannot be read or is larger than `limit` bytes, with what
/// went wrong in `why`.
std::optional<std::string> read_file(const std::string& path, std::size_t limit, std::string& why);

}  // namespace rakewright
