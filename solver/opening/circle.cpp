#include "circle.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdint>

#include "../measure/compare.hpp"

namespace rakewright {
namespace {

/// a x + b y + k r = d: the circle of radius r about (x, y) touches a line (k = -1) or has its centre on one (k = 0).
struct Linear {
    double a = 0, b = 0, k = 0, d = 0;
};

/// What a circle can touch, or its centre lie on.
struct Feature {
    bool is_point = false;
    Linear line;
    Seen point;
};

struct Edge {
    Seen from, to;
    double a = 0, b = 0;  // the unit normal that looks into the opening
    double length = 0;
};

double square(double x) { return x * x; }

/// How far a point is from the edge, squared.
double square_away(const Edge& edge, const Seen& point) {
    const double x = point.along - edge.from.along, y = point.up - edge.from.up;
    const double along = edge.b * x - edge.a * y;  // the edge runs along (b, -a)
    if (along <= 0) return x * x + y * y;
    if (along >= edge.length) return square(point.along - edge.to.along) + square(point.up - edge.to.up);
    return square(edge.a * x + edge.b * y);
}

/// The circles that touch three features: at most two.
class Touching {
 public:
    Touching(const Feature& a, const Feature& b, const Feature& c) {
        std::array<const Feature*, 3> features{&a, &b, &c};
        std::stable_partition(features.begin(), features.end(),
                              [](const Feature* feature) { return feature->is_point; });
        const auto points =
            std::count_if(features.begin(), features.end(), [](const Feature* feature) { return feature->is_point; });
        if (points == 0) {
            three_lines(a.line, b.line, c.line);
        } else {
            const Linear first = points == 3 ? between(*features[0], *features[1]) : features[2]->line;
            const Linear second = points == 1   ? features[1]->line
                                  : points == 2 ? between(*features[0], *features[1])
                                                : between(*features[0], *features[2]);
            two_lines_and_point(first, second, features[0]->point);
        }
    }

    const Circle* begin() const { return circles_.data(); }
    const Circle* end() const { return circles_.data() + count_; }

 private:
    /// The line on which the centres lie that are equally far from two points.
    static Linear between(const Feature& a, const Feature& b) {
        const double x = b.point.along - a.point.along, y = b.point.up - a.point.up, apart = std::sqrt(x * x + y * y);
        const double middle = (x * (a.point.along + b.point.along) + y * (a.point.up + b.point.up)) / 2;
        return {x / apart, y / apart, 0, middle / apart};
    }

    void add(double x, double y, double r) {
        if (r > 0 && std::isfinite(x) && std::isfinite(y) && std::isfinite(r)) circles_[count_++] = {{x, y}, r};
    }

    void three_lines(const Linear& p, const Linear& q, const Linear& s) {
        const double x = q.b * s.k - q.k * s.b, y = q.k * s.a - q.a * s.k, r = q.a * s.b - q.b * s.a;
        const double determinant = p.a * x + p.b * y + p.k * r;
        if (std::fabs(determinant) < parallel) return;
        // Cramer's rule, each column's cofactors written out.
        add((p.d * x + q.d * (s.b * p.k - s.k * p.b) + s.d * (p.b * q.k - p.k * q.b)) / determinant,
            (p.d * y + q.d * (s.k * p.a - s.a * p.k) + s.d * (p.k * q.a - p.a * q.k)) / determinant,
            (p.d * r + q.d * (s.a * p.b - s.b * p.a) + s.d * (p.a * q.b - p.b * q.a)) / determinant);
    }

    /// The two planes meet in a line of (x, y, r); it meets the cone over the point in the roots of a quadratic.
    void two_lines_and_point(const Linear& p, const Linear& q, const Seen& point) {
        const double wx = p.b * q.k - p.k * q.b, wy = p.k * q.a - p.a * q.k, wr = p.a * q.b - p.b * q.a;
        const double size = wx * wx + wy * wy + wr * wr;
        if (size < parallel * parallel) return;
        const double x0 = (p.d * (q.b * wr - q.k * wy) + q.d * (wy * p.k - wr * p.b)) / size - point.along;
        const double y0 = (p.d * (q.k * wx - q.a * wr) + q.d * (wr * p.a - wx * p.k)) / size - point.up;
        const double r0 = (p.d * (q.a * wy - q.b * wx) + q.d * (wx * p.b - wy * p.a)) / size;
        const double a = wx * wx + wy * wy - wr * wr, b = x0 * wx + y0 * wy - r0 * wr, c = x0 * x0 + y0 * y0 - r0 * r0;
        const auto at = [&](double t) { add(x0 + t * wx + point.along, y0 + t * wy + point.up, r0 + t * wr); };
        const double discriminant = b * b - a * c;
        if (std::fabs(a) < parallel * size) {
            if (std::fabs(b) > parallel) at(-c / (2 * b));
            return;
        }
        if (discriminant < 0) return;
        const double larger = -(b + std::copysign(std::sqrt(discriminant), b));
        at(larger / a);
        if (larger != 0) at(c / larger);
    }

