#pragma once

#include "section.hpp"

namespace rakewright {

/// The feet under a section's lower group, under the pickets that stand so far, level, from the from post's face. A
/// foot that has no place is left out, with a finding.
std::vector<RailFoot> feet_of(const SectionTask& task, const Surroundings& around, const RailLine& line,
                              const Levels& levels, const std::array<double, 2>& faces,
                              const std::vector<double>& pickets, std::vector<Finding>& findings);

/// What feet take of the openings under the lower group, in the order of the line.
std::vector<Upright> uprights_of(const std::vector<RailFoot>& feet, double from_face);

}  // namespace rakewright
