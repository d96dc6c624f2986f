#pragma once

#include "member.hpp"

namespace rakewright {

/// The rail that a section meets at a joint without a post, in the section's own axes: the level unit direction away
/// from the joint, its rise for each unit of level that way, and where the tops of its groups stand plumb over the
/// joint.
struct RailBeyond {
    double x = 1, y = 0;
    double slope = 0;
    std::array<double, 2> tops{};  // by group
    bool has_lower = false;
};

/// How two rails meet without a post.
struct RailJoint {
    std::array<Plane, 2> planes;  // by group, looking into the section
    Plane middle;                 // the plumb one that bounds its pickets
    bool straight = false;        // both in one plumb plane
    double moved = 0;             // how far along the rail, past the joint's place, the tops of the upper groups meet
};

/// The joint at one end of a section's rail. Round a corner both are cut to the plumb plane through its place that halves
/// the corner: rails that pass the place on one side, as far from it, meet there. In
/// one plumb plane they are cut to the plane that halves their bend, where the tops of each group meet, which may be
/// beside the joint's place. None where the other rail runs back along this one.
std::optional<RailJoint> joint_at(const RailLine& line, const Levels& levels, End end, const RailBeyond& beyond);

/// One corner of two members that meet: how far the second's arris ends from the first's in their joint plane, and
/// where the first's arris comes out on the second's section. Left and right as seen along the first member, on the
/// second as seen along that.
struct CornerMet {
    Corner corner;
    double plumb = 0;  // higher positive
    double level = 0;  // apart
    Spot moulded;
};

/// How the ends of two members meet: the corners of the first, carried along it to the joint and back along the second.
/// Both sticks in the same axes.
std::array<CornerMet, 4> corners_met(const Stick& first, End first_end, const Stick& second, End second_end);

}  // namespace rakewright
