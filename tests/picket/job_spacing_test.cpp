#include <algorithm>
#include <cmath>

#include "../../solver/solve.hpp"
#include "../support/even_example.hpp"
#include "../support/near.hpp"
#include "../support/turned_build.hpp"

// The key `spacing`, through a whole job.

namespace rakewright::tests {
namespace {

/// A flight between two posts, and level sections of these clear distances.
Job porch(std::initializer_list<double> clears, const Build& build = square_build()) {
    Job job = even_example(build);
    for (const double clear : clears) job.sections.push_back(floor_example(clear).sections[0]);
    return job;
}

Job spaced(Job job, Spacing::By by) {
    job.spacing = Spacing();
    job.spacing->by = by;
    return job;
}

Solution solved(const Job& job) {
    Solution solution = solve(job);
    REQUIRE_FALSE(solution.refused());
    compare_spacings(job, solution);
    return solution;
}

std::vector<int> counts_of(const Solution& solution) {
    std::vector<int> counts;
    for (const SectionResult& section : solution.sections) counts.push_back(section.pickets->count);
    return counts;
}

const SpacingChoice& taken(const Solution& solution) {
    const auto found = std::find_if(solution.spacings.begin(), solution.spacings.end(),
                                    [](const SpacingChoice& choice) { return choice.taken; });
    REQUIRE(found != solution.spacings.end());
    return *found;
}

/// Widest less narrowest over every gap that was measured.
double spread_of(const Solution& solution) {
    double low = INFINITY, high = 0;
    for (const SectionResult& section : solution.sections) {
        const Pickets& pickets = *section.pickets;
        for (const double gap : {pickets.from_gap, pickets.to_gap, pickets.gap.value_or(pickets.from_gap)}) {
            low = std::min(low, gap);
            high = std::max(high, gap);
        }
    }
    return high - low;
}

}  // namespace

TEST_CASE("a job without spacing is as it was, and with `fewest` too", "[job][spacing]") {
    const Job job = porch({94.375, 31.25, 52});
    CHECK(counts_of(solved(job)) == counts_of(solved(spaced(job, Spacing::By::fewest))));
    CHECK(solved(job).spacings.empty());
    CHECK(solved(spaced(job, Spacing::By::fewest)).spacings.size() == 5);
}

TEST_CASE("alike: rake and level together, and what is compared is what is measured", "[job][spacing]") {
    const Job job = porch({94.375, 31.25, 52});
    const Solution fewest = solved(job), alike = solved(spaced(job, Spacing::By::alike));
    // By hand, gaps of (clear - 1 1/2 n) / (n + 1): flight 10: 3.1364; 20: 3.0655; 6: 3.1786; 11: 2.9583.
    CHECK(counts_of(alike) == std::vector<int>{10, 20, 6, 11});
    CHECK_THAT(spread_of(alike), within(22.25 / 7 - 35.5 / 12, 1e-12));
    CHECK(spread_of(alike) < spread_of(fewest));
    CHECK_THAT(taken(alike).spread(), within(spread_of(alike), 1e-12));
    CHECK(taken(alike).pickets == 47);
    for (const SpacedResult& section : taken(alike).sections)
        CHECK_THAT(
            *section.below,
            within(3.875 - alike.sections[static_cast<std::size_t>(section.section)].pickets->widest_gap, 1e-12));
}

TEST_CASE("a block: one gap everywhere, equal ends, taken back as a choice", "[job][spacing]") {
    Job job = spaced(porch({94.375, 31.25, 52}), Spacing::By::block);
    job.round = Reading(1.0 / 16);
    const Solution solution = solved(job);
    const double block = taken(solution).block.value();
    CHECK(block * 16 == std::floor(block * 16));
    for (const SectionResult& section : solution.sections) {
        const Pickets& pickets = *section.pickets;
        CHECK_THAT(pickets.gap.value(), within(block, 1e-12));
        CHECK_THAT(pickets.from_gap, within(pickets.to_gap, 1e-12));
        CHECK(pickets.from_gap >= block / 2 - 1e-12);
        CHECK(pickets.from_gap <= 3.875 + 1e-12);
    }
    job.spacing->block = Reading(3.25);
    const Solution given = solved(job);
    for (const SectionResult& section : given.sections) CHECK_THAT(section.pickets->gap.value(), within(3.25, 1e-12));
    Job plain = job;
    plain.spacing.reset();
    CHECK(counts_of(solve(plain, given.choices)) == counts_of(given));
    CHECK_THAT(solve(plain, given.choices).sections[1].pickets->gap.value(), within(3.25, 1e-12));
}

TEST_CASE("a limit on balls holds under every spacing", "[job][spacing]") {
    Build build = turned_build(shaft(1));
    build.pickets->max_gap.reset();
    build.pickets->max_sphere = Reading(4);
    for (const Spacing::By by : {Spacing::By::fewest, Spacing::By::alike, Spacing::By::block})
        for (const std::optional<Centre> centre : {std::optional<Centre>(), std::optional(Centre::picket)}) {
            Job job = spaced(porch({60, 38.5}, build), by);
            if (centre) job.spacing->centre = CentreWish{*centre, {}};
            job.spacing->least_gap = Reading(1.5);
            INFO(static_cast<int>(by));
            Solution solution = solve(job);
            REQUIRE_FALSE(solution.refused());
            measure_openings(job, solution);
            for (const SectionResult& section : solution.sections) {
                if (centre) CHECK(section.pickets->count % 2 == 1);
                for (const Opening& opening : section.openings)
                    if (opening.kind != Opening::Kind::under_rail) CHECK(opening.sphere < 4);
            }
        }
}

TEST_CASE("pickets on treads and at a pitch are left as they are", "[job][spacing]") {
    Job job = even_example(open_build());
    Build drilled = square_build();
    drilled.pickets->pitch = Reading(4.5);
    job.builds.push_back(drilled);
    job.builds.push_back(square_build());
    for (const int build : {1, 2, 2}) {
        job.sections.push_back(floor_example(52 + 3 * build).sections[0]);
        job.sections.back().build = ref(build);
    }
    const Solution plain = solved(job), alike = solved(spaced(job, Spacing::By::alike));
    CHECK(counts_of(alike)[0] == counts_of(plain)[0]);
    CHECK(counts_of(alike)[1] == counts_of(plain)[1]);
    CHECK(taken(alike).sections.size() == 2);
}

TEST_CASE("each section by its own limit and its own centre", "[job][spacing]") {
    Job job = spaced(porch({60, 45, 33}), Spacing::By::alike);
    job.sections[1].max_gap = Reading(3);
    job.sections[2].centre = CentreWish{Centre::picket, {}};
    job.sections[3].centre = CentreWish{Centre::gap, {}};
    const Solution solution = solved(job);
    CHECK(solution.sections[1].pickets->widest_gap <= 3 + 1e-12);
    CHECK(solution.sections[2].pickets->count % 2 == 1);
    CHECK(solution.sections[3].pickets->count % 2 == 0);
}

TEST_CASE("a fixed pitch heeds its section's centre, not the job's", "[job][spacing]") {
    // 130 apart, 16 wide, 35 at each post at the least: (640 - 16 - 70) / 130 = 4.26, so 5 pickets, and 4 for a gap.
    Build build = square_build();
    build.bracket.reset();
    build.pickets->width = 16;
    build.pickets->depth = 16;
    build.pickets->pitch = Reading(130);
    build.pickets->max_gap = Reading(114);
    build.pickets->least_end_gap = Reading(35);
    Job job = floor_example(640, build);
    job.units = Unit::millimetre;
    job.builds[0].height = 1000;
    CHECK(solved(job).sections[0].pickets->count == 5);
    job.spacing = Spacing{};
    job.spacing->by = Spacing::By::alike;
    job.spacing->centre = CentreWish{Centre::gap, {}};
    CHECK(solved(job).sections[0].pickets->count == 5);
    job.sections[0].centre = CentreWish{Centre::gap, {}};
    CHECK(solved(job).sections[0].pickets->count == 4);
}

TEST_CASE("every way that is compared keeps a section's own centre", "[job][spacing]") {
    Job job = spaced(porch({60, 45}), Spacing::By::block);
    job.spacing->centre = CentreWish{Centre::gap, {}};
    job.spacing->least_end_gap = Reading(1);
    job.sections[2].centre = CentreWish{Centre::picket, {}};
    Solution solution = solved(job);
    int rows = 0;
    for (const SpacingChoice& choice : solution.spacings)
        for (const SpacedResult& section : choice.sections) {
            if (section.section == 2)
                CHECK(section.pickets % 2 == 1);
            else if (choice.centre)
                CHECK((section.pickets % 2 == 1) == (*choice.centre == Centre::picket));
            rows += section.section == 2;
        }
    CHECK(rows >= 4);
}

TEST_CASE("what a spacing says without effect is told", "[job][spacing]") {
    Job job = spaced(porch({60, 45}), Spacing::By::fewest);
    CHECK_FALSE(has(solved(job), Trouble::least_gap_without_effect));
    job.spacing->least_end_gap = Reading(2);
    job.spacing->least_gap = Reading(3);
    CHECK(has(solved(job), Trouble::least_gap_without_effect));
    CHECK(has(solved(job), Trouble::least_end_gap_without_block));
    job.spacing->by = Spacing::By::alike;
    CHECK_FALSE(has(solved(job), Trouble::least_gap_without_effect));
    job.spacing->least_gap = Reading(5);  // no gap may be over 3 7/8
    CHECK(has(solved(job), Trouble::least_gap_without_effect));
}

TEST_CASE("the job's centre puts no picket where none is needed, a section's own does", "[job][spacing]") {
    for (const Spacing::By by : {Spacing::By::fewest, Spacing::By::alike, Spacing::By::block}) {
        Job job = spaced(porch({3.5, 60}), by);
        job.spacing->centre = CentreWish{Centre::picket, {}};
        CHECK(solved(job).sections[1].pickets->count == 0);
        for (const SpacingChoice& choice : solved(job).spacings)
            for (const SpacedResult& section : choice.sections) CHECK(section.section != 1);
        job.sections[1].centre = CentreWish{Centre::picket, {}};
        job.spacing->least_end_gap = Reading(1);
        CHECK(solved(job).sections[1].pickets->count == 1);
    }
}

TEST_CASE("a centre has its effect without any spacing, and says where it has none", "[job][spacing]") {
    Job job = even_example();
    job.sections[0].centre = CentreWish{Centre::gap, {}};
    CHECK(solved(job).sections[0].pickets->count == 10);  // nine would do
    Job on_treads = even_example(open_build());
    on_treads.sections[0].centre = CentreWish{Centre::gap, {}};
    CHECK(has(solved(on_treads), Trouble::centre_without_effect));
    Job panel = even_example();
    panel.builds[0].pickets.reset();
    panel.sections[0].centre = CentreWish{Centre::gap, {}};
    CHECK(has(solved(panel), Trouble::centre_without_effect));
}

TEST_CASE("vents are asked for where tubes are galvanised", "[job][shop]") {
    Job job = even_example();
    CHECK_FALSE(has(solve(job), Trouble::vent_tubes));
    job.builds[0].galvanised = true;
    CHECK_FALSE(has(solve(job), Trouble::vent_tubes));
    job.builds[0].tube = true;
    CHECK(has(solve(job), Trouble::vent_tubes));
    CHECK_FALSE(solve(job).refused());
}

}  // namespace rakewright::tests
