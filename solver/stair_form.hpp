#pragma once

#include "form.hpp"

namespace rakewright {

/// Every key of a stair, of a floor, and of where either stands in plan.
void describe(Form& form, Stair& stair);
void describe(Form& form, Floor& floor);

}  // namespace rakewright
