#pragma once

#include <string_view>

#include "../../solver/opening/circle.hpp"
#include "random.hpp"

namespace rakewright::tests {

/// What a ball may meet, as `largest_circle` takes it.
struct Opening2 {
    std::vector<Obstacle> obstacles;
    std::vector<Side2> centre_within;
};

/// A star of so many corners about the origin, 1 to `spread` out: the wider the spread, the more corners stand inwards.
Outline random_star(Random& random, int corners, double spread);

/// The same on whole numbers, so that many features are touched at once; corners may fall together.
Outline random_whole_star(Random& random, int corners);

/// Between two turned pickets of `rings` corners a side under raked rails, the right one shifted up against the left as
/// on a rake.
Outline random_turned(Random& random, int rings);

/// Between two plumb pickets and two raked rails: two pairs of parallel sides, shorter level than plumb or the reverse.
Outline random_picket_gap(Random& random);

/// Over one tread of some uneven steps with thin nosings, under a rail that need not be parallel to them, perhaps with
/// a post: obstacles in no outline, and a place for the centre.
Opening2 random_tread(Random& random);

/// Walls that cross and points, anywhere, with the centre in a triangle or a square among them.
Opening2 random_litter(Random& random, int walls, int points);

/// The same on whole numbers: walls that share ends, lie on one another or end in one another, and bounds that run
/// along them.
Opening2 random_whole_litter(Random& random, int walls, int points);

/// Every corner moved by up to `much`, walls that met before meeting still: sides that were parallel are nearly so.
Opening2 nudged(Random& random, const Opening2& opening, double much);

/// A room with a post standing in it, a thin wall and a point, the centre perhaps bounded.
Opening2 random_room(Random& random);

}  // namespace rakewright::tests
