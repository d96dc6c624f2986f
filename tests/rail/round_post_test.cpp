#include <cmath>

#include "../../solver/cut_list.hpp"
#include "../support/even_example.hpp"
#include "../support/near.hpp"

// Whole jobs at round posts.

namespace rakewright::tests {
namespace {

Post rounded_off(Post post) {
    post.shape = PostShape::round;
    return post;
}

Job round_example(double size = 6) {
    Job job = even_example();
    job.posts = {rounded_off(placed_post(-5, 1, size)), rounded_off(placed_post(4, 0, size))};
    return job;
}

Job leaning_example(double left = 1) {
    Job job = round_example();
    job.posts[0].lean.along = {Angle{1, 40}, {}};
    job.posts[0].lean.across = {Angle{left, 60}, {}};
    job.posts[1].across = left * 3;
    return job;
}

Job over_clear(double clear, double diameter) {
    Job job = floor_example(clear);
    job.posts.resize(2);
    for (Post& post : job.posts) {
        post.shape = PostShape::round;
        post.size = {diameter, diameter, "", {}};
    }
    job.sections[0].from = ref(0);
    job.sections[0].to = ref(1);
    return job;
}

const SectionResult& only_section(const Solution& solution) {
    REQUIRE_FALSE(solution.refused());
    return solution.sections.at(0);
}

double reaches(const Member& member, End end, Spot spot) {
    return outward(member.copes[index_of(end)].value(), spot);
}

}  // namespace

TEST_CASE("straight up the stair a round post is met where a square one of its size is", "[rail][round]") {
    Job square_job = even_example();
    for (Post& post : square_job.posts) post.size = {6, 6, "", {}};
    Job round_job = round_example();
    for (Job* job : {&square_job, &round_job}) job->builds[0].bracket->leg = LegWish::down;
    Solution square = solve(square_job), round = solve(round_job);
    measure_openings(square_job, square);
    measure_openings(round_job, round);
    const SectionResult &a = only_section(square), &b = only_section(round);
    CHECK_THAT(b.clear, within(a.clear, 1e-12));
    CHECK_THAT(b.pickets->gap.value(), within(a.pickets->gap.value(), 1e-12));
    for (std::size_t m = 0; m < 3; ++m) {
        CHECK_THAT(b.members[m].length, within(a.members[m].length, 1e-12));
        CHECK_THAT(b.members[m].top_edge, within(a.members[m].top_edge, 1e-12));
        CHECK_THAT(b.members[m].bottom_edge, within(a.members[m].bottom_edge, 1e-12));
        // The horns: q - sqrt(q^2 - (w/2)^2) level, longer on the rake by 1/cos r, and nothing in the middle.
        const double half = b.members[m].width / 2,
                     horn = (3 - std::sqrt(9 - half * half)) * std::sqrt(1 + even_slope * even_slope);
        CHECK_THAT(b.members[m].overall, within(a.members[m].overall + 2 * horn, 1e-12));
        CHECK(b.members[m].from_end.long_point == a.members[m].from_end.long_point);
    }
    for (std::size_t i = 0; i < 4; ++i) {
        CHECK_THAT(b.brackets[i].mark_height.value(), within(a.brackets[i].mark_height.value(), 1e-12));
        CHECK_THAT(b.brackets[i].over_square, within(a.brackets[i].over_square, 1e-12));
    }
    for (std::size_t i = 0; i < a.pickets->centres.size(); ++i) {
        CHECK_THAT(b.pickets->upper.centres[i], within(a.pickets->upper.centres[i], 1e-12));
        CHECK_THAT(b.pickets->lower.centres[i], within(a.pickets->lower.centres[i], 1e-12));
    }
    REQUIRE(b.openings.size() == a.openings.size());
    for (std::size_t i = 0; i < a.openings.size(); ++i)
        CHECK_THAT(b.openings[i].sphere, within(a.openings[i].sphere, 1e-9));
}

TEST_CASE("a leaning round post: every face of every member ends on it, half the play off", "[rail][round]") {
    const Job job = leaning_example();
    const Solution solution = solve(job);
    const SectionResult& section = only_section(solution);
    const double rise = even_slope;
    for (const Member& member : section.members)
        for (const End end : {End::from, End::to}) {
            const StandingPost& post = solution.posts[index_of(end)].standing.value();
            // The level way between the feet, by hand.
            const Vector apart = solution.posts[1].standing->foot - solution.posts[0].standing->foot;
            const Vector way = Vector(apart.x(), apart.y(), 0).normalized();
            CHECK_THAT(section.slope, within(rise * way.x(), 1e-14));
            const Vector inward = (end == End::from ? 0.03125 : -0.03125) * way;
            for (const double left : {-0.5, 0.0, 0.5})
                for (const double top : {-0.5, 0.0, 0.5}) {
                    const Spot spot{left * member.width, top * member.depth};
                    const Vector point =
                        point_on(member.stick.frame, reach(member, end, spot), spot) - inward - post.foot;
                    const double off = (point - post.tipped.upright.dot(point) * post.tipped.upright).norm();
                    CHECK_THAT(off, within(3, 1e-12));
                }
        }
}

TEST_CASE("the mirrored job has the mirrored copes", "[rail][round]") {
    const Solution left = solve(leaning_example(1)), right = solve(leaning_example(-1));
    const SectionResult &a = only_section(left), &b = only_section(right);
    CHECK_THAT(a.clear, within(b.clear, 1e-12));
    for (std::size_t m = 0; m < a.members.size(); ++m)
        for (const End end : {End::from, End::to})
            for (const double x : {-1.0, 0.25, 1.0})
                CHECK_THAT(reaches(a.members[m], end, {x, 0.5}), within(reaches(b.members[m], end, {-x, 0.5}), 1e-12));
    CHECK_THAT(a.members[0].overall, within(b.members[0].overall, 1e-12));
    // Never one piece: a cope does not turn into its mirror image.
    Job both = leaning_example(1);
    const Job other = leaning_example(-1);
    both.posts.insert(both.posts.end(), other.posts.begin(), other.posts.end());
    both.sections.push_back(section_between(2, 3));
    both.sections.push_back(section_between(0, 1));
    std::size_t members = 0;
    for (const CutPiece& piece : cut_list(both, solve(both))) {
        if (piece.stuff != Stuff::member) continue;
        ++members;
        CHECK((piece.quantity == 2) == (piece.uses[0].of == 0));
    }
    CHECK(members == 6);
}

TEST_CASE("a very thick round post is as good as flat", "[rail][round]") {
    Job flat = floor_example(60);
    const Solution square = solve(flat), round = solve(over_clear(60, 1e6));
    const SectionResult &a = only_section(square), &b = only_section(round);
    CHECK(a.clear == b.clear);
    for (std::size_t m = 0; m < a.members.size(); ++m) {
        const double sagitta = a.members[m].width * a.members[m].width / 8 / 5e5;  // to its first order
        CHECK_THAT(b.members[m].length, within(a.members[m].length, 1e-9));
        CHECK_THAT(b.members[m].overall, within(a.members[m].overall + 2 * sagitta, 1e-9));
        CHECK_THAT(b.members[m].copes[0]->depth(), within(sagitta, 1e-12));
    }
}

TEST_CASE("a post without a place: the clear distance is between the surfaces on the centre line", "[rail][round]") {
    Job job = over_clear(60, 8);
    CHECK_THAT(only_section(solve(job)).members[1].length, within(60 - 0.0625, 1e-12));
    job.stairs = {even_stair()};
    job.sections[0].stair = ref(0);
    const Solution solution = solve(job);
    const Member& raked = only_section(solution).members[1];
    CHECK_THAT(raked.length, within((60 - 0.0625) * std::sqrt(1 + even_slope * even_slope), 1e-12));
    CHECK_THAT(reaches(raked, End::from, {1.25, 0}),
               within((4 - std::sqrt(16 - 1.5625)) * std::sqrt(1 + even_slope * even_slope), 1e-12));
}

TEST_CASE("a girth is pi diameters, and millimetres are inches", "[rail][round]") {
    Job taped = round_example();
    for (Post& post : taped.posts) {
        post.size = {};
        post.around = Reading(18.849555921538759);  // 6 pi, from memory
    }
    const Solution sized = solve(round_example()), girth = solve(taped);
    CHECK_THAT(only_section(girth).clear, within(only_section(sized).clear, 1e-12));
    CHECK_THAT(only_section(girth).members[0].copes[0]->depth(),
               within(only_section(sized).members[0].copes[0]->depth(), 1e-12));

    Job inches = over_clear(60, 8), metric = over_clear(60 * 25.4, 8 * 25.4);
    metric.units = Unit::millimetre;
    metric.builds[0].height = 36 * 25.4;
    metric.builds[0].lower_gap = LowerGap{2 * 25.4};
    metric.builds[0].play = 0.0625 * 25.4;
    metric.builds[0].pickets.reset();
    metric.builds[0].bracket.reset();
    for (std::vector<MemberSize>* group : {&metric.builds[0].upper, &metric.builds[0].lower})
        for (MemberSize& size : *group) {
            size.width.value *= 25.4;
            size.depth.value *= 25.4;
        }
    const Solution a = solve(inches), b = solve(metric);
    for (std::size_t m = 0; m < 3; ++m)
        CHECK_THAT(only_section(b).members[m].copes[1]->depth(),
                   within(25.4 * only_section(a).members[m].copes[1]->depth(), 1e-12));
}

TEST_CASE("at a round post the leg is turned down unless somebody wishes otherwise", "[rail][round][bracket]") {
    Job job = round_example();
    job.posts[1].shape = PostShape::square;
    const Solution solution = solve(job);
    CHECK(has(solution, Trouble::leg_down_on_round));
    for (const Bracket& bracket : only_section(solution).brackets)
        if (bracket.end == End::from) CHECK(bracket.leg == Leg::down);
    CHECK_FALSE(has(solve(even_example()), Trouble::leg_down_on_round));
    // A leg turned up between post and rail moves the cope off by its thickness.
    job.builds[0].bracket->leg = LegWish::up;
    job.builds[0].bracket->post_seat = PostSeat::surface;
    const Solution up = solve(job);
    CHECK_FALSE(has(up, Trouble::leg_down_on_round));
    CHECK_THAT(only_section(up).members[1].shortened[0], within(0.125 * std::sqrt(1 + even_slope * even_slope), 1e-12));
}

TEST_CASE("`face` of a round post is its farthest line down or up the stair", "[rail][round]") {
    Job by_centre = round_example(), by_face = round_example();
    by_face.posts[0].at = Reading(-5 + 3);
    by_face.posts[0].face = PostFace::uphill;
    by_face.posts[1].at = Reading(4 - 3);
    by_face.posts[1].face = PostFace::downhill;
    CHECK(only_section(solve(by_centre)).clear == only_section(solve(by_face)).clear);
}

TEST_CASE("a corner is never met on a round post", "[rail][round]") {
    Job job = round_example();
    job.posts[1] = rounded_off(placed_post(-5, 1, 6));
    job.posts[1].at = Reading(25);
    job.posts[1].across = 30;
    job.builds[0].lower_gap = LowerGap{6};
    CHECK_FALSE(has(solve(job), Trouble::meets_corner));
}

}  // namespace rakewright::tests
