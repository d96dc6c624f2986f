#include "circle.hpp"

#include <algorithm>
#include <cmath>

#include "../measure/compare.hpp"
#include "blocked.hpp"
#include "search.hpp"

namespace rakewright {
namespace {

using Part = Touch::Part;

bool finite(double a, double b) { return std::isfinite(a) && std::isfinite(b); }

bool acceptable(std::span<const Obstacle> obstacles, std::span<const Side2> bounds) {
    for (const Obstacle& it : obstacles)
        if (!finite(it.from.along, it.from.up) || !finite(it.to.along, it.to.up)) return false;
    for (const Side2& it : bounds)
        if (!finite(it.along_part, it.up_part) || !std::isfinite(it.from) || (it.along_part == 0 && it.up_part == 0))
            return false;
    return !obstacles.empty();
}

/// Whether no straight line runs on for ever on the inner sides of all bounds.
bool closed_by(std::span<const Side2> bounds) {
    constexpr double parallel = 1e-12;
    for (const Side2& bound : bounds)
        for (const double turn : {1.0, -1.0}) {
            const Seen way{-turn * bound.up_part, turn * bound.along_part};
            const auto runs_on = [&](const Side2& other) {
                return other.along_part * way.along + other.up_part * way.up >= -parallel;
            };
            if (std::all_of(bounds.begin(), bounds.end(), runs_on)) return false;
        }
    return !bounds.empty();
}

/// How far obstacles lie from a point, along or up.
double reach(std::span<const Obstacle> obstacles, const Seen& from) {
    double farthest = 0;
    for (const Obstacle& it : obstacles)
        for (const Seen& end : {it.from, it.to})
            farthest = std::max({farthest, std::fabs(end.along - from.along), std::fabs(end.up - from.up)});
    return farthest;
}

/// Where a circle stands that only two features hold: on the line through its centre from one to the other.
Feature across(const Feature& first, const Feature& second, const Seen& centre) {
    const Feature& wall = first.kind == Feature::Kind::wall ? first : second;
    return Feature::bound({-wall.b, wall.a, wall.a * centre.up - wall.b * centre.along});
}

/// Of the circles that the decided features hold, the nearest to the decided one.
std::optional<Circle> measured(std::span<const Obstacle> obstacles, std::span<const Side2> bounds,
                               const LargestCircle& decided) {
    std::array<Feature, 3> features;
    std::optional<Seen> origin;
    for (std::size_t i = 0; i < decided.held_by; ++i) {
        const auto [part, number] = decided.touches[i];
        if (number >= (part == Part::bound ? bounds.size() : obstacles.size())) return std::nullopt;
        // Near the origin rounding is smallest. Obstacles come first.
        if (part != Part::bound && !origin) origin = obstacles[number].from;
        if (!origin) return std::nullopt;
        features[i] =
            part == Part::bound
                ? Feature::bound({bounds[number].along_part, bounds[number].up_part, -bounds[number].over(*origin)})
                : feature_of(Wall(obstacles[number], *origin), part);
    }
    const Seen near{decided.circle.centre.along - origin->along, decided.circle.centre.up - origin->up};
    if (decided.held_by == 2) features[2] = across(features[0], features[1], near);
    std::optional<Circle> nearest;
    double least = INFINITY;
    for (const Round& round : touching(features[0], features[1], features[2])) {
        const double away = std::fabs(round.centre.along - near.along) + std::fabs(round.centre.up - near.up) +
                            std::fabs(2 * round.radius - decided.circle.diameter);
        if (!(away < least)) continue;
        least = away;
        nearest = {{round.centre.along + origin->along, round.centre.up + origin->up}, 2 * round.radius};
    }
    return nearest;
}

/// Replaces the circle by the one that its features hold; false if they hold none like it. Where two of three walls are
/// as good as one, being in one line but for rounding, two features hold it better.
bool settled(std::span<const Obstacle> obstacles, std::span<const Side2> bounds, LargestCircle& found) {
    const LargestCircle rough = found;
    const auto holds = [&] {
        const std::optional<Circle> circle = measured(obstacles, bounds, found);
        if (!circle || !same(circle->diameter, rough.circle.diameter, reach(obstacles, rough.circle.centre)))
            return false;
        found.circle = *circle;
        return true;
    };
    if (holds()) return true;
    found.held_by = 2;
    for (const auto& [first, second] : {std::pair{0, 2}, {1, 2}, {0, 1}}) {
        found.touches[0] = rough.touches[static_cast<std::size_t>(first)];
        found.touches[1] = rough.touches[static_cast<std::size_t>(second)];
        if (found.touches[1].part != Part::bound && holds()) return true;
    }
    found = rough;
    return false;
}

}  // namespace

std::optional<LargestCircle> largest_circle(std::span<const Obstacle> obstacles, std::span<const Side2> centre_within) {
    if (!acceptable(obstacles, centre_within)) return std::nullopt;
    const auto has_wood = [](const Obstacle& it) { return it.behind == Obstacle::Behind::wood; };
    if (std::none_of(obstacles.begin(), obstacles.end(), has_wood) && !closed_by(centre_within)) return std::nullopt;
    std::optional<LargestCircle> found = search_largest_circle(obstacles, centre_within);
    if (!found) return std::nullopt;
    if (!settled(obstacles, centre_within, *found)) found->proven = false;
    return found;
}

std::optional<Circle> circle_touching(std::span<const Obstacle> obstacles, std::span<const Side2> centre_within,
                                      const LargestCircle& decided) {
    if (!acceptable(obstacles, centre_within) || (decided.held_by != 2 && decided.held_by != 3)) return std::nullopt;
    return measured(obstacles, centre_within, decided);
}

Outline clipped(const Outline& outline, const Side2& side) {
    Outline kept;
    kept.reserve(outline.size() + 4);
    for (std::size_t i = 0; i < outline.size(); ++i) {
        const Seen &from = outline[i], &to = outline[(i + 1) % outline.size()];
        const double over_from = side.over(from), over_to = side.over(to);
        if (over_from >= 0) kept.push_back(from);
        if ((over_from < 0) == (over_to < 0) || over_from == 0 || over_to == 0) continue;
        const double part = over_from / (over_from - over_to);
        kept.push_back({from.along + part * (to.along - from.along), from.up + part * (to.up - from.up)});
    }
    return kept;
}

std::vector<Obstacle> walls_of(const Outline& outline) {
    std::vector<Obstacle> walls;
    walls.reserve(outline.size());
    for (std::size_t i = 0; i < outline.size(); ++i)
        walls.push_back({outline[i], outline[(i + 1) % outline.size()], Obstacle::Behind::wood});
    return walls;
}

}  // namespace rakewright
