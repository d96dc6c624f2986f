#include <cmath>

#include "../support/measured.hpp"
#include "../support/near.hpp"

// Whole jobs placed in plan: stairs and floors turned and moved, rails between posts of two of them, beside the posts'
// centres, at posts that are thicker below, and clear distances that were measured between placed posts.

namespace rakewright::tests {
namespace {

Post on_floor(double at, double across, double size = 3.5) {
    Post post = placed_post(at, 1, size);
    post.stair = {};
    post.floor = ref(0);
    post.across = across;
    return post;
}

/// The even stair, and a floor at its landing: its origin lies 44 up the stair and it looks to the stair's left. A post
/// at the head of the stair, and one 70 to the left of it on the floor.
Job round_the_corner(double x, double y, double heading) {
    Job job = even_example();
    const SineCosine turn = sine_cosine(angle_from_degrees(heading));
    job.stairs[0].plan = planned(x, y, heading, -36.25);
    Floor porch;
    porch.id = called("porch");
    porch.plan = planned(x + 44 * turn.cosine, y + 44 * turn.sine, heading + 90, 0);
    job.floors = {porch};
    job.posts.push_back(
        on_floor(70, -4));  // 70 to the stair's left, 4 beyond the last nosing: in line with the head post
    job.sections.push_back(section_between(1, 2));
    job.sections[1].id = called("deck");
    return job;
}

void check_same_section(const SectionResult& a, const SectionResult& b, double error) {
    CHECK_THAT(a.clear, within(b.clear, error));
    CHECK_THAT(a.slope, within(b.slope, 1e-14));
    REQUIRE(a.members.size() == b.members.size());
    for (std::size_t m = 0; m < a.members.size(); ++m) {
        CHECK_THAT(a.members[m].length, within(b.members[m].length, error));
        CHECK_THAT(a.members[m].overall, within(b.members[m].overall, error));
        CHECK_THAT(a.members[m].stick.piece.from.per_left, within(b.members[m].stick.piece.from.per_left, 1e-13));
        CHECK_THAT(a.members[m].stick.piece.to.per_left, within(b.members[m].stick.piece.to.per_left, 1e-13));
    }
    REQUIRE(a.pickets->count == b.pickets->count);
    REQUIRE(a.openings.size() == b.openings.size());
    for (std::size_t o = 0; o < a.openings.size(); ++o)
        CHECK_THAT(a.openings[o].sphere, within(b.openings[o].sphere, error));
}

}  // namespace

TEST_CASE("a stair meets a floor round a corner: the level rail runs square off the head post", "[rail][placing]") {
    const Solution solution = measured(round_the_corner(0, 0, 0));
    const SectionResult& deck = solution.sections[1];
    CHECK(deck.slope == 0);
    CHECK(deck.clear == 66.5);  // 70 less half of each post
    // The head post's foot is on the landing, at the floor's own level: the rail meets both posts equally high.
    CHECK_THAT(deck.ends[0].upper->top, within(36, 1e-13));
    CHECK_THAT(deck.ends[1].upper->top, within(36, 1e-13));
    CHECK_THAT(solution.posts[1].in_plan->x(), within(48, 1e-13));
    CHECK_THAT(solution.posts[2].in_plan->y(), within(70, 1e-13));
    CHECK_THAT(solution.posts[2].in_plan->z(), within(0, 1e-13));
    // The head post is met by both: the flight's rail stands higher, by the slope to its face.
    REQUIRE(solution.posts[1].rails.size() == 4);
    CHECK_THAT(solution.posts[1].rails[0].heights.top, within(36 + even_slope * 2.25, 1e-12));
}

TEST_CASE("turning and moving a whole job in plan changes none of its pieces", "[rail][placing]") {
    const Solution still = measured(round_the_corner(0, 0, 0));
    for (const double heading : {90.0, 180.0, -90.0, 37.5, 211.25}) {
        const Solution turned = measured(round_the_corner(-130, 55, heading));
        for (const std::size_t section : {0u, 1u}) {
            INFO(heading << ", section " << section);
            check_same_section(turned.sections[section], still.sections[section], 1e-11);
        }
    }
}

TEST_CASE("a post of another stair is seen where it stands", "[rail][placing]") {
    // The same two posts, both at one stair; or the head post at a second stair, that stands turned elsewhere but puts
    // it on the same spot.
    Job one = even_example();
    one.posts[1].across = 9;
    one.posts[1].turn = in_degrees(12);
    one.posts[1].lean.along = {Angle{1, 40}, {}};
    Job two = one;
    two.stairs.push_back(even_stair());
    two.stairs[0].plan = planned(10, 20, 30, 0);
    // The second stair's origin and heading such that its post at (at, across) is the first's at (48, 9).
    const SineCosine first = sine_cosine(angle_from_degrees(30)), second = sine_cosine(angle_from_degrees(75));
    const double at = -20, across = 5;
    two.stairs[1].plan =
        planned(10 + 48 * first.cosine - 9 * first.sine - (at * second.cosine - across * second.sine),
                20 + 48 * first.sine + 9 * first.cosine - (at * second.sine + across * second.cosine), 75, 36.25);
    Post& head = two.posts[1];
    head.stair = ref(1);
    head.nosing.value = 1;
    head.at = Reading(at);
    head.across = across;
    head.turn = in_degrees(12 - 45);
    // The lean is along the second stair's axes: the slope vector turned back by 45 degrees.
    const double half = std::sqrt(0.5);
    head.lean.along = {Angle{half / 40, 1}, {}};
    head.lean.across = {Angle{-half / 40, 1}, {}};
    two.sections[0].stair = ref(0);
    check_same_section(measured(two).sections[0], measured(one).sections[0], 1e-11);
}

TEST_CASE("two sizes of post flush on one side: the rail runs square with an offset", "[rail][placing]") {
    Job job = round_the_corner(0, 0, 0);
    job.posts[2].size = {5.5, 5.5, "", {}};
    // The floor looks left of the stair, so the head post's centre is at -4 across it, and the big post flush on the
    // right of the line stands 1 more to the left.
    job.posts[2].across = -3;
    job.sections[1].offset.to = -1;
    const SectionResult deck = measured(job).sections[1];
    CHECK_THAT(deck.clear, within(70 - 1.75 - 2.75, 1e-12));
    for (const Member& member : deck.members) CHECK_THAT(member.stick.piece.to.per_left, within(0, 1e-15));
    // Without the offset it runs askew by 1 in 70.
    job.sections[1].offset.to = 0;
    const SectionResult skew = measured(job).sections[1];
    CHECK_THAT(std::fabs(skew.members[0].stick.piece.to.per_left), within(1.0 / 70, 1e-14));
}

TEST_CASE("boards round the feet shorten the members that reach down to them, and no others", "[rail][placing]") {
    Job job = floor_example(60);
    job.posts.resize(2);
    for (Post& post : job.posts) {
        post.size = {5.5, 5.5, "", {}};
        post.base_trim = BaseTrim{{Reading(7)}, Reading(6)};
    }
    job.sections[0].from = ref(0);
    job.sections[0].to = ref(1);
    job.builds[0].bracket.reset();
    const SectionResult section = measured(job).sections[0];
    CHECK(section.clear == 60);
    CHECK(section.members[0].length == 60 - 0.0625);
    CHECK(section.members[1].length == 60 - 0.0625);
    CHECK(section.members[2].length == 60 - 0.0625 - 1.5);  // 3/4 thick at each end
    // Its underside stands on the boards' top edge: then it reaches to the posts.
    job.sections[0].lower_gap = LowerGap{6};
    CHECK(measured(job).sections[0].members[2].length == 60 - 0.0625);
}

TEST_CASE("the boards round a foot narrow the opening beside the post", "[rail][placing][opening]") {
    Job job = floor_example(60, open_build(1.5, 3.875));
    job.posts.resize(2);
    for (Post& post : job.posts) post.size = {5.5, 5.5, "", {}};
    job.sections[0].from = ref(0);
    job.sections[0].to = ref(1);
    const auto at_post = [&] {
        const Solution solution = measured(job);
        for (const Opening& opening : solution.sections[0].openings)
            if (opening.kind == Opening::Kind::post_gap) return opening.sphere;
        return 0.0;
    };
    const double gap = measured(job).sections[0].pickets->from_gap;
    CHECK_THAT(at_post(), within(gap, 1e-12));
    // A low rail, its underside 6 over the floor; boards 3/4 thick and 2.9 high leave 3.1 over them. The ball touches
    // rail, picket and the boards' corner: with a from there to the picket and h up to the rail its radius is
    // a + h - root(2 a h), the circle through a point that touches two lines square to each other.
    job.builds[0].height = 8.5;
    for (Post& post : job.posts) post.base_trim = BaseTrim{{Reading(7)}, Reading(2.9)};
    const double a = gap - 0.75, h = 3.1;
    CHECK_THAT(at_post(), within(2 * (a + h - std::sqrt(2 * a * h)), 1e-11));
    // Boards that reach past half-way up are what the clear distance was taken between.
    for (Post& post : job.posts) post.base_trim->height = 5;
    CHECK(measured(job).sections[0].clear == 60);
    CHECK_THAT(measured(job).sections[0].pickets->from_gap, within(gap, 1e-12));
    CHECK_THAT(at_post(), within(gap, 1e-11));
}

TEST_CASE("at posts that taper each member is as long as it is far there", "[rail][placing]") {
    // Square columns from 9 1/2 at the floor to 7 5/8 at 8 ft, 80 apart on a floor.
    Job job = even_example(square_build());
    job.builds[0].bracket.reset();
    job.builds[0].play = 0;
    job.stairs.clear();
    job.floors.resize(1);
    job.posts = {on_floor(0, 0, 9.5), on_floor(80, 0, 9.5)};
    const double thinner = 0.9375 / 96;
    for (const PostShape shape : {PostShape::square, PostShape::round}) {
        for (Post& post : job.posts) {
            post.shape = shape;
            post.taper = Taper{{Reading(7.625)}, {}, 96, 0, {}};
        }
        const Solution solution = measured(job);
        const auto clear_at = [&](double height) { return 80 - 2 * (4.75 - thinner * height); };
        const SectionResult& section = solution.sections[0];
        const double middles[] = {36 - 0.625, 36 - 2, 2.75};
        for (std::size_t m = 0; m < 3; ++m) CHECK_THAT(section.members[m].length, within(clear_at(middles[m]), 1e-12));
        CHECK_THAT(section.clear, within(clear_at((33.25 + 3.5) / 2), 1e-12));
    }
    // The same column, its size taken at one foot up.
    for (Post& post : job.posts) {
        post.size = {9.5 - 2 * thinner * 12, 9.5 - 2 * thinner * 12, "", {}};
        post.taper->size_at = 12;
    }
    CHECK_THAT(measured(job).sections[0].members[2].length, within(80 - 2 * (4.75 - thinner * 2.75), 1e-12));
}

TEST_CASE("a clear distance between placed posts is used, and what it differs by is told", "[rail][placing]") {
    Job job = even_example();
    job.sections[0].clear = Reading(49.5);
    const Solution same = measured(job);
    CHECK_FALSE(has(same, Trouble::clear_differs));
    job.sections[0].clear = Reading(49.75);
    const Solution longer = measured(job);
    CHECK(has(longer, Trouble::clear_differs));
    for (const Finding& finding : longer.findings)
        if (finding.trouble == Trouble::clear_differs) {
            CHECK(finding.numbers[0] == 49.75);
            CHECK_THAT(finding.numbers[1], within(49.5, 1e-12));
        }
    // As if the head post stood 1/4 farther up.
    Job moved = even_example();
    moved.posts[1].at = Reading(4.25);
    const SectionResult &a = longer.sections[0], b = measured(moved).sections[0];
    CHECK_THAT(a.clear, within(b.clear, 1e-12));
    for (std::size_t m = 0; m < a.members.size(); ++m)
        CHECK_THAT(a.members[m].length, within(b.members[m].length, 1e-12));
    CHECK_THAT(a.ends[1].upper->top, within(b.ends[1].upper->top, 1e-12));
    // Half a division of the tape is what two careful readings differ by.
    job.sections[0].clear = Reading(49.53);
    CHECK_FALSE(has(measured(job), Trouble::clear_differs));
}

TEST_CASE("posts on a floor that falls stand lower, and the level rail over it counts from the higher one",
          "[rail][placing]") {
    Job job = round_the_corner(0, 0, 0);
    job.floors[0].falls = {Angle{1, 48}, {}};
    job.floors[0].toward = Toward::heading;
    job.posts.push_back(on_floor(10, -4));
    job.sections[1].from = ref(3);
    Solution solution = measured(job);
    CHECK_THAT(solution.posts[2].standing->foot.z(), within(-70.0 / 48, 1e-14));
    const SectionResult& level = solution.sections[1];
    CHECK(level.slope == 0);
    CHECK_THAT(level.ends[0].upper->top, within(36, 1e-12));
    CHECK_THAT(level.ends[1].upper->top, within(36 + 60.0 / 48, 1e-12));
    // A ball under the level rail grows toward the low end.
    for (const Opening& opening : level.openings)
        if (opening.kind == Opening::Kind::under_rail) CHECK(opening.sphere > 2 + 50.0 / 48);
    job.sections[1].follow = Follow::floor;
    solution = measured(job);
    CHECK_THAT(solution.sections[1].slope, within(-1.0 / 48, 1e-15));
    CHECK_THAT(solution.sections[1].ends[1].upper->top - 1.75 / 48, within(36, 1e-12));
}

TEST_CASE("a rail beside its posts counts from the floor that is under it", "[rail][placing]") {
    // The floor falls 1 in 48 along its first axis; the rail runs straight across that, 6 to the left: 6 nearer the
    // floor's origin, where the floor is 6/48 higher than at the posts' centres.
    Job job = round_the_corner(0, 0, 0);
    job.floors[0].falls = {Angle{1, 48}, {}};
    job.floors[0].toward = Toward::heading;
    job.posts.push_back(on_floor(10, -4));
    job.posts.push_back(on_floor(10, 56));
    for (Post& post : job.posts) post.size = {14, 14, "", {}};
    job.sections[1].from = ref(3);
    job.sections[1].to = ref(4);
    for (const Follow follow : {Follow::level, Follow::floor}) {
        job.sections[1].follow = follow;
        job.sections[1].offset = {6, 6};
        const SectionResult beside = measured(job).sections[1];
        CHECK(beside.slope == 0);
        CHECK_THAT(beside.ends[0].upper->top, within(36 + 6.0 / 48, 1e-12));
        CHECK_THAT(beside.ends[1].upper->top, within(36 + 6.0 / 48, 1e-12));
    }
    // Askew, the line over no post's centre at one end: what follows the floor is 36 over it all along.
    for (const double from : {6.0, -3.0}) {
        job.sections[1].offset = {from, 0};
        const Member cap = measured(job).sections[1].members[0];
        for (const double along : {0.0, 60.0}) {
            const Vector top = point_on(cap.stick.frame, along, {0, cap.depth / 2});
            CHECK_THAT(top.z() + top.x() / 48, within(36, 1e-12));
        }
    }
}

TEST_CASE("a member that the tape cannot read is told", "[rail][placing]") {
    Build build = square_build();
    build.play = 0;
    build.pickets.reset();
    build.bracket.reset();
    CHECK(has(solve(floor_example(1.0 / 64, build)), Trouble::length_under_tape));  // half a sixteenth is 1/32
    CHECK_FALSE(has(solve(floor_example(1.0 / 32, build)), Trouble::length_under_tape));
}

}  // namespace rakewright::tests
