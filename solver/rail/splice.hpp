#pragma once

#include "member.hpp"

namespace rakewright {

/// A place along the line at which members may be spliced.
struct SplicePlace {
    double along = 0;
    int picket = 0, foot = 0;
};

/// The fewest splices, each at the place nearest to a whole division of the member, that leave no piece longer tip to
/// tip than `longest`; without places at the divisions themselves. Each joint is cut plumb and square to the rail in
/// plan, so that under a picket it lies within the picket's mark on every face. None where no such places are found.
std::optional<std::vector<Splice>> splices_in(const Member& member, const RailLine& line,
                                              const std::vector<SplicePlace>& places, double longest);

/// One piece of a member as it is cut.
struct MemberPiece {
    Piece piece;
    Copes copes{};
    double overall = 0;
};

/// The pieces of a member from its from end: the member itself where it is not spliced.
std::vector<MemberPiece> pieces_of(const Member& member);

}  // namespace rakewright
