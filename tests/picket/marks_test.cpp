#include "../../solver/picket/picket.hpp"

#include <algorithm>
#include <cmath>

#include "../support/even_example.hpp"
#include "../support/near.hpp"

namespace rakewright::tests {
namespace {

const double lengthened = std::sqrt(7.25 * 7.25 + 11 * 11) / 11;

Solution solved(const Job& job) {
    Solution solution = solve(job);
    REQUIRE_FALSE(solution.refused());
    return solution;
}

Pickets pickets_of_job(const Job& job) { return solved(job).sections.front().pickets.value(); }

/// The widest gap on one rail, level, when every near edge is set to the tape's nearest mark, counted from the hook:
/// worked out from the level layout alone. `hook_at_to` for a tape hooked at the far end.
double widest_as_set(double clear, double width, int count, double play, double along, double division,
                     bool hook_at_to) {
    const double gap = (clear - count * width) / (count + 1);
    double before = 0, widest = 0;
    for (int i = 0; i < count; ++i) {
        const int number = hook_at_to ? count - 1 - i : i;
        const double edge = ((number + 1) * gap + number * width - play / 2) * along;  // alike from both ends
        const double set = std::floor(edge / division + 0.5) * division / along + play / 2;
        const double low_edge = hook_at_to ? clear - set - width : set;
        widest = std::max(widest, low_edge - before);
        before = low_edge + width;
    }
    return std::max(widest, clear - before);
}

}  // namespace

TEST_CASE("marks are running centres along the picket face, from the member's own end", "[picket][marks]") {
    const Pickets pickets = pickets_of_job(even_example());
    REQUIRE(pickets.upper.centres.size() == 9);
    for (std::size_t i = 0; i < 9; ++i) {
        // Between plumb posts every edge of a member starts half the play behind the post's face.
        const double centre = (double(i) + 1) * 3.6 + (double(i) + 0.5) * 1.5;
        CHECK_THAT(pickets.centres[i], within(centre, 1e-13));
        CHECK_THAT(pickets.upper.centres[i], within((centre - 0.03125) * lengthened, 1e-12));
        CHECK_THAT(pickets.lower.centres[i], within((centre - 0.03125) * lengthened, 1e-12));
    }
}

TEST_CASE("marks start at the member's own end, each rail's where it meets a leaning post", "[picket][marks]") {
    // Level, straight across, over a nosing line that lies on the floor; the near post leans toward the far one by 1
    // in 20.
    Job job = even_example();
    job.stairs[0].rise = Reading(7.5);
    job.stairs[0].run = Reading(10);
    job.posts = {placed_post(-10), placed_post(-10)};
    job.posts[1].across = 63.5;
    job.posts[0].lean.across = {Angle{1, 20}, {}};
    const Pickets pickets = pickets_of_job(job);
    const double widened = std::sqrt(1 + 1.0 / 400);
    const auto face = [&](double height) { return 1.75 * widened + height / 20; };
    const double half_way = face((33.25 + 3.5) / 2), clear = 61.75 - half_way;
    const double gap = (clear - pickets.count * 1.5) / (pickets.count + 1);
    CHECK_THAT(pickets.from_gap, within(gap, 1e-12));
    const double first = half_way + gap + 0.75;  // from the near post's centre
    CHECK_THAT(pickets.upper.centres[0], within(first - face(33.25) - 0.03125, 1e-12));
    CHECK_THAT(pickets.lower.centres[0], within(first - face(3.5) - 0.03125, 1e-12));
}

TEST_CASE("a tape is hooked where the corner of the picket face is the long point", "[picket][marks]") {
    // Derived: the cuts are plumb, so that on the upper face of a bottom rail the corner at the foot is the obtuse one,
    // 90 + r, d tan r behind the tip below it; a hook slips off it.
    const Pickets up = pickets_of_job(even_example());
    CHECK(up.upper.hook == End::from);
    CHECK(up.lower.hook == End::to);
    Job job = even_example();
    job.sections[0] = section_between(1, 0);
    const Pickets down = pickets_of_job(job);
    CHECK(down.upper.hook == End::to);
    CHECK(down.lower.hook == End::from);
}

TEST_CASE("half a picket is w/(2 cos r) on the slope, not w/2", "[picket][marks]") {
    const Pickets pickets = pickets_of_job(even_example());
    CHECK_THAT(pickets.upper.half_width, within(0.75 * lengthened, 1e-14));
    CHECK_THAT(pickets.upper.half_width - 0.75, within(0.148, 5e-4));  // derived: w/2 (1/cos r - 1)
    const double face = (49.5 - 0.0625) * lengthened;
    CHECK_THAT(pickets.lower.face_length, within(face, 1e-12));
    for (std::size_t i = 0; i < 9; ++i) {
        const double centre = (double(i) + 1) * 3.6 + (double(i) + 0.5) * 1.5;
        CHECK_THAT(pickets.upper.near_edge(i), within((centre - 0.75 - 0.03125) * lengthened, 1e-12));
        // From the other end: the whole, less the mark, less half a picket.
        CHECK_THAT(pickets.lower.near_edge(i), within(face - pickets.lower.centres[i] - 0.75 * lengthened, 1e-12));
        CHECK_THAT(pickets.lower.centre_from_hook(i), within(face - pickets.lower.centres[i], 1e-12));
    }
}

TEST_CASE("the widest gap as marked is the one that rounded marks leave", "[picket][marks]") {
    for (const double clear : {49.5, 71.625, 60.4375, 33.3})
        for (const double division : {1.0 / 16, 1.0 / 8, 1.0 / 32})
            for (const bool raked : {false, true}) {
                INFO(clear << " by " << division << (raked ? " raked" : " level"));
                Job job = floor_example(clear);
                job.round = Reading(division);
                if (raked) {
                    job.stairs = {even_stair()};
                    job.sections[0].stair = ref(0);
                }
                const Pickets pickets = pickets_of_job(job);
                const double along = raked ? lengthened : 1;
                double expected = pickets.widest_gap;
                for (const bool hook_at_to : {false, raked})
                    expected = std::max(expected,
                                        widest_as_set(clear, 1.5, pickets.count, 0.0625, along, division, hook_at_to));
                CHECK_THAT(pickets.widest_marked, within(expected, 1e-11));
                CHECK(pickets.widest_marked >= pickets.widest_gap);
                CHECK(pickets.widest_marked <= pickets.widest_gap + division + 1e-9);
            }
}

TEST_CASE("fillets between pickets: g/cos r on both faces, t tan r more from tip to tip", "[picket][fillet]") {
    Job job = even_example();
    job.builds[0].pickets->plough = {0.25, 0.375};
    const Pickets pickets = pickets_of_job(job);
    REQUIRE(pickets.fillets.size() == 4);
    for (const std::size_t group : {0U, 1U}) {
        const Fillet &end = pickets.fillets[2 * group], &between = pickets.fillets[2 * group + 1];
        const double deep = group == 0 ? 0.25 : 0.375;
        CHECK(between.group == (group == 0 ? Group::upper : Group::lower));
        CHECK(between.count == 8);
        CHECK(between.at == std::vector<int>{1, 2, 3, 4, 5, 6, 7, 8});
        CHECK_THAT(between.length, within(3.6 * lengthened, 1e-12));
        CHECK_THAT(between.overall, within(3.6 * lengthened + deep * even_slope, 1e-12));
        // The two at the posts are shorter by half the play; n + 1 to a plough.
        CHECK(end.count == 2);
        CHECK(end.at == std::vector<int>{0, 9});
        CHECK_THAT(end.length, within((3.6 - 0.03125) * lengthened, 1e-12));
    }
}

TEST_CASE("no plough, no fillets; a plough in one rail, fillets in that one", "[picket][fillet]") {
    CHECK(pickets_of_job(even_example()).fillets.empty());
    Job job = floor_example(71.625);
    job.builds[0].pickets->plough = {0.25, 0};
    const Pickets pickets = pickets_of_job(job);
    REQUIRE(pickets.fillets.size() == 2);
    for (const Fillet& fillet : pickets.fillets) {
        CHECK(fillet.group == Group::upper);
        CHECK_THAT(fillet.overall, within(fillet.length, 1e-13));  // level: square ends
    }
    CHECK(pickets.fillets[0].count + pickets.fillets[1].count == pickets.count + 1);
}

}  // namespace rakewright::tests
