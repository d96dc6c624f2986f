#include "bracket_list.hpp"

#include <map>

namespace rakewright {
namespace {

/// What makes a bracket, as numbers: kinds are told apart by them.
std::vector<double> made_of(const BracketBuild& build, double over_square) {
    std::vector<double> made{std::round(degrees(angle_of(over_square)) * 10),
                             build.width,
                             build.thickness,
                             build.post_leg,
                             build.rail_leg,
                             build.inside_radius ? build.inside_radius->value : -1,
                             build.inside_radius ? build.k_factor.value : 0,
                             static_cast<double>(build.post_hole.size())};
    for (const auto* holes : {&build.post_hole, &build.rail_hole})
        made.insert(made.end(), holes->begin(), holes->end());
    return made;
}

}  // namespace

const BracketBuild& bracket_build_of(const Job& job, std::size_t section) {
    return *job.builds[static_cast<std::size_t>(job.sections[section].build.index)].bracket;
}

std::vector<BracketKind> bracket_list(const Job& job, const Solution& solution) {
    std::vector<BracketKind> kinds;
    std::map<std::vector<double>, std::size_t> known;
    for (std::size_t s = 0; s < solution.sections.size(); ++s) {
        const std::vector<Bracket>& brackets = solution.sections[s].brackets;
        for (std::size_t b = 0; b < brackets.size(); ++b) {
            const std::vector<double> made = made_of(bracket_build_of(job, s), brackets[b].over_square);
            const auto [at, is_new] = known.try_emplace(made, kinds.size());
            if (is_new) kinds.emplace_back();
            kinds[at->second].quantity += job.sections[s].count;
            kinds[at->second].uses.push_back({s, b});
        }
    }
    return kinds;
}

}  // namespace rakewright
