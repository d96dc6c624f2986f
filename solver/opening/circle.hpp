#pragma once

#include <array>
#include <cstddef>
#include <optional>
#include <span>
#include <vector>

namespace rakewright {

/// A point of an opening as it is seen square to the rail: level along it, and plumb up.
struct Seen {
    double along = 0;
    double up = 0;
};

/// A straight wall seen on edge, in the way of a ball; with both ends in one place, a point. Its free ends stop a ball
/// too. Walls with wood behind them close outlines together, each running on from another's end, with the opening on
/// the left as seen from `from` to `to`: counter-clockwise round an opening, clockwise round a post that stands in it.
struct Obstacle {
    enum class Behind { air, wood };
    Seen from;
    Seen to;
    Behind behind = Behind::air;
};

/// One side of a straight line: the points with `along_part * along + up_part * up >= from`. The two parts make a unit
/// vector.
struct Side2 {
    double along_part = 0;
    double up_part = 0;
    double from = 0;

    double over(const Seen& point) const { return along_part * point.along + up_part * point.up - from; }
};

struct Circle {
    Seen centre;
    double diameter = 0;
};

/// What holds a circle: a wall on its left or right (seen from `from` to `to`), a wall's end, or the bound on which its
/// centre lies. `number` counts from 0 in the obstacles, or in the bounds of the centre.
struct Touch {
    enum class Part { left, right, from_end, to_end, bound };
    Part part = Part::left;
    std::size_t number = 0;

    bool operator==(const Touch&) const = default;
};

/// The largest circle and the `held_by` features that hold it: three, or two walls that are parallel. Obstacles come
/// first, in their order, then bounds. `proven` is false if a loop met its cap or rounding left a place unjudged: the
/// circle has room, but a larger one may exist.
struct LargestCircle {
    Circle circle;
    std::array<Touch, 3> touches;
    std::size_t held_by = 3;
    bool proven = true;
};

/// The largest circle that has no part of an obstacle inside it, whose centre lies on the inner side of all of
/// `centre_within` (the lines included) and, if any obstacles have wood behind them, in the outlines that these close.
///
/// Exact but for rounding: the diameter is that of the circle through its three features, a linear system or one
/// quadratic, and is proven against all obstacles to 1e-12 of itself (to 1e-13 of the obstacles' extent, if that is
/// more). Between parallel walls all places are alike; it then stands at one of them. None if a circle could grow
/// without bound, if it has no room (a diameter under 2e-9 of the extent, level or plumb, of the obstacles), if walls
/// with wood behind them do not close, if a number is not finite.
std::optional<LargestCircle> largest_circle(std::span<const Obstacle> obstacles,
                                            std::span<const Side2> centre_within = {});

/// The circle that is held as `decided` is, when obstacles or bounds have moved a little: of the circles that touch the
/// same features, the one nearest to it; two walls hold it where it is along them. It may touch a wall beyond its end,
/// and other obstacles may be in it. None if no circle touches them all, or if a number in `decided` is out of range.
/// With nothing moved, the same bits if three hold it.
std::optional<Circle> circle_touching(std::span<const Obstacle> obstacles, std::span<const Side2> centre_within,
                                      const LargestCircle& decided);

/// The corners of an outline, counter-clockwise. It may touch itself: a thin nosing is an edge out and an edge back.
using Outline = std::vector<Seen>;

/// What of an outline lies on one side of a line; the line itself bounds it there. Empty if nothing does.
Outline clipped(const Outline& outline, const Side2& side);

/// The edges of an outline as walls with wood behind them, in its order; edge i runs from corner i.
std::vector<Obstacle> walls_of(const Outline& outline);

}  // namespace rakewright
