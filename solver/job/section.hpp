#pragma once

#include <optional>

#include "build.hpp"

// Sections, and how their pickets are spaced, as asked.

namespace rakewright {

/// What stands in the middle of a section: a picket, where their count is odd, or a gap.
enum class Centre { picket, gap };

/// What stands in the middle, as asked for, and where it is written.
struct CentreWish {
    Centre centre = Centre::picket;
    Place place;
};

/// What a rail over a floor that falls runs parallel to.
enum class Follow { level, floor };

/// Which of a section's posts stands plumb.
enum class PlumbPost { neither, from, to };

/// A clear distance that was taken twice, because the posts lean or taper: half-way up the lower group (without one, on
/// what the pickets stand on) and half-way up the upper group.
struct ClearTwice {
    Reading low, high;
    PlumbPost plumb = PlumbPost::neither;
    Place place;
};

/// How far a rail's line runs to the left of the centres of its posts, seen from the from end.
struct Offset {
    Reading from = 0, to = 0;
};

/// What an end of a rail is cut to: the post's face, plumb through the post's centre, plumb so far past it, square to the
/// rail so far short of the centre (where a bought fitting begins), or a block of that thickness on the face. Over a
/// post, cut off at its top, the upper group ends plumb so far past its centre, the lower one at its face.
struct EndWish {
    enum class Meets { face, centre, over, past, square, pad };
    Meets meets = Meets::face;
    Reading by;
    Place place;
};

struct EndWishes {
    EndWish from, to;
};

struct Section {
    Id id;
    Ref from, to, stair, floor, build;
    Follow follow = Follow::level;
    std::optional<NamedSide> side;
    std::optional<NamedSide> picket_side;
    std::optional<Reading> clear, clear_on_slope;
    std::optional<ClearTwice> clear_twice;
    Offset offset;
    EndWishes ends;
    std::optional<Reading> height, max_gap, max_sphere, play;
    std::optional<LowerGap> lower_gap;
    std::optional<Reading> drop, side_gap;
    Count count = 1;
    std::optional<CentreWish> centre;
};

/// How the pickets of the whole job are spaced, where they follow neither treads nor a fixed pitch: the fewest in each
/// section; gaps as like each other as can be; or one gap for all, as a block is cut.
struct Spacing {
    enum class By { fewest, alike, block };
    By by = By::fewest;
    std::optional<Reading> block;  // its length; none: the longest that serves everywhere
    std::optional<Reading> least_gap, least_end_gap;
    std::optional<CentreWish> centre;
    Place place;
};

}  // namespace rakewright
