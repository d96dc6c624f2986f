#pragma once

#include "solution.hpp"

namespace rakewright {

/// How near two screws come to each other: the least distance between two straight stretches.
double between_screws(const PostScrew& one, const PostScrew& other);

/// Adds where screws of two rails at one post come nearer than half of both diameters together. Where the two rails do
/// not stand in one stair's axes it is not known how they lie to each other: then their screws are told if they meet
/// square round a corner or from opposite sides, each in the middle of a plumb post.
void note_screws_that_meet(const Job& job, Solution& solution);

}  // namespace rakewright
