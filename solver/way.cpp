#include "way.hpp"

#include <cmath>

namespace rakewright {
namespace {

/// The clear distance that the section gives, level; none where it gives none.
std::optional<double> clear_given(const Section& section, double lengthened) {
    if (section.clear) return section.clear->value;
    if (section.clear_on_slope) return *section.clear_on_slope / lengthened;
    if (section.clear_twice) return (section.clear_twice->low + section.clear_twice->high) / 2;
    return std::nullopt;
}

RailLine line_along(const SectionTask& task, const Surroundings& around, const FacesMet& faces) {
    const NosingLine nosings = around.stair ? *around.stair->line : NosingLine{};
    if (around.placed())
        return line_between(*around.from, *around.to, *way_between(*around.from, *around.to, around.beside),
                            around.beside, faces, nosings);
    const double lengthened = std::sqrt(1 + nosings.slope * nosings.slope);
    return line_over(*clear_given(task.section, lengthened), nosings, around.posts, around.beside);
}

/// Lays the line over the floor that the section names or is over: how high its origin is, and how it falls. Returns how
/// far along it the floor is highest, for a rail that is level.
double lay_over_floor(RailLine& line, const SectionTask& task, const Surroundings& around) {
    const Floor& floor = *around.floor;
    const double fall = slope(floor.falls.angle);
    const double rises = floor.toward == Toward::to     ? 0 - fall
                         : floor.toward == Toward::from ? fall
                                                        : 0 - around.fall_of_axes() * line.x;
    double high = 0;
    if (around.placed()) {
        if (rises > 0) high = line.centres[1];
        const Vector& foot = (rises > 0 ? around.to : around.from)->foot;
        line.origin.z() = around.on_floor ? 0 - around.fall_of_axes() * line.at(high).x() : foot.z();
    }
    if (task.section.follow == Follow::floor) {
        line.slope = rises;
        line.origin.z() -= rises * high;
    }
    line.floor = {0, rises};
    return high;
}

/// Boards round the feet of posts that have no place stand on the floor there.
void stand_trims_on_floor(RailLine& line, const Surroundings& around, const std::array<double, 2>& faces) {
    for (std::size_t e = 0; e < 2; ++e)
        if (line.trims[e].there())
            line.trims[e].up_to = line.floor_height(faces[e]) + around.posts[e].trim->height;
}

/// What the members are cut to, by the section's wish, where that is not the post's face.
RailEnd end_wished(const RailLine& line, const EndWish& wish, End end) {
    using Meets = EndWish::Meets;
    const double inward = end == End::from ? 1 : -1, centre = line.centres[index_of(end)];
    RailEnd result;
    const auto plumb_at = [&](double along) {
        const Plane plane{line.at(along), inward * Vector(line.x, line.y, 0)};
        result.kind = RailEnd::Kind::in_planes;
        result.planes = {plane, plane};
    };
    switch (wish.meets) {
        case Meets::face: break;
        case Meets::centre: plumb_at(centre); break;
        case Meets::past: plumb_at(centre - inward * wish.by); break;
        case Meets::square:
            result.kind = RailEnd::Kind::square;
            result.along = centre + inward * wish.by;
            break;
        case Meets::pad: result.pad = wish.by; break;
        case Meets::over:
            plumb_at(centre - inward * wish.by);
            result.kind = RailEnd::Kind::over;
            break;
    }
    return result;
}

/// Cuts the members at their ends to what the section wishes, or to the rails that it meets at joints.
void lay_ends(Way& way, const SectionTask& task, const Surroundings& around) {
    RailLine& line = way.line;
    for (const End end : both_ends) {
        const std::size_t e = index_of(end);
        line.ends[e] = end_wished(line, end == End::from ? task.section.ends.from : task.section.ends.to, end);
        if (!around.joints[e]) continue;
        way.joints[e] = joint_at(line, way.levels, end, *around.joints[e]);
        if (!way.joints[e]) continue;
        line.ends[e].kind = RailEnd::Kind::in_planes;
        line.ends[e].planes = way.joints[e]->planes;
        (end == End::from ? line.from : line.to) = way.joints[e]->middle;
    }
}

/// Where the clear distance was taken twice: half-way up the groups, or on what the pickets stand on.
std::array<double, 2> taken_at(const Levels& levels) {
    const double low = levels.has_lower ? (levels.lower_underside + levels.lower_top) / 2 : levels.lower_top;
    return {low, (levels.upper_underside + levels.upper_top) / 2};
}

}  // namespace

std::optional<std::array<double, 2>> faces_half_way(const RailLine& line, const Levels& levels) {
    const std::optional<double> from = face_along(line, End::from, levels.middle()),
                                to = face_along(line, End::to, levels.middle());
    if (!from || !to) return std::nullopt;
    return std::array{*from, *to};
}

std::optional<double> surface_at(const Surroundings& around, const RailLine& line, End end) {
    if (around.floor && !around.on_floor) {
        const std::optional<double> along = face_along(line, end, 0);
        return along ? std::optional(line.floor_height(*along)) : std::nullopt;
    }
    if (around.placed()) return (end == End::from ? around.from : around.to)->foot.z();
    if (around.stair) return std::nullopt;
    return 0;
}

Way way_of(const SectionTask& task, const Surroundings& around, const FacesMet& faces,
           const std::optional<LowerGap>& lower_gap) {
    Way way{line_along(task, around, faces), {}, {}};
    RailLine& line = way.line;
    const double high = around.floor ? lay_over_floor(line, task, around) : 0;
    way.levels = levels_of(task.build, task.height(), lower_gap, line);
    if (around.string_above && !way.levels.has_lower) {
        way.levels.on_string = true;
        way.levels.lower_top = *around.string_above;
    }
    if (task.section.clear_twice) {
        const auto [low, up] = taken_at(way.levels);
        lean_faces(line, *task.section.clear_twice, low, up);
    }
    lay_ends(way, task, around);
    touch_round_posts(line, way.levels.middle());
    way.faces = faces_half_way(line, way.levels);
    if (!way.faces) return way;
    if (const std::optional<double> clear = clear_given(task.section, line.lengthened())) {
        // Without places, the clear distance is between what is met half-way up: boards that reach so high stand in it.
        if (!around.placed()) move_end(line, End::from, -(*way.faces)[0]);
        if (!around.placed()) (*way.faces)[0] = 0;
        const double longer = *clear - ((*way.faces)[1] - (*way.faces)[0]);
        move_end(line, End::to, longer);
        (*way.faces)[1] += longer;
        if (around.placed()) way.moved = longer;
    }
    if (around.floor && task.section.follow == Follow::level)
        line.floor.high = around.on_floor ? high : (*way.faces)[line.floor.slope > 0 ? 1 : 0];
    if (around.floor && !around.placed()) stand_trims_on_floor(line, around, *way.faces);
    return way;
}

}  // namespace rakewright
