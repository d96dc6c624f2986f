#include <Eigen/Geometry>
#include <cmath>

#include "../../solver/bracket/bracket.hpp"
#include "../support/even_example.hpp"
#include "../support/near.hpp"

// Brackets on faces that do not look along the rail: how the bend line lies on the post, and the leg under the rail.

namespace rakewright::tests {
namespace {

constexpr double to_radians = M_PI / 180;

double as_degrees(double slope) { return degrees(angle_of(slope)); }

/// A plumb face turned to the left of the way of a rail that runs along x from its from end.
Vector turned_face(double turn_deg) {
    return Vector(std::cos(turn_deg * to_radians), std::sin(turn_deg * to_radians), 0);
}

/// The same, leaning into the section: it looks down.
Vector leaning_face(double turn_deg, double lean_deg) {
    const double lean = lean_deg * to_radians;
    return std::cos(lean) * turned_face(turn_deg) - std::sin(lean) * Vector::UnitZ();
}

/// A section of a bracket at a round post at its from end, which leans.
RailLine line_from_round(double slope, double radius, const Vector& axis) {
    RailLine line = line_over(60, {0, slope}, {PlacelessPost{radius, radius, {}}, PlacelessPost{}});
    line.rounds[0].upright = axis.normalized();
    return line;
}

Bracket bracket_on(const BracketBuild& build, const RailLine& line, double underside) {
    Levels levels;
    levels.upper_underside = underside;
    return bracket_at(build, usual_driver(Unit::inch), line, levels, End::from, Group::upper, Leg::down, 0);
}

/// How far a point lies off a round post, along a direction, from the nearer root of the ray that meets its surface.
double off_surface(const Vector& point, const Vector& direction, const Shaft& post) {
    const auto square = [&](const Vector& v) { return Vector(v - post.upright.dot(v) * post.upright); };
    const Vector from = square(point - post.point), way = square(direction);
    const double a = way.squaredNorm(), b = from.dot(way), c = from.squaredNorm() - post.radius * post.radius;
    REQUIRE(b * b - a * c >= 0);
    return (-b - std::sqrt(b * b - a * c)) / a;
}

}  // namespace

TEST_CASE("a rake of 7 in 11 and 10 degrees of skew: the bend line tilts by 6.306", "[bracket][space]") {
    const RailLine line = line_over(49.5, {0, 7.0 / 11});
    // On the face t level to the right is -t sin 10 along the rail, and the underside 7/11 of that higher.
    CHECK_THAT(as_degrees(bend_tilt(line, turned_face(10))), within(-6.306, 5e-4));
    CHECK_THAT(bend_tilt(line, turned_face(10)), within(-7.0 / 11 * std::sin(10 * to_radians), 1e-15));
    CHECK_THAT(bend_tilt(line, turned_face(-10)), within(7.0 / 11 * std::sin(10 * to_radians), 1e-15));
    // The leg, square to the bend line in the underside, goes 10 degrees off in plan: tan 10 over what of the rail's
    // length is level.
    const double closed = std::tan(10 * to_radians) * std::sqrt(170.0) / 11;
    CHECK_THAT(leg_skew(line, End::from, turned_face(10)), within(closed, 1e-14));
    CHECK_THAT(leg_skew(line, End::from, turned_face(-10)), within(-closed, 1e-14));
    // Whoever looks at the other post sees the same from there.
    CHECK_THAT(leg_skew(line, End::to, -turned_face(-10)), within(-closed, 1e-14));
    CHECK_THAT(bend_tilt(line, -turned_face(-10)), within(-7.0 / 11 * std::sin(10 * to_radians), 1e-15));
}

TEST_CASE("dihedral, tilt and skew close the triangle of the three", "[bracket][space]") {
    // A spherical right triangle: cos of the dihedral = sin r cos f; its sine holds the other two together.
    for (const double slope : {-0.9, -0.2, 0.3, 0.66, 1.4})
        for (const double turn : {-40.0, -10.0, 3.0, 25.0, 44.0}) {
            const RailLine line = line_over(50, {0, slope});
            const double r = std::atan(slope), f = turn * to_radians;
            const double tilt = std::atan(bend_tilt(line, turned_face(turn))),
                         skew = std::atan(leg_skew(line, End::from, turned_face(turn)));
            const double dihedral = std::acos(std::sin(r) * std::cos(f));
            CHECK_THAT(std::cos(tilt), within(std::cos(r) / std::sin(dihedral), 1e-14));
            CHECK_THAT(std::sin(skew), within(std::sin(f) / std::sin(dihedral), 1e-14));
        }
}

TEST_CASE("a face that leans as well", "[bracket][space]") {
    // n = (cos f cos v, sin f cos v, -sin v) and the underside's normal (-sin r, 0, cos r), multiplied out by hand.
    for (const double slope : {-0.5, 0.0, 0.64})
        for (const double turn : {-20.0, 0.0, 12.0})
            for (const double lean : {-6.0, 0.0, 4.5}) {
                INFO(slope << ", turned " << turn << ", leaning " << lean);
                const RailLine line = line_over(50, {0, slope});
                const double r = std::atan(slope), f = turn * to_radians, v = lean * to_radians;
                const Vector face = leaning_face(turn, lean);
                CHECK_THAT(bend_tilt(line, face),
                           within(-std::sin(r) * std::sin(f) /
                                      (std::cos(r) * std::cos(v) - std::sin(r) * std::sin(v) * std::cos(f)),
                                  1e-15));
                CHECK_THAT(leg_skew(line, End::from, face),
                           within(std::sin(f) * std::cos(v) /
                                      (std::cos(f) * std::cos(v) * std::cos(r) - std::sin(v) * std::sin(r)),
                                  1e-14));
            }
}

TEST_CASE("a level rail: no tilt on a turned face, and the leg runs off by the turn", "[bracket][space]") {
    const RailLine line = line_over(50, {0, 0});
    CHECK(bend_tilt(line, turned_face(20)) == 0);
    CHECK_THAT(as_degrees(leg_skew(line, End::from, turned_face(20))), within(20, 1e-13));
}

TEST_CASE("square brackets are square to the bit, whatever the rake and however posts lean along it",
          "[bracket][space]") {
    Job lean = even_example();
    lean.posts[0].lean.along = {Angle{1, 48}, {}};
    lean.posts[1].turn = in_degrees(90);
    Job across = even_example();
    across.posts[1].lean.across = {Angle{1, 48}, {}};  // across the rail: the face it meets stays where it is
    Job turned_alike = even_example();                 // both posts turned with a rail that runs aslant
    turned_alike.posts[1].across = 12;
    for (Post& post : turned_alike.posts) post.turn = {Angle{12, 53}, {}};
    for (const Job& job : {even_example(), lean, across, floor_example(60), turned_alike}) {
        const Solution solution = solve(job);
        REQUIRE_FALSE(solution.refused());
        for (const Bracket& bracket : solution.sections[0].brackets) {
            CHECK(bracket.tilt == 0);
            CHECK(bracket.skew == 0);
            CHECK(bracket.square());
            CHECK_FALSE(bracket.stands_off);
        }
    }
}

TEST_CASE("the bend line at the plate's edges is where face and underside meet there", "[bracket][space]") {
    Job job = even_example();
    job.posts[0].turn = in_degrees(10);
    const Solution solution = solve(job);
    for (const Bracket& bracket : solution.sections[0].brackets) {
        if (bracket.end == End::to) {
            CHECK(bracket.mark_left == bracket.mark_height);
            continue;
        }
        // A plate of 1 1/2 reaches 3/4 along a bend line tilted by tan = s sin 10.
        const double tilt = std::atan(even_slope * std::sin(10 * to_radians)), climb = 0.75 * std::sin(tilt);
        CHECK_THAT(*bracket.mark_left - *bracket.mark_height, within(climb, 1e-14));
        CHECK_THAT(*bracket.mark_height - *bracket.mark_right, within(climb, 1e-14));
        CHECK(side_of(bracket.tilt) == SideSeen::left);
    }
}

TEST_CASE("on a plumb round post the plate's edges stand off by the rise of the arc", "[bracket][space]") {
    BracketBuild build = bent_plate();
    build.width = 1;
    for (const double slope : {0.0, 0.64, -0.3}) {
        const Bracket bracket = bracket_on(build, line_from_round(slope, 3, Vector::UnitZ()), 30);
        REQUIRE(bracket.stands_off);
        CHECK_THAT(*bracket.stands_off, within(3 - std::sqrt(9 - 0.25), 1e-15));
        CHECK(bracket.square());
    }
}

TEST_CASE("on a round post that leans, the farthest of the leg's corners", "[bracket][space]") {
    const BracketBuild build = bent_plate();
    for (const Vector& axis : {Vector(0, 0.03, 1), Vector(0.02, -0.05, 1), Vector(-0.04, 0, 1), Vector(0.1, 0.1, 1)})
        for (const double slope : {0.0, 0.64, -0.4}) {
            const RailLine line = line_from_round(slope, 3.5, axis);
            const Bracket bracket = bracket_on(build, line, 20);
            const Plane face = face_at(line, End::from, 20).value();
            const Vector underside = frame_on_slope(Vector::Zero(), 1, 0, slope).top,
                         bend = face.normal.cross(underside).normalized();
            Vector down = face.normal.cross(bend);
            if (down.z() > 0) down = -down;
            double farthest = 0;
            for (const double side : {-1.0, 1.0})
                for (const double leg : {0.0, double(build.post_leg)}) {
                    const Vector corner = face.point + side * build.width / 2 * bend + leg * down;
                    farthest = std::max(farthest, off_surface(corner, -face.normal, line.rounds[0]));
                }
            REQUIRE(bracket.stands_off);
            CHECK_THAT(*bracket.stands_off, within(farthest, 1e-12));
        }
}

TEST_CASE("a plate that reaches past a round post is told", "[bracket][space]") {
    Job job = even_example();
    job.posts[0].shape = PostShape::round;
    job.posts[0].size = {4, 4, "", {}};
    job.builds[0].bracket->width = 4.5;
    const Solution solution = solve(job);
    REQUIRE_FALSE(solution.refused());
    CHECK(has(solution, Trouble::plate_past_round));
    for (const Bracket& bracket : solution.sections[0].brackets) CHECK_FALSE(bracket.stands_off);
    job.builds[0].bracket->width = 1.5;
    CHECK_FALSE(has(solve(job), Trouble::plate_past_round));
}

TEST_CASE("the driver is judged by the true angle between the legs, and not by the rake", "[bracket][driver]") {
    // Turned up at the foot of 7 in 11, a leg of 2 1/2 rises by 2 1/2 cos 57.529 = 1.342 under the bit; on a face 10
    // degrees askew the legs open to 58.081, and it rises by 1.322. A bit of 1/4 at 1.455 clears only that.
    BracketBuild build = bent_plate();
    build.post_leg = 4;
    build.post_hole = {Reading(1.455)};
    RailLine line = line_over(49.5, {0, 7.0 / 11});
    Levels levels;
    levels.upper_underside = 33;
    const auto clear = [&] {
        return bracket_at(build, usual_driver(Unit::inch), line, levels, End::from, Group::upper, Leg::up, 0)
            .driver_clear;
    };
    CHECK_FALSE(clear());
    line.from.normal = turned_face(10);
    CHECK(clear());
    CHECK(chosen_leg(build, usual_driver(Unit::inch), line, End::from) == Leg::up);
}

}  // namespace rakewright::tests
