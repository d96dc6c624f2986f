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

Vector top_of(const RailLine& line) { return frame_on_slope(Vector::Zero(), line.x, line.y, line.slope).top; }

double over_square(const RailLine& line, Leg leg, const Vector& face) {
    const Vector top = top_of(line);
    const double turned_up = face.dot(top) / face.cross(top).norm();
    return leg == Leg::up ? turned_up : -turned_up;
}

/// A face as it is seen by a person who looks at it: level to the right, and up in the face.
struct FaceSeen {
    Vector right, up;
};

FaceSeen seen(const Vector& face) {
    const Vector right = Vector(-face.y(), face.x(), 0).normalized();
    return {right, face.cross(right)};
}

/// A slope of the size of 1, or nothing where it is the rounding of doubles.
double slope_unless_rounding(double slope) { return std::fabs(slope) < rounding ? 0 : slope; }

/// The bend line as a unit vector to the right.
Vector bend_line(const RailLine& line, const Vector& face) {
    const auto [right, up] = seen(face);
    return (right + bend_tilt(line, face) * up).normalized();
}

/// How far a surface of this radius falls away behind a plane, at a distance from where the plane touches it.
std::optional<double> falls_away(double radius, double distance) {
    if (!less_than(distance, radius)) return std::nullopt;
    return distance * distance / (radius + std::sqrt(radius * radius - distance * distance));
}

void set_in_space(Bracket& bracket, const BracketBuild& build, const RailLine& line, const Vector& face) {
    bracket.tilt = bend_tilt(line, face);
    bracket.skew = leg_skew(line, bracket.end, face);
    if (bracket.mark_height) {
        const double climb = build.width / 2 * bend_line(line, face).z();
        bracket.mark_left = *bracket.mark_height - climb;
        bracket.mark_right = *bracket.mark_height + climb;
    }
    if (line.is_round(bracket.end)) {
        const Shaft& post = line.round(bracket.end);
        bracket.stands_off = falls_away(post.radius, off_touching_line(build, line, face, post.upright));
    }
}

}  // namespace

double bend_tilt(const RailLine& line, const Vector& face) {
    const Vector top = top_of(line);
    const auto [right, up] = seen(face);
    return slope_unless_rounding(-top.dot(right) / top.dot(up));
}

double leg_skew(const RailLine& line, End end, const Vector& face) {
    const double outward = end == End::from ? 1 : -1;
    const Vector away = outward * Vector(line.x, line.y, line.slope) / line.lengthened(),
                 right = outward * Vector(-line.y, line.x, 0);
    return slope_unless_rounding(face.dot(right) / face.dot(away));
}

double off_touching_line(const BracketBuild& bracket, const RailLine& line, const Vector& face, const Vector& upright) {
    const Vector bend = bend_line(line, face), leg = face.cross(bend), across = face.cross(upright);
    return bracket.width / 2 * std::fabs(bend.dot(across)) + bracket.post_leg * std::fabs(leg.dot(across));
}

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
    const std::optional<Plane> met_there = face_at(line, end, levels.underside(group));
    const Vector& face = met_there ? met_there->normal : line.face(end).normal;
    Bracket bracket;
    bracket.end = end;
    bracket.group = group;
    bracket.leg = leg;
    bracket.over_square = over_square(line, leg, face);
    bracket.driver_clear = driver_clear(build, driver, bracket.over_square);
    if (const std::optional<double> met = height_met(line, end, levels.underside(group)); met && surface)
        bracket.mark_height = *met - *surface;
    set_in_space(bracket, build, line, face);
    if (build.inside_radius && !in_the_bend(build, bracket.over_square))
        bracket.blank = blank_of(build, bracket.over_square);
    return bracket;
}

LegBetween leg_between(const BracketBuild& build, Leg leg) {
    if (leg == Leg::down || build.post_seat == PostSeat::mortise) return {};
    return {build.thickness, build.post_leg};
}

}  // namespace rakewright
