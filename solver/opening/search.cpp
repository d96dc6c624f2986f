#include "search.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <memory_resource>

#include "blocked.hpp"

// Grow all obstacles by one radius: where some place for a centre is left, a circle of that radius has room, and the
// edge of that place runs along a track of an obstacle (or along a bound of the centre). So each track in turn is asked
// for a place that is still free at the radius of the best circle so far; from such a place a larger circle is held
// fast by three features and becomes the best. A track once settled stays so, since places only vanish as the radius
// grows: when all are settled there is no larger circle. The last digits come from the three features alone.

namespace rakewright {
namespace {

using Part = Touch::Part;

constexpr double smallest = 1e-9;       // of the extent: circles under it do not count
constexpr double larger = 1 + 1e-13;    // by which a circle must beat the best
constexpr double rounding_off = 4e-15;  // of the extent: what reaches in no deeper touches
constexpr double alike = 1e-12;         // of a radius: by which two ways to the same circle may differ
constexpr std::size_t none = static_cast<std::size_t>(-1);

struct Best {
    double radius = 0;
    Seen centre;
    std::array<Touch, 3> touches;
    std::size_t count = 0;
};

struct Corner {
    Seen at;
    Touch own;
};

struct Place {
    Track track;
    Touch own;  // what the circle touches all along the track
    double low = 0, high = 0;
    std::size_t begins_at = none;  // the wall that stops circles where a round track begins
};

struct Blocker {
    double low = 0, high = 0;
    std::size_t wall = none;
};

/// A stretch of a track where circles have room, and the walls that stop them at its ends (none: the track ends).
struct Gap {
    double low = 0, high = 0;
    std::size_t left = none, right = none;
};

bool finite(double a, double b) { return std::isfinite(a) && std::isfinite(b); }

class Search {
 public:
    Search(std::span<const Obstacle> obstacles, std::span<const Side2> bounds);

    std::optional<LargestCircle> find();

 private:
    void name_third();
    bool find_corners();
    void settle_bound(std::size_t number);
    void try_where_bounds_meet(const Seen& centre, std::size_t bound, std::size_t other);
    void settle_wall(std::size_t number);
    std::size_t longest_wall() const;
    void settle(Place place);

    bool outside_of_bounds(const Track& track, double low, double high, double radius) const;
    bool may_be_centre(const Seen& centre) const;
    void gather(Place& place, double radius);
    void begin_round(Place& place);
    bool raise_in(const Place& place, const Gap& gap, double radius);
    bool hold(const Place& place, const Gap& gap, double radius);
    bool grow(const Place& place, double at);
    bool take(const Round& round, const std::array<Touch, 3>& touches, std::size_t count);
    Feature feature(const Touch& touch) const {
        return touch.part == Part::bound ? Feature::bound(bounds_[touch.number])
                                         : feature_of(walls_[touch.number], touch.part);
    }
    double level() const { return std::max(best_.radius * larger, smallest * extent_); }

