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
    return {Vector(from.foot.x(), from.foot.y(), nosings.at(from.foot.x())),
            x,
            y,
            nosings.slope * x,
            face_plane(from, faces[0]),
            face_plane(to, faces[1])};
}

RailLine line_over(double clear, const NosingLine& nosings) {
    return {Vector(0, 0, nosings.height),           1, 0, nosings.slope, {Vector::Zero(), Vector::UnitX()},
            {Vector(clear, 0, 0), -Vector::UnitX()}};
}

std::optional<double> face_along(const RailLine& line, End end, double above) {
    const Plane& face = line.face(end);
    const Vector way(line.x, line.y, line.slope);
    const double over = face.normal.dot(way);
    if (std::fabs(over) * steepest_cut < 1) return std::nullopt;
    return face.normal.dot(face.point - line.at(0, above)) / over;
}

}  // namespace rakewright
