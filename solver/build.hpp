#pragma once

#include "finding.hpp"

namespace rakewright {

/// Adds what cannot be built in a build by itself: a hole beyond its bracket's leg, a plough deeper than its member;
/// and keys in it that have no effect.
void check(const Build& build, std::vector<Finding>& findings);

}  // namespace rakewright
