#pragma once

#include "sawing.hpp"
#include "sheet.hpp"

namespace rakewright {

/// What the job's saw does at both ends of a piece.
struct SawAtEnds {
    std::optional<SawReach> from, to;
};
SawAtEnds saw_at(const std::optional<SawLimits>& saw, const Piece& piece, const Copes& copes = {});

void describe_reach(Sheet& sheet, const char* key, const std::optional<SawReach>& reach);

/// The lengths of a stick; of a coped one to its copes.
struct StickLengths {
    double length = 0, top_edge = 0, bottom_edge = 0, overall = 0;
};
StickLengths lengths_of(const Piece& piece);

/// A piece as it comes off the saw.
void describe(Sheet& sheet, const Piece& piece, const StickLengths& lengths, const EndCut& from_end,
              const EndCut& to_end, const SetOut& measure, const Copes& copes, const std::optional<SawLimits>& saw);

}  // namespace rakewright
