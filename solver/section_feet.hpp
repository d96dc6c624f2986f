#pragma once

#include "section.hpp"

namespace rakewright {

/// The feet under a section's lower group, under the pickets that stand so far, level, from the from post's face. A
/// foot that has no place is left out, with a finding.
std::vector<RailFoot> feet_of(const SectionTask& task, const Surroundings& around, const RailLine& line,
                              const Levels& levels, const std::array<double, 2>& faces,
                              const std::vector<double>& pickets, std::vector<Finding>& findings);

}  // namespace rakewright
