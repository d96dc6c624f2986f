#include "../../solver/space/saw.hpp"

#include <Eigen/Geometry>
#include <cmath>

#include "../support/near.hpp"

namespace rakewright::tests {
namespace {

double as_degrees(double slope) { return degrees(angle_of(std::fabs(slope))); }

double radians(double angle_deg) { return angle_deg * M_PI / 180; }

/// A side of a bowl of equal sides, its face leaning by `lean_deg` from the level: along one edge, left up the face.
/// Its end is cut by the plumb plane that halves the corner in plan, `half_turn_deg` off square.
EndCut side_of_bowl(double lean_deg, double half_turn_deg) {
    const double lean = radians(lean_deg), turn = radians(half_turn_deg);
    const Vector left(0, std::cos(lean), std::sin(lean));
    const Frame frame{Vector::Zero(), Vector::UnitX(), left, Vector::UnitX().cross(left)};
    const Slant square{0, 0, 0},
        end = cut(frame, {Vector(10, 0, 0), Vector(std::cos(turn), std::sin(turn), 0)}).value();
    return end_cut({{5, 0.75}, square, end}, End::to);
}

/// The settings from the traces of the plane on two faces of the stick, by cross products alone.
SawSetting by_traces(const Frame& frame, const Vector& normal, bool flat) {
    const Vector &table = flat ? frame.top : frame.left, &across = flat ? frame.left : frame.top;
    const Vector trace = normal.cross(table).normalized();
    const double miter = std::fabs(trace.dot(frame.along)) / std::fabs(trace.dot(across));
    // The blade stands on the trace; its tilt is the angle between the plane and the plumb plane through the trace.
    const double tilt = std::fabs(normal.dot(table)) / normal.cross(table).norm();
    return {miter, tilt};
}

}  // namespace

TEST_CASE("a square end takes the saw as it stands", "[space][saw]") {
    const EndCut cut = end_cut({{3.5, 1.25}, {0, 0, 0}, {30, 0, 0}}, End::from);
    CHECK(cut.flat.miter == 0);
    CHECK(cut.flat.bevel == 0);
    CHECK(cut.edge.miter == 0);
    CHECK(cut.edge.bevel == 0);
    CHECK(cut.long_point == Corner{0, 0});
}

TEST_CASE("a plain rake is a bevel on the flat and a miter on edge, both the rake", "[space][saw]") {
    const Frame frame = frame_on_slope(Vector::Zero(), 1, 0, 7.0 / 11);
    const Slant end = cut(frame, {Vector::Zero(), Vector::UnitX()}).value();
    const EndCut cut = end_cut({{2.5, 1.5}, end, end}, End::from);
    // Derived: atan(7/11) is 32.471192 deg.
    CHECK_THAT(as_degrees(cut.edge.miter), within(32.471192, 5e-7));
    CHECK_THAT(as_degrees(cut.flat.bevel), within(32.471192, 5e-7));
    CHECK(cut.edge.bevel == 0);
    CHECK(cut.flat.miter == 0);
}

TEST_CASE("a level rail on a post turned in plan is a miter on the flat and a bevel on edge", "[space][saw]") {
    const Frame frame = frame_on_slope(Vector::Zero(), 1, 0, 0);
    const Slant end = cut(frame, {Vector::Zero(), Vector(std::cos(radians(10)), std::sin(radians(10)), 0)}).value();
    const EndCut cut = end_cut({{2.5, 1.5}, end, end}, End::from);
    CHECK_THAT(as_degrees(cut.flat.miter), within(10, 1e-14));
    CHECK_THAT(as_degrees(cut.edge.bevel), within(10, 1e-14));
    CHECK(cut.flat.bevel == 0);
    CHECK(cut.edge.miter == 0);
}

TEST_CASE("compound cuts agree with the traces of the plane on the faces", "[space][saw]") {
    for (const double slope : {-0.9, -0.2, 0.0, 0.31, 0.659})
        for (const double turn : {-0.7, -0.1, 0.0, 0.2, 1.5})
            for (const double lean : {-0.03, 0.0, 0.12}) {
                const Frame frame = frame_on_slope(Vector::Zero(), 0.96, 0.28, slope);
                const Vector normal = Vector(1, turn, lean).normalized();
                const Slant end = cut(frame, {Vector::Zero(), normal}).value();
                const EndCut cut = end_cut({{2.5, 1.5}, end, end}, End::to);
                const SawSetting flat = by_traces(frame, normal, true), edge = by_traces(frame, normal, false);
                CHECK_THAT(std::fabs(cut.flat.miter), within(flat.miter, 4e-15));
                CHECK_THAT(std::fabs(cut.flat.bevel), within(flat.bevel, 4e-15));
                CHECK_THAT(std::fabs(cut.edge.miter), within(edge.miter, 4e-15));
                CHECK_THAT(std::fabs(cut.edge.bevel), within(edge.bevel, 4e-15));
            }
}

TEST_CASE("bowls of the five solids: miter and bevel from published dihedral angles", "[space][saw][published]") {
    // Dihedral angles: G. Egan, "Dihedral Angles".
    // The bevel is half of what the dihedral lacks of 180; the miter half of what a face's corner lacks of 180.
    struct Solid {
        const char* name;
        double sides, lean_deg, dihedral_deg, face_corner_deg;
    };
    const double phi = (1 + std::sqrt(5.0)) / 2, deg = 180 / M_PI;
    const Solid solids[] = {
        {"tetrahedron", 3, std::acos(1.0 / 3) * deg, std::acos(1.0 / 3) * deg, 60 * 2},
        {"octahedron", 4, std::atan(std::sqrt(2.0)) * deg, 180 - std::acos(1.0 / 3) * deg, 120},
        {"dodecahedron bowl", 5, std::atan(2.0) * deg, 2 * std::atan(phi) * deg, 144},
        {"icosahedron cap", 5, 37.377368140649, 2 * std::atan(phi * phi) * deg, 120},
        {"cube corner", 3, std::atan(std::sqrt(2.0)) * deg, 90, 90},
    };
    for (const Solid& solid : solids) {
        INFO(solid.name);
        const EndCut cut = side_of_bowl(solid.lean_deg, 180 / solid.sides);
        CHECK_THAT(180 - 2 * as_degrees(cut.flat.bevel), within(solid.dihedral_deg, 2e-12));
        CHECK_THAT(as_degrees(cut.flat.miter), within(90 - solid.face_corner_deg / 2, 2e-12));
    }
}

TEST_CASE("the dodecahedron bowl in figures: 18 and 31.7175", "[space][saw]") {
    // Derived: a face leans s = atan 2, A = 36; miter atan(cos s tan A), bevel asin(sin s sin A).
    const EndCut cut = side_of_bowl(63.4349488, 36);
    CHECK_THAT(as_degrees(cut.flat.miter), within(18, 5e-8));
    CHECK_THAT(as_degrees(cut.flat.bevel), within(31.7174744, 5e-8));
}

TEST_CASE("crown moulding lying flat", "[space][saw]") {
    // Derived: with the spring s from the wall and the corner W in plan, miter atan(sin s / tan(W/2)), bevel
    // asin(cos s cos(W/2)).
    struct Crown {
        double spring_deg, corner_deg, miter_deg, bevel_deg;
    };
    const Crown crowns[] = {{38, 90, 31.619007, 33.862914},  {45, 90, 35.264390, 30.000000},
                            {52, 90, 38.238490, 25.806829},  {38, 135, 14.306377, 17.551244},
                            {45, 135, 16.324950, 15.699857}, {52, 120, 24.463552, 17.928549},
                            {38, 60, 46.839308, 43.034400},  {45, 178, 0.707143, 0.707089}};
    for (const Crown& crown : crowns) {
        INFO(crown.spring_deg << " " << crown.corner_deg);
        const EndCut cut = side_of_bowl(90 - crown.spring_deg, 90 - crown.corner_deg / 2);
        CHECK_THAT(as_degrees(cut.flat.miter), within(crown.miter_deg, 5.1e-7));
        CHECK_THAT(as_degrees(cut.flat.bevel), within(crown.bevel_deg, 5.1e-7));
    }
}

TEST_CASE("a published side cut is measured from the edge, the saw's miter from a square cut",
          "[space][saw][published]") {
    // NAVEDTRA 14044, ridge layout, side cut of jacks at a unit rise of 8: square set at 12 and 10. Exactly 12 and
    // 9.985; the printed 10 is that, rounded. Derived: the angle from the edge, atan(cos r), is 39.762159, and the
    // tilt, asin(sin r cos 45), 23.093469.
    const Frame frame = frame_on_slope(Vector::Zero(), 1, 0, 8.0 / 12);
    const Slant end = cut(frame, {Vector::Zero(), Vector(1, 1, 0).normalized()}).value();
    const EndCut cut = end_cut({{1.5, 5.5}, end, end}, End::to);
    const double from_the_edge = 90 - as_degrees(cut.flat.miter);
    CHECK_THAT(from_the_edge, within(39.762159, 5.1e-7));
    CHECK_THAT(as_degrees(cut.flat.bevel), within(23.093469, 5.1e-7));
    CHECK_THAT(12 / std::fabs(cut.flat.miter), within(9.985, 5e-4));
    CHECK(std::round(12 / std::fabs(cut.flat.miter)) == 10);
    CHECK_THAT(as_degrees(cut.flat.miter), within(50.237841, 5.1e-7));  // and not 39.76
}

TEST_CASE("hips and jacks at six unit rises", "[space][saw]") {
    // Derived: rise in 12, side cut from the edge atan(cos r), backing asin(sin r cos 45).
    const double rows[][3] = {{6, 41.81031, 18.43495}, {7, 40.81976, 20.87256},  {8, 39.76216, 23.09347},
                              {9, 38.65981, 25.10409}, {10, 37.53224, 26.91568}, {12, 35.26439, 30.00000}};
    for (const auto& [rise, side_cut_deg, backing_deg] : rows) {
        const Frame frame = frame_on_slope(Vector::Zero(), 1, 0, rise / 12);
        const Slant end = cut(frame, {Vector::Zero(), Vector(1, -1, 0).normalized()}).value();
        const EndCut cut = end_cut({{1.5, 5.5}, end, end}, End::to);
        CHECK_THAT(90 - as_degrees(cut.flat.miter), within(side_cut_deg, 5.1e-6));
        CHECK_THAT(as_degrees(cut.flat.bevel), within(backing_deg, 5.1e-6));
    }
}

TEST_CASE("level to rake, in one plumb plane: half the rake at each", "[space][saw]") {
    // Derived: atan(R/T) / 2.
    const double rows[][3] = {{7, 11, 16.235596}, {8, 12, 16.845034}, {7.5, 10, 18.434949}};
    for (const auto& [rise, run, miter_deg] : rows) {
        const Frame level = frame_on_slope(Vector::Zero(), 1, 0, 0),
                    raked = frame_on_slope(Vector::Zero(), 1, 0, rise / run);
        const Plane joint{Vector::Zero(), (level.along + raked.along).normalized()};
        for (const Frame& frame : {level, raked}) {
            const Slant end = cut(frame, joint).value();
            const EndCut cut = end_cut({{2.5, 1.5}, end, end}, End::to);
            CHECK_THAT(as_degrees(cut.edge.miter), within(miter_deg, 5.1e-7));
            CHECK_THAT(as_degrees(cut.flat.bevel), within(miter_deg, 5.1e-7));
        }
    }
}

TEST_CASE("rails that turn a corner while they slope: half the whole bend off square", "[space][saw]") {
    // Derived: rise, run, turn psi in plan, half bend acos(cos^2 r cos psi + sin^2 r) / 2 going on up, and with
    // - sin^2 r both rising to the joint.
    const double rows[][5] = {
        {7, 11, 90, 36.623832, 53.376168}, {8, 12, 90, 36.039893, 53.960107}, {7.5, 10, 45, 17.827168, 42.344886}};
    for (const auto& [rise, run, turn_deg, going_on_deg, both_rising_deg] : rows) {
        const double turn = radians(turn_deg), slope = rise / run;
        const Frame first = frame_on_slope(Vector::Zero(), 1, 0, slope);
        const auto off_square = [&](double second_slope) {
            const Frame second = frame_on_slope(Vector::Zero(), std::cos(turn), std::sin(turn), second_slope);
            const Slant end = cut(first, {Vector::Zero(), (first.along + second.along).normalized()}).value();
            return as_degrees(std::sqrt(end.per_left * end.per_left + end.per_top * end.per_top));
        };
        CHECK_THAT(off_square(slope), within(going_on_deg, 5.1e-7));
        CHECK_THAT(off_square(-slope), within(both_rising_deg, 5.1e-7));
    }
}

TEST_CASE("the long point is turned round at the from end", "[space][saw]") {
    const Slant slant{0, 0.2, -0.3};
    const Piece piece{{3.5, 1.25}, slant, {30, 0.2, -0.3}};
    CHECK(end_cut(piece, End::from).long_point == Corner{-1, 1});
    CHECK(end_cut(piece, End::to).long_point == Corner{1, -1});
}

}  // namespace rakewright::tests
