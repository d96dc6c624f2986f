#pragma once

#include "../job.hpp"

namespace rakewright {

// Angles of a bend are given by `over_square`: the slope of what the angle between the legs, on the inside, is over a
// right angle. The plate is bent from flat by a right angle less that.

/// A plate as it goes into the brake: lengths in one unit, not negative. `k_factor` says where the plate keeps its
/// length in the bend, from its inner face, as a part of the thickness.
struct Bending {
    double inside_radius = 0;
    double thickness = 0;
    double k_factor = 0;
};

/// The tangent of half the angle of the bend: what the airframe handbooks print as their K, or setback factor (not the
/// k-factor). Any slope.
double setback_factor(double over_square);

/// The bend allowance: how much of the plate's length goes into the bend, angle * (radius + k * thickness). The formula
/// of the airframe handbooks, with their 0.01743 and 0.0078 exact.
double bend_allowance(const Bending& bending, double over_square);

/// A bracket's plate before it is bent. Places are from the post leg's end, along the plate. The setbacks are from
/// where the inner or the outer faces of the legs would meet to where the bend begins; `deduction` is what the two
/// legs, measured outside, are longer together than the plate.
struct Blank {
    double allowance = 0;
    double inside_setback = 0, setback = 0, deduction = 0;
    double length = 0;
    double bend_start = 0, bend_middle = 0, bend_end = 0;
    std::vector<double> post_holes, rail_holes;
};

/// The blank of a bracket that says its inside radius, whose legs and holes are measured from where its inner faces
/// would meet. Its bend may reach past no leg's end and no hole's centre: see in_the_bend.
Blank blank_of(const BracketBuild& bracket, double over_square);

/// What stands nearest to the bend of all that has to lie flat: a leg's end or a hole's centre, whose distance from the
/// inside of the bend is less than the inside setback. None where the bend has room.
struct InTheBend {
    double inside_setback = 0;
    Reading nearest;
    bool is_hole = false;
};
std::optional<InTheBend> in_the_bend(const BracketBuild& bracket, double over_square);

}  // namespace rakewright
