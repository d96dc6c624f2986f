#pragma once

#include <optional>
#include <vector>

#include "section.hpp"

// Handrails, and rails as found.

namespace rakewright {

/// Finger recesses in both sides of a profile, measured on it: `start`, `end` plumb from its top, `reach` plumb from
/// its widest part, `held` plumb, `depth` and `width_above` level.
struct Recess {
    Reading start, depth, reach, held, end, width_above;
};

/// What a hand grips: round (a diameter, or the girth taped round it), a rectangle of width and depth, or any other
/// section by its perimeter and its largest width; and the recesses for the fingers in it.
struct Profile {
    Place place;
    std::optional<Reading> diameter, around, width, depth, perimeter;
    std::optional<Recess> recess;
};

/// How far a handrail runs on past the flight: level beyond the last nosing, and level over the floor at the foot,
/// there still on the rake. What nobody said is none to the geometry, and no figure to the rules.
struct Extension {
    std::optional<Reading> top, bottom;
};

/// What the end of a handrail turns to.
enum class Return { none, wall };

struct Returns {
    Return top = Return::none;
    Return bottom = Return::none;
};

/// A rail that hands grip, beside a stair or on a guard.
struct Handrail {
    Id id;
    Ref stair;
    std::optional<NamedSide> side;  // left if it is not said
    Reading height;
    Profile profile;
    std::optional<Reading> clearance;
    Extension extend;
    Returns returned;
};

/// A reading at a numbered thing, such as a nosing.
struct Numbered {
    int number = 0;
    Reading reading;
};

/// A ball that was tried: under the rail over a tread, through an open riser, or between pickets; there over one tread,
/// or anywhere.
struct Ball {
    enum class At { pickets, under_rail, riser };
    Place place;
    std::optional<At> said_at;
    std::optional<Count> tread;
    Reading size;
    bool passes = false;
    At at() const { return said_at.value_or(tread ? At::under_rail : At::pickets); }
};

/// A rail as it stands, whatever it was meant to be: over a stair by its heights at nosings, over a floor by one
/// height.
struct FoundRail {
    enum class Serves { both, guard, handrail };
    Id id;
    Ref stair;
    Serves serves = Serves::both;
    std::optional<NamedSide> side;  // left if it is not said
    std::vector<Numbered> heights;
    std::optional<Reading> height, widest_gap, clearance, drop, side_gap;
    std::vector<Ball> balls;
    std::optional<Profile> profile;
    std::optional<Extension> extend;
};

}  // namespace rakewright
