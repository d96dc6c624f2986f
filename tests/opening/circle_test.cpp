#include "../../solver/opening/circle.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "../support/near.hpp"
#include "../support/random_opening.hpp"

using namespace rakewright;
using namespace rakewright::tests;

namespace {

double diameter_in(const Outline& outline) {
    const std::vector<Obstacle> walls = walls_of(outline);
    const std::optional<LargestCircle> found = largest_circle(walls);
    REQUIRE(found);
    CHECK(found->proven);
    return found->circle.diameter;
}

/// Under a rail whose underside stands `lift` plumb over the line of the nosings, on an even stair, with its centre
/// over tread 1: as docs/results.md says it. The underside of a nosing is thin.
Opening2 under_rail(double rise, double run, double nosing, double lift) {
    Opening2 opening;
    for (int step = 0; step < 4; ++step) {
        const double x = step * run, z = (step + 1) * rise;
        opening.obstacles.push_back({{x - run - (step == 0 ? 20 * rise : 0), z - rise}, {x + nosing, z - rise}});
        opening.obstacles.push_back({{x + nosing, z - rise}, {x + nosing, z}});
        if (nosing > 0) opening.obstacles.push_back({{x + nosing, z}, {x, z}});
    }
    const double slope = rise / run, size = std::sqrt(1 + slope * slope);
    opening.obstacles.push_back({{-5 * run, lift - 4 * rise}, {6 * run, lift + 7 * rise}});
    opening.centre_within = {{1, 0, 0}, {-1, 0, -run}, {0, 1, rise}, {slope / size, -1 / size, -(rise + lift) / size}};
    return opening;
}

double diameter_in(const Opening2& opening) {
    const std::optional<LargestCircle> found = largest_circle(opening.obstacles, opening.centre_within);
    REQUIRE(found);
    CHECK(found->proven);
    return found->circle.diameter;
}

constexpr double inf = std::numeric_limits<double>::infinity();

}  // namespace

TEST_CASE("The circle in a triangle has the inscribed circle's diameter") {
    SECTION("3-4-5: a + b - c is 2, in every order of the sides") {
        CHECK_THAT(diameter_in({{0, 0}, {4, 0}, {4, 3}}), within_ulp(2, 4));
        CHECK_THAT(diameter_in({{4, 0}, {4, 3}, {0, 0}}), within_ulp(2, 4));
    }
    SECTION("any triangle: 4 A / (a + b + c); 13-14-15 has A = 84") {
        // With the side of 14 level and 5 + 9 under the height of 12.
        CHECK_THAT(diameter_in({{0, 0}, {14, 0}, {5, 12}}), within_ulp(8, 4));
    }
}

TEST_CASE("A rail on the nosing line leaves the inscribed circle of tread, riser and rail") {
    // Derived: the incircle of a right triangle is R + T - sqrt(R^2 + T^2) wide; here to eight figures.
    const auto [rise, run, sphere, last_figure] =
        GENERATE(table<double, double, double, double>({{7, 11, 4.9615952, 1e-7},
                                                        {7.75, 10, 5.0984191, 1e-7},
                                                        {7, 10, 4.7934444, 1e-7},
                                                        {8.25, 9, 5.0408846, 1e-7},
                                                        {7.125, 10.375, 4.9140455, 1e-7},
                                                        {178, 279, 126.05439, 1e-5}}));
    const double exact = rise + run - std::sqrt(rise * rise + run * run);
    CHECK_THAT(exact, within(sphere, last_figure));
    CHECK_THAT(diameter_in(under_rail(rise, run, 0, 0)), within(exact, 1e-12 * exact));
    CHECK_THAT(diameter_in({{0, 0}, {run, 0}, {run, rise}}), within(exact, 1e-12 * exact));
}

TEST_CASE("A rail moved off the nosing line enlarges the triangle in proportion") {
    // Derived: D = (R + T - sqrt(R^2 + T^2)) (1 + c/R + n/T), solved for c at a sphere of 6 in and of 152 mm.
    const auto [rise, run, nosing, lift, sphere, last_figure] =
        GENERATE(table<double, double, double, double, double, double>({{7, 11, 0, 1.46502, 6, 2e-5},
                                                                        {7.75, 10, 0, 1.37047, 6, 2e-5},
                                                                        {7, 10, 0, 1.76197, 6, 2e-5},
                                                                        {7, 11, 1.25, 0.669565, 6, 2e-6},
                                                                        {178, 279, 0, 36.6375, 152, 2e-4},
                                                                        {7, 11, 1.25, 0, 5.5254128, 1e-7}}));
    const double exact = (rise + run - std::sqrt(rise * rise + run * run)) * (1 + lift / rise + nosing / run);
    CHECK_THAT(exact, within(sphere, last_figure));
    CHECK_THAT(diameter_in(under_rail(rise, run, nosing, lift)), within(exact, 1e-12 * exact));
}

