#include <cmath>

#include "../support/measured.hpp"
#include "../support/near.hpp"

namespace rakewright::tests {
namespace {

Stair open_stair(double thickness) {
    Stair stair = even_stair();
    stair.riser = RiserKind::open;
    stair.tread_thickness = Reading(thickness);
    return stair;
}

StairShape shape_of_sound(const Stair& stair) {
    std::vector<Finding> findings;
    const StairShape shape = shape_of(stair, findings);
    REQUIRE(findings.empty());
    return shape;
}

std::vector<Opening> under_rail(const Job& job) {
    const Solution solution = measured(job);
    std::vector<Opening> under;
    for (const Opening& opening : solution.sections[0].openings)
        if (opening.kind == Opening::Kind::under_rail) under.push_back(opening);
    REQUIRE_FALSE(under.empty());
    return under;
}

/// The circle that rests on a level tread, under a rail `gap` over the nosings, against the lower front corner of the
/// next tread: its centre is at (x, r), with the rail at r = (gap + m x - r) / sqrt(1 + m^2), so that x is linear in r,
/// and the corner (run, rise - thickness) r away; the smaller root of the quadratic.
double ball_at_corner(double rise, double run, double thickness, double gap) {
    const double m = rise / run, a = (1 + std::sqrt(1 + m * m)) / m, b = gap / m + run, up = rise - thickness;
    const double half = a * b + up, c = b * b + up * up;
    return 2 * (half - std::sqrt(half * half - a * a * c)) / (a * a);
}

}  // namespace

TEST_CASE("between two level treads a ball finds the rise less the thickness", "[open riser]") {
    const StairShape even = shape_of_sound(open_stair(1.5));
    REQUIRE(even.open_risers.size() == 5);
    for (int riser = 1; riser <= 5; ++riser) {
        CHECK(even.open_risers[static_cast<std::size_t>(riser - 1)].number == riser);
        CHECK_THAT(even.open_risers[static_cast<std::size_t>(riser - 1)].sphere, within(5.75, 1e-13));
    }
    Stair uneven = measured_stair({180, 171, 190}, {280, 260});
    uneven.riser = RiserKind::open;
    uneven.tread_thickness = Reading(40);
    const StairShape metric = shape_of_sound(uneven);
    CHECK_THAT(metric.open_risers[0].sphere, within(140, 1e-12));
    CHECK_THAT(metric.open_risers[1].sphere, within(131, 1e-12));
    CHECK_THAT(metric.open_risers[2].sphere, within(150, 1e-12));
    CHECK(shape_of_sound(even_stair()).open_risers.empty());
}

TEST_CASE("between two treads that wash a ball finds their distance square to them", "[open riser]") {
    Stair stair = open_stair(1.5);
    stair.wash = {{0.25, 12}, {}};
    const StairShape shape = shape_of_sound(stair);
    // The floor is level; two washed treads are parallel, a run apart along the slope; the landing over the back of the
    // last is level.
    CHECK_THAT(shape.open_risers[0].sphere, within(5.75, 1e-13));
    for (const std::size_t riser : {1U, 2U, 3U})
        CHECK_THAT(shape.open_risers[riser].sphere, within((5.75 - 11.0 / 48) / std::sqrt(1 + 1.0 / 48 / 48), 1e-12));
    CHECK_THAT(shape.open_risers[4].sphere, within(5.75 - 12.0 / 48, 1e-12));
}

TEST_CASE("under a rail the ball of an open riser rests against the next tread's lower corner", "[open riser]") {
    for (const double thickness : {1.5, 2.5, 3.0})
        for (const double gap : {1.5, 2.0}) {
            Job job = even_example();
            job.stairs[0] = open_stair(thickness);
            job.sections[0].lower_gap = LowerGap{gap, false};
            for (const Opening& opening : under_rail(job))
                if (*opening.tread > 0 && *opening.tread < 5)
                    CHECK_THAT(opening.sphere, within(ball_at_corner(7.25, 11, thickness, gap), 1e-11));
        }
}

TEST_CASE("treads as thick as the rise are closed risers without nosings", "[open riser]") {
    for (const bool downhill : {false, true})
        for (const double wash : {0.0, 1.0 / 96}) {
            Job shut = even_example();
            shut.stairs[0].nosing = 0;
            shut.stairs[0].wash = {{wash, 1}, {}};
            if (downhill) std::swap(shut.sections[0].from, shut.sections[0].to);
            Job open = shut;
            open.stairs[0].riser = RiserKind::open;
            // What is left under the plates is no wider than a hair at the back of the tread below.
            open.stairs[0].tread_thickness = Reading(7.25 - 11 * wash - 1e-7);
            const std::vector<Opening> a = under_rail(shut), b = under_rail(open);
            REQUIRE(a.size() == b.size());
            for (std::size_t i = 0; i < a.size(); ++i) {
                INFO("tread " << *a[i].tread);
                CHECK(a[i].tread == b[i].tread);
                // Under the first plate there is more room on a washed stair: the floor is level.
                if (wash == 0 || *a[i].tread > 0) CHECK_THAT(b[i].sphere, within(a[i].sphere, 1e-10));
            }
        }
}

TEST_CASE("swapping the ends of a section changes no ball over open risers", "[open riser]") {
    Job job = even_example();
    job.stairs[0] = open_stair(2);
    job.posts[0].across = 4;
    const std::vector<Opening> there = under_rail(job);
    std::swap(job.sections[0].from, job.sections[0].to);
    const std::vector<Opening> back = under_rail(job);
    REQUIRE(there.size() == back.size());
    for (std::size_t i = 0; i < there.size(); ++i)
        CHECK_THAT(there[i].sphere, within(back[back.size() - 1 - i].sphere, 1e-11));
}

TEST_CASE("open risers need treads with a thickness that leaves them open", "[open riser]") {
    std::vector<Finding> findings;
    const auto found = [&](const Stair& stair) {
        findings.clear();
        shape_of(stair, findings);
        return findings.empty() ? std::optional<Trouble>() : findings[0].trouble;
    };
    Stair stair = open_stair(7.25);
    CHECK(found(stair) == Trouble::no_room_between_treads);
    stair.tread_thickness = Reading(7.2);
    CHECK_FALSE(found(stair));
    stair.wash = {{0.25, 12}, {}};
    CHECK(found(stair) == Trouble::no_room_between_treads);
    stair.tread_thickness.reset();
    CHECK(found(stair) == Trouble::thickness_missing);
    stair = even_stair();
    stair.tread_thickness = Reading(1);
    CHECK(found(stair) == Trouble::thickness_without_open);
    CHECK_FALSE(refuses(Trouble::thickness_without_open));
}

}  // namespace rakewright::tests
