#include "picket.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

#include "../measure/compare.hpp"

namespace rakewright {
namespace {

/// The member whose face the pickets meet: the lowest of the upper group, the highest of the lower.
const Member* meeting(const std::vector<Member>& members, Group group) {
    const auto is_of = [&](const Member& member) { return member.group == group; };
    if (group == Group::upper) {
        const auto found = std::find_if(members.rbegin(), members.rend(), is_of);
        return found == members.rend() ? nullptr : &*found;
    }
    const auto found = std::find_if(members.begin(), members.end(), is_of);
    return found == members.end() ? nullptr : &*found;
}

Spot picket_face(const Member& member) {
    return {0, (member.group == Group::upper ? -member.depth : member.depth) / 2};
}

/// Where along a member its pickets are marked.
Spot marked_at(const Member& member, const std::optional<RailSide>& beside) {
    Spot spot = picket_face(member);
    if (beside) spot.left = beside->side * member.width / 2;
    return spot;
}

/// A plumb plane square to the rail in plan.
Plane plumb_at(const RailLine& line, double along) { return {line.at(along), Vector(line.x, line.y, 0)}; }

Marks marks_on(const Member& member, const PicketRoom& room, const Layout& layout) {
    const RailLine& line = room.line;
    const Spot face = marked_at(member, room.beside);
    const double start = reach(member, End::from, face),
                 origin = reach(*cut(member.stick.frame, plumb_at(line, 0)), face);
    Marks marks;
    marks.face_length = reach(member, End::to, face) - start;
    marks.half_width = room.build.width / 2 * line.lengthened();
    marks.hook = hook_on(member, face);
    marks.centres.reserve(layout.centres.size());
    for (const double centre : layout.centres) marks.centres.push_back(origin + centre * line.lengthened() - start);
    return marks;
}

/// Takes into account how wide the gaps are left when every picket is set to its near edge as the tape reads it, on one
/// rail.
void widen(Pickets& pickets, const Marks& marks, const std::vector<double>& gaps, const Tape& tape, double lengthened) {
    const double away = marks.hook == End::from ? 1 : -1;
    const std::size_t last = gaps.size() - 1;
    double between = 0, between_marked = 0, moved_before = 0;
    for (std::size_t i = 0; i <= last; ++i) {
        double moved = 0;
        if (i < last) {
            const double edge = marks.near_edge(i);
            moved = away * (at_mark(nearest_mark(edge, tape), tape) - edge) / lengthened;
        }
        const double wider = moved - moved_before, marked = gaps[i] + wider;
        moved_before = moved;
        pickets.widest_marked = std::max(pickets.widest_marked, marked);
        if (i == 0) pickets.widened.at_from = std::max(pickets.widened.at_from, wider);
        if (i == last) pickets.widened.at_to = std::max(pickets.widened.at_to, wider);
        if (i == 0 || i == last) continue;
        between = std::max(between, gaps[i]);
        between_marked = std::max(between_marked, marked);
    }
    pickets.widened.between = std::max(pickets.widened.between, between_marked - between);
}

/// The face that pickets enter: of a group, or of what they stand on, `in` square to it.
Plane entered(const RailLine& line, double level, double in) {
    const Vector top = frame_on_slope(Vector::Zero(), line.x, line.y, line.slope).top;
    return {line.at(0, level) + in * top, top};
}

double footing(const PicketRoom& room, double along) {
    if (!room.treads) return room.line.floor_height(along);
    const double x = room.line.at(along).x();
    return surface_height(*room.treads, tread_under(*room.treads, x), x);
}

PicketPiece one_piece(const Piece& piece) {
    return {0, {}, edge_length(piece, {0, 1}), edge_length(piece, {0, -1}), overall(piece), piece, {}};
}

/// Between two groups every picket is like the first.
PicketPiece one_for_all(const Piece& piece, std::size_t count) {
    PicketPiece all = one_piece(piece);
    all.count = static_cast<int>(count);
    all.at.resize(count);
    std::iota(all.at.begin(), all.at.end(), 1);
    return all;
}

std::vector<PicketPiece> pieces_of(const PicketRoom& room, const Layout& layout) {
    std::vector<PicketPiece> pieces;
    if (room.all_alike()) {
        pieces.push_back(one_for_all(picket_piece(room, layout.centres.front()), layout.centres.size()));
        return pieces;
    }
    for (std::size_t i = 0; i < layout.centres.size(); ++i) {
        PicketPiece next = one_piece(picket_piece(room, layout.centres[i]));
        const auto equal = std::find_if(pieces.begin(), pieces.end(), [&](const PicketPiece& piece) {
            return alike(piece.uphill_side, next.uphill_side) && alike(piece.downhill_side, next.downhill_side);
        });
        PicketPiece& mine = equal == pieces.end() ? pieces.emplace_back(std::move(next)) : *equal;
        ++mine.count;
        mine.at.push_back(static_cast<int>(i) + 1);
    }
    return pieces;
}

/// The strips in the plough of one member.
void add_fillets(const Member& member, const RailLine& line, const Layout& layout, const PicketBuild& build,
                 double deep, std::vector<Fillet>& fillets) {
    const Spot middle{0, picket_face(member).top + (member.group == Group::upper ? deep : -deep) / 2};
    Frame frame = member.stick.frame;
    frame.origin = point_on(frame, 0, middle);
    const auto in_plough = [&](const Slant& slant) {
        return Slant{reach(slant, middle), slant.per_left, slant.per_top};
    };
    const std::size_t first = fillets.size();
    Slant from = in_plough(member.stick.piece.from);
    for (std::size_t i = 0; i <= layout.centres.size(); ++i) {
        const bool last = i == layout.centres.size();
        const Slant to =
            last ? in_plough(member.stick.piece.to) : *cut(frame, plumb_at(line, layout.centres[i] - build.width / 2));
        const Piece piece{{build.depth, deep}, from, to};
        if (!last) from = *cut(frame, plumb_at(line, layout.centres[i] + build.width / 2));
        if (!less_than(0, shortest_arris(piece), layout.clear())) continue;
        const auto equal = std::find_if(fillets.begin() + static_cast<std::ptrdiff_t>(first), fillets.end(),
                                        [&](const Fillet& fillet) { return same_piece(fillet.piece, piece); });
        Fillet& mine = equal == fillets.end()
                           ? fillets.emplace_back(Fillet{member.group, 0, {}, length(piece), overall(piece), piece})
                           : *equal;
        ++mine.count;
        mine.at.push_back(static_cast<int>(i));
    }
}

/// The gap that all neighbours have but for rounding; none where they differ or there are no two.
std::optional<double> equal_between(const std::vector<double>& gaps, double scale) {
    if (gaps.size() < 3) return std::nullopt;
    const bool all_equal =
        std::all_of(gaps.begin() + 1, gaps.end() - 1, [&](double gap) { return same(gap, gaps[1], scale); });
    return all_equal ? std::optional(gaps[1]) : std::nullopt;
}

void measure_gaps(Pickets& pickets, const std::vector<double>& gaps, const Layout& layout, double lengthened) {
    pickets.from_gap = gaps.front();
    pickets.to_gap = gaps.back();
    pickets.widest_gap = *std::max_element(gaps.begin(), gaps.end());
    pickets.gap = equal_between(gaps, layout.clear());
    if (!pickets.gap) return;
    pickets.pitch = *pickets.gap + pickets.width;
    pickets.pitch_on_slope = *pickets.pitch * lengthened;
}

Vector left_of(const RailLine& line) { return Vector(-line.y, line.x, 0); }

/// The plane through the lowest point, in the middle of its width, of the foot of a picket with its centre at a place.
Plane foot_beside(const PicketRoom& room, const Vector& lowest) {
    const LowerEnd end = room.build.lower_end.value_or(LowerEnd());
    switch (end.cut) {
        case LowerEnd::Cut::square: break;
        case LowerEnd::Cut::rail: return {lowest, entered(room.line, 0, 0).normal};
        case LowerEnd::Cut::bevel: {
            const Vector outward = room.beside->side * left_of(room.line);
            const Vector normal = Vector::UnitZ() + slope(end.bevel.angle) * outward;
            return {lowest + room.build.depth / 2 * outward, normal.normalized()};
        }
    }
    return {lowest, Vector::UnitZ()};
}

/// A picket on the side of the rail.
Piece piece_beside(const PicketRoom& room, double along) {
    const RailLine& line = room.line;
    const RailSide& beside = *room.beside;
    const double uphill = line.slope < 0 ? -1 : 1;
    const Vector off = beside.side * (beside.off + room.build.depth / 2) * left_of(line);
    const Frame frame = frame_plumb(line.at(along) + off, uphill * line.x, uphill * line.y);
    Vector lowest = line.at(along, beside.foot.value_or(0)) + off;
    if (!beside.foot) lowest.z() = footing(room, along) - (room.build.past ? room.build.past->lower.value : 0);
    return {{room.build.depth, room.build.width},
            *cut(frame, foot_beside(room, lowest)),
            *cut(frame, entered(line, beside.head, 0))};
}

bool is_bevelled(const PicketBuild& build) { return build.lower_end && build.lower_end->cut == LowerEnd::Cut::bevel; }

}  // namespace

Piece picket_piece(const PicketRoom& room, double along) {
    if (room.beside) return piece_beside(room, along);
    const double uphill = room.line.slope < 0 ? -1 : 1;
    const Frame frame = frame_plumb(room.line.at(along), uphill * room.line.x, uphill * room.line.y);
    const Plough& plough = room.build.plough;
    const double weld = room.build.weld_gap, lower_weld = room.levels.has_lower ? weld : 0;
    const Plane head = entered(room.line, room.levels.upper_underside - weld, plough.upper);
    const Plane foot = room.levels.parallel()
                           ? entered(room.line, room.levels.lower_top + lower_weld, -plough.lower)
                           : Plane{Vector(0, 0, footing(room, along) - plough.lower), Vector::UnitZ()};
    return {{room.build.depth, room.build.width}, *cut(frame, foot), *cut(frame, head)};
}

std::vector<double> Pickets::centres_from(double along) const {
    std::vector<double> from(centres);
    for (double& centre : from) centre += from_face - along;
    return from;
}

double Marks::centre_from_hook(std::size_t picket) const {
    return hook == End::from ? centres[picket] : face_length - centres[picket];
}

double Marks::first_centre(End end) const { return end == End::from ? centres.front() : face_length - centres.back(); }

double Marks::near_edge(std::size_t picket) const { return centre_from_hook(picket) - half_width; }

Slot slot_for(const PicketBuild& build, const Punched& punched, double slope) {
    const double lengthened = std::sqrt(1 + slope * slope);
    return {build.width * lengthened + punched.web * std::fabs(slope) + punched.clearance,
            build.depth + punched.clearance};
}

std::optional<PicketHole> hole_for(const PicketBuild& build, bool foot_on_slope, double slope) {
    const Plough& enters = build.plough;
    if (build.shape != PicketShape::round || (enters.upper == 0 && enters.lower == 0)) return std::nullopt;
    const double lengthened = std::sqrt(1 + slope * slope), tip = build.width / 2 * std::fabs(slope);
    PicketHole hole{build.width, 0, 0};
    if (enters.upper > 0) hole.upper = enters.upper * lengthened + tip;
    if (enters.lower > 0) hole.lower = foot_on_slope ? enters.lower * lengthened + tip : enters.lower.value;
    return hole;
}

Pickets pickets_of(const PicketRoom& room, const Layout& layout, const std::vector<Foot>& feet, int per_tread) {
    Pickets pickets;
    pickets.count = static_cast<int>(layout.centres.size());
    pickets.width = room.build.width;
    pickets.depth = room.build.depth;
    pickets.per_tread = per_tread;
    pickets.feet = feet;
    pickets.cut = room.line.slope;
    pickets.at_pitch = room.build.any_pitch().has_value();
    if (room.build.slot) pickets.slot = slot_for(room.build, *room.build.slot, room.line.slope);
    pickets.hole = hole_for(room.build, room.levels.parallel(), room.line.slope);
    if (const std::optional<RailSide>& beside = room.beside)
        pickets.beside = BesideRail{beside->side > 0, beside->off + room.build.depth / 2,
                                    room.build.past.value_or(PicketPast()), beside->past};
    pickets.from_face = layout.from_face;
    const std::vector<double> gaps = gaps_of(layout, pickets.width);
    const double lengthened = room.line.lengthened();
    measure_gaps(pickets, gaps, layout, lengthened);
    pickets.centres.reserve(layout.centres.size());
    for (const double centre : layout.centres) pickets.centres.push_back(centre - layout.from_face);
    pickets.widest_marked = pickets.widest_gap;
    if (pickets.count == 0) return pickets;

    const auto mark = [&](Group group, Marks& marks, double deep) {
        const Member* member = meeting(room.members, group);
        if (!member) return;
        marks = marks_on(*member, room, layout);
        widen(pickets, marks, gaps, room.tape, lengthened);
        if (deep > 0 && !pickets.hole) add_fillets(*member, room.line, layout, room.build, deep, pickets.fillets);
    };
    mark(Group::upper, pickets.upper, room.build.plough.upper);
    mark(Group::lower, pickets.lower, room.build.plough.lower);
    if (room.all_alike() || room.footing_known) pickets.pieces = pieces_of(room, layout);
    if (room.beside && is_bevelled(room.build))
        for (PicketPiece& piece : pickets.pieces)
            piece.outer = (room.beside->side > 0) == (room.line.slope < 0) ? 1 : -1;
    if (room.build.shape == PicketShape::turned)
        if (const std::optional<double> level = turning_level(room, layout))
            for (PicketPiece& piece : pickets.pieces) piece.trim = trim_of(room.build, piece.piece, *level);
    return pickets;
}

}  // namespace rakewright
