#pragma once

#include <optional>
#include <string>
#include <vector>

#include "reading.hpp"

// Posts, and how they are fixed to what they stand on, as asked.

namespace rakewright {

enum class PostFace { centre, downhill, uphill };

/// Which nosing of a stair, from 1; 0 is the last, whatever its number.
struct NosingNumber {
    int value = 1;
    Place place;
};

/// The surface a post stands on: the tread under its centre, a tread by its number, or a height above the floor at the
/// foot.
struct Base {
    enum class On { what_is_under, tread, height };
    On on = On::what_is_under;
    int tread = 0;
    double height = 0;
    Place place;
};

/// A post's section, along the stair and across it before it is turned; `nominal` keeps a timber size as it was
/// written.
struct PostSize {
    double along = 0;
    double across = 0;
    std::string nominal;
    Place place;
};

/// A joint is a place without a post, where two rails meet.
enum class PostShape { square, round, joint };

/// What a level held along the stair and one held across it read.
struct Lean {
    AngleReading along, across;
};

/// Boards round the foot of a post: as the post is sized, and how high they reach above what it stands on.
struct BaseTrim {
    std::vector<Reading> size;  // along and across, or one for both
    Reading height;

    double along() const { return size.front(); }
    double across() const { return size.back(); }
};

/// A post that grows thicker or thinner evenly up its length: how thick it is at a second height above what it stands
/// on, and at which one its own size was taken.
struct Taper {
    std::vector<Reading> size;  // along and across, or one for both
    std::optional<Reading> around;
    Reading height;
    Reading size_at = 0;
    Place place;

    double along() const;
    double across() const;
};

/// A plate under a post, turned with it; four holes of one diameter in a rectangle about its middle.
struct BasePlate {
    std::vector<Reading> size, holes;  // along and across, or one for both; `holes` centre to centre
    Reading thickness, hole;

    double along() const { return size.front(); }
    double across() const { return size.back(); }
    double holes_along() const { return holes.front(); }
    double holes_across() const { return holes.back(); }
};

/// A threaded rod up through a hollow post: what it passes beside the plate and the post.
struct PostRod {
    Place place;
    Reading below = 0, floor, channel = 0, washer, nut, spare;
    std::optional<Reading> diameter;
};

/// What a post's bolts or rod hold in.
enum class AnchoredIn { wood, concrete };

/// How posts are fixed to what they stand on.
struct PostFixing {
    Id id;
    AnchoredIn anchored_in = AnchoredIn::wood;
    std::optional<Reading> wood_under;
    std::optional<BasePlate> base_plate;
    std::optional<PostRod> rod;
};

/// `size` of a round post is its diameter both ways; or it has the girth taped round it in place of a size. It stands
/// at a stair or on a floor, or has no place.
struct Post {
    Id id;
    PostSize size;
    PostShape shape = PostShape::square;
    std::optional<Reading> around;
    std::optional<BaseTrim> base_trim;
    std::optional<Taper> taper;
    Ref stair, floor;
    std::optional<Reading> at;
    NosingNumber nosing;
    PostFace face = PostFace::centre;
    Reading across = 0;
    AngleReading turn;
    Lean lean;
    Base base;
    std::optional<Reading> reveal;  // its top over the highest rail's
    Ref fixing;

    bool has_place() const { return stair.named() || floor.named(); }
};

}  // namespace rakewright
