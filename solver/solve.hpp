#pragma once

#include "solution.hpp"

namespace rakewright {

/// Solves a job: its stairs and the lines drawn through them, the posts on them, then each section. All lengths in the
/// job's unit.
///
/// The job's refs must name things that it has, as a reader assures. Everything that makes it impossible is in the
/// findings, all of it in one run; so is what somebody should know. The same job gives the same bits on every machine.
/// Lengths are within 1e-12 of themselves, angles within 2e-15 rad, for sizes from 1e-3 to 1e6 and ends cut up to 40 in
/// 1 off square.
Solution solve(const Job& job, std::span<const RuleSet> rules = {});

/// The same job with these choices made: nothing is searched for. The choices must come from a solved job of the same
/// stairs and sections.
Solution solve(const Job& job, const Choices& choices);

/// Compares the ways in which the pickets of a job that was solved can be spaced, into `solution.spacings`; does
/// nothing to a job without `spacing`.
void compare_spacings(const Job& job, Solution& solution);

/// Measures every opening of a job that was solved, into its sections' results. It takes many times as long as solving:
/// who only cuts rails leaves it out.
void measure_openings(const Job& job, Solution& solution);

}  // namespace rakewright
