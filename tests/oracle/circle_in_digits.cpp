#include "circle_in_digits.hpp"

#include <algorithm>
#include <cmath>

namespace rakewright::tests {
namespace {

template <class T>
struct Spot {
    T x = 0, y = 0;
};

/// A x + B y = C.
template <class T>
struct Locus {
    T a = 0, b = 0, c = 0;
};

/// A line (of a wall or a bound: a x + b y = c, a unit normal) or a point.
template <class T>
struct Thing {
    enum Kind { line, point, bound } kind = line;
    Locus<T> line_of;
    Spot<T> at;
};

template <class T>
T square(const T& x) {
    return x * x;
}

template <class T>
Spot<T> spot(const Seen& seen) {
    return {T(seen.along), T(seen.up)};
}

template <class T>
class Enumeration {
 public:
    explicit Enumeration(const Opening2& opening) : opening_(opening) {
        using std::sqrt;
        for (const Obstacle& it : opening.obstacles) {
            const Spot<T> from = spot<T>(it.from), to = spot<T>(it.to);
            const T x = to.x - from.x, y = to.y - from.y, size = sqrt(x * x + y * y);
            if (size > 0) {
                const Locus<T> line{-y / size, x / size, (x * from.y - y * from.x) / size};
                things_.push_back({Thing<T>::line, line, {}});
                things_.push_back({Thing<T>::line, {-line.a, -line.b, -line.c}, {}});
            }
            for (const Seen& end : {it.from, it.to}) {
                const auto known = [&](const Thing<T>& thing) {
                    return thing.kind == Thing<T>::point && thing.at.x == T(end.along) && thing.at.y == T(end.up);
                };
                if (std::none_of(things_.begin(), things_.end(), known))
                    things_.push_back({Thing<T>::point, {}, spot<T>(end)});
            }
        }
        for (const Side2& it : opening.centre_within)
            things_.push_back({Thing<T>::bound, {T(it.along_part), T(it.up_part), T(it.from)}, {}});
    }

    std::size_t count() const { return things_.size(); }

    T clearance(const Spot<T>& at) const {
        using std::sqrt;
        T least = -1;
        for (const Obstacle& it : opening_.obstacles) {
            const Spot<T> from = spot<T>(it.from), to = spot<T>(it.to);
            const T x = to.x - from.x, y = to.y - from.y, size = x * x + y * y;
            T part = size > 0 ? ((at.x - from.x) * x + (at.y - from.y) * y) / size : T(0);
            part = part < 0 ? T(0) : part > 1 ? T(1) : part;
            const T away = square(at.x - from.x - part * x) + square(at.y - from.y - part * y);
            if (least < 0 || away < least) least = away;
        }
        return sqrt(least);
    }

    bool may_be_centre(const Spot<T>& at, double slack) const {
        for (const Side2& it : opening_.centre_within)
            if (T(it.along_part) * at.x + T(it.up_part) * at.y - T(it.from) < T(-slack)) return false;
        bool any = false, inside = false;
        for (const Obstacle& it : opening_.obstacles) {
            if (it.behind == Obstacle::Behind::air) continue;
            any = true;
            const Spot<T> from = spot<T>(it.from), to = spot<T>(it.to);
            if ((from.y > at.y) == (to.y > at.y)) continue;
            // Whether the edge runs past on the right.
            const T turn = (to.x - from.x) * (at.y - from.y) - (to.y - from.y) * (at.x - from.x);
            if ((to.y > from.y) == (turn > 0)) inside = !inside;
        }
        return !any || inside;
    }

