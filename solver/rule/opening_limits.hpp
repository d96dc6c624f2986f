#pragma once

#include "rule.hpp"

namespace rakewright {

/// What an opening under a lower rail is to the rules: the triangle of riser, tread and rail over treads 1 to N-1; an
/// opening of the stair over the floor at its foot, and over a closed string, which leaves no riser and tread to bound
/// it; beyond the last nosing, and over floors, one of the landing.
enum class UnderRail { triangle, stair, level };
UnderRail under_rail_at(std::optional<int> tread, int risers, bool over_string);

/// What the largest ball of an opening must stay below, of each kind; none where no rule in force says so. In the job's
/// unit.
struct OpeningLimits {
    std::optional<double> triangle, stair, level;
    const std::optional<double>& of(UnderRail kind) const;
};

/// The least limits that rule sets ask for where the greatest fall is `drop`; where that is not known, as if a guard
/// were asked for.
OpeningLimits opening_limits(std::span<const RuleSet> sets, std::optional<double> drop, Unit unit);

}  // namespace rakewright
