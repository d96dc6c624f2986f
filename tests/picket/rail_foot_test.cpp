#include "../../solver/picket/rail_foot.hpp"

#include <cmath>

#include "../../solver/cut_list.hpp"
#include "../support/even_example.hpp"
#include "../support/near.hpp"

// Feet under the lower rail.

namespace rakewright::tests {
namespace {

SectionResult solved(const Job& job) {
    const Solution solution = solve(job);
    REQUIRE_FALSE(solution.refused());
    return solution.sections.front();
}

Build with_feet(double every) {
    Build build = square_build();
    build.feet = FeetBuild();
    build.feet->every = every;
    return build;
}

}  // namespace

TEST_CASE("feet under so much clear: one less than the parts that it takes", "[foot]") {
    // ceil(clear / every) - 1.
    CHECK(feet_under(60, 61) == 0);
    CHECK(feet_under(60, 60) == 0);
    CHECK(feet_under(60, 59) == 1);
    CHECK(feet_under(60, 30) == 1);
    CHECK(feet_under(60, 29.9) == 2);
    CHECK(feet_under(0.3, 0.1) == 2);  // three parts, though 0.3 / 0.1 is not 3
    CHECK(feet_under(3 * 25.4 * 7.1, 25.4 * 7.1) == 2);
    CHECK_FALSE(feet_under(1e6, 1e-3));
}

TEST_CASE("on a floor: as tall as the gap, under the nearest pickets", "[foot]") {
    const SectionResult section = solved(floor_example(71.625, with_feet(24)));
    // Three parts: at 23 7/8 and 47 3/4. (71.625 - 13 x 1 1/2) / 14 = 3.723: centres at 4.473 + 5.223 i.
    const double pitch = (71.625 - 13 * 1.5) / 14 + 1.5;
    REQUIRE(section.pickets->count == 13);
    REQUIRE(section.feet.size() == 2);
    CHECK(section.feet[0].picket == 5);
    CHECK(section.feet[1].picket == 9);
    CHECK_THAT(section.feet[0].at, within(5 * pitch - 0.75, 1e-12));
    for (const RailFoot& foot : section.feet) {
        CHECK_THAT(foot.uphill_side, within(2, 1e-13));
        CHECK_THAT(foot.downhill_side, within(2, 1e-13));
        CHECK_THAT(foot.overall, within(2, 1e-13));
    }
}

TEST_CASE("on a stair: plumb sides from the tread to the rail, the head at the rake, off the nosings", "[foot]") {
    const double slope = 7.25 / 11;
    const SectionResult section = solved(even_example(with_feet(12)));
    REQUIRE(section.feet.size() == 4);
    for (const RailFoot& foot : section.feet) {
        const double x = -3.25 + foot.at;  // the foot post's face stands 3 1/4 before the first nosing
        INFO("foot at " << x);
        const int tread = x < 0 ? 0 : 1 + static_cast<int>(std::floor(x / 11));
        const double height = 7.25 + slope * x + 2 - tread * 7.25;
        CHECK_THAT(foot.uphill_side, within(height + 0.75 * slope, 1e-12));
        CHECK_THAT(foot.downhill_side, within(height - 0.75 * slope, 1e-12));
        for (int nosing = 0; nosing < 5; ++nosing) CHECK(std::fabs(x - 11 * nosing) >= 0.75 - 1e-12);
        CHECK(foot.downhill_side > 0);
        CHECK_THAT(section.pickets->centres[static_cast<std::size_t>(foot.picket - 1)], within(foot.at, 1e-15));
    }
}

TEST_CASE("a foot moves off a picket astride a nosing, to the next", "[foot]") {
    // Eight pickets a foot apart at 11: one foot, wished for the middle, 24 3/4: 21 1/2 past the first nosing.
    Job job = even_example(with_feet(30));
    job.builds[0].pickets->pitch = Reading(5.5);
    job.builds[0].pickets->least_end_gap = Reading(0);
    job.builds[0].pickets->max_gap.reset();
    const SectionResult section = solved(job);
    REQUIRE(section.feet.size() == 1);
    // Nine at 5 1/2: the fifth stands in the middle, 21 1/2 over a nosing at 22: astride. Its neighbours are equally
    // near; the first of them is taken.
    REQUIRE(section.pickets->count == 9);
    CHECK_THAT(section.pickets->centres[4], within(24.75, 1e-12));
    CHECK(section.feet[0].picket == 4);
}

TEST_CASE("without pickets a foot stands where it is wished for, or is left out", "[foot]") {
    Build build = with_feet(30);
    build.pickets.reset();
    build.feet->width = Reading(1.5);
    build.feet->depth = Reading(3);
    const SectionResult floor = solved(floor_example(60, build));
    REQUIRE(floor.feet.size() == 1);
    CHECK(floor.feet[0].picket == 0);
    CHECK_THAT(floor.feet[0].at, within(30, 1e-13));
    CHECK(floor.feet[0].piece.section.width == 3);
    CHECK(floor.feet[0].piece.section.depth == 1.5);
    const Solution astride = solve(even_example(build));
    CHECK(astride.sections[0].feet.empty());
    CHECK(has(astride, Trouble::foot_without_place));
}

TEST_CASE("feet where nothing says how high the rail stands over the steps are left out", "[foot]") {
    Job job = floor_example(49.5, with_feet(20));
    job.stairs = {even_stair()};
    job.sections[0].stair = ref(0);
    const Solution solution = solve(job);
    CHECK_FALSE(solution.refused());
    CHECK(has(solution, Trouble::feet_unplaced));
    CHECK(solution.sections[0].feet.empty());
}

TEST_CASE("on a closed string both ends are cut at the rake", "[foot]") {
    Job job = even_example(with_feet(30));
    job.stairs[0].strings = {StringKind::closed, StringKind::closed};
    job.stairs[0].string_above = Reading(1);
    const SectionResult section = solved(job);
    REQUIRE(section.feet.size() == 1);
    CHECK_THAT(section.feet[0].uphill_side, within(1, 1e-12));  // 2 less 1, plumb
    CHECK_THAT(section.feet[0].downhill_side, within(1, 1e-12));
}

TEST_CASE("feet are in the cut list, as many as there are sections alike", "[foot]") {
    Job job = floor_example(71.625, with_feet(24));
    job.sections[0].count = Count(3);
    const Solution solution = solve(job);
    int feet = 0;
    for (const CutPiece& piece : cut_list(job, solution))
        if (piece.stuff == Stuff::foot) feet += piece.quantity;
    CHECK(feet == 6);
}

TEST_CASE("what goes to each section adds up to what is cut", "[foot][cut_list]") {
    Job job = even_example(with_feet(14));
    job.builds[0].pickets->plough = {0.25, 0.25};
    for (const double clear : {71.625, 71.625, 38.0}) job.sections.push_back(floor_example(clear).sections[0]);
    job.sections[1].count = Count(3);
    const Solution solution = solve(job);
    REQUIRE_FALSE(solution.refused());
    const std::vector<CutPiece> pieces = cut_list(job, solution);
    std::vector<int> pickets(4);
    for (const CutPiece& piece : pieces) {
        int all = 0;
        for (const Share& share : shares_of(job, solution, piece)) {
            all += share.count;
            if (piece.stuff == Stuff::picket) pickets[static_cast<std::size_t>(share.of)] += share.count;
        }
        CHECK(all == piece.quantity);
    }
    for (std::size_t s = 0; s < 4; ++s)
        CHECK(pickets[s] == solution.sections[s].pickets->count * job.sections[s].count);
}

}  // namespace rakewright::tests
