#pragma once

#include "section.hpp"

namespace rakewright {

/// Which way a section goes: its line, the heights of its groups over it, and the level places of the two faces
/// half-way up the pickets; none where a face runs along the rail.
struct Way {
    RailLine line;
    Levels levels;
    std::optional<std::array<double, 2>> faces;
    std::array<std::optional<RailJoint>, 2> joints{};
    double moved = 0;  // how much longer the clear distance that was measured is than the one between placed posts
};

/// The way of a section that meets these faces, with this lower gap: over its stair, over a level floor, or over the
/// floor that it names. There the rail is level, its heights over the highest floor at the ends of the clear; or it
/// runs as the floor does. A floor that has axes of its own is as high as they say, where the line passes the posts'
/// centres; another one, between placed posts, as
/// the foot of the post that stands higher on it says. Where placed posts and a clear distance are both given, the clear distance holds: the to post's face is moved
/// along the line.
Way way_of(const SectionTask& task, const Surroundings& around, const FacesMet& faces,
           const std::optional<LowerGap>& lower_gap);

/// The surface that the post at an end stands on, in the line's axes: on a floor that falls, the floor at the face met;
/// none where that is not known.
std::optional<double> surface_at(const Surroundings& around, const RailLine& line, End end);

/// The level places of the two faces half-way up the pickets.
std::optional<std::array<double, 2>> faces_half_way(const RailLine& line, const Levels& levels);

}  // namespace rakewright
