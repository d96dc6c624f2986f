#include "seat.hpp"

#include <algorithm>
#include <cmath>

#include <Eigen/Geometry>

#include "../measure/compare.hpp"

namespace rakewright {
namespace {

/// What of a direction lies in the plane square to another, as a unit vector.
Vector within(const Vector& square_to, const Vector& way) {
    return (way - way.dot(square_to) * square_to).normalized();
}

/// A length that is the rounding of what it came from is none.
double unless_rounding(double length, double scale) { return std::fabs(length) <= rounding * scale ? 0 : length; }

PostMortise post_mortise(const BracketBuild& build, const PlateAt& plate, Leg leg) {
    // Behind the post's face the plate runs past the bend by its own thickness: square to the other leg where that
    // falls away from the bend, and by its outer corner where it closes on the post.
    const double cosine = plate.on_post.dot(plate.on_rail), sine = plate.on_post.cross(plate.on_rail).norm(),
                 past_bend = build.thickness * (1 + std::max(0.0, cosine)) / sine;
    const Vector up = leg == Leg::up ? plate.on_post : Vector(-plate.on_post);
    const double scale = build.post_leg + plate.mark.norm(), bend = (plate.bend - plate.mark).dot(up);
    PostMortise mortise{build.width, build.post_leg + past_bend, build.thickness, 0, 0};
    mortise.top = unless_rounding(bend + (leg == Leg::up ? build.post_leg.value : past_bend), scale);
    mortise.bottom = unless_rounding(mortise.top - mortise.height, scale);
    return mortise;
}

/// How far the leg under the rail reaches across it to the right, seen looking at the face, from the rail's middle
/// line: the least and the most over the four corners of the flat leg.
struct LegAcross {
    double least = 0, most = 0;
};

LegAcross leg_across(const BracketBuild& build, const PlateAt& plate, const RailLine& line, End end) {
    const double outward = end == End::from ? 1 : -1;
    const Vector right = outward * Vector(-line.y, line.x, 0), edge = plate.top.cross(plate.on_rail);
    const double half = build.width / 2 * std::fabs(edge.dot(right));
    double tip = build.rail_leg * plate.on_rail.dot(right);
    if (std::fabs(tip) < rounding * build.rail_leg) tip = 0;
    return {std::fmin(0, tip) - half, std::fmax(0, tip) + half};
}

/// What can be cut in the rail's underside.
RailSeat possible_seat(const BracketBuild& build, double beside, double wood_over) {
    if (build.rail_seat == RailSeat::surface || !less_than(0, wood_over, build.thickness)) return RailSeat::surface;
    if (build.rail_seat == RailSeat::mortise && !no_more_than(build.least_beside, beside, build.width))
        return RailSeat::rabbet;
    return build.rail_seat;
}

}  // namespace

std::optional<PlateAt> plate_at(const BracketBuild& build, const RailLine& line, const Levels& levels, End end,
                                Group group, Leg leg) {
    const double level = levels.underside(group);
    const std::optional<double> along = face_along(line, end, level);
    const std::optional<Plane> face = face_at(line, end, level);
    if (!along || !face) return std::nullopt;
    const Frame rail = frame_on_slope(line.at(*along, level), line.x, line.y, line.slope);
    PlateAt plate;
    plate.mark = rail.origin;
    plate.face = face->normal;
    plate.top = rail.top;
    plate.on_post = within(plate.face, rail.top) * (leg == Leg::up ? 1 : -1);
    plate.on_rail = within(rail.top, plate.face);
    plate.off_post = build.post_seat == PostSeat::surface ? build.thickness.value : 0;
    plate.under_rail = build.rail_seat == RailSeat::surface ? build.thickness.value : 0;
    // The inner face of the leg under the rail is its upper one where the other leg stands up, else its lower one.
    const double over = (leg == Leg::up ? build.thickness.value : 0) - plate.under_rail;
    const double out = (plate.off_post - over * plate.face.dot(rail.top)) / plate.face.dot(rail.along);
    plate.bend = plate.mark + out * rail.along + over * rail.top;
    return plate;
}

Vector rail_hole(const PlateAt& plate, double from_bend) {
    const double over = (plate.bend - plate.mark).dot(plate.top);
    return plate.bend + from_bend * plate.on_rail - (plate.under_rail + over) * plate.top;
}

Vector rail_leg_tip(const PlateAt& plate, const RailLine& line, double rail_leg) {
    const Vector along = frame_on_slope(Vector::Zero(), line.x, line.y, line.slope).along;
    return plate.bend + rail_leg / plate.on_rail.dot(along) * along;
}

Seat seat_of(const BracketBuild& build, const PlateAt& plate, const RailLine& line, const Member& lowest, End end,
             Leg leg, std::optional<double> surface) {
    Seat seat;
    const LegAcross across = leg_across(build, plate, line, end);
    seat.beside_left = lowest.width / 2 + across.least;
    seat.beside_right = lowest.width / 2 - across.most;
    seat.wood_over = lowest.depth - build.thickness;
    seat.possible = possible_seat(build, seat.beside(), seat.wood_over);
    for (const double hole : build.post_hole) {
        const Vector on_face = plate.post_hole(hole) - plate.off_post * plate.face;
        seat.screw_from_mark.push_back(std::fabs((on_face - plate.mark).dot(plate.on_post)));
        if (surface) seat.screw_heights.push_back(on_face.z() - *surface);
    }
    if (build.post_seat == PostSeat::mortise) seat.mortise = post_mortise(build, plate, leg);
    if (seat.possible == RailSeat::surface) return seat;
    const double inward = end == End::from ? 1 : -1;
    const Frame& frame = lowest.stick.frame;
    const double tip = (rail_leg_tip(plate, line, build.rail_leg) - frame.origin).dot(frame.along),
                 own_end = reach(lowest, end, {0, -lowest.depth / 2});
    const double width = seat.possible == RailSeat::rabbet ? lowest.width : build.width.value;
    seat.rail_cut = RailCut{width, std::max(0.0, inward * (tip - own_end)), build.thickness};
    return seat;
}

}  // namespace rakewright
