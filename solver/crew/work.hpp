#pragma once

#include "../solution.hpp"

namespace rakewright {

/// A step of a crew's work, in the order in which steps are done.
enum class Work {
    cut,
    cope,
    bend,
    seat_rails,
    plough,
    prime,
    set_posts,
    seat_posts,
    set_brackets,
    splice,
    set_brackets_on_rails,
    lay_out,
    assemble,
    weld,
    prime_panels,
    galvanise,
    fit,
    put_in_pickets,
    join,
    stand_pickets,
    fasten_pickets,
    fit_fillets,
    set_feet,
    fit_handrails,
    paint,
    cap
};
inline constexpr int work_steps = static_cast<int>(Work::cap) + 1;

/// A bracket of a solved job: its section, and its index among that section's.
struct BracketOfSection {
    std::size_t section = 0, bracket = 0;
};

/// A step, and the sections that have it; none where it is no section's. `brackets` are those that it fastens, or those
/// whose picket it puts in.
struct WorkStep {
    Work work = Work::cut;
    std::vector<int> sections;
    std::vector<BracketOfSection> brackets;
};

/// The steps that a solved job has, in order (common practice: seats and ploughs cut and all primed before it is put
/// together, posts before rails, assembled on the bench, feet when the rail hangs, caps last). Each bracket is fastened
/// first to what its driver's order says; to the post where that says nothing.
std::vector<WorkStep> steps_of_work(const Job& job, const Solution& solution);

}  // namespace rakewright
