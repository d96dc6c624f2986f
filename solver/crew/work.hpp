#pragma once

#include "../solution.hpp"

namespace rakewright {

/// A step of a crew's work, in the order in which steps are done.
enum class Work {
    cut,
    cope,
    bend,
    prime,
    set_posts,
    set_brackets,
    splice,
    lay_out,
    assemble,
    weld,
    prime_panels,
    galvanise,
    fit,
    join,
    stand_pickets,
    fasten_pickets,
    set_feet,
    fit_handrails,
    paint,
    cap
};
inline constexpr int work_steps = static_cast<int>(Work::cap) + 1;

/// A step, and the sections that have it; none where it is no section's.
struct WorkStep {
    Work work = Work::cut;
    std::vector<int> sections;
};

/// The steps that a solved job has, in order (common practice: primed before it is put together, posts before rails,
/// assembled on the bench, feet when the rail hangs, caps last).
std::vector<WorkStep> steps_of_work(const Job& job, const Solution& solution);

}  // namespace rakewright
