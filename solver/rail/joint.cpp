#include "joint.hpp"

#include <Eigen/Geometry>
#include <cmath>

#include "../measure/compare.hpp"

namespace rakewright {
namespace {

/// Two rails in one plumb plane: `toward` the joint the first goes level along (x, y).
struct InOnePlane {
    double x = 0, y = 0;
    double slope = 0, beyond = 0;  // rise of each for each unit of level that way
    Vector looking_in;             // square to the plane that halves their bend

    InOnePlane(double x_toward, double y_toward, double slope_toward, double slope_beyond)
        : x(x_toward), y(y_toward), slope(slope_toward), beyond(slope_beyond) {
        looking_in = -(Vector(x, y, slope).normalized() + Vector(x, y, beyond).normalized()).normalized();
    }

    /// How far past the joint's place the two lines meet that stand so high there; none where they never do.
    std::optional<double> meeting(double own, double other) const {
        if (same(own, other, std::fabs(own) + 1)) return 0;
        if (same(slope, beyond, 1)) return std::nullopt;
        return (own - other) / (beyond - slope);
    }
};

}  // namespace

std::optional<RailJoint> joint_at(const RailLine& line, const Levels& levels, End end, const RailBeyond& beyond) {
    const double out = end == End::to ? 1 : -1;
    const double x = out * line.x, y = out * line.y, slope = out * line.slope;
    const double along = line.centres[index_of(end)];
    const Vector place = line.at(along);
    const double turn = x * beyond.y - y * beyond.x, on = x * beyond.x + y * beyond.y;
    RailJoint joint;
    if (!same(turn, 0, 1)) {
        // Rails that pass the joint's place on one side, as far from it, meet in the plane through it.
        const Vector looking_in = Vector(-x - beyond.x, -y - beyond.y, 0).normalized();
        joint.middle = {line.face(end).point, looking_in};
        joint.planes = {joint.middle, joint.middle};
        return joint;
    }
    if (on < 0) return std::nullopt;
    joint.straight = true;
    const InOnePlane rails(x, y, slope, beyond.slope);
    const auto plane_for = [&](double top, double other) {
        const double s = rails.meeting(place.z() + top, other).value_or(0);
        return std::pair(s, Plane{place + Vector(s * x, s * y, top + s * slope), rails.looking_in});
    };
    const auto [moved, upper] = plane_for(levels.upper_top, beyond.tops[0]);
    joint.moved = moved;
    joint.planes = {upper, upper};
    joint.middle = {upper.point, Vector(-x, -y, 0)};
    if (!levels.has_lower || !beyond.has_lower) return joint;
    joint.planes[1] = plane_for(levels.lower_top, beyond.tops[1]).second;
    joint.middle.point = (upper.point + joint.planes[1].point) / 2;
    return joint;
}

std::array<CornerMet, 4> corners_met(const Stick& first, End first_end, const Stick& second, End second_end) {
    const auto end_over = [](const Stick& stick, End end, Spot spot) {
        return point_on(stick.frame, reach(end == End::from ? stick.piece.from : stick.piece.to, spot), spot);
    };
    // Seen along the second, the left of the first is its left if the one runs on from the other.
    const int same_way = first_end == second_end ? -1 : 1;
    std::array<CornerMet, 4> met;
    std::size_t i = 0;
    for (const int top : {1, -1})
        for (const int left : {1, -1}) {
            CornerMet& corner = met[i++];
            corner.corner = {left, top};
            const Vector own = end_over(first, first_end, spot_of(corner.corner, first.piece.section));
            const Corner across{same_way * left, top};
            const Vector apart = end_over(second, second_end, spot_of(across, second.piece.section)) - own;
            corner.plumb = apart.z();
            corner.level = std::sqrt(apart.x() * apart.x() + apart.y() * apart.y());
            const Vector from_axis = own - second.frame.origin;
            corner.moulded = {from_axis.dot(second.frame.left), from_axis.dot(second.frame.top)};
        }
    return met;
}

}  // namespace rakewright
