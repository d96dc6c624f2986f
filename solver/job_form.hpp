#pragma once

#include "form.hpp"

namespace rakewright {

/// Every key of a job, its unit, range, default and meaning. Calls the verbs of `form` in an order in which whatever is
/// named is described before it is named: units, stairs, floors, posts, builds, sections.
void describe(Form& form, Job& job);

}  // namespace rakewright
