#pragma once

#include <vector>

#include "../space/saw.hpp"
#include "../stair/stair.hpp"

namespace rakewright {

/// What a stick of a handrail is.
enum class HandrailPart { rail, top_extension, top_return, bottom_return };

/// A stick of a handrail as it is cut. A round one is given as the square about it; one that is known by its perimeter
/// alone, as a square of its width.
struct HandrailPiece {
    HandrailPart part = HandrailPart::rail;
    Stick stick;
    EndCut from_end, to_end;
    SetOut measure;
};

/// A handrail, solved: its slope, and its sticks in the order in which a hand meets them walking up, each from its
/// lower or nearer end.
struct HandrailResult {
    double slope = 0;
    std::vector<HandrailPiece> pieces;
};

/// The sticks of a handrail over its stair's nosing line. The rail's centre line runs from plumb over the first nosing,
/// less the bottom extension, to plumb over the last; a top extension goes on level from there, the joint cut to half
/// the rake on both. A return to the wall is level and square to the rail in plan, its middle line where the extension
/// ends, and reaches the wall; its joint is cut to half the turn on both. What ends free ends square. Adds to
/// `findings` what is wrong; empty then.
HandrailResult handrail_of(const Handrail& handrail, const StairShape& stair, std::vector<Finding>& findings);

const char* words(HandrailPart part);

/// A round profile, by its diameter or by its girth.
bool is_round(const Profile& profile);

/// A point of a plane cut on the girth of a round stick: round it from the line on its top, seen along the stick from
/// its from end, to the left positive; along it past the cut at the centre line, longer positive.
struct RimPoint {
    double around = 0;
    double along = 0;
};

inline constexpr int rim_parts = 48;

/// Where a round piece is cut at this end, over one turn in equal parts: from the line underneath, up by the right
/// side, over the top and down by the left. Empty where the end is square.
std::vector<RimPoint> rim_of(const Piece& piece, End end);

/// The side of the square about a profile, or its width and depth.
CrossSection section_of(const Profile& profile);

}  // namespace rakewright
