#pragma once

#include "bracket.hpp"

namespace rakewright {

/// A bracket's plate in its place. `bend` is the inside of the bend where the plumb plane through the rail's middle
/// line cuts it, `mark` where the middle line of the underside meets the post's face. `face` looks out of the post,
/// `top` up out of the rail; `on_post` and `on_rail` run along the two legs from the bend, square to it. Unit vectors.
struct PlateAt {
    Vector bend, mark;
    Vector face, top;
    Vector on_post, on_rail;
    double off_post = 0;    // the inner face of the leg on the post, over the post's face
    double under_rail = 0;  // the lower face of the leg under the rail, under the group's underside

    /// The middle of a hole in the leg on the post, on that leg's inner face: where its screw's head lies.
    Vector post_hole(double from_bend) const { return bend + from_bend * on_post; }
};

/// Where the plate lies at one end of a group; none where the underside's middle line does not meet the post's face. A
/// leg that is let in lies flush.
std::optional<PlateAt> plate_at(const BracketBuild& build, const RailLine& line, const Levels& levels, End end,
                                Group group, Leg leg);

/// The middle of a hole in the leg under the rail, on that leg's lower face: where its screw's head lies.
Vector rail_hole(const PlateAt& plate, double from_bend);

/// How far along the rail's own axis the leg under it reaches at the rail's middle line: the place of its tip there.
Vector rail_leg_tip(const PlateAt& plate, const RailLine& line, double rail_leg);

/// A mortise in a post's face: `height` along the face; `top` and `bottom` its two edges, from the mark along the face,
/// over it positive.
struct PostMortise {
    double width = 0, height = 0, depth = 0;
    double top = 0, bottom = 0;
};

/// What lets the leg into the rail: from the rail's own end along its bottom face, the same along every edge.
struct RailCut {
    double width = 0, length = 0, depth = 0;
};

/// How a bracket lies in post and rail. Screws and heights for each hole of the leg on the post, on the post's face:
/// `screw_from_mark` along the face from the mark, `screw_heights` plumb above the surface that the post stands on
/// (empty where that is not known). `possible` is what of the seats in the rail can be cut: the one asked for, or a
/// rabbet in place of a mortise that leaves less than is asked for beside it, or no seat but the surface.
struct Seat {
    std::vector<double> screw_from_mark, screw_heights;
    std::optional<PostMortise> mortise;
    std::optional<RailCut> rail_cut;
    /// Wood of the lowest member to the left and to the right of the leg under it, where that is least along the whole
    /// leg, seen looking at the post's face; negative where the leg stands out there.
    double beside_left = 0, beside_right = 0;
    double wood_over = 0;  // of the rail's lowest member over a leg that is let in; negative where there is none
    RailSeat possible = RailSeat::surface;

    double beside() const { return beside_left < beside_right ? beside_left : beside_right; }
};

/// The seat of a bracket under a group's lowest member. `surface` is the height of what the post stands on, in the
/// line's axes.
Seat seat_of(const BracketBuild& build, const PlateAt& plate, const RailLine& line, const Member& lowest, End end,
             Leg leg, std::optional<double> surface);

}  // namespace rakewright
