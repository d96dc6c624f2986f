#include "../../solver/space/frame.hpp"

#include <Eigen/Geometry>
#include <cmath>

#include "../support/near.hpp"

namespace rakewright::tests {
namespace {

void check_square(const Vector& a, const Vector& b, const Vector& c) {
    CHECK_THAT(a.norm(), within(1, 1e-15));
    CHECK_THAT(b.norm(), within(1, 1e-15));
    CHECK_THAT(c.norm(), within(1, 1e-15));
    CHECK_THAT(a.dot(b), within(0, 1e-15));
    CHECK_THAT((Vector(a.cross(b)) - c).norm(), within(0, 4e-16));
}

}  // namespace

TEST_CASE("quarter turns in plan are exact", "[space][frame]") {
    const Axes quarter = turned(angle_from_degrees(90));
    CHECK(quarter.first == Vector(0, 1, 0));
    CHECK(quarter.second == Vector(-1, 0, 0));
    const Axes half = turned(angle_from_degrees(180));
    CHECK(half.first == Vector(-1, 0, 0));
    CHECK(half.second == Vector(0, -1, 0));
    const Axes back = turned(angle_from_degrees(-90));
    CHECK(back.first == Vector(0, -1, 0));
    CHECK(back.second == Vector(1, 0, 0));
    CHECK(turned(angle_from_degrees(360)).first == Vector(1, 0, 0));
}

TEST_CASE("a post turned counter-clockwise, seen from above, brings its uphill face round to the left",
          "[space][frame]") {
    const Axes axes = turned(angle_from_degrees(30));
    CHECK_THAT(axes.first.x(), within(std::sqrt(3.0) / 2, 2e-16));
    CHECK_THAT(axes.first.y(), within(0.5, 2e-16));
    check_square(axes.first, axes.second, axes.upright);
}

TEST_CASE("a post that is not tipped keeps its axes to the bit", "[space][frame]") {
    const Axes plumb = turned(angle_from_degrees(17)), same = tipped(plumb, 0, 0);
    CHECK(same.first == plumb.first);
    CHECK(same.second == plumb.second);
    CHECK(same.upright == plumb.upright);
}

TEST_CASE("a post leaning uphill by 3 in 4 has its uphill face tipped down by as much", "[space][frame]") {
    const Axes axes = tipped(Axes{}, 0.75, 0);  // a 3-4-5 triangle
    CHECK_THAT(axes.upright.x(), within(0.6, 2e-16));
    CHECK_THAT(axes.upright.z(), within(0.8, 2e-16));
    CHECK_THAT(axes.first.x(), within(0.8, 2e-16));
    CHECK_THAT(axes.first.z(), within(-0.6, 2e-16));
    CHECK_THAT((axes.second - Vector(0, 1, 0)).norm(), within(0, 2e-16));
}

TEST_CASE("both leans together lay the axis along (along, across, 1), with no twist", "[space][frame]") {
    const double along = 0.11, across = -0.07;
    const Axes plumb = turned(angle_from_degrees(25)), axes = tipped(plumb, along, across);
    const Vector wanted = Vector(along, across, 1).normalized();
    CHECK_THAT((axes.upright - wanted).norm(), within(0, 2e-16));
    check_square(axes.first, axes.second, axes.upright);
    // The shortest turn goes about a level line square to the lean: what lies along that line stays where it was.
    const Vector hinge = Vector(-across, along, 0).normalized();
    CHECK_THAT(axes.first.dot(hinge), within(plumb.first.dot(hinge), 3e-16));
    CHECK_THAT(axes.second.dot(hinge), within(plumb.second.dot(hinge), 3e-16));
    // Another derivation: the library's own quaternion between two directions.
    const Eigen::Quaterniond shortest = Eigen::Quaterniond::FromTwoVectors(Vector::UnitZ(), wanted);
    CHECK_THAT((axes.first - shortest * plumb.first).norm(), within(0, 1e-15));
    CHECK_THAT((axes.second - shortest * plumb.second).norm(), within(0, 1e-15));
}

TEST_CASE("a stick on a slope looks up its rail, level across, left to the left", "[space][frame]") {
    const Frame frame = frame_on_slope(Vector(1, 2, 3), 1, 0, 0.75);
    CHECK_THAT((frame.along - Vector(0.8, 0, 0.6)).norm(), within(0, 2e-16));
    CHECK_THAT((frame.left - Vector(0, 1, 0)).norm(), within(0, 0));
    CHECK_THAT((frame.top - Vector(-0.6, 0, 0.8)).norm(), within(0, 2e-16));
    const Frame askew = frame_on_slope(Vector::Zero(), 0.6, 0.8, -0.4);
    check_square(askew.along, askew.left, askew.top);
}

TEST_CASE("a plumb stick goes up, and its top looks where it is told", "[space][frame]") {
    const Frame frame = frame_plumb(Vector::Zero(), 0.6, 0.8);
    CHECK(frame.along == Vector(0, 0, 1));
    CHECK(frame.top == Vector(0.6, 0.8, 0));
    check_square(frame.along, frame.left, frame.top);
}

}  // namespace rakewright::tests
