#pragma once

#include "form.hpp"

namespace rakewright {

/// Every key of a section.
void describe(Form& form, Section& section);

}  // namespace rakewright
