#include "../../solver/bracket/sweep.hpp"

#include <cmath>

#include "../support/even_example.hpp"
#include "../support/near.hpp"
#include "../support/random.hpp"

namespace rakewright::tests {
namespace {

InTheWay plane_at(const Vector& point, const Vector& normal) { return {{{{point, normal}, Meets::floor}}, nullptr}; }

const Vector down = -Vector::UnitZ();

StairShape shape(const Stair& stair) {
    std::vector<Finding> findings;
    return shape_of(stair, findings);
}

/// Whether a point is in the steps of a stair without projections: under the tread that it is over.
bool in_steps(const StairShape& stair, const Vector& point) {
    double height = 0;
    for (const Nosing& nosing : stair.nosings)
        if (point.x() > nosing.x + 1e-9) height = nosing.z;
    return point.z() < height - 1e-9;
}

/// Walks a disc along its way in small steps, from where it is no longer over all of the stair, until one of its points
/// is in the steps.
double walked(const StairShape& stair, const DriverWay& way, double radius, double step) {
    const Vector side = way.way.cross(std::fabs(way.way.y()) < 0.9 ? Vector::UnitY() : Vector::UnitX()).normalized(),
                 other = way.way.cross(side);
    const double over_all = (way.seat.z() - radius - stair.rise_total()) / -way.way.z();
    for (double along = std::fmax(0, over_all); along < 60; along += step)
        for (int ring = 0; ring <= 4; ++ring)
            for (int part = 0; part < 90; ++part) {
                const double angle = part * M_PI / 45, out = radius * ring / 4;
                const Vector point =
                    way.seat + along * way.way + out * (std::cos(angle) * side + std::sin(angle) * other);
                if (in_steps(stair, point)) return along;
            }
    return INFINITY;
}

}  // namespace

TEST_CASE("a round tool meets a plane with the side that is nearest", "[driver]") {
    CHECK(free_for(plane_at({0, 0, 0}, Vector::UnitZ()), {{0, 0, 5}, down}, 2, 0).length == 5);
    // A way of 3-4-5 toward the plane: its rim of 1 stands 0.6 nearer than its middle, which closes 0.8 for each unit.
    const Vector aslant(0.6, 0, -0.8);
    CHECK_THAT(free_for(plane_at({0, 0, 0}, Vector::UnitZ()), {{0, 0, 5}, aslant}, 2, 0).length,
               within((5 - 0.6) / 0.8, 1e-14));
    // Away from it, and along it: touching is free.
    CHECK(std::isinf(free_for(plane_at({0, 0, 0}, Vector::UnitZ()), {{0, 0, 5}, -down}, 2, 0).length));
    CHECK(std::isinf(free_for(plane_at({0, 0, 0}, Vector::UnitX()), {{1, 0, 5}, down}, 2, 0).length));
    CHECK(free_for(plane_at({0, 0, 0}, Vector::UnitX()), {{0.99, 0, 5}, down}, 2, 0).length == 0);
    CHECK(free_for(plane_at({0, 0, 0}, Vector::UnitX()), {{0.99, 0, 5}, down}, 2, 3).length == 3);
}

TEST_CASE("a driver is free as far as its bit, and behind its reach as far as its body", "[driver]") {
    const Driver driver{{0.25, 3}, {2, 8}};
    CHECK(needed_by(driver, 1.5) == 12.5);
    // A wall 1/2 beside: the body alone meets it, where it begins; one 1/8 beside touches the bit.
    CHECK(free_for_driver(plane_at({0, 0, 0}, Vector::UnitX()), {{0.5, 0, 5}, down}, driver, 0).length == 3);
    CHECK(free_for_driver(plane_at({0, 0, 0}, Vector::UnitX()), {{0.1, 0, 5}, down}, driver, 0).length == 0);
    CHECK(free_for_driver(plane_at({0, 0, 0}, Vector::UnitX()), {{1, 0, 5}, down}, driver, 0).length > 1e9);
    CHECK(free_for_driver(plane_at({0, 0, 0}, Vector::UnitZ()), {{0, 0, 2}, down}, driver, 0).length == 2);
    // A thick bit is out of the way beyond its reach and the screw.
    const Driver thick{{4, 3}, {1, 8}};
    CHECK(free_for_driver(plane_at({0, 0, 0}, Vector(-1, 0, 0)), {{-1, 0, 0}, Vector(0.6, 0, -0.8)}, thick, 0).length ==
          0);
}

TEST_CASE("over a stair: the tread, or the nosing under its side", "[driver]") {
    const StairShape stair = shape(even_stair());
    const InTheWay steps{{}, &stair};
    // Nosings at 0, 11, 22 ..., 7 1/4 apart; projecting 1.
    CHECK_THAT(free_for(steps, {{5, 0, 20}, down}, 2, 0).length, within(20 - 7.25, 1e-13));
    CHECK_THAT(free_for(steps, {{10.5, 0, 20}, down}, 2, 0).length, within(20 - 14.5, 1e-13));
    CHECK_THAT(free_for(steps, {{10, 0, 20}, down}, 1.9, 0).length, within(20 - 7.25, 1e-13));
    CHECK_THAT(free_for(steps, {{-3, 0, 20}, down}, 2, 0).length, within(20, 1e-13));
    CHECK(free_for(steps, {{-3, 0, 20}, down}, 2, 0).meets == Meets::floor);
    CHECK(free_for(steps, {{5, 0, 20}, down}, 2, 0).meets == Meets::tread);
    // Level, over the first tread: the second riser, 1 behind its nosing, unless the nosing is in the way.
    CHECK_THAT(free_for(steps, {{2, 0, 10}, Vector::UnitX()}, 2, 0).length, within(10, 1e-13));
    CHECK_THAT(free_for(steps, {{2, 0, 14}, Vector::UnitX()}, 2, 0).length, within(9, 1e-13));
    // On the rake, square to it: the edge of the nosing, first met by the side of a body that comes down on it.
    const double long_side = std::sqrt(even_rise * even_rise + even_run * even_run);
    const Vector square(even_rise / long_side, 0, -even_run / long_side);
    const Vector seat = Vector(11, 0, 14.5) - 4 * square;
    CHECK_THAT(free_for(steps, {seat, square}, 0.25, 0).length, within(4, 1e-13));
}

TEST_CASE("any way over any steps: as a disc walked along it finds them", "[driver][long]") {
    Random random("discs over steps");
    for (int i = 0; i < 15; ++i) {
        std::vector<double> rises, runs;
        for (int step = 0; step < 4; ++step) rises.push_back(random.uniform(5, 8));
        for (int step = 0; step < 3; ++step) runs.push_back(random.uniform(8, 13));
        const StairShape stair = shape(measured_stair(rises, runs));
        const Vector way =
            Vector(random.uniform(-1, 1), random.uniform(-0.8, 0.8), random.uniform(-1, -0.15)).normalized();
        const DriverWay driver{{random.uniform(-6, 36), random.uniform(-5, 5), random.uniform(34, 45)}, way};
        const double radius = random.uniform(0.1, 2), step = 0.01;
        const double found = free_for({{}, &stair}, driver, 2 * radius, 0).length;
        const double by_walking = walked(stair, driver, radius, step);
        INFO("way " << i);
        if (std::isinf(by_walking))
            CHECK(found > 59);
        else  // the points of its rim are 1/90 of it apart: it is found late by up to their bow, and by a step
            CHECK_THAT(found, within(by_walking, 0.05));
    }
}

}  // namespace rakewright::tests
