#include "turned.hpp"

#include <algorithm>
#include <cmath>

#include "../measure/compare.hpp"
#include "picket.hpp"

namespace rakewright {
namespace {

double between_blocks(const PicketBuild& build) { return *build.length - build.blocks->lower - build.blocks->upper; }

/// How much longer than at its centre a cut leaves a picket at its long side, and shorter at its short one.
double tip(const PicketBuild& build, const Slant& cut) { return build.width / 2 * std::fabs(cut.per_top); }

/// Plumb, how far the picket enters the rail, and what it stands on.
double in_upper(const PicketRoom& room, const Piece& piece) { return piece.to.at - room.levels.upper_underside; }
double in_lower(const PicketRoom& room, const Piece& piece) {
    return room.levels.parallel() ? room.levels.lower_top - piece.from.at : room.build.plough.lower.value;
}

/// The worst of what is found of many pickets.
struct Worst {
    double short_by = 0;
    std::optional<Finding> finding;

    void add(const Finding& next, double needed, double there, double scale) {
        if (!less_than(there, needed, scale) || needed - there <= short_by) return;
        short_by = needed - there;
        finding = next;
    }
};

}  // namespace

double Silhouette::half_at(double over) const {
    if (turning.empty() || over <= turning.front().over || over >= turning.back().over) return half_block;
    const auto above =
        std::find_if(turning.begin(), turning.end(), [&](const HalfWidth& at) { return at.over > over; });
    const HalfWidth &high = *above, &low = *(above - 1);
    return low.half + (over - low.over) / (high.over - low.over) * (high.half - low.half);
}

Silhouette silhouette_of(const PicketBuild& build, double level) {
    const double block = build.width / 2;
    std::vector<HalfWidth> places{{0, block}};
    for (const Turning& turning : build.turning) places.push_back({turning.at, turning.diameter / 2});
    places.push_back({between_blocks(build), block});
    Silhouette silhouette{level, block, {}};
    for (std::size_t i = 0; i < places.size(); ++i) {
        const bool hollow = places[i].half < block || (i > 0 && places[i - 1].half < block) ||
                            (i + 1 < places.size() && places[i + 1].half < block);
        if (hollow) silhouette.turning.push_back(places[i]);
    }
    return silhouette;
}

std::optional<double> turning_level(const PicketRoom& room, const Layout& layout) {
    const PicketBuild& build = room.build;
    if (layout.centres.empty()) return std::nullopt;
    const double under_rail = room.levels.upper_underside - between_blocks(build);
    if (build.upper_block) return under_rail - *build.upper_block;
    if (room.levels.parallel()) {
        const Piece piece = picket_piece(room, layout.centres.front());
        const double off = *build.length - length(piece);
        return piece.from.at + build.blocks->lower - off / 2;
    }
    if (!room.footing_known) return std::nullopt;
    double longest = 0, head = 0;
    for (const double centre : layout.centres) {
        const Piece piece = picket_piece(room, centre);
        longest = std::max(longest, length(piece));
        head = piece.to.at;
    }
    return head - longest + build.blocks->lower;
}

Trim trim_of(const PicketBuild& build, const Piece& piece, double level) {
    const double lower = level - piece.from.at, upper = piece.to.at - (level + between_blocks(build));
    return {lower, upper, build.blocks->lower - lower, build.blocks->upper - upper};
}

bool trims_fit(const PicketRoom& room, const Layout& layout, double level, const Place& section,
               std::vector<Finding>& findings) {
    const PicketBuild& build = room.build;
    const double least = build.least_block.value_or(0), scale = *build.length;
    Worst stick;
    std::array<Worst, 2> bought, left;
    for (std::size_t i = 0; i < layout.centres.size(); ++i) {
        if (room.levels.parallel() && i > 0) break;  // all are like the first
        const Piece piece = picket_piece(room, layout.centres[i]);
        const Trim trim = trim_of(build, piece, level);
        const double number = double(i + 1), whole = overall(piece);
        stick.add({Trouble::picket_too_short, build.length->place, {scale, whole, number}, section}, whole, scale,
                  scale);
        const auto check_block = [&](int group, const Reading& block, double kept, double entering, double at_tip) {
            const auto g = static_cast<std::size_t>(group);
            const double needed = kept + at_tip, shown = kept - entering - at_tip;
            bought[g].add({Trouble::block_too_short, block.place, {double(group), block, needed, number}, section},
                          needed, block, scale);
            left[g].add({Trouble::too_little_block, section, {double(group), shown, least, number}, block.place}, least,
                        shown, scale);
        };
        check_block(0, build.blocks->upper, trim.upper_block, in_upper(room, piece), tip(build, piece.to));
        check_block(1, build.blocks->lower, trim.lower_block, in_lower(room, piece), tip(build, piece.from));
    }
    const std::size_t before = findings.size();
    // A stick too short leaves its blocks too short as well.
    if (stick.finding)
        findings.push_back(*stick.finding);
    else
        for (const auto* blocks : {&bought, &left})
            for (const Worst& worst : *blocks)
                if (worst.finding) findings.push_back(*worst.finding);
    return findings.size() == before;
}

}  // namespace rakewright
