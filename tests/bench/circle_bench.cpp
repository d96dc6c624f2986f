#include <algorithm>
#include <boost/polygon/segment_data.hpp>
#include <boost/polygon/voronoi.hpp>
#include <chrono>
#include <cmath>
#include <cstdint>
#include <cstdio>
#include <numbers>

#include "../support/geos.hpp"
#include "../support/random_opening.hpp"

// Prints what the largest circle of an opening costs, beside the maximum inscribed circle of GEOS at a tolerance of
// 1e-6 and the segment Voronoi diagram of Boost.Polygon on a grid of 2^-24. Read ratios taken in one run. GEOS is left
// out on parallel sides: it would run for seconds and eat gigabytes there.

namespace {

using namespace rakewright;
using rakewright::tests::Geos;
using Clock = std::chrono::steady_clock;

/// The median of some batches, in microseconds a call.
template <class Call>
double microseconds(int batches, int calls, const Call& call) {
    std::vector<double> times;
    for (int i = 0; i < batches; ++i) {
        const auto start = Clock::now();
        for (int j = 0; j < calls; ++j) call();
        times.push_back(std::chrono::duration<double, std::micro>(Clock::now() - start).count() / calls);
    }
    std::nth_element(times.begin(), times.begin() + batches / 2, times.end());
    return times[static_cast<std::size_t>(batches / 2)];
}

namespace bp = boost::polygon;
using GridPoint = bp::point_data<std::int32_t>;
using GridSegment = bp::segment_data<std::int32_t>;

/// On the grid all the diagram's own vertices are tried: inside, and as far away as the nearest edge is.
double diameter_by_voronoi(const Outline& outline, double scale) {
    const auto on_grid = [scale](const Seen& at) {
        return GridPoint(static_cast<std::int32_t>(std::lround(at.along * scale)),
                         static_cast<std::int32_t>(std::lround(at.up * scale)));
    };
    std::vector<GridSegment> segments;
    for (std::size_t i = 0; i < outline.size(); ++i)
        segments.emplace_back(on_grid(outline[i]), on_grid(outline[(i + 1) % outline.size()]));
    bp::voronoi_diagram<double> diagram;
    bp::construct_voronoi(segments.begin(), segments.end(), &diagram);
    double best = 0;
    for (const auto& vertex : diagram.vertices()) {
        double nearest = INFINITY;
        bool inside = false;
        for (const GridSegment& it : segments) {
            const double x0 = it.low().x(), y0 = it.low().y(), x = it.high().x() - x0, y = it.high().y() - y0;
            const double part = std::clamp(((vertex.x() - x0) * x + (vertex.y() - y0) * y) / (x * x + y * y), 0.0, 1.0);
            const double away_x = vertex.x() - x0 - part * x, away_y = vertex.y() - y0 - part * y;
            nearest = std::min(nearest, away_x * away_x + away_y * away_y);
            if ((y0 > vertex.y()) != (y0 + y > vertex.y()) && vertex.x() < x0 + (vertex.y() - y0) / y * x)
                inside = !inside;
        }
        if (inside) best = std::max(best, nearest);
    }
    return 2 * std::sqrt(best) / scale;
}

void compare(const char* name, const std::vector<Outline>& outlines, bool with_geos) {
    double ours = 0, geos = 0, boost = 0, geos_off = 0, boost_off = 0, sum = 0;
    for (const Outline& outline : outlines) {
        const std::vector<Obstacle> walls = walls_of(outline);
        const std::optional<LargestCircle> circle = largest_circle(walls);
        if (!circle || !circle->proven) {
            std::printf("%s: no circle\n", name);
            return;
        }
        ours += microseconds(9, 300, [&] { sum += largest_circle(walls)->circle.diameter; });
        double reach = 0;
        for (const Seen& corner : outline) reach = std::max({reach, std::fabs(corner.along), std::fabs(corner.up)});
        const double scale = std::exp2(std::floor(std::log2(16777216.0 * 60 / reach)));
        double found = 0;
        boost += microseconds(5, 20, [&] { found = diameter_by_voronoi(outline, scale); });
        boost_off = std::max(boost_off, std::fabs(found - circle->circle.diameter));
        if (!with_geos) continue;
        const Geos oracle(outline);
        geos += microseconds(3, 3, [&] { found = oracle.diameter(1e-6); });
        geos_off = std::max(geos_off, std::fabs(found - circle->circle.diameter));
    }
    const double count = static_cast<double>(outlines.size());
    std::printf("%-34s %8.2f us   Boost %8.1f us (%5.1fx, off %.0e)", name, ours / count, boost / count, boost / ours,
                boost_off);
    if (with_geos) std::printf("   GEOS %8.1f us (%6.1fx, off %.0e)", geos / count, geos / ours, geos_off);
    std::printf("%s\n", sum > 0 ? "" : " ");
}

std::vector<Outline> turned(int rings, const char* seed) {
    tests::Random random(seed);
    std::vector<Outline> outlines;
    for (int i = 0; i < 10; ++i) outlines.push_back(tests::random_turned(random, rings));
    return outlines;
}

}  // namespace

int main() {
    compare("tread, riser and rail", {{{0, 0}, {11, 0}, {11, 7}}}, true);
    compare("picket gap, raked rails", {{{0, 0}, {3.875, 2.25}, {3.875, 32.25}, {0, 30}}}, false);
    compare("picket gap, square", {{{0, 0}, {4, 0}, {4, 30}, {0, 30}}}, false);
    compare("tapered gap", {{{0, 0}, {4, 0}, {4.5, 30}, {0, 30}}}, true);
    compare("two steps under a rail", {{{0, 0}, {11, 0}, {11, 7}, {22, 7}, {22, 16}, {0, 2}}}, true);
    compare("turned, 8 corners", turned(4, "eight"), true);
    compare("turned, 12 corners", turned(6, "twelve"), true);
    compare("turned, 20 corners", turned(10, "twenty"), true);
    compare("turned, 60 corners", turned(30, "sixty"), true);
    Outline round;
    for (int i = 0; i < 20; ++i)
        round.push_back({std::cos(std::numbers::pi * i / 10), std::sin(std::numbers::pi * i / 10)});
    compare("regular, 20 corners", {round}, true);

    tests::Random random("treads");
    double ours = 0, sum = 0;
    constexpr int treads = 50;
    for (int i = 0; i < treads; ++i) {
        const tests::Opening2 opening = tests::random_tread(random);
        ours += microseconds(5, 100, [&] {
            const auto circle = largest_circle(opening.obstacles, opening.centre_within);
            if (circle) sum += circle->circle.diameter;
        });
    }
    std::printf("%-34s %8.2f us   (12 to 14 obstacles in no outline, centre bounded)%s\n", "over a tread, thin nosings",
                ours / treads, sum > 0 ? "" : " ");
}
