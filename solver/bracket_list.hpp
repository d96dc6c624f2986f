#pragma once

#include "solution.hpp"

namespace rakewright {

/// A bracket of the job: its section, and its index among that section's brackets.
struct BracketUse {
    std::size_t section = 0, bracket = 0;
};

/// Brackets of the whole job that are one plate, bent alike.
struct BracketKind {
    int quantity = 0;              // sections that are alike counted
    std::vector<BracketUse> uses;  // in the order of the job
};

/// Every bracket of a solved job, those together that are made alike (legs, plate, holes and, where they are given, the
/// inside radius and k-factor) and whose bends agree to the tenth of a degree, in which a brake is set.
std::vector<BracketKind> bracket_list(const Job& job, const Solution& solution);

/// The build that a section's brackets are of. It has some.
const BracketBuild& bracket_build_of(const Job& job, std::size_t section);

}  // namespace rakewright
