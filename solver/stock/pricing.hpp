#pragma once

#include "cutting.hpp"

namespace rakewright {

/// What a pattern may be worth at most, and the best that was found: `counts` is empty where none is worth more than
/// was asked for.
struct BestPattern {
    double most = 0;
    double worth = 0;
    std::vector<int> counts;
};

/// The table of the search, kept from one search to the next so that its memory is asked for once.
struct PricingTable {
    std::vector<double> worth;
};

/// For each kind of bar the pattern worth most, by what each piece is worth (none negative) and no more of a piece than
/// `left`, as long as it is worth more than `over[bar]`. A table over the room in cells, sizes rounded down, bounds a
/// search that knows the exact sizes; where all sizes are whole cells the search goes straight to the best. After
/// `steps` of the search the best so far is taken, and `most` is the table's.
std::vector<BestPattern> best_patterns(const Cutting& cutting, const std::vector<int>& left,
                                       const std::vector<double>& worth, const std::vector<double>& over,
                                       PricingTable& table, int steps = 20000);

}  // namespace rakewright
