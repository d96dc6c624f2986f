#pragma once

#include <array>
#include <optional>

#include "../space/frame.hpp"

namespace rakewright {

/// A round post as a rail meets it: a point of its axis, the unit direction of the axis up it, its radius at that point
/// and how much that grows for each unit up the axis; radius 0 where there is none.
struct Shaft {
    Vector point = Vector::Zero(), upright = Vector::UnitZ();
    double radius = 0;
    double widening = 0;

    double radius_at(double up) const { return radius + widening * up; }
};

/// A straight line as a column meets it, seen from where it passes the axis nearest: `origin` and the unit direction
/// `way` of the line there, what of both is square to the axis, and how the way in and out follow from that. The line
/// meets the surface at `middle` +- sqrt(room) * stretch from its origin, `room` being negative where it misses.
struct ShaftCrossing {
    double at_nearest = 0;  // along the line, from where it was said to begin
    double off = 0;         // of the axis, there
    double along_axis = 0;  // the way's own part along the axis
    double stretch = 1;
    double middle = 0, room = 0;
    bool crosses = false;  // not so nearly along the surface that nothing can be cut to it
};

/// `way` a unit vector.
ShaftCrossing crossing_of(const Shaft& shaft, const Vector& begin, const Vector& way);

/// How far along the line, from where it begins, it comes out of the column (or goes into it), and the unit vector
/// square to the surface there, looking away from the axis. None where the line misses.
struct OnShaft {
    double along = 0;
    Vector outward;
};
std::optional<OnShaft> met_on(const Shaft& shaft, const Vector& begin, const Vector& way, bool coming_out);

}  // namespace rakewright
