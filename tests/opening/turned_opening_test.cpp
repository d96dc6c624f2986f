#include <algorithm>
#include <cmath>

#include "../../solver/opening/opening.hpp"
#include "../identities/every_result.hpp"
#include "../identities/jobs.hpp"
#include "../support/near.hpp"
#include "../support/turned_build.hpp"

namespace rakewright::tests {
namespace {

Solution opened(const Job& job) {
    Solution solution = solve(job);
    REQUIRE_FALSE(solution.refused());
    measure_openings(job, solution);
    return solution;
}

double ball(const Solution& solution, Opening::Kind kind, std::optional<End> end = {}) {
    for (const Opening& opening : solution.sections[0].openings)
        if (opening.kind == kind && opening.end == end) return opening.sphere;
    FAIL("no such opening");
    return 0;
}

/// The largest ball through the gaps when so many pickets are set, whatever the limit says.
double largest_with(const Job& job, int pickets, int per_tread) {
    Choices choices = solve(job).choices;
    choices.sections[0].pickets = pickets;
    choices.sections[0].per_tread = per_tread;
    Solution solution = solve(job, choices);
    measure_openings(job, solution);
    double largest = 0;
    for (const Opening& opening : solution.sections[0].openings)
        if (opening.kind != Opening::Kind::under_rail) largest = std::max(largest, opening.sphere);
    return largest;
}

struct Point {
    double x = 0, y = 0;
};
struct Wall {
    Point a, b;
};

double away(const Wall& wall, const Point& p) {
    const double dx = wall.b.x - wall.a.x, dy = wall.b.y - wall.a.y, size = dx * dx + dy * dy;
    const double t = size == 0 ? 0 : std::clamp(((p.x - wall.a.x) * dx + (p.y - wall.a.y) * dy) / size, 0.0, 1.0);
    return std::hypot(p.x - wall.a.x - t * dx, p.y - wall.a.y - t * dy);
}

/// Two pickets with their axes at 0 and at `pitch`, the second higher by `shift`, between two lines of `slope` that
/// stand `bottom` under the first one's turning and `top` over that on its axis. Searched by distances alone.
struct Pair {
    std::vector<Turning> turning;
    double pitch, slope, bottom, top;

    std::vector<Wall> walls() const {
        std::vector<Point> half{{turned_width / 2, -100}, {turned_width / 2, 0}};
        for (const Turning& place : turning) half.push_back({place.diameter / 2, place.at});
        half.push_back({turned_width / 2, turned_span});
        half.push_back({turned_width / 2, 100});
        std::vector<Wall> result;
        for (std::size_t i = 1; i < half.size(); ++i) {
            const Point &a = half[i - 1], &b = half[i];
            const double shift = slope * pitch;
            result.push_back({{a.x, a.y}, {b.x, b.y}});
            result.push_back({{pitch - a.x, a.y + shift}, {pitch - b.x, b.y + shift}});
        }
        for (const double level : {bottom, top})
            result.push_back({{-100, level - 100 * slope}, {100 + pitch, level + (100 + pitch) * slope}});
        return result;
    }

