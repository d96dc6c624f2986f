#pragma once

#include "text.hpp"

namespace rakewright {

/// A job, or why there is none: every mistake of its keys and values in one run.
struct ReadResult {
    std::optional<Job> job;
    std::vector<Refusal> refusals;
};

/// Reads a job file. What is refused first is the text (bytes, then YAML), then keys, values and names.
ReadResult read_job(const Source& source);

}  // namespace rakewright