TEST_CASE("Parallel members leave the gap between them") {
    SECTION("plumb pickets between raked rails: the level gap") {
        CHECK_THAT(diameter_in({{0, 0}, {3.875, 2.25}, {3.875, 32.25}, {0, 30}}), within_ulp(3.875, 4));
    }
    SECTION("raked rails a plumb 4 apart on 7/11: v cos r, derived: 4 x 11 / sqrt(170)") {
        const double exact = 44 / std::sqrt(170.0), slope = 7.0 / 11;
        CHECK_THAT(exact, within(3.374646, 5e-7));
        CHECK_THAT(diameter_in({{0, 0}, {60, 60 * slope}, {60, 60 * slope + 4}, {0, 4}}), within(exact, 1e-14));
    }
    SECTION("a square, a long box, and walls cut in two") {
        CHECK_THAT(diameter_in({{0, 0}, {4, 0}, {4, 4}, {0, 4}}), within_ulp(4, 2));
        CHECK_THAT(diameter_in({{0, 0}, {1000, 0}, {1000, 4}, {0, 4}}), within_ulp(4, 2));
        CHECK_THAT(diameter_in({{0, 0}, {3, 0}, {30, 0}, {30, 4}, {11, 4}, {3, 4}, {0, 4}}), within_ulp(4, 2));
    }
}

TEST_CASE("Corners that stand into the opening are touched") {
    // An L of arms 1 wide: the circle touches both outer walls and the inner corner, (1 - r) sqrt 2 = r.
    CHECK_THAT(diameter_in({{0, 0}, {3, 0}, {3, 1}, {1, 1}, {1, 3}, {0, 3}}), within(4 - 2 * std::sqrt(2.0), 1e-14));
    // A cross: four inner corners of a square of side 1.
    const Outline cross{{1, 0}, {2, 0}, {2, 1}, {3, 1}, {3, 2}, {2, 2}, {2, 3}, {1, 3}, {1, 2}, {0, 2}, {0, 1}, {1, 1}};
    CHECK_THAT(diameter_in(cross), within(std::sqrt(2.0), 1e-14));
    // A thin nosing out and back half-way up a box of 4: beyond its tip 1 from the left, touching tip, right wall and
    // floor or ceiling.
    const Outline nosing{{0, 0}, {4, 0}, {4, 4}, {0, 4}, {0, 2}, {1, 2}, {0, 2}};
    // (4 - r - 1)^2 + (2 - r)^2 = r^2, so r = 5 - sqrt 12.
    CHECK_THAT(diameter_in(nosing), within(2 * (5 - std::sqrt(12.0)), 1e-13));
}

TEST_CASE("Points alone hold a circle, the centre kept among them") {
    const Opening2 points{{{{-3, 0}, {-3, 0}}, {{3, 0}, {3, 0}}, {{0, 4}, {0, 4}}},
                          {{0, 1, 0}, {-0.8, -0.6, -2.4}, {0.8, -0.6, -2.4}}};
    // Circumscribed: a b c / (2 A) = 5 5 6 / 24, its centre in the triangle.
    CHECK_THAT(diameter_in(points), within(6.25, 1e-14));
}

TEST_CASE("A bound of the centre holds a circle as a wall does") {
    const std::vector<Obstacle> box = walls_of({{0, 0}, {10, 0}, {10, 4}, {0, 4}});
    const std::vector<Obstacle> wedge = walls_of({{0, 0}, {12, 0}, {12, 5}});
    SECTION("on the bound: the centre 2 from the tip of a wedge of slope 5/12 (half slope 1/5)") {
        const std::vector<Side2> within_two{{-1, 0, -2}};
        const auto found = largest_circle(wedge, within_two);
        REQUIRE(found);
        CHECK_THAT(found->circle.diameter, within(0.8, 1e-14));
        CHECK(found->touches ==
              std::array<Touch, 3>{Touch{Touch::Part::left, 0}, {Touch::Part::left, 2}, {Touch::Part::bound, 0}});
    }
    SECTION("where two bounds meet: as far as the nearest wall") {
        const std::vector<Side2> corner{{-1, 0, -1.5}, {0, -1, -1}};
        const auto found = largest_circle(box, corner);
        REQUIRE(found);
        CHECK_THAT(found->circle.diameter, within(2, 1e-14));
        CHECK_THAT(found->circle.centre.up, within(1, 1e-14));
    }
    SECTION("both ends are included: bounds on one line leave that line") {
        const std::vector<Side2> line{{1, 0, 1}, {-1, 0, -1}};
        const auto found = largest_circle(box, line);
        REQUIRE(found);
        CHECK_THAT(found->circle.diameter, within(2, 1e-14));
        CHECK_THAT(found->circle.centre.along, within(1, 1e-14));
    }
    SECTION("bounds that leave nothing") {
        const std::vector<Side2> empty{{1, 0, 6}, {-1, 0, -5}}, elsewhere{{1, 0, 20}};
        CHECK_FALSE(largest_circle(box, empty));
        CHECK_FALSE(largest_circle(box, elsewhere));
    }
}

