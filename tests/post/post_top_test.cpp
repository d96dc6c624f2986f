#include <cmath>

#include "../support/even_example.hpp"
#include "../support/near.hpp"

// Rails that run over their posts, which are cut off under them.

namespace rakewright::tests {
namespace {

const double slope = even_slope, lengthened = std::sqrt(1 + slope * slope);

/// The underside of the even example's upper group at x, above the landing.
double over_landing(double x) { return 7.25 + slope * x + 36 - 2.75 * lengthened - 36.25; }

Job over_head(double past = 0) {
    Job job = even_example();
    job.sections[0].ends.to = {EndWish::Meets::over, past, {}};
    return job;
}

PostTop only_top(const Job& job, std::size_t post = 1) {
    const Solution solution = solve(job);
    REQUIRE_FALSE(solution.refused());
    REQUIRE(solution.posts[post].tops.size() == 1);
    return solution.posts[post].tops.front();
}

}  // namespace

// Derived: the head post's centre stands 48 past the first nosing, its faces 1 3/4 either side.
TEST_CASE("a rail over a plumb post: its top follows the rake", "[post_top]") {
    const PostTop top = only_top(over_head());
    CHECK_THAT(top.near, within(over_landing(46.25), 1e-12));
    CHECK_THAT(top.centre, within(over_landing(48), 1e-12));
    REQUIRE(top.far);
    CHECK_THAT(*top.far, within(over_landing(49.75), 1e-12));
    CHECK_THAT(top.overall, within(over_landing(49.75), 1e-12));
    CHECK_THAT(std::fabs(top.cut.miter), within(slope, 1e-13));
    CHECK_THAT(top.cut.bevel, within(0, 1e-13));
}

TEST_CASE("the upper group runs on over the post, the lower one and the pickets end at it", "[post_top]") {
    for (const double past : {0.0, 3.0}) {
        const Solution over = solve(over_head(past)), at_face = solve(even_example());
        REQUIRE_FALSE(over.refused());
        const SectionResult &section = over.sections[0], &usual = at_face.sections[0];
        // From the foot post's face at -3 1/4, half the play off each end.
        const double level = 48 + past + 3.25 - 0.0625;
        for (const std::size_t upper : {0U, 1U})
            CHECK_THAT(section.members[upper].length, within(level * lengthened, 1e-12));
        CHECK_THAT(section.members[2].length, within(usual.members[2].length, 1e-13));
        CHECK_THAT(section.clear, within(usual.clear, 1e-13));
        CHECK(section.pickets->centres == usual.pickets->centres);
        REQUIRE(section.brackets.size() == 3);  // none under the rail at the head post
        CHECK_FALSE(std::any_of(section.brackets.begin(), section.brackets.end(), [](const Bracket& bracket) {
            return bracket.end == End::to && bracket.group == Group::upper;
        }));
        CHECK_THAT(*over.posts[1].height, within(over_landing(48), 1e-12));
        CHECK_THAT(*over.posts[1].length, within(over_landing(48), 1e-12));
        CHECK_THAT(*over.posts[1].stick, within(over_landing(49.75), 1e-12));
    }
}

// Derived: on the post's axes the rake falls apart into slope cos 30 and slope sin 30.
TEST_CASE("the top of a turned post is a compound cut", "[post_top]") {
    Job job = over_head();
    job.posts[1].turn = in_degrees(30);
    const PostTop top = only_top(job);
    const double turn = std::acos(-1.0) / 6, along = slope * std::cos(turn), across = slope * std::sin(turn);
    CHECK_THAT(top.near, within(over_landing(48 - 1.75 / std::cos(turn)), 1e-12));
    CHECK_THAT(top.centre, within(over_landing(48), 1e-12));
    CHECK_THAT(*top.far, within(over_landing(48 + 1.75 / std::cos(turn)), 1e-12));
    CHECK_THAT(std::fabs(top.cut.miter), within(along, 1e-12));
    CHECK_THAT(std::fabs(top.cut.bevel), within(across / std::sqrt(1 + along * along), 1e-12));
    CHECK_THAT(top.overall, within(over_landing(48) + 1.75 * (along + across), 1e-12));
}

// Derived: the axis foot + t (l, 0, 1) / |(l, 0, 1)| meets the underside where foot + t does.
TEST_CASE("along a leaning post", "[post_top]") {
    Job job = over_head();
    const double lean = 0.05;
    job.posts[1].lean.along = {Angle{lean, 1}, {}};
    const PostTop top = only_top(job);
    const double up = over_landing(48) / (1 - slope * lean);
    CHECK_THAT(top.centre, within(up * std::sqrt(1 + lean * lean), 1e-11));
    CHECK_THAT(top.far.value() - top.centre, within(top.centre - top.near, 1e-11));
    CHECK_THAT(std::fabs(top.cut.miter), within((slope + lean) / (1 - slope * lean), 1e-11));  // both angles together
}

TEST_CASE("two rails over one post: each cuts it to its axis", "[post_top]") {
    Job job = even_example();
    job.posts.push_back(placed_post(5, 3));
    job.sections = {section_between(0, 2), section_between(2, 1)};
    job.sections[1].id = called("upper");
    job.sections[0].ends.to = {EndWish::Meets::over, 0, {}};
    job.sections[1].ends.from = {EndWish::Meets::over, 0, {}};
    const Solution solution = solve(job);
    REQUIRE_FALSE(solution.refused());
    const std::vector<PostTop>& tops = solution.posts[2].tops;
    REQUIRE(tops.size() == 2);
    CHECK_THAT(tops[0].centre, within(tops[1].centre, 1e-12));
    CHECK_THAT(*tops[0].far, within(tops[1].near, 1e-12));
    CHECK_THAT(*tops[1].far, within(tops[0].near, 1e-12));
    CHECK(tops[0].near < tops[1].near);
    CHECK_THAT(solution.sections[0].members[0].length + solution.sections[1].members[0].length,
               within((48 - 1.75 + 5 - 1.75 - 0.125) * lengthened, 1e-11));
}

TEST_CASE("what does not go together over a post is told", "[post_top]") {
    Job corner;
    corner.builds = {square_build()};
    Floor deck;
    deck.id = called("deck");
    deck.plan = planned(0, 0, 0, 0);
    corner.floors = {deck};
    const auto on_deck = [](double along, double across) {
        Post post = placed_post(along);
        post.stair = {};
        post.floor = ref(0);
        post.across = across;
        return post;
    };
    corner.posts = {on_deck(0, 0), on_deck(60, 0), on_deck(60, 60)};
    for (unsigned p = 0; p < 3; ++p) corner.posts[p].id.place.begin = p + 1;  // by which the notes name it
    corner.sections = {section_between(0, 1), section_between(1, 2)};
    const EndWish over{EndWish::Meets::over, 0, {}};
    corner.sections[0].ends.to = corner.sections[1].ends.from = over;
    CHECK(has(solve(corner), Trouble::over_round_corner));
    CHECK_FALSE(has(solve(corner), Trouble::over_beside_face));
    corner.sections[1].ends.from = {};
    CHECK(has(solve(corner), Trouble::over_beside_face));
    Job line = corner;
    line.posts[2] = on_deck(120, 0);
    line.sections[1].ends.from = over;
    CHECK_FALSE(has(solve(line), Trouble::over_round_corner));
    CHECK_FALSE(has(solve(line), Trouble::over_beside_face));
}

TEST_CASE("over round posts, and posts without a place", "[post_top]") {
    Job round = over_head();
    round.posts[1].shape = PostShape::round;
    round.posts[1].size = {4, 4, "", {}};
    const PostTop top = only_top(round);
    CHECK_THAT(top.near, within(over_landing(46), 1e-12));
    CHECK_THAT(*top.far, within(over_landing(50), 1e-12));

    Job floor = floor_example(71.625);
    floor.posts = {placed_post(0), placed_post(0)};
    for (Post& post : floor.posts) {
        post.stair = {};
        post.at.reset();
    }
    floor.sections[0].from = ref(0);
    floor.sections[0].to = ref(1);
    floor.sections[0].ends.to = {EndWish::Meets::over, 2, {}};
    const PostTop level = only_top(floor);
    CHECK_THAT(level.near, within(36 - 2.75, 1e-13));
    CHECK_THAT(level.centre, within(36 - 2.75, 1e-13));
    CHECK_THAT(*level.far, within(36 - 2.75, 1e-13));
    CHECK(level.cut.miter == 0);
}

TEST_CASE("a rod up through a post under a rail needs no reveal", "[post_top][post]") {
    Job job = over_head();
    PostFixing fixing;
    fixing.id = called("rod");
    PostRod rod;
    rod.floor = 8;
    rod.nut = 0.5;
    fixing.rod = rod;
    job.post_fixings = {fixing};
    job.posts[1].fixing = ref(0);
    const Solution solution = solve(job);
    REQUIRE_FALSE(solution.refused());
    REQUIRE(solution.posts[1].rod);
    CHECK_THAT(solution.posts[1].rod->post, within(over_landing(48), 1e-12));
}

}  // namespace rakewright::tests
