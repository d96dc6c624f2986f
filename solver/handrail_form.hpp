#pragma once

#include "form.hpp"

namespace rakewright {

/// Every key of a rail for the hand, and of a rail as it was found.
void describe(Form& form, Handrail& handrail);
void describe(Form& form, FoundRail& found);

}  // namespace rakewright
