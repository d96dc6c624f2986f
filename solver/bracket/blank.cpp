#include "blank.hpp"

#include <cmath>

#include "../measure/compare.hpp"

namespace rakewright {
namespace {

double angle_of_bend(double over_square) { return right_angle - angle_of(over_square); }

double inside_setback_of(const BracketBuild& bracket, double over_square) {
    return *bracket.inside_radius * setback_factor(over_square);
}

}  // namespace

double setback_factor(double over_square) {
    // tan(45 deg - t/2) = sec t - tan t, t being what the angle inside is over a right angle.
    const double secant = std::sqrt(1 + over_square * over_square);
    return over_square > 0 ? 1 / (secant + over_square) : secant - over_square;
}

double bend_allowance(const Bending& bending, double over_square) {
    return angle_of_bend(over_square) * (bending.inside_radius + bending.k_factor * bending.thickness);
}

Blank blank_of(const BracketBuild& bracket, double over_square) {
    const double factor = setback_factor(over_square);
    Blank blank;
    blank.allowance = bend_allowance({*bracket.inside_radius, bracket.thickness, bracket.k_factor}, over_square);
    blank.inside_setback = inside_setback_of(bracket, over_square);
    blank.setback = (*bracket.inside_radius + bracket.thickness) * factor;
    blank.deduction = 2 * blank.setback - blank.allowance;
    blank.bend_start = bracket.post_leg - blank.inside_setback;
    blank.bend_middle = blank.bend_start + blank.allowance / 2;
    blank.bend_end = blank.bend_start + blank.allowance;
    blank.length = blank.bend_end + bracket.rail_leg - blank.inside_setback;
    for (const Reading& hole : bracket.post_hole) blank.post_holes.push_back(bracket.post_leg - hole);
    for (const Reading& hole : bracket.rail_hole)
        blank.rail_holes.push_back(blank.bend_end + hole - blank.inside_setback);
    return blank;
}

std::optional<InTheBend> in_the_bend(const BracketBuild& bracket, double over_square) {
    InTheBend bend{inside_setback_of(bracket, over_square), bracket.post_leg, false};
    const auto consider = [&](const Reading& place, bool is_hole) {
        if (place < bend.nearest) bend = {bend.inside_setback, place, is_hole};
    };
    consider(bracket.rail_leg, false);
    for (const auto* holes : {&bracket.post_hole, &bracket.rail_hole})
        for (const Reading& hole : *holes) consider(hole, true);
    // A hole may stand where the bend begins; of a leg something has to lie flat.
    const bool has_room =
        bend.is_hole ? no_more_than(bend.inside_setback, bend.nearest) : less_than(bend.inside_setback, bend.nearest);
    return has_room ? std::nullopt : std::optional(bend);
}

}  // namespace rakewright
