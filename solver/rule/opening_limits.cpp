#include "opening_limits.hpp"

#include <algorithm>

namespace rakewright {
namespace {

bool in_force(const Rule& rule, std::optional<double> drop, Unit unit) {
    if (!rule.only_if || !drop) return true;
    return std::all_of(rule.only_if->begin(), rule.only_if->end(), [&](const Condition& condition) {
        return condition.quantity != Quantity::drop ||
               margin_in(condition.bounds, in_unit(*drop, unit, rule.units)).allowed;
    });
}

void lower(std::optional<double>& limit, double to) {
    if (!limit || to < *limit) limit = to;
}

}  // namespace

UnderRail under_rail_at(std::optional<int> tread, int risers, bool over_string) {
    if (over_string) return UnderRail::stair;
    if (!tread || *tread == risers) return UnderRail::level;
    return *tread == 0 ? UnderRail::stair : UnderRail::triangle;
}

const std::optional<double>& OpeningLimits::of(UnderRail kind) const {
    switch (kind) {
        case UnderRail::triangle: return triangle;
        case UnderRail::stair: return stair;
        case UnderRail::level: return level;
    }
    return level;
}

OpeningLimits opening_limits(std::span<const RuleSet> sets, std::optional<double> drop, Unit unit) {
    OpeningLimits limits;
    for (const RuleSet& set : sets) {
        const bool has_triangle = std::any_of(set.rules.begin(), set.rules.end(), [](const Rule& rule) {
            return rule.judges == Quantity::under_rail_opening;
        });
        for (const Rule& rule : set.rules) {
            if (!rule.limit.most || !in_force(rule, drop, unit)) continue;
            const double limit = in_unit(*rule.limit.most, rule.units, unit);
            if (rule.judges == Quantity::under_rail_opening) lower(limits.triangle, limit);
            if (rule.judges != Quantity::picket_opening) continue;
            if (rule.where != RulePlace::level) lower(limits.stair, limit);
            if (rule.where != RulePlace::stair) lower(limits.level, limit);
            if (!has_triangle && rule.where != RulePlace::level) lower(limits.triangle, limit);
        }
    }
    return limits;
}

}  // namespace rakewright
