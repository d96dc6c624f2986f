#pragma once

#include <functional>

#include "../job.hpp"
#include "spacing.hpp"

// The spacing of a whole job at once. All level, in the job's unit.

namespace rakewright {

/// A section as the spacing of the whole job sees it. A section that needs no picket gets none, unless one is wanted in
/// its own middle, and has no part in the rest.
struct SpacedSection {
    PicketSpan span;
    double limit = 0;  // no gap is wider
    int fewest = 0;    // pickets with equal gaps that keep to it
    int alike = 1;     // sections
    std::optional<Centre> centre;
    std::function<bool(const Spaced&)> stops;  // where balls are limited: whether pickets so spaced stop them
};

/// Every section spaced, in order, with the block where it was looked for; or the first of those that cannot be.
struct SpacedJob {
    std::vector<Spaced> sections;
    std::optional<double> block;
    std::optional<std::size_t> without;
};

/// What `least_gap` is where it is left out, as a part of a section's limit: `alike` seeks no narrower gap but where
/// even the fewest pickets leave one, and no shorter block is taken. A bound to the search, of our choosing.
inline constexpr double usual_least_gap = 0.75;

/// What `least_end_gap` is where it is left out, as a part of the gap between two pickets (common practice).
inline constexpr double usual_least_end = 0.5;

/// The fewest pickets with equal gaps and what is wanted in the middle; none where they do not go in.
std::optional<int> fewest_centred(const SpacedSection& section);

/// The fewest in each section by itself.
SpacedJob fewest_each(const std::vector<SpacedSection>& sections);

/// Equal gaps in each section, such that the widest and the narrowest gap of all sections differ as little as can be;
/// of all that do, the fewest pickets, and then the narrowest gaps. Exact over all counts from the fewest on whose gap
/// is no less than `least_gap`.
SpacedJob alike_in_all(const std::vector<SpacedSection>& sections, const std::optional<double>& least_gap);

/// The block between two pickets everywhere, what is left equal at both posts, no less than `least_end` and as near to
/// the block as can be (then the fewest pickets).
SpacedJob with_block(const std::vector<SpacedSection>& sections, double block, const std::optional<double>& least_end);

/// The same with the longest block that the tape marks and that serves in every section, none under `least_gap`.
SpacedJob with_longest_block(const std::vector<SpacedSection>& sections, const Tape& tape,
                             const std::optional<double>& least_gap, const std::optional<double>& least_end);

/// The shortest block that is taken, of sections that have a part in the spacing.
double shortest_block(const std::vector<SpacedSection>& sections, const std::optional<double>& least_gap);

}  // namespace rakewright
