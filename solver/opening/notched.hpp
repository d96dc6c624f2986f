#pragma once

#include "opening.hpp"

namespace rakewright {

/// An outline without what stands in one lower corner of it: all that is under `up_to` and behind `face`, a side whose
/// other side is wood.
struct Notch {
    Side2 face;
    double up_to = 0;
};
Outline notched(const Outline& outline, const Notch& notch);

}  // namespace rakewright
