#include "../../solver/rail/line.hpp"

#include <cmath>

#include "../support/even_example.hpp"
#include "../support/near.hpp"

namespace rakewright::tests {
namespace {

struct Flight {
    StairShape stair;
    StandingPost from, to;
};

Flight flight(const Post& from, const Post& to) {
    std::vector<Finding> findings;
    const StairShape stair = shape_of(even_stair(), findings);
    return {stair, stand(from, stair, findings).value(), stand(to, stair, findings).value()};
}

std::array<std::optional<Face>, 2> faces_between(const StandingPost& from, const StandingPost& to,
                                                 const Offsets& beside = {}) {
    const LevelWay way = way_between(from, to, beside).value();
    return {leaving_by(from, way.x, way.y, beside[0]).face, leaving_by(to, -way.x, -way.y, -beside[1]).face};
}

RailLine line_of(const Flight& f, const Offsets& beside = {}) {
    const auto faces = faces_between(f.from, f.to, beside);
    return line_between(f.from, f.to, way_between(f.from, f.to, beside).value(), beside,
                        {faces[0].value(), faces[1].value()}, *f.stair.line);
}

Post across(Post post, double by) {
    post.across = by;
    return post;
}

}  // namespace

TEST_CASE("a rail straight up the stair has the stair's rake and starts on its nosing line", "[rail][line]") {
    const RailLine line = line_of(flight(placed_post(-5), placed_post(4, 0)));
    CHECK(line.x == 1);
    CHECK(line.y == 0);
    CHECK(line.slope == even_slope);
    CHECK_THAT(line.origin.z(), within(7.25 - 5 * even_slope, 1e-15));
    CHECK(face_along(line, End::from, 20).value() == 1.75);
    CHECK(face_along(line, End::to, 20).value() == 51.25);
    CHECK_THAT(line.lengthened(), within(1.1976647387504906, 3e-16));  // root of 1 + (7.25/11)^2, at 30 digits
}

TEST_CASE("named from the head the rail falls by as much", "[rail][line]") {
    const RailLine line = line_of(flight(placed_post(4, 0), placed_post(-5)));
    CHECK(line.x == -1);
    CHECK(line.slope == -even_slope);
    CHECK(face_along(line, End::from, 20).value() == 1.75);
    CHECK(face_along(line, End::to, 20).value() == 51.25);
}

TEST_CASE("a rail skew to its stair is flatter than the stair", "[rail][line]") {
    // 48 up the stair and 14 across is 50 in plan.
    const RailLine line = line_of(flight(placed_post(-4), across(placed_post(0, 0), 14)));
    CHECK_THAT(line.slope, within(even_slope * 48 / 50, 2e-16));
    CHECK_THAT(line.x, within(0.96, 2e-16));
    CHECK_THAT(line.y, within(0.28, 2e-16));
    // The nosing line runs on under the rail at every x.
    const Vector at = line.at(25);
    CHECK_THAT(at.z(), within(7.25 + even_slope * at.x(), 1e-14));
    // Along the rail the faces stand off the centres by 1.75 / 0.96.
    CHECK_THAT(face_along(line, End::from, 0).value(), within(1.75 / 0.96, 1e-14));
    CHECK_THAT(face_along(line, End::to, 0).value(), within(50 - 1.75 / 0.96, 1e-13));
}

TEST_CASE("straight across the stair a rail is level", "[rail][line]") {
    const RailLine line = line_of(flight(placed_post(-5), across(placed_post(-5), 40)));
    CHECK(line.slope == 0);
    CHECK(line.x == 0);
    CHECK(line.y == 1);
    CHECK(face_along(line, End::to, 0).value() == 38.25);
    // Feet in line across but for rounding are in line.
    Post other = across(placed_post(-16, 2), 40);
    other.at = Reading(-16 + 1e-15 * 16);
    CHECK(line_of(flight(placed_post(-5), other)).slope == 0);
}

TEST_CASE("the faces met follow the way in plan at each end", "[rail][line]") {
    const Flight up = flight(placed_post(-5), placed_post(4, 0));
    CHECK(faces_between(up.from, up.to) == std::array<std::optional<Face>, 2>{Face::uphill, Face::downhill});
    CHECK(faces_between(up.to, up.from) == std::array<std::optional<Face>, 2>{Face::downhill, Face::uphill});
    const Flight over = flight(placed_post(-5), across(placed_post(4), 40));
    CHECK(faces_between(over.from, over.to) == std::array<std::optional<Face>, 2>{Face::left, Face::right});
    const Flight corner = flight(placed_post(-5), across(placed_post(4, 0), 53));
    CHECK(faces_between(corner.from, corner.to) == std::array<std::optional<Face>, 2>{std::nullopt, std::nullopt});
    Post turned_post = placed_post(4, 0);
    turned_post.turn = in_degrees(45);
    const Flight one = flight(placed_post(-5), turned_post);
    CHECK(faces_between(one.from, one.to) == std::array<std::optional<Face>, 2>{Face::uphill, std::nullopt});
}

TEST_CASE("a leaning post's face stands farther in the higher it is met", "[rail][line]") {
    Post leaning = placed_post(-5);
    leaning.lean.along = {Angle{1, 48}, {}};
    const RailLine line = line_of(flight(leaning, placed_post(4, 0)));
    const double widened = std::sqrt(1 + 1.0 / (48 * 48));
    // Along s the rail at `above` is at z = start + above + slope s; the face at z stands 1.75 / cos + z / 48 from the
    // centre.
    for (const double above : {0.0, 2.0, 32.0}) {
        const double start = 7.25 - 5 * even_slope + above, s = face_along(line, End::from, above).value();
        CHECK_THAT(s, within(1.75 * widened + (start + even_slope * s) / 48, 2e-14));
    }
    CHECK(face_along(line, End::to, 30).value() == 51.25);
}

TEST_CASE("a line beside the posts' centres passes each as far off as it is said to", "[rail][line]") {
    // 60 apart up the stair, 0 left of the one and 36 left of the other: a 3-4-5 triangle, the line at 36.87 degrees.
    const Flight apart = flight(placed_post(-16), placed_post(0, 0));
    const RailLine line = line_between(apart.from, apart.to, way_between(apart.from, apart.to, {0, 36}).value(),
                                       {0, 36}, {Face::uphill, Face::downhill}, *apart.stair.line);
    CHECK_THAT(line.x, within(0.8, 2e-16));
    CHECK_THAT(line.y, within(0.6, 2e-16));
    CHECK_THAT(line.slope, within(even_slope * 0.8, 2e-16));
    for (const auto& beside : {Offsets{1, 1}, Offsets{1, 0}, Offsets{-0.5, 1.25}}) {
        const Flight f = flight(across(placed_post(-5), 3), across(placed_post(4, 0), -7));
        const RailLine off = line_of(f, beside);
        const Vector left(-off.y, off.x, 0);
        CHECK_THAT(left.dot(off.origin - f.from.foot), within(beside[0], 1e-14));
        CHECK_THAT(left.dot(off.origin - f.to.foot), within(beside[1], 1e-13));
        // It is over the nosing line there, and starts square beside the from post's centre.
        CHECK_THAT(off.origin.z(), within(7.25 + even_slope * off.origin.x(), 1e-14));
        CHECK_THAT(Vector(off.x, off.y, 0).dot(Vector(off.origin - f.from.foot)), within(0, 1e-13));
    }
    CHECK_FALSE(way_between(apart.from, apart.to, {0, 60}).has_value());
}

TEST_CASE("a rail that reaches down to the boards round a foot meets them, one above them the post", "[rail][line]") {
    Post trimmed = placed_post(-5);
    trimmed.base_trim = BaseTrim{{Reading(5)}, Reading(6)};
    const RailLine line = line_of(flight(trimmed, placed_post(4, 0)));
    // The nosing line is 7.25 - 5 slope over the foot. Where a rail meets the boards, 2.5 off the centre, it is higher
    // by 2.5 slope.
    const double start = 7.25 - 5 * even_slope;
    const double last_below = 6 - start - 2.5 * even_slope;
    CHECK(face_along(line, End::from, last_below - 1e-6).value() == 2.5);
    CHECK(face_along(line, End::from, last_below + 1e-6).value() == 1.75);
    const auto met = [&](double underside, double top) {
        return met_between(line, End::from, underside, top).plane.point.x() + 5;
    };
    CHECK(met(last_below - 1, last_below + 1) == 2.5);
    CHECK(met(last_below, last_below + 1) == 1.75);  // it lies on them
    CHECK(met(last_below + 1, last_below + 2) == 1.75);
    CHECK(face_along(line, End::to, 0).value() == 51.25);
    // One that clears the boards' edge and is lower at the post, 3/4 farther back, sinks into them.
    CHECK_THAT(sinks_into_trim(line, End::from, last_below + 0.1), within(0.75 * even_slope - 0.1, 1e-12));
    CHECK(sinks_into_trim(line, End::from, last_below - 0.1) == 0);
    CHECK(sinks_into_trim(line, End::from, last_below + 0.75 * even_slope) == 0);
}

TEST_CASE("a clear distance taken low and high lays the faces through both", "[rail][line]") {
    const double low = 2.75, high = 34;
    for (const double slope : {0.0, even_slope})
        for (const PlumbPost plumb : {PlumbPost::neither, PlumbPost::from, PlumbPost::to}) {
            RailLine line = line_over(60.1875, {0, slope});
            lean_faces(line, {Reading(60.125), Reading(60.25), plumb, {}}, low, high);
            const auto clear = [&](double above) {
                return *face_along(line, End::to, above) - *face_along(line, End::from, above);
            };
            CHECK_THAT(clear(low), within(60.125, 1e-12));
            CHECK_THAT(clear(high), within(60.25, 1e-12));
            CHECK_THAT(clear((low + high) / 2), within(60.1875, 1e-12));
            const auto moves = [&](End end) { return *face_along(line, end, high) - *face_along(line, end, low); };
            CHECK_THAT(moves(End::from), within(plumb == PlumbPost::from ? 0 : plumb == PlumbPost::to ? -0.125 : -0.0625, 1e-12));
            CHECK_THAT(moves(End::to), within(plumb == PlumbPost::to ? 0 : plumb == PlumbPost::from ? 0.125 : 0.0625, 1e-12));
            CHECK(line.from.normal.x() > 0.9);
            CHECK(line.to.normal.x() < -0.9);
        }
}

TEST_CASE("round posts without a place stand so that the clear distance is on the line beside their axes", "[rail][line]") {
    RailLine line = line_over(60, {0, 0}, {PlacelessPost{4, 4, {}}, PlacelessPost{2.5, 2.5, {}}}, {2.4, -1.5});
    CHECK_THAT(face_along(line, End::from, 10).value(), within(0, 1e-13));
    CHECK_THAT(face_along(line, End::to, 10).value(), within(60, 1e-13));
    CHECK_THAT(line.rounds[0].point.x(), within(-3.2, 1e-14));  // 2.4, 3.2, 4
    CHECK_THAT(line.rounds[1].point.x(), within(62, 1e-14));    // 1.5, 2, 2.5
    CHECK(off_axis(line, End::from, 10) == 2.4);
    lean_faces(line, {Reading(59.5), Reading(60.5), PlumbPost::neither, {}}, 3, 34);
    CHECK_THAT(*face_along(line, End::to, 34) - *face_along(line, End::from, 34), within(60.5, 1e-12));
    CHECK_THAT(*face_along(line, End::to, 3) - *face_along(line, End::from, 3), within(59.5, 1e-12));
    CHECK_THAT(off_axis(line, End::from, 20), within(2.4, 1e-13));
}

TEST_CASE("only the clear distance known: plumb faces that look along the rail", "[rail][line]") {
    const RailLine line = line_over(49.5, {0, even_slope});
    CHECK(face_along(line, End::from, 33).value() == 0);
    CHECK(face_along(line, End::to, 33).value() == 49.5);
    CHECK(line.from.normal == Vector(1, 0, 0));
    CHECK(line.to.normal == Vector(-1, 0, 0));
}

}  // namespace rakewright::tests
