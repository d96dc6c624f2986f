#include "rail_foot.hpp"

#include <algorithm>
#include <cmath>

#include "../measure/compare.hpp"

namespace rakewright {
namespace {

/// Whether a foot with its centre there would stand astride a nosing.
bool is_astride(const FootRoom& room, double along) {
    if (!room.treads || room.string_above) return false;
    const double x = room.line.at(along).x();
    const double half = (room.section.depth * std::fabs(room.line.x) + room.section.width * std::fabs(room.line.y)) / 2;
    const double scale = room.treads->run_total();
    return std::any_of(room.treads->nosings.begin(), room.treads->nosings.end(), [&](const Nosing& nosing) {
        return less_than(x - half, nosing.x, scale) && less_than(nosing.x, x + half, scale);
    });
}

Plane stood_on(const FootRoom& room, const Frame& foot, double along) {
    const RailLine& line = room.line;
    if (room.string_above)
        return {line.at(along, *room.string_above), frame_on_slope(Vector::Zero(), line.x, line.y, line.slope).top};
    const double height =
        room.treads ? surface_height(*room.treads, tread_under(*room.treads, foot.origin.x()), foot.origin.x())
                    : line.floor_height(along);
    return {Vector(0, 0, height), Vector::UnitZ()};
}

/// The foot with its centre there; none where it cannot stand there.
std::optional<RailFoot> foot_at(const FootRoom& room, double along) {
    if (is_astride(room, along)) return std::nullopt;
    const RailLine& line = room.line;
    const double uphill = line.slope < 0 ? -1 : 1;
    const Frame frame = frame_plumb(line.at(along), uphill * line.x, uphill * line.y);
    const Plane under{line.at(along, room.levels.lower_underside),
                      frame_on_slope(Vector::Zero(), line.x, line.y, line.slope).top};
    const Piece piece{room.section, *cut(frame, stood_on(room, frame, along)), *cut(frame, under)};
    if (!less_than(0, shortest_arris(piece), room.levels.upper_top)) return std::nullopt;
    return RailFoot{
        0, along - room.from_face, edge_length(piece, {0, 1}), edge_length(piece, {0, -1}), overall(piece), piece};
}

}  // namespace

std::optional<int> feet_under(double clear, double every) {
    const double parts = std::ceil(clear / every);
    if (parts - 1 > most_feet) return std::nullopt;
    return static_cast<int>(same(parts - 1, clear / every) ? parts - 2 : parts - 1);
}

std::vector<std::optional<RailFoot>> feet_placed(const FootRoom& room, int count, const std::vector<double>& pickets) {
    std::vector<std::optional<RailFoot>> feet;
    std::vector<bool> taken(pickets.size());
    const double clear = room.to_face - room.from_face;
    for (int number = 1; number <= count; ++number) {
        const double wished = clear * number / (count + 1);
        std::optional<RailFoot>& foot = feet.emplace_back();
        if (pickets.empty()) {
            foot = foot_at(room, room.from_face + wished);
            continue;
        }
        // The first of those that are equally near.
        double off = INFINITY;
        for (std::size_t i = 0; i < pickets.size(); ++i) {
            const double this_off = std::fabs(pickets[i] - wished);
            if (taken[i] || !less_than(this_off, off, clear)) continue;
            std::optional<RailFoot> here = foot_at(room, room.from_face + pickets[i]);
            if (!here) continue;
            off = this_off;
            foot = std::move(here);
            foot->picket = static_cast<int>(i) + 1;
        }
        if (foot) taken[static_cast<std::size_t>(foot->picket - 1)] = true;
    }
    return feet;
}

}  // namespace rakewright