    static constexpr double parallel = 1e-14;
    std::array<Circle, 2> circles_{};
    std::size_t count_ = 0;
};

class Search {
 public:
    Search(const Outline& outline, const std::vector<Side2>& centre_within) : bounds_(centre_within) {
        // Near the origin rounding is smallest.
        origin_ = outline.front();
        for (std::size_t i = 0; i < outline.size(); ++i) add_edge(outline[i], outline[(i + 1) % outline.size()]);
        for (Side2& bound : bounds_) bound.from -= bound.along_part * origin_.along + bound.up_part * origin_.up;
        add_features();
        extent_ = std::max(high_.along - low_.along, high_.up - low_.up);
        for (const Side2& bound : bounds_) narrow(bound);
    }

    std::optional<Circle> best() {
        constexpr std::size_t few = 9;
        if (edges_.size() < 3) return std::nullopt;
        for (std::size_t i = 0; i < features_.size(); ++i) near_.push_back(static_cast<std::uint32_t>(i));
        if (features_.size() <= few) {
            try_all(0, near_.size());
        } else {
            const Seen middle{(low_.along + high_.along) / 2, (low_.up + high_.up) / 2};
            climb(middle);
            search({middle, std::max(high_.along - low_.along, high_.up - low_.up) / 2}, 0, near_.size());
        }
        if (best_.radius <= 0) return std::nullopt;
        return Circle{{best_.centre.along + origin_.along, best_.centre.up + origin_.up}, best_.radius};
    }

 private:
    struct Cell {
        Seen centre;
        double half = 0;
    };

    void add_edge(Seen from, Seen to) {
        for (Seen* point : {&from, &to}) {
            point->along -= origin_.along;
            point->up -= origin_.up;
        }
        const double x = to.along - from.along, y = to.up - from.up, size = std::sqrt(x * x + y * y);
        if (size == 0) return;
        edges_.push_back({from, to, -y / size, x / size, size});
        low_ = {std::min(low_.along, from.along), std::min(low_.up, from.up)};
        high_ = {std::max(high_.along, from.along), std::max(high_.up, from.up)};
    }

    /// Keeps the search to where the centre may be, for a bound that is level or plumb.
    void narrow(const Side2& bound) {
        if (bound.up_part == 0)
            (bound.along_part > 0 ? low_ : high_).along =
                bound.along_part > 0 ? std::max(low_.along, bound.from) : std::min(high_.along, -bound.from);
        if (bound.along_part == 0)
            (bound.up_part > 0 ? low_ : high_).up =
                bound.up_part > 0 ? std::max(low_.up, bound.from) : std::min(high_.up, -bound.from);
    }

    void add_features() {
        features_.reserve(2 * edges_.size() + bounds_.size());
        for (std::size_t i = 0; i < edges_.size(); ++i) {
            const Edge &edge = edges_[i], &next = edges_[(i + 1) % edges_.size()];
            features_.push_back({false, {edge.a, edge.b, -1, edge.a * edge.from.along + edge.b * edge.from.up}, {}});
            // A corner stands into the opening where the outline turns clockwise, or runs back on itself.
            const double turn = edge.b * -next.a + edge.a * next.b, ahead = edge.a * next.a + edge.b * next.b;
            if (turn < -rounding || ahead < rounding - 1) features_.push_back({true, {}, edge.to});
        }
        for (const Side2& bound : bounds_)
            features_.push_back({false, {bound.along_part, bound.up_part, 0, bound.from}, {}});
    }

    bool inside(const Seen& point) const {
        bool in = false;
        for (const Edge& edge : edges_) {
            if ((edge.from.up > point.up) == (edge.to.up > point.up)) continue;
            const double crossing = edge.from.along + (point.up - edge.from.up) / (edge.to.up - edge.from.up) *
                                                          (edge.to.along - edge.from.along);
            if (point.along < crossing) in = !in;
        }
        return in;
    }

