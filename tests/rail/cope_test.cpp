#include "../../solver/rail/cope.hpp"

#include <Eigen/Geometry>
#include <cmath>

#include "../support/near.hpp"
#include "../support/random.hpp"

namespace rakewright::tests {
namespace {

constexpr double pi = 3.14159265358979323846;  // from memory

/// A level or raked stick from the axis of a plumb post of radius q, its centre line `off` to the left of the axis.
Coping at_plumb_post(double q, const CrossSection& section, double slope = 0, double off = 0, End end = End::from) {
    return cope_to(frame_on_slope(Vector(0, off, 0), 1, 0, slope), section, {Vector::Zero(), Vector::UnitZ(), q, 0},
                   end);
}

/// How far a point is off the surface of a shaft, square to its axis; outside positive.
double off_surface(const Shaft& post, const Vector& point) {
    const Vector from = point - post.point;
    return from.cross(post.upright).norm() - (post.radius + post.widening * from.dot(post.upright));
}

}  // namespace

TEST_CASE("a level rail square to a post: as deep as the sagitta over its width", "[rail][cope]") {
    // q - sqrt(q^2 - (w/2)^2): 2.25 - sqrt(5.0625 - 0.5625) = 0.1286797, by hand.
    const CrossSection section{1.5, 2};
    const Coping coping = at_plumb_post(2.25, section);
    REQUIRE(coping.touching);
    CHECK_THAT(coping.touching->at, within(2.25, 1e-15));
    CHECK_THAT(coping.cope.depth(), within(0.1286797, 5e-8));
    CHECK_THAT(coping.cope.longest, within(0.1286797, 5e-8));
    CHECK_THAT(outward(coping.cope, {0.75, -1}), within(0.1286797, 5e-8));
    CHECK(outward(coping.cope, {0, 1}) == 0);
    CHECK_THAT(at_plumb_post(2.25, section, 0, 0, End::to).touching->at, within(-2.25, 1e-15));
}

TEST_CASE("the curve of two cylinders that cross square", "[rail][cope]") {
    // https://en.wikipedia.org/wiki/Steinmetz_curve: branch of radius a on one of radius b, (a cos t, sqrt(b^2 - a^2
    // sin^2 t), a sin t). For a = 0.95, b = 2.25 at t = 0, 22.5 ... 90 degrees, by hand.
    const double from_the_axis[] = {2.25, 2.22044, 2.14738, 2.07175, 2.03961};
    const Coping coping = at_plumb_post(2.25, {1.9, 1.9});
    for (int i = 0; i < 5; ++i) {
        const double t = i * pi / 8;
        CHECK_THAT(2.25 - outward(coping.cope, {0.95 * std::sin(t), 0.95 * std::cos(t)}),
                   within(from_the_axis[i], 5e-6));
    }
}

TEST_CASE("a pipe at 32.47 degrees on a plumb column", "[rail][cope]") {
    // t = (sqrt(R^2 - r^2 sin^2 phi) - r cos phi cos beta) / sin beta, beta 57.5288, for R = 2.25, r = 0.75 at phi = 0,
    // 22.5 ... 180 degrees from the heel, as a pipe fitter lays it out; derived, and checked by putting the points into
    // the column's equation.
    const double along_the_pipe[] = {2.18967, 2.20422, 2.25432, 2.35469, 2.51442, 2.71998, 2.92929, 3.08610, 3.14422};
    const double slope = 7.0 / 11;
    const Coping coping = at_plumb_post(2.25, {1.5, 1.5}, slope);
    const double centre = 2.25 * std::sqrt(1 + slope * slope);
    REQUIRE(coping.touching);
    CHECK_THAT(coping.touching->at, within(centre, 1e-14));
    for (int i = 0; i < 9; ++i) {
        const double phi = i * pi / 8;
        CHECK_THAT(centre - outward(coping.cope, {0.75 * std::sin(phi), -0.75 * std::cos(phi)}),
                   within(along_the_pipe[i], 1e-5));
    }
    // The plane that touches: a plumb cut.
    CHECK(coping.touching->per_left == 0);
    CHECK_THAT(coping.touching->per_top, within(slope, 1e-15));
}

TEST_CASE("a rail off the post's axis", "[rail][cope]") {
    // The gap to the plane through the axis at lateral y is sqrt(q^2 - (e + y)^2), e the centre line's own offset.
    const double q = 4, e = 1.25;
    const Coping coping = at_plumb_post(q, {2.5, 1.5}, 0, e);
    REQUIRE(coping.touching);
    for (const double y : {-1.25, -0.5, 0.0, 0.75, 1.25})
        CHECK_THAT(coping.touching->at - outward(coping.cope, {y, 0.75}),
                   within(std::sqrt(q * q - (e + y) * (e + y)), 1e-14));
    CHECK(coping.farthest == 2.5);
}

TEST_CASE("every point of every outline lies on a leaning post, on the side of the section", "[rail][cope]") {
    Random random("every point of every outline");
    for (int i = 0; i < 300; ++i) {
        const Vector upright = Vector(random.uniform(-0.2, 0.2), random.uniform(-0.2, 0.2), 1).normalized();
        const Shaft post{Vector(random.uniform(-1, 1), random.uniform(-1, 1), random.uniform(-5, 5)), upright,
                         random.uniform(4, 9), i % 3 == 0 ? 0 : random.uniform(-0.1, 0.1)};
        const double turn = random.uniform(0, 2 * pi);
        const Frame frame = frame_on_slope(Vector::Zero(), std::cos(turn), std::sin(turn), random.uniform(-1, 1));
        const CrossSection section{random.uniform(0.5, 3), random.uniform(0.5, 3)};
        for (const End end : {End::from, End::to}) {
            const Coping coping = cope_to(frame, section, post, end);
            REQUIRE(coping.touching);
            const double away = end == End::from ? -1 : 1;
            double longest = -1e9, shortest = 1e9;
            const auto meet = [&](Spot spot) {
                const double along = coping.touching->at + away * outward(coping.cope, spot);
                const Vector point = point_on(frame, along, spot);
                CHECK_THAT(off_surface(post, point), within(0, 1e-12));
                CHECK(off_surface(post, point - 0.01 * away * frame.along) > 0);
            };
            for (const StickFace& face : faces_of(section)) {
                const std::vector<OutlinePoint> outline = outline_on(coping.cope, face, section);
                REQUIRE(outline.size() >= 24);
                CHECK(outline.front().across == -face.width / 2);
                CHECK(outline.back().across == face.width / 2);
                for (const OutlinePoint& point : outline) {
                    meet(spot_on(face, section, point.across));
                    CHECK(point.along == outward(coping.cope, spot_on(face, section, point.across)));
                }
            }
            // Over the whole section, by trying it: no spot reaches farther or less, and some nearly as far.
            for (int l = 0; l <= 40; ++l)
                for (int t = 0; t <= 40; ++t) {
                    const double out =
                        outward(coping.cope, {section.width * (l / 40.0 - 0.5), section.depth * (t / 40.0 - 0.5)});
                    longest = std::fmax(longest, out);
                    shortest = std::fmin(shortest, out);
                }
            CHECK_THAT(coping.cope.longest, within(longest, 1e-12));
            CHECK(coping.cope.shortest <= shortest + 1e-12);
            CHECK_THAT(coping.cope.shortest, within(shortest, 2e-3));
        }
    }
}

TEST_CASE("a column that tapers is met by each rail at its own height", "[rail][cope]") {
    // From 9 1/2 at the floor to 7 5/8 at 8 ft: the radius is 0.9375 / 96 less for each inch up.
    const double thinner = 0.9375 / 96;
    const Shaft post{Vector::Zero(), Vector::UnitZ(), 4.75, -thinner};
    for (const double height : {3.0, 35.0}) {
        const Coping coping = cope_to(frame_on_slope(Vector(0, 0, height), 1, 0, 0), {3.5, 1.5}, post, End::from);
        REQUIRE(coping.touching);
        const double radius = 4.75 - thinner * height;
        CHECK_THAT(coping.touching->at, within(radius, 1e-14));
        CHECK_THAT(coping.touching->per_top, within(-thinner, 1e-15));
        const auto reaches = [&](double left, double top) {
            const double there = 4.75 - thinner * (height + top);
            return coping.touching->at - std::sqrt(there * there - left * left);
        };
        for (const double left : {-1.75, -0.6, 0.0, 1.75})
            for (const double top : {-0.75, 0.2, 0.75})
                CHECK_THAT(outward(coping.cope, {left, top}), within(reaches(left, top), 1e-13));
        CHECK_THAT(coping.cope.longest, within(reaches(1.75, 0.75), 1e-13));
        CHECK_THAT(coping.cope.shortest, within(reaches(0, -0.75), 1e-13));
    }
}

TEST_CASE("the plane that touches is the cope's own slope at the centre line", "[rail][cope]") {
    const Frame frame = frame_on_slope(Vector(0, 0.75, 0), 1, 0, 0.6);
    const Shaft post{Vector::Zero(), Vector(0.05, -0.08, 1).normalized(), 4, 0.03};
    for (const End end : {End::from, End::to}) {
        const Coping coping = cope_to(frame, {1.5, 1.5}, post, end);
        REQUIRE(coping.touching);
        const double away = end == End::from ? -1 : 1, h = 1e-5;
        CHECK_THAT(away * (outward(coping.cope, {h, 0}) - outward(coping.cope, {-h, 0})) / (2 * h),
                   within(coping.touching->per_left, 1e-9));
        CHECK_THAT(away * (outward(coping.cope, {0, h}) - outward(coping.cope, {0, -h})) / (2 * h),
                   within(coping.touching->per_top, 1e-9));
    }
}

TEST_CASE("as wide as the post is a half-round cope, wider is missed", "[rail][cope]") {
    const Coping half_round = at_plumb_post(2, {4, 1});
    REQUIRE(half_round.touching);
    CHECK_THAT(half_round.cope.depth(), within(2, 1e-15));
    const Coping wider = at_plumb_post(2, {4.001, 1});
    CHECK(wider.missed);
    CHECK_THAT(wider.farthest, within(2.0005, 1e-15));
    // A stick that runs along the post is cut to nothing.
    const Coping along =
        cope_to(frame_plumb(Vector::Zero(), 1, 0), {1, 1}, {Vector::Zero(), Vector::UnitZ(), 2, 0}, End::to);
    CHECK_FALSE(along.missed);
    CHECK_FALSE(along.touching);
}

}  // namespace rakewright::tests
