#include "../../solver/bracket/seat.hpp"

#include <cmath>

#include "../support/even_example.hpp"
#include "../support/near.hpp"

// Closed forms: in the plumb plane of a plain rake r, with a plate t thick. s = sin r, c = cos r.

namespace rakewright::tests {
namespace {

const double length_of_slope = std::sqrt(even_rise * even_rise + even_run * even_run);
const double s = even_rise / length_of_slope, c = even_run / length_of_slope;
constexpr double t = 0.125, hole = 0.75;

Job with_bracket(PostSeat post, RailSeat rail, LegWish leg) {
    Job job = even_example();
    BracketBuild& bracket = *job.builds[0].bracket;
    bracket.post_seat = post;
    bracket.rail_seat = rail;
    bracket.leg = leg;
    return job;
}

SectionResult solved(const Job& job) {
    const Solution solution = solve(job);
    REQUIRE_FALSE(solution.refused());
    return solution.sections.front();
}

/// The seat at an end of the upper group.
Seat seat_at(const Job& job, End end) {
    const SectionResult section = solved(job);
    return section.fixings[end == End::from ? 0 : 2].seat;
}

double mark_at(const Job& job, End end) { return *solved(job).brackets[end == End::from ? 0 : 2].mark_height; }

}  // namespace

TEST_CASE("a leg down on the surface: the bend lies t cot(included / 2) below the mark", "[seat]") {
    // Derived: 0.067 at 123.39 deg and 0.125 at 90, a plate of 1/8.
    const Job raked = with_bracket(PostSeat::surface, RailSeat::surface, LegWish::down);
    CHECK_THAT(seat_at(raked, End::from).screw_from_mark[0] - hole, within(0.067, 5e-4));
    CHECK_THAT(seat_at(raked, End::from).screw_from_mark[0], within(hole + t * (1 - s) / c, 1e-13));
    // At the head the angle turned down is 90 - r.
    CHECK_THAT(seat_at(raked, End::to).screw_from_mark[0], within(hole + t * (1 + s) / c, 1e-13));
    Job level = floor_example(60);
    level.builds[0].bracket = raked.builds[0].bracket;
    CHECK_THAT(seat_at(level, End::from).screw_from_mark[0], within(hole + 0.125, 1e-13));
    CHECK_THAT(seat_at(level, End::from).screw_heights[0], within(33.25 - 0.125 - hole, 1e-13));
}

TEST_CASE("a leg up, flush in the post, under the rail: the bend lies at the mark", "[seat]") {
    const Job job = with_bracket(PostSeat::mortise, RailSeat::surface, LegWish::up);
    for (const End end : {End::from, End::to}) {
        CHECK_THAT(seat_at(job, end).screw_from_mark[0], within(hole, 1e-13));
        CHECK_THAT(seat_at(job, end).screw_heights[0], within(mark_at(job, end) + hole, 1e-12));
    }
}

TEST_CASE("a leg let into the rail by t raises the screw by t / cos r", "[seat]") {
    const Job up = with_bracket(PostSeat::mortise, RailSeat::rabbet, LegWish::up);
    for (const End end : {End::from, End::to})
        CHECK_THAT(seat_at(up, end).screw_heights[0], within(mark_at(up, end) + hole + t / c, 1e-12));
    // Turned down, flush under the rail and in the post: the bend's inside is the corner itself.
    const Job down = with_bracket(PostSeat::mortise, RailSeat::mortise, LegWish::down);
    CHECK_THAT(seat_at(down, End::from).screw_heights[0], within(mark_at(down, End::from) - hole, 1e-12));
    const Job under = with_bracket(PostSeat::mortise, RailSeat::surface, LegWish::down);
    CHECK_THAT(seat_at(under, End::from).screw_heights[0], within(mark_at(under, End::from) - t / c - hole, 1e-12));
}

TEST_CASE("a leg up on the post's surface: the underside is met t out from the face", "[seat]") {
    const Job job = with_bracket(PostSeat::surface, RailSeat::surface, LegWish::up);
    CHECK_THAT(seat_at(job, End::from).screw_heights[0], within(mark_at(job, End::from) + t * s / c + hole, 1e-12));
    CHECK_THAT(seat_at(job, End::to).screw_heights[0], within(mark_at(job, End::to) - t * s / c + hole, 1e-12));
}

TEST_CASE("on a post that leans along a level rail the holes climb with the face", "[seat]") {
    // Straight across a stair, the first post leaning 3 in 4 away from the rail: up its face by 5 is up by 4.
    Job job = even_example();
    job.posts = {placed_post(5, 2), placed_post(5, 2)};
    job.posts[0].across = 30;
    job.posts[1].across = -30;
    job.posts[0].lean.across.angle = {3, 4};
    job.builds[0].bracket->rail_seat = RailSeat::surface;
    job.builds[0].bracket->leg = LegWish::up;
    const SectionResult section = solved(job);
    CHECK_THAT(section.fixings[0].seat.screw_heights[0] - *section.brackets[0].mark_height, within(hole * 0.8, 1e-12));
    CHECK_THAT(section.fixings[0].seat.screw_from_mark[0], within(hole, 1e-12));
}

TEST_CASE("the mortise holds the leg and the bend", "[seat]") {
    const Job down = with_bracket(PostSeat::mortise, RailSeat::rabbet, LegWish::down);
    const PostMortise foot = *seat_at(down, End::from).mortise, head = *seat_at(down, End::to).mortise;
    CHECK(foot.width == 1.5);
    CHECK(foot.depth == t);
    // Behind the face the rail's leg is t thick, t / cos r along the face; where the angle is under a right one (at the
    // head) the outer corner, t deep, lies farther: t / tan(included / 2).
    CHECK_THAT(foot.height, within(1.25 + t / c, 1e-13));
    CHECK_THAT(foot.top, within(t / c, 1e-13));
    CHECK_THAT(foot.bottom, within(-1.25, 1e-13));
    CHECK_THAT(head.height, within(1.25 + t * (1 + s) / c, 1e-13));
    const Job up = with_bracket(PostSeat::mortise, RailSeat::surface, LegWish::up);
    CHECK_THAT(seat_at(up, End::to).mortise->top, within(1.25, 1e-13));
    CHECK_THAT(seat_at(up, End::to).mortise->bottom, within(-t / c, 1e-13));
    CHECK_FALSE(seat_at(with_bracket(PostSeat::surface, RailSeat::rabbet, LegWish::up), End::to).mortise.has_value());
}

TEST_CASE("the seat in the rail reaches from the rail's own end to the leg's tip", "[seat]") {
    const double play = 0.0625 / 2;
    const Job down = with_bracket(PostSeat::mortise, RailSeat::rabbet, LegWish::down),
              up = with_bracket(PostSeat::mortise, RailSeat::rabbet, LegWish::up),
              on_post = with_bracket(PostSeat::surface, RailSeat::rabbet, LegWish::down);
    const RailCut foot = *seat_at(down, End::from).rail_cut;
    CHECK_THAT(foot.length, within(2.5 - play / c, 1e-13));
    CHECK(foot.width == 2.5);  // right across
    CHECK(foot.depth == t);
    // Turned up and let in, the bend lies t over the underside, and so t tan r nearer to the head post on the slope.
    CHECK_THAT(seat_at(up, End::to).rail_cut->length, within(2.5 - play / c - t * s / c, 1e-13));
    // The leg on the post's surface moves the plate out by t, t / cos r on the slope; turned down it does not move the
    // rail's end.
    CHECK_THAT(seat_at(on_post, End::from).rail_cut->length, within(2.5 + t / c - play / c, 1e-13));
    // Turned up it moves both.
    Job level = floor_example(60);
    level.builds[0].bracket->post_seat = PostSeat::surface;
    CHECK_THAT(seat_at(level, End::from).rail_cut->length, within(2.5 - play, 1e-13));
}

TEST_CASE("askew the leg's tip lies farther along the rail's middle line", "[seat]") {
    RailLine line = line_over(60, {0, 0});
    line.from.normal = Vector(0.8, 0.6, 0);
    Levels levels;
    levels.upper_underside = 30;
    BracketBuild build = bent_plate();
    const PlateAt plate = *plate_at(build, line, levels, End::from, Group::upper, Leg::up);
    CHECK_THAT(rail_leg_tip(plate, line, 2).x(), within(2 / 0.8, 1e-14));
    CHECK_THAT((rail_hole(plate, 1) - plate.bend).dot(line.from.normal), within(1, 1e-14));
}

TEST_CASE("a mortise needs least_beside on both sides, else a rabbet right across", "[seat]") {
    Job job = with_bracket(PostSeat::mortise, RailSeat::mortise, LegWish::up);
    CHECK(seat_at(job, End::to).possible == RailSeat::mortise);  // 1 1/2 in 2 1/2: 1/2 on each side
    CHECK(seat_at(job, End::to).rail_cut->width == 1.5);
    CHECK_FALSE(has(solve(job), Trouble::mortise_near_side));
    job.builds[0].bracket->width = 1.51;
    CHECK(seat_at(job, End::to).possible == RailSeat::rabbet);
    const Solution solution = solve(job);
    int told = 0;
    for (const Finding& finding : solution.findings) {
        if (finding.trouble != Trouble::mortise_near_side) continue;
        CHECK_THAT(finding.numbers[1], within(0.495, 1e-14));
        CHECK_THAT(finding.numbers[2], within(0.495, 1e-14));
        CHECK(finding.numbers[3] == 0.5);
        ++told;
    }
    CHECK(told == 2);  // a group each
    job.builds[0].bracket->least_beside = 0.25;
    CHECK_FALSE(has(solve(job), Trouble::mortise_near_side));
    CHECK(usual_least_beside(Unit::millimetre) == 12);
}

TEST_CASE("askew the leg runs toward one side of the rail, and leaves it", "[seat]") {
    // The foot post turned by 30: under a rake r the leg runs off by atan(tan 30 / cos r) = 34.66 deg. Its corners at
    // the bend lie 0.75 cos 34.66 = 0.617 beside the middle line, those of its tip 2.5 sin 34.66 = 1.422 farther to the
    // right; half the rail is 1.25.
    Job job = with_bracket(PostSeat::mortise, RailSeat::mortise, LegWish::up);
    job.posts[0].turn = in_degrees(30);
    const double skew = std::atan(std::tan(30 * M_PI / 180) / c), run = 2.5 * std::sin(skew),
                 half = 0.75 * std::cos(skew);
    const Seat foot = seat_at(job, End::from), head = seat_at(job, End::to);
    const bool to_right = foot.beside_right < foot.beside_left;
    CHECK_THAT(to_right ? foot.beside_right : foot.beside_left, within(1.25 - run - half, 1e-12));
    CHECK_THAT(to_right ? foot.beside_left : foot.beside_right, within(1.25 - half, 1e-12));
    CHECK_THAT(foot.beside(), within(-0.789, 5e-4));
    CHECK(to_right == (solved(job).brackets[0].skew > 0));
    CHECK(foot.possible == RailSeat::rabbet);
    CHECK(head.possible == RailSeat::mortise);
    const Solution solution = solve(job);
    CHECK(has(solution, Trouble::leg_leaves_rail));
    for (const Finding& finding : solution.findings)
        if (finding.trouble == Trouble::leg_leaves_rail) CHECK(finding.end == 0);
    // Turned the other way it runs to the other side.
    job.posts[0].turn = in_degrees(-30);
    const Seat mirrored = seat_at(job, End::from);
    CHECK_THAT(mirrored.beside_left, within(foot.beside_right, 1e-12));
    CHECK_THAT(mirrored.beside_right, within(foot.beside_left, 1e-12));
    // By 7 it stays in the rail, too near its side: 1.25 - 2.5 sin 8.38 - 0.75 cos 8.38 = 0.144.
    job.posts[0].turn = in_degrees(7);
    const Seat slight = seat_at(job, End::from);
    const double off = std::atan(std::tan(7 * M_PI / 180) / c);
    CHECK_THAT(slight.beside(), within(1.25 - 2.5 * std::sin(off) - 0.75 * std::cos(off), 1e-12));
    CHECK(slight.possible == RailSeat::rabbet);
    CHECK(has(solve(job), Trouble::mortise_near_side));
    CHECK_FALSE(has(solve(job), Trouble::leg_leaves_rail));
}

TEST_CASE("a bracket wider than its rail stands out on both sides, whatever its seat", "[seat]") {
    for (const RailSeat seat : {RailSeat::surface, RailSeat::rabbet, RailSeat::mortise}) {
        Job job = with_bracket(PostSeat::mortise, seat, LegWish::up);
        job.builds[0].bracket->width = 2.75;
        const Solution solution = solve(job);
        int told = 0;
        for (const Finding& finding : solution.findings) {
            CHECK(finding.trouble != Trouble::mortise_near_side);
            if (finding.trouble != Trouble::leg_leaves_rail) continue;
            CHECK_THAT(finding.numbers[1], within(-0.125, 1e-14));
            CHECK_THAT(finding.numbers[2], within(-0.125, 1e-14));
            CHECK(finding.end == -1);
            ++told;
        }
        CHECK(told == 2);  // a group each
    }
}

TEST_CASE("a leg as thick as its member is deep cannot be let in", "[seat]") {
    Job job = with_bracket(PostSeat::mortise, RailSeat::rabbet, LegWish::up);
    job.builds[0].bracket->thickness = 1.5;
    CHECK(seat_at(job, End::to).possible == RailSeat::surface);
    CHECK_FALSE(seat_at(job, End::to).rail_cut.has_value());
    CHECK(has(solve(job), Trouble::seat_through_member));
    job.builds[0].bracket->thickness = 1.49;
    CHECK_FALSE(has(solve(job), Trouble::seat_through_member));
}

TEST_CASE("a leg turned down that would reach below the floor, the thickness of the plate with it", "[seat]") {
    Job job = floor_example(60);
    job.builds[0].bracket = with_bracket(PostSeat::surface, RailSeat::surface, LegWish::down).builds[0].bracket;
    job.builds[0].lower_gap = LowerGap{1.25 + t, false};
    CHECK_FALSE(has(solve(job), Trouble::leg_below_surface));
    job.builds[0].lower_gap = LowerGap{1.25 + t - 0.01, false};
    CHECK(has(solve(job), Trouble::leg_below_surface));
}

TEST_CASE("the first picket on the upper bracket's leg", "[seat]") {
    // 13 pickets of 1 1/2 in 71 5/8 leave 14 gaps of 3.7232; a leg of 2 1/2 is clear of them, one of 3 3/4 is not.
    Job job = floor_example(71.625);
    CHECK_FALSE(has(solve(job), Trouble::picket_on_leg));
    job.builds[0].bracket->rail_leg = 3.75;
    const Solution solution = solve(job);
    REQUIRE(has(solution, Trouble::picket_on_leg));
    for (const Finding& finding : solution.findings) {
        if (finding.trouble != Trouble::picket_on_leg) continue;
        CHECK_THAT(finding.numbers[0], within((71.625 - 13 * 1.5) / 14, 1e-12));
        CHECK_THAT(finding.numbers[1], within(3.75, 1e-12));
    }
    // On the rake it reaches its length times cos r, derived: 2.09 level for 2 1/2.
    Job raked = even_example();
    raked.builds[0].pickets->max_gap = 2.2;
    CHECK_FALSE(has(solve(raked), Trouble::picket_on_leg));
    raked.builds[0].pickets->max_gap = 2;
    CHECK(has(solve(raked), Trouble::picket_on_leg));
}

}  // namespace rakewright::tests
