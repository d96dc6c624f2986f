#pragma once

#include "rail/splice.hpp"
#include "section.hpp"

namespace rakewright {

/// Splices the members that are longer than the build's longest stick: at pickets' centres, those of the lower group at
/// feet where there are enough; a member that lies on another, where the other is not spliced if that can be (common
/// practice). `first_face` is where along the line pickets are counted from. Adds to `findings` where it cannot be
/// done.
void splice_members(const SectionTask& task, const RailLine& line, double first_face, SectionResult& result,
                    std::vector<Finding>& findings);

}  // namespace rakewright
