#pragma once

#include "random_job.hpp"

namespace rakewright::tests {

/// A job in plan, and beside it its angles as drawn: of every post, and the headings of its stairs and floors.
struct DrawnPlacedJob {
    Job job;
    std::vector<DrawnPost> posts;
    std::vector<DrawnAngle> stairs, floors;
};

/// What is drawn: round posts among the square ones or none, ends cut to no face or none.
struct PlacedKinds {
    bool round = true;
    bool wishes = true;
};

/// A porch: a stair, the deck at its head, often a second stair that climbs on or goes down from it, anywhere in plan;
/// three to five posts or joints, and the sections from each to the next. Everything has a place; the stairs are even,
/// given by their risers, rise and run. The same name gives the same job on every machine. Most can be solved.
DrawnPlacedJob random_placed_job(std::string_view name, const PlacedKinds& kinds = {});

}  // namespace rakewright::tests
