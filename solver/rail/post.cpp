#include "post.hpp"

#include <cmath>

#include "../measure/compare.hpp"

namespace rakewright {
namespace {

std::optional<double> place_of_centre(const Post& post, const StairShape& stair, std::vector<Finding>& findings) {
    const int number = post.nosing.value == 0 ? stair.risers() : post.nosing.value;
    if (number > stair.risers()) {
        findings.push_back(
            {Trouble::nosing_beyond_stair, post.nosing.place, {double(number), double(stair.risers())}, {}});
        return std::nullopt;
    }
    const double face = stair.nosing(number).x + post.at->value, half_along = size_of(post).along / 2;
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

}  // namespace

std::optional<StandingPost> stand(const Post& post, const StairShape& stair, std::vector<Finding>& findings) {
    const std::optional<double> x = place_of_centre(post, stair, findings);
    if (!x) return std::nullopt;
    const std::optional<double> z = height_of_foot(post, stair, *x, findings);
    if (!z) return std::nullopt;
    const Axes plumb = turned(post.turn.angle);
    const PostSize size = size_of(post);
    return StandingPost{Vector(*x, post.across, *z),
                        plumb,
                        tipped(plumb, slope(post.lean.along.angle), slope(post.lean.across.angle)),
                        size.along / 2,
                        size.across / 2,
                        post.shape == PostShape::round ? size.along / 2 : 0};
}

std::optional<Face> face_left_by(const StandingPost& post, double x, double y) {
    if (post.round()) return Face::round;
    const Vector way(x, y, 0);
    const double along = way.dot(post.plumb.first), across = way.dot(post.plumb.second);
    // The line leaves through the face that it reaches first: half_along / |along| against half_across / |across|.
    const double to_end = post.half_along * std::fabs(across), to_side = post.half_across * std::fabs(along);
    if (same(to_end, to_side)) return std::nullopt;
    if (to_end < to_side) return along > 0 ? Face::uphill : Face::downhill;
    return across > 0 ? Face::left : Face::right;
}

Plane face_plane(const StandingPost& post, Face face) {
    switch (face) {
        case Face::uphill: return {post.foot + post.half_along * post.tipped.first, post.tipped.first};
        case Face::downhill: return {post.foot - post.half_along * post.tipped.first, -post.tipped.first};
        case Face::left: return {post.foot + post.half_across * post.tipped.second, post.tipped.second};
        case Face::right:
        case Face::round: break;
    }
    return {post.foot - post.half_across * post.tipped.second, -post.tipped.second};
}

}  // namespace rakewright
