#pragma once

#include "cutting.hpp"

namespace rakewright {

/// A plan of least cost as far as a fixed number of steps finds it, never dearer than first-fit decreasing, and a bound
/// that no plan is under. Every piece must go into one of the bars, and every size must be more than 0. The same
/// cutting gives the same plan.
CuttingPlan plan_of(const Cutting& cutting);

}  // namespace rakewright
