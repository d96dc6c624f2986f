#pragma once

#include <vector>

#include "../space/frame.hpp"
#include "../stair/stair.hpp"
#include "shaft.hpp"

namespace rakewright {

/// Boards round the foot of a post: half its size over all, and how high they reach above its foot, plumb.
struct TrimmedFoot {
    double half_along = 0, half_across = 0;
    double height = 0;
};

/// A post that has a place, in the axes of its stair or floor: the centre of its foot, the axes of its section as
/// turned and tipped, and half its size along the first and the second of them. `plumb` are the axes before it was
/// tipped.
struct StandingPost {
    Vector foot;
    Axes plumb, tipped;
    double half_along = 0;
    double half_across = 0;
    double radius = 0;                               // of a round post; then both halves are as much
    double widening_along = 0, widening_across = 0;  // of the halves, for each unit up the post from its foot
    std::optional<TrimmedFoot> trim;
    bool joint = false;  // there is no post
    bool round() const { return radius > 0; }
};

/// The post at its stair. Its foot stands on the surface under its centre, or the one that it names. Adds what is
/// wrong to `findings`; none then.
std::optional<StandingPost> stand(const Post& post, const StairShape& stair, std::vector<Finding>& findings);

/// The post on its floor, in the floor's axes: along its first axis the floor falls by this slope, from 0 at its
/// origin.
StandingPost stand(const Post& post, double fall);

/// The boards round a post's foot; none where it has none.
std::optional<TrimmedFoot> trim_of(const Post& post);

/// Where a stair's or floor's own axes stand in plan.
struct PlacedAxes {
    Vector origin;
    Axes axes;
};
PlacedAxes placed(const Plan& plan);

/// A point of a ground's own axes in the plan of the job.
Vector in_plan(const PlacedAxes& ground, const Vector& point);

/// What stands on one ground, seen in the axes of another: a direction, a point, a post, a stick's frame.
class Carrying {
 public:
    Carrying(const PlacedAxes& own, const PlacedAxes& other) : own_(own), other_(other) {}
    Vector way(const Vector& way) const;
    Vector point(const Vector& point) const;
    StandingPost post(const StandingPost& post) const;
    Frame frame(const Frame& frame) const;

 private:
    PlacedAxes own_, other_;
};

/// A face of a square post, before it is turned: the one that looks up the stair, left, down the stair or right. Or the
/// surface of a round one, or the place of a joint.
enum class Face { uphill, left, downhill, right, round, joint };

/// A line in plan as it leaves a post: the face, none where that is a corner; `missed` where it passes the post by.
struct LeavingBy {
    std::optional<Face> face;
    bool missed = false;
};

/// How a level line leaves a post, that passes `beside` to the left of its centre on its way along the level unit
/// direction (x, y).
LeavingBy leaving_by(const StandingPost& post, double x, double y, double beside = 0);

/// The plane of a square post's face, its normal looking away from the post; and of the boards round its foot.
Plane face_plane(const StandingPost& post, Face face);
Plane trim_plane(const StandingPost& post, Face face);

}  // namespace rakewright
