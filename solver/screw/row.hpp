#pragma once

#include "screw.hpp"

namespace rakewright {

/// The places of a row along a rail, rising; and how many of them stand in what is taken, since there is no other way
/// to have them so close.
struct RowOfScrews {
    std::vector<double> places;
    int at_taken = 0;
};

/// The fewest places from one end of a stretch to the other, evenly, at both ends and nowhere more than `every` apart;
/// in the middle if the stretch is shorter than `least`. One that would stand in what is taken (rising, none over
/// another) goes to the middle of the nearest gap in the stretch, and there are more where else two would be too far
/// apart.
RowOfScrews row_in(const Bore& stretch, double every, double least, const std::vector<Bore>& taken);

}  // namespace rakewright
