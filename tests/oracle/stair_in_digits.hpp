#pragma once

#include <vector>

#include "digits.hpp"

// A stair and its nosing line by the definitions, tried out: every pair, every triple, in fifty digits.

namespace rakewright::tests {

struct NosingInDigits {
    Real x, z, projection;
};

struct StairInDigits {
    std::vector<NosingInDigits> nosings;
    Real height = 0, slope = 0;  // of the nosing line: z = height + slope x

    Real line_at(const Real& x) const { return height + slope * x; }
    /// Height of the tread under a place; exactly over a nosing the upper one, also but for the rounding of doubles.
    Real tread_under(const Real& x) const;
    Real tread(int number) const { return number == 0 ? Real(0) : nosings[static_cast<std::size_t>(number - 1)].z; }
};

/// A stair of at least one even step or two measured ones.
StairInDigits stair_in_digits(const Stair& stair, const DrawnAngle& rake);

}  // namespace rakewright::tests