    double ball() const {
        const std::vector<Wall> all = walls();
        const auto room = [&](const Point& p) {
            double least = 1e9;
            for (const Wall& wall : all) least = std::min(least, away(wall, p));
            return least;
        };
        // In the strip that the blocks leave, where no wood is; then uphill from the roomiest places of a grid.
        const double left = turned_width / 2, right = pitch - turned_width / 2;
        struct Start {
            double room;
            Point at;
        };
        std::vector<Start> starts;
        for (int i = 1; i < 24; ++i)
            for (int j = 0; j < 600; ++j) {
                const double x = left + (right - left) * i / 24, low = bottom + slope * x, high = top + slope * x;
                const Point at{x, low + (high - low) * (j + 0.5) / 600};
                starts.push_back({room(at), at});
            }
        std::sort(starts.begin(), starts.end(), [](const Start& a, const Start& b) { return a.room > b.room; });
        double best = 0;
        for (std::size_t s = 0; s < 60; ++s) {
            Point at = starts[s].at;
            double here = starts[s].room;
            for (double step = 0.1; step > 1e-12; step *= 0.7) {
                for (int turn = 0; turn < 64; ++turn) {
                    const double angle = turn * 0.09817477042468103;  // 1/64 of a whole turn
                    const Point next{at.x + step * std::cos(angle), at.y + step * std::sin(angle)};
                    if (const double there = room(next); there > here) {
                        here = there;
                        at = next;
                    }
                }
            }
            best = std::max(best, here);
        }
        return 2 * best;
    }
};

}  // namespace

TEST_CASE("level, between two shafts, the ball is what is clear between them", "[opening][turned]") {
    for (const double diameter : {1.0, 0.75, 1.7}) {
        const Solution solution = opened(floor_example(60, turned_build(shaft(diameter))));
        const double gap = *solution.sections[0].pickets->gap;
        CHECK_THAT(ball(solution, Opening::Kind::picket_gap), within(gap + turned_width - diameter, 1e-12));
        for (const End end : {End::from, End::to})
            CHECK_THAT(ball(solution, Opening::Kind::post_gap, end),
                       within(gap + (turned_width - diameter) / 2, 1e-12));
    }
}

TEST_CASE("on a rake two shafts that overlap are as far apart as on the level", "[opening][turned]") {
    for (const bool open : {false, true}) {
        Job job = even_example(open ? turned_open_build(shaft(1)) : turned_build(shaft(1)));
        const Solution solution = opened(job);
        const std::vector<double>& centres = solution.sections[0].pickets->centres;
        CHECK_THAT(ball(solution, Opening::Kind::picket_gap), within(centres[1] - centres[0] - 1, 1e-12));
    }
}

TEST_CASE("level, between two waists, the ball touches four slanted walls", "[opening][turned]") {
    // Each wall recedes by (width - waist)/2 over half the span; the ball's centre is at the waist, half-way.
    for (const double waist : {1.0, 0.6, 1.5}) {
        const Solution solution = opened(floor_example(60, turned_build({{turned_span / 2, waist}})));
        const double pitch = *solution.sections[0].pickets->pitch, recedes = (turned_width - waist) / turned_span;
        CHECK_THAT(ball(solution, Opening::Kind::picket_gap),
                   within((pitch - waist) / std::sqrt(1 + recedes * recedes), 1e-12));
        // A plumb post face and two slanted walls: r on the one side, r sqrt(1 + recedes^2) at the waist on the other.
        const double at_post = *solution.sections[0].pickets->gap + (turned_width - waist) / 2;
        CHECK_THAT(ball(solution, Opening::Kind::post_gap, End::from),
                   within(2 * at_post / (1 + std::sqrt(1 + recedes * recedes)), 1e-12));
    }
}

TEST_CASE("turned to the width of its blocks a picket leaves the openings of a square one", "[opening][turned]") {
    const std::vector<Turning> full{{0, turned_width}, {6, turned_width}, {turned_span, turned_width}};
    std::vector<Job> jobs{floor_example(60, turned_build(full)), floor_example(60, turned_open_build(full)),
                          even_example(turned_build(full)), even_example(turned_open_build(full))};
    jobs[2].posts[1].lean.along = in_degrees(1.5);
    jobs[3].posts[0].across = 3;
    for (const Job& job : jobs) {
        Job square = job;
        PicketBuild& pickets = *square.builds[0].pickets;
        pickets.shape = PicketShape::square;
        pickets.length.reset();
        pickets.blocks.reset();
        pickets.turning.clear();
        const Solution turned = opened(job), plain = opened(square);
        const std::vector<Opening>&a = turned.sections[0].openings, &b = plain.sections[0].openings;
        REQUIRE(a.size() == b.size());
        for (std::size_t i = 0; i < a.size(); ++i) CHECK_THAT(a[i].sphere, within(b[i].sphere, 1e-12));
    }
}

TEST_CASE("silhouettes shifted against each other leave what a search by distances finds", "[opening][turned][long]") {
    const std::vector<std::vector<Turning>> turnings{
        {{0, 1.25}, {0.75, 1.75}, {2, 1}, {10, 1.5}, {15, 0.875}},
        {{9.5, 0.5}},
        {{0, 0.6}, {3, 0.6}, {3.5, 1.75}, {13, 1.75}, {13.25, 0.5}, {17, 0.5}},
        {{1, 0.4}, {2, 1.7}, {4, 0.4}, {6, 1.7}, {8, 0.4}, {10, 1.7}, {12, 0.4}, {14, 1.7}, {16, 0.4}}};
    for (const std::vector<Turning>& turning : turnings)
        for (const double rise : {5.0, 7.25, 9.0}) {
            Job job = even_example(turned_build(turning));
            job.stairs[0].rise = Reading(rise);
            const Solution solution = opened(job);
            const Pickets& pickets = *solution.sections[0].pickets;
            const double slope = rise / even_run, lengthened = std::sqrt(1 + slope * slope);
            const double room = 34 - 4.25 * lengthened, lower = turned_lower - (turned_length - room) / 2;
            const Pair pair{turning, *pickets.pitch, slope, -lower, room - lower};
            INFO(rise << ' ' << turning.size());
            const double found = pair.ball();
            CHECK_THAT(ball(solution, Opening::Kind::picket_gap), within(found, 1e-7));
            CHECK(ball(solution, Opening::Kind::picket_gap) >= found - 1e-12);
        }
}

TEST_CASE("a ball as wide as a gap passes: one picket more than a gap of that width takes", "[opening][sphere]") {
    for (const int count : {2, 5, 11})
        for (const bool open : {false, true}) {
            const double width = 1.5;
            Job job = floor_example(count * width + (count + 1) * 4, open ? open_build(width) : square_build());
            job.builds[0].pickets->max_gap = Reading(4);
            CHECK(opened(job).sections[0].pickets->count == count);
            job.sections[0].max_sphere = Reading(4);
            CHECK(opened(job).sections[0].pickets->count == count + 1);
            job.sections[0].max_sphere = Reading(4 + 1e-9);
            CHECK(opened(job).sections[0].pickets->count == count);
            job.sections[0].max_sphere.reset();
            job.builds[0].pickets->max_gap.reset();
            job.builds[0].pickets->max_sphere = Reading(4);
            CHECK(opened(job).sections[0].pickets->count == count + 1);
        }
}

TEST_CASE("under a rail lower than the ball no picket is needed", "[opening][sphere]") {
    Job job = floor_example(60);
    job.sections[0].max_sphere = Reading(4);
    job.sections[0].height = Reading(2 + 1.5 + 2.75 + 3.9);
    CHECK(opened(job).sections[0].pickets->count == 0);
    job.sections[0].height = Reading(2 + 1.5 + 2.75 + 4);
    CHECK(opened(job).sections[0].pickets->count > 5);
}

TEST_CASE("the fewest pickets that stop a ball: with any fewer one passes", "[opening][sphere]") {
    const std::vector<Turning> vase{{0, 1.25}, {0.75, 1.75}, {2, 1}, {10, 1.5}, {15, 0.875}};
    std::vector<Job> jobs{even_example(square_build()), even_example(turned_build(vase)),
                          floor_example(71.625, turned_build(vase)), floor_example(71.625, turned_open_build(vase)),
                          even_example(square_build())};
    jobs[4].posts[0].lean.along = in_degrees(-2);
    for (std::size_t j = 0; j < jobs.size(); ++j)
        for (const double limit : {3.5, 4.0, 4.75, 6.0}) {
            INFO(j << ' ' << limit);
            jobs[j].sections[0].max_sphere = Reading(limit);
            const int count = opened(jobs[j]).sections[0].pickets->count;
            CHECK(largest_with(jobs[j], count, 0) < limit);
            for (int fewer = 0; fewer < count; ++fewer) CHECK(largest_with(jobs[j], fewer, 0) >= limit * (1 - 1e-12));
        }
}

TEST_CASE("on treads the fewest on each that stop a ball", "[opening][sphere]") {
    for (const bool turned : {false, true})
        for (const double limit : {3.5, 4.0, 5.0, 6.0, 12.0}) {
            INFO(turned << ' ' << limit);
            Job job = even_example(turned ? turned_open_build(shaft(1)) : open_build());
            job.sections[0].max_sphere = Reading(limit);
            const Solution solution = opened(job);
            const int k = solution.sections[0].pickets->per_tread;
            if (!has(solution, Trouble::ball_at_post)) CHECK(largest_with(job, 0, k) < limit);
            CHECK(ball(solution, Opening::Kind::picket_gap) < limit);
            for (int fewer = 1; fewer < k; ++fewer) CHECK(largest_with(job, 0, fewer) >= limit);
        }
}

TEST_CASE("where given pickets on treads let a ball through, that is said with its cure", "[opening][sphere]") {
    Job job = even_example(open_build());
    job.sections[0].max_sphere = Reading(5);
    job.builds[0].pickets->per_tread = Count(1);
    const Solution solution = opened(job);
    const auto found = std::find_if(solution.findings.begin(), solution.findings.end(),
                                    [](const Finding& it) { return it.trouble == Trouble::ball_between; });
    REQUIRE(found != solution.findings.end());
    CHECK_THAT(found->numbers[0], within(11 - 1.25, 1e-12));
    CHECK(found->numbers[2] == 2);
    CHECK(found->numbers[3] == 1);
}

}  // namespace rakewright::tests
