#include "../../solver/rail/member.hpp"

#include <cmath>

#include "../support/even_example.hpp"
#include "../support/near.hpp"

namespace rakewright::tests {
namespace {

const double lengthened = std::sqrt(7.25 * 7.25 + 11 * 11) / 11;

SectionResult solved(const Job& job) {
    const Solution solution = solve(job);
    REQUIRE_FALSE(solution.refused());
    return solution.sections.front();
}

Build without_bracket(Build build = square_build()) {
    build.bracket.reset();
    return build;
}

/// All legs on the posts turned up and not let in.
Build with_legs(double post_leg, double thickness = 0.125) {
    Build build = square_build();
    build.bracket->leg = LegWish::up;
    build.bracket->post_seat = PostSeat::surface;
    build.bracket->post_leg = post_leg;
    build.bracket->thickness = thickness;
    return build;
}

}  // namespace

TEST_CASE("levels: a member of depth d takes d / cos r plumb", "[rail][member]") {
    const RailLine line = line_over(49.5, {0, even_slope});
    const Levels levels = levels_of(square_build(), 36, LowerGap{2, false}, line);
    CHECK(levels.upper_top == 36);
    CHECK_THAT(levels.upper_underside,
               within(32.706421968436151, 2e-14));  // 36 - 2.75 x 1.19766473875049, at 30 digits
    CHECK(levels.lower_underside == 2);
    CHECK_THAT(levels.lower_top, within(2 + 1.5 * lengthened, 1e-15));
    CHECK_THAT(levels.upper_underside - levels.lower_top, within(28.91, 5e-3));  // derived: 34 - 4 1/4 / cos r
    CHECK(levels.middle() == (levels.upper_underside + levels.lower_top) / 2);
}

TEST_CASE("levels: a block under the rail is square to it", "[rail][member]") {
    const RailLine line = line_over(49.5, {0, even_slope});
    // Derived, g cos r: 2 in plumb is a block of 1 11/16; a block of 1 1/2 is 1 13/16 plumb, both to the nearest 1/16.
    const Levels levels = levels_of(square_build(), 36, LowerGap{1.5, true}, line);
    CHECK_THAT(levels.lower_underside, within(1.5 * lengthened, 1e-15));
    CHECK(words_of_length(levels.lower_underside, Tape{}) == "1 13/16");
    CHECK(words_of_length(2 / lengthened, Tape{}) == "1 11/16");
    CHECK(levels_of(square_build(), 36, LowerGap{1.5, true}, line_over(49.5, {0, 0})).lower_underside == 1.5);
}

TEST_CASE("levels: without a lower group pickets reach to the nosing line or floor", "[rail][member]") {
    const Levels levels = levels_of(open_build(), 36, std::nullopt, line_over(60, {0, 0}));
    CHECK_FALSE(levels.has_lower);
    CHECK(levels.lower_top == 0);
    CHECK(levels.upper_underside == 33.5);
    CHECK(levels.middle() == 16.75);
}

TEST_CASE("a level section between plumb posts: every member is the clear distance less the play", "[rail][member]") {
    const SectionResult section = solved(floor_example(71.625));
    CHECK(section.slope == 0);
    CHECK(section.clear == 71.625);
    CHECK(section.clear_on_slope == 71.625);
    REQUIRE(section.members.size() == 3);
    for (const Member& member : section.members) {
        INFO(member.name);
        CHECK_THAT(member.length, within(71.5625, 1e-13));
        CHECK_THAT(member.overall, within(71.5625, 1e-13));
        CHECK_THAT(member.top_edge, within(71.5625, 1e-13));
        CHECK_THAT(member.bottom_edge, within(71.5625, 1e-13));
        CHECK(member.measure.edge == Corner{0, -1});
        CHECK(member.measure.from == Reaching::square);
        CHECK(member.shortened == std::array<double, 2>{0, 0});
    }
    CHECK(section.members[0].name == "cap rail");
    CHECK(section.members[0].group == Group::upper);
    CHECK(section.members[2].group == Group::lower);
}

TEST_CASE("the even example's rails", "[rail][member]") {
    const SectionResult section = solved(even_example(without_bracket()));
    CHECK(section.clear == 49.5);
    CHECK_THAT(section.clear_on_slope, within(49.5 * lengthened, 1e-13));
    for (const Member& member : section.members) {
        INFO(member.name);
        CHECK_THAT(member.length, within((49.5 - 0.0625) * lengthened, 1e-13));
        CHECK_THAT(member.top_edge, within(member.length, 1e-13));
        CHECK_THAT(member.bottom_edge, within(member.length, 1e-13));
        CHECK_THAT(member.overall,
                   within(member.length + member.depth * even_slope, 1e-13));  // derived: edge + d tan r
        CHECK(member.measure.edge == Corner{0, -1});
        CHECK(member.measure.from == Reaching::long_there);
        CHECK(member.measure.to == Reaching::short_there);
        CHECK(member.from_end.long_point == Corner{0, -1});
        CHECK(member.to_end.long_point == Corner{0, 1});
    }
    // Derived, d tan r: tip to tip is too long by 1.5 x 7.25 / 11 = 0.989 on 1 1/2.
    CHECK_THAT(section.members[1].overall - section.members[1].length, within(0.99, 5e-3));
}

TEST_CASE("play comes off half at each end, level along the rail", "[rail][member]") {
    const double play = 0.5;
    Build build = without_bracket(), none = build;
    build.play = play;
    none.play = 0;
    for (const double skew : {0.0, 9.0}) {
        Job with = even_example(build), bare = even_example(none);
        with.posts[1].across = bare.posts[1].across = skew;
        const SectionResult a = solved(with), b = solved(bare);
        const double along = std::sqrt(1 + a.slope * a.slope);
        for (std::size_t m = 0; m < 3; ++m) {
            const Piece &cut = a.members[m].stick.piece, &full = b.members[m].stick.piece;
            CHECK_THAT(cut.from.at - full.from.at, within(play / 2 * along, 1e-13));
            CHECK_THAT(full.to.at - cut.to.at, within(play / 2 * along, 1e-13));
            CHECK_THAT(b.members[m].length - a.members[m].length, within(play * along, 1e-13));
        }
        CHECK(a.clear == b.clear);
    }
}

TEST_CASE("heights at which the groups meet the posts, above what these stand on", "[rail][member]") {
    const Solution solution = solve(even_example());
    REQUIRE(solution.posts[0].rails.size() == 2);
    // The uphill face of the foot post stands 3 1/4 before the first nosing, the downhill one of the head post 2 1/4
    // behind the last.
    const double at_foot = 7.25 - 3.25 * even_slope, at_head = 36.25 + 2.25 * even_slope - 36.25;
    const RailAtPost &upper = solution.posts[0].rails[0], &lower = solution.posts[0].rails[1];
    CHECK(upper.group == Group::upper);
    CHECK(upper.end == End::from);
    CHECK_THAT(upper.heights.top, within(at_foot + 36, 1e-13));
    CHECK_THAT(upper.heights.underside, within(at_foot + 36 - 2.75 * lengthened, 1e-13));
    CHECK_THAT(lower.heights.underside, within(at_foot + 2, 1e-13));
    CHECK_THAT(lower.heights.top, within(at_foot + 2 + 1.5 * lengthened, 1e-13));
    CHECK(solution.posts[1].rails[0].end == End::to);
    CHECK_THAT(solution.posts[1].rails[0].heights.top, within(at_head + 36, 1e-13));
    CHECK_THAT(solution.posts[1].rails[1].heights.underside, within(at_head + 2, 1e-13));
    CHECK(solution.posts[0].base() == 0);
    CHECK(solution.posts[1].base() == 36.25);
}

TEST_CASE("a post notched to another surface is met as much higher or lower", "[rail][member]") {
    Job job = even_example();
    job.posts[1].base = {Base::On::tread, 4, 0, {}};
    const Solution tread = solve(job), landing = solve(even_example());
    CHECK_THAT(tread.posts[1].rails[0].heights.top - landing.posts[1].rails[0].heights.top, within(7.25, 1e-13));
    CHECK(tread.sections[0].members[0].length == landing.sections[0].members[0].length);
}

TEST_CASE("a bottom rail hung as on a level floor stands 2 in. over every nosing", "[rail][member]") {
    const SectionResult section = solved(even_example());
    REQUIRE(section.over_nosings.size() == 5);
    for (const OverNosing& over : section.over_nosings) {
        CHECK_THAT(over.lower->underside, within(2, 1e-13));
        CHECK_THAT(over.upper.top, within(36, 1e-13));
    }
}

TEST_CASE("the two diagonals of the panel", "[rail][member]") {
    // Derived, between the rails' facing edges: sqrt(C^2 + (C b +- p)^2) with C 49.5, b = 7.25/11 and the plumb side p
    // 28.91, without play.
    Build build = without_bracket();
    build.play = 0;
    const SectionResult section = solved(even_example(build));
    CHECK_THAT(section.diagonals->from_foot, within(78.97, 5e-3));
    CHECK_THAT(section.diagonals->to_foot, within(49.64, 5e-3));
    const double side = 34 - 4.25 * lengthened, rise = 49.5 * even_slope;
    CHECK_THAT(section.diagonals->from_foot, within(std::sqrt(49.5 * 49.5 + (rise + side) * (rise + side)), 1e-12));
    CHECK_THAT(section.diagonals->to_foot, within(std::sqrt(49.5 * 49.5 + (rise - side) * (rise - side)), 1e-12));
}

TEST_CASE("a leg turned up and not let in costs the members that it overlaps its thickness", "[rail][member]") {
    // The leg of 1 1/4 reaches from the sub rail's underside; the cap's underside meets the face 1 1/2 / cos r higher.
    const SectionResult section = solved(even_example(with_legs(1.25)));
    const double full = (49.5 - 0.0625) * lengthened, leg = 0.125 * lengthened;
    CHECK_THAT(section.members[0].length, within(full, 1e-13));
    CHECK_THAT(section.members[1].length, within(full - 2 * leg, 1e-13));
    CHECK_THAT(section.members[2].length, within(full - 2 * leg, 1e-13));
    CHECK(section.members[0].shortened == std::array<double, 2>{0, 0});
    for (const double shortened : section.members[1].shortened) CHECK_THAT(shortened, within(leg, 1e-13));
}

TEST_CASE("a leg let into the post, or turned down, costs nothing", "[rail][member]") {
    Build build = with_legs(1.25);
    build.bracket->post_seat = PostSeat::mortise;
    const double full = (49.5 - 0.0625) * lengthened;
    for (const Member& member : solved(even_example(build)).members) CHECK_THAT(member.length, within(full, 1e-13));
    build.bracket->post_seat = PostSeat::surface;
    build.bracket->leg = LegWish::down;
    for (const Member& member : solved(even_example(build)).members) CHECK_THAT(member.length, within(full, 1e-13));
}

TEST_CASE("a leg turned up at one end only costs that end", "[rail][member]") {
    Build build = with_legs(1.25);
    build.bracket->leg = LegWish::by_driver;  // down at the foot, up at the head
    const SectionResult section = solved(even_example(build));
    CHECK(section.members[1].shortened[0] == 0);
    CHECK_THAT(section.members[1].shortened[1], within(0.125 * lengthened, 1e-13));
    CHECK_THAT(section.members[1].length, within((49.5 - 0.0625 - 0.125) * lengthened, 1e-13));
}

TEST_CASE("touching is not overlapping", "[rail][member]") {
    // Level: the cap's underside lies 1 1/2 over the sub rail's, and a leg of 1 1/2 ends just there.
    CHECK(solved(floor_example(60, with_legs(1.5))).members[0].shortened == std::array<double, 2>{0, 0});
    CHECK_THAT(solved(floor_example(60, with_legs(1.5625))).members[0].shortened[0], within(0.125, 1e-14));
    // Raked: the same at 1 1/2 / cos r, a number with no end.
    CHECK(solved(even_example(with_legs(1.5 * lengthened))).members[0].shortened == std::array<double, 2>{0, 0});
    CHECK_THAT(solved(even_example(with_legs(1.5 * lengthened + 1e-6))).members[0].shortened[1],
               within(0.125 * lengthened, 1e-13));
    // Depths that are not exact in binary.
    Build tenths = with_legs(0.3);
    tenths.bracket->post_hole = {Reading(0.2)};
    tenths.upper = {{"cap rail", 3.5, 1.25}, {"filler", 2.5, 0.1}, {"sub rail", 2.5, 0.2}};
    const SectionResult section = solved(floor_example(60, tenths));
    CHECK(section.members[0].shortened == std::array<double, 2>{0, 0});
    CHECK_THAT(section.members[1].shortened[0], within(0.125, 1e-14));
}

TEST_CASE("each group's leg is its own: the lower one does not reach the upper group", "[rail][member]") {
    const SectionResult section = solved(floor_example(60, with_legs(1.25)));
    CHECK_THAT(section.members[2].length, within(60 - 0.0625 - 0.25, 1e-13));
    CHECK_THAT(section.members[0].length, within(60 - 0.0625, 1e-13));
}

TEST_CASE("the leg's thickness is square to a leaning face", "[rail][member]") {
    // A level rail straight across the stair; the far post leans over by 1 in 20.
    Job job = even_example(with_legs(1.25));
    job.posts[1] = placed_post(-5);
    job.posts[1].across = 60;
    job.posts[1].lean.across = {Angle{1, 20}, {}};
    const SectionResult section = solved(job);
    CHECK(section.slope == 0);
    CHECK_THAT(section.members[1].shortened[0], within(0.125, 1e-14));
    CHECK_THAT(section.members[1].shortened[1], within(0.125 * std::sqrt(1 + 1.0 / 400), 1e-14));
}

TEST_CASE("each member is cut to its own meeting with a leaning face", "[rail][member]") {
    // Level, straight across over the floor before the steps; the near post leans away by 1 in 20 and the far one
    // toward it. Over the nosing line at x = -5 the rail's top stands 36 higher than that line.
    Job job = even_example(without_bracket());
    job.posts[1] = placed_post(-5);
    job.posts[1].across = 60;
    job.posts[1].lean.across = {Angle{-1, 20}, {}};
    const SectionResult section = solved(job);
    const double ground = 7.25 - 5 * even_slope, widened = std::sqrt(1 + 1.0 / 400);
    const double middles[] = {36 - 0.625, 36 - 2, 2.75};
    for (std::size_t m = 0; m < 3; ++m) {
        INFO(section.members[m].name);
        const double height = ground + middles[m];
        // The far face, at that height: 60 less half the post, widened, less what it leans.
        CHECK_THAT(section.members[m].length, within(60 - 1.75 - 1.75 * widened - height / 20 - 0.0625, 1e-13));
        CHECK_THAT(section.members[m].bottom_edge - section.members[m].top_edge,
                   within(section.members[m].depth / 20, 1e-13));
    }
    // Clear is taken half-way between the underside of the upper group and the top of the lower.
    CHECK_THAT(section.clear, within(60 - 1.75 - 1.75 * widened - (ground + (33.25 + 3.5) / 2) / 20, 1e-13));
}

TEST_CASE("a rail skew to its stair: rake, clear, compound ends", "[rail][member]") {
    Job job = even_example(without_bracket());
    job.posts[1].across = 12;
    const SectionResult section = solved(job);
    const double plan = std::sqrt(53.0 * 53 + 12 * 12), over = 53 / plan, rake = even_slope * over;
    CHECK_THAT(section.slope, within(rake, 2e-16));
    CHECK_THAT(section.clear, within(plan - 3.5 / over, 1e-13));
    const double along = std::sqrt(1 + rake * rake);
    for (const Member& member : section.members) {
        CHECK_THAT(member.length, within((section.clear - 0.0625) * along, 1e-13));
        // For each unit to the side the face falls back by 12/53 level, and so by that over cos r along the stick.
        CHECK_THAT(std::fabs(member.from_end.flat.miter), within(12.0 / 53 * along, 1e-15));
        CHECK(member.from_end.long_point.left != 0);
        CHECK(member.from_end.long_point.top == -1);
    }
}

TEST_CASE("play that eats the whole rail leaves none", "[rail][member]") {
    Job job = floor_example(2, without_bracket());
    job.builds[0].pickets.reset();
    job.sections[0].play = Reading(2.5);
    CHECK(has(solve(job), Trouble::no_length_left));
    job.sections[0].play = Reading(1.5);
    CHECK_THAT(solved(job).members[0].length, within(0.5, 1e-14));
}

TEST_CASE("a section may restate height, lower gap and play", "[rail][member]") {
    Job job = even_example(without_bracket());
    job.sections[0].height = Reading(42);
    job.sections[0].lower_gap = LowerGap{0.5, false};
    job.sections[0].play = Reading(0.25);
    const SectionResult section = solved(job);
    CHECK_THAT(section.over_nosings[0].upper.top, within(42, 1e-13));
    CHECK_THAT(section.over_nosings[0].lower->underside, within(0.5, 1e-13));
    CHECK_THAT(section.members[0].length, within(49.25 * lengthened, 1e-13));
}

TEST_CASE("a clear distance on the slope is the level one over cos r", "[rail][member]") {
    Job job = floor_example(49.5, without_bracket());
    job.stairs = {even_stair()};
    job.sections[0].stair = ref(0);
    const SectionResult level = solved(job);
    job.sections[0].clear.reset();
    job.sections[0].clear_on_slope = Reading(49.5 * lengthened);
    const SectionResult slope = solved(job);
    CHECK_THAT(slope.clear, within(49.5, 1e-13));
    CHECK_THAT(slope.members[0].length, within(level.members[0].length, 1e-13));
    CHECK_FALSE(level.ends[0].upper.has_value());  // no posts on a rake: no heights on them
}

}  // namespace rakewright::tests
