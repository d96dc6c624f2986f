#include "../../solver/bracket/driving.hpp"

#include <cmath>

#include "../support/even_example.hpp"
#include "../support/near.hpp"

namespace rakewright::tests {
namespace {

const double slope_length = std::sqrt(even_rise * even_rise + even_run * even_run);
const double s = even_rise / slope_length, c = even_run / slope_length;

SectionResult solved(const Job& job) {
    const Solution solution = solve(job);
    REQUIRE_FALSE(solution.refused());
    return solution.sections.front();
}

/// From end first, upper group first.
Driving driving(const Job& job, std::size_t bracket) { return *solved(job).fixings[bracket].driving; }

/// A level rail over a floor whose lower group stands so high, its leg turned down on the surface.
Job leg_down(double lower_gap, double hole, RailSeat seat) {
    Job job = floor_example(60);
    BracketBuild& bracket = *job.builds[0].bracket;
    bracket.leg = LegWish::down;
    bracket.post_seat = PostSeat::surface;
    bracket.rail_seat = seat;
    bracket.post_leg = 2;
    bracket.post_hole = {Reading(hole)};
    job.builds[0].lower_gap = LowerGap{lower_gap, false};
    return job;
}

}  // namespace

TEST_CASE("a level rail: under the upper group down to the lower rail, under that to the floor", "[driver]") {
    const Job job = floor_example(71.625);
    const Driving upper = driving(job, 0), lower = driving(job, 1);
    CHECK_THAT(upper.rail.length, within(33.25 - 3.5, 1e-12));
    CHECK(upper.rail.meets == Meets::lower_rail);
    CHECK(upper.rail_clear);
    CHECK(upper.order == DrivingOrder::post_first);
    CHECK_FALSE(upper.picket_after);
    CHECK_THAT(lower.rail.length, within(2, 1e-12));
    CHECK(lower.rail.meets == Meets::floor);
    CHECK_FALSE(lower.rail_clear);
    CHECK(lower.order == DrivingOrder::none);  // turned up: the rail cannot go on first
    REQUIRE(has(solve(job), Trouble::no_driving_order));
    for (const Finding& finding : solve(job).findings)
        if (finding.trouble == Trouble::no_driving_order) {
            CHECK(finding.numbers[0] == 2);
            CHECK_THAT(finding.numbers[1], within(2, 1e-12));
            CHECK(finding.numbers[2] == 11);
        }
}

TEST_CASE("on a rake the driver stands square to it: toward the head post, and down to the lower rail", "[driver]") {
    const Job job = even_example();
    // Between the two groups, plumb: 36 - 2 less what 2 3/4 and 1 1/2 take plumb.
    CHECK_THAT(driving(job, 0).rail.length, within(34 * c - 4.25, 1e-12));
    CHECK(driving(job, 0).order == DrivingOrder::post_first);
    // The first picket stands 3.7 from the post, and the driver leans toward it.
    CHECK(driving(job, 0).picket_after);
    Job bare = job;
    bare.builds[0].pickets.reset();
    CHECK_FALSE(driving(bare, 0).picket_after);
    // At the head the leg is up and let in: its hole is 1 - t tan r from the mark on the slope, and the side of the
    // bit, half of 1/4, meets the plumb face where that much of the slope is used up at cot r.
    const Driving head = driving(job, 2);
    CHECK_THAT(head.rail.length, within((1 - 0.125 * s / c - 0.125) * c / s, 1e-12));
    CHECK(head.rail.meets == Meets::post);
    CHECK(head.order == DrivingOrder::none);
}

TEST_CASE("the screw's own length is needed, too", "[driver]") {
    Job job = floor_example(60);
    job.builds[0].lower_gap = LowerGap{11.5, false};
    CHECK(driving(job, 1).rail_clear);
    job.builds[0].screws.emplace();
    job.builds[0].screws->rail_leg = ScrewSize{{}, 0.5, 0.19};
    CHECK(driving(job, 1).rail_clear);
    job.builds[0].screws->rail_leg->length = 0.51;
    CHECK_FALSE(driving(job, 1).rail_clear);
}

TEST_CASE("the rail first, with the leg down: the post's screw passes under the whole rail", "[driver]") {
    // 6 under the rail: no room for 11. The body's half, 1, must pass the underside, which is the plate's 1/8 over the
    // leg, or flush with it.
    CHECK(driving(leg_down(6, 1, RailSeat::surface), 1).order == DrivingOrder::rail_first);
    CHECK(driving(leg_down(6, 0.875, RailSeat::surface), 1).order == DrivingOrder::rail_first);
    CHECK(driving(leg_down(6, 0.87, RailSeat::surface), 1).order == DrivingOrder::none);
    CHECK(driving(leg_down(6, 1, RailSeat::rabbet), 1).order == DrivingOrder::rail_first);
    CHECK(driving(leg_down(6, 0.99, RailSeat::rabbet), 1).order == DrivingOrder::none);
    // And a body's half above the floor: 3 1/8 less 1/8 and 1 leaves 2; 2 1/8 leaves 1, touching.
    CHECK(driving(leg_down(2.125, 1, RailSeat::surface), 1).order == DrivingOrder::rail_first);
    CHECK(driving(leg_down(2.12, 1, RailSeat::surface), 1).order == DrivingOrder::none);
}

TEST_CASE("which order is none is told with the leg that would do", "[driver]") {
    Job job = leg_down(6, 1, RailSeat::surface);
    job.builds[0].bracket->leg = LegWish::up;
    for (const Finding& finding : solve(job).findings)
        if (finding.trouble == Trouble::no_driving_order) {
            CHECK(finding.numbers[0] == 2);
            CHECK(finding.numbers[3] == 2);
        }
    CHECK(has(solve(job), Trouble::no_driving_order));
    job.builds[0].bracket->leg = LegWish::down;
    CHECK_FALSE(has(solve(job), Trouble::no_driving_order));
}

TEST_CASE("on a raked section without posts the nosing line stands for the steps", "[driver]") {
    Job job = floor_example(49.5);
    job.stairs = {even_stair()};
    job.sections[0].stair = ref(0);
    const Driving foot = driving(job, 1);
    CHECK(foot.rail.meets == Meets::nosing_line);
    CHECK_THAT(foot.rail.length, within(2 * c, 1e-12));
}

TEST_CASE("a bracket without holes under the rail has no screw there", "[driver]") {
    Job job = even_example();
    job.builds[0].bracket->rail_hole.clear();
    for (const Fixing& fixing : solved(job).fixings) CHECK_FALSE(fixing.driving.has_value());
    CHECK_FALSE(has(solve(job), Trouble::no_driving_order));
}

}  // namespace rakewright::tests
