#pragma once

#include <vector>

#include "../space/stick.hpp"
#include "post.hpp"

namespace rakewright {

/// What of a number over a section: at its centre, and how it changes over it.
struct OverSection {
    double at_centre = 0;
    double left = 0, top = 0;
    double left_left = 0, left_top = 0, top_top = 0;

    /// How much more it is over a spot than at the centre.
    double more(Spot spot) const {
        return left * spot.left + top * spot.top + left_left * spot.left * spot.left + left_top * spot.left * spot.top +
               top_top * spot.top * spot.top;
    }
};

/// The end of a stick that is hollowed to lie on a round post. Over a spot of the section it reaches past the cut at
/// the stick's centre line, along the stick and away from it, by
///   per_left left + per_top top + stretch (root(room at the centre) - root(room over the spot)),
/// `room` being the square of half the way through the post of the line over that spot, in units of the stretch.
struct Cope {
    double radius = 0;  // of the post where the centre line meets it
    OverSection room;
    double per_left = 0, per_top = 0;
    double stretch = 1;
    double longest = 0, shortest = 0;  // of what it reaches, over the whole section

    double depth() const { return longest - shortest; }
};

/// How far past the centre line's cut the cope reaches over a spot that meets the post; negative where it is shorter.
double outward(const Cope& cope, Spot spot);

/// What a round post makes of the end of a stick: the plane that touches it where the centre line meets it, as the
/// stick sees it, and the cope. `missed` where a line of the section passes the post by, so far off its axis at most;
/// neither is to be used then. Neither is set where the stick runs along the surface.
struct Coping {
    std::optional<Slant> touching;
    Cope cope;
    double farthest = 0;  // from the axis, of the section's lines
    bool missed = false;
};
Coping cope_to(const Frame& frame, const CrossSection& section, const Shaft& post, End end);

/// The copes of a piece's ends, where they are coped.
using Copes = std::array<std::optional<Cope>, 2>;

/// Length of a piece along a spot of its section, its copes included.
double length_over(const Piece& piece, const Copes& copes, Spot spot);

/// Whether the four arrises of a piece are not told by its top and bottom edge: it is cut askew or coped.
bool arrises_differ(const Piece& piece, const Copes& copes);

/// A face of a stick, and how wide it is.
struct StickFace {
    Corner side;
    double width = 0;
};

/// Top, right, bottom and left face.
std::array<StickFace, 4> faces_of(const CrossSection& section);

/// Where the middle of a face is moved across it: to the left on top and bottom, to the top on the sides.
Spot spot_on(const StickFace& face, const CrossSection& section, double across);

/// A point of a cope's outline on a face of the stick: across it from its middle (left or top positive), along the
/// stick from the centre line's cut (longer positive).
struct OutlinePoint {
    double across = 0;
    double along = 0;
};

inline constexpr int outline_parts = 24;

/// The outline on one face, arris to arris, in equal parts across.
std::vector<OutlinePoint> outline_on(const Cope& cope, const StickFace& face, const CrossSection& section);

/// The cope as it lies after the piece is turned half round about its own axis, or end for end about its top.
Cope rolled(const Cope& cope);
Cope end_for_end(const Cope& cope);

/// Whether two copes are one.
bool same_cope(const Cope& a, const Cope& b);

}  // namespace rakewright
