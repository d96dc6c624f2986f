#pragma once

#include "../solver/rule/rule.hpp"
#include "status.hpp"

namespace rakewright {

/// Where to read what the published sets among these, or under them, ask for and no rule of them judges.
std::string words_of_unjudged(const std::vector<RuleSet>& sets);

/// The names of the rule sets that the program carries.
std::vector<std::string> rule_set_names();

/// A rule set that the program carries; none by another name.
std::optional<RuleSet> rule_set_named(const std::string& name);

/// The rule sets that a job names, amendments applied. A name that is none of the program's own is a file's, relative
/// to `folder`. Complains of the first that will not do, at its place in the job where it is named.
struct LoadedRules {
    Status status = Status::done;
    std::vector<RuleSet> sets;
};
LoadedRules load_rules(const std::vector<Id>& names, const Source& job, const std::string& folder);

/// The same of names on the command line: paths as they stand there.
LoadedRules load_rules(const std::vector<std::string>& names);

/// A rule set of the program, and what it is of: its document and edition.
struct ListedRules {
    std::string name, document;
};
std::vector<ListedRules> list_of_rule_sets();

/// A rule set as its file says it; none by another name.
const std::string* text_of_rule_set(const std::string& name);

}  // namespace rakewright
