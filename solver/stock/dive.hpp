#pragma once

#include <optional>

#include "relaxed.hpp"

namespace rakewright {

/// A relaxed plan, and all that it takes to go on from it.
struct Outlook {
    ToRelax asked;
    RelaxedPlan relaxed;
    LinearState state;
};

/// Rounds the relaxed plan down, relaxes what is left, and where nothing can be rounded down takes the pattern nearest
/// to one more. The dive of number n > 0 takes the second nearest at the nth turn. None where that does not come to a
/// plan of at most `dearest`.
std::optional<CuttingPlan> dive(const Cutting& cutting, const Totals& totals, Relaxation& relaxation,
                                const Outlook& from, Whole dearest, int number);

}  // namespace rakewright