    std::array<std::byte, 6144> memory_;
    std::pmr::monotonic_buffer_resource pool_{memory_.data(), memory_.size()};
    std::pmr::vector<Wall> walls_{&pool_};
    std::pmr::vector<Side2> bounds_{&pool_};
    std::pmr::vector<Corner> corners_{&pool_};
    std::pmr::vector<Blocker> blockers_{&pool_};
    Seen origin_;
    double extent_ = 0, graze_ = 0;
    double overgrown_ = 0;
    double unjudged_ = 0;  // a radius that a circle may have had where rounding left that open
    bool has_wood_ = false, proven_ = true;
    Best best_;
};

Search::Search(std::span<const Obstacle> obstacles, std::span<const Side2> bounds) {
    // Rounding is smallest near the origin.
    Seen low = obstacles.front().from, high = low;
    for (const Obstacle& it : obstacles)
        for (const Seen& end : {it.from, it.to}) {
            low = {std::min(low.along, end.along), std::min(low.up, end.up)};
            high = {std::max(high.along, end.along), std::max(high.up, end.up)};
        }
    origin_ = {low.along / 2 + high.along / 2, low.up / 2 + high.up / 2};
    extent_ = std::max(high.along - low.along, high.up - low.up);
    graze_ = rounding_off * extent_;
    walls_.reserve(obstacles.size());
    for (const Obstacle& it : obstacles) {
        walls_.emplace_back(it, origin_);
        if (walls_.back().length == 0) walls_.back().has_wood = false;
        has_wood_ = has_wood_ || walls_.back().has_wood;
    }
    bounds_.reserve(bounds.size());
    for (const Side2& it : bounds) {
        const double size = std::sqrt(it.along_part * it.along_part + it.up_part * it.up_part);
        const double along = it.along_part / size, up = it.up_part / size;
        bounds_.push_back({along, up, it.from / size - along * origin_.along - up * origin_.up});
    }
    blockers_.reserve(walls_.size() * 2);
}

std::optional<LargestCircle> Search::find() {
    if (!std::isfinite(extent_)) return std::nullopt;
    if (extent_ == 0) extent_ = 1;  // a single point: any size will do
    if (!find_corners()) return std::nullopt;
    for (std::size_t i = 0; i < bounds_.size(); ++i) settle_bound(i);
    // A long wall most often leads to a large circle at once, which leaves the others little to do.
    const std::size_t first = longest_wall();
    settle_wall(first);
    for (const Corner& corner : corners_) settle({{true, corner.at, {}, {}, 1}, corner.own});
    for (std::size_t i = 0; i < walls_.size(); ++i)
        if (i != first) settle_wall(i);
    if (best_.count == 0) return std::nullopt;
    if (best_.count == 2) name_third();
    const auto order = [](const Touch& a, const Touch& b) {
        const bool a_last = a.part == Part::bound, b_last = b.part == Part::bound;
        return a_last != b_last ? b_last : a.number < b.number;
    };
    std::stable_sort(best_.touches.begin(), best_.touches.begin() + static_cast<std::ptrdiff_t>(best_.count), order);
    return LargestCircle{{{best_.centre.along + origin_.along, best_.centre.up + origin_.up}, 2 * best_.radius},
                         best_.touches,
                         best_.count,
                         proven_ && unjudged_ <= best_.radius * (1 + alike)};
}

/// A circle that grew to the largest by itself may touch a third feature, unless it stands between parallel walls.
void Search::name_third() {
    for (std::size_t i = 0; i < walls_.size(); ++i) {
        const Contact here = contact(walls_[i], best_.centre);
        if (here.away > best_.radius * (1 + alike)) continue;
        const Touch third{here.part, i};
        if (i == best_.touches[1].number || (i == best_.touches[0].number && best_.touches[0].part != Part::bound))
            continue;
        for (const Round& round : touching(feature(best_.touches[0]), feature(best_.touches[1]), feature(third)))
            if (std::fabs(round.radius - best_.radius) <= best_.radius * alike) {
                best_.touches[2] = third;
                best_.count = 3;
                return;
            }
    }
}

/// Finds the corners that a circle can touch; false if walls with wood behind them do not close.
bool Search::find_corners() {
    corners_.reserve(2 * walls_.size());
    const auto meet = [this](const Seen& a, const Seen& b) {
        return std::fabs(a.along - b.along) <= graze_ && std::fabs(a.up - b.up) <= graze_;
    };
    for (std::size_t i = 0; i < walls_.size(); ++i) {
        const Wall& wall = walls_[i];
        if (!wall.has_wood) {
            for (const Corner& end : {Corner{wall.from, {Part::from_end, i}}, {wall.to, {Part::to_end, i}}})
                if (std::none_of(corners_.begin(), corners_.end(),
                                 [&](const Corner& it) { return meet(it.at, end.at); }))
                    corners_.push_back(end);
            continue;
        }
        // Most often the next wall runs on.
        std::size_t steps = 1;
        const auto after = [&] { return (i + steps) % walls_.size(); };
        while (steps < walls_.size() && !(walls_[after()].has_wood && meet(walls_[after()].from, wall.to))) ++steps;
        if (steps == walls_.size()) return false;
        const Seen &here = wall.along, &there = walls_[after()].along;
        const double turn = here.along * there.up - here.up * there.along;
        const double ahead = here.along * there.along + here.up * there.up;
        const bool hollow = turn > rounding_off || (turn >= -rounding_off && ahead > 0);
        if (!hollow) corners_.push_back({wall.to, {Part::to_end, i}});
    }
    return true;
}

bool Search::may_be_centre(const Seen& centre) const {
    for (const Side2& bound : bounds_)
        if (bound.over(centre) < -graze_) return false;
    if (!has_wood_) return true;
    bool inside = false;
    for (const Wall& wall : walls_) {
        if (!wall.has_wood || (wall.from.up > centre.up) == (wall.to.up > centre.up)) continue;
        const double crossing = wall.from.along + (centre.up - wall.from.up) / (wall.to.up - wall.from.up) *
                                                      (wall.to.along - wall.from.along);
        if (centre.along < crossing) inside = !inside;
    }
    return inside;
}

void Search::settle_bound(std::size_t number) {
    constexpr double parallel = 1e-12;
    const Side2& bound = bounds_[number];
    const Seen along{-bound.up_part, bound.along_part}, away{bound.along_part, bound.up_part};
    const Seen base{bound.along_part * bound.from, bound.up_part * bound.from};
    // Outlines bound the centre where the bounds leave it free.
    const double far = has_wood_ ? 2 * extent_ : INFINITY;
    Place place{{false, base, along, away, 0}, {Part::bound, number}, -far, far};
    std::size_t low_by = none, high_by = none;
    for (std::size_t i = 0; i < bounds_.size(); ++i) {
        if (i == number) continue;
        const double over = bounds_[i].over(base);
        const double gain = bounds_[i].along_part * along.along + bounds_[i].up_part * along.up;
        const double at = -over / gain;
        if (std::fabs(gain) <= parallel) {
            if (over < -graze_) return;
        } else if (gain > 0 && at > place.low) {
            place.low = at, low_by = i;
        } else if (gain < 0 && at < place.high) {
            place.high = at, high_by = i;
        }
    }
    if (!(place.low <= place.high + graze_) || !finite(place.low, place.high)) return;
    if (low_by != none) try_where_bounds_meet(place.track.centre(place.low, 0), number, low_by);
    if (high_by != none) try_where_bounds_meet(place.track.centre(place.high, 0), number, high_by);
    settle(place);
}

void Search::try_where_bounds_meet(const Seen& centre, std::size_t bound, std::size_t other) {
    if (other < bound) return;  // was tried from the other bound
    Contact nearest{INFINITY, Part::left, {}};
    std::size_t wall = none;
    for (std::size_t i = 0; i < walls_.size(); ++i)
        if (const Contact here = contact(walls_[i], centre); here.away < nearest.away) nearest = here, wall = i;
    take({centre, nearest.away}, {Touch{nearest.part, wall}, {Part::bound, bound}, {Part::bound, other}}, 3);
}

std::size_t Search::longest_wall() const {
    const auto shorter = [](const Wall& a, const Wall& b) { return a.length < b.length; };
    return static_cast<std::size_t>(std::max_element(walls_.begin(), walls_.end(), shorter) - walls_.begin());
}

void Search::settle_wall(std::size_t number) {
    const Wall& wall = walls_[number];
    if (wall.length == 0) return;
    const Seen left{-wall.along.up, wall.along.along}, right{wall.along.up, -wall.along.along};
    // A little beyond its ends, so that nothing is lost between walls that run on straight.
    const double low = -graze_, high = wall.length + graze_;
    settle({{false, wall.from, wall.along, left, 1}, {Part::left, number}, low, high});
    if (!wall.has_wood) settle({{false, wall.from, wall.along, right, 1}, {Part::right, number}, low, high});
}

bool Search::outside_of_bounds(const Track& track, double low, double high, double radius) const {
    for (const Side2& bound : bounds_) {
        const bool out = track.is_round ? bound.over(track.base) < -radius - graze_
                                        : bound.over(track.centre(low, radius)) < -graze_ &&
                                              bound.over(track.centre(high, radius)) < -graze_;
        if (out) return true;
    }
    return false;
}

/// The walls that stop a circle of this radius on a track, by where they begin to.
void Search::gather(Place& place, double radius) {
    blockers_.clear();
    for (std::size_t i = 0; i < walls_.size(); ++i) {
        if (!place.track.is_round && place.track.lift != 0 && i == place.own.number) continue;
        const std::optional<Stretch> block =
            blocked(place.track, walls_[i], radius, place.track.lift == 0 ? 0 : graze_);
        if (block) blockers_.push_back({block->low, block->high, block->ends_track ? none : i});
    }
    if (place.track.is_round) begin_round(place);
    std::sort(blockers_.begin(), blockers_.end(), [](const Blocker& a, const Blocker& b) { return a.low < b.low; });
}

/// Lets a round track begin where its first blocker ends and end where that begins again.
void Search::begin_round(Place& place) {
    place.low = 0, place.high = 4, place.begins_at = none;
    if (blockers_.empty()) return;
    const Blocker first = blockers_.front();
    place.begins_at = first.wall;
    place.low = first.high, place.high = first.low + 4;
    for (std::size_t i = 0, count = blockers_.size(); i < count; ++i) {
        Blocker& it = blockers_[i];
        const double turns = 4 * std::floor((it.low - first.low) / 4);
        it.low -= turns, it.high -= turns;
        if (it.high > first.low + 4) blockers_.push_back({it.low - 4, it.high - 4, it.wall});
    }
    blockers_.push_back({place.high, place.high, first.wall});
}

/// Raises the best circle until nothing larger has room on a track.
void Search::settle(Place place) {
    for (std::size_t raised = 0; raised < 4 * walls_.size() + 64; ++raised) {
        const double radius = level();
        if (outside_of_bounds(place.track, place.low, place.high, radius)) return;
        gather(place, radius);
        bool done = true;
        Gap gap{place.low, place.low, place.begins_at, none};
        blockers_.push_back({place.high, place.high, none});
        for (const Blocker& blocker : blockers_) {
            gap.high = std::min(blocker.low, place.high);
            gap.right = blocker.wall;
            if (gap.high > gap.low && raise_in(place, gap, radius)) {
                done = false;
                break;
            }
            if (blocker.high > gap.low) gap.low = blocker.high, gap.left = blocker.wall;
            if (gap.low >= place.high) break;
        }
        if (done) return;
    }
    proven_ = false;
}

bool Search::raise_in(const Place& place, const Gap& gap, double radius) {
    const double middle = gap.low + (gap.high - gap.low) / 2;
    if (!may_be_centre(place.track.centre(middle, radius))) return false;
    if (gap.left == none && gap.right == none) return grow(place, middle);
    if (gap.left == none && grow(place, gap.low)) return true;
    if (gap.right == none && grow(place, gap.high)) return true;
    if (gap.left != none && gap.right != none && hold(place, gap, radius)) return true;
    overgrown_ = 0;
    if (grow(place, middle)) return true;
    unjudged_ = std::max(unjudged_, overgrown_);
    return false;
}

/// Holds a circle between the walls at the two ends of a gap; where others reach into it they take the place of the one
/// on their side.
bool Search::hold(const Place& place, const Gap& gap, double radius) {
    const Feature own = feature(place.own);
    std::array<Touch, 2> held{Touch{contact(walls_[gap.left], place.track.centre(gap.low, radius)).part, gap.left},
                              Touch{contact(walls_[gap.right], place.track.centre(gap.high, radius)).part, gap.right}};
    for (std::size_t step = 0; step < 2 * walls_.size() + 8; ++step) {
        const std::array<Feature, 2> features{feature(held[0]), feature(held[1])};
        std::optional<Round> between;
        const auto ahead = [&](const Round& round, const Seen& spot) {
            const Seen out{round.centre.along - place.track.base.along, round.centre.up - place.track.base.up};
            const Seen forward = place.track.is_round ? Seen{-out.up, out.along} : place.track.along;
            return (spot.along - round.centre.along) * forward.along + (spot.up - round.centre.up) * forward.up;
        };
        for (const Round& round : touching(own, features[0], features[1])) {
            const auto spot = [&](const Feature& it) {
                if (it.kind == Feature::Kind::corner) return it.at;
                return Seen{round.centre.along - round.radius * it.a, round.centre.up - round.radius * it.b};
            };
            const double slack = 1e-9 * round.radius * (place.track.is_round ? round.radius : 1);
            if (round.radius > radius && ahead(round, spot(features[0])) <= slack &&
                ahead(round, spot(features[1])) >= -slack && (!between || round.radius < between->radius))
                between = round;
        }
        if (!between) return false;
        double deepest = between->radius - graze_;
        std::size_t by = none;
        for (std::size_t i = 0; i < walls_.size(); ++i)
            if (const double here = contact(walls_[i], between->centre).away; here < deepest) deepest = here, by = i;
        if (by != none) {
            const Room into = room(place.track, place.track.place(between->centre), walls_[by], graze_);
            if (!std::isfinite(into.radius)) return false;
            held[ahead(*between, into.at) < 0 ? 0 : 1] = {into.part, by};
            continue;
        }
        // A line that is touched beyond its wall's end gives way to the end.
        bool changed = false;
        for (Touch& touch : held) {
            const Contact here = contact(walls_[touch.number], between->centre);
            if (here.away <= between->radius + graze_ || here.part == touch.part) continue;
            touch.part = here.part;
            changed = true;
        }
        if (!changed) return take(*between, {place.own, held[0], held[1]}, 3);
    }
    return false;
}

/// Lets a circle grow at one place until the first wall stops it.
bool Search::grow(const Place& place, double at) {
    double radius = INFINITY;
    Touch by;
    for (std::size_t i = 0; i < walls_.size(); ++i)
        if (const Room here = room(place.track, at, walls_[i], graze_); here.radius < radius)
            radius = here.radius, by = {here.part, i};
    if (!std::isfinite(radius)) return false;
    // Beside a wall that is nearly in line with this one, rounding may let it grow too far.
    const Seen centre = place.track.centre(at, radius);
    for (const Wall& wall : walls_)
        if (contact(wall, centre).away < radius - graze_) {
            overgrown_ = radius;
            return false;
        }
    return take({centre, radius}, {place.own, by, by}, 2);
}

bool Search::take(const Round& round, const std::array<Touch, 3>& touches, std::size_t count) {
    if (!(round.radius >= level()) || !may_be_centre(round.centre)) return false;
    best_ = {round.radius, round.centre, touches, count};
    return true;
}

}  // namespace

std::optional<LargestCircle> search_largest_circle(std::span<const Obstacle> obstacles, std::span<const Side2> bounds) {
    return Search(obstacles, bounds).find();
}

}  // namespace rakewright
