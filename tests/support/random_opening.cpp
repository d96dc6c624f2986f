#include "random_opening.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace rakewright::tests {

Outline random_star(Random& random, int corners, double spread) {
    Outline outline;
    for (int i = 0; i < corners; ++i) {
        const double part = random.uniform(0.1, 0.9), out = random.uniform(1, spread);
        const double angle = 2 * std::numbers::pi * (i + part) / corners;
        outline.push_back({out * std::cos(angle), out * std::sin(angle)});
    }
    // Three corners may lie on one side of the origin, and then run clockwise.
    double twice_area = 0;
    for (std::size_t i = 0; i < outline.size(); ++i) {
        const Seen &a = outline[i], &b = outline[(i + 1) % outline.size()];
        twice_area += a.along * b.up - a.up * b.along;
    }
    if (twice_area < 0) std::reverse(outline.begin(), outline.end());
    return outline;
}

Outline random_whole_star(Random& random, int corners) {
    Outline outline = random_star(random, corners, 4);
    for (Seen& corner : outline) corner = {std::round(2 * corner.along), std::round(2 * corner.up)};
    return outline;
}

Outline random_turned(Random& random, int rings) {
    std::vector<Seen> left;
    double up = 0;
    for (int i = 0; i < rings; ++i) {
        left.push_back({random.uniform(0.3, 1), up});
        up += random.uniform(0.5, 4);
    }
    const double apart = random.uniform(3, 5), shift = random.uniform(0, 3);
    Outline outline;
    // Right side upwards, then left side downwards; the rails close it below and above.
    for (const Seen& corner : left) outline.push_back({apart - corner.along, corner.up + shift});
    for (auto corner = left.rbegin(); corner != left.rend(); ++corner) outline.push_back(*corner);
    return outline;
}

Outline random_picket_gap(Random& random) {
    const double gap = random.uniform(2, 6), high = random.uniform(1, 30), slope = random.uniform(-1, 1);
    const double along = random.uniform(-100, 100), up = random.uniform(-100, 100);
    return {{along, up}, {along + gap, up + slope * gap}, {along + gap, up + slope * gap + high}, {along, up + high}};
}

Opening2 random_tread(Random& random) {
    constexpr int steps = 4;
    Opening2 opening;
    std::vector<Seen> nosings;
    Seen at{0, random.uniform(5, 8)};
    for (int i = 0; i < steps; ++i) {
        nosings.push_back(at);
        const double run = random.uniform(9, 12), rise = random.uniform(5, 8);
        at = {at.along + run, at.up + rise};
    }
    double floor = 0;
    Seen edge{-20, 0};
    for (const Seen& nosing : nosings) {
        const double projection = random.whole(0, 2) * random.uniform(0.4, 1.2);
        const Seen foot{nosing.along + projection, floor}, head{foot.along, nosing.up};
        opening.obstacles.push_back({edge, foot});
        opening.obstacles.push_back({foot, head});
        if (projection > 0) opening.obstacles.push_back({head, nosing});
        edge = nosing;
        floor = nosing.up;
    }
    const int tread = random.whole(1, steps - 1);
    const Seen lower = nosings[static_cast<std::size_t>(tread - 1)], upper = nosings[static_cast<std::size_t>(tread)];
    double lift = -INFINITY;
    const double slope = random.uniform(0.4, 0.9);
    for (const Seen& nosing : nosings) lift = std::max(lift, nosing.up - slope * nosing.along);
    lift += random.uniform(0, 3);
    opening.obstacles.push_back({{-20, lift - 20 * slope}, {60, lift + 60 * slope}});
    const double size = std::sqrt(1 + slope * slope);
    opening.centre_within = {
        {1, 0, lower.along}, {-1, 0, -upper.along}, {0, 1, lower.up}, {slope / size, -1 / size, -lift / size}};
    if (random.whole(0, 2) == 0) {
        const double post = random.uniform(lower.along, upper.along);
        opening.obstacles.push_back({{post, lower.up}, {post, 100}});
        opening.centre_within.push_back({1, 0, post});
    }
    return opening;
}

Opening2 random_litter(Random& random, int walls, int points) {
    Opening2 opening;
    const auto spot = [&] {
        const double along = random.uniform(-2, 2), up = random.uniform(-2, 2);
        return Seen{along, up};
    };
    for (int i = 0; i < walls; ++i) {
        const Seen from = spot(), to = spot();
        opening.obstacles.push_back({from, to});
    }
    for (int i = 0; i < points; ++i) {
        const Seen at = spot();
        opening.obstacles.push_back({at, at});
    }
    const double turn = random.uniform(0, 6), out = random.uniform(0.2, 2);
    const int sides = random.whole(3, 4);
    for (int i = 0; i < sides; ++i) {
        const double angle = turn + 2 * std::numbers::pi * i / sides;
        opening.centre_within.push_back({std::cos(angle), std::sin(angle), -out});
    }
    return opening;
}

Opening2 random_whole_litter(Random& random, int walls, int points) {
    Opening2 opening;
    const auto spot = [&] {
        const int along = random.whole(-3, 3), up = random.whole(-3, 3);
        return Seen{static_cast<double>(along), static_cast<double>(up)};
    };
    for (int i = 0; i < walls; ++i) {
        const Seen from = spot(), to = spot();
        opening.obstacles.push_back({from, to});
    }
    for (int i = 0; i < points; ++i) {
        const Seen at = spot();
        opening.obstacles.push_back({at, at});
    }
    const double low = random.whole(-3, 0), high = random.whole(0, 3), under = random.whole(-3, 0),
                 over = random.whole(0, 3);
    opening.centre_within = {{1, 0, low}, {-1, 0, -high}, {0, 1, under}, {0, -1, -over}};
    return opening;
}

Opening2 nudged(Random& random, const Opening2& opening, double much) {
    Opening2 result = opening;
    std::vector<std::pair<Seen, Seen>> moved;
    const auto move = [&](Seen& end) {
        for (const auto& [before, after] : moved)
            if (before.along == end.along && before.up == end.up) {
                end = after;
                return;
            }
        const double along = random.uniform(-much, much), up = random.uniform(-much, much);
        moved.push_back({end, {end.along + along, end.up + up}});
        end = moved.back().second;
    };
    for (Obstacle& it : result.obstacles) {
        move(it.from);
        move(it.to);
    }
    return result;
}

Opening2 random_room(Random& random) {
    Opening2 opening;
    opening.obstacles = walls_of(random_star(random, random.whole(4, 7), 1.5));
    Outline post = random_star(random, random.whole(3, 4), 1.5);
    const double along = random.uniform(-0.2, 0.2), up = random.uniform(-0.2, 0.2);
    for (Seen& corner : post) corner = {along + corner.along / 8, up + corner.up / 8};
    std::reverse(post.begin(), post.end());
    for (const Obstacle& wall : walls_of(post)) opening.obstacles.push_back(wall);
    const double at = random.uniform(-0.5, 0.5), end = random.uniform(-0.5, 0.5), high = random.uniform(-0.5, 0.5);
    opening.obstacles.push_back({{at, high}, {end, at}});
    opening.obstacles.push_back({{end, high}, {end, high}});
    const double bound = random.uniform(-0.5, 0.5);
    if (random.whole(0, 1) == 0) opening.centre_within.push_back({0.6, 0.8, bound});
    return opening;
}

}  // namespace rakewright::tests
