#pragma once

#include "stick.hpp"

namespace rakewright {

/// How a saw is set, as slopes: `miter` of the swing from a square cut, `bevel` of the tilt from plumb. Signed as the
/// cut's own slopes are; a person is shown the magnitudes of their angles.
struct SawSetting {
    double miter = 0;
    double bevel = 0;
};

/// One end on the saw. `flat`: bottom face on the table, a side against the fence. `edge`: a side on the table, bottom
/// or top against the fence.
struct EndCut {
    SawSetting flat, edge;
    Corner long_point;
};

/// The settings for an end of a piece. The trace of the cut on the face that lies on the table gives the miter, its
/// tilt from there the bevel.
EndCut end_cut(const Piece& piece, End end);

}  // namespace rakewright
