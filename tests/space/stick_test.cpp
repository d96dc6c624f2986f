#include "../../solver/space/stick.hpp"

#include <Eigen/Geometry>
#include <cmath>

#include "../support/near.hpp"

namespace rakewright::tests {
namespace {

constexpr double rake = 7.0 / 11;
const double lengthened = std::sqrt(170.0) / 11;  // of the rake 7 in 11: the hypotenuse over the run

Plane plumb_at(double x, double turn_slope = 0) { return {Vector(x, 0, 0), Vector(1, turn_slope, 0).normalized()}; }

Piece cut_between(const Frame& frame, CrossSection section, const Plane& from, const Plane& to) {
    return {section, cut(frame, from).value(), cut(frame, to).value()};
}

/// The same wood lying another way: its frame turned half round about one of its own axes.
Piece turned_half(const Frame& frame, CrossSection section, const Plane& from, const Plane& to, int about) {
    const double along = about == 0 ? 1 : -1, left = about == 1 ? 1 : -1, top = about == 2 ? 1 : -1;
    const Frame other{frame.origin, along * frame.along, left * frame.left, top * frame.top};
    return about == 0 ? cut_between(other, section, from, to) : cut_between(other, section, to, from);
}

}  // namespace

TEST_CASE("a level rail cut square has one length", "[space][stick]") {
    const Frame frame = frame_on_slope(Vector(0, 0, 30), 1, 0, 0);
    const Piece piece = cut_between(frame, {3.5, 1.25}, plumb_at(0), plumb_at(49.5));
    for (const Corner edge :
         {Corner{0, 0}, Corner{0, 1}, Corner{0, -1}, Corner{1, 1}, Corner{-1, 1}, Corner{1, -1}, Corner{-1, -1}})
        CHECK(edge_length(piece, edge) == 49.5);
    CHECK(length(piece) == 49.5);
    CHECK(overall(piece) == 49.5);
    CHECK(shortest_arris(piece) == 49.5);
    CHECK(long_point(piece, End::from) == Corner{0, 0});
    CHECK(long_point(piece, End::to) == Corner{0, 0});
    const SetOut out = set_out(piece);
    CHECK(out.edge == Corner{0, -1});
    CHECK(out.from == Reaching::square);
    CHECK(out.to == Reaching::square);
    CHECK(out.length == 49.5);
}

TEST_CASE("a rail raked 7 in 11 between plumb posts: overall = L + d tan r", "[space][stick]") {
    const double run = 44, depth = 1.5;
    const Frame frame = frame_on_slope(Vector(0, 0, 30), 1, 0, rake);
    const Piece piece = cut_between(frame, {2.5, depth}, plumb_at(0), plumb_at(run));
    CHECK_THAT(length(piece), within_ulp(run * lengthened, 2));  // 4 root 170
    CHECK_THAT(edge_length(piece, {0, 1}), within_ulp(run * lengthened, 2));
    CHECK_THAT(edge_length(piece, {0, -1}), within_ulp(run * lengthened, 2));
    CHECK_THAT(overall(piece), within(run * lengthened + depth * rake, 1e-13));
    CHECK_THAT(shortest_arris(piece), within_ulp(run * lengthened, 2));
    // Climbing: at the foot the bottom edge stands out, at the head the top edge.
    CHECK(long_point(piece, End::from) == Corner{0, -1});
    CHECK(long_point(piece, End::to) == Corner{0, 1});
    const SetOut out = set_out(piece);
    CHECK(out.edge == Corner{0, -1});
    CHECK(out.from == Reaching::long_there);
    CHECK(out.to == Reaching::short_there);
    CHECK_THAT(out.length, within_ulp(run * lengthened, 2));
}

TEST_CASE("the same rail named from its head is set out along its top", "[space][stick]") {
    const Frame frame = frame_on_slope(Vector(44, 0, 58), -1, 0, -rake);
    const Piece piece = cut_between(frame, {2.5, 1.5}, plumb_at(44), plumb_at(0));
    CHECK(long_point(piece, End::from) == Corner{0, 1});
    CHECK(long_point(piece, End::to) == Corner{0, -1});
    CHECK(set_out(piece).edge == Corner{0, 1});
    CHECK_THAT(set_out(piece).length, within_ulp(44 * lengthened, 2));
}

TEST_CASE("a level rail against a post turned in plan: one side is longer by w tan", "[space][stick]") {
    const double turn = 0.125, width = 3.5;
    const Frame frame = frame_on_slope(Vector::Zero(), 1, 0, 0);
    const Piece piece = cut_between(frame, {width, 1.25}, plumb_at(0), plumb_at(60, turn));
    CHECK(length(piece) == 60);
    // On the plane x + turn y = 60: at y = +w/2, left, it is nearer.
    CHECK_THAT(edge_length(piece, {1, 0}), within(60 - turn * width / 2, 1e-13));
    CHECK_THAT(edge_length(piece, {-1, 0}), within(60 + turn * width / 2, 1e-13));
    CHECK_THAT(overall(piece), within(60 + turn * width / 2, 1e-13));
    CHECK(long_point(piece, End::to) == Corner{-1, 0});
    const SetOut out = set_out(piece);  // square at the from end: the to end's long edge
    CHECK(out.edge == Corner{-1, 0});
    CHECK(out.from == Reaching::square);
    CHECK(out.to == Reaching::long_there);
}

TEST_CASE("raked and skew: every arris is the distance between the plane's meetings with it", "[space][stick]") {
    const double x = 0.8, y = 0.6, slope = -0.45;
    const CrossSection section{3.5, 2.25};
    const Frame frame = frame_on_slope(Vector(2, -1, 30), x, y, slope);
    const Plane from{Vector(3, 0, 31), Vector(1, 0.1, 0.05).normalized()},
        to{Vector(40, 30, 10), Vector(-1, -0.4, 0.02).normalized()};
    const Piece piece = cut_between(frame, section, from, to);
    double farthest = -1e9, nearest = 1e9;
    for (const int left : {-1, 1})
        for (const int top : {-1, 1}) {
            const Vector start =
                frame.origin + left * section.width / 2 * frame.left + top * section.depth / 2 * frame.top;
            const auto meets = [&](const Plane& plane) {
                return plane.normal.dot(plane.point - start) / plane.normal.dot(frame.along);
            };
            CHECK_THAT(edge_length(piece, {left, top}), within(meets(to) - meets(from), 1e-13));
            farthest = std::max(farthest, meets(to));
            nearest = std::min(nearest, meets(from));
        }
    CHECK_THAT(overall(piece), within(farthest - nearest, 1e-13));
}

TEST_CASE("level rail to raked rail in one plumb plane: the joint's line is d / cos(r/2)", "[space][stick]") {
    // Derived: for 7 in 11, atan(7/11) / 2 = 16.235596 deg at each.
    const Frame level = frame_on_slope(Vector::Zero(), 1, 0, 0), raked = frame_on_slope(Vector::Zero(), 1, 0, rake);
    const Plane joint{Vector::Zero(), (level.along + raked.along).normalized()};
    const Slant on_level = cut(level, joint).value(), on_raked = cut(raked, joint).value();
    CHECK_THAT(degrees(angle_of(std::fabs(on_level.per_top))), within(16.235596, 5e-7));
    CHECK_THAT(degrees(angle_of(std::fabs(on_raked.per_top))), within(16.235596, 5e-7));
    const double depth = 1.5;
    CHECK_THAT(depth * std::sqrt(1 + on_level.per_top * on_level.per_top),
               within(depth / std::cos(16.235596 * M_PI / 180), 1e-8));
    CHECK_THAT(on_level.per_left, within(0, 1e-16));
}

TEST_CASE("two cuts that cross inside a short return leave no piece", "[space][stick]") {
    // Miters of 45 deg that open away from each other: the short side is shorter by twice half the width each.
    const CrossSection section{3.5, 1.25};
    const auto mitred = [&](double along) { return Piece{section, {0, 1, 0}, {along, -1, 0}}; };
    CHECK(shortest_arris(mitred(5)) == 1.5);
    CHECK(shortest_arris(mitred(3.5)) == 0);
    CHECK(shortest_arris(mitred(1)) == -2.5);
    CHECK(overall(mitred(5)) == 8.5);
    CHECK(long_point(mitred(5), End::from) == Corner{-1, 0});
    CHECK(long_point(mitred(5), End::to) == Corner{-1, 0});
    CHECK(set_out(mitred(5)).length == 8.5);
    CHECK(set_out(mitred(5)).to == Reaching::long_there);
    // Parallel cuts never cross, however short the piece.
    CHECK(shortest_arris(Piece{section, {0, 1, 0}, {0.25, 1, 0}}) == 0.25);
}

TEST_CASE("a plane that runs along the stick does not cut it", "[space][stick]") {
    const Frame frame = frame_on_slope(Vector::Zero(), 1, 0, 0);
    CHECK_FALSE(cut(frame, {Vector::Zero(), Vector::UnitY()}).has_value());
    CHECK_FALSE(cut(frame, {Vector::Zero(), Vector::UnitZ()}).has_value());
    CHECK(cut(frame, plumb_at(0, 39.9)).has_value());
    CHECK_FALSE(cut(frame, plumb_at(0, 40.1)).has_value());
}

TEST_CASE("turning a compound piece over or end for end leaves it the same piece", "[space][stick]") {
    const Frame frame = frame_on_slope(Vector::Zero(), 0.8, 0.6, 0.5);
    const CrossSection section{3.5, 1.25};
    const Plane from = plumb_at(0), to = plumb_at(30, 0.3);
    const Piece piece = cut_between(frame, section, from, to);
    for (const int about : {0, 1, 2}) CHECK(same_piece(piece, turned_half(frame, section, from, to, about)));
}

TEST_CASE("a mirrored compound piece is another piece", "[space][stick]") {
    const CrossSection section{3.5, 1.25};
    // Compound at one end only, or otherwise at each: the hands differ, though every length agrees.
    const Piece right{section, {0, 0, 0}, {30, 0.2, 0.4}}, left{section, {0, 0, 0}, {30, -0.2, 0.4}};
    CHECK_FALSE(same_piece(right, left));
    CHECK(overall(right) == overall(left));
    // Long at the left top of its to end, it is long at the left bottom of its from end when it is turned end for end.
    CHECK(same_piece(right, {section, {0, -0.2, 0.4}, {30, 0, 0}}));
    CHECK_FALSE(same_piece(right, {section, {0, 0.2, 0.4}, {30, 0, 0}}));
    const Piece uneven{section, {0, 0.1, 0.4}, {30, 0.2, 0.4}}, mirrored{section, {0, -0.1, 0.4}, {30, -0.2, 0.4}};
    CHECK_FALSE(same_piece(uneven, mirrored));
}

TEST_CASE("pieces that are their own mirror", "[space][stick]") {
    const CrossSection section{3.5, 1.25};
    // Cut in a single plane: turned over it is its mirror.
    CHECK(same_piece(Piece{section, {0, 0.2, 0}, {30, 0.2, 0}}, Piece{section, {0, -0.2, 0}, {30, -0.2, 0}}));
    CHECK(same_piece(Piece{section, {0, 0, 0}, {30, 0.2, 0}}, Piece{section, {0, 0, 0}, {30, -0.2, 0}}));
    // Parallel ends, however compound: a solid of three pairs of parallel faces is alike through its middle, so that
    // the left one is the right one turned end for end.
    const auto pair_of = [&](double y) {
        const Frame frame = frame_on_slope(Vector::Zero(), std::sqrt(1 - y * y), y, 0.5);
        return cut_between(frame, section, plumb_at(0), plumb_at(30));
    };
    CHECK(same_piece(pair_of(0.2), pair_of(-0.2)));
}

TEST_CASE("pieces of another section, length or angle are others", "[space][stick]") {
    const Piece piece{{3.5, 1.25}, {0, 0, 0.5}, {30, 0, 0.5}};
    CHECK(same_piece(piece, {{3.5, 1.25}, {7, 0, 0.5}, {37, 0, 0.5}}));
    CHECK_FALSE(same_piece(piece, {{2.5, 1.25}, {0, 0, 0.5}, {30, 0, 0.5}}));
    CHECK_FALSE(same_piece(piece, {{3.5, 1.5}, {0, 0, 0.5}, {30, 0, 0.5}}));
    CHECK_FALSE(same_piece(piece, {{3.5, 1.25}, {0, 0, 0.5}, {30.001, 0, 0.5}}));
    CHECK_FALSE(same_piece(piece, {{3.5, 1.25}, {0, 0, 0.5}, {30, 0, -0.5}}));
}

}  // namespace rakewright::tests
