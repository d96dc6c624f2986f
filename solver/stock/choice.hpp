#pragma once

#include <optional>

#include "relaxed.hpp"

namespace rakewright {

/// What came of a search: the best plan, if there is one no dearer than was asked for, and whether the search went
/// through everything: then there is none better.
struct Choice {
    std::optional<CuttingPlan> plan;
    bool complete = false;
};

/// The best plan no dearer than `dearest`, out of all patterns that can be in one: by what pieces are worth in
/// `relaxed`, a pattern that falls short of its bar's cost by more than `dearest` is over the relaxed plan's cannot.
/// Branch and bound: how many bars of a kind, or with two pieces on them, is at most this or at least one more
/// (Vanderbeck 2000). `work` is what may be spent; what was is taken from it.
Choice choose_patterns(const Cutting& cutting, const RelaxedPlan& relaxed, const Totals& totals, Pricing& pricing,
                       Whole dearest, std::int64_t& work);

}  // namespace rakewright
