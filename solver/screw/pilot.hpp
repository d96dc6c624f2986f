#pragma once

#include "screw.hpp"

namespace rakewright {

/// Why a screw wants a pilot hole: it is near an end or an edge, in end grain, in hardwood, or thick.
enum class PilotFor { nothing, end, edge, end_grain, hardwood, thick };

/// A pilot hole for a screw in one piece of wood: why, of what diameter, 0 where none is wanted; and whether even then
/// the screw is nearer an end or an edge than it may be.
struct Pilot {
    PilotFor why = PilotFor::nothing;
    double hole = 0;
    bool near_end = false, near_edge = false;
};

/// The diameter over which a screw in softwood wants a pilot hole wherever it is: 6 mm, in the job's unit (EN 1995-1-1
/// 10.4.5, from memory).
double thick_screw(Unit unit);

/// Whether a screw of that diameter wants a pilot hole in a piece in which it has this room: nearer an end or edge than
/// the rule's distances; in end grain (common practice); in hardwood, or thick (EN 1995-1-1 10.4.5, from memory).
Pilot pilot_for(const ScrewBuild& screws, Unit unit, const SplitRoom& room, double diameter, bool fastened);

}  // namespace rakewright
