#pragma once

#include <string>

#include "../../solver/check/verdict_sheet.hpp"
#include "../../solver/solution_sheet.hpp"

namespace rakewright {

/// The results of a job as JSON (RFC 8259), keys in the order of the public interface, each number as the shortest text
/// that reads back as the same double. `notes` are sentences that somebody should read.
std::string json(const Job& job, const Solution& solution, const Verdicts& verdicts);

/// The verdicts alone, or the ranges that pass.
std::string json(const Verdicts& verdicts);
std::string json(const std::vector<PassingRange>& ranges);

}  // namespace rakewright
