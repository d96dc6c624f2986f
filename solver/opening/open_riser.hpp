#pragma once

#include "opening.hpp"

namespace rakewright {

/// Where a ball may be under the lower rail of a stair whose risers are open, over one of its treads: along the line
/// from nosing to nosing, and as far as it can reach beside them.
struct OverTread {
    int tread = 0;
    double from = 0, to = 0;     // for its centre; infinite where there is no nosing
    double left = 0, right = 0;  // for the ball itself
    std::vector<Side2> faces;    // of posts and feet, on the side that it lies on, where they are in reach
};

/// The diameter of the largest ball over that tread: between the treads as plates, the underside of the lower rail and
/// the faces beside it; 0 where there is no room.
double ball_between_plates(const OpeningRoom& room, const OverTread& over);

}  // namespace rakewright
