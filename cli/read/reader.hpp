#pragma once

#include "../../solver/rule/rule.hpp"
#include "text.hpp"

namespace rakewright {

/// A job, or why there is none: every mistake of its keys and values in one run.
struct ReadJob {
    std::optional<Job> job;
    std::vector<Refusal> refusals;
};

/// A rule set or a local amendment, or why there is none.
struct ReadRules {
    std::optional<RuleSet> set;
    std::vector<Refusal> refusals;
};

/// Reads a job file. What is refused first is the text (bytes, then YAML), then keys, values and names.
ReadJob read_job(const Source& source);

/// Reads a file of rules; `name` is what its rules are called by. An amendment stays what it is: `amended` applies it.
ReadRules read_rules(const Source& source, const std::string& name);

}  // namespace rakewright
