#pragma once

#include "../rail/member.hpp"

namespace rakewright {

enum class Leg { up, down };

/// A bracket as it is bent and set. `over_square` is the slope of what the angle between its legs, on the inside, is
/// over a right angle: positive where it is obtuse. `mark_height` is plumb above the surface that the post stands on;
/// none where that surface is not known.
struct Bracket {
    End end = End::from;
    Group group = Group::upper;
    Leg leg = Leg::up;
    double over_square = 0;
    bool driver_clear = true;
    std::optional<double> mark_height;
};

/// What the angle between a post's face and the underside of a rail is over a right angle, as a slope, for a leg turned
/// up or down: of the dihedral angle on the side where the rail leg lies. On a plumb face that looks along the rail:
/// minus the rail's rake, turned up at the end from which it climbs.
double over_square(const RailLine& line, End end, Leg leg);

/// Whether a straight driver, square to the post leg, gets home at every hole of it: its bit from the leg out to its
/// reach, then its body, must not cut into the inner face of the rail leg. Touching is clear. Neither the thickness of
/// the plate nor the length of the body enters.
bool driver_clear(const BracketBuild& bracket, const Driver& driver, double over_square);

/// Which way the leg on the post is turned: as wished, or up where the driver is clear and else down (common practice);
/// down on a round post, where a leg turned up would lie hollow between post and rail.
Leg chosen_leg(const BracketBuild& bracket, const Driver& driver, const RailLine& line, End end);

/// The bracket at one end of one group, its leg turned as chosen. `surface` is the height of what the post stands on,
/// in the line's axes.
Bracket bracket_at(const BracketBuild& build, const Driver& driver, const RailLine& line, const Levels& levels, End end,
                   Group group, Leg leg, std::optional<double> surface);

/// The part of a leg that stands between the post and the rail: one turned up that is not let in.
LegBetween leg_between(const BracketBuild& build, Leg leg);

}  // namespace rakewright
