#include "../../solver/rail/post.hpp"

#include <Eigen/Geometry>
#include <cmath>

#include "../support/even_example.hpp"
#include "../support/near.hpp"

namespace rakewright::tests {
namespace {

StandingPost standing(const Post& post, const Stair& stair = even_stair()) {
    std::vector<Finding> findings;
    const std::optional<StandingPost> stands = stand(post, shape_of(stair, findings), findings);
    REQUIRE(findings.empty());
    return stands.value();
}

Trouble refusal_of(const Post& post) {
    std::vector<Finding> findings;
    REQUIRE_FALSE(stand(post, shape_of(even_stair(), findings), findings).has_value());
    REQUIRE(findings.size() == 1);
    return findings.front().trouble;
}

std::optional<Face> face_left_by(const StandingPost& post, double x, double y) { return leaving_by(post, x, y).face; }

}  // namespace

TEST_CASE("a post's place is taken from a nosing, on the surface under its centre", "[rail][post]") {
    CHECK(standing(placed_post(-5)).foot == Vector(-5, 0, 0));
    CHECK(standing(placed_post(4)).foot == Vector(4, 0, 7.25));
    CHECK(standing(placed_post(4, 0)).foot == Vector(48, 0, 36.25));  // the last nosing, at 44
    CHECK(standing(placed_post(4, 3)).foot == Vector(26, 0, 21.75));  // the third, at 22
    CHECK(standing(placed_post(-4, 3)).foot == Vector(18, 0, 14.5));  // below it: the second tread
    CHECK(standing(placed_post(-45, 0)).foot == Vector(-1, 0, 0));
}

TEST_CASE("exactly over a nosing a post stands on the upper tread", "[rail][post]") {
    CHECK(standing(placed_post(0)).foot.z() == 7.25);
    CHECK(standing(placed_post(0, 0)).foot.z() == 36.25);
    CHECK(standing(placed_post(-0.001, 2)).foot.z() == 7.25);
    Post to_face = placed_post(-1.75, 2);
    to_face.face = PostFace::downhill;  // the centre is half of 3 1/2 on: over the nosing
    CHECK(standing(to_face).foot == Vector(11, 0, 14.5));
}

TEST_CASE("taped to the downhill face the centre is half the post on, to the uphill face half back", "[rail][post]") {
    Post post = placed_post(4, 0, 5.5);
    post.face = PostFace::downhill;
    CHECK(standing(post).foot.x() == 50.75);
    post.face = PostFace::uphill;
    CHECK(standing(post).foot.x() == 45.25);
    post.size = {5, 3, "", {}};  // 5 along, 3 across
    CHECK(standing(post).foot.x() == 45.5);
}

TEST_CASE("the face that a post is taped to is that before it is turned or tipped", "[rail][post]") {
    Post post = placed_post(4, 0);
    post.size = {5, 3, "", {}};
    post.face = PostFace::downhill;
    post.turn = in_degrees(90);
    post.lean.along = in_degrees(2);
    CHECK(standing(post).foot.x() == 50.5);
}

TEST_CASE("a post may name what it stands on", "[rail][post]") {
    Post post = placed_post(4, 3);  // over the third tread
    post.base = {Base::On::tread, 0, 0, {}};
    CHECK(standing(post).foot.z() == 0);  // floor
    post.base = {Base::On::tread, 2, 0, {}};
    CHECK(standing(post).foot.z() == 14.5);
    post.base = {Base::On::tread, 5, 0, {}};
    CHECK(standing(post).foot.z() == 36.25);
    post.base = {Base::On::height, 0, 12.625, {}};
    CHECK(standing(post).foot.z() == 12.625);
    post.base = {Base::On::height, 0, -3, {}};
    CHECK(standing(post).foot.z() == -3);
    post.base = {Base::On::tread, 6, 0, {}};
    CHECK(refusal_of(post) == Trouble::tread_beyond_stair);
}

TEST_CASE("a nosing that the stair does not have is refused", "[rail][post]") {
    CHECK(refusal_of(placed_post(4, 6)) == Trouble::nosing_beyond_stair);
}

TEST_CASE("across moves the centre to the left of a person walking up", "[rail][post]") {
    Post post = placed_post(4);
    post.across = 20;
    CHECK(standing(post).foot == Vector(4, 20, 7.25));
}

TEST_CASE("the four faces of a plumb post", "[rail][post]") {
    Post post = placed_post(4);
    post.size = {5, 3, "", {}};
    const StandingPost stands = standing(post);
    CHECK(face_plane(stands, Face::uphill).point == Vector(6.5, 0, 7.25));
    CHECK(face_plane(stands, Face::uphill).normal == Vector(1, 0, 0));
    CHECK(face_plane(stands, Face::downhill).point == Vector(1.5, 0, 7.25));
    CHECK(face_plane(stands, Face::downhill).normal == Vector(-1, 0, 0));
    CHECK(face_plane(stands, Face::left).point == Vector(4, 1.5, 7.25));
    CHECK(face_plane(stands, Face::left).normal == Vector(0, 1, 0));
    CHECK(face_plane(stands, Face::right).point == Vector(4, -1.5, 7.25));
    CHECK(face_plane(stands, Face::right).normal == Vector(0, -1, 0));
}

TEST_CASE("a turned post carries its size with it", "[rail][post]") {
    Post post = placed_post(4);
    post.size = {5, 3, "", {}};
    post.turn = in_degrees(90);
    const StandingPost stands = standing(post);
    // Counter-clockwise from above: what looked up the stair now looks left.
    CHECK(face_plane(stands, Face::uphill).point == Vector(4, 2.5, 7.25));
    CHECK(face_plane(stands, Face::uphill).normal == Vector(0, 1, 0));
    CHECK(face_plane(stands, Face::left).point == Vector(2.5, 0, 7.25));
    CHECK(face_left_by(stands, 1, 0) == Face::right);
    CHECK(face_left_by(stands, 0, 1) == Face::uphill);
}

TEST_CASE("the face met is the one that the centre line leaves by", "[rail][post]") {
    const StandingPost square = standing(placed_post(4));
    CHECK(face_left_by(square, 1, 0) == Face::uphill);
    CHECK(face_left_by(square, -1, 0) == Face::downhill);
    CHECK(face_left_by(square, 0, 1) == Face::left);
    CHECK(face_left_by(square, 0, -1) == Face::right);
    CHECK(face_left_by(square, 0.8, 0.6) == Face::uphill);
    CHECK(face_left_by(square, 0.6, -0.8) == Face::right);
    Post oblong_post = placed_post(4);
    oblong_post.size = {2, 4, "", {}};  // 1 to the end, 2 to the side: its corner lies at 1 along and 2 across
    const StandingPost oblong = standing(oblong_post);
    CHECK(face_left_by(oblong, 0.6, 0.8) == Face::uphill);
    CHECK(face_left_by(oblong, 0.4, 0.9) == Face::left);
}

TEST_CASE("a line through a corner leaves by no face", "[rail][post]") {
    const StandingPost square = standing(placed_post(4));
    const double half = std::sqrt(0.5);
    for (const double x : {-half, half})
        for (const double y : {-half, half}) CHECK_FALSE(face_left_by(square, x, y).has_value());
    Post turned_post = placed_post(4);
    turned_post.turn = in_degrees(45);
    CHECK_FALSE(face_left_by(standing(turned_post), 1, 0).has_value());
    turned_post.turn = in_degrees(44.9);
    CHECK(face_left_by(standing(turned_post), 1, 0) == Face::uphill);
    turned_post.turn = in_degrees(45.1);
    CHECK(face_left_by(standing(turned_post), 1, 0) == Face::right);
    Post oblong_post = placed_post(4);
    oblong_post.size = {6, 8, "", {}};
    CHECK_FALSE(face_left_by(standing(oblong_post), 0.6, 0.8).has_value());
}

TEST_CASE("a line beside the centre leaves by another face, and beyond the post by none", "[rail][post]") {
    const StandingPost square = standing(placed_post(4));  // 1.75 each way
    CHECK(leaving_by(square, 1, 0, 1.7).face == Face::uphill);
    CHECK(leaving_by(square, 1, 0, 1.75).missed);
    CHECK(leaving_by(square, 1, 0, -2).missed);
    // Along (0.8, 0.6), to the left by b, the line passes (-0.6 b, 0.8 b) and reaches the uphill side after
    // (1.75 + 0.6 b) / 0.8 and the left side after (1.75 - 0.8 b) / 0.6: both at once where b = 0.35.
    CHECK(leaving_by(square, 0.8, 0.6, 0.34).face == Face::uphill);
    CHECK(leaving_by(square, 0.8, 0.6, 0.36).face == Face::left);
    const LeavingBy corner = leaving_by(square, 0.8, 0.6, 0.35);
    CHECK_FALSE(corner.face.has_value());
    CHECK_FALSE(corner.missed);
    // Seen along it the post is 1.75 (0.8 + 0.6) to either side.
    CHECK(leaving_by(square, 0.8, 0.6, 2.44).face == Face::left);
    CHECK(leaving_by(square, 0.8, 0.6, 2.45).missed);
    CHECK(leaving_by(square, 0.8, 0.6, -2.44).face == Face::uphill);
    Post round_post = placed_post(4);
    round_post.shape = PostShape::round;
    CHECK(leaving_by(standing(round_post), 0.8, 0.6, 1.74).face == Face::round);
    CHECK(leaving_by(standing(round_post), 0.8, 0.6, 1.75).missed);
}

TEST_CASE("a leaning post is tipped about the centre of its foot", "[rail][post]") {
    // A level reads a rise of 1 in 48 along the stair: the face at height h stands 1.75 / cos + h / 48 from the centre.
    Post post = placed_post(-5);
    post.lean.along = {Angle{1, 48}, {}};
    const StandingPost stands = standing(post);
    CHECK(stands.foot == Vector(-5, 0, 0));
    const Plane face = face_plane(stands, Face::uphill);
    const double widened = std::sqrt(1 + 1.0 / (48 * 48));
    for (const double height : {0.0, 10.0, 36.0}) {
        const double x = face.point.x() - (height - face.point.z()) * face.normal.z() / face.normal.x();
        CHECK_THAT(x, within(-5 + 1.75 * widened + height / 48, 2e-14));
    }
    CHECK_THAT(face_plane(stands, Face::left).normal.z(), within(0, 1e-16));
}

}  // namespace rakewright::tests
