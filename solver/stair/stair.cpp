#include "stair.hpp"

#include <algorithm>
#include <cmath>

#include "../measure/compare.hpp"
#include "plate.hpp"

namespace rakewright {
namespace {

/// Level and plumb of one even step, from any two of its figures.
std::optional<std::array<double, 2>> even_step(const Stair& stair, std::vector<Finding>& findings) {
    std::optional<double> rise, run;
    if (stair.rise) rise = *stair.rise;
    if (stair.total_rise) rise = *stair.total_rise / stair.risers.value();
    if (stair.run) run = *stair.run;
    if (stair.tread) {
        run = *stair.tread - stair.nosing;
        if (!less_than(0, *run, *stair.tread)) {
            findings.push_back({Trouble::no_run_left, stair.tread->place, {*stair.tread, stair.nosing}, {}});
            return std::nullopt;
        }
    }
    if (rise && run) return std::array{*rise, *run};
    if (stair.rake) {
        const Angle& rake = stair.rake->angle;
        if (rise) return std::array{*rise, *rise * rake.run / rake.rise};
        if (run) return std::array{*run * rake.rise / rake.run, *run};
        const auto [sine, cosine] = sine_cosine(rake);
        return std::array{*stair.nosing_to_nosing * sine, *stair.nosing_to_nosing * cosine};
    }
    const double slope = *stair.nosing_to_nosing, side = rise ? *rise : *run;
    if (!less_than(side, slope)) {
        findings.push_back({Trouble::slope_not_longer, stair.nosing_to_nosing->place, {slope, side}, {}});
        return std::nullopt;
    }
    const double other = std::sqrt((slope - side) * (slope + side));
    return rise ? std::array{side, other} : std::array{other, side};
}

StairShape even_shape(const Stair& stair, std::vector<Finding>& findings) {
    StairShape shape;
    const auto step = even_step(stair, findings);
    if (!step) return shape;
    const auto [rise, run] = *step;
    shape.nosings.reserve(static_cast<std::size_t>(stair.risers->value));
    for (int i = 0; i < stair.risers->value; ++i) shape.nosings.push_back({i * run, (i + 1) * rise, 0, stair.nosing});
    shape.line = NosingLine{rise, rise / run};
    return shape;
}

std::optional<double> run_to_next(const Step& step, double next_projection, std::vector<Finding>& findings) {
    if (step.run && step.tread) {
        findings.push_back({Trouble::step_with_two_runs, step.tread->place, {}, step.run->place});
        return std::nullopt;
    }
    if (step.run) return *step.run;
    if (!step.tread) return std::nullopt;
    const double run = *step.tread - next_projection;
    if (less_than(0, run, *step.tread)) return run;
    findings.push_back({Trouble::no_run_left, step.tread->place, {*step.tread, next_projection}, {}});
    return std::nullopt;
}

std::vector<Nosing> measured_nosings(const Stair& stair, std::vector<Finding>& findings) {
    std::vector<Nosing> nosings;
    nosings.reserve(stair.steps.size());
    const auto projection = [&](const Step& step) { return step.nosing ? step.nosing->value : stair.nosing.value; };
    const std::size_t before = findings.size();
    double x = 0, z = 0;
    for (std::size_t i = 0; i < stair.steps.size(); ++i) {
        const Step& step = stair.steps[i];
        const bool last = i + 1 == stair.steps.size();
        z += step.rise.value_or(0);
        nosings.push_back({x, z, 0, projection(step)});
        if (last) {
            if (step.run) findings.push_back({Trouble::last_step_with_run, step.run->place, {}, {}});
            if (step.tread) findings.push_back({Trouble::last_step_with_run, step.tread->place, {}, {}});
        } else if (!step.run && !step.tread) {
            findings.push_back({Trouble::step_without_run, step.place, {static_cast<double>(i + 1)}, {}});
        } else {
            x += run_to_next(step, projection(stair.steps[i + 1]), findings).value_or(0);
        }
    }
    if (findings.size() > before) nosings.clear();
    return nosings;
}

double slope_between(const Nosing& a, const Nosing& b) { return (b.z - a.z) / (b.x - a.x); }

NosingLine line_through(const Nosing& a, const Nosing& b) {
    const double slope = slope_between(a, b);
    return {a.z - slope * a.x, slope};
}

/// The numbers of the nosings on one side of the hull, from left to right: the upper for +1, the lower for -1.
std::vector<int> hull(const StairShape& shape, double side) {
    std::vector<int> corners;
    for (int i = 1; i <= shape.risers(); ++i) {
        const auto bends_in = [&] {
            const Nosing &a = shape.nosing(corners[corners.size() - 2]), &b = shape.nosing(corners.back()),
                         &c = shape.nosing(i);
            return side * ((b.x - a.x) * (c.z - a.z) - (b.z - a.z) * (c.x - a.x)) >= 0;
        };
        while (corners.size() >= 2 && bends_in()) corners.pop_back();
        corners.push_back(i);
    }
    return corners;
}

/// The nosing farthest from a line of this slope through `from`, on the side named.
int farthest(const StairShape& shape, int from, double slope, double side) {
    int best = from;
    double distance = 0;
    for (int i = 1; i <= shape.risers(); ++i) {
        const double over =
            side * (shape.nosing(i).z - shape.nosing(from).z - slope * (shape.nosing(i).x - shape.nosing(from).x));
        if (over > distance) {
            distance = over;
            best = i;
        }
    }
    return best;
}

/// The narrowest strip, plumb, that holds all nosings lies along an edge of their hull: the minimax line is its middle
/// (Chebyshev's line; its three holders stand off it equally and by turns).
LineHolders minimax_holders(const StairShape& shape) {
    LineHolders best{};
    double narrowest = INFINITY;
    for (const double side : {1.0, -1.0}) {
        const std::vector<int> corners = hull(shape, side);
        for (std::size_t e = 0; e + 1 < corners.size(); ++e) {
            const Nosing &a = shape.nosing(corners[e]), &b = shape.nosing(corners[e + 1]);
            const double slope = slope_between(a, b);
            const int third = farthest(shape, corners[e], slope, -side);
            const double width = std::fabs(shape.nosing(third).z - a.z - slope * (shape.nosing(third).x - a.x));
            if (width >= narrowest) continue;
            narrowest = width;
            best = {corners[e], corners[e + 1], third == corners[e] ? 0 : third};
        }
    }
    return best;
}

/// The edge of the upper hull over the middle of the flight; where two meet there, the upper one.
LineHolders straightedge_holders(const StairShape& shape) {
    const std::vector<int> corners = hull(shape, 1);
    const double middle = shape.run_total() / 2;
    std::size_t e = 0;
    while (e + 2 < corners.size() && no_more_than(shape.nosing(corners[e + 1]).x, middle)) ++e;
    return {corners[e], corners[e + 1], 0};
}

NosingLine fitted_line(const StairShape& shape) {
    const double n = shape.risers();
    double x = 0, z = 0, xx = 0, xz = 0;
    for (const Nosing& nosing : shape.nosings) {
        x += nosing.x / n;
        z += nosing.z / n;
    }
    for (const Nosing& nosing : shape.nosings) {
        xx += (nosing.x - x) * (nosing.x - x);
        xz += (nosing.x - x) * (nosing.z - z);
    }
    const double slope = xz / xx;
    return {z - slope * x, slope};
}

NosingLine held_line(const StairShape& shape, const LineHolders& held_by) {
    const Nosing &a = shape.nosing(held_by[0]), &b = shape.nosing(held_by[1]);
    NosingLine line = line_through(a, b);
    if (held_by[2] > 0) line.height += (shape.nosing(held_by[2]).z - line.at(shape.nosing(held_by[2]).x)) / 2;
    return line;
}

LineHolders chosen_holders(const StairShape& shape, LineThrough rule) {
    switch (rule) {
        case LineThrough::minimax: return minimax_holders(shape);
        case LineThrough::straightedge: return straightedge_holders(shape);
        case LineThrough::ends: return {1, shape.risers(), 0};
        case LineThrough::fit: return {};
    }
    return {};
}

/// The shape with the wash of its treads; none where one would reach its next nosing.
StairShape washed(StairShape shape, const Stair& stair, std::vector<Finding>& findings) {
    shape.wash = slope(stair.wash.angle);
    for (int tread = 1; tread < shape.risers(); ++tread) {
        const Nosing &here = shape.nosing(tread), &next = shape.nosing(tread + 1);
        const double washes = surface_height(shape, tread, next.x + next.projection) - here.z;
        if (less_than(washes, next.z - here.z)) continue;
        findings.push_back({Trouble::wash_too_steep, stair.wash.place, {double(tread), washes, next.z - here.z}, {}});
        shape.nosings.clear();
        break;
    }
    return shape;
}

/// The shape with what is open between its treads; none where a tread would lie on the one below it.
StairShape opened(StairShape shape, const Stair& stair, std::vector<Finding>& findings) {
    if (stair.riser == RiserKind::closed) {
        if (stair.tread_thickness)
            findings.push_back({Trouble::thickness_without_open, stair.tread_thickness->place, {}, {}});
        return shape;
    }
    if (!stair.tread_thickness) {
        findings.push_back({Trouble::thickness_missing, stair.id.place, {}, {}});
        shape.nosings.clear();
        return shape;
    }
    shape.thickness = *stair.tread_thickness;
    for (int riser = 1; riser <= shape.risers(); ++riser) {
        const double room = room_under(shape, riser);
        if (!less_than(0, room, shape.nosing(riser).z)) {
            findings.push_back(
                {Trouble::no_room_between_treads, stair.tread_thickness->place, {double(riser), room}, {}});
            shape.nosings.clear();
            shape.open_risers.clear();
            return shape;
        }
        shape.open_risers.push_back({riser, ball_under(shape, riser)});
    }
    return shape;
}

/// The shape with its treads as they are made.
StairShape with_treads(StairShape shape, const Stair& stair, std::vector<Finding>& findings) {
    if (stair.wash.angle.rise != 0) shape = washed(std::move(shape), stair, findings);
    if (stair.riser == RiserKind::closed && !stair.tread_thickness) return shape;
    return opened(std::move(shape), stair, findings);
}

}  // namespace

StairShape shape_of(const Stair& stair, const LineHolders& held_by, std::vector<Finding>& findings) {
    if (stair.steps.empty()) return with_treads(even_shape(stair, findings), stair, findings);
    StairShape shape;
    shape.nosings = measured_nosings(stair, findings);
    if (shape.risers() < 2) return with_treads(std::move(shape), stair, findings);
    shape.held_by = held_by;
    shape.line = held_by[0] > 0 ? held_line(shape, held_by) : fitted_line(shape);
    for (Nosing& nosing : shape.nosings) nosing.off_line = nosing.z - shape.line->at(nosing.x);
    return with_treads(std::move(shape), stair, findings);
}

StairShape shape_of(const Stair& stair, std::vector<Finding>& findings) {
    if (stair.steps.empty()) return shape_of(stair, {}, findings);
    StairShape bare;
    std::vector<Finding> once;
    bare.nosings = measured_nosings(stair, once);
    return shape_of(stair, bare.risers() < 2 ? LineHolders{} : chosen_holders(bare, stair.line), findings);
}

int tread_under(const StairShape& shape, double x) {
    const auto upper = std::find_if(shape.nosings.begin(), shape.nosings.end(),
                                    [&](const Nosing& nosing) { return less_than(x, nosing.x, shape.run_total()); });
    return static_cast<int>(upper - shape.nosings.begin());
}

double tread_height(const StairShape& shape, int tread) { return tread == 0 ? 0 : shape.nosing(tread).z; }

double surface_height(const StairShape& shape, int tread, double x) {
    const double level = tread_height(shape, tread);
    if (shape.wash == 0 || tread == 0 || tread == shape.risers()) return level;
    const Nosing &nosing = shape.nosing(tread), &next = shape.nosing(tread + 1);
    return level + shape.wash * (std::clamp(x, nosing.x, next.x + next.projection) - nosing.x);
}

}  // namespace rakewright
