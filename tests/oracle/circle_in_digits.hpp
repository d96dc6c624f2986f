#pragma once

#include <boost/multiprecision/cpp_bin_float.hpp>
#include <optional>

#include "../support/random_opening.hpp"

namespace rakewright::tests {

using Real = boost::multiprecision::number<boost::multiprecision::cpp_bin_float<50>, boost::multiprecision::et_off>;

/// The diameter of the largest circle, by trying every spot in the plane that is equally far from three features, or
/// from two and on a bound, or at a corner of the bounds: of those where the centre may be, the farthest from its
/// nearest obstacle. The spots come from loci in the plane (bisectors, and one quadratic along them), not from the
/// planes and cones of the solver. All in 50 digits, but for a first sieve.
std::optional<Real> largest_diameter_in_digits(const Opening2& opening);

/// How far a spot is from its nearest obstacle.
Real clearance_in_digits(const Opening2& opening, const Seen& spot);

/// Whether a circle's centre may be at a spot, with so much slack at the bounds.
bool may_be_centre_in_digits(const Opening2& opening, const Seen& spot, double slack);

}  // namespace rakewright::tests
