#include <cmath>

#include "../support/measured.hpp"
#include "../support/near.hpp"

// Rails that meet without a post. The published angles are those of the framing square: a rail that is cut to the plumb
// plane that halves a corner is a jack or hip there.

namespace rakewright::tests {
namespace {

/// A flight with an even slope of `rise` in `run`, its nosing line `at_origin` high at its own origin in plan.
Stair flight(double rise, double run, double x, double y, double heading, double at_origin) {
    Stair stair = even_stair();
    stair.rise = Reading(rise);
    stair.run = Reading(run);
    stair.plan = planned(x, y, heading, at_origin - rise);
    return stair;
}

Post joint_at_stair(double at) {
    Post post = placed_post(at);
    post.size = {};
    post.shape = PostShape::joint;
    return post;
}

Build one_rail(double width = 3.5, double depth = 1.5) {
    Build build;
    build.id = called("rail");
    build.height = 36;
    build.upper = {{"rail", width, depth}};
    return build;
}

/// Two flights of one slope, the first up to the origin of the plan from -x, its nosing line at 0 there; the second
/// away from it: by its heading, climbing or falling away.
Job two_flights(double rise, double run, double heading, bool second_climbs) {
    Job job;
    job.builds = {one_rail()};
    job.stairs = {flight(rise, run, -8 * run, 0, 0, -8 * rise)};
    const SineCosine turn = sine_cosine(angle_from_degrees(heading));
    if (second_climbs)
        job.stairs.push_back(flight(rise, run, 0, 0, heading, 0));
    else
        job.stairs.push_back(flight(rise, run, 8 * run * turn.cosine, 8 * run * turn.sine, heading + 180, -8 * rise));
    job.posts = {placed_post(-20), joint_at_stair(8 * run), placed_post(second_climbs ? 60 : 20)};
    job.posts[0].base = {Base::On::tread, 0, 0, {}};
    job.posts[2].stair = ref(1);
    for (Post& post : job.posts) post.base = {Base::On::tread, 0, 0, {}};
    job.sections = {section_between(0, 1), section_between(1, 2)};
    job.sections[0].stair = ref(0);
    job.sections[1].stair = ref(1);
    return job;
}

const JointResult& joint_in(const Solution& solution, std::size_t post = 1) {
    REQUIRE_FALSE(solution.refused());
    REQUIRE(solution.posts[post].joint.has_value());
    return *solution.posts[post].joint;
}

double in_degrees_of(double slope) { return degrees(angle_of(std::fabs(slope))); }

}  // namespace

TEST_CASE("level to rake in one plane: half the rake each, where the tops meet", "[rail][joint]") {
    Job job = even_example(one_rail());
    Floor deck;
    deck.plan = planned(44, 0, 0, 36.25);
    job.floors = {deck};
    job.stairs[0].plan = planned(0, 0, 0, 0);
    Post end = placed_post(60);
    end.stair = {};
    end.floor = ref(0);
    job.posts = {placed_post(-5), joint_at_stair(44), end};
    job.sections = {section_between(0, 1), section_between(1, 2)};
    job.sections[0].height = Reading(34);
    const Solution solution = measured(job);
    const Member &rake = solution.sections[0].members[0], &level = solution.sections[1].members[0];
    const double half = degrees(angle_of(even_slope)) / 2;
    CHECK_THAT(in_degrees_of(rake.to_end.flat.bevel), within(half, 1e-12));
    CHECK_THAT(in_degrees_of(level.from_end.flat.bevel), within(half, 1e-12));
    CHECK(rake.to_end.flat.miter == 0);
    // Derived: a rake of 34 and a level rail of 36 meet (36 - 34) / slope past the last nosing, 3.0345 for 7 1/4 in 11.
    CHECK_THAT(joint_in(solution).moved, within(2 / even_slope, 1e-12));
    CHECK(joint_in(solution).straight);
    CHECK(joint_in(solution).members[0].apart() < 1e-12);
    CHECK(has(solution, Trouble::joint_moved));
    CHECK_FALSE(has(solution, Trouble::joint_apart));
    // Along their tops both together are as long as the way over the tops.
    const double level_way = 49 + 2 / even_slope, rest = 60 - 2 / even_slope;
    CHECK_THAT(rake.top_edge, within((level_way - 1.75) * std::sqrt(1 + even_slope * even_slope), 1e-11));
    CHECK_THAT(level.top_edge, within(rest - 1.75, 1e-11));
}

TEST_CASE("two level rails round a corner are mitered by half of it", "[rail][joint]") {
    for (const double corner : {90.0, -90.0, 45.0, -30.0}) {
        Job job;
        job.builds = {one_rail()};
        Floor deck;
        deck.id = called("deck");
        deck.plan = planned(0, 0, 0, 0);
        job.floors = {deck};
        const SineCosine turn = sine_cosine(angle_from_degrees(corner));
        const auto on_deck = [](Post post, double across) {
            post.stair = {};
            post.floor = ref(0);
            post.across = across;
            return post;
        };
        job.posts = {on_deck(placed_post(-60), 0), on_deck(joint_at_stair(0), 0),
                     on_deck(placed_post(60 * turn.cosine), 60 * turn.sine)};
        job.posts[2].turn = in_degrees(corner);
        job.sections = {section_between(0, 1), section_between(1, 2)};
        const Solution solution = measured(job);
        const Member &one = solution.sections[0].members[0], &other = solution.sections[1].members[0];
        CHECK_THAT(in_degrees_of(one.to_end.flat.miter), within(std::fabs(corner) / 2, 1e-12));
        CHECK_THAT(in_degrees_of(other.from_end.flat.miter), within(std::fabs(corner) / 2, 1e-12));
        CHECK_THAT(one.to_end.flat.bevel, within(0, 1e-15));
        CHECK(joint_in(solution).members[0].apart() < 1e-12);
        // The long point is on the outside of the turn.
        CHECK(one.to_end.long_point.left == (corner > 0 ? -1 : 1));
        CHECK_THAT(one.length, within(60 - 1.75, 1e-12));
    }
}

TEST_CASE("a rail of no length at a joint is refused, and the rail that it meets with it", "[rail][joint]") {
    Job job = even_example(one_rail());
    Floor deck;
    deck.plan = planned(44, 0, 0, 36.25);
    job.floors = {deck};
    job.stairs[0].plan = planned(0, 0, 0, 0);
    Post end = placed_post(0);
    end.stair = {};
    end.floor = ref(0);
    job.posts = {placed_post(-5), joint_at_stair(44), end};
    job.builds[0].pickets = square_pickets();
    job.sections = {section_between(0, 1), section_between(1, 2)};
    CHECK(has(solve(job), Trouble::posts_overlap));
}

TEST_CASE("rails that pass a joint's place on one side meet where their lines do", "[rail][joint]") {
    // Two level rails round a corner to the left, both 1 1/2 to the left of the joint: the lines cross 1 1/2 before it.
    for (const double offset : {1.5, -1.25}) {
        Job job;
        job.builds = {one_rail()};
        Floor deck;
        deck.id = called("deck");
        deck.plan = planned(0, 0, 0, 0);
        job.floors = {deck};
        const auto on_deck = [](Post post, double across) {
            post.stair = {};
            post.floor = ref(0);
            post.across = across;
            return post;
        };
        job.posts = {on_deck(placed_post(-60), 0), on_deck(joint_at_stair(0), 0), on_deck(placed_post(0), 72)};
        job.sections = {section_between(0, 1), section_between(1, 2)};
        for (Section& section : job.sections) section.offset = {offset, offset};
        const Solution solution = measured(job);
        CHECK(joint_in(solution).members[0].apart() < 1e-12);
        const SectionResult &one = solution.sections[0], &other = solution.sections[1];
        CHECK_THAT(one.members[0].length, within(60 - 1.75 - offset, 1e-12));
        CHECK_THAT(other.members[0].length, within(72 - 1.75 - offset, 1e-12));
        CHECK_THAT(one.clear, within(60 - 1.75 - offset, 1e-12));
        CHECK_FALSE(has(solution, Trouble::joint_apart));
    }
}

TEST_CASE("two rakes that rise to a corner are cut as hips are", "[rail][joint][published]") {
    // NAVEDTRA 14044, side cut of jacks at a unit rise of 8: the square set at 12 and 10, 39.8 degrees from the edge; the
    // further figures derived from the same rule by another route. The saw's miter is the complement of the side cut.
    struct Row {
        double rise, side_cut, backing;
    };
    for (const Row& row : {Row{6, 41.81031, 18.43495}, Row{8, 39.76216, 23.09347}, Row{10, 37.53224, 26.91568},
                           Row{12, 35.26439, 30.0}}) {
        const Solution solution = measured(two_flights(row.rise, 12, 90, false));
        for (const EndCut* cut : {&solution.sections[0].members[0].to_end, &solution.sections[1].members[0].from_end}) {
            CHECK_THAT(in_degrees_of(cut->flat.miter), within(90 - row.side_cut, 6e-6));
            CHECK_THAT(in_degrees_of(cut->flat.bevel), within(row.backing, 6e-6));
        }
        CHECK(joint_in(solution).members[0].apart() < 1e-12);
        CHECK_FALSE(joint_in(solution).straight);
    }
}

TEST_CASE("two rakes that rise to a corner: half the whole bend off square", "[rail][joint]") {
    // The whole bend between the centre lines is acos(cos^2 r cos psi - sin^2 r), psi the turn in plan, by the spherical
    // law of cosines.
    struct Row {
        double rise, run, turn;
    };
    for (const Row& row : {Row{7, 11, 90}, Row{8, 12, 90}, Row{7.5, 10, 45}, Row{7, 11, -60}}) {
        const double rake = std::atan(row.rise / row.run), turn = row.turn * M_PI / 180;
        const double bend = std::acos(std::cos(rake) * std::cos(rake) * std::cos(turn) -
                                      std::sin(rake) * std::sin(rake));
        const Solution solution = measured(two_flights(row.rise, row.run, row.turn, false));
        CHECK(joint_in(solution).members[0].apart() < 1e-12);
        for (const Slant& slant : {solution.sections[0].members[0].stick.piece.to,
                                   solution.sections[1].members[0].stick.piece.from})
            CHECK_THAT(std::atan(std::hypot(slant.per_left, slant.per_top)), within(bend / 2, 1e-12));
    }
}

TEST_CASE("a rake that goes on rising round a corner does not end flush, and by how much follows", "[rail][joint]") {
    const double slope = 8.0 / 12, width = 3.5, depth = 1.5;
    const Solution solution = measured(two_flights(8, 12, 90, true));
    CHECK(has(solution, Trouble::joint_apart));
    // In the plumb plane of the corner the arris outside runs on half the width past the middle on the first rail and
    // begins half the width before it on the second: there the second is lower by slope times the width, inside higher.
    for (const CornerMet& corner : joint_in(solution).members[0].corners) {
        const bool outside = corner.corner.left == -1;  // the turn is to the left
        CHECK_THAT(corner.plumb, within(outside ? -slope * width : slope * width, 1e-12));
        CHECK_THAT(corner.level, within(0, 1e-12));
        // Moulded to meet it, the second's section is as wide, and its sides are shifted by that, square to its rake.
        CHECK_THAT(corner.moulded.left, within(corner.corner.left * width / 2, 1e-12));
        const double cosine = 1 / std::sqrt(1 + slope * slope);
        CHECK_THAT(corner.moulded.top,
                   within(corner.corner.top * depth / 2 + (outside ? 1 : -1) * slope * width * cosine, 1e-12));
    }
}

TEST_CASE("a rake that turns level round a corner misses by half its width times its slope", "[rail][joint]") {
    Job job = two_flights(7, 11, 90, true);
    Floor deck;
    deck.plan = planned(0, 0, 90, 0);
    job.floors = {deck};
    job.posts[2].stair = {};
    job.posts[2].floor = ref(0);
    job.sections[1].stair = {};
    job.sections[1].floor = ref(0);
    const Solution solution = measured(job);
    for (const CornerMet& corner : joint_in(solution).members[0].corners) {
        // The raked section stands plumb on its rake: its depth takes d / cos there, and the middles meet.
        const double root = std::sqrt(1 + 49.0 / 121), outside = corner.corner.left == -1 ? 1 : -1;
        const double first = corner.corner.top * 0.75 * root + outside * 7.0 / 11 * 1.75,
                     second = corner.corner.top * 0.75;
        // Tops are as high over the joint: the middle of the raked one is lower by what its depth takes more.
        CHECK_THAT(corner.plumb, within(second - 0.75 - (first - 0.75 * root), 1e-12));
    }
}

TEST_CASE("rails in line of one slope meet square and flush", "[rail][joint]") {
    Job job = even_example(square_build());
    job.builds[0].bracket.reset();
    job.posts = {placed_post(-5), joint_at_stair(20), placed_post(4, 0)};
    job.sections = {section_between(0, 1), section_between(2, 1)};  // both to the joint
    const Solution solution = measured(job);
    for (const MembersMet& met : joint_in(solution).members) CHECK(met.apart() < 1e-12);
    CHECK(joint_in(solution).members.size() == 3);
    for (const SectionResult& section : solution.sections)
        for (const Member& member : section.members) {
            CHECK_THAT(member.stick.piece.to.per_top, within(0, 1e-14));
            CHECK_THAT(member.stick.piece.to.per_left, within(0, 1e-14));
        }
}

TEST_CASE("what an end is cut to: centre, past it, square short of it, a pad", "[rail][joint]") {
    const double root = std::sqrt(1 + even_slope * even_slope);
    Job job = even_example(one_rail());
    job.builds[0].play = 0;
    const auto rail = [&](EndWish::Meets from, double by) {
        job.sections[0].ends.from = {from, Reading(by), {}};
        return measured(job).sections[0].members[0];
    };
    const double to_face = 53 - 1.75;  // from the from post's centre to the other post's face
    using Meets = EndWish::Meets;
    CHECK_THAT(rail(Meets::face, 0).length, within((to_face - 1.75) * root, 1e-12));
    CHECK_THAT(rail(Meets::centre, 0).length, within(to_face * root, 1e-12));
    CHECK_THAT(rail(Meets::past, 6).length, within((to_face + 6) * root, 1e-12));
    CHECK_THAT(rail(Meets::pad, 0.75).length, within((to_face - 2.5) * root, 1e-12));
    const Member fitted = rail(Meets::square, 4);
    CHECK_THAT(fitted.length, within((to_face - 4) * root, 1e-12));
    CHECK_THAT(fitted.stick.piece.from.per_top, within(0, 1e-15));
    CHECK_THAT(fitted.top_edge - fitted.bottom_edge, within(1.5 * even_slope, 1e-12));
    // The gaps are still between the posts' faces.
    CHECK(measured(job).sections[0].clear == 49.5);
}

TEST_CASE("there are brackets only where the rail meets a post's face", "[rail][joint]") {
    Job job = even_example();
    job.sections[0].ends.from = {EndWish::Meets::centre, {}, {}};
    const SectionResult section = measured(job).sections[0];
    REQUIRE(section.brackets.size() == 2);
    for (const Bracket& bracket : section.brackets) CHECK(bracket.end == End::to);
}

TEST_CASE("rails of two sections at a post: what they take up of it, and where they would meet", "[rail][joint]") {
    Job job = even_example();
    job.stairs[0].plan = planned(0, 0, 0, 0);
    Floor deck;
    deck.id = called("deck");
    deck.plan = planned(44, 0, 90, 36.25);
    job.floors = {deck};
    Post end = placed_post(70);
    end.stair = {};
    end.floor = ref(0);
    end.across = -4;
    job.posts.push_back(end);
    job.sections.push_back(section_between(1, 2));
    job.sections[0].height = Reading(34);
    const Solution solution = measured(job);
    const Arrivals at = solution.posts[1].arrivals.value();
    const double root = std::sqrt(1 + even_slope * even_slope), rake_top = 34 + 2.25 * even_slope;
    CHECK_THAT(at.set_back.value(), within(2 / even_slope, 1e-12));
    CHECK_THAT(at.apart, within(std::fabs(36 - rake_top), 1e-12));
    CHECK_THAT(at.upper.top, within(std::fmax(36, rake_top), 1e-12));
    CHECK_THAT(at.upper.underside, within(std::fmin(36 - 2.75, rake_top - 2.75 * root), 1e-12));
    CHECK_THAT(at.lower->top, within(std::fmax(3.5, 2 + 1.5 * root + 2.25 * even_slope), 1e-12));
    CHECK_FALSE(solution.posts[0].arrivals.has_value());
}

}  // namespace rakewright::tests
