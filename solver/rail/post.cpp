#include "post.hpp"

#include <cmath>

#include "../measure/compare.hpp"

namespace rakewright {
namespace {

/// How thick a post is at its foot, and how much it grows for each unit up.
struct AtFoot {
    double along = 0, across = 0;
    double widening_along = 0, widening_across = 0;  // of half of it
};

AtFoot at_foot(const Post& post) {
    const PostSize size = size_of(post);
    AtFoot foot{size.along, size.across, 0, 0};
    if (!post.taper) return foot;
    const double between = post.taper->height - post.taper->size_at;
    foot.widening_along = (post.taper->along() - size.along) / 2 / between;
    foot.widening_across = (post.taper->across() - size.across) / 2 / between;
    foot.along -= 2 * foot.widening_along * post.taper->size_at;
    foot.across -= 2 * foot.widening_across * post.taper->size_at;
    return foot;
}

std::optional<double> place_of_centre(const Post& post, const StairShape& stair, std::vector<Finding>& findings) {
    const int number = post.nosing.value == 0 ? stair.risers() : post.nosing.value;
    if (number > stair.risers()) {
        findings.push_back(
            {Trouble::nosing_beyond_stair, post.nosing.place, {double(number), double(stair.risers())}, {}});
        return std::nullopt;
    }
    const double face = stair.nosing(number).x + post.at->value, half_along = at_foot(post).along / 2;
    switch (post.face) {
        case PostFace::centre: return face;
        case PostFace::downhill: return face + half_along;
        case PostFace::uphill: return face - half_along;
    }
    return face;
}

std::optional<double> height_of_foot(const Post& post, const StairShape& stair, double x,
                                     std::vector<Finding>& findings) {
    switch (post.base.on) {
        case Base::On::what_is_under: return surface_height(stair, tread_under(stair, x), x);
        case Base::On::height: return post.base.height;
        case Base::On::tread: break;
    }
    if (post.base.tread <= stair.risers()) return surface_height(stair, post.base.tread, x);
    findings.push_back(
        {Trouble::tread_beyond_stair, post.base.place, {double(post.base.tread), double(stair.risers())}, {}});
    return std::nullopt;
}

/// How it stands with the centre of its foot there.
StandingPost standing(const Post& post, const Vector& foot) {
    const Axes plumb = turned(post.turn.angle);
    const AtFoot size = at_foot(post);
    return {foot,
            plumb,
            tipped(plumb, slope(post.lean.along.angle), slope(post.lean.across.angle)),
            size.along / 2,
            size.across / 2,
            post.shape == PostShape::round ? size.along / 2 : 0,
            size.widening_along,
            size.widening_across,
            trim_of(post),
            post.shape == PostShape::joint};
}

/// A face whose distance from the axis grows by so much for each unit up the post.
Plane widening_face(const Plane& face, const Vector& upright, double widening) {
    if (widening == 0) return face;
    return {face.point, (face.normal - widening * upright).normalized()};
}

Plane face_plane(const StandingPost& post, Face face, double half_along, double half_across) {
    switch (face) {
        case Face::uphill: return {post.foot + half_along * post.tipped.first, post.tipped.first};
        case Face::downhill: return {post.foot - half_along * post.tipped.first, -post.tipped.first};
        case Face::left: return {post.foot + half_across * post.tipped.second, post.tipped.second};
        case Face::right:
        case Face::round:
        case Face::joint: break;
    }
    return {post.foot - half_across * post.tipped.second, -post.tipped.second};
}

}  // namespace

std::optional<StandingPost> stand(const Post& post, const StairShape& stair, std::vector<Finding>& findings) {
    const std::optional<double> x = place_of_centre(post, stair, findings);
    if (!x) return std::nullopt;
    const std::optional<double> z = height_of_foot(post, stair, *x, findings);
    if (!z) return std::nullopt;
    return standing(post, Vector(*x, post.across, *z));
}

StandingPost stand(const Post& post, double fall) {
    const double half_along = at_foot(post).along / 2;
    const double x = *post.at + (post.face == PostFace::downhill ? half_along
                                 : post.face == PostFace::uphill ? -half_along
                                                                 : 0);
    const double z = post.base.on == Base::On::height ? post.base.height : 0 - fall * x;
    return standing(post, Vector(x, post.across, z));
}

std::optional<TrimmedFoot> trim_of(const Post& post) {
    if (!post.base_trim) return std::nullopt;
    return TrimmedFoot{post.base_trim->along() / 2, post.base_trim->across() / 2, post.base_trim->height};
}

PlacedAxes placed(const Plan& plan) { return {Vector(plan.x, plan.y, plan.level), turned(plan.heading.angle)}; }

Vector in_plan(const PlacedAxes& ground, const Vector& point) {
    return ground.origin + point.x() * ground.axes.first + point.y() * ground.axes.second + Vector(0, 0, point.z());
}

Vector Carrying::way(const Vector& way) const {
    const Vector level = way.x() * own_.axes.first + way.y() * own_.axes.second;
    return Vector(level.dot(other_.axes.first), level.dot(other_.axes.second), way.z());
}

Vector Carrying::point(const Vector& point) const {
    const Vector from_other = in_plan(own_, point) - other_.origin;
    return Vector(from_other.dot(other_.axes.first), from_other.dot(other_.axes.second), from_other.z());
}

StandingPost Carrying::post(const StandingPost& post) const {
    const auto all = [&](const Axes& axes) { return Axes{way(axes.first), way(axes.second), way(axes.upright)}; };
    StandingPost seen = post;
    seen.foot = point(post.foot);
    seen.plumb = all(post.plumb);
    seen.tipped = all(post.tipped);
    return seen;
}

Frame Carrying::frame(const Frame& frame) const {
    return {point(frame.origin), way(frame.along), way(frame.left), way(frame.top)};
}

LeavingBy leaving_by(const StandingPost& post, double x, double y, double beside) {
    if (post.joint) return {Face::joint};
    if (post.round()) return {Face::round, !less_than(std::fabs(beside), post.radius)};
    const Vector way(x, y, 0), left(-y, x, 0);
    const double along = way.dot(post.plumb.first), across = way.dot(post.plumb.second);
    const double p_along = std::fabs(along), p_across = std::fabs(across);
    const double half_seen = post.half_along * p_across + post.half_across * p_along;
    if (!less_than(std::fabs(beside), half_seen)) return {std::nullopt, true};
    // The line leaves through the face that it reaches first: (half - off) / |part|, `off` counted the way it goes.
    const auto toward = [&](double part, const Vector& axis) { return (part < 0 ? -beside : beside) * left.dot(axis); };
    const double to_end = (post.half_along - toward(along, post.plumb.first)) * p_across,
                 to_side = (post.half_across - toward(across, post.plumb.second)) * p_along;
    if (same(to_end, to_side, beside == 0 ? 0 : half_seen)) return {};
    if (to_end < to_side) return {along > 0 ? Face::uphill : Face::downhill};
    return {across > 0 ? Face::left : Face::right};
}

Plane face_plane(const StandingPost& post, Face face) {
    const bool is_end = face == Face::uphill || face == Face::downhill;
    return widening_face(face_plane(post, face, post.half_along, post.half_across), post.tipped.upright,
                         is_end ? post.widening_along : post.widening_across);
}

Plane trim_plane(const StandingPost& post, Face face) {
    return face_plane(post, face, post.trim->half_along, post.trim->half_across);
}

}  // namespace rakewright
