#pragma once

#include "circle.hpp"

namespace rakewright {

/// As `largest_circle`, of at least one obstacle, finite numbers, and bounds or outlines that close; the circle itself
/// still as rough as where the search ended.
std::optional<LargestCircle> search_largest_circle(std::span<const Obstacle> obstacles, std::span<const Side2> bounds);

}  // namespace rakewright
