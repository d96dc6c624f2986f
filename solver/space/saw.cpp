#include "saw.hpp"

#include <cmath>

#include "../measure/compare.hpp"

namespace rakewright {
namespace {

/// Whether a saw can be set so and then cuts through a piece of this thickness. Slopes are of the size of 1.
bool reaches(const SawSetting& setting, double thickness, const SawLimits& limits) {
    const double miter = std::fabs(setting.miter), bevel = std::fabs(setting.bevel);
    if (!no_more_than(miter, limits.miter, 1) || !no_more_than(bevel, limits.bevel, 1)) return false;
    return !limits.depth_of_cut || no_more_than(thickness, *limits.depth_of_cut / std::sqrt(1 + bevel * bevel));
}

SawSetting against_block(const SawSetting& setting) { return {1 / setting.miter, setting.bevel}; }

}  // namespace

EndCut end_cut(const Piece& piece, End end) {
    const Slant& cut = end == End::from ? piece.from : piece.to;
    const auto lying = [](double along_face, double across_face) {
        return SawSetting{along_face, across_face / std::sqrt(1 + along_face * along_face)};
    };
    return {lying(cut.per_left, cut.per_top), lying(cut.per_top, cut.per_left), long_point(piece, end)};
}

SawReach saw_reach(const EndCut& cut, const CrossSection& section, const SawLimits& limits) {
    struct Way {
        LaidOn laid;
        SawSetting setting;
        double thickness;
    };
    for (const Way& way : {Way{LaidOn::flat, cut.flat, section.depth}, Way{LaidOn::edge, cut.edge, section.width},
                           Way{LaidOn::flat_against_block, against_block(cut.flat), section.depth},
                           Way{LaidOn::edge_against_block, against_block(cut.edge), section.width}})
        if (reaches(way.setting, way.thickness, limits)) return {way.laid, way.setting};
    return {};
}

}  // namespace rakewright
