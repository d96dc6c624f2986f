#pragma once

#include "form.hpp"

namespace rakewright {

/// Every key of a post.
void describe(Form& form, Post& post);

}  // namespace rakewright
