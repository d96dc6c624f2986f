#include "shaft.hpp"

#include <cmath>

#include "../space/stick.hpp"

namespace rakewright {

ShaftCrossing crossing_of(const Shaft& shaft, const Vector& begin, const Vector& way) {
    const Vector& axis = shaft.upright;
    const auto square = [&](const Vector& v) { return Vector(v - axis.dot(v) * axis); };
    const Vector across = square(way), from_axis = square(begin - shaft.point);
    ShaftCrossing crossing;
    crossing.along_axis = axis.dot(way);
    const double across_size = across.squaredNorm(), widening = shaft.widening * crossing.along_axis;
    // |from_axis + t across|^2 = (radius + widening t)^2, from where the line is nearest to the axis.
    const double steepness = across_size - widening * widening;
    crossing.crosses = steepness * steepest_cut * steepest_cut > 1;
    if (!crossing.crosses) return crossing;
    crossing.at_nearest = -from_axis.dot(across) / across_size;
    const Vector nearest = from_axis + crossing.at_nearest * across;
    crossing.off = nearest.norm();
    const double radius = shaft.radius_at(axis.dot(begin - shaft.point) + crossing.at_nearest * crossing.along_axis);
    crossing.stretch = 1 / std::sqrt(steepness);
    crossing.middle = widening * radius / steepness;
    crossing.room = radius * radius - crossing.off * crossing.off + widening * radius * crossing.middle;
    return crossing;
}

std::optional<OnShaft> met_on(const Shaft& shaft, const Vector& begin, const Vector& way, bool coming_out) {
    const ShaftCrossing crossing = crossing_of(shaft, begin, way);
    if (!crossing.crosses || crossing.room < 0) return std::nullopt;
    const double half = std::sqrt(crossing.room) * crossing.stretch;
    const double along = crossing.at_nearest + crossing.middle + (coming_out ? half : -half);
    const Vector point = begin + along * way - shaft.point;
    const double up = shaft.upright.dot(point), radius = shaft.radius_at(up);
    const Vector across = point - up * shaft.upright;
    return OnShaft{along,
                   (across / radius - shaft.widening * shaft.upright) / std::sqrt(1 + shaft.widening * shaft.widening)};
}

}  // namespace rakewright
