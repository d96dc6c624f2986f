#pragma once

#include "../rail/member.hpp"
#include "spacing.hpp"
#include "turned.hpp"

namespace rakewright {

/// Pickets that are cut alike: how many in one section, which ones (numbers from 1, counted from the from end), and the
/// plumb lengths of the side that looks up the rail and the one that looks down it, ploughs included. The piece stands
/// with its from end on the ground and its top looking uphill.
struct PicketPiece {
    int count = 0;
    std::vector<int> at;
    double uphill_side = 0, downhill_side = 0, overall = 0;
    Piece piece;
    std::optional<Trim> trim;  // of a turned one
    int outer = 0;             // of one with a bevelled foot: whether its left, +1, or its right, -1, is the outer side
};

/// Where pickets stand on one member: their centres along the middle of its picket face, from the middle of that face's
/// edge at the member's from end; of pickets on the rails' side along the edge between that face and the side, from its
/// own end. `hook` is the end from which a tape can be hooked there: the one that is long on that
/// face.
struct Marks {
    std::vector<double> centres;
    End hook = End::from;
    double face_length = 0;
    double half_width = 0;  // of a picket, along the face

    /// The near edge of a picket, from the end where the tape is hooked.
    double near_edge(std::size_t picket) const;
    double centre_from_hook(std::size_t picket) const;
    /// From the cut at an end to the nearest centre. There is a picket.
    double first_centre(End end) const;
};

/// A strip that fills a plough between two pickets, or between a picket and the member's end. `at` are the gaps it
/// fills, from 0.
struct Fillet {
    Group group = Group::upper;
    int count = 0;
    std::vector<int> at;
    double length = 0, overall = 0;
    Piece piece;
};

/// How much wider than the widest of each kind is as computed the marks leave it, level.
struct Widened {
    double at_from = 0, between = 0, at_to = 0;
};

/// The hole in a channel's web that a picket goes through: along the rail, and across it.
struct Slot {
    double length = 0, width = 0;
};

/// The hole that a round picket is bored into: its diameter, and how deep it is along its middle line, plumb, in the
/// upper group and in what the pickets stand on; 0 where there is none. It takes in the picket's tip.
struct PicketHole {
    double diameter = 0;
    double upper = 0, lower = 0;
};

/// What the feet of pickets on the side of the rail run down past.
enum class FootPast { lower_rail, floor, nosing_line, string };

/// How pickets stand beside the rail: on which side, seen from the from end; how far their centres are off the rail's
/// centre line; and how far their heads and feet run past, as asked for.
struct BesideRail {
    bool left = true;
    double off_centre = 0;
    PicketPast past;
    FootPast foot = FootPast::floor;
};

/// The pickets of a section. Level and in the job's unit but for `pitch_on_slope` and the marks. `cut` is the slope of
/// the head off square. `widest_gap` is the widest of all gaps as computed, `widest_marked` the widest that marks read
/// off the tape leave.
struct Pickets {
    int count = 0;
    double width = 0, depth = 0;
    int per_tread = 0;
    std::optional<double> gap, pitch, pitch_on_slope;
    double from_gap = 0, to_gap = 0;
    double widest_gap = 0, widest_marked = 0;
    Widened widened;
    double cut = 0;
    std::vector<double> centres;
    Marks upper, lower;
    bool at_pitch = false;  // a fixed pitch, not the limit, sets the spacing
    std::optional<Slot> slot;
    std::optional<PicketHole> hole;
    std::optional<BesideRail> beside;
    double from_face = 0;  // where the from post's face, from which the centres count, stands along the line
    std::vector<Foot> feet;
    std::vector<PicketPiece> pieces;
    std::vector<Fillet> fillets;

    /// The centres, level from another place along the line.
    std::vector<double> centres_from(double along) const;
};

/// What pickets on the side of the rail lie on and reach to: +1 for its left, -1 for its right; how far that side is
/// off the rail's centre line; plumb over the line their heads, and their feet's lowest points, none where those count
/// from the floor or tread under each.
struct RailSide {
    double side = 1;
    double off = 0;
    double head = 0;
    std::optional<double> foot;
    FootPast past = FootPast::floor;
};

/// What pickets stand on and reach to.
struct PicketRoom {
    const PicketBuild& build;
    const RailLine& line;
    const Levels& levels;
    const std::vector<Member>& members;
    const StairShape* treads = nullptr;  // that they stand on where there is no lower group; none: the line's floor
    bool footing_known = true;  // false on a stair whose posts have no place: no lengths then, without a lower group
    Tape tape;
    std::optional<RailSide> beside;  // of pickets on the side of the rail

    /// Whether the feet of all run along the rail.
    bool all_alike() const { return beside ? beside->foot.has_value() : levels.parallel(); }
};

/// The picket with its centre at a place along the line, plumb from the line there; its top looks up the rail.
Piece picket_piece(const PicketRoom& room, double along);

/// The slot that a plumb picket of this depth and width needs in a web on a slope: w / cos r + t tan r and the
/// clearance along it, the depth and the clearance across (derived: a square punching does not take it).
Slot slot_for(const PicketBuild& build, const Punched& punched, double slope);

/// The hole that a round picket is bored into on a slope; none of any other, or where it enters nothing.
std::optional<PicketHole> hole_for(const PicketBuild& build, bool foot_on_slope, double slope);

/// Every picket of a layout: lengths by trimming, marks on both rails, equal pieces together (both sides within 1e-9).
/// `feet` where they stand on treads.
Pickets pickets_of(const PicketRoom& room, const Layout& layout, const std::vector<Foot>& feet, int per_tread);

}  // namespace rakewright
