#pragma once

#include "../form.hpp"
#include "rule.hpp"

namespace rakewright {

/// Every key of a rule set or of a local amendment, its meaning and range.
void describe(Form& form, RuleSet& set);

}  // namespace rakewright
