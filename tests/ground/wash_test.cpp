#include <cmath>

#include "../identities/every_result.hpp"
#include "../support/measured.hpp"
#include "../support/near.hpp"

namespace rakewright::tests {
namespace {

AngleReading in_so_much(double rise, double run) { return {{rise, run}, {}}; }

double ball_over(const SectionResult& section, int tread) {
    for (const Opening& opening : section.openings)
        if (opening.kind == Opening::Kind::under_rail && opening.tread == tread) return opening.sphere;
    FAIL("no opening over tread " << tread);
    return 0;
}

/// A corner of a triangle.
struct Corner2 {
    double x, z;
};

/// The incircle's diameter: four times the area over the way round.
double incircle(const Corner2& a, const Corner2& b, const Corner2& c) {
    const auto side = [](const Corner2& p, const Corner2& q) {
        return std::sqrt((p.x - q.x) * (p.x - q.x) + (p.z - q.z) * (p.z - q.z));
    };
    const double twice = std::fabs((b.x - a.x) * (c.z - a.z) - (b.z - a.z) * (c.x - a.x));
    return 2 * twice / (side(a, b) + side(b, c) + side(c, a));
}

/// The triangle over a tread that washes: the riser face behind it, the tread, and the underside of the rail, `gap`
/// over the nosings.
double ball_over_washed(double rise, double run, double nosing, double gap, double wash) {
    const double m = rise / run, riser = run + nosing, tip = -gap / (m - wash);
    return incircle({tip, wash * tip}, {riser, wash * riser}, {riser, gap + m * riser});
}

}  // namespace

TEST_CASE("a tread's surface rises from its nosing to the next riser face; floor and landing are level", "[wash]") {
    Stair stair = even_stair();
    stair.wash = in_so_much(0.25, 12);
    std::vector<Finding> findings;
    const StairShape shape = shape_of(stair, findings);
    CHECK(findings.empty());
    // Sums by hand: 12 / 48 up at the back of the tread, 11 + 1 behind its nosing.
    CHECK(surface_height(shape, 1, 0) == 7.25);
    CHECK_THAT(surface_height(shape, 1, 6), within(7.375, 1e-15));
    CHECK_THAT(surface_height(shape, 1, 12), within(7.5, 1e-15));
    CHECK_THAT(surface_height(shape, 1, 20), within(7.5, 1e-15));
    CHECK(surface_height(shape, 1, -3) == 7.25);
    CHECK(surface_height(shape, 0, -30) == 0);
    CHECK(surface_height(shape, 5, 80) == 36.25);
    CHECK(shape.nosing(2).z == 14.5);
    CHECK(shape.line->slope == even_slope);
}

TEST_CASE("a post stands on the washed tread under its centre", "[wash]") {
    Job job = even_example();
    job.stairs[0].wash = in_so_much(0.25, 12);
    job.posts[0] = placed_post(4.5, 2);
    const Solution solution = measured(job);
    CHECK_THAT(solution.posts[0].base().value(), within(14.5 + 4.5 / 48, 1e-14));
    // The rail is as high over the nosing line as ever: at the face met, 6 1/4 behind the second nosing.
    CHECK_THAT(solution.posts[0].rails[0].heights.top, within(36 + even_slope * (4.5 + 1.75) - 4.5 / 48, 1e-12));
    job.posts[0].base = {Base::On::tread, 2, 0, {}};
    CHECK_THAT(solve(job).posts[0].base().value(), within(14.5 + 4.5 / 48, 1e-14));
    job.posts[0].base = {Base::On::tread, 3, 0, {}};
    CHECK(solve(job).posts[0].base().value() == 21.75);
}

TEST_CASE("pickets on washed treads are shorter by what the tread has risen to under them", "[wash]") {
    for (const bool downhill : {false, true}) {
        Job job = even_example(open_build());
        job.builds[0].pickets->per_tread = Count(2);
        if (downhill) std::swap(job.sections[0].from, job.sections[0].to);
        const Pickets level = *measured(job).sections[0].pickets;
        job.stairs[0].wash = in_so_much(0.25, 12);
        const Pickets washed = *measured(job).sections[0].pickets;
        REQUIRE(level.pieces.size() == washed.pieces.size());
        REQUIRE(level.pieces.size() == 2);
        for (std::size_t i = 0; i < level.pieces.size(); ++i) {
            REQUIRE(level.pieces[i].at == washed.pieces[i].at);
            // From nosing to centre: the projection, so far from the riser, and half the picket.
            const double from_nosing =
                1 + level.feet[static_cast<std::size_t>(level.pieces[i].at[0] - 1)].from_riser + 0.625;
            CHECK_THAT(level.pieces[i].uphill_side - washed.pieces[i].uphill_side, within(from_nosing / 48, 1e-12));
            CHECK_THAT(level.pieces[i].downhill_side - washed.pieces[i].downhill_side, within(from_nosing / 48, 1e-12));
        }
    }
}

TEST_CASE("the ball over a washed tread is the incircle of riser, tread and rail", "[wash]") {
    for (const double wash : {1.0 / 96, 1.0 / 48, 0.05})
        for (const bool downhill : {false, true}) {
            Job job = even_example();
            job.stairs[0].wash = in_so_much(wash, 1);
            job.sections[0].lower_gap = LowerGap{0.5, false};
            if (downhill) std::swap(job.sections[0].from, job.sections[0].to);
            const SectionResult section = measured(job).sections[0];
            for (const int tread : {1, 2, 3, 4})
                CHECK_THAT(ball_over(section, tread), within(ball_over_washed(7.25, 11, 1, 0.5, wash), 1e-11));
            // The floor and the landing do not wash.
            job.stairs[0].wash = {};
            const SectionResult level = measured(job).sections[0];
            CHECK(same_bits(ball_over(section, 0), ball_over(level, 0)));
            CHECK_THAT(ball_over(level, 2), within(ball_over_washed(7.25, 11, 1, 0.5, 0), 1e-11));
        }
}

TEST_CASE("in millimetres, on steps that differ, each washed tread has the ball of its own triangle", "[wash]") {
    Job job;
    job.units = Unit::millimetre;
    job.stairs = {measured_stair({180, 180, 180, 180, 190}, {280, 280, 280, 300}, LineThrough::ends)};
    job.stairs[0].line = LineThrough::straightedge;
    job.stairs[0].nosing = 20;
    job.stairs[0].wash = in_so_much(1, 60);
    job.posts = {placed_post(-100, 1, 90), placed_post(100, 0, 90)};
    Build build = square_build();
    build.height = 900;
    build.upper = {{"cap", 90, 30}};
    build.lower = {{"bottom", 60, 40}};
    build.lower_gap = LowerGap{20, false};
    build.pickets->width = 20;
    build.pickets->depth = 20;
    build.pickets->max_gap = 98;
    build.bracket.reset();
    job.builds = {build};
    job.sections = {section_between(0, 1)};
    const SectionResult section = measured(job).sections[0];
    CHECK_THAT(ball_over(section, 2), within(ball_over_washed(180, 280, 20, 20, 1.0 / 60), 1e-9));
    CHECK_THAT(ball_over(section, 3), within(ball_over_washed(180, 280, 20, 20, 1.0 / 60), 1e-9));
}

TEST_CASE("straight across a washed tread the pickets stand on it", "[wash]") {
    Job job = even_example(open_build());
    for (Post& post : job.posts) {
        post.nosing.value = 2;
        post.at = Reading(4.5);
    }
    job.posts[0].across = 30;
    job.posts[1].across = -30;
    const Pickets level = *measured(job).sections[0].pickets;
    job.stairs[0].wash = in_so_much(0.25, 12);
    const Pickets washed = *measured(job).sections[0].pickets;
    CHECK_THAT(level.pieces[0].uphill_side - washed.pieces[0].uphill_side, within(4.5 / 48, 1e-12));
}

TEST_CASE("treads that wash by nothing are level, to the last bit", "[wash]") {
    for (const Build& build : {square_build(), open_build()}) {
        const Job level = even_example(build);
        Job job = level;
        job.stairs[0].wash = in_so_much(0, 12);
        const std::vector<Result> a = every_result(level, measured(level)), b = every_result(job, measured(job));
        REQUIRE(a.size() == b.size());
        for (std::size_t i = 0; i < a.size(); ++i)
            CHECK((a[i].where == b[i].where && same_bits(a[i].value, b[i].value)));
    }
}

TEST_CASE("a wash that would lift a tread to its next nosing is refused", "[wash]") {
    Job job = even_example();
    // From the nosing to the riser face are 12, and 7 1/4 from nosing to nosing.
    job.stairs[0].wash = in_so_much(7.25, 12);
    CHECK(has(solve(job), Trouble::wash_too_steep));
    job.stairs[0].wash = in_so_much(7.2499, 12);
    CHECK_FALSE(has(solve(job), Trouble::wash_too_steep));
}

}  // namespace rakewright::tests
