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

// Derived: before the foot a ball lies in the triangle of tread, rail and the foot's lower face, legs b and b / s, so
// b (1 + 1 / s - sqrt(1 + 1 / s^2)) wide; behind it is the ball of the unbroken tread, unless foot and riser squeeze it.
TEST_CASE("a foot parts the opening over its tread", "[foot][opening]") {
    const double slope = 7.25 / 11;
    const auto measured = [](const Job& job) {
        Solution solution = solve(job);
        REQUIRE_FALSE(solution.refused());
        measure_openings(job, solution);
        return solution.sections.front();
    };
    int in_front_of_it = 0, squeezed = 0;
    for (const double every : {24.0, 17.0, 14.0, 12.0}) {
        Job job = even_example(with_feet(every));
        job.builds[0].lower_gap = LowerGap{0.5, false};
        const SectionResult parted = measured(job);
        job.builds[0].feet.reset();
        const SectionResult unbroken = measured(job);
        REQUIRE(parted.openings.size() == unbroken.openings.size());
        for (std::size_t i = 0; i < parted.openings.size(); ++i) {
            const Opening &opening = parted.openings[i], &before = unbroken.openings[i];
            if (opening.kind != Opening::Kind::under_rail || *opening.tread < 1 || *opening.tread > 4) continue;
            std::vector<double> on_tread;
            for (const RailFoot& foot : parted.feet)
                if (const double x = foot.at - 3.25 - 11 * (*opening.tread - 1); x > 0 && x < 11) on_tread.push_back(x);
            if (on_tread.size() > 1) continue;
            INFO("tread " << *opening.tread << ", feet every " << every);
            double widest = before.sphere;
            if (!on_tread.empty()) {
                const double lower = 0.5 + slope * (on_tread[0] - 0.75), room = 12 - on_tread[0] - 0.75;
                const double in_front = lower * (1 + 1 / slope - std::sqrt(1 + 1 / (slope * slope)));
                widest = std::fmax(in_front, std::fmin(before.sphere, room));
                in_front_of_it += in_front > room;
                squeezed += in_front < room && room < before.sphere;
            }
            CHECK_THAT(opening.sphere, within(widest, 1e-12));
        }
    }
    CHECK(in_front_of_it > 0);
    CHECK(squeezed > 0);
}

// The ball between a foot and the riser over a plate: as over a closed riser where the riser is not what stops it.
TEST_CASE("a foot parts the opening between open risers", "[foot][opening]") {
    Job job = even_example(with_feet(12));
    job.builds[0].lower_gap = LowerGap{0.5, false};
    job.stairs[0].riser = RiserKind::open;
    job.stairs[0].tread_thickness = Reading(1);
    Solution parted = solve(job);
    measure_openings(job, parted);
    job.builds[0].feet.reset();
    Solution unbroken = solve(job);
    measure_openings(job, unbroken);
    int smaller = 0;
    const std::vector<Opening>&with = parted.sections[0].openings, &without = unbroken.sections[0].openings;
    REQUIRE(with.size() == without.size());
    for (std::size_t i = 0; i < with.size(); ++i) {
        CHECK(with[i].sphere <= without[i].sphere + 1e-12);
        smaller += with[i].sphere < without[i].sphere - 1e-9;
    }
    CHECK(smaller > 0);
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
