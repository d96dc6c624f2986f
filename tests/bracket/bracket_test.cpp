#include "../../solver/bracket/bracket.hpp"

#include <cmath>

#include "../support/even_example.hpp"
#include "../support/near.hpp"

namespace rakewright::tests {
namespace {

double included_deg(double over_square) { return 90 + degrees(angle_of(over_square)); }

const Bracket& bracket_of(const SectionResult& section, End end, Group group) {
    for (const Bracket& bracket : section.brackets)
        if (bracket.end == end && bracket.group == group) return bracket;
    FAIL("no such bracket");
    return section.brackets.front();
}

/// A bracket long enough in the post leg for any hole.
BracketBuild plate(double hole, double rail_leg) {
    BracketBuild bracket = bent_plate();
    bracket.post_leg = 10;
    bracket.rail_leg = rail_leg;
    bracket.post_hole = {Reading(hole)};
    return bracket;
}

Driver driver(double bit, double reach, double body) { return {{bit, reach}, {body, 8}}; }

SectionResult solved(const Job& job) {
    const Solution solution = solve(job);
    REQUIRE_FALSE(solution.refused());
    return solution.sections.front();
}

}  // namespace

TEST_CASE("a plumb face that looks along the rail: 90 - r up where the rail climbs, 90 + r at the other end",
          "[bracket]") {
    const RailLine line = line_over(49.5, {0, even_slope});
    // Derived: 90 -+ atan(7.25/11), 33.388513576 deg at 30 digits.
    CHECK_THAT(included_deg(over_square(line, End::from, Leg::up)), within(56.611486423888492, 1e-13));
    CHECK_THAT(included_deg(over_square(line, End::from, Leg::down)), within(123.388513576111508, 1e-13));
    CHECK_THAT(included_deg(over_square(line, End::to, Leg::up)), within(123.388513576111508, 1e-13));
    CHECK_THAT(included_deg(over_square(line, End::to, Leg::down)), within(56.611486423888492, 1e-13));
}

TEST_CASE("level: 90 every way, exactly", "[bracket]") {
    const RailLine line = line_over(49.5, {0, 0});
    for (const End end : {End::from, End::to})
        for (const Leg leg : {Leg::up, Leg::down}) CHECK(included_deg(over_square(line, end, leg)) == 90);
}

TEST_CASE("a rail that falls from its from end: the reverse", "[bracket]") {
    const RailLine line = line_over(49.5, {0, -even_slope});
    CHECK_THAT(included_deg(over_square(line, End::from, Leg::up)), within(123.388513576111508, 1e-13));
    CHECK_THAT(included_deg(over_square(line, End::to, Leg::up)), within(56.611486423888492, 1e-13));
}

TEST_CASE("on a turned face: the dihedral angle of face and underside", "[bracket]") {
    // A rail raked 7 in 11 whose face stands 10 deg askew in plan: derived, acos(+-sin r cos 10): 58.081 and 121.919.
    RailLine line = line_over(49.5, {0, 7.0 / 11});
    const double askew = 10 * M_PI / 180;
    for (const double side : {1.0, -1.0}) {
        line.from.normal = Vector(std::cos(askew), side * std::sin(askew), 0);
        CHECK_THAT(included_deg(over_square(line, End::from, Leg::up)), within(58.081, 5e-4));
        CHECK_THAT(included_deg(over_square(line, End::from, Leg::down)), within(121.919, 5e-4));
        // cos of the dihedral = sin r cos 10.
        const double closed = std::acos(7 / std::sqrt(170.0) * std::cos(askew)) * 180 / M_PI;
        CHECK_THAT(included_deg(over_square(line, End::from, Leg::up)), within(closed, 1e-12));
    }
}

TEST_CASE("on a face that leans along a level rail the lean alone counts", "[bracket]") {
    RailLine line = line_over(60, {0, 0});
    line.from.normal = Vector(1, 0, -0.1).normalized();  // leaning into the section: it looks down
    CHECK_THAT(included_deg(over_square(line, End::from, Leg::up)), within(90 - std::atan(0.1) * 180 / M_PI, 1e-13));
    line.from.normal = Vector(1, 0, 0.1).normalized();
    CHECK_THAT(included_deg(over_square(line, End::from, Leg::up)), within(90 + std::atan(0.1) * 180 / M_PI, 1e-13));
}

TEST_CASE("a square bracket: the bit may lie on the rail leg, and no lower", "[bracket][driver]") {
    const Driver usual = usual_driver(Unit::inch);  // a bit of 1/4 reaching 3; a body of 2
    CHECK(driver_clear(plate(0.125, 2.5), usual, 0));
    CHECK_FALSE(driver_clear(plate(0.1249, 2.5), usual, 0));
    // The body starts at 3, beyond a leg of 2 1/2: it hangs over nothing.
    CHECK(driver_clear(plate(0.75, 2.5), usual, 0));
    CHECK(driver_clear(plate(0.75, 3), usual, 0));  // a leg that ends just where the body starts: touching
    // A longer leg lies under the body, 1 from its middle.
    CHECK_FALSE(driver_clear(plate(0.75, 3.01), usual, 0));
    CHECK(driver_clear(plate(1, 3.01), usual, 0));
    CHECK_FALSE(driver_clear(plate(0.9999, 3.01), usual, 0));
}

TEST_CASE("an acute bracket: the leg's own end, or the bit's, is the highest under it", "[bracket][driver]") {
    // A 3-4-5 triangle: 53.13 deg. A rail leg of 5 ends 4 out, 3 up.
    const double acute = -0.75;
    // Bit to 4 and beyond: it passes over the end at 3, and needs half its diameter.
    CHECK(driver_clear(plate(3.125, 5), driver(0.25, 4, 2), acute));
    CHECK_FALSE(driver_clear(plate(3.12, 5), driver(0.25, 4, 2), acute));
    CHECK(driver_clear(plate(3.125, 5), driver(0.25, 6, 2), acute));
    // Bit to 3: 2 1/4 under its end; then the body over the end at 3, half of 2 above it.
    CHECK(driver_clear(plate(4, 5), driver(0.25, 3, 2), acute));
    CHECK_FALSE(driver_clear(plate(3.99, 5), driver(0.25, 3, 2), acute));
    // A body no thicker than the bit is the bit.
    CHECK(driver_clear(plate(3.125, 5), driver(0.25, 3, 0.25), acute));
    CHECK_FALSE(driver_clear(plate(3.12, 5), driver(0.25, 3, 0.25), acute));
    // A thick bit with a thin body: 2 1/4 and half of 4.
    CHECK(driver_clear(plate(4.25, 5), driver(4, 3, 0.25), acute));
    CHECK_FALSE(driver_clear(plate(4.24, 5), driver(4, 3, 0.25), acute));
}

TEST_CASE("an obtuse bracket falls away: only the bend can be in the bit's way", "[bracket][driver]") {
    const double obtuse = 0.75;
    CHECK(driver_clear(plate(0.125, 5), driver(0.25, 3, 2), obtuse));
    CHECK_FALSE(driver_clear(plate(0.12, 5), driver(0.25, 3, 2), obtuse));
    // A body of 5 from 3 on has 2 1/4 below the bend to hang into, at 1/4 above it: just touching.
    CHECK(driver_clear(plate(0.25, 5), driver(0.25, 3, 5), obtuse));
    CHECK_FALSE(driver_clear(plate(0.25, 5), driver(0.25, 3, 5.01), obtuse));
}

TEST_CASE("every hole must be reached", "[bracket][driver]") {
    BracketBuild two = plate(0.75, 3.5);
    CHECK_FALSE(driver_clear(two, usual_driver(Unit::inch), 0));
    two.post_hole = {Reading(1), Reading(2)};
    CHECK(driver_clear(two, usual_driver(Unit::inch), 0));
    two.post_hole = {Reading(2), Reading(0.75)};
    CHECK_FALSE(driver_clear(two, usual_driver(Unit::inch), 0));
}

TEST_CASE("plate thickness and the body's length do not enter", "[bracket][driver]") {
    BracketBuild thick = plate(0.125, 2.5);
    thick.thickness = 1;
    Driver longer = usual_driver(Unit::inch);
    longer.body.length = 100;
    CHECK(driver_clear(thick, longer, 0));
}

TEST_CASE("the usual driver in millimetres is the same tool", "[bracket][driver]") {
    const Driver metric = usual_driver(Unit::millimetre);
    CHECK_THAT(metric.bit.diameter, within(6.35, 1e-15));
    CHECK_THAT(metric.bit.reach, within(76.2, 1e-13));
    CHECK_THAT(metric.body.diameter, within(50.8, 1e-13));
    CHECK_THAT(metric.body.length, within(203.2, 1e-13));
}

TEST_CASE("left to the driver: down at the foot, where up would be blocked, up elsewhere", "[bracket]") {
    const SectionResult raked = solved(even_example());
    REQUIRE(raked.brackets.size() == 4);
    // From end first, upper group first.
    CHECK(raked.brackets[0].end == End::from);
    CHECK(raked.brackets[0].group == Group::upper);
    CHECK(raked.brackets[1].group == Group::lower);
    CHECK(raked.brackets[2].end == End::to);
    for (const Group group : {Group::upper, Group::lower}) {
        const Bracket &foot = bracket_of(raked, End::from, group), &head = bracket_of(raked, End::to, group);
        CHECK(foot.leg == Leg::down);
        CHECK(head.leg == Leg::up);
        CHECK_THAT(included_deg(foot.over_square), within(123.389, 5e-4));
        CHECK_THAT(included_deg(head.over_square), within(123.389, 5e-4));
        CHECK(foot.driver_clear);
        CHECK(head.driver_clear);
    }
    for (const Bracket& bracket : solved(floor_example(71.625)).brackets) {
        CHECK(bracket.leg == Leg::up);
        CHECK(included_deg(bracket.over_square) == 90);
        CHECK(bracket.driver_clear);
    }
}

TEST_CASE("turned up at the foot as wished, the driver is blocked and the job says so", "[bracket]") {
    Job job = even_example();
    job.builds[0].bracket->leg = LegWish::up;
    const Solution solution = solve(job);
    CHECK_FALSE(solution.refused());
    const SectionResult& section = solution.sections[0];
    CHECK_FALSE(bracket_of(section, End::from, Group::upper).driver_clear);
    CHECK_THAT(included_deg(bracket_of(section, End::from, Group::upper).over_square), within(56.611, 5e-4));
    CHECK(bracket_of(section, End::to, Group::upper).driver_clear);
    REQUIRE(has(solution, Trouble::driver_blocked));
    for (const Finding& finding : solution.findings)
        if (finding.trouble == Trouble::driver_blocked) CHECK(finding.numbers[0] == 2);  // both groups, at the foot
}

TEST_CASE("down even if blocked there", "[bracket]") {
    // A hole so near the bend that no way is clear.
    Job job = floor_example(60);
    job.builds[0].bracket->post_hole = {Reading(0.1)};
    const Solution solution = solve(job);
    for (const Bracket& bracket : solution.sections[0].brackets) {
        CHECK(bracket.leg == Leg::down);
        CHECK_FALSE(bracket.driver_clear);
    }
    CHECK(has(solution, Trouble::driver_blocked));
}

TEST_CASE("the mark is where the middle of the underside meets the face, above what the post stands on", "[bracket]") {
    const SectionResult section = solved(even_example());
    const double lengthened = std::sqrt(7.25 * 7.25 + 121) / 11, at_foot = 7.25 - 3.25 * even_slope,
                 at_head = 2.25 * even_slope;
    CHECK_THAT(bracket_of(section, End::from, Group::upper).mark_height.value(),
               within(at_foot + 36 - 2.75 * lengthened, 1e-13));
    CHECK_THAT(bracket_of(section, End::from, Group::lower).mark_height.value(), within(at_foot + 2, 1e-13));
    CHECK_THAT(bracket_of(section, End::to, Group::upper).mark_height.value(),
               within(at_head + 36 - 2.75 * lengthened, 1e-13));
    CHECK_THAT(bracket_of(section, End::to, Group::lower).mark_height.value(), within(at_head + 2, 1e-13));
    const SectionResult level = solved(floor_example(60));
    CHECK(bracket_of(level, End::from, Group::upper).mark_height == 33.25);
    CHECK(bracket_of(level, End::to, Group::lower).mark_height == 2);
}

TEST_CASE("on a raked section without posts there is no height to mark", "[bracket]") {
    Job job = floor_example(49.5);
    job.stairs = {even_stair()};
    job.sections[0].stair = ref(0);
    for (const Bracket& bracket : solved(job).brackets) CHECK_FALSE(bracket.mark_height.has_value());
}

TEST_CASE("a leg turned down below the floor is told", "[bracket]") {
    Job job = floor_example(60);
    job.builds[0].bracket->leg = LegWish::down;
    job.builds[0].lower_gap = LowerGap{1, false};
    const Solution solution = solve(job);
    int told = 0;
    for (const Finding& finding : solution.findings) {
        if (finding.trouble != Trouble::leg_below_surface) continue;
        CHECK(finding.numbers[0] == 1);
        CHECK_THAT(finding.numbers[1], within(0.25, 1e-14));
        ++told;
    }
    CHECK(told == 2);
    job.builds[0].lower_gap = LowerGap{1.25, false};  // touching the floor
    CHECK_FALSE(has(solve(job), Trouble::leg_below_surface));
}

TEST_CASE("the leg that stands between post and rail", "[bracket]") {
    BracketBuild bracket = bent_plate();
    bracket.post_seat = PostSeat::surface;
    CHECK(leg_between(bracket, Leg::up).thickness == 0.125);
    CHECK(leg_between(bracket, Leg::up).up == 1.25);
    CHECK(leg_between(bracket, Leg::down).thickness == 0);
    bracket.post_seat = PostSeat::mortise;
    CHECK(leg_between(bracket, Leg::up).thickness == 0);
}

}  // namespace rakewright::tests
