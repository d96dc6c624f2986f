#include "paint.hpp"

namespace rakewright {
namespace {

/// How many of the square of the job's unit are a square foot, or a square metre.
double large_square(Unit unit) { return unit == Unit::inch ? 144 : 1e6; }

const PicketBuild& pickets_of(const Job& job, const CutPiece& piece) {
    const Section& section = job.sections[static_cast<std::size_t>(piece.uses.front().of)];
    return *job.builds[static_cast<std::size_t>(section.build.index)].pickets;
}

Surface surface_of(const Job& job, const CutPiece& piece) {
    if (piece.trim) return turned_surface(pickets_of(job, piece), piece.piece, *piece.trim);
    if (is_round(piece.stuff)) return round_surface(piece.piece);
    if (piece.stuff == Stuff::handrail)
        if (const std::optional<Reading>& perimeter = profile_of(job, piece).perimeter)
            return profile_surface(piece.piece, *perimeter);
    return surface_of(piece.piece, piece.copes);
}

Surface surface_of(const AlsoCut& stick) {
    return surface_of(Piece{{stick.section.front(), stick.section.back()}, {0, 0, 0}, {stick.length, 0, 0}});
}

}  // namespace

PaintList paint_list(const Job& job, const Solution& solution) {
    PaintList list;
    const double square = large_square(job.units);
    const auto add = [&](const std::string& name, int count, const Surface& surface) {
        const Surface each{surface.sides / square, surface.ends / square};
        list.pieces.push_back({mark_of(list.pieces.size()), name, count, each});
        list.all.sides += count * each.sides;
        list.all.ends += count * each.ends;
    };
    for (const CutPiece& piece : cut_list(job, solution)) add(names_of(piece), piece.quantity, surface_of(job, piece));
    for (const AlsoCut& stick : job.also_cut) add(stick.name, stick.count, surface_of(stick));
    if (job.paint && job.paint->coverage) list.volume = list.all.all() * job.paint->coats / *job.paint->coverage;
    return list;
}

}  // namespace rakewright
