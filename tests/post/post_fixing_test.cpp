#include "../../solver/post_fixing.hpp"

#include <cmath>

#include "../support/catch.hpp"
#include "../support/even_example.hpp"
#include "../support/near.hpp"

// What is expected is reckoned by hand beside each check, from the drawing.

namespace rakewright::tests {
namespace {

BasePlate plate(double size, double thickness, double holes, double hole) {
    BasePlate made;
    made.size = {Reading(size)};
    made.thickness = thickness;
    made.holes = {Reading(holes)};
    made.hole = hole;
    return made;
}

PostFixing on_wood(const BasePlate& base_plate) {
    PostFixing fixing;
    fixing.id = called("deck plate");
    fixing.base_plate = base_plate;
    return fixing;
}

PostRod rod_in_inches() {
    PostRod rod;
    rod.below = 0.75;
    rod.floor = 8;
    rod.channel = 0.125;
    rod.washer = 0.125;
    rod.nut = 0.5;
    rod.spare = 0.25;
    return rod;
}

/// Posts 2 square, 60 apart on a floor, a rail of 36 between them; both on a plate of 5, 3/8 thick, holes 3 1/2 apart.
Job on_floor() {
    Job job = even_example();
    job.stairs.clear();
    job.floors.resize(1);
    job.floors[0].plan = Plan{};
    job.post_fixings = {on_wood(plate(5, 0.375, 3.5, 0.5))};
    job.posts = {placed_post(0, 1, 2), placed_post(60, 1, 2)};
    for (Post& post : job.posts) {
        post.stair = {};
        post.floor = ref(0);
        post.fixing = ref(0);
        post.reveal = Reading(1);
    }
    return job;
}

PostResult first_post(const Job& job) {
    const Solution solution = solve(job);
    REQUIRE_FALSE(solution.refused());
    return solution.posts[0];
}

}  // namespace

TEST_CASE("a post is as long as the rail that meets it is high, with its reveal, less its plate", "[post]") {
    Job job = even_example();
    for (Post& post : job.posts) post.reveal = Reading(1.5);
    Solution solution = solve(job);
    // The rail's top is 36 over a line of 7 1/4 in 11 that is 7 1/4 up at the first nosing. The foot post's uphill face
    // is at -3 1/4 over the floor, the head post's downhill face at 46 1/4 over the landing, 36 1/4 up.
    const double foot = 7.25 + 36 - 3.25 * 7.25 / 11, head = 7.25 + 36 + 46.25 * 7.25 / 11 - 36.25;
    CHECK_THAT(solution.posts[0].height.value(), within(foot + 1.5, 1e-12));
    CHECK_THAT(solution.posts[1].height.value(), within(head + 1.5, 1e-12));
    CHECK_THAT(solution.posts[0].length.value(), within(foot + 1.5, 1e-12));
    CHECK_FALSE(solution.posts[0].fixed.has_value());

    job.post_fixings = {on_wood(plate(6, 0.5, 5, 0.5))};
    job.posts[0].fixing = ref(0);
    job.posts[1].reveal = Reading(-2);
    solution = solve(job);
    CHECK_THAT(solution.posts[0].height.value(), within(foot + 1.5, 1e-12));
    CHECK_THAT(solution.posts[0].length.value(), within(foot + 1, 1e-12));
    CHECK_THAT(solution.posts[1].height.value(), within(head - 2, 1e-12));
}

TEST_CASE("the highest of the rails that meet a post sets its height", "[post]") {
    Job job = on_floor();
    job.sections.push_back(job.sections[0]);
    job.sections[1].height = Reading(42);
    CHECK(first_post(job).height == 43);
    CHECK(first_post(job).highest_rail() == 42);
}

TEST_CASE("along a leaning post more is needed than plumb, of post and rod", "[post]") {
    Job job = on_floor();
    job.post_fixings[0].rod = rod_in_inches();
    job.posts[0].lean.along = {{1, 20}, {}};
    job.posts[0].lean.across = {{1, 40}, {}};
    const PostResult post = first_post(job);
    // So much along the axis for each plumb: its slopes are 1 in 20 and 1 in 40.
    const double along = std::sqrt(1 + 1.0 / 400 + 1.0 / 1600);
    CHECK(post.height == 37);  // the rail is level
    CHECK_THAT(post.length.value(), within((37 - 0.375) * along, 1e-12));
    CHECK_THAT(post.rod.value().whole(), within(0.75 + (8 + 37 + 0.125) * along + 0.125 + 0.5 + 0.25, 1e-12));
    CHECK_THAT(post.rod->plate, within(0.375 * along, 1e-12));
}

TEST_CASE("a rod passes floor, plate, post and channel, and holds washer, nut and thread", "[post]") {
    Job job = on_floor();
    job.post_fixings[0].rod = rod_in_inches();
    // 3/4 below, 8 of floor, a post 37 high with its plate, 1/8 of channel, 1/8 of washer, 1/2 of nut, 1/4 to spare.
    const PostResult post = first_post(job);
    CHECK_THAT(post.rod.value().whole(), within(46.75, 1e-12));
    CHECK_THAT(post.rod->post, within(36.625, 1e-12));
    job.post_fixings[0].base_plate.reset();
    CHECK_THAT(first_post(job).rod.value().whole(), within(46.75, 1e-12));
    CHECK(first_post(job).holes.empty());
}

TEST_CASE("the holes of a plate turn with their post, and stand in plan with its floor", "[post]") {
    Job job = on_floor();
    job.post_fixings[0].base_plate = plate(8, 0.375, 4, 0.5);
    job.post_fixings[0].base_plate->holes = {Reading(4), Reading(2)};
    job.floors[0].plan = Plan{100, 50, 12, in_degrees(90)};
    job.posts[0].at = Reading(3);
    job.posts[0].across = 5;
    job.posts[0].turn = in_degrees(30);
    const std::vector<PlateHole> holes = first_post(job).holes;
    REQUIRE(holes.size() == 4);
    // (2, 1) turned by 30: 2 cos 30 - sin 30, 2 sin 30 + cos 30, from (3, 5).
    const double half_root = std::sqrt(3) / 2;
    const double x = 2 * half_root - 0.5, y = 1 + half_root;
    CHECK_THAT(holes[0].at.x(), within(3 + x, 1e-12));
    CHECK_THAT(holes[0].at.y(), within(5 + y, 1e-12));
    // (-2, 1): -2 cos 30 - sin 30, -2 sin 30 + cos 30; the other two are across the centre from these.
    CHECK_THAT(holes[1].at.x(), within(3 - 2 * half_root - 0.5, 1e-12));
    CHECK_THAT(holes[1].at.y(), within(5 - 1 + half_root, 1e-12));
    CHECK_THAT((holes[0].at + holes[2].at - 2 * Vector(3, 5, 0)).norm(), within(0, 1e-12));
    CHECK_THAT((holes[1].at + holes[3].at - 2 * Vector(3, 5, 0)).norm(), within(0, 1e-12));
    // The floor's first axis looks along the plan's y: what is along it counts up y, what is to its left down x.
    CHECK_THAT(holes[0].in_plan.value().x(), within(100 - (5 + y), 1e-12));
    CHECK_THAT(holes[0].in_plan.value().y(), within(50 + 3 + x, 1e-12));
    CHECK_THAT(holes[0].in_plan.value().z(), within(12, 1e-12));

    job.floors[0].plan.reset();
    CHECK_FALSE(first_post(job).holes[0].in_plan.has_value());
}

TEST_CASE("a push at the rail turns the plate about its edge, and two bolts hold it", "[post]") {
    // 200 lbf (IBC 2021, 1607.9.1.1) at 36: 7200 in-lbf. Edge to the far bolts: (5 + 3 1/2) / 2 = 4 1/4; of two, each
    // 7200 / 8 1/2.
    Job job = on_floor();
    const FixedPost fixed = first_post(job).fixed.value();
    CHECK(fixed.load == 200);
    CHECK_THAT(fixed.moment, within(7200, 1e-9));
    CHECK_THAT(fixed.along.value().arm, within(4.25, 1e-12));
    CHECK_THAT(fixed.along->pull, within(7200 / 8.5, 1e-9));
    CHECK_THAT(fixed.across.value().pull, within(7200 / 8.5, 1e-9));
    // Across, edge to bolts (8 + 6) / 2 = 7.
    job.post_fixings[0].base_plate->size = {Reading(5), Reading(8)};
    job.post_fixings[0].base_plate->holes = {Reading(3.5), Reading(6)};
    CHECK_THAT(first_post(job).fixed->along->pull, within(7200 / 8.5, 1e-9));
    CHECK_THAT(first_post(job).fixed->across->pull, within(7200.0 / 14, 1e-9));
    job.post_fixings[0].base_plate.reset();
    CHECK_FALSE(first_post(job).fixed->along.has_value());
    CHECK_THAT(first_post(job).fixed->moment, within(7200, 1e-9));
}

TEST_CASE("in millimetres the push is in kN and its moment in kN m", "[post]") {
    Job job = on_floor();
    job.units = Unit::millimetre;
    job.builds[0].height = 900;
    job.builds[0].pickets.reset();
    job.posts[1].at = Reading(1500);
    job.post_fixings[0].base_plate = plate(120, 10, 90, 12);
    const FixedPost fixed = first_post(job).fixed.value();
    // 0.89 kN at 0.9 m: 0.801 kN m; (120 + 90) / 2 = 105 mm; 0.801 / (2 * 0.105).
    CHECK_THAT(fixed.load, within(0.89, 1e-12));
    CHECK_THAT(fixed.moment, within(0.801, 1e-12));
    CHECK_THAT(fixed.along->arm, within(105, 1e-12));
    CHECK_THAT(fixed.along->pull, within(0.801 / 0.21, 1e-12));
}

TEST_CASE("three inches of wood under the bolts is said to be the least, and no more than said", "[post]") {
    Job job = on_floor();
    job.post_fixings[0].wood_under = Reading(3);
    CHECK_FALSE(has(solve(job), Trouble::little_wood_under));
    job.post_fixings[0].wood_under = Reading(2.9375);
    CHECK(has(solve(job), Trouble::little_wood_under));
    CHECK_FALSE(solve(job).refused());
}

TEST_CASE("a post that covers its plate's holes is told of", "[post]") {
    // Holes of 1/2 at 1 3/4 from the middle leave 1 1/2 clear: a post 3 square just does not cover them.
    Job job = on_floor();
    job.posts[0].size = {3, 3, "", {}};
    CHECK_FALSE(has(solve(job), Trouble::holes_under_post));
    job.posts[0].size = {3.125, 3, "", {}};
    CHECK_FALSE(has(solve(job), Trouble::holes_under_post));  // clear of it across
    job.posts[0].size = {3.125, 3.125, "", {}};
    CHECK(has(solve(job), Trouble::holes_under_post));
    // To the corner it is 1 3/4 times root 2 less 1/4: 2.2249. A round post reaches that if its diameter is 4.4497.
    job.builds[0].upper = job.builds[0].lower = {{"rail", 1.5, 1.5}};
    job.builds[0].bracket.reset();
    job.posts[0].shape = PostShape::round;
    job.posts[0].size = {4.449, 4.449, "", {}};
    CHECK_FALSE(has(solve(job), Trouble::holes_under_post));
    job.posts[0].size = {4.451, 4.451, "", {}};
    CHECK(has(solve(job), Trouble::holes_under_post));
}

TEST_CASE("without a rail of known height at it nothing is said of how long a post is", "[post]") {
    Job job = on_floor();
    job.posts.push_back(job.posts[0]);
    job.posts[2].at = Reading(200);
    const Solution solution = solve(job);
    CHECK(has(solution, Trouble::post_top_unknown));
    CHECK_FALSE(solution.refused());
    CHECK_FALSE(solution.posts[2].height.has_value());
    CHECK_FALSE(solution.posts[2].fixed.has_value());
    CHECK(solution.posts[2].holes.size() == 4);
}

TEST_CASE("a post without a place on a level floor has a length, and no marks", "[post]") {
    Job job = floor_example(60);
    Post post;
    post.size = {2, 2, "", {}};
    post.reveal = Reading(1);
    post.fixing = ref(0);
    job.post_fixings = {on_wood(plate(5, 0.375, 3.5, 0.5))};
    job.posts = {post};
    job.sections[0].from = ref(0);
    const PostResult result = first_post(job);
    CHECK(result.height == 37);
    CHECK(result.holes.empty());
    CHECK_THAT(result.fixed.value().moment, within(7200, 1e-9));
}

TEST_CASE("a fixing that no post names is told", "[post]") {
    Job job = on_floor();
    CHECK_FALSE(has(solve(job), Trouble::fixing_without_post));
    job.post_fixings.push_back(on_wood(plate(5, 0.375, 3.5, 0.5)));
    const Solution solution = solve(job);
    CHECK(has(solution, Trouble::fixing_without_post));
    CHECK_FALSE(solution.refused());
}

}  // namespace rakewright::tests
