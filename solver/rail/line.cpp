#include "line.hpp"

#include <cmath>

#include "../measure/compare.hpp"

namespace rakewright {
namespace {

/// The level direction from one foot to the other. Feet in line with an axis but for rounding are in line with it: a
/// rail straight across its stair is level, not of a rake of 1e-16.
std::array<double, 2> level_way(const StandingPost& from, const StandingPost& to) {
    const double scale = std::fmax(from.foot.norm(), to.foot.norm());
    const auto apart = [&](double a, double b) { return same(a, b, scale) ? 0 : b - a; };
    const double x = apart(from.foot.x(), to.foot.x()), y = apart(from.foot.y(), to.foot.y());
    const double distance = std::sqrt(x * x + y * y);
    return {x / distance, y / distance};
}

/// Where the plane of a round post stands until it is known how high the rail meets it.
Plane plane_met(const StandingPost& post, Face face, const Vector& way) {
    return face == Face::round ? Plane{post.foot + post.radius * way, way} : face_plane(post, face);
}

Cylinder cylinder_of(const StandingPost& post) {
    return post.round() ? Cylinder{post.foot, post.tipped.upright, post.radius} : Cylinder{};
}

/// A middle line seen along a round post's axis: what of it is square to that, for each unit of level, and the point
/// where it is nearest to the axis, from there.
struct SeenAlongAxis {
    Vector way, nearest;
    double at_nearest = 0;  // along the line
    bool crosses = false;   // not so nearly along the axis that nothing can be cut to it
};

SeenAlongAxis seen_along_axis(const RailLine& line, const Cylinder& post, double above) {
    const auto square = [&](const Vector& v) { return Vector(v - post.upright.dot(v) * post.upright); };
    SeenAlongAxis seen;
    seen.way = square(Vector(line.x, line.y, line.slope));
    const Vector start = square(line.at(0, above) - post.point);
    const double size = seen.way.squaredNorm();
    seen.crosses = std::sqrt(size) * steepest_cut > 1;
    seen.at_nearest = seen.crosses ? -start.dot(seen.way) / size : 0;
    seen.nearest = start + seen.at_nearest * seen.way;
    return seen;
}

/// Where the middle line meets a round post, and the unit vector square to its surface there.
struct OnSurface {
    double along = 0;
    Vector normal;
};

std::optional<OnSurface> met_on_round(const RailLine& line, End end, double above) {
    const Cylinder& post = line.round(end);
    const SeenAlongAxis seen = seen_along_axis(line, post, above);
    const double room = post.radius * post.radius - seen.nearest.squaredNorm();
    if (!seen.crosses || room < 0) return std::nullopt;
    const double out = std::sqrt(room / seen.way.squaredNorm()) * (end == End::from ? 1 : -1);
    const OnSurface met{seen.at_nearest + out, (seen.nearest + out * seen.way) / post.radius};
    if (std::fabs(met.normal.dot(seen.way)) * steepest_cut < 1) return std::nullopt;
    return met;
}

}  // namespace

double RailLine::lengthened() const { return std::sqrt(1 + slope * slope); }

std::array<std::optional<Face>, 2> faces_between(const StandingPost& from, const StandingPost& to) {
    const auto [x, y] = level_way(from, to);
    return {face_left_by(from, x, y), face_left_by(to, -x, -y)};
}

bool straight_across(const StandingPost& from, const StandingPost& to) {
    return !(std::fabs(level_way(from, to)[0]) > 0);
}

RailLine line_between(const StandingPost& from, const StandingPost& to, const FacesMet& faces,
                      const StairShape& stair) {
    const auto [x, y] = level_way(from, to);
    const NosingLine nosings = *stair.line;
    const Vector way(x, y, 0);
    return {Vector(from.foot.x(), from.foot.y(), nosings.at(from.foot.x())),
            x,
            y,
            nosings.slope * x,
            plane_met(from, faces[0], way),
            plane_met(to, faces[1], -way),
            {},
            {cylinder_of(from), cylinder_of(to)}};
}

RailLine line_over(double clear, const NosingLine& nosings, const Radii& radii) {
    RailLine line{Vector(0, 0, nosings.height),
                  1,
                  0,
                  nosings.slope,
                  {Vector::Zero(), Vector::UnitX()},
                  {Vector(clear, 0, 0), -Vector::UnitX()},
                  {},
                  {}};
    line.rounds[0] = {Vector(-radii[0], 0, 0), Vector::UnitZ(), radii[0]};
    line.rounds[1] = {Vector(clear + radii[1], 0, 0), Vector::UnitZ(), radii[1]};
    return line;
}

std::optional<double> face_along(const RailLine& line, End end, double above) {
    if (line.is_round(end)) {
        const std::optional<OnSurface> met = met_on_round(line, end, above);
        return met ? std::optional(met->along) : std::nullopt;
    }
    const Plane& face = line.face(end);
    const Vector way(line.x, line.y, line.slope);
    const double over = face.normal.dot(way);
    if (std::fabs(over) * steepest_cut < 1) return std::nullopt;
    return face.normal.dot(face.point - line.at(0, above)) / over;
}

std::optional<Plane> face_at(const RailLine& line, End end, double above) {
    if (!line.is_round(end)) return line.face(end);
    const std::optional<OnSurface> met = met_on_round(line, end, above);
    return met ? std::optional(Plane{line.at(met->along, above), met->normal}) : std::nullopt;
}

double off_axis(const RailLine& line, End end, double above) {
    return seen_along_axis(line, line.round(end), above).nearest.norm();
}

void touch_round_posts(RailLine& line, double above) {
    for (const End end : {End::from, End::to})
        if (line.is_round(end))
            if (const std::optional<Plane> plane = face_at(line, end, above))
                (end == End::from ? line.from : line.to) = *plane;
}

}  // namespace rakewright
