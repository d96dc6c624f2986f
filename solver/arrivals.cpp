#include "arrivals.hpp"

#include <algorithm>

#include "surroundings.hpp"

namespace rakewright {
namespace {

void take_in(GroupHeights& all, const GroupHeights& one) {
    all.underside = std::min(all.underside, one.underside);
    all.top = std::max(all.top, one.top);
}

/// Where along its stair the top of a raked section's rail is as high as a level one that meets the post so high above
/// its foot: past the last nosing, or from the first one on if the post stands before that.
std::optional<double> set_back(const Job& job, const Solution& solution, std::size_t post, int raked,
                               double level_top) {
    const Section& section = job.sections[static_cast<std::size_t>(raked)];
    const int index = stair_of(job, section);
    const std::optional<StandingPost>& standing = solution.posts[post].standing;
    if (index < 0 || job.posts[post].stair.index != index || !standing) return std::nullopt;
    const StairShape& stair = solution.stairs[static_cast<std::size_t>(index)];
    const double height = task_of(job, section, {}).height();
    const double x = (standing->foot.z() + level_top - height - stair.line->height) / stair.line->slope;
    return standing->foot.x() < stair.nosings.front().x ? x : x - stair.nosings.back().x;
}

}  // namespace

std::optional<Arrivals> arrivals_at(const Job& job, const Solution& solution, std::size_t post) {
    const std::vector<RailAtPost>& rails = solution.posts[post].rails;
    if (rails.empty() || solution.posts[post].joint) return std::nullopt;
    const auto of_other = [&](const RailAtPost& rail) { return rail.section != rails.front().section; };
    if (std::none_of(rails.begin(), rails.end(), of_other)) return std::nullopt;
    Arrivals arrivals{rails.front().heights, {}, 0, {}};
    double lowest_top = rails.front().heights.top;
    std::optional<int> raked;
    std::optional<double> level_top;
    for (const RailAtPost& rail : rails) {
        if (rail.group == Group::lower) {
            if (!arrivals.lower) arrivals.lower = rail.heights;
            take_in(*arrivals.lower, rail.heights);
            continue;
        }
        take_in(arrivals.upper, rail.heights);
        lowest_top = std::min(lowest_top, rail.heights.top);
        if (solution.sections[static_cast<std::size_t>(rail.section)].raked())
            raked = rail.section;
        else
            level_top = rail.heights.top;
    }
    arrivals.apart = arrivals.upper.top - lowest_top;
    if (raked && level_top) arrivals.set_back = set_back(job, solution, post, *raked, *level_top);
    return arrivals;
}

}  // namespace rakewright
