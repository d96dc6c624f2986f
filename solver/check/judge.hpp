#pragma once

#include <span>

#include "fact.hpp"

namespace rakewright {

enum class Verdict { pass, fail, unsure };

/// One limit held against one figure of a subject, at one of its places or at several that are alike. `value`, `limit`
/// and `margin` are in the document's own unit (angles in degrees) and are compared in it; `known` says how the value
/// is known: the margin is then a bound, and none where the verdict is unsure. `assumed` says what was taken for
/// granted.
struct Check {
    const Rule* rule = nullptr;
    std::string subject;
    std::vector<std::string> places;  // none: the subject as a whole
    double value = 0;
    Known known = Known::exactly;
    std::optional<double> margin;
    Verdict verdict = Verdict::unsure;
    std::vector<std::string> assumed;
    double in_job_unit = 0;

    std::string where() const;  // the subject and all places
};

/// A rule that could not be judged of something: what is missing for it, and whether that is what it judges, and not
/// what decides whether it applies.
struct NotJudged {
    const Rule* rule = nullptr;
    std::string where;
    std::string missing;
    bool judges_missing = true;
};

/// A rule that does not apply to something, or to nothing in the job: which of its conditions does not hold there; or
/// that what it judges does not occur; or not where it applies, over steps or over a floor.
struct NotApplied {
    enum class Why { condition, none_there, elsewhere };
    const Rule* rule = nullptr;
    std::string where;
    Quantity because = Quantity::drop;
    Why why = Why::condition;
};

/// A stair whose fall asks for a guard by a rule, and beside which the job has none.
struct Unguarded {
    const Rule* rule = nullptr;
    std::string where;
    double drop = 0;  // in the document's unit
};

struct Verdicts {
    std::vector<Unguarded> unguarded;
    std::vector<Check> checks;  // what fails, what is unsure, what passes; each in the order of `judge`
    std::vector<NotJudged> not_judged;
    std::vector<NotApplied> not_applied;

    bool any_fails() const;
};

/// Judges a job that was solved and whose openings were measured by rule sets, which must outlive the verdicts. A rule
/// that passes everywhere in a subject is reported where its margin is least, one that fails at every place where it
/// does. Where no `drop` is given, a guard is taken to be required: the least fall for which any rule of the set asks
/// is taken, and said to be. No rule vanishes: one that met nothing is among those that are not judged or do not apply.
///
/// Of the checks that fail those come first whose margin is only a bound, since a ball passed; then, as in the others,
/// those come first whose margin is the least part of their limit, of the larger one if there are two; where that is 0,
/// of the figure. So the order is the same in any unit.
Verdicts judge(const Job& job, const Solution& solution, std::span<const RuleSet> sets);

}  // namespace rakewright
