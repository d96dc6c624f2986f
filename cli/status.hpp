#pragma once

#include <string>
#include <vector>

#include "read/refusal.hpp"

namespace rakewright {

/// What the program tells its caller. Nothing else is ever returned.
enum class Status { done = 0, check_failed = 1, refused = 2, no_file = 3 };

/// Whether what is written to this handle may be coloured: it is a terminal, and nobody asked for plain text.
bool colour_on(int handle);

/// Writes to standard error.
void complain(const std::string& text);

/// Says what is refused of a text, each with its place.
Status refuse(const Source& source, const std::vector<Refusal>& refusals);

/// Reads a whole file, `-` being standard input; complains if it cannot be read.
std::optional<Source> read_source(const std::string& path);

/// Writes to standard output, or to a file if `path` is not empty; complains if it cannot be written.
Status deliver(const std::string& text, const std::string& path = {});

}  // namespace rakewright
