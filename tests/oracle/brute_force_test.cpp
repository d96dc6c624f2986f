#include <cmath>

#include "../../solver/solve.hpp"
#include "../support/catch.hpp"
#include "../support/even_example.hpp"
#include "../support/random.hpp"
#include "pickets_in_digits.hpp"

// What the solver finds by a short way, found by trying everything.

namespace rakewright::tests {
namespace {

/// Doubles that differ by rounding are equal.
bool fits(const Real& gap, const Real& limit) { return gap <= limit * (1 + Real(1e-12)); }

int fewest_tried(const Real& clear, const Real& width, const Real& max_gap) {
    int count = 0;
    while (!fits((clear - count * width) / (count + 1), max_gap)) ++count;
    return count;
}

/// Whether k on each tread serve: none of a tread's last reaches past the next nosing, no gap between two is over the
/// limit.
bool serves(const Build& build, const LevelsInDigits& levels, const WayInDigits& way, const StairInDigits& stair,
            int k) {
    const Real width = exactly(build.pickets->width), depth = exactly(build.pickets->depth);
    for (std::size_t i = 0; i + 1 < stair.nosings.size(); ++i) {
        const NosingInDigits &here = stair.nosings[i], &next = stair.nosings[i + 1];
        const Real last = here.x + here.projection + (next.x - here.x) * (k - 1) / k;
        const Real corner = last + width * fabs(way.level.x) + depth / 2 * fabs(way.level.y);
        if (corner > next.x + stair.nosings.back().x * 1e-12) return false;
    }
    const std::vector<PicketInDigits> pickets = pickets_on_treads(build, levels, way, stair, k);
    for (std::size_t i = 1; i < pickets.size(); ++i)
        if (!fits(pickets[i].centre - pickets[i - 1].centre - width, exactly(*build.pickets->max_gap))) return false;
    return true;
}

int fewest_on_treads_tried(const DrawnJob& drawn) {
    const StairInDigits stair = stair_in_digits(drawn.job.stairs[0], drawn.rakes[0]);
    const Section& section = drawn.job.sections[0];
    const Build& build = drawn.job.builds[0];
    const WayInDigits way = way_in_digits(drawn, section, stair);
    const LevelsInDigits levels = levels_in_digits(build, section, way);
    for (int k = 1; k <= 100; ++k)
        if (serves(build, levels, way, stair, k)) return k;
    return 0;
}

/// A job whose pickets stand on treads so thickly, on a rail so skew, between posts so turned, that the corners of
/// their feet decide which of them go in.
DrawnJob crowded(const std::string& name) {
    Random random(name + ", crowded");
    DrawnJob drawn = random_job(name, Posts::nearly_plumb);
    const double inch = drawn.job.units == Unit::inch ? 1 : millimetres_in_an_inch;
    Build& build = drawn.job.builds[0];
    build.lower.clear();
    build.lower_gap.reset();
    PicketBuild pickets;
    pickets.width = random.uniform(0.75, 2) * inch;
    pickets.depth = random.uniform(1, 5) * inch;
    pickets.max_gap = random.uniform(0.75, 5) * inch;
    build.pickets = pickets;
    for (std::size_t i = 0; i < 2; ++i) {
        Post& post = drawn.job.posts[i];
        post.at = Reading(random.uniform(i == 0 ? -8 : -16, i == 0 ? 16 : 8) * inch);
        post.nosing.value = i == 0 ? 1 : 0;
        post.face = PostFace::centre;
        post.across = random.uniform(-12, 12) * inch;
        const double degrees = random.uniform(-40, 40);
        post.turn = in_degrees(degrees);
        drawn.posts[i].turn = {true, degrees, 0, 1};
    }
    drawn.job.sections.resize(1);
    return drawn;
}

/// A stair whose steps differ much, on the tape or not; with equal runs a nosing may stand over the middle.
Stair rough_stair(Random& random, LineThrough rule) {
    Stair stair;
    stair.line = rule;
    const int count = random.whole(2, 25);
    const bool raw = random.whole(0, 2) == 0, equal_runs = random.whole(0, 1) == 0;
    for (int i = 0; i < count; ++i) {
        const double rise = random.uniform(5, 9), run = equal_runs ? 11.0 : random.uniform(8, 14);
        Step step;
        step.rise = Reading(raw ? rise : std::floor(rise * 4) / 4);
        if (i + 1 < count) step.run = Reading(raw ? run : std::floor(run * 2) / 2);
        stair.steps.push_back(step);
    }
    return stair;
}

StairShape shaped(const Stair& stair) {
    std::vector<Finding> findings;
    StairShape shape = shape_of(stair, findings);
    REQUIRE(findings.empty());
    REQUIRE(shape.line);
    return shape;
}

using Nosings = std::vector<NosingInDigits>;

Nosings summed(const Stair& stair) {
    Nosings nosings;
    Real x = 0, z = 0;
    for (const Step& step : stair.steps) {
        z += exactly(*step.rise);
        nosings.push_back({x, z, 0});
        if (step.run) x += exactly(*step.run);
    }
    return nosings;
}

/// Over the chord from i to k, at a level place.
Real chord_at(const NosingInDigits& i, const NosingInDigits& k, const Real& x) {
    return i.z + (k.z - i.z) / (k.x - i.x) * (x - i.x);
}

Real over(const StairShape& shape, const NosingInDigits& nosing) {
    return nosing.z - exactly(shape.line->height) - exactly(shape.line->slope) * nosing.x;
}

/// Half the most that any nosing stands off the chord of two others about it: no line comes nearer to all three, and
/// the best line of all comes as near (de la Vallee Poussin's bound, which the best line reaches).
Real least_distance(const Nosings& nosings) {
    Real most = 0;
    for (std::size_t i = 0; i < nosings.size(); ++i)
        for (std::size_t j = i + 1; j < nosings.size(); ++j)
            for (std::size_t k = j + 1; k < nosings.size(); ++k)
                most = fmax(most, fabs(nosings[j].z - chord_at(nosings[i], nosings[k], nosings[j].x)) / 2);
    return most;
}

/// The widest gap when each picket's near edge is set to the mark nearest to it, counted from the hook.
Real widest_set_by_tape(const Marks& marks, const Pickets& pickets, const Tape& tape, const Real& lengthened) {
    const std::size_t count = marks.centres.size();
    const Real wide = exactly(pickets.width) * lengthened, division = exactly(tape.division);
    std::vector<Real> edges, read;
    for (std::size_t i = 0; i < count; ++i) {
        const std::size_t picket = marks.hook == End::from ? i : count - 1 - i;
        const Real centre = marks.hook == End::from ? exactly(marks.centres[picket])
                                                    : exactly(marks.face_length) - exactly(marks.centres[picket]);
        edges.push_back(centre - wide / 2);
        const Real marks_to_edge = fabs(edges.back()) / division;
        const Real nearest = floor(marks_to_edge + Real(0.5) + 1e-12 * marks_to_edge) * division;
        read.push_back(edges.back() < 0 ? Real(-nearest) : nearest);
    }
    const bool hooked_at_from = marks.hook == End::from;
    Real widest =
        exactly(hooked_at_from ? pickets.from_gap : pickets.to_gap) + (read.front() - edges.front()) / lengthened;
    for (std::size_t i = 1; i < count; ++i) widest = fmax(widest, (read[i] - read[i - 1] - wide) / lengthened);
    const Real at_last =
        exactly(hooked_at_from ? pickets.to_gap : pickets.from_gap) - (read.back() - edges.back()) / lengthened;
    return fmax(widest, at_last);
}

}  // namespace

TEST_CASE("the fewest pickets, every count tried", "[oracle]") {
    Random random("every count");
    for (int i = 0; i < 2000; ++i) {
        const double width = random.uniform(0.5, 2), max_gap = random.uniform(1, 6), clear = random.uniform(0.5, 300);
        INFO(clear << ' ' << width << ' ' << max_gap);
        CHECK(fewest_between({clear, width}, max_gap) == fewest_tried(clear, width, max_gap));
    }
}

TEST_CASE("a gap that is the limit but for rounding is allowed, every count tried", "[oracle]") {
    Random random("at the limit");
    for (int i = 0; i < 2000; ++i) {
        const int count = random.whole(0, 60);
        const double width = random.uniform(0.5, 2), max_gap = random.uniform(1, 6);
        // The clear distance that so many fill to the limit, its sum made in doubles.
        double clear = max_gap;
        for (int picket = 0; picket < count; ++picket) clear += width + max_gap;
        CHECK(fewest_between({clear, width}, max_gap) == count);
        CHECK(fewest_tried(clear, width, max_gap) == count);
        // One more as soon as it is more than rounding.
        const double wider = clear * (1 + 1e-9);
        CHECK(fewest_between({wider, width}, max_gap) == fewest_tried(wider, width, max_gap));
        CHECK(fewest_tried(wider, width, max_gap) == count + 1);
    }
}

TEST_CASE("the pickets of jobs, every count tried", "[oracle]") {
    int between = 0, on_treads = 0, more_than_one = 0;
    for (int i = 0; i < 250; ++i) {
        const std::string name = "counts " + std::to_string(i);
        const DrawnJob drawn = random_job(name);
        const Solution solution = solve(drawn.job);
        if (solution.refused() || !drawn.job.builds[0].pickets) continue;
        const PicketBuild& build = *drawn.job.builds[0].pickets;
        for (std::size_t s = 0; s < drawn.job.sections.size(); ++s) {
            INFO(name << ", section " << drawn.job.sections[s].id.name);
            const SectionResult& section = solution.sections[s];
            if (section.pickets->per_tread == 0) {
                CHECK(section.pickets->count ==
                      fewest_tried(section.clear, exactly(build.width), exactly(*build.max_gap)));
                ++between;
            } else if (!build.per_tread) {
                CHECK(section.pickets->per_tread == fewest_on_treads_tried(drawn));
                ++on_treads;
                more_than_one += section.pickets->per_tread > 1 ? 1 : 0;
            }
        }
    }
    CHECK(between > 300);
    CHECK(on_treads > 25);
    CHECK(more_than_one > 10);
}

TEST_CASE("pickets crowded on treads, every count and every corner tried", "[oracle]") {
    int solved = 0, refused = 0, left_out = 0;
    for (int i = 0; i < 400; ++i) {
        const std::string name = "crowded " + std::to_string(i);
        const DrawnJob drawn = crowded(name);
        const Solution solution = solve(drawn.job);
        INFO(name);
        if (has(solution, Trouble::no_count_per_tread)) {
            CHECK(fewest_on_treads_tried(drawn) == 0);
            ++refused;
        }
        if (solution.refused() || solution.sections[0].slope == 0) continue;
        const Pickets& got = *solution.sections[0].pickets;
        REQUIRE(got.per_tread == fewest_on_treads_tried(drawn));
        const StairInDigits stair = stair_in_digits(drawn.job.stairs[0], drawn.rakes[0]);
        const WayInDigits way = way_in_digits(drawn, drawn.job.sections[0], stair);
        const Build& build = drawn.job.builds[0];
        const LevelsInDigits levels = levels_in_digits(build, drawn.job.sections[0], way);
        const std::vector<PicketInDigits> want = pickets_on_treads(build, levels, way, stair, got.per_tread);
        REQUIRE(got.centres.size() == want.size());
        const Real from = way.face_along(0, levels.middle());
        for (std::size_t n = 0; n < want.size(); ++n)
            CHECK(fabs(exactly(got.centres[n]) - (want[n].centre - from)) <=
                  1e-12 * exactly(solution.sections[0].clear));
        ++solved;
        left_out += got.per_tread * (static_cast<int>(stair.nosings.size()) - 1) > got.count ? 1 : 0;
    }
    CHECK(solved > 150);
    CHECK(refused > 20);
    CHECK(left_out > 50);
}

TEST_CASE("no line comes nearer to all nosings, every triple tried", "[oracle]") {
    Random random("minimax");
    for (int i = 0; i < 300; ++i) {
        const Stair stair = rough_stair(random, LineThrough::minimax);
        const StairShape shape = shaped(stair);
        const Nosings nosings = summed(stair);
        const Real least = least_distance(nosings), rounding_of = nosings.back().z * 1e-14;
        Real most = 0;
        for (const NosingInDigits& nosing : nosings) most = fmax(most, fabs(over(shape, nosing)));
        CHECK(fabs(most - least) <= rounding_of);
        for (std::size_t n = 0; n < nosings.size(); ++n)
            CHECK(fabs(exactly(shape.nosings[n].off_line) - over(shape, nosings[n])) <= rounding_of);
    }
}

TEST_CASE("a straightedge rests where no pair of nosings carries it higher, every pair tried", "[oracle]") {
    Random random("straightedge");
    int over_a_corner = 0;
    for (int i = 0; i < 600; ++i) {
        const Stair stair = rough_stair(random, LineThrough::straightedge);
        const StairShape shape = shaped(stair);
        const Nosings nosings = summed(stair);
        const Real middle = nosings.back().x / 2, rounding_of = nosings.back().z * 1e-13;
        Real highest = 0;
        bool before = false, beyond = false, corner = false;
        for (const NosingInDigits& a : nosings)
            for (const NosingInDigits& b : nosings)
                if (a.x <= middle && b.x >= middle && a.x < b.x) highest = fmax(highest, chord_at(a, b, middle));
        for (const NosingInDigits& nosing : nosings) {
            const Real above = over(shape, nosing);
            CHECK(above <= rounding_of);
            const bool touches = above >= -rounding_of;
            before = before || (touches && nosing.x <= middle);
            beyond = beyond || (touches && nosing.x > middle);
            corner = corner || (touches && nosing.x == middle);
        }
        const Real there = exactly(shape.line->height) + exactly(shape.line->slope) * middle;
        CHECK(fabs(there - highest) <= rounding_of);
        // Where two edges meet over the middle it lies on the upper one: it touches a nosing beyond the middle.
        CHECK(before);
        CHECK(beyond);
        over_a_corner += corner ? 1 : 0;
    }
    CHECK(over_a_corner > 20);
}

TEST_CASE("a fitted line leaves what is square to it: normal equations", "[oracle]") {
    Random random("fit");
    for (int i = 0; i < 300; ++i) {
        const Stair stair = rough_stair(random, LineThrough::fit);
        const StairShape shape = shaped(stair);
        const Nosings nosings = summed(stair);
        Real sum = 0, moment = 0;
        for (const NosingInDigits& nosing : nosings) {
            sum += over(shape, nosing);
            moment += over(shape, nosing) * nosing.x;
        }
        const Real count = nosings.size(), high = nosings.back().z, wide = nosings.back().x;
        CHECK(fabs(sum) <= 1e-14 * count * high);
        CHECK(fabs(moment) <= 1e-14 * count * high * wide);
        // The same from the line that the equations give, solved in fifty digits.
        const StairInDigits solved = stair_in_digits(stair, {});
        CHECK(fabs(exactly(shape.line->slope) - solved.slope) <= 1e-14);
        CHECK(fabs(exactly(shape.line->height) - solved.height) <= 1e-14 * high);
    }
}

TEST_CASE("the widest gap that marks leave, every mark rounded", "[oracle]") {
    int sections = 0, wider = 0, hooked_at_to = 0;
    for (int i = 0; i < 250; ++i) {
        const std::string name = "marks " + std::to_string(i);
        const DrawnJob drawn = random_job(name);
        const Solution solution = solve(drawn.job);
        if (solution.refused()) continue;
        for (std::size_t s = 0; s < drawn.job.sections.size(); ++s) {
            if (!solution.sections[s].pickets || solution.sections[s].pickets->count == 0) continue;
            INFO(name << ", section " << drawn.job.sections[s].id.name);
            const Pickets& pickets = *solution.sections[s].pickets;
            const Real slope = exactly(solution.sections[s].slope), lengthened = sqrt(1 + slope * slope);
            const Tape tape = tape_of(drawn.job);
            Real widest =
                fmax(exactly(pickets.widest_gap), widest_set_by_tape(pickets.upper, pickets, tape, lengthened));
            if (!drawn.job.builds[0].lower.empty())
                widest = fmax(widest, widest_set_by_tape(pickets.lower, pickets, tape, lengthened));
            CHECK(fabs(exactly(pickets.widest_marked) - widest) <= 1e-12 * exactly(solution.sections[s].clear));
            ++sections;
            wider += pickets.widest_marked > pickets.widest_gap ? 1 : 0;
            hooked_at_to += pickets.upper.hook == End::to ? 1 : 0;
        }
    }
    CHECK(sections > 400);
    CHECK(wider > 200);
    CHECK(hooked_at_to > 20);
}

}  // namespace rakewright::tests
