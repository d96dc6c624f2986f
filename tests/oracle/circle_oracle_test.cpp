#include <algorithm>
#include <cmath>

#include "../support/geos.hpp"
#include "../support/near.hpp"
#include "circle_in_digits.hpp"

using namespace rakewright;
using namespace rakewright::tests;

namespace {

/// Of `count` openings, that every circle is as large as the one found by trying all triples in 50 digits.
template <class Draw>
void agree(const char* seed, int count, const Draw& draw) {
    Random random(seed);
    int found_count = 0;
    for (int i = 0; i < count; ++i) {
        const Opening2 opening = draw(random);
        const auto found = largest_circle(opening.obstacles, opening.centre_within);
        const std::optional<Real> expected = largest_diameter_in_digits(opening);
        INFO(seed << " " << i);
        double extent = 0;
        for (const Obstacle& it : opening.obstacles)
            for (const Seen& end : {it.from, it.to})
                extent = std::max({extent, std::fabs(end.along), std::fabs(end.up)});
        if (!expected || *expected < 2e-9 * extent) {
            CHECK_FALSE(found);
            continue;
        }
        REQUIRE(found);
        ++found_count;
        CHECK(found->proven);
        // Twelve digits of the circle, or fourteen of what it lies in if it is tiny there.
        const double slack = std::max(1e-12 * found->circle.diameter, 1e-14 * extent);
        CHECK_THAT(static_cast<double>(Real(found->circle.diameter) - *expected), within(0, slack));
        // The circle itself, by the same digits.
        const Real room = 2 * clearance_in_digits(opening, found->circle.centre);
        CHECK(static_cast<double>(Real(found->circle.diameter) - room) < slack);
        CHECK(may_be_centre_in_digits(opening, found->circle.centre, 1e-12));
    }
    CHECK(found_count > count * 9 / 10);
}

/// Its search ends when no cell can hold a radius larger by more than the tolerance, so it errs low by no more than
/// that.
template <class Draw>
void agree_with_geos(const char* seed, int count, const Draw& draw) {
    constexpr double tolerance = 1e-6, rounding_of_radii = 1e-12;
    Random random(seed);
    for (int i = 0; i < count; ++i) {
        const Outline outline = draw(random);
        const auto found = largest_circle(walls_of(outline));
        INFO(seed << " " << i);
        REQUIRE(found);
        const double over = (found->circle.diameter - Geos(outline).diameter(tolerance)) / 2;
        CHECK(over >= -rounding_of_radii);
        CHECK(over <= tolerance);
    }
}

}  // namespace

TEST_CASE("All triples in fifty digits: outlines") {
    agree("blunt stars", 600, [](Random& r) { return Opening2{walls_of(random_star(r, r.whole(3, 11), 1.3)), {}}; });
    agree("sharp stars", 600, [](Random& r) { return Opening2{walls_of(random_star(r, r.whole(3, 11), 6)), {}}; });
    agree("stars on whole numbers", 600, [](Random& r) {
        return Opening2{walls_of(random_whole_star(r, r.whole(5, 10))), {}};
    });
    agree("turned pickets", 500, [](Random& r) { return Opening2{walls_of(random_turned(r, r.whole(2, 6))), {}}; });
    agree("turned pickets of twenty corners", 20, [](Random& r) {
        return Opening2{walls_of(random_turned(r, 10)), {}};
    });
    agree("parallel sides", 600, [](Random& r) { return Opening2{walls_of(random_picket_gap(r)), {}}; });
}

TEST_CASE("All triples in fifty digits: walls, points and bounds") {
    agree("treads", 600, random_tread);
    agree("litter", 600, [](Random& r) {
        const int walls = r.whole(1, 6), points = r.whole(0, 4);
        return random_litter(r, walls, points);
    });
    agree("litter on whole numbers", 600, [](Random& r) {
        const int walls = r.whole(1, 6), points = r.whole(0, 4);
        return random_whole_litter(r, walls, points);
    });
    agree("rooms with a post", 400, random_room);
}

TEST_CASE("All triples in fifty digits: nearly parallel, nearly straight, nearly touching") {
    const auto much = [](Random& r) { return std::pow(10.0, -r.whole(3, 15)); };
    agree("nearly parallel sides", 1000, [&](Random& r) {
        const Opening2 gap{walls_of(random_picket_gap(r)), {}};
        return nudged(r, gap, much(r));
    });
    agree("nearly whole stars", 600, [&](Random& r) {
        const Opening2 star{walls_of(random_whole_star(r, r.whole(6, 10))), {}};
        return nudged(r, star, much(r));
    });
    agree("nearly whole litter", 600, [&](Random& r) {
        const int walls = r.whole(1, 6), points = r.whole(0, 4);
        const Opening2 litter = random_whole_litter(r, walls, points);
        return nudged(r, litter, much(r));
    });
    agree("walls cut in nearly straight pieces", 400, [&](Random& r) {
        Outline outline;
        const Outline gap = random_picket_gap(r);
        for (std::size_t i = 0; i < 4; ++i)
            for (const double part : {0.0, 0.3, 0.7}) {
                const Seen &a = gap[i], &b = gap[(i + 1) % 4];
                outline.push_back({a.along + part * (b.along - a.along), a.up + part * (b.up - a.up)});
            }
        return nudged(r, {walls_of(outline), {}}, much(r));
    });
}

TEST_CASE("GEOS on well-shaped outlines") {
    agree_with_geos("blunt stars for GEOS", 1500, [](Random& r) { return random_star(r, r.whole(5, 20), 1.3); });
    agree_with_geos("sharp stars for GEOS", 500, [](Random& r) { return random_star(r, r.whole(5, 20), 3); });
}
