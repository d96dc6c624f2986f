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

RailLine line_of(const Flight& f) {
    const auto faces = faces_between(f.from, f.to);
    return line_between(f.from, f.to, {faces[0].value(), faces[1].value()}, f.stair);
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

TEST_CASE("only the clear distance known: plumb faces that look along the rail", "[rail][line]") {
    const RailLine line = line_over(49.5, {0, even_slope});
    CHECK(face_along(line, End::from, 33).value() == 0);
    CHECK(face_along(line, End::to, 33).value() == 49.5);
    CHECK(line.from.normal == Vector(1, 0, 0));
    CHECK(line.to.normal == Vector(-1, 0, 0));
}

}  // namespace rakewright::tests
