#pragma once

#include "solution.hpp"

namespace rakewright {

/// Where a rail's picket face begins and ends on a story stick.
struct RailOnStick {
    Group group = Group::upper;
    double from_end = 0, to_end = 0;
};

/// A strip that is laid along each rail of a section with its zero plumb under the from post's face, half-way up the
/// pickets: the same marks then serve every rail, on a rake as on a level. All along the strip; `edges` are the ones
/// nearer to zero.
struct StoryStick {
    std::vector<double> edges, centres;
    double picket = 0;  // how wide one is along it
    double to_face = 0;
    std::vector<RailOnStick> rails;
};

/// The story stick of a section; none where it has no pickets.
std::optional<StoryStick> story_stick_of(const SectionResult& section);

}  // namespace rakewright
