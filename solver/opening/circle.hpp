#pragma once

#include <optional>
#include <vector>

namespace rakewright {

/// A point of an opening as it is seen square to the rail: level along it, and plumb up.
struct Seen {
    double along = 0;
    double up = 0;
};

/// The outline of an opening, counter-clockwise: its edges are what bounds it. It may touch itself: a thin nosing is an
/// edge out and an edge back.
using Outline = std::vector<Seen>;

/// One side of a straight line: the points with `along_part * along + up_part * up >= from`. The two parts make a unit
/// vector.
struct Side2 {
    double along_part = 0;
    double up_part = 0;
    double from = 0;

    double over(const Seen& point) const { return along_part * point.along + up_part * point.up - from; }
};

/// What of an outline lies on one side of a line; the line itself bounds it there. Empty if nothing does.
Outline clipped(const Outline& outline, const Side2& side);

struct Circle {
    Seen centre;
    double radius = 0;
};

/// The largest circle in an outline whose centre lies within all of `centre_within` (none: anywhere in the outline).
///
/// It is found among the circles that touch three of: the lines of edges, corners that stand into the opening, bounds
/// of its centre. Each such circle is one linear system or one quadratic, so the result is exact but for rounding:
/// within 1e-12 of the outline's extent. The outline must have at least three points. None if no circle has room.
std::optional<Circle> largest_circle(const Outline& outline, const std::vector<Side2>& centre_within = {});

}  // namespace rakewright
