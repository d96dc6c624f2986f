#include "bracket.hpp"

#include <algorithm>
#include <cmath>

#include <Eigen/Geometry>

#include "../measure/compare.hpp"

namespace rakewright {
namespace {

/// Across the inner face of the rail leg, out from the post leg by x it lies `-over_square x` up it; the leg ends at
/// `leg_end`.
bool reaches(double hole, const BracketBuild& bracket, const Driver& driver, double over_square) {
    const double leg_end = bracket.rail_leg / std::sqrt(1 + over_square * over_square), reach = driver.bit.reach;
    const double under_bit = std::max(0.0, -over_square * std::min(reach, leg_end));
    if (!no_more_than(under_bit, hole - driver.bit.diameter / 2, hole)) return false;
    if (no_more_than(leg_end, reach)) return true;
    const double under_body = std::max(-over_square * reach, -over_square * leg_end);
    return no_more_than(under_body, hole - driver.body.diameter / 2, hole);
}

double over_square(const RailLine& line, Leg leg, const Vector& face) {
    const Vector top = frame_on_slope(Vector::Zero(), line.x, line.y, line.slope).top;
    const double turned_up = face.dot(top) / face.cross(top).norm();
    return leg == Leg::up ? turned_up : -turned_up;
}

}  // namespace

double over_square(const RailLine& line, End end, Leg leg) { return over_square(line, leg, line.face(end).normal); }

bool driver_clear(const BracketBuild& bracket, const Driver& driver, double over_square) {
    return std::all_of(bracket.post_hole.begin(), bracket.post_hole.end(),
                       [&](double hole) { return reaches(hole, bracket, driver, over_square); });
}

Leg chosen_leg(const BracketBuild& bracket, const Driver& driver, const RailLine& line, End end) {
    switch (bracket.leg) {
        case LegWish::up: return Leg::up;
        case LegWish::down: return Leg::down;
        case LegWish::by_driver: break;
    }
    if (line.is_round(end)) return Leg::down;
    return driver_clear(bracket, driver, over_square(line, end, Leg::up)) ? Leg::up : Leg::down;
}

Bracket bracket_at(const BracketBuild& build, const Driver& driver, const RailLine& line, const Levels& levels, End end,
                   Group group, Leg leg, std::optional<double> surface) {
    const std::optional<Plane> face = face_at(line, end, levels.underside(group));
    Bracket bracket{end,  group,       leg, face ? over_square(line, leg, face->normal) : over_square(line, end, leg),
                    true, std::nullopt};
    bracket.driver_clear = driver_clear(build, driver, bracket.over_square);
    if (const std::optional<double> met = height_met(line, end, levels.underside(group)); met && surface)
        bracket.mark_height = *met - *surface;
    return bracket;
}

LegBetween leg_between(const BracketBuild& build, Leg leg) {
    if (leg == Leg::down || build.post_seat == PostSeat::mortise) return {};
    return {build.thickness, build.post_leg};
}

}  // namespace rakewright
