#include "frame.hpp"

#include <Eigen/Geometry>
#include <cmath>

namespace rakewright {

Axes turned(const Angle& turn) {
    const auto [sine, cosine] = sine_cosine(turn);
    return {Vector(cosine, sine, 0), Vector(-sine, cosine, 0), Vector::UnitZ()};
}

Axes tipped(const Axes& plumb, double along, double across) {
    const double long_side = std::sqrt(1 + along * along + across * across);
    const Vector upright = Vector(along, across, 1) / long_side;
    // Rodrigues' rotation from plumb to upright: v + k x v + k x (k x v) / (1 + cosine), k = plumb x upright.
    const Vector k(-upright.y(), upright.x(), 0);
    const auto tip = [&](const Vector& v) {
        const Vector once = k.cross(v), twice = k.cross(once);
        return Vector(v + once + twice / (1 + upright.z()));
    };
    return {tip(plumb.first), tip(plumb.second), upright};
}

Frame frame_on_slope(const Vector& origin, double x, double y, double slope) {
    const double long_side = std::sqrt(1 + slope * slope);
    return {origin, Vector(x, y, slope) / long_side, Vector(-y, x, 0), Vector(-slope * x, -slope * y, 1) / long_side};
}

Frame frame_plumb(const Vector& origin, double x, double y) {
    // along x left = top: plumb x left = (x, y) leaves left to the right of that direction.
    return {origin, Vector::UnitZ(), Vector(y, -x, 0), Vector(x, y, 0)};
}

}  // namespace rakewright
