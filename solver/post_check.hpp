#pragma once

#include "finding.hpp"

namespace rakewright {

/// Adds what is wrong with a post of the job by itself, where it stands not looked at: keys that a post of its shape, or
/// one without a place or on a floor, cannot have, and sizes that do not go together.
void check(const Job& job, std::size_t post, std::vector<Finding>& findings);

}  // namespace rakewright
