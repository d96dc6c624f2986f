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

/// How far a saw goes: the slopes of its largest swing and its largest tilt, infinite where there is no limit, and how
/// thick a piece it cuts through with the blade plumb.
struct SawLimits {
    double miter = 0;
    double bevel = 0;
    std::optional<double> depth_of_cut;
};

/// How a piece lies to be cut: as it lies flat or on edge against the fence, or held square to the fence against a
/// block, where a square cut is a quarter turn of the blade; or no way.
enum class LaidOn { flat, edge, flat_against_block, edge_against_block, none };

inline bool held_against_block(LaidOn laid) {
    return laid == LaidOn::flat_against_block || laid == LaidOn::edge_against_block;
}

/// How an end is cut on a saw, and what the saw is set to then.
struct SawReach {
    LaidOn laid = LaidOn::none;
    SawSetting setting;
};

/// The first way in which the saw reaches a cut: flat, else on edge, else held against a square block, flat or on edge,
/// with the complement of the miter. The piece has to be no thicker, as it lies, than the blade reaches over the table:
/// depth of cut * cos(bevel), as a blade does that tilts about a line in the table. Settings equal to a limit are in
/// reach. How long the blade's travel is across the table is not judged.
SawReach saw_reach(const EndCut& cut, const CrossSection& section, const SawLimits& limits);

}  // namespace rakewright
