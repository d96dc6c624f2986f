#include "way.hpp"

#include <cmath>

namespace rakewright {
namespace {

RailLine line_over_stair(const SectionTask& task, const Surroundings& around, const FacesMet& faces) {
    if (around.placed()) return line_between(*around.from, *around.to, faces, *around.stair);
    const NosingLine nosings = around.stair ? *around.stair->line : NosingLine{};
    const Section& section = task.section;
    const double lengthened = std::sqrt(1 + nosings.slope * nosings.slope);
    return line_over(section.clear ? section.clear->value : *section.clear_on_slope / lengthened, nosings,
                     around.radii);
}

/// The line over the floor that the section names, straight across a stair where its posts are placed there. `levels`
/// become those over it.
Way way_over_floor(const SectionTask& task, const Surroundings& around, const FacesMet& faces,
                   const std::optional<LowerGap>& lower_gap) {
    Way way{line_over_stair(task, around, faces), {}, {}};
    RailLine& line = way.line;
    const bool falls_to = around.floor->toward == Toward::to;
    const double fall = slope(around.floor->falls.angle), rises = falls_to ? 0 - fall : fall;
    double high = 0;
    if (around.placed()) {
        const Vector apart = around.to->foot - around.from->foot;
        line.origin.z() = (falls_to ? around.from : around.to)->foot.z();
        if (!falls_to) high = apart.x() * line.x + apart.y() * line.y;
    }
    if (task.section.follow == Follow::floor) {
        line.slope = rises;
        line.origin.z() -= rises * high;
        line.floor = {0, rises};
    }
    way.levels = levels_of(task.build, task.height(), lower_gap, line);
    touch_round_posts(line, way.levels.middle());
    way.faces = faces_half_way(line, way.levels);
    if (task.section.follow == Follow::level && way.faces) line.floor = {(*way.faces)[falls_to ? 0 : 1], rises};
    return way;
}

}  // namespace

std::optional<std::array<double, 2>> faces_half_way(const RailLine& line, const Levels& levels) {
    const std::optional<double> from = face_along(line, End::from, levels.middle()),
                                to = face_along(line, End::to, levels.middle());
    if (!from || !to) return std::nullopt;
    return std::array{*from, *to};
}

std::optional<double> surface_at(const Surroundings& around, const RailLine& line, End end) {
    if (around.floor) {
        const std::optional<double> along = face_along(line, end, 0);
        return along ? std::optional(line.floor_height(*along)) : std::nullopt;
    }
    if (around.placed()) return (end == End::from ? around.from : around.to)->foot.z();
    if (around.stair) return std::nullopt;
    return 0;
}

Way way_of(const SectionTask& task, const Surroundings& around, const FacesMet& faces,
           const std::optional<LowerGap>& lower_gap) {
    if (around.floor) return way_over_floor(task, around, faces, lower_gap);
    Way way{line_over_stair(task, around, faces), {}, {}};
    way.levels = levels_of(task.build, task.height(), lower_gap, way.line);
    if (around.string_above && !way.levels.has_lower) {
        way.levels.on_string = true;
        way.levels.lower_top = *around.string_above;
    }
    touch_round_posts(way.line, way.levels.middle());
    way.faces = faces_half_way(way.line, way.levels);
    return way;
}

}  // namespace rakewright
