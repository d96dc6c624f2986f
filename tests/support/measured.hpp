#pragma once

#include "catch.hpp"
#include "even_example.hpp"

namespace rakewright::tests {

/// A job that solves, with its openings measured.
inline Solution measured(const Job& job) {
    Solution solution = solve(job);
    REQUIRE_FALSE(solution.refused());
    measure_openings(job, solution);
    return solution;
}

}  // namespace rakewright::tests
