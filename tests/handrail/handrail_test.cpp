#include "../support/catch.hpp"
#include "../support/even_example.hpp"
#include "../support/near.hpp"

namespace rakewright::tests {
namespace {

constexpr double degree = 0.017453292519943295;

/// Thirteen risers of 7 1/2 on treads of 10: a rake of 3 in 4, whose slope is 5 for 4.
Job wall_rail(const Handrail& handrail, int risers = 13) {
    Job job;
    Stair stair = even_stair();
    stair.risers = Count(risers);
    stair.rise = Reading(7.5);
    stair.run = Reading(10);
    job.stairs = {stair};
    job.handrails = {handrail};
    return job;
}

Handrail round_rail(double height = 36) {
    Handrail handrail;
    handrail.id = called("wallside");
    handrail.stair = ref(0);
    handrail.height = height;
    handrail.profile.diameter = Reading(1.5);
    return handrail;
}

std::vector<HandrailPiece> pieces(const Job& job) {
    const Solution solution = solve(job);
    REQUIRE_FALSE(solution.refused());
    return solution.handrails[0].pieces;
}

double miter_in_degrees(const EndCut& cut) { return std::fabs(degrees(angle_of(cut.flat.miter))); }
double bevel_in_degrees(const EndCut& cut) { return std::fabs(degrees(angle_of(cut.flat.bevel))); }

}  // namespace

TEST_CASE("a straight wall rail is as long as its flight on the slope", "[handrail]") {
    // 13 risers, 12 treads of 10: 120 / 0.8 = 150.
    const auto only = pieces(wall_rail(round_rail()));
    REQUIRE(only.size() == 1);
    CHECK_THAT(length(only[0].stick.piece), within(150, 1e-12));
    CHECK(only[0].from_end.long_point == Corner{});
    CHECK(only[0].to_end.long_point == Corner{});
    // Its top stands plumb over the nosing line: half a diameter square to it below is its middle.
    const Vector start = only[0].stick.frame.origin;
    CHECK_THAT(start.z(), within(7.5 + 36 - 0.75 * 1.25, 1e-12));
}

TEST_CASE("an extension at the top meets the rail at half the rake, one at the bottom keeps it", "[handrail]") {
    Handrail handrail = round_rail();
    handrail.extend.top = Reading(12);
    handrail.extend.bottom = Reading(10);
    const auto both = pieces(wall_rail(handrail));
    REQUIRE(both.size() == 2);
    CHECK(both[1].part == HandrailPart::top_extension);
    CHECK_THAT(length(both[0].stick.piece), within(162.5, 1e-11));  // one tread more on the slope
    CHECK_THAT(length(both[1].stick.piece), within(12, 1e-12));
    // Half of atan(3/4) is atan(1/3).
    const double half = std::atan(1.0 / 3) / degree;
    CHECK_THAT(bevel_in_degrees(both[0].to_end), within(half, 1e-12));
    CHECK_THAT(bevel_in_degrees(both[1].from_end), within(half, 1e-12));
    CHECK(both[0].to_end.flat.miter == 0);
    // Top edges of both grow by as much: the tops meet over the joint.
    CHECK_THAT(edge_length(both[1].stick.piece, {0, 1}), within(12 + 0.75 / 3, 1e-12));
    CHECK_THAT(edge_length(both[0].stick.piece, {0, 1}), within(162.5 + 0.75 / 3, 1e-11));
}

TEST_CASE("a return to the wall is mitered and reaches it", "[handrail]") {
    Handrail handrail = round_rail();
    handrail.extend.top = Reading(12);
    handrail.clearance = Reading(1.5);
    handrail.returned.top = Return::wall;
    for (const bool left : {true, false}) {
        handrail.side = StairSide{left, {}};
        const auto three = pieces(wall_rail(handrail));
        REQUIRE(three.size() == 3);
        const HandrailPiece& back = three[2];
        CHECK(back.part == HandrailPart::top_return);
        CHECK_THAT(miter_in_degrees(three[1].to_end), within(45, 1e-12));
        CHECK_THAT(miter_in_degrees(back.from_end), within(45, 1e-12));
        // Clearance and width on its long side, clearance on its short one.
        CHECK_THAT(overall(back.stick.piece), within(3, 1e-12));
        CHECK_THAT(shortest_arris(back.stick.piece), within(1.5, 1e-12));
        CHECK(back.to_end.long_point == Corner{});
        CHECK(back.stick.frame.along.y() == (left ? 1 : -1));
    }
}

TEST_CASE("pieces that meet share the plane of their joint", "[handrail]") {
    Handrail handrail = round_rail();
    handrail.profile = {};
    handrail.profile.width = Reading(1.75);
    handrail.profile.depth = Reading(2.25);
    handrail.extend = {Reading(14), Reading(11)};
    handrail.clearance = Reading(2);
    handrail.returned = {Return::wall, Return::wall};
    const auto all = pieces(wall_rail(handrail, 5));
    REQUIRE(all.size() == 4);
    for (std::size_t i = 1; i < all.size(); ++i) {
        // Any point of the one's cut lies in the plane through the joint that halves the corner between the two.
        const Stick &before = all[i - 1].stick, &after = all[i].stick;
        const Vector joint = point_on(after.frame, after.piece.from.at, {});
        const Vector normal = (before.frame.along + after.frame.along).normalized();
        CHECK((point_on(before.frame, before.piece.to.at, {}) - joint).norm() < 1e-12);
        for (const Spot spot : {Spot{0.8, 1.1}, Spot{-0.8, 1.1}, Spot{0.8, -1.1}, Spot{-0.8, -1.1}}) {
            CHECK_THAT((point_on(before.frame, reach(before.piece.to, spot), spot) - joint).dot(normal),
                       within(0, 1e-12));
            CHECK_THAT((point_on(after.frame, reach(after.piece.from, spot), spot) - joint).dot(normal),
                       within(0, 1e-12));
        }
    }
}

TEST_CASE("a girth taped round a pipe gives its diameter", "[handrail]") {
    Profile profile;
    profile.around = Reading(4.71238898038469);
    CHECK_THAT(section_of(profile).width, within(1.5, 1e-14));
}

TEST_CASE("a return off a raked rail that is not round is told", "[handrail]") {
    Handrail handrail = round_rail();
    handrail.clearance = Reading(2);
    handrail.returned.bottom = Return::wall;
    CHECK(solve(wall_rail(handrail)).findings.empty());
    handrail.profile = {};
    handrail.profile.width = Reading(1.5);
    handrail.profile.depth = Reading(1.5);
    const std::vector<Finding> findings = solve(wall_rail(handrail)).findings;
    REQUIRE(findings.size() == 1);
    CHECK(findings[0].trouble == Trouble::return_off_rake);
    CHECK_FALSE(refuses(findings[0].trouble));
    // Off a level extension there is nothing to tell.
    handrail.returned = {Return::wall, Return::none};
    handrail.extend.top = Reading(12);
    CHECK(solve(wall_rail(handrail)).findings.empty());
}

}  // namespace rakewright::tests
