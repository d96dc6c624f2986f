#pragma once

#include <array>

#include "stair.hpp"

namespace rakewright {

/// A corner of a stair seen from its side: level from the first nosing, plumb above the floor at the foot.
struct Profiled {
    double x = 0;
    double z = 0;
};

/// A tread over open risers, seen from the side: from its nosing back to the riser plane of the next, its two long
/// sides parallel. Clockwise as x runs to the right: top of its nosing, top of its back, underside of its back,
/// underside of its nosing.
using Plate = std::array<Profiled, 4>;

/// The plate of a tread from 1 on, and the landing's edge, which reaches back for `landing`.
Plate plate_of(const StairShape& shape, int tread, double landing);

/// What is left, plumb, between a tread and the one above riser `riser`, over the lower one's back; 0 or less where
/// they touch.
double room_under(const StairShape& shape, int riser);

/// The diameter of the largest ball that passes over tread `riser - 1` and under the next: the distance between their
/// plates, or of the first plate from the floor.
double ball_under(const StairShape& shape, int riser);

}  // namespace rakewright
