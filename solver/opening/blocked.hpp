#pragma once

#include <optional>

#include "touching.hpp"

namespace rakewright {

/// An obstacle made ready. `along` is a unit vector, or zero for a point.
struct Wall {
    Seen from, to;
    Seen along;
    double length = 0;
    bool has_wood = false;

    explicit Wall(const Obstacle& obstacle, const Seen& origin);
};

/// The spot of a wall that is nearest to a point, and how far it is.
struct Contact {
    double away = 0;
    Touch::Part part = Touch::Part::left;
    Seen at;
};
Contact contact(const Wall& wall, const Seen& point);

/// What a circle touches in a part of a wall.
Feature feature_of(const Wall& wall, Touch::Part part);

/// The centres of circles of one radius that touch one feature: on a line at `lift` radii from `base` (0: the centre
/// lies on the feature, a bound; 1: the circle touches it, a wall), or on a circle about `base` (a corner). A place on
/// a line is a length from `base` along it; one on a circle is a number in [0, 4), growing counter-clockwise by one a
/// quarter.
struct Track {
    bool is_round = false;
    Seen base;
    Seen along;
    Seen away;
    double lift = 0;

    Seen direction(double place) const;  // from what the circle touches to its centre
    Seen centre(double place, double radius) const;
    Seen touched(double place) const;
    double place(const Seen& centre) const;
};

/// The places on a track, from `low` to `high`, at which a wall reaches into the circle.
struct Stretch {
    double low = 0, high = 0;
    bool ends_track = false;  // on a round track: by a wall that meets in the corner, and stops no growing circle
};

/// None if the wall stops no circle of this radius. `graze` is the depth to which reaching in does not count. A wall
/// that runs through a corner stops all: the places from 0 to 4. A block of a round track may run past 4.
std::optional<Stretch> blocked(const Track& track, const Wall& wall, double radius, double graze);

/// How far a circle can grow at a place on a track, keeping what it touches there, until it touches a wall: not finite
/// if it never does.
struct Room {
    double radius = 0;
    Touch::Part part = Touch::Part::left;
    Seen at;
};
Room room(const Track& track, double place, const Wall& wall, double graze);

}  // namespace rakewright
