#include "cope.hpp"

#include <Eigen/Geometry>
#include <algorithm>
#include <cmath>

#include "../measure/compare.hpp"

namespace rakewright {
namespace {

double root(const Cope& cope, double m) { return std::sqrt(std::fmax(0, cope.radius * cope.radius - m * m)); }

double off_at(const Cope& cope, Spot spot) { return cope.off + cope.off_left * spot.left + cope.off_top * spot.top; }

/// What the cope reaches is convex: it is longest at an arris, and shortest somewhere on a face, for over a line on
/// which nothing changes it reaches the same to where that line leaves the section.
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
        const double per = level ? cope.per_left : cope.per_top, off = level ? cope.off_left : cope.off_top;
        if (off == 0) continue;
        // Nothing changes where per + stretch off m / root(m) = 0.
        const double ratio = -per / (cope.stretch * off);
        const double m = cope.radius * ratio / std::sqrt(1 + ratio * ratio);
        const double across = (m - off_at(cope, spot_on(face, section, 0))) / off;
        if (std::fabs(across) < face.width / 2) meet(spot_on(face, section, across));
    }
}

}  // namespace

double outward(const Cope& cope, Spot spot) {
    const double m = off_at(cope, spot), straight = cope.per_left * spot.left + cope.per_top * spot.top;
    const double roots = root(cope, cope.off) + root(cope, m);
    // root(off) - root(m), without what cancels in it.
    return straight + (roots > 0 ? cope.stretch * (m - cope.off) * (m + cope.off) / roots : 0);
}

Coping cope_to(const Frame& frame, const CrossSection& section, const Cylinder& cylinder, End end) {
    const Vector& axis = cylinder.upright;
    const Vector across_axis = frame.along - axis.dot(frame.along) * axis;
    const double size = across_axis.norm();
    Coping coping;
    if (size * steepest_cut < 1) return coping;
    const Vector way = across_axis / size, off_way = axis.cross(way), centre = frame.origin - cylinder.point;
    // The from end leaves the cylinder, the to end enters it.
    const double leaving = end == End::from ? 1 : -1;
    Cope& cope = coping.cope;
    cope.radius = cylinder.radius;
    cope.off = centre.dot(off_way);
    cope.off_left = frame.left.dot(off_way);
    cope.off_top = frame.top.dot(off_way);
    cope.stretch = 1 / size;
    cope.per_left = leaving * frame.left.dot(way) / size;
    cope.per_top = leaving * frame.top.dot(way) / size;
    coping.farthest =
        std::fabs(cope.off) + (std::fabs(cope.off_left) * section.width + std::fabs(cope.off_top) * section.depth) / 2;
    if (!no_more_than(coping.farthest, cope.radius)) {
        coping.missed = true;
        return coping;
    }
    const double out = root(cope, cope.off);
    const double least = cope.stretch * cope.off;
    if (std::max(std::fabs(least * cope.off_left), std::fabs(least * cope.off_top)) > steepest_cut * out) return coping;
    const Slant touching{(leaving * out - centre.dot(way)) / size,
                         -leaving * (cope.per_left + least * cope.off_left / out),
                         -leaving * (cope.per_top + least * cope.off_top / out)};
    if (std::max(std::fabs(touching.per_left), std::fabs(touching.per_top)) > steepest_cut) return coping;
    coping.touching = touching;
    find_reach(cope, section);
    return coping;
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
    turned.off_left = -cope.off_left;
    turned.off_top = -cope.off_top;
    turned.per_left = -cope.per_left;
    turned.per_top = -cope.per_top;
    return turned;
}

Cope end_for_end(const Cope& cope) {
    Cope turned = cope;
    turned.off_left = -cope.off_left;
    turned.per_left = -cope.per_left;
    return turned;
}

bool same_cope(const Cope& a, const Cope& b) {
    const auto off_alike = [&](double sign) {
        return alike(a.off, sign * b.off) && alike(a.off_left, sign * b.off_left) && alike(a.off_top, sign * b.off_top);
    };
    return alike(a.radius, b.radius) && alike(a.stretch, b.stretch) && alike(a.per_left, b.per_left) &&
           alike(a.per_top, b.per_top) && (off_alike(1) || off_alike(-1));
}

}  // namespace rakewright
