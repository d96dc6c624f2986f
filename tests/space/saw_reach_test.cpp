#include <cmath>
#include <limits>

#include "../../solver/sawing.hpp"
#include "../support/even_example.hpp"
#include "../support/near.hpp"

namespace rakewright::tests {
namespace {

double tangent(double angle_deg) { return std::tan(angle_deg * M_PI / 180); }

constexpr double unlimited = std::numeric_limits<double>::infinity();

SawLimits saw(double miter_deg, double bevel_deg, std::optional<double> depth = {}) {
    return {tangent(miter_deg), tangent(bevel_deg), depth};
}

/// The end of a stick that is raked in its own plane: a bevel on the flat, a miter on edge.
EndCut raked(double rake_deg) { return {{0, tangent(rake_deg)}, {tangent(rake_deg), 0}, {0, 1}}; }

constexpr CrossSection two_by_three{2.5, 1.5};

LaidOn laid(const EndCut& cut, const SawLimits& limits, const CrossSection& section = two_by_three) {
    return saw_reach(cut, section, limits).laid;
}

int ends_out_of_reach(const Solution& solution) {
    int ends = 0;
    for (const Finding& finding : solution.findings)
        if (finding.trouble == Trouble::out_of_saws_reach) ends += static_cast<int>(finding.numbers[0]);
    return ends;
}

}  // namespace

TEST_CASE("flat where the saw tilts so far, else on edge, else held square to the fence", "[saw]") {
    CHECK(laid(raked(33), saw(50, 45)) == LaidOn::flat);
    CHECK(laid(raked(48), saw(50, 45)) == LaidOn::edge);
    CHECK(laid(raked(55), saw(50, 45)) == LaidOn::edge_against_block);
    CHECK(laid(raked(39), saw(50, 38)) == LaidOn::edge);
    // 60 off square is 30 off the line of the fence.
    const SawReach steep = saw_reach(raked(60), two_by_three, saw(50, 45));
    CHECK(steep.laid == LaidOn::edge_against_block);
    CHECK_THAT(degrees(angle_of(steep.setting.miter)), within(30, 1e-13));
    CHECK(steep.setting.bevel == 0);
    // A saw that neither swings to the cut nor to its complement.
    CHECK(laid(raked(45), saw(40, 40)) == LaidOn::none);
    // Mitered flat: a level rail on a turned post.
    const EndCut turned{{tangent(62), 0}, {0, tangent(62)}, {1, 0}};
    CHECK(laid(turned, saw(50, 45)) == LaidOn::flat_against_block);
}

TEST_CASE("a setting equal to its limit is in reach, typed as degrees or as a slope", "[saw]") {
    CHECK(laid(raked(45), {unlimited, slope(angle_from_degrees(45)), {}}) == LaidOn::flat);
    for (const double limit : {31.6, 22.5, 33.4}) {
        const double typed = slope(angle_from_degrees(limit));
        CHECK(laid({{0, typed}, {typed, 0}, {}}, {typed, 0, {}}) == LaidOn::edge);
        CHECK(laid({{0, -typed}, {-typed, 0}, {}}, {0, typed, {}}) == LaidOn::flat);
        CHECK(laid({{0, typed * 1.0001}, {typed * 1.0001, 0}, {}}, {0, typed, {}}) == LaidOn::none);
    }
    // A blade that does not tilt cuts what is off by the rounding of doubles.
    CHECK(laid({{0.2, 1e-17}, {1e-17, 0.2}, {}}, saw(50, 0)) == LaidOn::flat);
}

TEST_CASE("both settings of a compound cut have to be in reach together", "[saw]") {
    const EndCut crown{{tangent(31.62), tangent(33.86)}, {tangent(38), tangent(29)}, {1, 1}};
    CHECK(laid(crown, saw(50, 34)) == LaidOn::flat);
    CHECK(laid(crown, saw(50, 33)) == LaidOn::edge);
    CHECK(laid(crown, saw(31, 34)) == LaidOn::none);  // on edge it swings too far, and 52 from the fence
}

TEST_CASE("a piece is no thicker, as it lies, than the blade reaches over the table", "[saw]") {
    const EndCut square{{0, 0}, {0, 0}, {}};
    CHECK(laid(square, saw(50, 45, 1.5)) == LaidOn::flat);
    CHECK(laid(square, saw(50, 45, 1.499)) == LaidOn::none);
    CHECK(laid(square, saw(50, 45, 1.5), {1, 3.5}) == LaidOn::edge);
    // Tilted to 3-4-5: four fifths of the depth are left.
    const EndCut tilted{{0, 0.75}, {0.75, 0}, {0, 1}};
    CHECK(laid(tilted, saw(20, 45, 1.875)) == LaidOn::flat);
    CHECK(laid(tilted, saw(20, 45, 1.874)) == LaidOn::none);
    CHECK(laid(tilted, saw(37, 45, 2.5), {2.5, 2.01}) == LaidOn::edge);  // the blade stands plumb on edge
}

TEST_CASE("a job's saw: a key that is left out is no limit", "[saw]") {
    Job job = even_example();
    CHECK_FALSE(saw_limits(job));
    job.saw.emplace();
    CHECK(saw_limits(job)->miter == unlimited);
    CHECK(saw_limits(job)->bevel == unlimited);
    CHECK_FALSE(saw_limits(job)->depth_of_cut);
    CHECK(ends_out_of_reach(solve(job)) == 0);
    job.saw->largest_bevel = in_degrees(0);
    CHECK(saw_limits(job)->bevel == 0);
    job.saw->largest_miter = in_degrees(33.3);  // the rake is 33.39, and 56.61 from the fence
    const Solution solution = solve(job);
    CHECK_FALSE(solution.refused());
    // Three members and every picket, at both ends.
    CHECK(ends_out_of_reach(solution) == 2 * (3 + solution.sections[0].pickets->count));
    job.saw->largest_miter = in_degrees(33.4);
    CHECK(ends_out_of_reach(solve(job)) == 0);
}

TEST_CASE("square feet of pickets on treads are cut where their heads are not", "[saw]") {
    Job job = even_example(open_build());
    job.saw = Saw{in_degrees(10), in_degrees(10), {}};
    const Solution solution = solve(job);
    CHECK(ends_out_of_reach(solution) == 2 + solution.sections[0].pickets->count);
}

TEST_CASE("an end that is coped is cut by its template, and not counted", "[saw]") {
    Job job = even_example();
    job.builds[0].pickets.reset();
    job.posts[0].shape = PostShape::round;
    job.posts[0].size = {6, 6, "", {}};
    job.saw = Saw{in_degrees(10), in_degrees(10), {}};
    CHECK(ends_out_of_reach(solve(job)) == 3);
}

}  // namespace rakewright::tests
