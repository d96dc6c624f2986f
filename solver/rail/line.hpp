#pragma once

#include <array>

#include "../space/stick.hpp"
#include "post.hpp"

namespace rakewright {

/// The floor under a section, plumb over its line's origin: as high as that at `high` along, and rising so much for
/// each unit of level from there.
struct FloorUnder {
    double high = 0;
    double slope = 0;
    double at(double along) const { return slope * (along - high); }
};

/// The way a section's rail goes: a plumb plane through the centres of its posts' feet, the nosing line or floor as it
/// runs in that plane, and the post faces that bound it. Places along it are level distances from its origin, along (x,
/// y), which is the centre of the from post's foot, or its face where only the clear distance is known. `above` is
/// always plumb over the nosing line or floor.
struct RailLine {
    Vector origin = Vector::Zero();  // on the nosing line or floor
    double x = 1, y = 0;             // the level unit direction from the from end to the to end
    double slope = 0;                // rise for each unit of level
    Plane from, to;                  // normals looking into the section
    FloorUnder floor{};              // where the section is over a floor and not over treads
    // Round posts; `from` and `to` are then the planes that touch them where the rail's middle line meets them.
    std::array<Cylinder, 2> rounds{};

    const Plane& face(End end) const { return end == End::from ? from : to; }
    const Cylinder& round(End end) const { return rounds[end == End::from ? 0 : 1]; }
    bool is_round(End end) const { return round(end).radius > 0; }
    Vector at(double along, double above = 0) const {
        return origin + Vector(along * x, along * y, along * slope + above);
    }
    double floor_height(double along) const { return origin.z() + floor.at(along); }
    /// Length along the slope, or plumb of what is square to it, for each unit of level or square.
    double lengthened() const;
};

/// Two faces, at the from end and at the to end.
using FacesMet = std::array<Face, 2>;

/// The faces that a straight line between the centres of two posts' feet leaves them by. An end that leaves through a
/// corner is none. The posts may not stand on one another.
std::array<std::optional<Face>, 2> faces_between(const StandingPost& from, const StandingPost& to);

/// Whether a rail between two posts runs straight across their stair.
bool straight_across(const StandingPost& from, const StandingPost& to);

/// The way of a rail between two posts over their stair, which must have a nosing line.
RailLine line_between(const StandingPost& from, const StandingPost& to, const FacesMet& faces, const StairShape& stair);

/// The radii of round posts that have no place, at the from end and at the to end; 0 of others.
using Radii = std::array<double, 2>;

/// The way of a rail of which only the level clear distance is known: plumb faces that look along it, and the nosing
/// line or floor that it follows as it runs from the first nosing. Round posts stand plumb, the clear distance between
/// their surfaces.
RailLine line_over(double clear, const NosingLine& nosings, const Radii& radii = {});

/// How far along the line the face at that end stands, at a height over it; none where the face runs along the rail, or
/// the line misses a round post.
std::optional<double> face_along(const RailLine& line, End end, double above);

/// The plane to which a rail is cut that meets the post at a height over the line: its face, or the plane that touches
/// a round post where the middle line meets it. None where face_along has none.
std::optional<Plane> face_at(const RailLine& line, End end, double above);

/// How far from a round post's axis the middle line at a height over the line passes.
double off_axis(const RailLine& line, End end, double above);

/// Lays the planes of round posts where the middle line at this height meets them; left as they are where it misses.
void touch_round_posts(RailLine& line, double above);

}  // namespace rakewright
