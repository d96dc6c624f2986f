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
        handrail.side = NamedSide{left, {}};
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

TEST_CASE("a pipe cut at 45 degrees unrolls to the published wave", "[handrail][rim]") {
    // University of Regina, Math Central, QQ.09.07: a pipe of diameter 200 cut at 45 degrees unrolls to y = 100 cos
    // (x / 100), 16 stations over a girth of 200 pi.
    const double stations[] = {100,  92.38795,  70.71068,  38.26834,  0, -38.26834, -70.71068, -92.38795,
                               -100, -92.38795, -70.71068, -38.26834, 0, 38.26834,  70.71068,  92.38795};
    const Piece pipe{{200, 200}, {0, 0, -1}, {1000, 0, 1}};  // both ends longest on top
    for (const End end : {End::from, End::to}) {
        const std::vector<RimPoint> rim = rim_of(pipe, end);
        REQUIRE(rim.size() == rim_parts + 1);
        REQUIRE(rim_parts % 16 == 0);
        for (int station = -8; station <= 8; ++station) {
            INFO("station " << station);
            const RimPoint& point = rim[static_cast<std::size_t>(rim_parts / 2 + station * (rim_parts / 16))];
            CHECK_THAT(point.along, within(stations[(station + 16) % 16], 5e-6));
            CHECK_THAT(point.around, within(station * 39.26991, 5e-5));
        }
    }
}

TEST_CASE("a miter at an extension or a return swings half a diameter times the tangent of half the turn",
          "[handrail][rim]") {
    // NAVEDTRA 14251, Steelworker, two-piece turn: the plane halves the turn. The rake is 3 in 4, half of it 1 in 3; a
    // return turns a right angle, half of it 1 in 1. The radius is 3/4.
    Handrail handrail = round_rail();
    handrail.clearance = Reading(1.5);
    handrail.extend.top = Reading(12);
    handrail.returned.top = Return::wall;
    const auto all = pieces(wall_rail(handrail));
    REQUIRE(all.size() == 3);
    CHECK(rim_of(all[0].stick.piece, End::from).empty());  // it ends square
    CHECK(rim_of(all[2].stick.piece, End::to).empty());
    const std::size_t top = rim_parts / 2, quarter = rim_parts / 4;
    for (const auto& rim : {rim_of(all[0].stick.piece, End::to), rim_of(all[1].stick.piece, End::from)}) {
        CHECK_THAT(rim[top].along, within(0.25, 1e-12));  // where rake turns to level the top is outside
        CHECK_THAT(rim.front().along, within(-0.25, 1e-12));
        CHECK_THAT(rim.back().along, within(-0.25, 1e-12));
        CHECK_THAT(rim[top + quarter].along, within(0, 1e-12));
    }
    // To the wall on the left the right side is outside, a quarter turn before the top.
    for (const auto& rim : {rim_of(all[1].stick.piece, End::to), rim_of(all[2].stick.piece, End::from)}) {
        CHECK_THAT(rim[top - quarter].along, within(0.75, 1e-12));
        CHECK_THAT(rim[top + quarter].along, within(-0.75, 1e-12));
        CHECK_THAT(rim[top - quarter].around, within(-0.75 * 1.5707963267948966, 1e-12));
        CHECK_THAT(rim[top].along, within(0, 1e-12));
    }
    handrail.side = NamedSide{false, {}};
    const auto right = pieces(wall_rail(handrail));
    CHECK_THAT(rim_of(right[1].stick.piece, End::to)[top + quarter].along, within(0.75, 1e-12));
}

TEST_CASE("every point of a round joint's outline lies on both pieces' planes and rims", "[handrail][rim]") {
    // The joint's two outlines are one ellipse in the world, whatever the joint.
    Handrail handrail = round_rail();
    handrail.clearance = Reading(2);
    handrail.returned.top = Return::wall;  // from the rake straight to the wall
    const auto both = pieces(wall_rail(handrail));
    REQUIRE(both.size() == 2);
    const auto in_world = [](const HandrailPiece& piece, End end, const RimPoint& point) {
        const double turn = point.around / 0.75;
        const double cut = end == End::to ? piece.stick.piece.to.at + point.along : -point.along;
        return point_on(piece.stick.frame, cut, {0.75 * std::sin(turn), 0.75 * std::cos(turn)});
    };
    const auto rim = rim_of(both[0].stick.piece, End::to);
    for (const RimPoint& point : rim) {
        const Vector at = in_world(both[0], End::to, point);
        const Vector from = at - both[1].stick.frame.origin;
        const double on_axis = from.dot(both[1].stick.frame.along);
        CHECK_THAT((from - on_axis * both[1].stick.frame.along).norm(), within(0.75, 1e-12));
        const Slant& cut = both[1].stick.piece.from;
        const Spot spot{from.dot(both[1].stick.frame.left), from.dot(both[1].stick.frame.top)};
        CHECK_THAT(reach(cut, spot), within(on_axis, 1e-12));
    }
}

}  // namespace rakewright::tests
