#include "lower_gap.hpp"

#include "measure/compare.hpp"
#include "way.hpp"

namespace rakewright {
namespace {

/// The opening under the lower rail that is nearest to its limit, and what it must stay below.
struct Tightest {
    double sphere = 0, below = 1;
    int tread = -1;
};

/// None where no opening has a limit.
std::optional<Tightest> tightest_under_rail(const SectionTask& task, const Surroundings& around, const FacesMet& met,
                                            double gap) {
    const auto [line, levels, faces, joints, moved] = way_of(task, around, met, LowerGap{gap});
    std::optional<Tightest> tightest;
    if (!faces) return tightest;
    const int risers = around.treads() ? around.treads()->risers() : 0;
    const OpeningRoom room{
        line, levels, around.treads(), around.placed(), around.closed_string, nullptr, around.string_above};
    for (const Opening& opening : openings_under_rail(room, (*faces)[0], (*faces)[1])) {
        const bool over_string = opening.kind == Opening::Kind::over_string;
        const std::optional<double>& limit = task.limits.of(under_rail_at(opening.tread, risers, over_string));
        if (!limit) continue;
        const double below = *limit - task.lower_gap()->size;
        if (!tightest || opening.sphere - below > tightest->sphere - tightest->below)
            tightest = {opening.sphere, below, opening.tread.value_or(-1)};
    }
    return tightest;
}

}  // namespace

std::optional<double> largest_lower_gap(const SectionTask& task, const Surroundings& around, const FacesMet& faces,
                                        std::vector<Finding>& findings) {
    const Place place = task.lower_gap()->size.place, section = task.section.id.place;
    const auto tightest = [&](long long mark) {
        return tightest_under_rail(task, around, faces, at_mark(mark, task.tape));
    };
    const std::optional<Tightest> least = tightest(0);
    if (!least && around.closed_string && !around.string_above) {
        findings.push_back({Trouble::auto_over_unknown_string, place, {}, section});
        return std::nullopt;
    }
    if (!least) {
        findings.push_back({Trouble::auto_without_limit, place, {}, section});
        return std::nullopt;
    }
    if (!less_than(least->sphere, least->below)) {
        findings.push_back(
            {Trouble::no_lower_gap, place, {least->sphere, least->below, double(least->tread)}, section});
        return std::nullopt;
    }
    // The balls grow with the gap.
    long long enough = 0, too_much = nearest_mark(task.height(), task.tape) + 1;
    while (too_much - enough > 1) {
        const long long middle = enough + (too_much - enough) / 2;
        const std::optional<Tightest> at = tightest(middle);
        (at && less_than(at->sphere, at->below) ? enough : too_much) = middle;
    }
    const double gap = at_mark(enough, task.tape);
    const Tightest at = *tightest(enough);
    findings.push_back({Trouble::lower_gap_chosen, place, {gap, at.sphere, at.below, double(at.tread)}, {}});
    return gap;
}

}  // namespace rakewright
