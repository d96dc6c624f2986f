#include <cmath>
#include <functional>

#include "../../solver/crew/surface.hpp"
#include "../support/near.hpp"
#include "../support/random.hpp"
#include "../support/turned_build.hpp"

// Surfaces against closed forms, and by adding up the triangles between points that are found here: where the arrises,
// or the lines of a grid, meet the planes and cylinders of the ends in the world.

namespace rakewright::tests {
namespace {

constexpr double pi = 3.14159265358979323846;

double triangle(const Vector& a, const Vector& b, const Vector& c) { return (b - a).cross(c - a).norm() / 2; }

/// Two triangles over four corners in order.
double four(const Vector& a, const Vector& b, const Vector& c, const Vector& d) {
    return triangle(a, b, c) + triangle(a, c, d);
}

/// Over a sheet of points, u and v from 0 to 1.
double sheet(const std::function<Vector(double, double)>& at, int parts_u, int parts_v) {
    double area = 0;
    for (int i = 0; i < parts_u; ++i)
        for (int j = 0; j < parts_v; ++j) {
            const double u = double(i) / parts_u, v = double(j) / parts_v, u2 = double(i + 1) / parts_u,
                         v2 = double(j + 1) / parts_v;
            area += four(at(u, v), at(u2, v), at(u2, v2), at(u, v2));
        }
    return area;
}

/// The sum of triangles errs by the square of their size: from two sums, without that.
double extrapolated(const std::function<double(int)>& sum, int parts) { return (4 * sum(2 * parts) - sum(parts)) / 3; }

struct Met {
    Vector normal, point;
};

Vector where_met(const Frame& frame, Spot spot, const Met& plane) {
    const Vector from = frame.origin + spot.left * frame.left + spot.top * frame.top;
    return from + plane.normal.dot(plane.point - from) / plane.normal.dot(frame.along) * frame.along;
}

/// Where a line along a stick meets a cylinder, the nearer or the farther time.
Vector where_met(const Frame& frame, Spot spot, const Shaft& cylinder, bool farther) {
    const Vector from = frame.origin + spot.left * frame.left + spot.top * frame.top;
    const auto off_axis = [&](const Vector& way) { return Vector(way - way.dot(cylinder.upright) * cylinder.upright); };
    const Vector along = off_axis(frame.along), start = off_axis(from - cylinder.point);
    const double a = along.dot(along), b = along.dot(start), c = start.dot(start) - cylinder.radius * cylinder.radius;
    const double reach = std::sqrt(std::fmax(0, b * b - a * c));
    return from + (-b + (farther ? reach : -reach)) / a * frame.along;
}

Spot corner(const CrossSection& section, int number) {
    static constexpr int left[] = {1, -1, -1, 1}, top[] = {1, 1, -1, -1};
    return {left[number] * section.width / 2, top[number] * section.depth / 2};
}

}  // namespace

TEST_CASE("a square-ended stick has the surface of a box", "[crew][surface]") {
    const Surface surface = surface_of(Piece{{3.5, 1.25}, {0, 0, 0}, {60, 0, 0}});
    CHECK(surface.sides == 2 * (3.5 + 1.25) * 60);
    CHECK(surface.ends == 2 * 3.5 * 1.25);
    CHECK(surface.all() == surface.sides + surface.ends);
}

TEST_CASE("plumb ends on a rake of 3 in 4 are as deep as the rail is plumb", "[crew][surface]") {
    // By hand: 4 / cos r = 5 deep, 2 wide; parallel ends leave the sides as those of a box.
    const Surface surface = surface_of(Piece{{2, 4}, {0, 0, -0.75}, {40, 0, -0.75}});
    CHECK_THAT(surface.sides, within(2 * (2 + 4) * 40, 1e-12));
    CHECK_THAT(surface.ends, within(2 * 2 * 5, 1e-12));
    // A picket, square at its foot: 1 x 1, its head on that rake; sides of 30.375 and 29.625, and two between.
    const Surface picket = surface_of(Piece{{1, 1}, {0, 0, 0}, {30, 0, 0.75}});
    CHECK_THAT(picket.sides, within(30.375 + 29.625 + 2 * 30, 1e-12));
    CHECK_THAT(picket.ends, within(1 + 1.25, 1e-12));
}

TEST_CASE("sticks between leaning planes have the surface of the triangles between their corners", "[crew][surface]") {
    Random random("triangles of sticks");
    for (int i = 0; i < 300; ++i) {
        const double turn = random.uniform(0, 2 * pi);
        const Frame frame = frame_on_slope(Vector(1, 2, 3), std::cos(turn), std::sin(turn), random.uniform(-1.2, 1.2));
        const CrossSection section{random.uniform(0.5, 4), random.uniform(0.5, 4)};
        const auto plane_at = [&](double along) {
            const Vector leaning =
                frame.along + random.uniform(-0.9, 0.9) * frame.left + random.uniform(-0.9, 0.9) * frame.top;
            return Met{leaning.normalized(), frame.origin + along * frame.along};
        };
        const Met from = plane_at(2), to = plane_at(40);
        const std::optional<Slant> slant_from = cut(frame, {from.point, from.normal}),
                                   slant_to = cut(frame, {to.point, to.normal});
        REQUIRE((slant_from && slant_to));
        std::array<Vector, 4> near, far;
        for (int c = 0; c < 4; ++c) {
            near[static_cast<std::size_t>(c)] = where_met(frame, corner(section, c), from);
            far[static_cast<std::size_t>(c)] = where_met(frame, corner(section, c), to);
        }
        double sides = 0;
        for (std::size_t c = 0; c < 4; ++c) sides += four(near[c], near[(c + 1) % 4], far[(c + 1) % 4], far[c]);
        const double ends = four(near[0], near[1], near[2], near[3]) + four(far[0], far[1], far[2], far[3]);
        const Surface surface = surface_of(Piece{section, *slant_from, *slant_to});
        CHECK_THAT(surface.sides, within(sides, 1e-11 * sides));
        CHECK_THAT(surface.ends, within(ends, 1e-12 * ends));
    }
}

TEST_CASE("a level rail coped to a plumb post", "[crew][surface]") {
    // Derived: the end is an arc of the post, as high as the rail is deep; the top and the bottom lose a segment's
    // rest to the plane that touches; the sides run on to where they meet the post.
    for (const double radius : {5.0, 2.0, 1.25}) {
        const double half = 1.25, depth = 1.5, clear = 50, arc = 2 * radius * std::asin(half / radius);
        const Frame frame = frame_on_slope(Vector::Zero(), 1, 0, 0);
        const Shaft from{Vector(-radius, 0, 0), Vector::UnitZ(), radius},
            to{Vector(clear + radius, 0, 0), Vector::UnitZ(), radius};
        const CrossSection section{2 * half, depth};
        const Coping first = cope_to(frame, section, from, End::from), last = cope_to(frame, section, to, End::to);
        REQUIRE((first.touching && last.touching));
        const Surface surface = surface_of(Piece{section, *first.touching, *last.touching}, {first.cope, last.cope});
        const double out = std::sqrt(radius * radius - half * half), under = half * out + radius * arc / 2;
        CHECK_THAT(surface.ends, within(2 * depth * arc, 1e-12));
        CHECK_THAT(surface.sides,
                   within(2 * (2 * half * (clear + 2 * radius) - 2 * under) + 2 * depth * (clear + 2 * (radius - out)),
                          1e-11));
    }
}

TEST_CASE("rails coped to leaning posts have the surface of many triangles", "[crew][surface]") {
    Random random("triangles of copes");
    for (int i = 0; i < 12; ++i) {
        const double turn = random.uniform(0, 2 * pi);
        const Frame frame = frame_on_slope(Vector::Zero(), std::cos(turn), std::sin(turn), random.uniform(-1, 1));
        const CrossSection section{random.uniform(0.5, 3), random.uniform(0.5, 3)};
        const auto post_at = [&](double along) {
            const Vector upright = Vector(random.uniform(-0.2, 0.2), random.uniform(-0.2, 0.2), 1).normalized();
            return Shaft{frame.origin + along * frame.along + random.uniform(-1, 1) * frame.left, upright,
                            random.uniform(5, 9)};
        };
        const Shaft from = post_at(0), to = post_at(60);
        const Coping first = cope_to(frame, section, from, End::from), last = cope_to(frame, section, to, End::to);
        REQUIRE((first.touching && last.touching));
        const Surface surface = surface_of(Piece{section, *first.touching, *last.touching}, {first.cope, last.cope});
        const auto spot_at = [&](double u, double v) {
            return Spot{(u - 0.5) * section.width, (v - 0.5) * section.depth};
        };
        const auto near = [&](Spot spot) { return where_met(frame, spot, from, true); };
        const auto far = [&](Spot spot) { return where_met(frame, spot, to, false); };
        const auto ends = [&](int parts) {
            return sheet([&](double u, double v) { return near(spot_at(u, v)); }, parts, parts) +
                   sheet([&](double u, double v) { return far(spot_at(u, v)); }, parts, parts);
        };
        const auto sides = [&](int parts) {
            double area = 0;
            for (int c = 0; c < 4; ++c) {
                const Spot a = corner(section, c), b = corner(section, (c + 1) % 4);
                area += sheet(
                    [&](double u, double v) {
                        const Spot spot{a.left + u * (b.left - a.left), a.top + u * (b.top - a.top)};
                        return Vector((1 - v) * near(spot) + v * far(spot));
                    },
                    parts, 1);
            }
            return area;
        };
        // What is left after extrapolation shrinks with the fourth power of the parts.
        CHECK_THAT(surface.ends, within(extrapolated(ends, 24), 1e-6 * surface.ends));
        CHECK_THAT(surface.sides, within(extrapolated(sides, 32), 1e-7 * surface.sides));
    }
}

TEST_CASE("a round stick has a mantle and two ellipses", "[crew][surface]") {
    // By hand: cut on a rake of 3 in 4, an ellipse's area is the circle's by 5/4.
    const Surface surface = round_surface(Piece{{2, 2}, {0, 0, 0}, {30, 0, 0.75}});
    CHECK_THAT(surface.sides, within(pi * 2 * 30, 1e-12));
    CHECK_THAT(surface.ends, within(pi + pi * 1.25, 1e-12));
    const Surface profile = profile_surface(Piece{{2, 2}, {0, 0, 0}, {30, 0, 0}}, 5.5);
    CHECK(profile.sides == 5.5 * 30);
    CHECK(profile.ends == 8);
}

TEST_CASE("a turned picket is its blocks, their shoulders and the frusta between", "[crew][surface]") {
    PicketBuild bought;
    turn(bought, {{4, 0.875}, {14, 1.25}});
    const double width = turned_width, lower = 7, upper = 6, rake = 0.75;
    const Piece piece{{width, width}, {0, 0, rake}, {lower + turned_span + upper, 0, rake}};
    Trim trim;
    trim.lower_block = lower;
    trim.upper_block = upper;
    const Surface surface = turned_surface(bought, piece, trim);
    // By triangles of a lathe's many facets.
    const std::vector<std::pair<double, double>> rings{{0, width}, {4, 0.875}, {14, 1.25}, {turned_span, width}};
    const auto facets = [&](int parts) {
        double area = 0;
        for (std::size_t r = 1; r < rings.size(); ++r)
            area += sheet(
                [&](double u, double v) {
                    const double d = (1 - v) * rings[r - 1].second + v * rings[r].second,
                                 z = (1 - v) * rings[r - 1].first + v * rings[r].first;
                    return Vector(d / 2 * std::cos(2 * pi * u), d / 2 * std::sin(2 * pi * u), z);
                },
                parts, 1);
        return area;
    };
    const double blocks = 4 * width * (lower + upper), shoulders = 2 * (width * width - pi * width * width / 4);
    CHECK_THAT(surface.sides, within(blocks + shoulders + extrapolated(facets, 256), 1e-7));
    CHECK_THAT(surface.ends, within(2 * width * width * 1.25, 1e-12));
    // A shaft between shoulders, by hand: what a block's end shows is its square less the shaft's circle.
    PicketBuild shafted;
    turn(shafted, shaft(1));
    const Surface plain = turned_surface(shafted, piece, trim);
    CHECK_THAT(plain.sides, within(blocks + 2 * (width * width - pi / 4) + pi * turned_span, 1e-11));
}

}  // namespace rakewright::tests