TEST_CASE("What holds no circle gives none") {
    const double nan = std::numeric_limits<double>::quiet_NaN();
    const Obstacle wall{{0, 0}, {1, 0}}, point{{0, 0}, {0, 0}};
    const std::vector<Side2> strip{{1, 0, 0}, {-1, 0, -1}}, box{{1, 0, 0}, {-1, 0, -1}, {0, 1, 0}, {0, -1, -1}};
    CHECK_FALSE(largest_circle({}));
    CHECK_FALSE(largest_circle({}, box));
    CHECK_FALSE(largest_circle(std::vector{wall}));
    CHECK_FALSE(largest_circle(std::vector{wall, point}, strip));
    CHECK(largest_circle(std::vector{wall, point}, box));
    CHECK_FALSE(largest_circle(walls_of({{0, 0}, {1, 0}})));
    CHECK_FALSE(largest_circle(walls_of({{0, 0}, {0, 0}, {0, 0}})));
    CHECK_FALSE(largest_circle(walls_of({{0, 0}, {1, 1}, {2, 2}})));
    // Clockwise: the opening would be all round it.
    CHECK_FALSE(largest_circle(walls_of({{0, 0}, {0, 1}, {1, 1}, {1, 0}})));
    std::vector<Obstacle> open = walls_of({{0, 0}, {1, 0}, {1, 1}});
    open.pop_back();
    CHECK_FALSE(largest_circle(open));
    for (const double bad : {nan, inf, -inf}) {
        CHECK_FALSE(largest_circle(walls_of({{0, 0}, {1, bad}, {1, 1}})));
        CHECK_FALSE(largest_circle(std::vector{wall}, std::vector<Side2>{{1, 0, bad}}));
    }
    CHECK_FALSE(largest_circle(std::vector{wall}, std::vector<Side2>{{0, 0, 1}}));
    CHECK_FALSE(largest_circle(walls_of({{-1e308, 0}, {1e308, -1e308}, {0, 1e308}})));
}

TEST_CASE("One obstacle in bounds of the centre") {
    const std::vector<Side2> box{{1, 0, 0}, {-1, 0, -3}, {0, 1, 0}, {0, -1, -4}};
    const auto found = largest_circle(std::vector<Obstacle>{{{0, 0}, {0, 0}}}, box);
    REQUIRE(found);
    CHECK_THAT(found->circle.diameter, within(10, 1e-14));  // to the far corner of 3 by 4
}

TEST_CASE("A circle is measured again from what holds it") {
    const Outline before{{0, 0}, {11, 0}, {11, 7}};
    const Outline after{{0, 0.125}, {11, 0}, {11.25, 7}};
    const auto decided = largest_circle(walls_of(before)), moved = largest_circle(walls_of(after));
    REQUIRE((decided && moved));
    const auto again = circle_touching(walls_of(before), {}, *decided),
               measured = circle_touching(walls_of(after), {}, *decided);
    REQUIRE((again && measured));
    CHECK(again->diameter == decided->circle.diameter);
    CHECK(again->centre.along == decided->circle.centre.along);
    CHECK_THAT(measured->diameter, within_ulp(moved->circle.diameter, 4));
    LargestCircle out_of_range = *decided;
    out_of_range.touches[1].number = 3;
    CHECK_FALSE(circle_touching(walls_of(before), {}, out_of_range));
    out_of_range = *decided;
    out_of_range.held_by = 1;
    CHECK_FALSE(circle_touching(walls_of(before), {}, out_of_range));
    LargestCircle repeated = *decided;
    repeated.touches[1] = repeated.touches[0];
    CHECK_FALSE(circle_touching(walls_of(before), {}, repeated));
}

