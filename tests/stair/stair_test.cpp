#include "../../solver/stair/stair.hpp"

#include <cmath>
#include <functional>

#include "../support/even_example.hpp"
#include "../support/near.hpp"

namespace rakewright::tests {
namespace {

StairShape shape_without_findings(const Stair& stair) {
    std::vector<Finding> findings;
    StairShape shape = shape_of(stair, findings);
    REQUIRE(findings.empty());
    return shape;
}

double rake_deg(const StairShape& shape) { return degrees(angle_of(shape.line->slope)); }

/// Five risers that differ, of our own invention.
Stair uneven(LineThrough line) {
    return measured_stair({7.25, 7.5, 7, 7.375, 7.125}, {11, 10.75, 11.125, 10.875}, line);
}

void check_off_line(const StairShape& shape, const std::vector<double>& expected, double absolute) {
    REQUIRE(shape.nosings.size() == expected.size());
    for (std::size_t i = 0; i < expected.size(); ++i) {
        INFO("nosing " << i + 1);
        CHECK_THAT(shape.nosings[i].off_line, within(expected[i], absolute));
    }
}

Trouble refusal_of(const Stair& stair) {
    std::vector<Finding> findings;
    const StairShape shape = shape_of(stair, findings);
    REQUIRE(findings.size() == 1);
    CHECK(shape.nosings.empty());
    return findings.front().trouble;
}

}  // namespace

TEST_CASE("an even stair: nosing i at (i - 1) runs and i rises", "[stair]") {
    const StairShape shape = shape_without_findings(even_stair());
    REQUIRE(shape.risers() == 5);
    for (int i = 1; i <= 5; ++i) {
        CHECK(shape.nosing(i).x == (i - 1) * 11.0);
        CHECK(shape.nosing(i).z == i * 7.25);
        CHECK(shape.nosing(i).off_line == 0);
        CHECK(shape.nosing(i).projection == 1);
    }
    CHECK(shape.rise_total() == 36.25);
    CHECK(shape.run_total() == 44);
    CHECK(shape.line->height == 7.25);
    CHECK(shape.line->slope == 7.25 / 11);
    CHECK_THAT(rake_deg(shape), within(33.389, 5.1e-4));  // derived: atan(7.25/11)
}

TEST_CASE("all fourteen ways to give one even stair agree", "[stair]") {
    // A rise of 7 1/2 on 10 is a 3-4-5 triangle: 12 1/2 along the line. Butted at the riser a tape reads 11 under a
    // nosing of 1.
    struct Figures {
        double rise, run, slope;
    };
    const Figures stairs[] = {
        {7.5, 10, 12.5}, {7.25, 11, std::sqrt(7.25 * 7.25 + 121)}, {178, 279, std::sqrt(178.0 * 178 + 279 * 279)}};
    for (const Figures& f : stairs) {
        using Give = std::function<void(Stair&)>;
        const Give rise = [&](Stair&s) { s.rise = Reading(f.rise); },
                   total_rise = [&](Stair&s) { s.total_rise = Reading(6 * f.rise); },
                   run = [&](Stair&s) { s.run = Reading(f.run); },
                   tread = [&](Stair&s) { s.tread = Reading(f.run + 1); },
                   rake =
                       [&](Stair&s) {
                           s.rake = AngleReading{Angle{f.rise, f.run}, {}};
                       },
                   along = [&](Stair&s) { s.nosing_to_nosing = Reading(f.slope); };
        const std::pair<Give, Give> ways[] = {
            {rise, run},         {rise, tread},      {rise, rake},        {rise, along}, {total_rise, run},
            {total_rise, tread}, {total_rise, rake}, {total_rise, along}, {run, rake},   {run, along},
            {tread, rake},       {tread, along},     {rake, along}};
        std::vector<Stair> given;
        for (const auto& [first, second] : ways) {
            Stair& stair = given.emplace_back();
            stair.risers = Count(6);
            stair.nosing = 1;
            first(stair);
            second(stair);
        }
        given.push_back(
            measured_stair(std::vector<double>(6, f.rise), std::vector<double>(5, f.run)));  // the fourteenth
        REQUIRE(given.size() == 14);
        for (std::size_t way = 0; way < given.size(); ++way) {
            INFO("way " << way << ", rise " << f.rise);
            const StairShape shape = shape_without_findings(given[way]);
            REQUIRE(shape.risers() == 6);
            for (int i = 1; i <= 6; ++i) {
                CHECK_THAT(shape.nosing(i).x, within((i - 1) * f.run, 6 * f.run * 4e-15));
                CHECK_THAT(shape.nosing(i).z, within(i * f.rise, 6 * f.rise * 4e-15));
                CHECK_THAT(shape.nosing(i).off_line, within(0, 6 * f.rise * 4e-15));
            }
            CHECK_THAT(shape.line->slope, within(f.rise / f.run, 4e-15));
        }
    }
}

TEST_CASE("a rake in degrees gives the same stair as its slope", "[stair]") {
    Stair stair;
    stair.risers = Count(6);
    stair.run = Reading(10);
    stair.rake = in_degrees(std::atan(0.75) * 180 / M_PI);
    CHECK_THAT(shape_without_findings(stair).nosing(1).z, within(7.5, 2e-14));
}

TEST_CASE("a tread is taped to the next riser's face, under the next nosing", "[stair]") {
    // docs/job-file.md: run i = tread i less the projection of nosing i + 1. The second step has a nosing of its own.
    Stair stair = measured_stair({7.125, 7.375, 7.25}, {10.875});
    stair.nosing = 1;
    stair.steps[1].tread = Reading(12);
    stair.steps[1].nosing = Reading(0.875);
    const StairShape shape = shape_without_findings(stair);
    CHECK(shape.nosing(2).x == 10.875);
    CHECK(shape.nosing(3).x == 21.875);  // 12 less 1, the third's nosing
    CHECK(shape.nosing(2).projection == 0.875);
    CHECK(shape.nosing(3).projection == 1);
    stair.steps[2].nosing = Reading(1.5);
    CHECK(shape_without_findings(stair).nosing(3).x == 21.375);
}

TEST_CASE("tread-as-taped typed as run gives another stair", "[stair]") {
    // Derived: atan(7.25/12) is 31.14 deg in place of atan(7.25/11), 33.39.
    Stair stair = even_stair();
    stair.run = Reading(12);
    CHECK_THAT(rake_deg(shape_without_findings(stair)), within(31.14, 5.1e-3));
    stair.run.reset();
    stair.tread = Reading(12);
    CHECK_THAT(rake_deg(shape_without_findings(stair)), within(33.39, 5.1e-3));
}

TEST_CASE("one riser: the two figures give the line", "[stair]") {
    Stair stair = even_stair();
    stair.risers = Count(1);
    const StairShape shape = shape_without_findings(stair);
    REQUIRE(shape.risers() == 1);
    REQUIRE(shape.line.has_value());
    CHECK(shape.line->slope == 7.25 / 11);
    CHECK(shape.run_total() == 0);
}

TEST_CASE("a single measured step has a nosing and no line", "[stair]") {
    const StairShape shape = shape_without_findings(measured_stair({7.25}, {}));
    CHECK(shape.risers() == 1);
    CHECK_FALSE(shape.line.has_value());
}

TEST_CASE("steps that differ: the minimax line", "[stair]") {
    // Derived: the Chebyshev line of the five nosings, found by trying every pair of them at 30 digits: 33.54 deg, off
    // -0.104 +0.104 -0.021 -0.021 -0.104.
    const StairShape shape = shape_without_findings(uneven(LineThrough::minimax));
    CHECK(shape.nosing(2).x == 11);
    CHECK(shape.nosing(5).x == 43.75);
    CHECK(shape.nosing(5).z == 36.25);
    CHECK_THAT(rake_deg(shape), within(33.54, 5.1e-3));
    check_off_line(shape, {-0.104, 0.104, -0.021, -0.021, -0.104}, 5.1e-4);
    CHECK_THAT(rake_deg(shape), within(33.5386919745886950, 1e-13));
    CHECK_THAT(shape.line->slope, within(29 / 43.75, 1e-15));
    check_off_line(
        shape, {-0.1042857142857143, 0.1042857142857143, -0.0214285714285714, -0.0207142857142857, -0.1042857142857143},
        1e-14);
    CHECK(shape.held_by == LineHolders{1, 5, 2});
}

TEST_CASE("steps that differ: the straightedge rests on 2 and 4", "[stair]") {
    const StairShape shape = shape_without_findings(uneven(LineThrough::straightedge));
    CHECK(shape.held_by == LineHolders{2, 4, 0});
    // Derived: the edge of the upper hull that lies over the middle, tried over every pair of nosings.
    CHECK_THAT(rake_deg(shape), within(33.31, 5.1e-3));
    CHECK_THAT(shape.line->slope, within(14.375 / 21.875, 1e-15));
    for (const Nosing& nosing : shape.nosings) CHECK(nosing.off_line <= 1e-14);
    CHECK_THAT(shape.nosing(2).off_line, within(0, 1e-14));
    CHECK_THAT(shape.nosing(4).off_line, within(0, 1e-14));
    CHECK_THAT(shape.nosing(1).off_line, within(-0.27142857142857, 1e-13));
}

TEST_CASE("steps that differ: first and last nosing, and least squares", "[stair]") {
    const StairShape ends = shape_without_findings(uneven(LineThrough::ends));
    CHECK_THAT(ends.line->slope, within(29 / 43.75, 1e-15));
    CHECK(ends.line->height == 7.25);
    check_off_line(ends, {0, 0.2085714285714286, 0.0828571428571429, 0.0835714285714286, 0}, 1e-14);
    // The normal equations, at 30 digits.
    const StairShape fit = shape_without_findings(uneven(LineThrough::fit));
    CHECK_THAT(fit.line->slope, within(0.66172091322292461, 1e-15));
    check_off_line(fit, {-0.09985502325, 0.1212149313, 0.007715114153, 0.02106995455, -0.05014497675}, 5.1e-11);
}

TEST_CASE("no line comes closer to the farthest nosing than the minimax line", "[stair]") {
    const StairShape shape = shape_without_findings(uneven(LineThrough::minimax));
    const auto farthest = [&](double height, double slope) {
        double off = 0;
        for (const Nosing& nosing : shape.nosings) off = std::max(off, std::fabs(nosing.z - height - slope * nosing.x));
        return off;
    };
    const double best = farthest(shape.line->height, shape.line->slope);
    for (int h = -20; h <= 20; ++h)
        for (int s = -20; s <= 20; ++s)
            CHECK(farthest(shape.line->height + h * 0.003, shape.line->slope + s * 0.0002) >= best - 1e-13);
}

TEST_CASE("the straightedge takes the upper of two edges that meet over the middle", "[stair]") {
    // Three nosings, the middle one proud and exactly half-way: the edges are 1-2 and 2-3. At equality it
    // is the upper one.
    const StairShape shape = shape_without_findings(measured_stair({7, 8, 7}, {10, 10}, LineThrough::straightedge));
    CHECK(shape.held_by == LineHolders{2, 3, 0});
    CHECK_THAT(shape.line->slope, within(0.7, 1e-15));
    // A hair before the middle: the upper edge lies over it. A hair behind it: the lower one.
    CHECK(shape_without_findings(measured_stair({7, 8, 7}, {9.99, 10}, LineThrough::straightedge)).held_by ==
          LineHolders{2, 3, 0});
    CHECK(shape_without_findings(measured_stair({7, 8, 7}, {10, 9.99}, LineThrough::straightedge)).held_by ==
          LineHolders{1, 2, 0});
    // A middle nosing that hangs does not touch: the straightedge bridges it.
    CHECK(shape_without_findings(measured_stair({7, 7, 8}, {10, 10}, LineThrough::straightedge)).held_by ==
          LineHolders{1, 3, 0});
}

TEST_CASE("the line goes on beyond the flight, and choices once made are kept", "[stair]") {
    const StairShape shape = shape_without_findings(even_stair());
    CHECK_THAT(shape.line->at(-11), within(0, 1e-15));
    CHECK_THAT(shape.line->at(55), within(43.5, 1e-14));
    std::vector<Finding> findings;
    const StairShape held = shape_of(uneven(LineThrough::minimax), {2, 4, 0}, findings);
    CHECK_THAT(held.line->slope, within(14.375 / 21.875, 1e-15));  // not searched for again
}

TEST_CASE("exactly over a nosing the upper tread is underfoot", "[stair]") {
    const StairShape shape = shape_without_findings(even_stair());
    CHECK(tread_under(shape, -100) == 0);
    CHECK(tread_under(shape, -0.001) == 0);
    CHECK(tread_under(shape, 0) == 1);
    CHECK(tread_under(shape, 10.999) == 1);
    CHECK(tread_under(shape, 11) == 2);
    CHECK(tread_under(shape, 44) == 5);
    CHECK(tread_under(shape, 1000) == 5);
    CHECK(tread_height(shape, 0) == 0);
    CHECK(tread_height(shape, 1) == 7.25);
    CHECK(tread_height(shape, 5) == 36.25);
}

TEST_CASE("over a nosing but for the rounding of doubles is over it", "[stair]") {
    Stair stair = even_stair();
    stair.run = Reading(0.1);  // 3 * 0.1 is not 0.3
    const StairShape shape = shape_without_findings(stair);
    CHECK(shape.nosing(4).x != 0.3);
    CHECK(tread_under(shape, 0.3) == 4);
}

TEST_CASE("stairs that cannot be are refused", "[stair]") {
    Stair steep = even_stair();
    steep.run.reset();
    steep.nosing_to_nosing = Reading(7.25);
    CHECK(refusal_of(steep) == Trouble::slope_not_longer);

    Stair no_tread = even_stair();
    no_tread.run.reset();
    no_tread.tread = Reading(1);
    CHECK(refusal_of(no_tread) == Trouble::no_run_left);

    CHECK(refusal_of(measured_stair({7, 7, 7}, {10})) == Trouble::step_without_run);
    CHECK(refusal_of(measured_stair({7, 7}, {10, 10})) == Trouble::last_step_with_run);

    Stair both = measured_stair({7, 7}, {10});
    both.steps[0].tread = Reading(11);
    CHECK(refusal_of(both) == Trouble::step_with_two_runs);

    Stair hidden = measured_stair({7, 7}, {});
    hidden.steps[0].tread = Reading(1);
    hidden.nosing = 1.5;
    CHECK(refusal_of(hidden) == Trouble::no_run_left);
}

TEST_CASE("all that is wrong with measured steps is found in one go", "[stair]") {
    Stair stair = measured_stair({7, 7, 7}, {});
    stair.steps[2].run = Reading(10);
    std::vector<Finding> findings;
    CHECK(shape_of(stair, findings).nosings.empty());
    REQUIRE(findings.size() == 3);
    CHECK(findings[0].trouble == Trouble::step_without_run);
    CHECK(findings[0].numbers[0] == 1);
    CHECK(findings[1].numbers[0] == 2);
    CHECK(findings[2].trouble == Trouble::last_step_with_run);
}

}  // namespace rakewright::tests
