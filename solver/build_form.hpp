#pragma once

#include "form.hpp"

namespace rakewright {

/// Every key of a build: its members, pickets, brackets and screws.
void describe(Form& form, Build& build);

/// The key `lower_gap` of a build or section.
void describe_lower_gap(Form& form, std::optional<LowerGap>& gap, const char* about);

}  // namespace rakewright
