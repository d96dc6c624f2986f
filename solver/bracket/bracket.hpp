#pragma once

#include "../rail/member.hpp"
#include "blank.hpp"

namespace rakewright {

enum class Leg { up, down };

/// A side, seen looking at a post's face from the rail.
enum class SideSeen { left, right };

/// The side for which a bracket's signed slope stands.
inline SideSeen side_of(double slope) { return slope < 0 ? SideSeen::left : SideSeen::right; }

/// A bracket as it is bent and set. `over_square` is the slope of what the angle between its legs, on the inside, is
/// over a right angle: positive where it is obtuse. `mark_height` is plumb above the surface that the post stands on;
/// none where that surface is not known.
///
/// Left and right are as seen looking at the post's face from the rail, at either end. `tilt` is the slope, in the
/// face, of the bend line, in which face and underside meet: positive where its right end is the higher. `skew` is the
/// slope, in the underside, at which the rail leg, square to the bend line, runs off the rail's centre line: positive
/// to the right. `mark_left` and `mark_right` are the bend line's heights at the edges of the plate. `stands_off` is,
/// at a round post, how far the post's surface lies behind the post leg's farthest corner, square to the plate; none
/// where the corner reaches past the post.
struct Bracket {
    End end = End::from;
    Group group = Group::upper;
    Leg leg = Leg::up;
    double over_square = 0;
    bool driver_clear = true;
    std::optional<double> mark_height;
    double tilt = 0, skew = 0;
    std::optional<double> mark_left, mark_right;
    std::optional<double> stands_off;
    std::optional<Blank> blank;  // where the bend's radius is given

    /// Whether its bend line is level and its rail leg in line with the rail.
    bool square() const { return tilt == 0 && skew == 0; }
};

/// What the angle between a post's face and the underside of a rail is over a right angle, as a slope, for a leg turned
/// up or down: of the dihedral angle on the side where the rail leg lies. On a plumb face that looks along the rail:
/// minus the rail's rake, turned up at the end from which it climbs.
double over_square(const RailLine& line, End end, Leg leg);

/// The slope of the bend line in a post's face, which need not be plumb, positive where its right end is the higher;
/// exactly 0 below the rounding of doubles. On a plumb face turned by f, under a rail raked r: tan r * sin f.
double bend_tilt(const RailLine& line, const Vector& face);

/// The slope, in the underside, of the rail leg off the rail's centre line, positive to the right, seen looking at the
/// face; exactly 0 below the rounding of doubles. On a plumb face turned by f, under a rail raked r: tan f / cos r.
double leg_skew(const RailLine& line, End end, const Vector& face);

/// How far from the line along which a flat post leg touches a round post its farthest corner lies, in the leg's plane:
/// half its width on a plumb post, where the bend line is square to the post; more where the post leans across the leg.
double off_touching_line(const BracketBuild& bracket, const RailLine& line, const Vector& face, const Vector& upright);

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
