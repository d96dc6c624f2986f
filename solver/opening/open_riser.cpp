#include "open_riser.hpp"

#include <cmath>

#include "../stair/plate.hpp"

namespace rakewright {
namespace {

class BetweenPlates {
 public:
    BetweenPlates(const OpeningRoom& room, const OverTread& over)
        : room_(room), over_(over), line_(room.line), stair_(*room.treads) {}

    double ball() {
        add_rail();
        add_treads();
        for (const Side2& face : over_.faces) add_face(face);
        if (std::isfinite(over_.from)) within_.push_back({1, 0, over_.from});
        if (std::isfinite(over_.to)) within_.push_back({-1, 0, -over_.to});
        const std::optional<LargestCircle> largest = largest_circle(walls_, within_);
        return largest ? largest->circle.diameter : 0;
    }

 private:
    double x_of(double along) const { return line_.at(along).x(); }
    Seen seen(const Profiled& corner) const { return {(corner.x - line_.origin.x()) / line_.x, corner.z}; }

    void add_wall(const Seen& from, const Seen& to) { walls_.push_back({from, to, Obstacle::Behind::air}); }

    /// Keeps the centre on the side of a line through two points that lies over it.
    void keep_over(const Seen& a, const Seen& b, double side) {
        const double along = b.along - a.along, up = b.up - a.up, length = std::sqrt(along * along + up * up);
        const double turn = along > 0 ? side : -side;
        const Side2 line{-turn * up / length, turn * along / length, 0};
        within_.push_back({line.along_part, line.up_part, line.over(a)});
    }

    void add_rail() {
        const auto under = [&](double along) { return Seen{along, line_.at(along, room_.levels.lower_underside).z()}; };
        const Seen left = under(over_.left), right = under(over_.right);
        add_wall(left, right);
        keep_over(left, right, -1);
    }

    /// The floor, and every plate that reaches into the ball's way.
    void add_treads() {
        const double low = std::min(x_of(over_.left), x_of(over_.right)),
                     high = std::max(x_of(over_.left), x_of(over_.right));
        const Seen left{over_.left, 0}, right{over_.right, 0};
        add_wall(left, right);
        if (over_.tread == 0) keep_over(left, right, 1);
        for (int tread = 1; tread <= stair_.risers(); ++tread) {
            const Plate plate = plate_of(stair_, tread, std::fmax(high - stair_.run_total(), stair_.thickness));
            if (plate[1].x < low || plate[0].x > high) continue;
            for (std::size_t i = 0; i < plate.size(); ++i)
                add_wall(seen(plate[i]), seen(plate[(i + 1) % plate.size()]));
            if (tread == over_.tread) keep_over(seen(plate[0]), seen(plate[1]), 1);
        }
    }

    void add_face(const Side2& face) {
        // Far enough up and down the face to pass everything that a ball over this tread can touch.
        const double height = std::fabs(line_.at(over_.left, room_.levels.upper_top).z()) +
                              std::fabs(line_.at(over_.right, room_.levels.upper_top).z());
        const auto on_face = [&](double up) { return Seen{(face.from - face.up_part * up) / face.along_part, up}; };
        add_wall(on_face(-height), on_face(height));
        within_.push_back(face);
    }

    const OpeningRoom& room_;
    const OverTread& over_;
    const RailLine& line_;
    const StairShape& stair_;
    std::vector<Obstacle> walls_;
    std::vector<Side2> within_;
};

}  // namespace

double ball_between_plates(const OpeningRoom& room, const OverTread& over) { return BetweenPlates(room, over).ball(); }

}  // namespace rakewright
