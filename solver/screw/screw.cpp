#include "screw.hpp"

#include <algorithm>
#include <cmath>

#include "../measure/compare.hpp"

namespace rakewright {
namespace {

/// A line that is cut off at planes one after the other.
class CutLine {
 public:
    /// Keeps what has no more than `limit` of something of which the line has `at` at its seat and `per` more for each
    /// unit of its way.
    void keep(double at, double per, double limit, Corner side) {
        if (std::fabs(per) < rounding) {
            missed_ = missed_ || !no_more_than(at, limit);
            return;
        }
        const double there = (limit - at) / per;
        if (per > 0 && there < leaves_.within.end) leaves_ = {{leaves_.within.begin, there}, side};
        if (per < 0) leaves_.within.begin = std::fmax(leaves_.within.begin, there);
    }

    std::optional<Leaves> left() const {
        if (missed_ || leaves_.within.end <= leaves_.within.begin) return std::nullopt;
        return leaves_;
    }

 private:
    Leaves leaves_{{-INFINITY, INFINITY}, {}};
    bool missed_ = false;
};

/// Whether a line, of which the unit way has so much of a direction, runs beside what is square to it rather than into
/// it.
bool beside(double per) { return no_more_than(2 * per * per, 1); }

void nearer(std::optional<double>& least, double distance) {
    least = std::fmin(least.value_or(distance), std::fmax(0, distance));
}

}  // namespace

std::optional<Leaves> within_stick(const Stick& stick, const ScrewWay& screw) {
    const auto& [frame, piece] = stick;
    const Vector seat = screw.seat - frame.origin;
    const double left = seat.dot(frame.left), top = seat.dot(frame.top), along = seat.dot(frame.along);
    const double per_left = screw.way.dot(frame.left), per_top = screw.way.dot(frame.top),
                 per_along = screw.way.dot(frame.along);
    CutLine line;
    for (const int side : {1, -1}) {
        line.keep(side * left, side * per_left, piece.section.width / 2, {side, 0});
        line.keep(side * top, side * per_top, piece.section.depth / 2, {0, side});
        const Slant& cut = side > 0 ? piece.to : piece.from;
        line.keep(side * (along - cut.per_left * left - cut.per_top * top),
                  side * (per_along - cut.per_left * per_left - cut.per_top * per_top), side * cut.at, {0, 0});
    }
    return line.left();
}

std::optional<Bore> within_round(const Shaft& post, const ScrewWay& screw) {
    const std::optional<OnShaft> in = met_on(post, screw.seat, screw.way, false),
                                  out = met_on(post, screw.seat, screw.way, true);
    if (!in || !out) return std::nullopt;
    return Bore{in->along, out->along};
}

SplitRoom split_room(const Timber& timber, const ScrewWay& screw, const Bore& within) {
    SplitRoom room;
    if (timber.round.radius > 0) {
        const ShaftCrossing crossing = crossing_of(timber.round, screw.seat, screw.way);
        const Vector nearest = screw.seat + crossing.at_nearest * screw.way;
        const double up = (nearest - timber.round.point).dot(timber.round.upright);
        room.edge = timber.round.radius_at(up) - crossing.off;
        return room;
    }
    const auto& [frame, piece] = timber.stick;
    room.end_grain = !beside(screw.way.dot(frame.along));
    std::vector<double> over_splices(timber.splices.size());
    for (const double along : {within.begin, within.end}) {
        const Vector point = screw.seat + along * screw.way - frame.origin;
        const Spot spot{point.dot(frame.left), point.dot(frame.top)};
        const double on = point.dot(frame.along);
        if (beside(screw.way.dot(frame.left))) nearer(room.edge, piece.section.width / 2 - std::fabs(spot.left));
        if (beside(screw.way.dot(frame.top))) nearer(room.edge, piece.section.depth / 2 - std::fabs(spot.top));
        if (room.end_grain || !timber.ends_known) continue;
        nearer(room.end, on - reach(piece.from, spot));
        nearer(room.end, reach(piece.to, spot) - on);
        for (std::size_t i = 0; i < timber.splices.size(); ++i) {
            const double over = on - reach(timber.splices[i], spot);
            nearer(room.end, over * over_splices[i] < 0 ? 0 : std::fabs(over));
            over_splices[i] = over;
        }
    }
    return room;
}

void SplitRoom::narrow(const SplitRoom& other) {
    if (other.end) nearer(end, *other.end);
    if (other.edge) nearer(edge, *other.edge);
}

void narrow(ScrewHold& hold, const ScrewHold& other) {
    for (std::size_t i = 0; i < std::min(hold.passed.size(), other.passed.size()); ++i)
        if (hold.passed[i].name == other.passed[i].name && hold.passed[i].room && other.passed[i].room)
            hold.passed[i].room->narrow(*other.passed[i].room);
}

ScrewHold held_by(const std::vector<Bored>& things, const ScrewWay& screw, std::size_t fastened, double length) {
    ScrewHold held;
    double reached = 0;
    ComesOut leaving = ComesOut::nowhere;
    for (std::size_t i = 0; i < things.size(); ++i) {
        const Bore& within = things[i].within;
        if (!no_more_than(within.begin, reached, length)) break;
        const bool next_lies_in_it = i + 1 < things.size() && things[i + 1].within.begin < within.end;
        const double end = next_lies_in_it ? std::fmax(reached, things[i + 1].within.begin) : within.end;
        const double point = std::fmin(end, length);
        if (less_than(reached, point)) {
            const std::optional<Timber>& timber = things[i].timber;
            held.passed.push_back(
                {things[i].name, point - reached, i < fastened,
                 timber ? std::optional(split_room(*timber, screw, {reached, point})) : std::nullopt});
            if (i >= fastened) held.hold += point - reached;
        }
        reached = end;
        leaving = things[i].leaving;
    }
    if (!std::isfinite(reached)) return held;
    held.longest = reached;
    if (!no_more_than(length, reached)) held.comes_out = leaving;
    return held;
}

int screws_in_picket(double width, Unit unit) { return no_more_than(unit == Unit::inch ? 2.5 : 64, width) ? 2 : 1; }

}  // namespace rakewright
