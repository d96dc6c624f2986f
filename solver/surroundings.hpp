#pragma once

#include "solution.hpp"

namespace rakewright {

/// One of the job's own that something names.
template <class Values>
decltype(auto) named(Values& values, const Ref& ref) {
    return values[static_cast<std::size_t>(ref.index)];
}

/// A post that is named and stands at a known place; none otherwise.
const StandingPost* standing_of(const Solution& solution, const Ref& post);

/// What a section stands between, as far as its posts and stair are known; joints only between sections that all have
/// places.
Surroundings surroundings_of(const Job& job, const Solution& solution, std::size_t section);

/// Everything about a section but its surroundings.
SectionTask task_of(const Job& job, const Section& section, const OpeningLimits& limits);

/// From the axes of one ground to those of another; none if they differ and one of the two has no plan.
std::optional<Carrying> carrying(const Job& job, const Ground& own, const Ground& other);

/// The ends of sections at a post, in the order of the job.
std::vector<SectionEnd> ends_at(const Job& job, int post);

/// How the members of two sections meet at a joint, pairs of one group from the top down; none unless two sections that
/// were solved end there.
std::optional<JointResult> joint_of(const Job& job, const Solution& solution, int post);

}  // namespace rakewright
