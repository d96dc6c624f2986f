#include "section_wood.hpp"

namespace rakewright {
namespace {

/// A standing square post as a stick, as thick as it is at a height.
Stick stick_of(const StandingPost& post, const Vector& at) {
    const auto& [along, across, upright] = post.tipped;
    const double up = (at - post.foot).dot(upright);
    return {{post.foot, upright, along, across},
            {{2 * (post.half_along + up * post.widening_along), 2 * (post.half_across + up * post.widening_across)},
             {},
             {}}};
}

/// A square post without a place: plumb, square to the rail, its centre as far beside the rail as the job says.
Stick stick_of(const RailLine& line, double beside, double size, const Vector& mark) {
    const Vector level(line.x, line.y, 0), across(-line.y, line.x, 0);
    return {{mark - beside * across, Vector::UnitZ(), level, across}, {{size, size}, {}, {}}};
}

}  // namespace

std::optional<Timber> timber_of(const FixingRoom& room, const Member& member) {
    if (room.task.build.tube) return std::nullopt;
    Timber timber{member.stick, {}, true, {}};
    for (const Splice& splice : member.splices) timber.splices.push_back(splice.cut);
    return timber;
}

std::optional<Timber> timber_of(const FixingRoom& room, const Stick& picket) {
    if (room.task.build.tube) return std::nullopt;
    return Timber{picket, {}, true, {}};
}

std::optional<Timber> post_timber(const FixingRoom& room, End end, const PlateAt& plate) {
    const std::size_t e = index_of(end);
    if (room.line.is_round(end)) {
        const Shaft& shaft = room.line.round(end);
        return Timber{stick_of(room.line, 0, 2 * shaft.radius, shaft.point), {}, false, shaft};
    }
    if (room.around.placed()) {
        const StandingPost& post = end == End::from ? *room.around.from : *room.around.to;
        return Timber{stick_of(post, plate.mark), {}, false, {}};
    }
    const double size = room.around.post_sizes[e];
    if (size == 0) return std::nullopt;
    return Timber{stick_of(room.line, room.around.beside[e], size, plate.mark), {}, false, {}};
}

}  // namespace rakewright
