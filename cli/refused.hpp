#pragma once

#include "../solver/solution.hpp"
#include "read/refusal.hpp"

namespace rakewright {

/// What makes a job impossible, as refusals with their places. What is the matter with one key in more than one section
/// is told once, by its first section's figures, with the names of the sections.
std::vector<Refusal> refusals_of(const Job& job, const Solution& solution);

}  // namespace rakewright
