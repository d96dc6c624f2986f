#pragma once

#include "even_example.hpp"

// Rails as found, and balls that were tried at them.

namespace rakewright::tests {

/// A rail as found on the first stair, or over a floor.
inline Job with_found(const FoundRail& found, const std::optional<Stair>& stair, Unit unit = Unit::inch) {
    Job job;
    job.units = unit;
    if (stair) job.stairs = {*stair};
    job.as_found = {found};
    return job;
}

inline FoundRail guard_on_stair(double drop) {
    FoundRail found;
    found.id = called("old-rail");
    found.stair = ref(0);
    found.drop = drop;
    return found;
}

inline FoundRail guard_on_floor(double height, double drop) {
    FoundRail found;
    found.id = called("old-rail");
    found.height = Reading(height);
    found.drop = drop;
    return found;
}

inline Ball ball_at(Ball::At at, std::optional<Count> tread, double size, bool passes) {
    Ball ball;
    ball.said_at = at;
    ball.tread = tread;
    ball.size = size;
    ball.passes = passes;
    return ball;
}

}  // namespace rakewright::tests
