#include "hollowed.hpp"

#include <algorithm>
#include <cmath>

#include "../measure/compare.hpp"

namespace rakewright {
namespace {

double extent(const Outline& outline) {
    double farthest = 0;
    for (const Seen& corner : outline) farthest = std::max({farthest, std::fabs(corner.along), std::fabs(corner.up)});
    return farthest;
}

/// The silhouette over an edge on the blocks' face, from its lower end to its upper one; where it is hollow at an end,
/// it starts from the face there.
Outline over_edge(double low, double high, const Silhouette& picket, const Beside& beside, double scale) {
    const auto seen = [&](double up, double half) {
        return Seen{beside.face + beside.behind * (picket.half_block - half), up};
    };
    Outline corners;
    const auto end = [&](double up) {
        const double half = picket.half_at(up - beside.turning);
        if (half < picket.half_block) corners.push_back(seen(up, half));
    };
    end(low);
    for (const HalfWidth& place : picket.turning) {
        const double up = beside.turning + place.over;
        if (less_than(up, low, scale) || less_than(high, up, scale)) continue;
        const bool at_end = same(up, low, scale) || same(up, high, scale);
        if (at_end && place.half == picket.half_block) continue;  // the edge's own end
        corners.push_back(seen(std::clamp(up, low, high), place.half));
    }
    end(high);
    const auto one_place = [](const Seen& a, const Seen& b) { return a.along == b.along && a.up == b.up; };
    corners.erase(std::unique(corners.begin(), corners.end(), one_place), corners.end());
    return corners;
}

}  // namespace

Outline hollowed(const Outline& outline, const Silhouette& picket, const Beside& beside) {
    if (picket.turning.empty()) return outline;
    const double scale = extent(outline);
    const auto on_face = [&](const Seen& corner) { return same(corner.along, beside.face, scale); };
    Outline result;
    result.reserve(outline.size() + picket.turning.size() + 2);
    for (std::size_t i = 0; i < outline.size(); ++i) {
        const Seen &from = outline[i], &to = outline[(i + 1) % outline.size()];
        result.push_back(on_face(from) ? Seen{beside.face, from.up} : from);
        if (!on_face(from) || !on_face(to)) continue;
        Outline corners = over_edge(std::min(from.up, to.up), std::max(from.up, to.up), picket, beside, scale);
        if (from.up > to.up) std::reverse(corners.begin(), corners.end());
        result.insert(result.end(), corners.begin(), corners.end());
    }
    return result;
}

}  // namespace rakewright
