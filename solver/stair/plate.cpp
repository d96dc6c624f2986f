#include "plate.hpp"

#include <algorithm>
#include <cmath>

namespace rakewright {
namespace {

double distance(const Profiled& point, const Profiled& from, const Profiled& to) {
    const double x = to.x - from.x, z = to.z - from.z, length2 = x * x + z * z;
    const double along =
        length2 > 0 ? std::clamp(((point.x - from.x) * x + (point.z - from.z) * z) / length2, 0.0, 1.0) : 0;
    const double away_x = point.x - from.x - along * x, away_z = point.z - from.z - along * z;
    return std::sqrt(away_x * away_x + away_z * away_z);
}

/// From the corners of one plate to the edges of another; two plates apart are nearest at a corner of one of them.
double from_corners(const Plate& one, const Plate& other) {
    double least = INFINITY;
    for (const Profiled& corner : one)
        for (std::size_t i = 0; i < other.size(); ++i)
            least = std::min(least, distance(corner, other[i], other[(i + 1) % other.size()]));
    return least;
}

double underside(const StairShape& shape, int tread, double x) {
    return surface_height(shape, tread, x) - shape.thickness;
}

}  // namespace

Plate plate_of(const StairShape& shape, int tread, double landing) {
    const double front = shape.nosing(tread).x,
                 back = tread == shape.risers() ? front + landing
                                                : shape.nosing(tread + 1).x + shape.nosing(tread + 1).projection;
    return {{{front, surface_height(shape, tread, front)},
             {back, surface_height(shape, tread, back)},
             {back, underside(shape, tread, back)},
             {front, underside(shape, tread, front)}}};
}

double room_under(const StairShape& shape, int riser) {
    const Nosing& nosing = shape.nosing(riser);
    const double back = nosing.x + nosing.projection;
    return underside(shape, riser, back) - surface_height(shape, riser - 1, back);
}

double ball_under(const StairShape& shape, int riser) {
    if (riser == 1) return shape.nosing(1).z - shape.thickness;
    const double landing = shape.nosing(riser).projection + shape.thickness;
    const Plate lower = plate_of(shape, riser - 1, landing), upper = plate_of(shape, riser, landing);
    return std::min(from_corners(lower, upper), from_corners(upper, lower));
}

}  // namespace rakewright
