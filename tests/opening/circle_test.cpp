#include "../../solver/opening/circle.hpp"

#include <algorithm>
#include <cmath>

#include "../support/catch.hpp"
#include "../support/near.hpp"
#include "../support/random.hpp"

namespace rakewright::tests {
namespace {

double diameter(const Outline& outline, const std::vector<Side2>& within = {}) {
    const auto circle = largest_circle(outline, within);
    REQUIRE(circle);
    return 2 * circle->radius;
}

double away(const Seen& p, const Seen& a, const Seen& b) {
    const double x = b.along - a.along, y = b.up - a.up;
    const double t = std::clamp(((p.along - a.along) * x + (p.up - a.up) * y) / (x * x + y * y), 0.0, 1.0);
    return std::hypot(p.along - a.along - t * x, p.up - a.up - t * y);
}

/// How far a point is from the outline; negative outside.
double room_at(const Outline& outline, const Seen& p) {
    double nearest = INFINITY;
    bool in = false;
    for (std::size_t i = 0; i < outline.size(); ++i) {
        const Seen &a = outline[i], &b = outline[(i + 1) % outline.size()];
        nearest = std::min(nearest, away(p, a, b));
        if ((a.up > p.up) != (b.up > p.up) && p.along < a.along + (p.up - a.up) / (b.up - a.up) * (b.along - a.along)) in = !in;
    }
    return in ? nearest : -nearest;
}

/// The most room found by walking uphill from a grid of starts with shrinking steps: never more than the truth.
double most_room_by_walking(const Outline& outline) {
    double best = 0;
    for (int i = 0; i < 24; ++i)
        for (int j = 0; j < 24; ++j) {
            Seen p{-12.0 + i, -12.0 + j};
            double here = room_at(outline, p);
            for (double step = 1; step > 1e-9;) {
                bool better = false;
                for (int k = 0; k < 16; ++k) {
                    const double turn = k * 0.39269908169872414;
                    const Seen q{p.along + step * std::cos(turn), p.up + step * std::sin(turn)};
                    if (const double there = room_at(outline, q); there > here) {
                        here = there;
                        p = q;
                        better = true;
                        break;
                    }
                }
                if (!better) step /= 2;
            }
            best = std::max(best, here);
        }
    return best;
}

/// A star about the origin: corners at rising angles, some of them far in, so that they stand into the opening.
Outline star(Random& random, int corners) {
    Outline outline;
    for (int i = 0; i < corners; ++i) {
        const double turn = (i + random.uniform(0.1, 0.9)) * 6.283185307179586 / corners, out = random.uniform(2, 11);
        outline.push_back({out * std::cos(turn), out * std::sin(turn)});
    }
    return outline;
}

}  // namespace

// The incircle of a triangle: r = 2A / (a + b + c); of a right triangle (a + b - c) / 2 (Kay 1969, p. 201, as quoted in encyclopedias).
TEST_CASE("the circle in a triangle is its incircle", "[opening][circle]") {
    CHECK_THAT(diameter({{0, 0}, {4, 0}, {0, 3}}), within(2, 1e-15));
    CHECK_THAT(diameter({{0, 0}, {12, 0}, {0, 5}}), within(4, 1e-14));
    CHECK_THAT(diameter({{0, 0}, {11, 0}, {11, 7}}), within(11 + 7 - std::sqrt(170.0), 1e-14));
    // A triangle moved off its hypotenuse: grown about the right angle in proportion.
    CHECK_THAT(diameter({{0, 0}, {4.4, 0}, {0, 3.3}}), within(2.2, 1e-14));
}

TEST_CASE("between parallel sides the circle is as wide as they are apart", "[opening][circle]") {
    const double b = 7.25 / 11;
    CHECK_THAT(diameter({{0, 0}, {3.75, 3.75 * b}, {3.75, 3.75 * b + 28}, {0, 28}}), within(3.75, 1e-14));
    CHECK_THAT(diameter({{0, 0}, {1000, 0}, {1000, 2}, {0, 2}}), within(2, 1e-15));
    // Two raked rails a plumb 4 apart, 7 in 11: 4 cos(rake) = 3.374646.
    const double rise = 7.0 / 11 * 100;
    CHECK_THAT(diameter({{0, 0}, {100, rise}, {100, rise + 4}, {0, 4}}), within(3.374646, 5e-7));
}

TEST_CASE("a corner that stands into the opening is touched, and a thin nosing", "[opening][circle]") {
    // An L of two arms 2 wide: the circle in the corner touches the outer sides and the inner corner.
    const double in_corner = 2 * 2 * std::sqrt(2.0) / (1 + std::sqrt(2.0));
    CHECK_THAT(diameter({{0, 0}, {6, 0}, {6, 2}, {2, 2}, {2, 6}, {0, 6}}), within(in_corner, 1e-14));
    // A square of 4 with a thin edge out to its middle and back.
    CHECK_THAT(diameter({{0, 0}, {4, 0}, {4, 4}, {2, 4}, {2, 2}, {2, 4}, {0, 4}}), within(2.343145750507620, 1e-14));
}

TEST_CASE("the centre keeps within its bounds", "[opening][circle]") {
    const Outline wedge{{0, 0}, {10, 0}, {10, 10}};
    const double free = diameter(wedge);
    CHECK(diameter(wedge, {{-1, 0, -5}}) < free);
    CHECK_THAT(diameter(wedge, {{-1, 0, -5}}), within(2 * 5 * (std::sqrt(2.0) - 1), 1e-14));
    CHECK_FALSE(largest_circle(wedge, {{1, 0, 20}}));
}

TEST_CASE("what is cut off an outline no longer counts", "[opening][circle]") {
    const Outline square{{0, 0}, {4, 0}, {4, 4}, {0, 4}};
    CHECK_THAT(diameter(clipped(square, {-1, 0, -3})), within(3, 1e-15));
    CHECK(clipped(square, {1, 0, 5}).empty());
    CHECK(clipped(square, {1, 0, -5}).size() == 4);
}

TEST_CASE("no walk uphill finds more room, in hundreds of stars", "[opening][circle]") {
    Random random("stars");
    for (int i = 0; i < 60; ++i) {
        const Outline outline = star(random, random.whole(3, 24));
        const auto circle = largest_circle(outline);
        REQUIRE(circle);
        const double walked = most_room_by_walking(outline);
        INFO("star " << i << " of " << outline.size());
        CHECK(circle->radius >= walked - 1e-9);
        CHECK_THAT(room_at(outline, circle->centre), within(circle->radius, 1e-11));
    }
}

TEST_CASE("turning, mirroring and scaling an opening do the same to its circle", "[opening][circle]") {
    Random random("turned stars");
    for (int i = 0; i < 200; ++i) {
        const Outline outline = star(random, random.whole(3, 16));
        const double before = diameter(outline);
        Outline turned, mirrored, doubled;
        for (const Seen& p : outline) {
            turned.push_back({0.6 * p.along - 0.8 * p.up, 0.8 * p.along + 0.6 * p.up});
            mirrored.insert(mirrored.begin(), {-p.along, p.up});
            doubled.push_back({2 * p.along, 2 * p.up});
        }
        CHECK_THAT(diameter(turned), within(before, 1e-11));
        CHECK_THAT(diameter(mirrored), within(before, 1e-11));
        CHECK(diameter(doubled) == 2 * before);
    }
}

}  // namespace rakewright::tests
