#include "../../solver/opening/opening.hpp"

#include <cmath>

#include "../support/even_example.hpp"
#include "../support/near.hpp"

namespace rakewright::tests {
namespace {

/// Rise, run, nosing, and the plumb gap under the lower rail.
struct Steps {
    double rise, run, nosing, gap;

    /// The ball under the lower rail, derived: the incircle of a right triangle, R + T - sqrt(R^2 + T^2), grown by the
    /// gap c and the nosing n as the triangle grows, 1 + c/R + n/T.
    double ball() const {
        return (rise + run - std::sqrt(rise * rise + run * run)) * (1 + gap / rise + nosing / run);
    }
};

std::vector<Opening> under_rail(const Steps& steps) {
    Job job = even_example();
    job.stairs[0].rise = Reading(steps.rise);
    job.stairs[0].run = Reading(steps.run);
    job.stairs[0].nosing = steps.nosing;
    job.sections[0].lower_gap = LowerGap{steps.gap, false};
    Solution solution = solve(job);
    REQUIRE_FALSE(solution.refused());
    measure_openings(job, solution);
    std::vector<Opening> under;
    for (const Opening& opening : solution.sections[0].openings)
        if (opening.kind == Opening::Kind::under_rail) under.push_back(opening);
    return under;
}

double over_tread(const Steps& steps, int tread) {
    for (const Opening& opening : under_rail(steps))
        if (opening.tread == tread) return opening.sphere;
    FAIL("no opening over tread " << tread);
    return 0;
}

}  // namespace

// The circle in closed form (see Steps::ball): a rail on the nosings, one with a nosing, then rails raised until it
// is 6.
TEST_CASE("the ball under the lower rail of a stair", "[opening]") {
    CHECK_THAT(over_tread({7, 11, 0, 1e-9}, 2), within(4.9615952, 5e-7));
    CHECK_THAT(over_tread({7.75, 10, 0, 1e-9}, 2), within(5.0984191, 5e-7));
    CHECK_THAT(over_tread({7, 11, 1.25, 1e-9}, 2), within(5.5254128, 5e-7));
    CHECK_THAT(over_tread({7, 11, 0, 1.46502}, 3), within(6, 5e-5));
    CHECK_THAT(over_tread({7, 11, 1.25, 0.669565}, 3), within(6, 5e-6));
    // Likewise: lower gap 2 on the even example is 6.937 at each tread; 7 1/2 on 10 with a nosing of 1 and 0.750 is 6
    // exactly (3-4-5).
    for (int tread = 1; tread <= 4; ++tread) CHECK_THAT(over_tread({7.25, 11, 1, 2}, tread), within(6.937, 5e-4));
    CHECK_THAT(over_tread({7.5, 10, 1, 0.75}, 2), within(6, 1e-12));
    for (const Steps& steps : {Steps{7, 11, 1, 0.5}, Steps{7.5, 10, 0.75, 0.25}, Steps{6.5, 12, 1.25, 0.6}})
        CHECK_THAT(over_tread(steps, 2), within(steps.ball(), 1e-12));
}

TEST_CASE("every tread that the rail covers has its opening, the floor and the landing too", "[opening]") {
    const std::vector<Opening> under = under_rail({7.25, 11, 1, 0.5});
    REQUIRE(under.size() == 6);
    for (int tread = 0; tread <= 5; ++tread) CHECK(under[static_cast<std::size_t>(tread)].tread == tread);
}

TEST_CASE("on steps that differ each tread has its own ball, as steps of its own would have", "[opening]") {
    Job job = even_example();
    job.stairs[0] = measured_stair({7, 7, 7, 8, 7}, {11, 11, 11, 11}, LineThrough::ends);
    job.stairs[0].nosing = 1;
    Solution solution = solve(job);
    REQUIRE_FALSE(solution.refused());
    measure_openings(job, solution);
    std::vector<double> balls;
    for (const Opening& opening : solution.sections[0].openings)
        if (opening.kind == Opening::Kind::under_rail) balls.push_back(opening.sphere);
    REQUIRE(balls.size() == 6);
    CHECK(balls[3] > balls[2]);
}

TEST_CASE("a gap between plumb pickets lets through a ball of its own width, raked or level", "[opening]") {
    Job job = even_example();
    Solution solution = solve(job);
    measure_openings(job, solution);
    const SectionResult& section = solution.sections[0];
    CHECK_THAT(section.openings[0].sphere, within(*section.pickets->gap, 1e-12));
    CHECK(section.openings[0].kind == Opening::Kind::picket_gap);
    CHECK_THAT(section.openings[1].sphere, within(section.pickets->from_gap, 1e-12));
    CHECK(section.openings[2].end == End::to);
}

TEST_CASE("between rails without pickets the ball is what stands between them, square to the rail", "[opening]") {
    Job job = even_example();
    job.builds[0].pickets.reset();
    Solution solution = solve(job);
    measure_openings(job, solution);
    const SectionResult& section = solution.sections[0];
    const double depths = 1.25 + 1.5 + 1.5, lengthened = std::sqrt(1 + even_slope * even_slope);
    const double plumb = 36 - job.builds[0].lower_gap->size - depths * lengthened;
    CHECK(section.openings[0].kind == Opening::Kind::post_gap);
    CHECK_THAT(section.openings[0].sphere, within(plumb / lengthened, 1e-11));
}

TEST_CASE("swapping the ends of a section changes no ball", "[opening]") {
    Job job = even_example();
    Solution there = solve(job);
    measure_openings(job, there);
    std::swap(job.sections[0].from, job.sections[0].to);
    Solution back = solve(job);
    measure_openings(job, back);
    for (const Opening& a : there.sections[0].openings)
        for (const Opening& b : back.sections[0].openings)
            if (a.kind == Opening::Kind::under_rail && a.tread == b.tread && b.kind == a.kind) CHECK_THAT(b.sphere, within(a.sphere, 1e-11));
}

}  // namespace rakewright::tests