    /// The spots that are equally far from three things.
    std::vector<Spot<T>> spots(std::size_t i, std::size_t j, std::size_t k) const {
        std::vector<Locus<T>> loci;
        const Thing<T>*line = nullptr, *point = nullptr;
        for (const std::size_t number : {i, j, k}) {
            const Thing<T>& it = things_[number];
            if (it.kind == Thing<T>::bound) loci.push_back(it.line_of);
            if (it.kind == Thing<T>::line) {
                if (line)
                    loci.push_back({it.line_of.a - line->line_of.a, it.line_of.b - line->line_of.b,
                                    it.line_of.c - line->line_of.c});
                else
                    line = &it;
            }
            if (it.kind == Thing<T>::point) {
                if (point)
                    loci.push_back({2 * (it.at.x - point->at.x), 2 * (it.at.y - point->at.y),
                                    square(it.at.x) + square(it.at.y) - square(point->at.x) - square(point->at.y)});
                else
                    point = &it;
            }
        }
        if (loci.size() >= 2) {
            const Locus<T>&p = loci[0], &q = loci[1];
            const T turn = p.a * q.b - p.b * q.a;
            if (turn == 0) return {};
            return {{(p.c * q.b - p.b * q.c) / turn, (p.a * q.c - p.c * q.a) / turn}};
        }
        return loci.empty() ? std::vector<Spot<T>>{} : along(loci[0], line->line_of, point->at);
    }

 private:
    /// Where a locus is as far from a line as from a point.
    static std::vector<Spot<T>> along(const Locus<T>& locus, const Locus<T>& line, const Spot<T>& point) {
        using std::sqrt;
        const T size = square(locus.a) + square(locus.b);
        if (size == 0) return {};
        const Spot<T> start{locus.a * locus.c / size, locus.b * locus.c / size};
        const T x = start.x - point.x, y = start.y - point.y, away = line.a * start.x + line.b * start.y - line.c;
        const T gain = line.b * locus.a - line.a * locus.b;
        const T a = size - square(gain), b = locus.a * y - locus.b * x - away * gain,
                c = square(x) + square(y) - square(away);
        const T under = square(b) - a * c;
        if (under < 0) return {};
        // Where a is nearly nothing one root is far away, and only this form keeps the other.
        const T sum = b < 0 ? -b + sqrt(under) : -b - sqrt(under);
        std::vector<T> roots;
        if (a != 0) roots.push_back(sum / a);
        if (sum != 0) roots.push_back(c / sum);
        std::vector<Spot<T>> spots;
        for (const T& root : roots) spots.push_back({start.x - root * locus.b, start.y + root * locus.a});
        return spots;
    }

    const Opening2& opening_;
    std::vector<Thing<T>> things_;
};

}  // namespace

std::optional<Real> largest_diameter_in_digits(const Opening2& opening) {
    constexpr double slack = 1e-5;  // nearly parallel features lose that much in the sieve
    struct Triple {
        std::size_t i, j, k;
        long double clearance;
    };
    const Enumeration<long double> sieve(opening);
    std::vector<Triple> triples;
    long double best = 0;
    for (std::size_t i = 0; i < sieve.count(); ++i)
        for (std::size_t j = i + 1; j < sieve.count(); ++j)
            for (std::size_t k = j + 1; k < sieve.count(); ++k)
                for (const Spot<long double>& spot : sieve.spots(i, j, k)) {
                    if (!std::isfinite(spot.x) || !std::isfinite(spot.y) || !sieve.may_be_centre(spot, slack)) continue;
                    const long double clearance = sieve.clearance(spot);
                    if (clearance < best - slack) continue;
                    triples.push_back({i, j, k, clearance});
                    best = std::max(best, clearance);
                }
    const Enumeration<Real> exact(opening);
    std::optional<Real> largest;
    for (const Triple& triple : triples) {
        if (triple.clearance < best - slack) continue;
        for (const Spot<Real>& spot : exact.spots(triple.i, triple.j, triple.k)) {
            if (!exact.may_be_centre(spot, 1e-15)) continue;
            const Real diameter = 2 * exact.clearance(spot);
            if (!largest || diameter > *largest) largest = diameter;
        }
    }
    return largest;
}

Real clearance_in_digits(const Opening2& opening, const Seen& seen) {
    return Enumeration<Real>(opening).clearance(spot<Real>(seen));
}

bool may_be_centre_in_digits(const Opening2& opening, const Seen& seen, double slack) {
    return Enumeration<Real>(opening).may_be_centre(spot<Real>(seen), slack);
}

}  // namespace rakewright::tests
