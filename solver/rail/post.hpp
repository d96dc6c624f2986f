#pragma once

#include "../space/frame.hpp"
#include "../stair/stair.hpp"

namespace rakewright {

/// A post that has a place, in its stair's axes: the centre of its foot, the axes of its section as turned and tipped,
/// and half its size along the first and the second of them. `plumb` are the axes before it was tipped.
struct StandingPost {
    Vector foot;
    Axes plumb, tipped;
    double half_along = 0;
    double half_across = 0;
    double radius = 0;  // of a round post; then both halves are as much
    bool round() const { return radius > 0; }
};

/// A round post as a rail meets it: a point of its axis, the unit direction of the axis, its radius; 0 where there is
/// none.
struct Cylinder {
    Vector point = Vector::Zero(), upright = Vector::UnitZ();
    double radius = 0;
};

/// The post on its stair. Its foot stands on the surface under its centre, or the one that it names. Adds what is
/// wrong to `findings`; none then.
std::optional<StandingPost> stand(const Post& post, const StairShape& stair, std::vector<Finding>& findings);

/// A face of a square post, before it is turned: the one that looks up the stair, left, down the stair or right. Or the
/// surface of a round one.
enum class Face { uphill, left, downhill, right, round };

/// The face through which a level line from the post's centre leaves it in plan; none if that is a corner.
std::optional<Face> face_left_by(const StandingPost& post, double x, double y);

/// The plane of a square post's face, its normal looking away from the post.
Plane face_plane(const StandingPost& post, Face face);

}  // namespace rakewright
