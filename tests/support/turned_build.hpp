#pragma once

#include "even_example.hpp"

// Turned pickets for the example job: bought 36 long, 1 3/4 square at the blocks.

namespace rakewright::tests {

inline constexpr double turned_length = 36, turned_lower = 9, turned_upper = 8, turned_width = 1.75,
                        turned_span = turned_length - turned_lower - turned_upper;
/// On treads a longer one, with so much more at its upper block.
inline constexpr double turned_open_length = 40, turned_open_upper = 12;

inline void turn(PicketBuild& pickets, const std::vector<Turning>& turning) {
    pickets.width = turned_width;
    pickets.depth = turned_width;
    pickets.shape = PicketShape::turned;
    pickets.length = Reading(turned_length);
    pickets.blocks = PicketBlocks{turned_lower, turned_upper};
    pickets.turning = turning;
}

/// Between two groups: the square build with these.
inline Build turned_build(const std::vector<Turning>& turning) {
    Build build = square_build();
    turn(*build.pickets, turning);
    return build;
}

/// On treads or a floor.
inline Build turned_open_build(const std::vector<Turning>& turning) {
    Build build = open_build();
    turn(*build.pickets, turning);
    build.pickets->length = Reading(turned_open_length);
    build.pickets->blocks->upper = turned_open_upper;
    return build;
}

/// A round shaft between shoulders, as thick all along.
inline std::vector<Turning> shaft(double diameter) { return {{0, diameter}, {turned_span, diameter}}; }

}  // namespace rakewright::tests
