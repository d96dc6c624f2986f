#include "pickets_in_digits.hpp"

#include <algorithm>

namespace rakewright::tests {
namespace {

Real depth_of(const std::vector<MemberSize>& members) {
    Real depth = 0;
    for (const MemberSize& member : members) depth += exactly(member.depth);
    return depth;
}

/// Whether one of the eight corners that a picket has outside the rail lies behind a post's face.
bool cuts_into_post(const Build& build, const LevelsInDigits& levels, const WayInDigits& way, const Real& centre,
                    const Real& ground) {
    const Real half = exactly(build.pickets->width) / 2, half_depth = exactly(build.pickets->depth) / 2;
    for (const Facet& face : way.faces)
        for (const int side : {-1, 1})
            for (const int lateral : {-1, 1}) {
                const Point head =
                    way.at(centre + side * half, levels.upper_underside) + (lateral * half_depth) * way.left;
                const Point foot{head.x, head.y, ground};
                for (const Point& corner : {head, foot})
                    if (dot(face.normal, corner - face.through) < -1e-12 * fabs(centre)) return true;
            }
    return false;
}

}  // namespace

LevelsInDigits levels_in_digits(const Build& build, const Section& section, const WayInDigits& way) {
    LevelsInDigits levels;
    levels.upper_top = exactly(section.height ? *section.height : build.height);
    levels.upper_underside = levels.upper_top - depth_of(build.upper) * way.lengthened();
    levels.has_lower = !build.lower.empty();
    if (!levels.has_lower) return levels;
    const LowerGap& gap = section.lower_gap ? *section.lower_gap : *build.lower_gap;
    levels.lower_underside = exactly(gap.size) * (gap.is_block ? way.lengthened() : Real(1));
    levels.lower_top = levels.lower_underside + depth_of(build.lower) * way.lengthened();
    return levels;
}

std::vector<PicketInDigits> pickets_between(const Build& build, const LevelsInDigits& levels, const WayInDigits& way,
                                            const StairInDigits* stair, const std::array<Real, 2>& faces, int count) {
    const Real width = exactly(build.pickets->width), pitch = (faces[1] - faces[0] + width) / (count + 1);
    const Real upper_plough = exactly(build.pickets->plough.upper) * way.lengthened(),
               lower_plough = exactly(build.pickets->plough.lower) * (levels.has_lower ? way.lengthened() : Real(1));
    std::vector<PicketInDigits> pickets;
    for (int i = 1; i <= count; ++i) {
        const Real centre = faces[0] - width / 2 + i * pitch;
        const Point under = way.at(centre);
        // What it stands on, over the nosing line or floor.
        const Real foot = !levels.has_lower && stair ? stair->tread_under(under.x) - under.z : levels.lower_top;
        const Real side = levels.upper_underside - foot + upper_plough + lower_plough;
        pickets.push_back({centre, side, side});
    }
    return pickets;
}

std::vector<PicketInDigits> pickets_on_treads(const Build& build, const LevelsInDigits& levels, const WayInDigits& way,
                                              const StairInDigits& stair, int per_tread) {
    const PicketBuild& wanted = *build.pickets;
    const Real half = exactly(wanted.width) / 2, uphill = way.slope() > 0 ? 1 : -1;
    std::vector<PicketInDigits> pickets;
    for (std::size_t i = 0; i + 1 < stair.nosings.size(); ++i) {
        const Real run = stair.nosings[i + 1].x - stair.nosings[i].x;
        for (int j = 0; j < per_tread; ++j) {
            const Real face = stair.nosings[i].x + stair.nosings[i].projection + j * run / per_tread;
            const Real centre = (face - way.origin.x) / way.level.x + uphill * half;
            if (cuts_into_post(build, levels, way, centre, stair.nosings[i].z)) continue;
            const Real foot = stair.tread_under(way.at(centre).x) - exactly(wanted.plough.lower);
            const auto side = [&](const Real& along) {
                return way.at(along, levels.upper_underside).z + exactly(wanted.plough.upper) * way.lengthened() - foot;
            };
            pickets.push_back({centre, side(centre + uphill * half), side(centre - uphill * half)});
        }
    }
    std::sort(pickets.begin(), pickets.end(), [](const auto& a, const auto& b) { return a.centre < b.centre; });
    return pickets;
}

}  // namespace rakewright::tests
