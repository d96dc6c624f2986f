#pragma once

#include <string>

#include "../../solver/check/range.hpp"

namespace rakewright {

/// Every key of the job file in Markdown, made from the same descriptions that the reader uses.
std::string job_manual();

/// Every key of a file of rules in Markdown, every quantity that a rule can judge, and how a job is judged.
std::string rule_manual();

/// Every key of the JSON results in Markdown, made from the same descriptions that the writer uses, for the results
/// that this job has.
std::string results_manual(const Job& job, const Solution& solution, const Verdicts& verdicts,
                           const std::vector<PassingRange>& ranges);

}  // namespace rakewright