namespace {

Opening2 drawn(Random& random, int kind) {
    const int walls = random.whole(1, 6), points = random.whole(0, 4);
    switch (kind) {
        case 0: return {walls_of(random_star(random, 2 + 2 * walls, 6)), {}};
        case 1: return {walls_of(random_turned(random, 2 + walls)), {}};
        case 2: return {walls_of(random_picket_gap(random)), {}};
        case 3: return random_tread(random);
        case 4: return random_litter(random, walls, points);
        case 5: return random_whole_litter(random, walls, points);
        default: return random_room(random);
    }
}

double away(const Obstacle& wall, const Seen& at) {
    const double x = wall.to.along - wall.from.along, y = wall.to.up - wall.from.up, square = x * x + y * y;
    const double foot = ((at.along - wall.from.along) * x + (at.up - wall.from.up) * y) / square;
    const double part = square > 0 ? std::clamp(foot, 0.0, 1.0) : 0;
    return std::hypot(at.along - wall.from.along - part * x, at.up - wall.from.up - part * y);
}

template <class Map>
Opening2 mapped(const Opening2& opening, bool turns_over, const Map& map) {
    Opening2 result;
    for (const Obstacle& it : opening.obstacles) {
        Obstacle moved{map(it.from), map(it.to), it.behind};
        if (turns_over) std::swap(moved.from, moved.to);
        result.obstacles.push_back(moved);
    }
    const Seen origin = map(Seen{0, 0});
    for (const Side2& it : opening.centre_within) {
        const Seen tip = map(Seen{it.along_part, it.up_part}),
                   foot = map(Seen{it.from * it.along_part, it.from * it.up_part});
        const double along = tip.along - origin.along, up = tip.up - origin.up, size = std::hypot(along, up);
        result.centre_within.push_back({along / size, up / size, (foot.along * along + foot.up * up) / size});
    }
    return result;
}

}  // namespace

TEST_CASE("Identities of any opening") {
    Random random("identities of any opening");
    int found_count = 0;
    for (int i = 0; i < 4200; ++i) {
        const Opening2 opening = drawn(random, i % 7);
        const auto found = largest_circle(opening.obstacles, opening.centre_within);
        if (!found) continue;
        ++found_count;
        CAPTURE(i);
        const double diameter = found->circle.diameter, radius = diameter / 2;
        double extent = 0;
        for (const Obstacle& it : opening.obstacles)
            for (const Seen& end : {it.from, it.to})
                extent = std::max({extent, std::fabs(end.along), std::fabs(end.up)});
        const double slack = 1e-13 * extent + 1e-12 * diameter;
        CHECK(found->proven);

        // No obstacle is in it, what holds it touches it, its centre is where it may be.
        for (const Obstacle& it : opening.obstacles) CHECK(away(it, found->circle.centre) >= radius - slack);
        for (const Side2& it : opening.centre_within) CHECK(it.over(found->circle.centre) >= -slack);
        for (std::size_t k = 0; k < found->held_by; ++k) {
            const auto [part, number] = found->touches[k];
            if (part == Touch::Part::bound)
                CHECK_THAT(opening.centre_within[number].over(found->circle.centre), within(0, slack));
            else
                CHECK_THAT(away(opening.obstacles[number], found->circle.centre), within(radius, slack));
        }
        const auto again = circle_touching(opening.obstacles, opening.centre_within, *found);
        REQUIRE(again);
        if (found->held_by == 3) CHECK(again->diameter == diameter);
        CHECK_THAT(again->diameter, within(diameter, slack));

        // Moved, scaled, mirrored, turned or told in another order it is the same circle.
        const auto same_as = [&](const Opening2& other, double scale) {
            const auto circle = largest_circle(other.obstacles, other.centre_within);
            REQUIRE(circle);
            CHECK(circle->proven);
            CHECK_THAT(circle->circle.diameter / scale, within(diameter, 2 * slack));
        };
        same_as(mapped(opening, false, [](const Seen& at) { return Seen{25.4 * at.along, 25.4 * at.up}; }), 25.4);
        same_as(mapped(opening, true, [](const Seen& at) { return Seen{-at.along, at.up}; }), 1);
        same_as(mapped(opening, false,
                       [](const Seen& at) {
                           return Seen{0.6 * at.along - 0.8 * at.up, 0.8 * at.along + 0.6 * at.up};
                       }),
                1);
        Opening2 shuffled = opening;
        std::reverse(shuffled.obstacles.begin(), shuffled.obstacles.end());
        std::rotate(shuffled.obstacles.begin(), shuffled.obstacles.begin() + 1, shuffled.obstacles.end());
        std::reverse(shuffled.centre_within.begin(), shuffled.centre_within.end());
        same_as(shuffled, 1);
        // By a power of two and told twice: the same bits.
        const auto doubled = largest_circle(mapped(opening, false,
                                                   [](const Seen& at) {
                                                       return Seen{2 * at.along, 2 * at.up};
                                                   })
                                                .obstacles,
                                            {});
        if (opening.centre_within.empty()) {
            REQUIRE(doubled);
            CHECK(doubled->circle.diameter == 2 * diameter);
        }
    }
    CHECK(found_count > 4000);
}

TEST_CASE("What is cut off an outline no longer counts") {
    const Outline square{{0, 0}, {4, 0}, {4, 4}, {0, 4}};
    CHECK_THAT(diameter_in(clipped(square, {-1, 0, -3})), within_ulp(3, 4));
    CHECK(clipped(square, {1, 0, 5}).empty());
    CHECK(clipped(square, {1, 0, -5}).size() == 4);
}
