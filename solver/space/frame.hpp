#pragma once

#include <Eigen/Core>

#include "../measure/angle.hpp"

namespace rakewright {

using Vector = Eigen::Vector3d;

/// Where a stick lies. `along` runs from its from end to its to end; `left` and `top` as seen by a person looking along
/// it. Unit vectors, square to each other, along x left = top. The origin is on the centre line, anywhere on it.
struct Frame {
    Vector origin, along, left, top;
};

/// A plane in the world: any point of it, and a unit vector square to it.
struct Plane {
    Vector point, normal;
};

/// The axes of something that stands plumb before it is turned or tipped: two level ones and its own upright.
struct Axes {
    Vector first = Vector::UnitX(), second = Vector::UnitY(), upright = Vector::UnitZ();
};

/// Plumb axes turned about plumb, counter-clockwise from above. Quarter turns are exact.
Axes turned(const Angle& turn);

/// The axes tipped by the shortest turn that lays their upright along (along, across, 1): the slopes that a level held
/// on the x axis and one held on the y axis read. Exactly the same axes for slopes of zero.
Axes tipped(const Axes& plumb, double along, double across);

/// The frame of a stick in a plumb plane, level across: along a level unit direction (x, y), rising `slope` for each
/// unit of level.
Frame frame_on_slope(const Vector& origin, double x, double y, double slope);

/// The frame of a plumb stick whose top looks along a level unit direction (x, y).
Frame frame_plumb(const Vector& origin, double x, double y);

}  // namespace rakewright
