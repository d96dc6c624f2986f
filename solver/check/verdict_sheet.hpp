#pragma once

#include "../sheet.hpp"
#include "range.hpp"

namespace rakewright {

/// What the job was judged to be, its checks, what could not be judged and what does not apply.
void describe(Sheet& sheet, const Verdicts& verdicts);

/// What each quantity may be for the job's rules to pass.
void describe(Sheet& sheet, const std::vector<PassingRange>& ranges);

const char* words(RulePlace place);
const char* words(Verdict verdict);
const char* words(Known known);
const char* words(NotApplied::Why why);
/// The unit of what a rule judges: `in`, `mm`, `deg`, or `number`.
const char* unit_of(const Rule& rule);

}  // namespace rakewright
