#pragma once

#include "section.hpp"

namespace rakewright {

/// The largest lower gap that the tape marks, plumb, with every ball under the rail below what the rules in force ask
/// for, less the margin of the job; what was chosen is told in a finding, and where none will do, why.
std::optional<double> largest_lower_gap(const SectionTask& task, const Surroundings& around, const FacesMet& faces,
                                        std::vector<Finding>& findings);

}  // namespace rakewright
