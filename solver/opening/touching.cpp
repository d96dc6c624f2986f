#include "touching.hpp"

#include <cmath>
#include <utility>

namespace rakewright {
namespace {

/// a x + b y - k r = d.
struct Plane3 {
    double a = 0, b = 0, k = 0, d = 0;
};

bool finite(const Round& round) {
    return std::isfinite(round.centre.along) && std::isfinite(round.centre.up) && std::isfinite(round.radius);
}

/// Where three planes meet, by Cramer's rule; not finite if they do not.
Round meeting(const Plane3& p, const Plane3& q, const Plane3& s) {
    const double x = q.k * s.b - q.b * s.k, y = q.a * s.k - q.k * s.a, r = q.a * s.b - q.b * s.a;
    const double over = 1 / (p.a * x + p.b * y - p.k * r);
    return {{over * (p.d * x + q.d * (s.k * p.b - s.b * p.k) + s.d * (p.k * q.b - p.b * q.k)),
             over * (p.d * y + q.d * (s.a * p.k - s.k * p.a) + s.d * (p.a * q.k - p.k * q.a))},
            over * (p.d * r + q.d * (s.a * p.b - s.b * p.a) + s.d * (p.a * q.b - p.b * q.a))};
}

/// A wall or bound as it is seen from a place.
Plane3 plane(const Feature& feature, const Seen& place) {
    return {feature.a, feature.b, feature.kind == Feature::Kind::wall ? 1.0 : 0.0,
            feature.d - feature.a * place.along - feature.b * place.up};
}

/// As `plane`; of a corner, where circles through it and through `place` have their centres.
Plane3 plane_with_corner(const Feature& feature, const Seen& place) {
    if (feature.kind != Feature::Kind::corner) return plane(feature, place);
    const double x = feature.at.along - place.along, y = feature.at.up - place.up, apart = std::sqrt(x * x + y * y);
    return {x / apart, y / apart, 0, apart / 2};
}

/// How a circle near to a feature misses it, to the first order.
Plane3 miss(const Feature& feature, const Round& round) {
    if (feature.kind != Feature::Kind::corner) {
        const Plane3 seen = plane(feature, round.centre);
        return {seen.a, seen.b, seen.k, seen.d + seen.k * round.radius};
    }
    const double x = round.centre.along - feature.at.along, y = round.centre.up - feature.at.up;
    const double away = std::sqrt(x * x + y * y);
    return {x / away, y / away, 1, round.radius - away};
}

}  // namespace

Rounds touching(const Feature& first, const Feature& second, const Feature& third) {
    const Feature *f = &first, *g = &second, *h = &third;
    if (f->kind != Feature::Kind::corner) std::swap(f, g);
    if (f->kind != Feature::Kind::corner) std::swap(f, h);

    Rounds rounds;
    // The formulas lose some digits where features are nearly alike; one correction by what the circle misses regains
    // them.
    const auto add = [&](const Round& rough) {
        if (!finite(rough) || rough.radius <= 0) return;
        const Round step = meeting(miss(*f, rough), miss(*g, rough), miss(*h, rough));
        const Round fine{{rough.centre.along + step.centre.along, rough.centre.up + step.centre.up},
                         rough.radius + step.radius};
        const bool is_small = std::fabs(step.radius) < 1e-6 * rough.radius;
        rounds.add(finite(fine) && is_small ? fine : rough);
    };
    if (f->kind != Feature::Kind::corner) {
        add(meeting(plane(*f, {}), plane(*g, {}), plane(*h, {})));
        return rounds;
    }

    // Seen from the corner its cone is x² + y² = r².
    const Plane3 p = plane_with_corner(*g, f->at), q = plane_with_corner(*h, f->at);
    const double wx = p.k * q.b - p.b * q.k, wy = p.a * q.k - p.k * q.a, wr = p.a * q.b - p.b * q.a;
    const double over = 1 / (wx * wx + wy * wy + wr * wr);
    const double x0 = over * (p.d * (q.b * wr + q.k * wy) - q.d * (p.b * wr + p.k * wy));
    const double y0 = over * (q.d * (p.a * wr + p.k * wx) - p.d * (q.a * wr + q.k * wx));
    const double r0 = over * (p.d * (q.a * wy - q.b * wx) - q.d * (p.a * wy - p.b * wx));
    const double a = wx * wx + wy * wy - wr * wr, b = x0 * wx + y0 * wy - r0 * wr, c = x0 * x0 + y0 * y0 - r0 * r0;
    const double discriminant = b * b - a * c;
    if (!(discriminant >= 0)) return rounds;
    const auto add_at = [&](double t) { add({{f->at.along + x0 + t * wx, f->at.up + y0 + t * wy}, r0 + t * wr}); };
    const double larger = -(b + std::copysign(std::sqrt(discriminant), b));
    add_at(larger / a);
    add_at(c / larger);
    return rounds;
}

}  // namespace rakewright
