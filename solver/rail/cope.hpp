#pragma once

#include <vector>

#include "../space/stick.hpp"
#include "post.hpp"

namespace rakewright {

/// The end of a stick that is hollowed to lie on a cylinder. Over a spot of the section it reaches past the cut at the
/// stick's centre line, along the stick and away from it, by
///   per_left left + per_top top + stretch (root(off) - root(off + off_left left + off_top top)),
/// root(m) = sqrt(radius^2 - m^2): seen along the cylinder's axis, m is how far the line over that spot passes it.
struct Cope {
    double radius = 0;
    double off = 0, off_left = 0, off_top = 0;
    double per_left = 0, per_top = 0;
    double stretch = 1;
    double longest = 0, shortest = 0;  // of what it reaches, over the whole section

    double depth() const { return longest - shortest; }
};

/// How far past the centre line's cut the cope reaches over a spot that meets the cylinder; negative where it is
/// shorter.
double outward(const Cope& cope, Spot spot);

/// What a cylinder makes of the end of a stick: the plane that touches it where the centre line meets it, as the stick
/// sees it, and the cope. `missed` where a line of the section passes the axis farther off than the radius, by that
/// much of the axis; neither is to be used then. Neither is set where the stick runs along the surface.
struct Coping {
    std::optional<Slant> touching;
    Cope cope;
    double farthest = 0;  // from the axis, of the section's lines
    bool missed = false;
};
Coping cope_to(const Frame& frame, const CrossSection& section, const Cylinder& cylinder, End end);

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
