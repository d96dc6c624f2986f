#include "rule.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "../measure/compare.hpp"

namespace rakewright {

std::span<const QuantityMeaning> quantities() {
    using Q = Quantity;
    using S = SubjectKind;
    using D = Dimension;
    static constexpr std::array all{
        QuantityMeaning{Q::rise, "rise", S::stair, D::length, "of each riser, plumb", "`stairs`"},
        QuantityMeaning{Q::rise_variation, "rise_variation", S::stair, D::length, "the tallest riser less the shortest",
                        "a stair in `stairs` of two risers or more"},
        QuantityMeaning{Q::rise_step, "rise_step", S::stair, D::length, "between neighbouring risers",
                        "a stair in `stairs` of two risers or more"},
        QuantityMeaning{Q::run, "run", S::stair, D::length, "of each tread, level from nosing to nosing",
                        "a stair in `stairs` of two risers or more"},
        QuantityMeaning{Q::run_variation, "run_variation", S::stair, D::length, "the longest run less the shortest",
                        "a stair in `stairs` of three risers or more"},
        QuantityMeaning{Q::run_step, "run_step", S::stair, D::length, "between neighbouring runs",
                        "a stair in `stairs` of three risers or more"},
        QuantityMeaning{Q::two_rises_and_run, "two_rises_and_run", S::stair, D::length,
                        "twice a riser and the run above it", "a stair in `stairs` of two risers or more"},
        QuantityMeaning{Q::nosing_projection, "nosing_projection", S::stair, D::length, "past the riser face, level",
                        "`nosing` of the stair"},
        QuantityMeaning{Q::nosing_variation, "nosing_variation", S::stair, D::length,
                        "the longest projection less the shortest", "`nosing` of the stair"},
        QuantityMeaning{Q::rake, "rake", S::stair, D::angle, "of the nosing line over level",
                        "a stair in `stairs` of two risers or more"},
        QuantityMeaning{Q::flight_rise, "flight_rise", S::stair, D::length,
                        "plumb, from the floor at the foot to the landing", "`stairs`"},
        QuantityMeaning{Q::risers, "risers", S::stair, D::number, "in the flight", "`stairs`"},
        QuantityMeaning{Q::open_riser, "open_riser", S::stair, D::length,
                        "the largest ball that passes through an open riser",
                        "`riser: open` and `tread_thickness` of the stair"},
        QuantityMeaning{Q::open_riser_height, "open_riser_height", S::stair, D::length,
                        "plumb, from the ground under it up to the top of an open riser",
                        "`riser: open` and `tread_thickness` of the stair"},
        QuantityMeaning{Q::clear_width, "clear_width", S::stair, D::length, "level, across the way",
                        "`clear_width` of the stair"},
        QuantityMeaning{Q::headroom, "headroom", S::stair, D::length, "plumb, over the nosing line",
                        "`headroom` of the stair"},
        QuantityMeaning{Q::tread_slope, "tread_slope", S::stair, D::number, "rise in one of the treads",
                        "`wash` of the stair"},
        QuantityMeaning{Q::drop, "drop", S::stair, D::length, "plumb, the greatest fall beside the walking surface",
                        "`drop` of the stair, section or rail `as_found`"},
        QuantityMeaning{Q::guard_height, "guard_height", S::guard, D::length,
                        "plumb, from nosing line, nosing or floor to the top",
                        "`sections`, or `heights` (over a floor `height`) of a rail `as_found`"},
        QuantityMeaning{Q::guard_top_height, "guard_top_height", S::guard, D::length,
                        "plumb, from nosing line or nosing to the top of a guard that is the handrail",
                        "`sections`, or `heights` of a rail `as_found`"},
        QuantityMeaning{Q::handrail_height, "handrail_height", S::handrail, D::length,
                        "plumb, from nosing line or nosing to the top",
                        "`handrails`, `sections`, or `heights` of a rail `as_found`"},
        QuantityMeaning{Q::handrail_sides, "handrail_sides", S::stair, D::number,
                        "sides of the flight that carry a handrail",
                        "`handrails` at the stair, or a rail `as_found` there"},
        QuantityMeaning{Q::picket_opening, "picket_opening", S::guard, D::length,
                        "the largest ball between pickets, at a post, under a level rail or beyond the flight",
                        "pickets in a section's build, or `widest_gap` or `balls` of a rail `as_found`"},
        QuantityMeaning{Q::guard_opening_above, "guard_opening_above", S::guard, D::length,
                        "the largest ball in the guard's uppermost part",
                        "pickets in a section's build, or `widest_gap` or `balls` of a rail `as_found`"},
        QuantityMeaning{
            Q::under_rail_opening, "under_rail_opening", S::guard, D::length,
            "the largest ball between riser, tread and lower rail",
            "a `lower` group in a section's build, or `balls`, each with its `tread`, of a rail `as_found`"},
        QuantityMeaning{Q::grip_diameter, "grip_diameter", S::handrail, D::length, "of a round handrail, outside",
                        "`profile` of a handrail"},
        QuantityMeaning{Q::grip_perimeter, "grip_perimeter", S::handrail, D::length,
                        "round the section of a handrail that is not round", "`profile` of a handrail"},
        QuantityMeaning{Q::grip_width, "grip_width", S::handrail, D::length,
                        "the largest dimension across a section that is not round", "`profile` of a handrail"},
        QuantityMeaning{Q::grip_least, "grip_least", S::handrail, D::length,
                        "the least dimension of a section that is not round", "`profile` of a handrail"},
        QuantityMeaning{Q::recess_start, "recess_start", S::handrail, D::length,
                        "from the top of the rail down to where its finger recesses start",
                        "`recess` in the `profile` of a handrail"},
        QuantityMeaning{Q::recess_depth, "recess_depth", S::handrail, D::length, "of the finger recesses, level",
                        "`recess` in the `profile` of a handrail"},
        QuantityMeaning{Q::recess_reach, "recess_reach", S::handrail, D::length,
                        "from the widest part of the rail down to where the recesses have their depth",
                        "`recess` in the `profile` of a handrail"},
        QuantityMeaning{Q::recess_held, "recess_held", S::handrail, D::length,
                        "over which the recesses keep their depth, plumb", "`recess` in the `profile` of a handrail"},
        QuantityMeaning{Q::recess_end, "recess_end", S::handrail, D::length,
                        "from the top of the rail down to where the recesses lose their depth",
                        "`recess` in the `profile` of a handrail"},
        QuantityMeaning{Q::width_above_recess, "width_above_recess", S::handrail, D::length,
                        "of the rail over its finger recesses, level", "`recess` in the `profile` of a handrail"},
        QuantityMeaning{Q::wall_clearance, "wall_clearance", S::handrail, D::length,
                        "level, from the rail to the wall beside it", "`clearance` of a handrail"},
        QuantityMeaning{Q::handrail_projection, "handrail_projection", S::handrail, D::length,
                        "level, from the wall to the far side of the rail", "`clearance` and `profile` of a handrail"},
        QuantityMeaning{Q::extension_top, "extension_top", S::handrail, D::length,
                        "level, of the handrail beyond the last nosing", "`top` in the `extend` of a handrail"},
        QuantityMeaning{Q::extension_bottom_treads, "extension_bottom_treads", S::handrail, D::number,
                        "of the handrail before the first nosing, in treads", "`bottom` in the `extend` of a handrail"},
        QuantityMeaning{Q::side_gap, "side_gap", S::guard, D::length, "level, from the walking surface to the guard",
                        "`side_gap` of a section"},
    };
    return all;
}

const QuantityMeaning& meaning_of(Quantity quantity) { return quantities()[static_cast<std::size_t>(quantity)]; }

double in_unit(double figure, Quantity quantity, Unit from, Unit to) {
    return meaning_of(quantity).dimension == Dimension::length ? in_unit(figure, from, to) : figure;
}

Margin margin_in(const Bounds& bounds, double value) {
    Margin result{INFINITY, true};
    const auto judge = [&](const std::optional<double>& limit, bool excluded, double sign) {
        if (!limit) return;
        const bool equal = same(value, *limit);
        const double margin = equal ? 0 : sign * (*limit - value);
        result.size = std::min(result.size, margin);
        if (margin < 0 || (equal && excluded)) result.allowed = false;
    };
    judge(bounds.least, bounds.least_excluded, -1);
    judge(bounds.most, bounds.most_excluded, 1);
    return result;
}

RuleSet amended(const RuleSet& base, const RuleSet& amendment) {
    RuleSet whole = base;
    whole.name = amendment.name;
    whole.amends = amendment.amends;
    whole.document = base.document + ", " + base.edition + ", as amended by " + amendment.document;
    whole.edition = amendment.edition;
    whole.place = amendment.place;
    for (const Rule& change : amendment.rules) {
        const auto found = std::find_if(whole.rules.begin(), whole.rules.end(),
                                        [&](const Rule& rule) { return rule.id.name == change.id.name; });
        if (found == whole.rules.end()) {
            whole.rules.push_back(change);
            continue;
        }
        Rule& rule = *found;
        rule.id = change.id;
        rule.set = change.set;
        if (!change.clause.empty()) rule.clause = change.clause;
        if (change.judges) rule.judges = change.judges;
        // A new figure has the source that it says, and none of the old one's.
        if (change.limit.least || change.limit.most) rule.source = change.source;
        if (change.limit.least) {
            rule.limit.least = change.limit.least;
            rule.limit.least_excluded = change.limit.least_excluded;
        }
        if (change.limit.most) {
            rule.limit.most = change.limit.most;
            rule.limit.most_excluded = change.limit.most_excluded;
        }
        if (change.where) rule.where = change.where;
        if (change.only_if) rule.only_if = change.only_if;
        if (change.source) rule.source = change.source;
        if (!change.measured.empty()) rule.measured = change.measured;
        if (!change.note.empty()) rule.note = change.note;
    }
    return whole;
}

const Rule* crossed_rule(const RuleSet& set) {
    const auto found = std::find_if(set.rules.begin(), set.rules.end(), [](const Rule& rule) {
        const Bounds& limit = rule.limit;
        if (!limit.least || !limit.most) return false;
        return *limit.least > *limit.most ||
               (*limit.least == *limit.most && (limit.least_excluded || limit.most_excluded));
    });
    return found == set.rules.end() ? nullptr : &*found;
}

const Rule* incomplete_rule(const RuleSet& set) {
    const auto found = std::find_if(set.rules.begin(), set.rules.end(), [](const Rule& rule) {
        return rule.clause.empty() || !rule.judges || (!rule.limit.least && !rule.limit.most);
    });
    return found == set.rules.end() ? nullptr : &*found;
}

const char* source_words(const Rule& rule) {
    switch (rule.source.value_or(FigureSource::memory)) {
        case FigureSource::read: return "read in the document";
        case FigureSource::government: return "read on a government page";
        case FigureSource::secondary: return "from a secondary source";
        case FigureSource::memory: return "from memory";
        case FigureSource::derived: return "derived";
    }
    return "";
}

}  // namespace rakewright
