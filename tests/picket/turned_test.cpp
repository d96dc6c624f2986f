#include "../../solver/picket/turned.hpp"

#include <cmath>

#include "../identities/jobs.hpp"
#include "../support/near.hpp"
#include "../support/turned_build.hpp"

namespace rakewright::tests {
namespace {

Pickets pickets_of_job(const Job& job) {
    const Solution solution = solve(job);
    REQUIRE_FALSE(solution.refused());
    return solution.sections.front().pickets.value();
}

Trim trim_of_piece(const PicketPiece& piece) {
    REQUIRE(piece.trim);
    return *piece.trim;
}

/// Three treads on runs of 11 whose nosings stand 0, 1/6 and 1/12 over the line through the first and the last.
Job uneven_job() {
    Job job = even_example(turned_open_build(shaft(1)));
    job.stairs[0] = measured_stair({7, 7.5, 7.25, 7.25}, {11, 11, 11}, LineThrough::ends);
    job.builds[0].pickets->per_tread = Count(1);
    return job;
}

const Finding& only(const Solution& solution) {
    REQUIRE(solution.findings.size() == 1);
    return solution.findings.front();
}

}  // namespace

TEST_CASE("between two groups as much is trimmed off one block as off the other", "[picket][turned]") {
    Job job = even_example(turned_build(shaft(1)));
    job.builds[0].pickets->plough = {0.25, 0.125};
    const double lengthened = std::sqrt(1 + even_slope * even_slope);
    // 36 less all depths plumb less the gap of 2, and the ploughs plumb.
    const double centre = 34 - 4.25 * lengthened + 0.375 * lengthened, off = (turned_length - centre) / 2;
    const Pickets pickets = pickets_of_job(job);
    REQUIRE(pickets.pieces.size() == 1);
    const Trim trim = trim_of_piece(pickets.pieces[0]);
    CHECK_THAT(trim.off_lower, within(off, 1e-12));
    CHECK_THAT(trim.off_upper, within(off, 1e-12));
    CHECK_THAT(trim.lower_block, within(turned_lower - off, 1e-12));
    CHECK_THAT(trim.upper_block, within(turned_upper - off, 1e-12));
    CHECK_THAT(trim.lower_block + turned_span + trim.upper_block, within(pickets.pieces[0].uphill_side, 1e-12));
}

TEST_CASE("what is kept of the upper block is kept, and the lower one gives the rest", "[picket][turned]") {
    for (const bool open : {false, true}) {
        Job job = floor_example(60, open ? turned_open_build(shaft(1)) : turned_build(shaft(1)));
        job.builds[0].pickets->plough.upper = 0.25;
        job.builds[0].pickets->upper_block = Reading(6);
        const double centre = 0.25 + (open ? 36 - 2.5 : 36 - 2.75 - 2 - 1.5);
        const Trim trim = trim_of_piece(pickets_of_job(job).pieces.at(0));
        CHECK_THAT(trim.upper_block, within(6.25, 1e-12));
        CHECK_THAT(trim.off_upper, within((open ? turned_open_upper : turned_upper) - 6.25, 1e-12));
        CHECK_THAT(trim.lower_block, within(centre - turned_span - 6.25, 1e-12));
        CHECK_THAT(trim.off_lower,
                   within((open ? turned_open_length : turned_length) - centre - trim.off_upper, 1e-12));
    }
}

TEST_CASE("on the treads of an uneven stair the lower blocks take up what the nosings are off the line",
          "[picket][turned]") {
    const Pickets pickets = pickets_of_job(uneven_job());
    REQUIRE(pickets.count == 3);
    REQUIRE(pickets.pieces.size() == 3);
    // Slope 2/3; the rail is 2 1/2 deep, and a picket's centre stands 7/8 behind its nosing, where the line is 7/12
    // higher.
    const double longest = 36 - 2.5 * std::sqrt(13.0) / 3 + 7.0 / 12;
    const double shorter[] = {0, 1.0 / 6, 1.0 / 12};
    for (std::size_t i = 0; i < 3; ++i) {
        const PicketPiece& piece = pickets.pieces[i];
        const Trim trim = trim_of_piece(piece);
        CHECK_THAT((piece.uphill_side + piece.downhill_side) / 2, within(longest - shorter[i], 1e-12));
        CHECK_THAT(trim.off_lower, within(shorter[i], 1e-12));
        CHECK_THAT(trim.lower_block, within(turned_lower - shorter[i], 1e-12));
        CHECK_THAT(trim.off_upper, within(turned_open_length - longest, 1e-12));
        CHECK_THAT(trim.upper_block, within(turned_open_upper - turned_open_length + longest, 1e-12));
    }
}

TEST_CASE("in millimetres the same is trimmed", "[picket][turned]") {
    const Job job = uneven_job();
    Job metric = scaled(job, 25.4);
    metric.units = Unit::millimetre;
    const Pickets inches = pickets_of_job(job), millimetres = pickets_of_job(metric);
    REQUIRE(inches.pieces.size() == millimetres.pieces.size());
    for (std::size_t i = 0; i < inches.pieces.size(); ++i)
        for (double Trim::*part : {&Trim::lower_block, &Trim::upper_block, &Trim::off_lower, &Trim::off_upper})
            CHECK_THAT((*millimetres.pieces[i].trim).*part, within((*inches.pieces[i].trim).*part * 25.4, 1e-10));
}

TEST_CASE("the turnings of a rake run along the rail: what is over them is alike, swapped ends or not",
          "[picket][turned]") {
    Job job = uneven_job();
    const Pickets there = pickets_of_job(job);
    std::swap(job.sections[0].from, job.sections[0].to);
    const Pickets back = pickets_of_job(job);
    for (std::size_t i = 0; i < 3; ++i) {
        CHECK_THAT(there.pieces[i].trim->upper_block, within(there.pieces[0].trim->upper_block, 1e-12));
        CHECK_THAT(back.pieces[2 - i].trim->upper_block, within(there.pieces[i].trim->upper_block, 1e-12));
        CHECK_THAT(back.pieces[2 - i].trim->lower_block, within(there.pieces[i].trim->lower_block, 1e-12));
    }
}

TEST_CASE("a block trimmed too short says which, of which picket, and by how much", "[picket][turned]") {
    Job job = uneven_job();
    job.builds[0].pickets->least_block = Reading(8.9);
    // Of the upper block there is less still.
    const Solution both = solve(job);
    REQUIRE(both.findings.size() == 2);
    CHECK(both.findings[0].numbers[0] == 0);
    const Finding lower = both.findings[1];
    CHECK(lower.trouble == Trouble::too_little_block);
    CHECK(lower.section == 0);
    CHECK(lower.numbers[0] == 1);
    CHECK_THAT(lower.numbers[1], within(turned_lower - 1.0 / 6, 1e-12));
    CHECK(lower.numbers[2] == 8.9);
    CHECK(lower.numbers[3] == 2);

    // Of the upper block its short side counts: 7/8 downhill of the centre, 7/12 shorter on a slope of 2/3.
    job = uneven_job();
    const double left = turned_open_upper - turned_open_length + 36 - 2.5 * std::sqrt(13.0) / 3 + 7.0 / 12 - 7.0 / 12;
    job.builds[0].pickets->least_block = Reading(left);
    CHECK_FALSE(solve(job).refused());
    job.builds[0].pickets->least_block = Reading(left + 1e-6);
    CHECK(only(solve(job)).numbers[0] == 0);

    // What stands in a plough is not seen.
    job.builds[0].pickets->least_block = Reading(left);
    job.builds[0].pickets->plough.upper = 0.5;
    CHECK_FALSE(solve(job).refused());
    job = floor_example(60, turned_build(shaft(1)));
    const double off = (turned_length - 29.75 - 0.5) / 2;
    job.builds[0].pickets->plough.upper = 0.5;
    job.builds[0].pickets->least_block = Reading(turned_upper - off - 0.5);
    CHECK_FALSE(solve(job).refused());
    job.builds[0].pickets->least_block = Reading(turned_upper - off - 0.5 + 1e-6);
    CHECK(only(solve(job)).trouble == Trouble::too_little_block);
}

TEST_CASE("a stick must be as long as its picket from tip to tip", "[picket][turned]") {
    Job job = even_example(turned_build(shaft(1)));
    const double lengthened = std::sqrt(1 + even_slope * even_slope);
    const double whole = 34 - 4.25 * lengthened + turned_width * even_slope;
    const auto bought = [&](double length) {
        job.builds[0].pickets->length = Reading(length);
        job.builds[0].pickets->turning = {{1, 1}};
        return solve(job);
    };
    CHECK_FALSE(bought(whole).refused());
    const Finding short_stick = only(bought(whole - 1e-6));
    CHECK(short_stick.trouble == Trouble::picket_too_short);
    CHECK_THAT(short_stick.numbers[1], within(whole, 1e-12));
}

TEST_CASE("without a place for the posts the turnings of pickets on treads hang from the rail", "[picket][turned]") {
    Job job = floor_example(60, turned_open_build(shaft(1)));
    job.stairs = {even_stair()};
    job.sections[0].stair = ref(0);
    CHECK(only(solve(job)).trouble == Trouble::turning_height_unknown);
    job.builds[0].pickets->upper_block = Reading(5);
    const Solution solution = solve(job);
    CHECK_FALSE(solution.refused());
    CHECK(solution.sections[0].pickets->pieces.empty());
}

}  // namespace rakewright::tests
