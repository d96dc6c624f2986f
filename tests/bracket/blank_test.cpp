#include "../../solver/bracket/blank.hpp"

#include <cmath>

#include "../support/even_example.hpp"
#include "../support/near.hpp"

namespace rakewright::tests {
namespace {

BracketBuild plate(double radius, double thickness = 0.125, double k = 0.42) {
    BracketBuild bracket = bent_plate();
    bracket.post_leg = 2;
    bracket.rail_leg = 2.5;
    bracket.thickness = thickness;
    bracket.inside_radius = Reading(radius);
    bracket.k_factor = k;
    return bracket;
}

double over_square(double included_deg) { return std::tan((included_deg - 90) * M_PI / 180); }

/// The plate's neutral line from end to end, laid down point by point in the plane across the bend: both legs flat, and
/// between them an arc about the centre that is as far from the inner face of both as the inside radius.
double along_neutral_line(const BracketBuild& bracket, double included_deg) {
    const double half = included_deg * M_PI / 360, radius = *bracket.inside_radius;
    // The inner faces meet at the origin; the middle of the angle between them is the x axis.
    const double centre = radius / std::sin(half), neutral = radius + bracket.k_factor * bracket.thickness;
    const auto on_leg = [&](double along, double side) {
        const double off = bracket.k_factor * bracket.thickness;  // out of the angle, square to the leg
        return std::array{along * std::cos(half) - off * std::sin(half),
                          side * (along * std::sin(half) + off * std::cos(half))};
    };
    std::vector<std::array<double, 2>> points{on_leg(bracket.post_leg, 1)};
    constexpr int parts = 20000;
    for (int i = 0; i <= parts; ++i) {
        const double turn = (M_PI / 2 - half) * (1 - 2.0 * i / parts);
        points.push_back({centre - neutral * std::cos(turn), neutral * std::sin(turn)});
    }
    points.push_back(on_leg(bracket.rail_leg, -1));
    double length = 0;
    for (std::size_t i = 1; i < points.size(); ++i)
        length += std::hypot(points[i][0] - points[i - 1][0], points[i][1] - points[i - 1][1]);
    return length;
}

}  // namespace

TEST_CASE("a square bend, by hand", "[bracket][blank]") {
    BracketBuild bracket = plate(0.125);
    bracket.post_hole = {Reading(0.75)};
    const Blank blank = blank_of(bracket, 0);
    // pi / 2 * (1/8 + 0.42 / 8)
    const double allowance = M_PI / 2 * 0.1775;
    CHECK_THAT(blank.allowance, within(allowance, 1e-15));
    CHECK(blank.inside_setback == 0.125);
    CHECK(blank.setback == 0.25);
    CHECK_THAT(blank.deduction, within(0.5 - allowance, 1e-15));
    CHECK(blank.bend_start == 1.875);
    CHECK_THAT(blank.bend_middle, within(1.875 + allowance / 2, 1e-15));
    CHECK_THAT(blank.bend_end, within(1.875 + allowance, 1e-15));
    CHECK_THAT(blank.length, within(1.875 + allowance + 2.375, 1e-15));
    REQUIRE(blank.post_holes.size() == 1);
    CHECK(blank.post_holes[0] == 1.25);
    REQUIRE(blank.rail_holes.size() == 2);
    CHECK_THAT(blank.rail_holes[0], within(blank.length - 1.5, 1e-15));  // 1 from the inside of the bend, of 2 1/2
    CHECK_THAT(blank.rail_holes[1], within(blank.length - 0.5, 1e-15));
}

TEST_CASE("the blank is as long as the neutral line laid down point by point", "[bracket][blank]") {
    for (const double included_deg : {30.0, 56.611486, 90.0, 123.388514, 170.0})
        for (const double k : {0.05, 0.33, 0.5, 0.9}) {
            const BracketBuild bracket = plate(0.2, 0.1875, k);
            INFO(included_deg << " deg, k " << k);
            // Chords of 20000 parts are shorter than their arc by less than 1e-9.
            CHECK_THAT(blank_of(bracket, over_square(included_deg)).length,
                       within(along_neutral_line(bracket, included_deg), 1e-8));
        }
}

TEST_CASE("measured outside, the legs are longer than the blank by the deduction", "[bracket][blank]") {
    for (const double included_deg : {41.0, 90.0, 139.0}) {
        const BracketBuild bracket = plate(0.25, 0.25);
        const double slope = over_square(included_deg),
                     outside = bracket.thickness / std::tan(included_deg * M_PI / 360);
        const Blank blank = blank_of(bracket, slope);
        CHECK_THAT(bracket.post_leg + bracket.rail_leg + 2 * outside - blank.deduction, within(blank.length, 1e-13));
    }
}

TEST_CASE("the setback factor is the tangent of half the bend, however sharp or slight", "[bracket][blank]") {
    for (const double bend_deg : {0.001, 1.0, 45.0, 90.0, 135.0, 179.0, 179.999}) {
        const double expected = std::tan(bend_deg * M_PI / 360);
        CHECK_THAT(setback_factor(std::tan((90 - bend_deg) * M_PI / 180)) / expected, within(1, 1e-10));
    }
    CHECK(setback_factor(0) == 1);
}

TEST_CASE("a bend that takes in a hole or a leg's end", "[bracket][blank]") {
    BracketBuild bracket = plate(0.75);
    bracket.post_hole = {Reading(1.5), Reading(0.75)};
    CHECK_FALSE(in_the_bend(bracket, 0));  // the bend begins at the hole's centre
    bracket.post_hole[1] = 0.7;
    REQUIRE(in_the_bend(bracket, 0));
    CHECK(in_the_bend(bracket, 0)->is_hole);
    CHECK(in_the_bend(bracket, 0)->nearest == 0.7);
    CHECK(in_the_bend(bracket, 0)->inside_setback == 0.75);
    bracket.post_hole = {Reading(1.9)};
    bracket.rail_hole = {Reading(0.5)};
    CHECK(in_the_bend(bracket, 0)->nearest == 0.5);
    bracket.rail_hole.clear();
    bracket.rail_leg = 0.75;  // nothing of it would lie flat
    REQUIRE(in_the_bend(bracket, 0));
    CHECK_FALSE(in_the_bend(bracket, 0)->is_hole);
    bracket.rail_leg = 0.76;
    CHECK_FALSE(in_the_bend(bracket, 0));
    // The same radius reaches farther round a sharper bend: 0.75 * tan 60 = 1.299.
    bracket.rail_leg = 1.29;
    CHECK(in_the_bend(bracket, over_square(60)));
    bracket.rail_leg = 1.31;
    CHECK_FALSE(in_the_bend(bracket, over_square(60)));
}

TEST_CASE("every bracket of a job that says its radius is laid out, others are not", "[bracket][blank]") {
    Job job = even_example();
    const Solution without_radius = solve(job);
    for (const Bracket& bracket : without_radius.sections[0].brackets) CHECK_FALSE(bracket.blank);
    job.builds[0].bracket->inside_radius = Reading(0.125);
    const Solution solution = solve(job);
    REQUIRE_FALSE(solution.refused());
    for (const Bracket& bracket : solution.sections[0].brackets) {
        REQUIRE(bracket.blank);
        // Bent by 56.6115 deg, k 0.45: the plate of the even example, both ends alike.
        const double bend = (90 - std::atan(even_slope) * 180 / M_PI) * M_PI / 180, reach = 0.125 * std::tan(bend / 2);
        CHECK_THAT(bracket.blank->length, within(1.25 + 2.5 - 2 * reach + bend * (0.125 + 0.45 * 0.125), 1e-13));
    }
}

TEST_CASE("a bend without room is refused with its numbers, and a k-factor that says nothing is told", "[bracket]") {
    Job job = even_example();
    job.builds[0].bracket->inside_radius = Reading(1.5);
    const Solution refused = solve(job);
    CHECK(refused.refused());
    for (const Finding& finding : refused.findings) {
        if (finding.trouble != Trouble::bend_past_hole) continue;
        CHECK_THAT(finding.numbers[0],
                   within(1.5 * std::tan((90 - std::atan(even_slope) * 180 / M_PI) * M_PI / 360), 1e-13));
        CHECK(finding.numbers[1] == 0.75);
    }
    Job told = even_example();
    told.builds[0].bracket->k_factor = Reading(0.4, {10, 3});
    CHECK(has(solve(told), Trouble::k_without_radius));
    CHECK_FALSE(solve(told).refused());
    told.builds[0].bracket->inside_radius = Reading(0.125);
    CHECK_FALSE(has(solve(told), Trouble::k_without_radius));
}

}  // namespace rakewright::tests
