#pragma once

#include <cmath>

namespace rakewright {

/// The one tolerance: two doubles that differ by less than this part of the larger were the same before rounding.
/// Readings come from a tape with perhaps five digits, and a chain of a hundred operations loses fewer than fourteen of
/// sixteen; what lies between is rounding.
inline constexpr double rounding = 1e-12;

/// Whether two values of one line differ by no more than the rounding of doubles. Any unit; `scale` is the size of the
/// numbers that the two came from, for differences that may be near zero.
inline bool same(double a, double b, double scale = 0) {
    const double size = std::fmax(scale, std::fmax(std::fabs(a), std::fabs(b)));
    return a == b || (std::isfinite(size) && std::fabs(a - b) <= rounding * size);
}

/// Whether `a` is no more than a limit `b`; equal but for rounding is no more.
inline bool no_more_than(double a, double b, double scale = 0) { return a <= b || same(a, b, scale); }

/// Whether `a` is less than `b` by more than rounding.
inline bool less_than(double a, double b, double scale = 0) { return !no_more_than(b, a, scale); }

}  // namespace rakewright
