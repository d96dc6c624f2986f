#pragma once

#include <array>
#include <cmath>
#include <optional>

#include "frame.hpp"

namespace rakewright {

/// A place on a stick's section, from the centre line, as seen looking from its from end to its to end.
struct Spot {
    double left = 0;
    double top = 0;
};

/// The section of a stick: `width` to left and right, `depth` from top to bottom.
struct CrossSection {
    double width = 0;
    double depth = 0;
};

/// A plane as a stick sees it: how far along the stick, from its frame's origin, it lies over each spot of the section.
struct Slant {
    double at = 0;
    double per_left = 0;
    double per_top = 0;
};

/// How far along the stick the cut lies over a spot.
inline double reach(const Slant& slant, Spot spot = {}) {
    return slant.at + slant.per_left * spot.left + slant.per_top * spot.top;
}

/// A cut may not run closer along the stick than this slope: 40 for 1, or 1.4 degrees off the stick.
inline constexpr double steepest_cut = 40;

/// The plane as the stick sees it; none where it runs so nearly along the stick that its slope is over `steepest_cut`.
std::optional<Slant> cut(const Frame& frame, const Plane& plane);

enum class End { from, to };

inline constexpr std::array<End, 2> both_ends{End::from, End::to};

/// The end's place in whatever is kept for both: from first.
constexpr std::size_t index_of(End end) { return end == End::from ? 0 : 1; }

/// What lies on the saw: a section and its two cuts, with no place in the world.
struct Piece {
    CrossSection section;
    Slant from, to;
};

/// A piece in its place.
struct Stick {
    Frame frame;
    Piece piece;
};

/// An edge, corner or none of them: left +1 or right -1, top +1 or bottom -1, or 0.
struct Corner {
    int left = 0;
    int top = 0;
    friend bool operator==(const Corner&, const Corner&) = default;
};

/// Where on the section a corner, the middle of an edge's face, or (0, 0) the centre line is.
Spot spot_of(const Corner& corner, const CrossSection& section);

/// Length along the stick over a spot; the centre line if none is named.
double length(const Piece& piece, Spot spot = {});

/// Length along the middle of the face on that side: the middle of the top for {0, 1}.
double edge_length(const Piece& piece, const Corner& edge);

/// From tip to tip along the axis: the shortest square-ended stick that the piece comes from.
double overall(const Piece& piece);

/// The shortest of the four arrises. Negative where the two cuts cross inside the stick: then there is no such piece.
double shortest_arris(const Piece& piece);

/// The edge or corner that the cut at this end leaves longest; {0, 0} where the cut is square.
Corner long_point(const Piece& piece, End end);

/// How an end lies at the edge along which a piece is set out.
enum class Reaching { square, long_there, short_there };

/// What to set out on the stick: an edge on which the from end is longest (the bottom if both ends are square; the to
/// end's if only the from end is), how each end lies there, and the length along it.
struct SetOut {
    Corner edge;
    Reaching from = Reaching::square;
    Reaching to = Reaching::square;
    double length = 0;
};
SetOut set_out(const Piece& piece);

/// Lengths and slopes of cuts that differ by no more than this make no two pieces.
inline constexpr double alike_within = 1e-9;
inline bool alike(double a, double b) { return std::fabs(a - b) <= alike_within; }

/// Whether two sections are one, turned by a quarter or not.
bool same_section(const CrossSection& a, const CrossSection& b);

/// Whether two pieces come off the saw alike: the same, or one is the other turned over or end for end (never
/// mirrored).
bool same_piece(const Piece& a, const Piece& b);

/// Where a point along the stick over a spot is in the world.
inline Vector point_on(const Frame& frame, double along, Spot spot) {
    return frame.origin + along * frame.along + spot.left * frame.left + spot.top * frame.top;
}

}  // namespace rakewright
