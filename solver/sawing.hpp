#pragma once

#include "solution.hpp"

namespace rakewright {

/// How far the job's saw goes; none where the job does not say.
std::optional<SawLimits> saw_limits(const Job& job);

/// How the ends of a piece are cut on the job's saw. None where the job has no saw, and at an end that is coped.
std::optional<SawReach> reach_of_end(const std::optional<SawLimits>& saw, const EndCut& cut,
                                     const CrossSection& section, bool coped);

/// Adds to the findings how many ends of each section and handrail the saw does not reach.
void note_ends_out_of_reach(const Job& job, Solution& solution);

}  // namespace rakewright
