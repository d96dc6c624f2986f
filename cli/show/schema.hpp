#pragma once

#include <string>

namespace rakewright {

/// A JSON Schema (draft-07) of the job file, made from the same descriptions that the reader uses. It never refuses
/// what the reader accepts; it refuses every wrong key, type, sign and choice.
std::string job_schema();

}  // namespace rakewright
