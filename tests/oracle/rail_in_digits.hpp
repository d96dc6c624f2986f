#pragma once

#include "../../solver/solution.hpp"
#include "stair_in_digits.hpp"

// A rail by its lines and points: the arrises of its members as lines in the world, the faces of its posts as planes
// through three of their corners, and where the ones meet the others.

namespace rakewright::tests {

/// Which way a rail goes and what bounds it. `origin` lies on the nosing line or floor, plumb in the middle of the
/// from end; `level` is a unit of level along the rail, `way` the same as the rail rises.
struct WayInDigits {
    Point origin, level, way, left;
    std::array<Facet, 2> faces;  // normals looking into the section
    std::array<Real, 2> surfaces{};

    Real slope() const { return way.z; }
    /// Length along the slope for each unit of level.
    Real lengthened() const { return size(way); }
    Point at(const Real& along, const Real& above = 0) const { return origin + along * way + Point{0, 0, above}; }
    /// How far along, level, a face stands at a height over the line.
    Real face_along(std::size_t end, const Real& above) const {
        return dot(meeting(at(0, above), way, faces[end]) - origin, level);
    }
};

WayInDigits way_in_digits(const DrawnJob& drawn, const Section& section, const StairInDigits& stair);

/// The settings of one end: angles off square, in radians.
struct EndInDigits {
    Real flat_miter, flat_bevel, edge_miter, edge_bevel;
    Real left_over_right, top_over_bottom;  // how far the cut stands out more on the one side than on the other
};

struct MemberInDigits {
    Real length, top_edge, bottom_edge, overall;
    Real set_out;  // from cut to cut along the edge or corner asked for
    std::array<EndInDigits, 2> ends;
    std::array<std::array<Point, 4>, 2> corners;  // by end: top left, top right, bottom left, bottom right
    std::array<Point, 2> under, over;             // where the middle of the bottom and of the top face end
};

/// What stands at one end of a member: how much is taken off level along the rail, and square to the face.
struct TakenOff {
    Real level, square;
};

/// A member whose underside runs so high, plumb, over the line.
MemberInDigits member_in_digits(const WayInDigits& way, const CrossSection& section, const Real& underside,
                                const std::array<TakenOff, 2>& off, const Corner& set_out);

/// The angle between a leg on the face and one under the rail, on the inside, in radians.
Real included_angle(const WayInDigits& way, std::size_t end, Leg leg);

}  // namespace rakewright::tests
