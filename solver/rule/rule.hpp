#pragma once

#include <span>
#include <vector>

#include "../job.hpp"

// The published limits as data: what a rule set file says. Every figure comes from there; nothing here knows a code.

namespace rakewright {

/// What a rule judges, each measured as `quantities` says.
enum class Quantity {
    rise,
    rise_variation,
    rise_step,
    run,
    run_variation,
    run_step,
    two_rises_and_run,
    nosing_projection,
    nosing_variation,
    rake,
    flight_rise,
    risers,
    open_riser,
    open_riser_height,
    clear_width,
    headroom,
    tread_slope,
    drop,
    guard_height,
    guard_top_height,
    handrail_height,
    handrail_sides,
    picket_opening,
    guard_opening_above,
    under_rail_opening,
    grip_diameter,
    grip_perimeter,
    grip_width,
    grip_least,
    recess_start,
    recess_depth,
    recess_reach,
    recess_held,
    recess_end,
    width_above_recess,
    wall_clearance,
    handrail_projection,
    extension_top,
    extension_bottom_treads,
    side_gap,
};

enum class Dimension { length, angle, number };

/// What has a quantity.
enum class SubjectKind { stair, guard, handrail };

/// A quantity's word in a rule set, what has it, what its figures are, how it is measured, and which keys of a job tell
/// it.
struct QuantityMeaning {
    Quantity quantity;
    const char* word;
    SubjectKind of;
    Dimension dimension;
    const char* about;
    const char* told_by;
};
std::span<const QuantityMeaning> quantities();
const QuantityMeaning& meaning_of(Quantity quantity);

/// A figure of a quantity in another unit: lengths change, angles and numbers do not.
double in_unit(double figure, Quantity quantity, Unit from, Unit to);

/// The figures that a rule allows: from `least` to `most`, each itself allowed unless it is excluded. In the unit of
/// the document; angles in degrees.
struct Bounds {
    std::optional<double> least, most;
    bool least_excluded = false, most_excluded = false;
};

/// How a figure lies to bounds: how far inside the nearer one (outside: negative), and whether it is allowed. Figures
/// that differ by rounding are equal.
struct Margin {
    double size = 0;
    bool allowed = false;
};
Margin margin_in(const Bounds& bounds, double value);

/// A quantity that must lie in bounds for a rule to apply.
struct Condition {
    Quantity quantity = Quantity::drop;
    Bounds bounds;
};

/// Where a rule applies: over the steps of a stair, or over a floor or landing.
enum class RulePlace { anywhere, stair, level };

/// Where the figure of a rule was read: in the document's own text, on a page of its government, in a secondary source,
/// nowhere (from memory), or reckoned from other figures of it.
enum class FigureSource { read, government, secondary, memory, derived };

struct Rule {
    Id id;
    std::string set;  // the rule set or amendment that it comes from
    Unit units = Unit::inch;
    std::string clause;
    std::optional<Quantity> judges;
    Bounds limit;
    std::optional<RulePlace> where;
    std::optional<std::vector<Condition>> only_if;
    std::optional<FigureSource> source;  // none: from memory
    std::string measured, note;
};

/// The rules of one document and edition, or what a local amendment changes in one: then `amends` names it, and its
/// rules say only what they change, or are new.
struct RuleSet {
    std::string name;
    std::string amends;
    std::string document, edition, place;
    Unit units = Unit::inch;
    std::vector<Rule> rules;
};

/// A rule set as an amendment leaves it: rules of the same name keep what the amendment does not give, others are
/// added. What came from the amendment carries its name. Both must be in one unit.
RuleSet amended(const RuleSet& base, const RuleSet& amendment);

/// A rule that allows nothing, since its least is more than its most; none if there is none.
const Rule* crossed_rule(const RuleSet& set);

/// A new rule of an amendment that lacks its clause, its quantity or a limit; none if all are whole.
const Rule* incomplete_rule(const RuleSet& set);

/// Where the figure of a rule was read.
const char* source_words(const Rule& rule);

}  // namespace rakewright
