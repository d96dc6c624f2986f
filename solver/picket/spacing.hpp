#pragma once

#include <optional>
#include <vector>

#include "../measure/length.hpp"
#include "../rail/line.hpp"

namespace rakewright {

/// No section may have more pickets than this.
inline constexpr int most_pickets = 10000;

/// What pickets of a width stand between: two posts so far apart, or joints without a post in their place. At a joint
/// half a gap is left, for the gap goes on in the section beyond.
struct PicketSpan {
    double clear = 0, width = 0;
    std::array<bool, 2> joints{};

    /// What of a gap is left at an end.
    double part_at(End end) const { return joints[index_of(end)] ? 0.5 : 1; }
    double parts_at_ends() const { return part_at(End::from) + part_at(End::to); }
};

/// The fewest pickets whose equal gaps, those at the posts included, are no wider than `max_gap`; equal to it but for
/// rounding is no wider. All level; width and max_gap positive. None above `most_pickets`.
std::optional<int> fewest_between(const PicketSpan& span, double max_gap);

/// The gap that so many pickets leave; negative where they do not go in, infinite where none at all stands between two
/// joints.
double equal_gap(const PicketSpan& span, int count);

/// How many pickets stand in a section, and the gap between two of them where it is not the one at the posts too: that
/// of a block or a fixed pitch.
struct Spaced {
    int count = 0;
    std::optional<double> between;
    Spaced(int pickets = 0, std::optional<double> gap = {}) : count(pickets), between(gap) {}
};

/// The gap that is left at each post, twice what is left at a joint; negative where they do not go in.
double end_gap(const PicketSpan& span, const Spaced& spaced);

/// The most pickets at a pitch that leave no less than `least_end` at each post, 0 if there are none such; a gap equal
/// to it but for rounding is no less. All level; pitch positive. None above `most_pickets`.
std::optional<int> most_at_pitch(const PicketSpan& span, double pitch, double least_end);

/// Where pickets stand along a rail line: level from its origin to their centres, from the from end on; and the level
/// places of the two post faces, taken half-way up the pickets.
struct Layout {
    std::vector<double> centres;
    double from_face = 0;
    double to_face = 0;

    double clear() const { return to_face - from_face; }
};

/// Pickets in place between two faces, the span's: as much left at one end as at the other, at a joint half as much.
Layout laid_out_between(double from_face, double to_face, const PicketSpan& span, const Spaced& spaced);

/// The clear gaps of a layout, the ones at the posts included: one more than there are pickets.
std::vector<double> gaps_of(const Layout& layout, double width);

/// A picket on a tread: the tread's number and, level, how far its downhill face stands from the riser face under the
/// tread's nosing.
struct Foot {
    int tread = 0;
    double from_riser = 0;
};

/// Pickets that follow the treads: k on each, the middle of the first one's downhill face at the riser face, the others
/// run / k on.
struct TreadLayout {
    Layout layout;
    std::vector<Foot> feet;
    int per_tread = 0;
    /// The tread on which the last picket would reach past the next nosing, and by how much; 0 where none does.
    int past_nosing = 0;
    double past_by = 0;

    /// The widest gap between two pickets; 0 where there are not two.
    double widest_between(double width) const;
};

/// What bounds pickets that stand on treads.
struct TreadRoom {
    const StairShape& stair;
    const RailLine& line;
    double underside = 0;  // of the rail, plumb over the nosing line
    double from_face = 0, to_face = 0;
    double width = 0, depth = 0;
};

/// The layout with k pickets on each tread. Those that would cut into a post are left out (American House Carpenter,
/// art. 258, and common practice, for the rule; see the tests).
TreadLayout laid_out_on_treads(const TreadRoom& room, int per_tread);

/// No tread may have more pickets than this.
inline constexpr int most_per_tread = 100;

/// The least k for which no gap between two pickets is wider than `max_gap` and none reaches past its nosing; none if
/// there is no such k.
std::optional<int> fewest_per_tread(const TreadRoom& room, double max_gap);

/// The least k, from `least` on, for which the gaps at the posts are no wider than `max_gap` either; none if no such k
/// fits.
std::optional<int> per_tread_for_ends(const TreadRoom& room, double max_gap, int least);

}  // namespace rakewright
