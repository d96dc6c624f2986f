#pragma once

#include <span>

#include "fact.hpp"

namespace rakewright {

enum class Verdict { pass, fail, unsure };

/// One limit held against one figure. `value`, `limit` and `margin` are in the document's own unit (angles in degrees)
/// and are compared in it; `known` says how the value is known. `assumed` says what was taken for granted.
struct Check {
    const Rule* rule = nullptr;
    std::string where;
    double value = 0;
    Known known = Known::exactly;
    double margin = 0;
    Verdict verdict = Verdict::unsure;
    std::vector<std::string> assumed;
    double in_job_unit = 0;
};

/// A rule that could not be judged of something: what is missing for it.
struct NotJudged {
    const Rule* rule = nullptr;
    std::string where;
    std::string missing;
};

/// A rule that does not apply to something: which of its conditions does not hold there.
struct NotApplied {
    const Rule* rule = nullptr;
    std::string where;
    Quantity because = Quantity::drop;
};

struct Verdicts {
    std::vector<Check> checks;  // worst first: what fails, what is unsure, what passes, each by margin against limit
    std::vector<NotJudged> not_judged;
    std::vector<NotApplied> not_applied;

    bool any_fails() const;
};

/// Judges a job that was solved and whose openings were measured by rule sets, which must outlive the verdicts. A rule
/// that passes everywhere in a subject is reported where its margin is least, one that fails at every place where it
/// does. Where no `drop` is given, a guard is taken to be required: the least fall for which any rule of the set asks
/// is taken, and said to be.
Verdicts judge(const Job& job, const Solution& solution, std::span<const RuleSet> sets);

}  // namespace rakewright
