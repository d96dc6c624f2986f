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

ScrewHold held_by(const std::vector<Bored>& things, std::size_t fastened, double length) {
    ScrewHold screw;
    double reached = 0;
    ComesOut leaving = ComesOut::nowhere;
    for (std::size_t i = 0; i < things.size(); ++i) {
        const Bore& within = things[i].within;
        if (!no_more_than(within.begin, reached, length)) break;
        const bool next_lies_in_it = i + 1 < things.size() && things[i + 1].within.begin < within.end;
        const double end = next_lies_in_it ? std::fmax(reached, things[i + 1].within.begin) : within.end;
        const double point = std::fmin(end, length);
        if (less_than(reached, point)) {
            screw.passed.push_back({things[i].name, point - reached});
            if (i >= fastened) screw.hold += point - reached;
        }
        reached = end;
        leaving = things[i].leaving;
    }
    if (!std::isfinite(reached)) return screw;
    screw.longest = reached;
    if (!no_more_than(length, reached)) screw.comes_out = leaving;
    return screw;
}

int screws_in_picket(double width, Unit unit) { return no_more_than(unit == Unit::inch ? 2.5 : 64, width) ? 2 : 1; }

}  // namespace rakewright
