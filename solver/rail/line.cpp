#include "line.hpp"

#include <cmath>

#include "../measure/compare.hpp"

namespace rakewright {
namespace {

/// The level distances between two feet. Feet in line with an axis but for rounding are in line with it: a rail
/// straight across its stair is level, not of a rake of 1e-16.
std::array<double, 2> feet_apart(const StandingPost& from, const StandingPost& to) {
    const double scale = std::fmax(from.foot.norm(), to.foot.norm());
    const auto apart = [&](double a, double b) { return same(a, b, scale) ? 0 : b - a; };
    return {apart(from.foot.x(), to.foot.x()), apart(from.foot.y(), to.foot.y())};
}

Shaft shaft_of(const StandingPost& post) { return {post.foot, post.tipped.upright, post.radius, post.widening_along}; }

/// What a line meets at a post; where a round post's plane stands is not known until it is known how high it is met.
Meeting meeting_at(const StandingPost& post, Face face, const Vector& way) {
    if (face == Face::joint) return {{post.foot, way}, {}};
    if (face != Face::round) return {face_plane(post, face), {}};
    return {{post.foot + post.radius * way, way}, shaft_of(post)};
}

TrimMet trim_met(const StandingPost& post, Face face, const Vector& way) {
    if (!post.trim) return {};
    const double radius = post.trim->half_along, up_to = post.foot.z() + post.trim->height;
    if (face != Face::round) return {{trim_plane(post, face), {}}, up_to};
    return {{{post.foot + radius * way, way}, {post.foot, post.tipped.upright, radius, 0}}, up_to};
}

/// Where the middle line meets a round post, level along it, and the unit vector square to its surface there.
std::optional<OnShaft> met_on_round(const RailLine& line, const Shaft& post, End end, double above) {
    const Vector way = Vector(line.x, line.y, line.slope) / line.lengthened();
    std::optional<OnShaft> met = met_on(post, line.at(0, above), way, end == End::from);
    if (!met || std::fabs(met->outward.dot(way)) * steepest_cut < 1) return std::nullopt;
    met->along /= line.lengthened();
    return met;
}

/// How far along the line a meeting stands.
std::optional<double> met_along(const RailLine& line, const Plane& plane, const Shaft& round, End end, double above) {
    if (round.radius > 0) {
        const std::optional<OnShaft> met = met_on_round(line, round, end, above);
        return met ? std::optional(met->along) : std::nullopt;
    }
    const Vector way(line.x, line.y, line.slope);
    const double over = plane.normal.dot(way);
    if (std::fabs(over) * steepest_cut < 1) return std::nullopt;
    return plane.normal.dot(plane.point - line.at(0, above)) / over;
}

/// Whether a line at that height meets the boards round a post's foot.
bool meets_trim(const RailLine& line, End end, double above) {
    const TrimMet& trim = line.trim(end);
    if (!trim.there()) return false;
    const std::optional<double> along = met_along(line, trim.face.plane, trim.face.round, end, above);
    return along && less_than(line.at(*along, above).z(), trim.up_to, std::fabs(trim.up_to) + std::fabs(above));
}

Meeting of_post(const RailLine& line, End end) { return {line.face(end), line.round(end)}; }

/// A post's plane and the axis of a round one, for a post without a place whose face at two heights over the line
/// stands there, and whose centre the line passes to the left of.
void lean_face(RailLine& line, End end, const std::array<double, 2>& above, const std::array<double, 2>& along) {
    const double inward = end == End::from ? 1 : -1;
    const Vector low = line.at(along[0], above[0]), high = line.at(along[1], above[1]);
    const Vector up = (high - low).normalized();
    const Vector normal = inward * Vector(up.z() * line.x, up.z() * line.y, -(up.x() * line.x + up.y() * line.y));
    (end == End::from ? line.from : line.to) = {low, normal};
    Shaft& round = line.rounds[index_of(end)];
    if (round.radius == 0) return;
    const Vector left(-line.y, line.x, 0);
    const double beside = left.dot(line.origin - round.point);
    round.upright = up;
    round.point = low - std::sqrt(round.radius * round.radius - beside * beside) * normal - beside * left;
}

}  // namespace

double RailLine::lengthened() const { return std::sqrt(1 + slope * slope); }

std::optional<LevelWay> way_between(const StandingPost& from, const StandingPost& to, const Offsets& beside) {
    const auto [x, y] = feet_apart(from, to);
    if (x == 0 && y == 0) return std::nullopt;
    const double distance = std::sqrt(x * x + y * y);
    const LevelWay centres{x / distance, y / distance};
    if (beside[0] == beside[1]) return centres;
    // The line touches a circle round each centre, with its offset as the radius.
    const double sine = (beside[1] - beside[0]) / distance;
    if (!less_than(std::fabs(sine), 1)) return std::nullopt;
    const double cosine = std::sqrt(1 - sine * sine);
    return LevelWay{cosine * centres.x - sine * centres.y, cosine * centres.y + sine * centres.x};
}

bool straight_across(const StandingPost& from, const StandingPost& to, const Offsets& beside) {
    const std::optional<LevelWay> way = way_between(from, to, beside);
    return way && !(std::fabs(way->x) > 0);
}

RailLine line_between(const StandingPost& from, const StandingPost& to, const LevelWay& way, const Offsets& beside,
                      const FacesMet& faces, const NosingLine& nosings) {
    const auto [x, y] = way;
    const Vector ahead(x, y, 0), start = from.foot + beside[0] * Vector(-y, x, 0);
    const Meeting at_from = meeting_at(from, faces[0], ahead), at_to = meeting_at(to, faces[1], -ahead);
    return {Vector(start.x(), start.y(), nosings.at(start.x())),
            x,
            y,
            nosings.slope * x,
            at_from.plane,
            at_to.plane,
            {},
            {at_from.round, at_to.round},
            {trim_met(from, faces[0], ahead), trim_met(to, faces[1], -ahead)},
            {0, ahead.dot(to.foot - start)},
            {},
            {from.joint, to.joint}};
}

RailLine line_over(double clear, const NosingLine& nosings, const std::array<PlacelessPost, 2>& posts,
                   const Offsets& beside) {
    RailLine line{Vector(0, 0, nosings.height),
                  1,
                  0,
                  nosings.slope,
                  {Vector::Zero(), Vector::UnitX()},
                  {Vector(clear, 0, 0), -Vector::UnitX()},
                  {},
                  {},
                  {},
                  {},
                  {},
                  {}};
    for (std::size_t e = 0; e < 2; ++e) {
        const PlacelessPost& post = posts[e];
        const double face = e == 0 ? 0 : clear, inward = e == 0 ? 1 : -1;
        const auto out_to = [&](double radius) {
            return std::sqrt(std::fmax(0, radius * radius - beside[e] * beside[e]));
        };
        const double centre = face - inward * (post.radius > 0 ? out_to(post.radius) : post.half_along);
        line.centres[e] = centre;
        const auto cylinder = [&](double radius) {
            return Shaft{Vector(centre, -beside[e], 0), Vector::UnitZ(), radius, 0};
        };
        if (post.radius > 0) line.rounds[e] = cylinder(post.radius);
        if (!post.trim || nosings.slope != 0) continue;
        const Plane plane{Vector(centre + inward * post.trim->half_along, 0, 0), inward * Vector::UnitX()};
        line.trims[e] = {{plane, post.radius > 0 ? cylinder(post.trim->half_along) : Shaft{}},
                         nosings.height + post.trim->height};
    }
    return line;
}

void lean_faces(RailLine& line, const ClearTwice& clear, double low, double high) {
    const double middle = (clear.low + clear.high) / 2, wider = (clear.high - clear.low) / 2;
    const double at_from = clear.plumb == PlumbPost::from ? 0 : clear.plumb == PlumbPost::to ? 1 : 0.5;
    lean_face(line, End::from, {low, high}, {at_from * wider, -at_from * wider});
    lean_face(line, End::to, {low, high}, {middle - (1 - at_from) * wider, middle + (1 - at_from) * wider});
}

void move_end(RailLine& line, End end, double by) {
    const Vector moved(by * line.x, by * line.y, 0);
    const std::size_t e = index_of(end);
    (end == End::from ? line.from : line.to).point += moved;
    line.rounds[e].point += moved;
    line.trims[e].face.plane.point += moved;
    line.trims[e].face.round.point += moved;
    line.centres[e] += by;
    line.ends[e].along += by;
    for (Plane& plane : line.ends[e].planes) plane.point += moved;
}

std::optional<double> face_along(const RailLine& line, End end, double above) {
    if (meets_trim(line, end, above))
        return met_along(line, line.trim(end).face.plane, line.trim(end).face.round, end, above);
    return met_along(line, line.face(end), line.round(end), end, above);
}

std::optional<Plane> plane_met(const RailLine& line, const Meeting& meeting, End end, double above) {
    if (!meeting.is_round()) return meeting.plane;
    const std::optional<OnShaft> met = met_on_round(line, meeting.round, end, above);
    return met ? std::optional(Plane{line.at(met->along, above), met->outward}) : std::nullopt;
}

std::optional<Plane> face_at(const RailLine& line, End end, double above) {
    return plane_met(line, meets_trim(line, end, above) ? line.trim(end).face : of_post(line, end), end, above);
}

double sinks_into_trim(const RailLine& line, End end, double underside) {
    const TrimMet& trim = line.trim(end);
    if (!trim.there() || meets_trim(line, end, underside)) return 0;
    const std::optional<double> along = met_along(line, line.face(end), line.round(end), end, underside);
    if (!along) return 0;
    const double up = line.at(*along, underside).z();
    return less_than(up, trim.up_to, std::fabs(trim.up_to) + std::fabs(underside)) ? trim.up_to - up : 0;
}

Meeting met_between(const RailLine& line, End end, double underside, double top) {
    const bool reaches_down = meets_trim(line, end, underside) || meets_trim(line, end, top);
    return reaches_down ? line.trim(end).face : of_post(line, end);
}

double off_axis(const RailLine& line, End end, double above) {
    return crossing_of(line.round(end), line.at(0, above), Vector(line.x, line.y, line.slope) / line.lengthened()).off;
}

void touch_round_posts(RailLine& line, double above) {
    for (const End end : both_ends)
        if (line.is_round(end))
            if (const std::optional<Plane> plane = face_at(line, end, above))
                (end == End::from ? line.from : line.to) = *plane;
}

}  // namespace rakewright
