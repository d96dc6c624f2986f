#pragma once

#include <array>
#include <boost/multiprecision/cpp_bin_float.hpp>

#include "../support/random_job.hpp"

// Fifty digits, and points made of them. Nothing here uses the solver's vectors, slants or angles.

namespace rakewright::tests {

using Real = boost::multiprecision::number<boost::multiprecision::cpp_bin_float<50>, boost::multiprecision::et_off>;

/// A double, or a reading of a job, as the number that it is.
inline Real exactly(double value) { return Real(value); }

struct Point {
    Real x = 0, y = 0, z = 0;
};

inline Point operator+(const Point& a, const Point& b) { return {a.x + b.x, a.y + b.y, a.z + b.z}; }
inline Point operator-(const Point& a, const Point& b) { return {a.x - b.x, a.y - b.y, a.z - b.z}; }
inline Point operator*(const Real& s, const Point& a) { return {s * a.x, s * a.y, s * a.z}; }
inline Real dot(const Point& a, const Point& b) { return a.x * b.x + a.y * b.y + a.z * b.z; }
inline Point cross(const Point& a, const Point& b) {
    return {a.y * b.z - a.z * b.y, a.z * b.x - a.x * b.z, a.x * b.y - a.y * b.x};
}
inline Real size(const Point& a) { return sqrt(dot(a, a)); }
inline Point unit(const Point& a) { return (1 / size(a)) * a; }
inline Real apart(const Point& a, const Point& b) { return size(a - b); }

/// The angle between two directions, 0 to a half turn.
inline Real angle_between(const Point& a, const Point& b) { return atan2(size(cross(a, b)), dot(a, b)); }

inline Real half_turn() { return atan2(Real(0), Real(-1)); }

/// The drawn angle in radians.
inline Real radians(const DrawnAngle& angle) {
    if (angle.in_degrees) return exactly(angle.degrees) * half_turn() / 180;
    return atan2(exactly(angle.rise), exactly(angle.run));
}

/// A plane through three points, its normal to the side from which they turn counter-clockwise.
struct Facet {
    Point through, normal;
};
inline Facet facet(const Point& a, const Point& b, const Point& c) { return {a, unit(cross(b - a, c - a))}; }

/// Where a line meets a plane.
inline Point meeting(const Point& start, const Point& way, const Facet& plane) {
    return start + (dot(plane.normal, plane.through - start) / dot(plane.normal, way)) * way;
}

}  // namespace rakewright::tests
