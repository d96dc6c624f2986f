#pragma once

#include <algorithm>

#include "../../solver/check/judge.hpp"
#include "../support/catch.hpp"
#include "../support/measured.hpp"
#include "../support/rule_sets.hpp"

namespace rakewright::tests {

inline const RuleSet& rules(const std::string& name) {
    static std::vector<RuleSet> sets = [] {
        std::vector<RuleSet> read;
        for (const char* set : {"irc-2021", "ibc-2021", "nbc-9.8", "ncc-2022", "nz-d1-f4"})
            read.push_back(published_rules(set));
        return read;
    }();
    for (const RuleSet& set : sets)
        if (set.name == name) return set;
    throw std::runtime_error("no rules " + name);
}

inline Verdicts judged(const Job& job, const RuleSet& set) { return judge(job, measured(job), {&set, 1}); }

inline std::vector<Check> checks_of(const Verdicts& verdicts, const std::string& rule) {
    std::vector<Check> checks;
    for (const Check& check : verdicts.checks)
        if (check.rule->id.name == rule) checks.push_back(check);
    return checks;
}

inline Check only_check(const Verdicts& verdicts, const std::string& rule) {
    INFO(rule);
    const std::vector<Check> checks = checks_of(verdicts, rule);
    REQUIRE(checks.size() == 1);
    return checks[0];
}

template <class List>
bool names(const List& list, const std::string& rule) {
    return std::any_of(list.begin(), list.end(), [&](const auto& it) { return it.rule->id.name == rule; });
}

inline Job only_stair(const Stair& stair, Unit unit = Unit::inch) {
    Job job;
    job.units = unit;
    job.stairs = {stair};
    return job;
}

}  // namespace rakewright::tests
