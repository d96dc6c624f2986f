#include "work.hpp"

#include <algorithm>

namespace rakewright {
namespace {

bool goes_on_rail_first(const Fixing& fixing) {
    return fixing.driving && fixing.driving->order == DrivingOrder::rail_first;
}
bool goes_on_post_first(const Fixing& fixing) { return !goes_on_rail_first(fixing); }
bool has_picket_after(const Fixing& fixing) { return fixing.driving && fixing.driving->picket_after; }

struct Looking {
    const Build& build;
    const SectionResult& result;

    bool has_pickets() const { return result.pickets && result.pickets->count > 0; }
    bool has_beside() const { return has_pickets() && build.pickets->on_face(); }
    bool is_panel() const { return has_pickets() && !has_beside() && !build.lower.empty(); }
    bool is_welded() const { return has_pickets() && build.pickets->weld_gap > 0; }
    bool is_coped() const {
        return std::any_of(result.members.begin(), result.members.end(),
                           [](const Member& member) { return member.copes[0] || member.copes[1]; });
    }
    bool is_spliced() const {
        return std::any_of(result.members.begin(), result.members.end(),
                           [](const Member& member) { return !member.splices.empty(); });
    }
    bool has_fixing(bool (*is)(const Fixing&)) const {
        return std::any_of(result.fixings.begin(), result.fixings.end(), is);
    }
    bool is_ploughed() const {
        if (!build.pickets) return false;
        const Plough& plough = build.pickets->plough;
        return plough.upper > 0 || (!build.lower.empty() && plough.lower > 0);
    }
    bool has_plates() const {
        return std::any_of(result.brackets.begin(), result.brackets.end(),
                           [](const Bracket& bracket) { return bracket.blank.has_value(); });
    }
    bool is_joined() const { return result.joints[0] || result.joints[1]; }
};

/// Whether a section has a step.
bool has(Work work, const Looking& at) {
    switch (work) {
        case Work::cut:
        case Work::fit: return true;
        case Work::cope: return at.is_coped();
        case Work::bend: return at.has_plates();
        case Work::seat_rails:
            return at.has_fixing([](const Fixing& fixing) { return fixing.seat.rail_cut.has_value(); });
        case Work::plough: return at.is_ploughed();
        case Work::prime: return !at.build.galvanised && !at.is_welded();
        case Work::seat_posts:
            return at.has_fixing([](const Fixing& fixing) { return fixing.seat.mortise.has_value(); });
        case Work::set_brackets: return at.has_fixing(goes_on_post_first);
        case Work::set_brackets_on_rails: return at.has_fixing(goes_on_rail_first);
        case Work::splice: return at.is_spliced();
        case Work::lay_out: return at.has_pickets();
        case Work::assemble: return at.is_panel();
        case Work::weld: return at.is_welded();
        case Work::prime_panels: return !at.build.galvanised && at.is_welded();
        case Work::galvanise: return at.build.galvanised;
        case Work::put_in_pickets: return at.is_panel() && at.has_fixing(has_picket_after);
        case Work::join: return at.is_joined();
        case Work::stand_pickets: return at.has_pickets() && !at.is_panel() && !at.has_beside();
        case Work::fasten_pickets: return at.has_beside();
        case Work::fit_fillets: return at.result.pickets && !at.result.pickets->fillets.empty();
        case Work::set_feet: return !at.result.feet.empty();
        case Work::set_posts:
        case Work::fit_handrails:
        case Work::paint:
        case Work::cap: return false;
    }
    return false;
}

/// Whether the job has a step, whatever its sections are.
bool has(Work work, const Job& job) {
    const bool posts = std::any_of(job.posts.begin(), job.posts.end(),
                                   [](const Post& post) { return post.shape != PostShape::joint; });
    if (work == Work::set_posts) return posts && !(job.order_list && !job.order_list->posts);
    if (work == Work::cut || work == Work::prime) return !job.handrails.empty() || !job.also_cut.empty();
    if (work == Work::fit_handrails) return !job.handrails.empty();
    if (work == Work::paint) return job.paint.has_value();
    return work == Work::cap && posts && job.order_list && job.order_list->caps;
}

/// Which brackets a step is about; none where it is about none.
bool (*brackets_of(Work work))(const Fixing&) {
    if (work == Work::set_brackets) return goes_on_post_first;
    if (work == Work::set_brackets_on_rails) return goes_on_rail_first;
    return work == Work::put_in_pickets ? has_picket_after : nullptr;
}

void add_brackets(const Solution& solution, WorkStep& step) {
    bool (*const is)(const Fixing&) = brackets_of(step.work);
    if (!is) return;
    for (const int section : step.sections) {
        const auto s = static_cast<std::size_t>(section);
        const std::vector<Fixing>& fixings = solution.sections[s].fixings;
        for (std::size_t b = 0; b < fixings.size(); ++b)
            if (is(fixings[b])) step.brackets.push_back({s, b});
    }
}

}  // namespace

std::vector<WorkStep> steps_of_work(const Job& job, const Solution& solution) {
    std::vector<WorkStep> steps;
    for (int number = 0; number < work_steps; ++number) {
        WorkStep step{static_cast<Work>(number), {}, {}};
        for (std::size_t s = 0; s < solution.sections.size(); ++s)
            if (has(step.work,
                    {job.builds[static_cast<std::size_t>(job.sections[s].build.index)], solution.sections[s]}))
                step.sections.push_back(static_cast<int>(s));
        add_brackets(solution, step);
        if (!step.sections.empty() || has(step.work, job)) steps.push_back(std::move(step));
    }
    return steps;
}

}  // namespace rakewright
