#pragma once

#include "catch.hpp"

namespace rakewright::tests {

/// Matches a number that differs from `value` by no more than `absolute`, in the unit of both.
inline auto within(double value, double absolute) { return Catch::Matchers::WithinAbs(value, absolute); }

/// Matches a double that lies no more than so many neighbours away from `value`.
inline auto within_ulp(double value, std::uint64_t neighbours) { return Catch::Matchers::WithinULP(value, neighbours); }

}  // namespace rakewright::tests
