#include "stair_in_digits.hpp"

namespace rakewright::tests {
namespace {

using Nosings = std::vector<NosingInDigits>;

struct Line {
    Real height, slope;
    Real over(const NosingInDigits& nosing) const { return nosing.z - height - slope * nosing.x; }
};

Line through(const NosingInDigits& a, const NosingInDigits& b) {
    const Real slope = (b.z - a.z) / (b.x - a.x);
    return {a.z - slope * a.x, slope};
}

Real farthest(const Line& line, const Nosings& nosings) {
    Real most = 0;
    for (const NosingInDigits& nosing : nosings) most = fmax(most, fabs(line.over(nosing)));
    return most;
}

/// Of every triple the middle between its chord and its third nosing; of every pair its chord. The best of them all.
Line best_of_all_triples(const Nosings& nosings) {
    Line best = through(nosings.front(), nosings.back());
    Real least = farthest(best, nosings);
    const auto take = [&](const Line& line) {
        const Real most = farthest(line, nosings);
        if (most < least) {
            least = most;
            best = line;
        }
    };
    for (std::size_t i = 0; i < nosings.size(); ++i)
        for (std::size_t j = i + 1; j < nosings.size(); ++j) {
            const Line chord = through(nosings[i], nosings[j]);
            take(chord);
            for (const NosingInDigits& third : nosings) take({chord.height + chord.over(third) / 2, chord.slope});
        }
    return best;
}

/// Of every pair that stands about the middle and has no nosing over its chord, the one that lies farthest up the
/// stair.
Line rested_on(const Nosings& nosings) {
    const Real middle = nosings.back().x / 2;
    const Real same = nosings.back().x * 1e-12, level = nosings.back().z * 1e-12;
    Line best{};
    std::size_t lowest = 0;
    for (std::size_t i = 0; i < nosings.size(); ++i)
        for (std::size_t j = i + 1; j < nosings.size(); ++j) {
            if (nosings[i].x > middle + same || nosings[j].x < middle - same) continue;
            const Line chord = through(nosings[i], nosings[j]);
            Real over = 0;
            for (const NosingInDigits& nosing : nosings) over = fmax(over, chord.over(nosing));
            if (over > level) continue;
            if (best.slope == 0 || i >= lowest) {
                best = chord;
                lowest = i;
            }
        }
    return best;
}

/// Normal equations, solved by Cramer's rule.
Line least_squares(const Nosings& nosings) {
    Real n = 0, x = 0, z = 0, xx = 0, xz = 0;
    for (const NosingInDigits& nosing : nosings) {
        n += 1;
        x += nosing.x;
        z += nosing.z;
        xx += nosing.x * nosing.x;
        xz += nosing.x * nosing.z;
    }
    const Real determinant = n * xx - x * x;
    return {(z * xx - x * xz) / determinant, (n * xz - x * z) / determinant};
}

Line line_by(LineThrough rule, const Nosings& nosings) {
    switch (rule) {
        case LineThrough::minimax: return best_of_all_triples(nosings);
        case LineThrough::straightedge: return rested_on(nosings);
        case LineThrough::fit: return least_squares(nosings);
        case LineThrough::ends: break;
    }
    return through(nosings.front(), nosings.back());
}

struct EvenStep {
    Real rise, run;
};

EvenStep even_step(const Stair& stair, const DrawnAngle& drawn_rake) {
    const bool has_rise = stair.rise || stair.total_rise, has_run = stair.run || stair.tread;
    Real rise = stair.rise ? exactly(*stair.rise) : Real(0);
    if (stair.total_rise) rise = exactly(*stair.total_rise) / stair.risers->value;
    Real run = stair.run ? exactly(*stair.run) : Real(0);
    if (stair.tread) run = exactly(*stair.tread) - exactly(stair.nosing);
    if (has_rise && has_run) return {rise, run};
    if (stair.rake) {
        const Real rake = radians(drawn_rake);
        if (has_rise) return {rise, rise / tan(rake)};
        if (has_run) return {run * tan(rake), run};
        return {exactly(*stair.nosing_to_nosing) * sin(rake), exactly(*stair.nosing_to_nosing) * cos(rake)};
    }
    const Real line = exactly(*stair.nosing_to_nosing), given = has_rise ? rise : run;
    const Real other = sqrt(line * line - given * given);
    return has_rise ? EvenStep{rise, other} : EvenStep{other, run};
}

}  // namespace

Real StairInDigits::tread_under(const Real& x) const {
    Real surface = 0;
    const Real same = fmax(fabs(x), nosings.back().x) * 1e-12;
    for (const NosingInDigits& nosing : nosings)
        if (nosing.x <= x + same) surface = nosing.z;
    return surface;
}

StairInDigits stair_in_digits(const Stair& stair, const DrawnAngle& rake) {
    StairInDigits result;
    if (stair.steps.empty()) {
        const EvenStep step = even_step(stair, rake);
        for (int i = 0; i < stair.risers->value; ++i)
            result.nosings.push_back({i * step.run, (i + 1) * step.rise, exactly(stair.nosing)});
        result.slope = step.rise / step.run;
        result.height = step.rise;
        return result;
    }
    Real x = 0, z = 0;
    for (std::size_t i = 0; i < stair.steps.size(); ++i) {
        const auto projection = [&](const Step& step) { return exactly(step.nosing ? *step.nosing : stair.nosing); };
        const Step& step = stair.steps[i];
        z += exactly(*step.rise);
        result.nosings.push_back({x, z, projection(step)});
        if (step.run) x += exactly(*step.run);
        if (step.tread) x += exactly(*step.tread) - projection(stair.steps[i + 1]);
    }
    const Line line = line_by(stair.line, result.nosings);
    result.height = line.height;
    result.slope = line.slope;
    return result;
}

}  // namespace rakewright::tests
