#include "cope.hpp"

#include <Eigen/Geometry>
#include <algorithm>
#include <cmath>

#include "../measure/compare.hpp"

namespace rakewright {
namespace {

double root(double room) { return std::sqrt(std::fmax(0, room)); }

/// What the cope reaches is convex: it is longest at an arris, and shortest somewhere on a face, for along a straight
/// line of the post's surface it changes evenly, to where that leaves the section.
void find_reach(Cope& cope, const CrossSection& section) {
    cope.longest = cope.shortest = outward(cope, {section.width / 2, section.depth / 2});
    const auto meet = [&](Spot spot) {
        const double out = outward(cope, spot);
        cope.longest = std::max(cope.longest, out);
        cope.shortest = std::min(cope.shortest, out);
    };
    for (const StickFace& face : faces_of(section)) {
        meet(spot_on(face, section, -face.width / 2));
        const bool level = face.side.top != 0;
        const Spot middle = spot_on(face, section, 0);
        const double per = level ? cope.per_left : cope.per_top;
        // Across the face the room is a + b u + c u^2, and nothing changes where 2 per root(room) = stretch (b + 2 c
        // u).
        const double a = cope.room.at_centre + cope.room.more(middle),
                     b = level ? cope.room.left + cope.room.left_top * middle.top
                               : cope.room.top + cope.room.left_top * middle.left,
                     c = level ? cope.room.left_left : cope.room.top_top;
        const double steep = 4 * (per * per - cope.stretch * cope.stretch * c);
        if (c == 0 || steep == 0) continue;
        const double rest = (4 * per * per * a - cope.stretch * cope.stretch * b * b) / (c * steep);
        // The room is concave over the section, so that there is such a place; rounding alone makes this negative.
        const double under = std::fmax(0, b * b / (4 * c * c) - rest);
        for (const double side : {-1.0, 1.0})
            if (const double across = -b / (2 * c) + side * std::sqrt(under); std::fabs(across) < face.width / 2)
                meet(spot_on(face, section, across));
    }
}

/// How the room changes over the section: of lines that run beside the stick's centre line, seen from where that is
/// nearest to the post's axis.
OverSection room_over(const Frame& frame, const Shaft& post, const ShaftCrossing& centre) {
    const Vector& axis = post.upright;
    const auto square = [&](const Vector& v) { return Vector(v - axis.dot(v) * axis); };
    const Vector nearest = frame.origin + centre.at_nearest * frame.along - post.point;
    const Vector off = square(nearest), across = square(frame.along), left = square(frame.left),
                 top = square(frame.top);
    const double k = post.widening, radius = post.radius_at(axis.dot(nearest));
    const double left_up = k * axis.dot(frame.left), top_up = k * axis.dot(frame.top), along_up = k * centre.along_axis;
    // Half of how the equation changes along the line: at the centre, and for each unit to the left and to the top.
    const double half = -along_up * radius, half_left = left.dot(across) - along_up * left_up,
                 half_top = top.dot(across) - along_up * top_up;
    const double share = centre.stretch * centre.stretch;
    OverSection room;
    room.at_centre = centre.room;
    room.left = 2 * (half * half_left * share - off.dot(left) + radius * left_up);
    room.top = 2 * (half * half_top * share - off.dot(top) + radius * top_up);
    room.left_left = half_left * half_left * share - left.squaredNorm() + left_up * left_up;
    room.top_top = half_top * half_top * share - top.squaredNorm() + top_up * top_up;
    room.left_top = 2 * (half_left * half_top * share - left.dot(top) + left_up * top_up);
    return room;
}

}  // namespace

double outward(const Cope& cope, Spot spot) {
    const double more = cope.room.more(spot), straight = cope.per_left * spot.left + cope.per_top * spot.top;
    const double roots = root(cope.room.at_centre) + root(cope.room.at_centre + more);
    // root(room at the centre) - root(room over the spot), without what cancels in it.
    return straight - (roots > 0 ? cope.stretch * more / roots : 0);
}

Coping cope_to(const Frame& frame, const CrossSection& section, const Shaft& post, End end) {
    const ShaftCrossing centre = crossing_of(post, frame.origin, frame.along);
    Coping coping;
    if (!centre.crosses) return coping;
    // The from end leaves the post, the to end enters it.
    const double leaving = end == End::from ? 1 : -1;
    Cope& cope = coping.cope;
    cope.stretch = centre.stretch;
    cope.room = room_over(frame, post, centre);
    const double share = centre.stretch * centre.stretch, along_up = post.widening * centre.along_axis;
    const auto per = [&](const Vector& side) {
        const double up = post.upright.dot(side);
        return leaving * share * (side.dot(frame.along) - up * centre.along_axis - along_up * post.widening * up);
    };
    cope.per_left = per(frame.left);
    cope.per_top = per(frame.top);
    double least_room = centre.room;
    for (const int left : {-1, 1})
        for (const int top : {-1, 1}) {
            const Spot corner = spot_of({left, top}, section);
            const Vector begin = frame.origin + corner.left * frame.left + corner.top * frame.top;
            coping.farthest = std::fmax(coping.farthest, crossing_of(post, begin, frame.along).off);
            least_room = std::fmin(least_room, centre.room + cope.room.more(corner));
        }
    const double up = post.upright.dot(frame.origin + (centre.at_nearest + centre.middle) * frame.along - post.point);
    cope.radius = post.radius_at(up);
    if (!no_more_than(0, least_room, cope.radius * cope.radius)) {
        coping.missed = true;
        return coping;
    }
    const double out = root(centre.room);
    if (std::max(std::fabs(cope.room.left), std::fabs(cope.room.top)) * cope.stretch > 2 * steepest_cut * out)
        return coping;
    const double tilt = cope.stretch / (2 * out);
    const double at = centre.at_nearest + centre.middle + leaving * out * cope.stretch;
    const Slant touching{at, -leaving * (cope.per_left - tilt * cope.room.left),
                         -leaving * (cope.per_top - tilt * cope.room.top)};
    if (std::max(std::fabs(touching.per_left), std::fabs(touching.per_top)) > steepest_cut) return coping;
    cope.radius = post.radius_at(post.upright.dot(frame.origin + at * frame.along - post.point));
    coping.touching = touching;
    find_reach(cope, section);
    return coping;
}

double length_over(const Piece& piece, const Copes& copes, Spot spot) {
    double all = length(piece);
    for (const End end : both_ends) {
        const bool at_from = end == End::from;
        const Slant& slant = at_from ? piece.from : piece.to;
        const double beyond = slant.per_left * spot.left + slant.per_top * spot.top;
        const std::optional<Cope>& cope = copes[at_from ? 0 : 1];
        all += cope ? outward(*cope, spot) : at_from ? -beyond : beyond;
    }
    return all;
}

bool arrises_differ(const Piece& piece, const Copes& copes) {
    return copes[0] || copes[1] || !alike(piece.from.per_left, 0) || !alike(piece.to.per_left, 0);
}

std::array<StickFace, 4> faces_of(const CrossSection& section) {
    return {StickFace{{0, 1}, section.width}, StickFace{{-1, 0}, section.depth}, StickFace{{0, -1}, section.width},
            StickFace{{1, 0}, section.depth}};
}

Spot spot_on(const StickFace& face, const CrossSection& section, double across) {
    Spot spot = spot_of(face.side, section);
    (face.side.top != 0 ? spot.left : spot.top) += across;
    return spot;
}

std::vector<OutlinePoint> outline_on(const Cope& cope, const StickFace& face, const CrossSection& section) {
    std::vector<OutlinePoint> points;
    points.reserve(outline_parts + 1);
    for (int part = 0; part <= outline_parts; ++part) {
        const double across = face.width * (double(part - outline_parts / 2) / outline_parts);
        points.push_back({across, outward(cope, spot_on(face, section, across))});
    }
    return points;
}

Cope rolled(const Cope& cope) {
    Cope turned = cope;
    turned.room.left = -cope.room.left;
    turned.room.top = -cope.room.top;
    turned.per_left = -cope.per_left;
    turned.per_top = -cope.per_top;
    return turned;
}

Cope end_for_end(const Cope& cope) {
    Cope turned = cope;
    turned.room.left = -cope.room.left;
    turned.room.left_top = -cope.room.left_top;
    turned.per_left = -cope.per_left;
    return turned;
}

bool same_cope(const Cope& a, const Cope& b) {
    const OverSection &one = a.room, &other = b.room;
    return alike(a.radius, b.radius) && alike(a.stretch, b.stretch) && alike(a.per_left, b.per_left) &&
           alike(a.per_top, b.per_top) && alike(one.at_centre, other.at_centre) && alike(one.left, other.left) &&
           alike(one.top, other.top) && alike(one.left_left, other.left_left) && alike(one.left_top, other.left_top) &&
           alike(one.top_top, other.top_top);
}

}  // namespace rakewright
