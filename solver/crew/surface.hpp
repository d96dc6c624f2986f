#pragma once

#include "../picket/turned.hpp"
#include "../rail/cope.hpp"

namespace rakewright {

/// The skin of a stick, in the square of its unit: what runs along it, and its two ends.
struct Surface {
    double sides = 0, ends = 0;
    double all() const { return sides + ends; }
};

/// Of a stick that planes end: each side a figure of two arrises and two straight ends, its width times their mean;
/// each end width * depth * sqrt(1 + per_left^2 + per_top^2). An end that is coped is that part of the post's surface
/// which the section cuts out, and the sides are bounded by its outline: both summed by Gauss, to better than a millionth
/// but where an arris barely touches the post. What is grooved, bored or let in is not looked at.
Surface surface_of(const Piece& piece, const Copes& copes = {});

/// Of a turned picket as trimmed: what is left of its blocks, the shoulders of the blocks about the turning, the
/// mantles of the frusta between them; its ends as a stick's.
Surface turned_surface(const PicketBuild& bought, const Piece& piece, const Trim& trim);

/// Of a round stick as thick as its section is wide, ended by planes: a mantle and two ellipses.
Surface round_surface(const Piece& piece);

/// Of a stick of any section, known by its perimeter: its ends as the piece's own, which is about it.
Surface profile_surface(const Piece& piece, double perimeter);

}  // namespace rakewright
