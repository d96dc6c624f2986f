#pragma once

#include "form.hpp"

namespace rakewright {

/// Describes what a crew asks for besides the cutting: what to order, what to paint, in what order to work.
void describe_crew(Form& form, Job& job);

}  // namespace rakewright
