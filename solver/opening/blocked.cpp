#include "blocked.hpp"

#include <algorithm>
#include <cmath>

namespace rakewright {
namespace {

using Part = Touch::Part;

Seen operator-(const Seen& a, const Seen& b) { return {a.along - b.along, a.up - b.up}; }
double dot(const Seen& a, const Seen& b) { return a.along * b.along + a.up * b.up; }
double square(const Seen& a) { return dot(a, a); }
/// A quarter turn counter-clockwise.
Seen turned(const Seen& a) { return {-a.up, a.along}; }
Seen sum(const Seen& a, double times, const Seen& b) { return {a.along + times * b.along, a.up + times * b.up}; }

/// Grows with the direction from 0 to 4 once round: the place on the diamond about the origin, which needs no angle.
double place_of(const Seen& direction) {
    const double part = direction.up / (std::fabs(direction.along) + std::fabs(direction.up));
    if (direction.along < 0) return 2 - part;
    return part < 0 ? 4 + part : part;
}

struct Reach {
    double low = INFINITY, high = -INFINITY;

    void add(double place) {
        low = std::min(low, place);
        high = std::max(high, place);
    }
};

std::optional<Stretch> blocked_on_line(const Track& track, const Wall& wall, double radius, double graze) {
    const Seen from = wall.from - track.base;
    const double x = dot(from, track.along), y = dot(from, track.away);
    const double run = dot(wall.along, track.along), rise = dot(wall.along, track.away);
    const double x_to = x + wall.length * run, y_to = y + wall.length * rise;
    const double centre = track.lift * radius, lowest = centre - radius + graze, highest = centre + radius;
    if (std::max(y, y_to) <= lowest || std::min(y, y_to) >= highest) return std::nullopt;

    Reach reach;
    int tangents = 0;
    if (rise != 0) {
        // The circle touches the wall's line, on one side or the other.
        const double side = y * run - x * rise, over = 1 / rise;
        for (const double distance : {radius, -radius}) {
            const double place = (centre * run - side + distance) * over;
            const double foot = (place - x) * run + (centre - y) * rise;
            if (!(foot >= 0 && foot <= wall.length)) continue;
            reach.add(place);
            ++tangents;
        }
    }
    if (tangents < 2) {
        const auto add_end = [&](double at, double height) {
            if (height <= lowest || height >= highest) return;
            const double half = std::sqrt((radius - centre + height) * (highest - height));
            reach.add(at - half);
            reach.add(at + half);
        };
        add_end(x, y);
        add_end(x_to, y_to);
    }
    if (!(reach.low < reach.high)) return std::nullopt;
    return Stretch{reach.low, reach.high};
}

/// A circle about the track's corner touches the point where the wall leaves: half of the track is on the wall's side.
Stretch half_blocked(const Seen& leaving) {
    const double low = place_of({leaving.up, -leaving.along});
    return {low, low + 2, true};
}

std::optional<Stretch> blocked_on_round(const Track& track, const Wall& wall, double radius, double graze) {
    const Seen from = wall.from - track.base, to = wall.to - track.base;
    const double nearly = graze * graze;
    if (wall.length == 0 && square(from) <= nearly) return std::nullopt;
    if (square(from) <= nearly) return half_blocked(wall.along);
    if (square(to) <= nearly) return half_blocked({-wall.along.along, -wall.along.up});

    // `out` looks from the corner square to the wall's line, `ahead` counter-clockwise along it.
    const double left = dot(turned(wall.along), from), start = dot(wall.along, from);
    const double sign = left < 0 ? -1 : 1, height = std::fabs(left);
    const Seen out = sum({}, sign, turned(wall.along)), ahead = turned(out);
    const double low = sign < 0 ? start : -start - wall.length, high = low + wall.length;
    if (wall.length > 0 && height <= graze && low < 0 && high > 0) return Stretch{0, 4};
    if (height >= 2 * radius) return std::nullopt;

    // The circle that touches the line touches it this far ahead or back; beyond the wall's end it touches the end.
    const double foot = std::sqrt(height * (2 * radius - height));
    const auto limit = [&](double turn) -> std::optional<Seen> {
        const double at = turn * foot;
        if (wall.length > 0 && at >= low && at <= high) return sum(sum({}, height - radius, out), at, ahead);
        const bool is_low = wall.length == 0 || at < low;
        const Seen end = is_low == (sign < 0) ? from : to;
        const double beyond = 4 * radius * radius / square(end) - 1;
        if (!(beyond > 0)) return std::nullopt;
        return sum(end, turn * std::sqrt(beyond), turned(end));
    };
    const std::optional<Seen> first = limit(-1), last = limit(1);
    if (!first || !last) return std::nullopt;
    Stretch block{place_of(*first), place_of(*last)};
    if (block.high < block.low) block.high += 4;
    return block;
}

}  // namespace

Wall::Wall(const Obstacle& obstacle, const Seen& origin)
    : from(obstacle.from - origin), to(obstacle.to - origin), has_wood(obstacle.behind == Obstacle::Behind::wood) {
    const Seen whole = to - from;
    length = std::sqrt(square(whole));
    if (length > 0) along = {whole.along / length, whole.up / length};
}

Contact contact(const Wall& wall, const Seen& point) {
    const Seen from = point - wall.from;
    const double foot = dot(from, wall.along);
    if (foot <= 0) return {std::sqrt(square(from)), Part::from_end, wall.from};
    if (foot >= wall.length) return {std::sqrt(square(point - wall.to)), Part::to_end, wall.to};
    const double left = dot(from, turned(wall.along));
    return {std::fabs(left), left < 0 ? Part::right : Part::left, sum(wall.from, foot, wall.along)};
}

Feature feature_of(const Wall& wall, Part part) {
    if (part == Part::from_end || part == Part::to_end)
        return Feature::corner(part == Part::from_end ? wall.from : wall.to);
    return part == Part::left ? Feature::left_of(wall.from, wall.along) : Feature::right_of(wall.from, wall.along);
}

Seen Track::direction(double place) const {
    if (!is_round) return away;
    place -= 4 * std::floor(place / 4);
    const Seen on_diamond = place < 1   ? Seen{1 - place, place}
                            : place < 2 ? Seen{1 - place, 2 - place}
                            : place < 3 ? Seen{place - 3, 2 - place}
                                        : Seen{place - 3, place - 4};
    const double size = std::sqrt(square(on_diamond));
    return {on_diamond.along / size, on_diamond.up / size};
}

Seen Track::touched(double place) const { return is_round ? base : sum(base, place, along); }

Seen Track::centre(double place, double radius) const {
    return sum(touched(place), is_round ? radius : lift * radius, direction(place));
}

std::optional<Stretch> blocked(const Track& track, const Wall& wall, double radius, double graze) {
    return track.is_round ? blocked_on_round(track, wall, radius, graze) : blocked_on_line(track, wall, radius, graze);
}

double Track::place(const Seen& centre) const {
    const Seen from = centre - base;
    return is_round ? place_of(from) : dot(from, along);
}

Room room(const Track& track, double place, const Wall& wall, double graze) {
    const Seen touched = track.touched(place), out = track.direction(place);
    if (!track.is_round && track.lift == 0) {
        const Contact nearest = contact(wall, touched);
        return {nearest.away, nearest.part, nearest.at};
    }
    const Seen from = wall.from - touched, to = wall.to - touched;
    Room least{INFINITY, Part::left, {}};
    const auto try_end = [&](const Seen& end, Part part) {
        const double height = dot(end, out);
        if (height <= graze) return;
        const double radius = square(end) / (2 * height);
        if (radius < least.radius) least = {radius, part, sum(touched, 1, end)};
    };
    try_end(from, Part::from_end);
    try_end(to, Part::to_end);
    // The line comes nearer by 1 - cos while the circle grows by 1; where it hardly does, cos and the farther end would
    // lose the digits.
    const double left = -dot(square(from) < square(to) ? from : to, turned(wall.along)), distance = std::fabs(left);
    const double cosine = (left < 0 ? -1 : 1) * dot(out, turned(wall.along)), sine = dot(out, wall.along);
    const double nearing = cosine > 0 ? sine * sine / (1 + cosine) : 1 - cosine;
    if (distance > graze && nearing > 0) {
        const double radius = distance / nearing, foot = radius * sine - dot(from, wall.along);
        if (radius < least.radius && foot > 0 && foot < wall.length)
            least = {radius, left < 0 ? Part::right : Part::left, sum(wall.from, foot, wall.along)};
    }
    return least;
}

}  // namespace rakewright
