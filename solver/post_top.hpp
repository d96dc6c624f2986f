#pragma once

#include "solution.hpp"

namespace rakewright {

/// Adds to each post what rails that run over it leave of it. A post that has no place stands plumb; nothing is known of
/// one whose size is not, or where what it stands on is not.
void cut_tops(const Job& job, Solution& solution);

}  // namespace rakewright
