#pragma once

#include "pricing.hpp"

namespace rakewright {

/// A pattern, and how many times over it is used where that need not be a whole number.
struct ShareOfPattern {
    Pattern pattern;
    double times = 0;
};

/// The cheapest plan in which a pattern may be used in part. No plan in whole bars costs less than `bound`. `worth` is
/// what each piece adds to the cost; by it no pattern is worth more than its bar costs.
struct RelaxedPlan {
    std::vector<ShareOfPattern> patterns;
    std::vector<double> worth;
    double bound = 0;
};

/// The linear relaxation over all patterns, by column generation (Gilmore and Gomory 1961, 1963), of pieces of which so
/// many are left. Patterns that are `known` are to hand from the start.
RelaxedPlan relaxed_plan(const Cutting& cutting, const std::vector<int>& left, const std::vector<Pattern>& known,
                         PricingTable& table);

}  // namespace rakewright