    double distance(const Seen& point) const {
        double nearest = INFINITY;
        for (const Edge& edge : edges_) nearest = std::min(nearest, square_away(edge, point));
        return std::sqrt(nearest);
    }

    /// Whether a circle lies in the outline and its centre where it may, but for rounding.
    bool fits(const Circle& circle) const {
        const double slack = rounding * extent_, least = circle.radius - slack;
        for (const Side2& bound : bounds_)
            if (bound.over(circle.centre) < -slack) return false;
        for (const Edge& edge : edges_)
            if (square_away(edge, circle.centre) < least * least) return false;
        return inside(circle.centre);
    }

    /// Tries the circles that touch three of the features of a stretch of `near_`.
    void try_all(std::size_t begin, std::size_t end) {
        for (std::size_t i = begin; i < end; ++i)
            for (std::size_t j = i + 1; j < end; ++j)
                for (std::size_t k = j + 1; k < end; ++k)
                    for (const Circle& circle : Touching(features_[near_[i]], features_[near_[j]], features_[near_[k]]))
                        if (circle.radius > best_.radius && fits(circle)) best_ = circle;
    }

    /// How far a feature is from a point: a corner itself, an edge or a bound by its line.
    static double away(const Feature& feature, const Seen& point) {
        if (feature.is_point)
            return std::sqrt(square(feature.point.along - point.along) + square(feature.point.up - point.up));
        return std::fabs(feature.line.a * point.along + feature.line.b * point.up - feature.line.d);
    }

    /// Goes from circle to better circle among the features nearest to its centre: most often to the best, so that the
    /// search need only confirm it.
    void climb(Seen from) {
        constexpr std::size_t nearest = 5;
        constexpr int most_steps = 6;
        const std::size_t all = features_.size();
        std::vector<std::pair<double, std::uint32_t>> by_distance(all);
        for (int step = 0; step < most_steps; ++step) {
            for (std::uint32_t i = 0; i < all; ++i) by_distance[i] = {away(features_[i], from), i};
            std::partial_sort(by_distance.begin(), by_distance.begin() + nearest, by_distance.end());
            for (std::size_t i = 0; i < nearest; ++i) near_.push_back(by_distance[i].second);
            const double before = best_.radius;
            try_all(all, all + nearest);
            near_.resize(all);
            if (best_.radius <= before) return;
            from = best_.centre;
        }
    }

    /// Searches a square cell: splits it until few features can be nearest in it (or it is small), then tries all
    /// triples of these; a cell that cannot beat the best is passed over. The features that can be nearest in the cell
    /// around it stand in a stretch of `near_`.
    void search(const Cell& cell, std::size_t begin, std::size_t end) {
        constexpr std::size_t few = 8;
        const double reach = cell.half * std::sqrt(2.0), here = distance(cell.centre);
        const bool in = inside(cell.centre);
        if ((!in && here > reach) || (in ? here + reach : reach) <= best_.radius) return;
        for (const Side2& bound : bounds_)
            if (bound.over(cell.centre) < -reach) return;
        const std::size_t kept = near_.size();
        for (std::size_t i = begin; i < end; ++i) {
            const Feature& feature = features_[near_[i]];
            const bool is_bound = !feature.is_point && feature.line.k == 0;
            if (away(feature, cell.centre) <= (is_bound ? reach : here + 2 * reach)) near_.push_back(near_[i]);
        }
        const std::size_t kept_end = near_.size();
        if (kept_end - kept <= few || cell.half < extent_ * smallest_cell) {
            try_all(kept, kept_end);
        } else {
            const double half = cell.half / 2;
            for (const double x : {-half, half})
                for (const double y : {-half, half})
                    search({{cell.centre.along + x, cell.centre.up + y}, half}, kept, kept_end);
        }
        near_.resize(kept);
    }

    /// Of the outline's extent. What a cell so small still has near it touches one circle but for rounding.
    static constexpr double smallest_cell = 1e-3;

    Seen origin_, low_{INFINITY, INFINITY}, high_{-INFINITY, -INFINITY};
    double extent_ = 0;
    std::vector<Side2> bounds_;
    std::vector<Edge> edges_;
    std::vector<Feature> features_;
    std::vector<std::uint32_t> near_;
    Circle best_;
};

}  // namespace

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

std::optional<Circle> largest_circle(const Outline& outline, const std::vector<Side2>& centre_within) {
    if (outline.size() < 3) return std::nullopt;
    return Search(outline, centre_within).best();
}

}  // namespace rakewright
