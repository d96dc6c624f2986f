#include "../../solver/screw/pilot.hpp"

#include <cmath>

#include "../../solver/pilot_list.hpp"
#include "../support/even_example.hpp"
#include "../support/near.hpp"

// Distances by hand on plain rakes. The defaults are those of EN 1995-1-1 table 8.2 (nails and screws to 6 mm, wood to
// 420 kg/m3, unloaded): 10 d to an end and 5 d to an edge without predrilling, 7 d and 3 d predrilled; and 10.4.5: holes
// of 0.7 d, all screws in hardwood, in softwood those over 6 mm. From memory.

namespace rakewright::tests {
namespace {

const double slope_length = std::sqrt(even_rise * even_rise + even_run * even_run);
const double s = even_rise / slope_length, c = even_run / slope_length;
constexpr double d = 0.19;

template <class Change>
Job with_screws(Job job, const Change& change) {
    job.builds[0].screws.emplace();
    change(*job.builds[0].screws);
    return job;
}

JointScrew screw_of(const Job& job, Joint joint, std::size_t index = 0) {
    const Solution solution = solve(job);
    REQUIRE_FALSE(solution.refused());
    for (const JointScrew& one : solution.sections[0].screws)
        if (one.joint == joint && index-- == 0) return one;
    FAIL("no such screw");
    return {};
}

const auto down_into_picket = [](ScrewBuild& screws) { screws.picket_to_upper = ScrewSize{{}, 2.5, d}; };
const auto into_rail = [](ScrewBuild& screws) { screws.rail_leg = ScrewSize{{}, 1.4, d}; };
const auto into_post = [](ScrewBuild& screws) { screws.post_leg = ScrewSize{{}, 2, d}; };

const SplitRoom& room(const JointScrew& screw, std::size_t passed) { return *screw.hold.passed[passed].room; }

/// A stick along x, 2 wide and 1 deep, from 0 to 20, its to end cut at 45 degrees: longer at the top.
Timber plain_timber() {
    Timber timber;
    timber.stick.frame = {Vector::Zero(), Vector::UnitX(), Vector::UnitY(), Vector::UnitZ()};
    timber.stick.piece = {{2, 1}, {0, 0, 0}, {20, 0, 1}};
    return timber;
}

SplitRoom down_at(const Timber& timber, double along, double left = 0) {
    return split_room(timber, {Vector(along, left, 0.5), -Vector::UnitZ()}, {0, 1});
}

}  // namespace

// Level, 90 clear: 17 pickets, the one foot under the ninth, in the middle, and there the bottom rail is spliced.
TEST_CASE("a screw into a splice that stands at a foot has no wood to its end", "[screw][pilot]") {
    Job job = with_screws(floor_example(90), [](ScrewBuild& screws) { screws.picket_to_lower = ScrewSize{{}, 2.5, d}; });
    job.builds[0].feet = FeetBuild();
    job.builds[0].feet->every = Reading(50);
    job.builds[0].longest_stick = Reading(60);
    const Solution solution = solve(job);
    const Member& bottom = solution.sections[0].members[2];
    REQUIRE(bottom.splices.size() == 1);
    REQUIRE(bottom.splices[0].foot == 1);
    const JointScrew screw = screw_of(job, Joint::picket_to_lower);
    CHECK_THAT(room(screw, 0).end.value(), within(0, 1e-9));
}

TEST_CASE("how near a screw comes to ends along the grain, splices and sides", "[screw][pilot]") {
    Timber timber = plain_timber();
    CHECK_THAT(down_at(timber, 3).end.value(), within(3, 1e-15));
    CHECK_THAT(down_at(timber, 3, 0.25).edge.value(), within(0.75, 1e-15));
    CHECK_THAT(down_at(timber, 18).end.value(), within(1.5, 1e-15));  // at the bottom the end is at 19.5
    CHECK_FALSE(down_at(timber, 3).end_grain);
    timber.splices = {{10, 0, 1}};
    CHECK_THAT(down_at(timber, 8).end.value(), within(1.5, 1e-15));
    CHECK_THAT(down_at(timber, 12).end.value(), within(1.5, 1e-15));
    CHECK_THAT(down_at(timber, 10.2).end.value(), within(0, 1e-15));  // it goes through the splice
    // Driven into its end: no distance to an end, all four sides count.
    const SplitRoom end_grain = split_room(timber, {Vector(0, 0.6, 0.1), Vector::UnitX()}, {0, 2});
    CHECK(end_grain.end_grain);
    CHECK_FALSE(end_grain.end.has_value());
    CHECK_THAT(end_grain.edge.value(), within(0.4, 1e-15));
    // A round stick: what lies beside its line.
    Timber round = plain_timber();
    round.round = {Vector::Zero(), Vector::UnitZ(), 4, 0};
    CHECK_THAT(split_room(round, {Vector(-6, 1.5, 3), Vector::UnitX()}, {2, 5}).edge.value(), within(2.5, 1e-15));
}

TEST_CASE("what wants a hole, why, and how wide", "[screw][pilot]") {
    ScrewBuild screws;
    const auto pilot = [&](SplitRoom room, double diameter = 0.2, bool fastened = false, Unit unit = Unit::inch) {
        return pilot_for(screws, unit, room, diameter, fastened);
    };
    CHECK(pilot({2, 1, false}).why == PilotFor::nothing);  // ten and five diameters are enough
    CHECK(pilot({2, 1, false}).hole == 0);
    CHECK(pilot({1.99, 1, false}).why == PilotFor::end);
    CHECK(pilot({2, 0.99, false}).why == PilotFor::edge);
    CHECK_THAT(pilot({1.99, 1, false}).hole, within(0.14, 1e-15));
    CHECK_THAT(pilot({1.99, 1, false}, 0.2, true).hole, within(0.2, 1e-15));
    CHECK(pilot({{}, 1, true}).why == PilotFor::end_grain);
    CHECK_FALSE(pilot({1.4, 1, false}).near_end);
    CHECK(pilot({1.39, 1, false}).near_end);
    CHECK_FALSE(pilot({2, 0.6, false}).near_edge);
    CHECK(pilot({2, 0.59, false}).near_edge);
    // 6 mm, or what is as much in inches.
    CHECK(pilot({100, 100, false}, 6, false, Unit::millimetre).why == PilotFor::nothing);
    CHECK(pilot({100, 100, false}, 6.1, false, Unit::millimetre).why == PilotFor::thick);
    CHECK(pilot({100, 100, false}, 6 / 25.4).why == PilotFor::nothing);
    CHECK(pilot({100, 100, false}, 0.25).why == PilotFor::thick);
    screws.wood = Wood::hardwood;
    CHECK(pilot({100, 100, false}).why == PilotFor::hardwood);
    screws.pilot.end = 4;
    screws.pilot.hole = 0.5;
    CHECK(pilot({0.79, 1, false}).why == PilotFor::end);
    CHECK_THAT(pilot({100, 100, false}).hole, within(0.1, 1e-15));
}

TEST_CASE("level, a picket's screw stands in its middle and as far from the rail's end as the picket",
          "[screw][pilot]") {
    // 60 clear: 11 pickets 3 5/8 apart; the first centre 4 3/8 from the post, the rail 1/32 off it.
    const JointScrew screw = screw_of(with_screws(floor_example(60), down_into_picket), Joint::picket_to_upper);
    CHECK_THAT(room(screw, 0).end.value(), within(4.375 - 0.03125, 1e-12));
    CHECK_THAT(room(screw, 0).edge.value(), within(1.25, 1e-12));
    CHECK(screw.pilots[0].why == PilotFor::nothing);
    CHECK(room(screw, 1).end_grain);
    CHECK_THAT(room(screw, 1).edge.value(), within(0.75, 1e-12));
    CHECK(screw.pilots[1].why == PilotFor::edge);  // 5 x 0.19 is 0.95
    CHECK_FALSE(screw.pilots[1].near_edge);
    CHECK_THAT(screw.pilots[1].hole, within(0.7 * d, 1e-15));
    CHECK_FALSE(has(solve(with_screws(floor_example(60), down_into_picket)), Trouble::screw_near_edge));
}

TEST_CASE("two side by side stand a quarter of the picket's width from its sides", "[screw][pilot]") {
    Job job = with_screws(floor_example(60), down_into_picket);
    job.builds[0].pickets->width = 3;
    const JointScrew screw = screw_of(job, Joint::picket_to_upper);
    CHECK_THAT(room(screw, 1).edge.value(), within(0.75, 1e-12));
    // 9 pickets, (60 - 27) / 10 apart: the first screw 3.3 + 0.75 from the post.
    CHECK_THAT(room(screw, 0).end.value(), within(3.3 + 0.75 - 0.03125, 1e-12));
}

TEST_CASE("on a rake a picket's screw nears its side, and its head the rail's end at the foot", "[screw][pilot]") {
    // 49 1/2 clear: 9 pickets 3.6 apart. One inch in the picket runs sin r toward its side; the head, 1 1/2 square over
    // the joint, stands 1 1/2 sin r level nearer to the post at the foot.
    const Job job = with_screws(even_example(), down_into_picket);
    const JointScrew screw = screw_of(job, Joint::picket_to_upper);
    CHECK_THAT(room(screw, 1).edge.value(), within(0.75 - s, 1e-12));
    CHECK(room(screw, 1).end_grain);
    CHECK(screw.pilots[1].near_edge);
    CHECK_THAT(room(screw, 0).end.value(), within((3.6 + 0.75 - 0.03125 - 1.5 * s) / c, 1e-12));
    const Solution solution = solve(job);
    REQUIRE(has(solution, Trouble::screw_near_edge));
    for (const Finding& finding : solution.findings)
        if (finding.trouble == Trouble::screw_near_edge) {
            CHECK_THAT(finding.numbers[1], within(0.75 - s, 1e-12));
            CHECK_THAT(finding.numbers[2], within(3 * d, 1e-12));
            CHECK(finding.numbers[3] == -1);
        }
}

TEST_CASE("a rail aslant over its stair: its own rake counts", "[screw][pilot]") {
    Job job = with_screws(even_example(), down_into_picket);
    job.posts[1].across = 40;
    const double apart = 44 + 4 + 5, level = std::sqrt(apart * apart + 1600), rise = even_slope * apart,
                 own = rise / std::sqrt(rise * rise + level * level);
    CHECK_THAT(room(screw_of(job, Joint::picket_to_upper), 1).edge.value(), within(0.75 - own, 1e-11));
}

TEST_CASE("a bracket's screw in the rail: at the foot it leans toward the raked end", "[screw][pilot]") {
    // At its point, 1.4 square over the underside: level 1 cos r - 1/32 - 1.4 sin r from the plumb end.
    const Job raked = with_screws(even_example(), into_rail);
    const JointScrew first = screw_of(raked, Joint::rail_leg), second = screw_of(raked, Joint::rail_leg, 1);
    CHECK_THAT(room(first, 1).end.value(), within((c - 0.03125 - 1.4 * s) / c, 1e-12));
    CHECK_THAT(room(second, 1).end.value(), within((2 * c - 0.03125 - 1.4 * s) / c, 1e-12));
    CHECK(first.pilots[1].near_end);
    CHECK_FALSE(first.hold.passed[0].room.has_value());  // the bracket does not split
    CHECK(first.pilots[0].why == PilotFor::nothing);
    // Level it is as far from the end all along; the nearer of two holes is what a crew is told of.
    const Job level = with_screws(floor_example(60), into_rail);
    CHECK_THAT(room(screw_of(level, Joint::rail_leg), 1).end.value(), within(1 - 0.03125, 1e-12));
    CHECK(screw_of(level, Joint::rail_leg, 1).pilots[1].why == PilotFor::nothing);  // 1.96875, and 10 d are 1.9
    const Solution solution = solve(level);
    int told = 0;
    for (const Finding& finding : solution.findings) told += finding.trouble == Trouble::screw_near_end;
    CHECK(told == 1);
    for (const PilotHoles& holes : pilot_list(level, solution))
        if (holes.piece == "sub rail") {
            CHECK_THAT(holes.room.end.value(), within(1 - 0.03125, 1e-12));
            CHECK(holes.pilot.near_end);
        }
}

TEST_CASE("a bracket's screw in the post: as far from its sides as the rail is", "[screw][pilot]") {
    Job job = with_screws(even_example(), into_post);
    CHECK_THAT(room(screw_of(job, Joint::post_leg), 1).edge.value(), within(1.75, 1e-12));
    CHECK_FALSE(room(screw_of(job, Joint::post_leg), 1).end.has_value());
    job.sections[0].offset = {0.5, 0.5};
    CHECK_THAT(room(screw_of(job, Joint::post_leg), 1).edge.value(), within(1.25, 1e-12));
    Job round = with_screws(even_example(), into_post);
    round.posts[0].shape = PostShape::round;
    round.posts[0].size = {8, 8, "", {}};
    CHECK_THAT(room(screw_of(round, Joint::post_leg), 1).edge.value(), within(4, 1e-12));
    Job deck = with_screws(floor_example(60), into_post);
    CHECK_FALSE(screw_of(deck, Joint::post_leg).hold.passed[1].room.has_value());
    deck.posts.resize(1);
    deck.posts[0].size = {3.5, 5.5, "", {}};
    deck.sections[0].from = ref(0);
    CHECK_THAT(room(screw_of(deck, Joint::post_leg), 1).edge.value(), within(1.75, 1e-12));
}

TEST_CASE("a member that is spliced at a picket has an end there; tubes do not split", "[screw][pilot]") {
    Job job = with_screws(floor_example(60), down_into_picket);
    job.builds[0].longest_stick = Reading(40);
    const JointScrew screw = screw_of(job, Joint::picket_to_upper);
    CHECK_THAT(room(screw, 0).end.value(), within(0, 1e-12));  // one screw, in the middle of the picket, in the joint
    job.builds[0].tube = true;
    CHECK_FALSE(screw_of(job, Joint::picket_to_upper).hold.passed[0].room.has_value());
    CHECK(pilot_list(job, solve(job)).empty());
}

}  // namespace rakewright::tests
