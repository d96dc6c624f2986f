#pragma once

#include <array>
#include <string>
#include <vector>

#include "../space/saw.hpp"
#include "cope.hpp"
#include "line.hpp"

namespace rakewright {

/// Heights of a section's groups, plumb over the nosing line or floor, the same all along the rail.
struct Levels {
    double upper_top = 0;
    double upper_underside = 0;
    double lower_top = 0;  // what the pickets stand on; without a lower group the nosing line or floor itself (0)
    double lower_underside = 0;
    bool has_lower = false;
    bool on_string = false;  // pickets without a lower group stand on a closed string: `lower_top` is its top

    /// Whether what the pickets stand on runs parallel to the rail.
    bool parallel() const { return has_lower || on_string; }
    double underside(Group group) const { return group == Group::upper ? upper_underside : lower_underside; }
    double top(Group group) const { return group == Group::upper ? upper_top : lower_top; }
    /// Half-way up the pickets: where `clear` and the gaps are taken.
    double middle() const { return (upper_underside + lower_top) / 2; }
};

/// The levels of a section: its build, with what the section restates. A member of depth d takes d / cos r plumb.
/// `lower_gap` is needed where there is a lower group.
Levels levels_of(const Build& build, double height, const std::optional<LowerGap>& lower_gap, const RailLine& line);

/// A bracket's leg that stands between the post and the members of a group: how thick, and how far it reaches up from
/// the group's underside at the face. Nothing where `thickness` is 0.
struct LegBetween {
    double thickness = 0;
    double up = 0;
};
using LegsBetween = std::array<std::array<LegBetween, 2>, 2>;  // by end, then by group

/// Where a member is parted: the cut, where it is along the centre line from the member's from end, and the picket or
/// foot, from 1, that it stands at; 0 if at none.
struct Splice {
    Slant cut;
    double at = 0;
    int picket = 0, foot = 0;
};

/// One member of a rail as it is cut. Lengths in the job's unit: `length` along the centre line from cut to cut, the
/// edges along the middle of top and bottom face, `overall` from tip to tip. An end at a round post is coped: then the
/// piece's cut there is the plane that touches the post where the member's centre line meets it. `shortened` is what
/// bracket legs cost it at the from end and at the to end, along it.
struct Member {
    std::string name;
    Group group = Group::upper;
    double width = 0, depth = 0;
    double length = 0, top_edge = 0, bottom_edge = 0, overall = 0;
    EndCut from_end, to_end;
    SetOut measure;
    std::array<double, 2> shortened{};
    Stick stick;
    Copes copes{};
    std::vector<Splice> splices;  // from the from end; of the member as a whole everything else is said
};

/// How far along a member, from its frame's origin, its end lies over a spot of its section.
double reach(const Member& member, End end, Spot spot);

/// The end of a member at which a tape can be hooked on its top or bottom face: one that is long there.
End hook_on(const Member& member, Spot face);

/// Every member of a section, top to bottom, each cut to its own meeting with the posts' faces: off them by half the
/// play, level along the rail, and by the legs that stand between. Adds to `findings` where a cut runs along the rail
/// or nothing would be left, or a member does not meet a round post with its whole width, with `place`.
std::vector<Member> members_of(const Build& build, const Levels& levels, const RailLine& line, double play,
                               const LegsBetween& legs, Place place, std::vector<Finding>& findings);

/// Height, in the line's own axes, at which the middle line of a level over it meets the face at that end.
std::optional<double> height_met(const RailLine& line, End end, double above);

}  // namespace rakewright
