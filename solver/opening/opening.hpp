#pragma once

#include <algorithm>

#include "../picket/picket.hpp"
#include "circle.hpp"

namespace rakewright {

/// An opening of a section, as a ball would find it: between two pickets (the largest of all these), between a picket
/// and the post at an end, or under the lower rail: over a stair for each tread by its number, or over the closed
/// string that the treads end in. `sphere` is the diameter of the largest ball that passes square through it: of the
/// largest circle in it, seen square to the rail in the plumb plane through its centre line.
struct Opening {
    enum class Kind { picket_gap, post_gap, under_rail, over_string };
    Kind kind = Kind::picket_gap;
    std::optional<End> end;
    std::optional<int> tread;
    double sphere = 0;
};

/// What stands plumb between the ground and the lower group's underside, from one place along the line to another.
struct Upright {
    double from = 0, to = 0;
};

/// What an opening can be bounded by.
struct OpeningRoom {
    const RailLine& line;
    const Levels& levels;
    const StairShape* treads = nullptr;  // that the section is over; none: the line's floor
    bool placed = false;                 // whether its posts stand in a known place over the treads
    bool closed_string = false;          // the lower group is over the string then, and not over treads
    const Silhouette* turned = nullptr;  // of its pickets, where they are turned
    std::optional<double> string_above;  // the top of a closed string, plumb over the nosing line, where it is known
    bool past_treads = false;            // whether its pickets run down beside the treads, past them
    std::vector<Upright> feet{};         // under the lower group, in the order of the line
};

/// Every opening of a section: the gaps, in the order in which they are reported, then those under the lower rail.
/// `layout` and `width` are of the pickets; an empty layout leaves one opening from post to post, reported at both
/// ends. Over a stair whose posts have no place the balls under the rail are those of an unbroken rail, for each tread
/// that has a nosing at both ends. What is open over a closed string whose top is not known is left out.
std::vector<Opening> openings_of(const OpeningRoom& room, const Layout& layout, double width);

/// Those under the lower rail alone, between post faces at these places.
std::vector<Opening> openings_under_rail(const OpeningRoom& room, double from_face, double to_face);

/// The largest balls that pass between two pickets, 0 where there are not two, and at each post.
struct GapBalls {
    double between = 0;
    std::array<double, 2> at_post{};

    double largest() const { return std::max({between, at_post[0], at_post[1]}); }
};

/// Those of `openings_of` that pass through the gaps. Where all gaps between pickets are alike but for rounding, one of
/// them is measured; none after the first that lets a ball of `enough` pass, and for 0 none at all.
GapBalls balls_through_gaps(const OpeningRoom& room, const Layout& layout, double width, double enough);

}  // namespace rakewright
