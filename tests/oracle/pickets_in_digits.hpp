#pragma once

#include "rail_in_digits.hpp"

// Pickets by the definitions, in fifty digits.

namespace rakewright::tests {

struct LevelsInDigits {
    Real upper_top, upper_underside, lower_top = 0, lower_underside = 0;
    bool has_lower = false;
    Real middle() const { return (upper_underside + lower_top) / 2; }
};

LevelsInDigits levels_in_digits(const Build& build, const Section& section, const WayInDigits& way);

struct PicketInDigits {
    Real centre;  // level from the origin of its way
    Real uphill_side, downhill_side;
};

/// So many pickets with equal gaps between two faces. Their lengths on a level floor, straight across a stair if there
/// is one, or between two groups.
std::vector<PicketInDigits> pickets_between(const Build& build, const LevelsInDigits& levels, const WayInDigits& way,
                                            const StairInDigits* stair, const std::array<Real, 2>& faces, int count);

/// So many on each tread, those left out that would cut into a post.
std::vector<PicketInDigits> pickets_on_treads(const Build& build, const LevelsInDigits& levels, const WayInDigits& way,
                                              const StairInDigits& stair, int per_tread);

}  // namespace rakewright::tests
