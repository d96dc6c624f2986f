#pragma once

#include "../picket/turned.hpp"
#include "circle.hpp"

namespace rakewright {

/// Where a turned picket stands beside an opening: where the face of its blocks bounds it, the height of the lower end
/// of its turning, and which way along the rail the picket lies from there, +1 or -1.
struct Beside {
    double face = 0;
    double turning = 0;
    double behind = 1;
};

/// An outline that the face of a picket's blocks bounds, let into the picket where it is turned: every edge that lies
/// on that face follows the silhouette.
Outline hollowed(const Outline& outline, const Silhouette& picket, const Beside& beside);

}  // namespace rakewright
