#pragma once

#include "form.hpp"

namespace rakewright {

void describe(Form& form, PostFixing& fixing);

}  // namespace rakewright
