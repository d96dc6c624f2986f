#include "driving.hpp"

#include <algorithm>

#include "../measure/compare.hpp"

namespace rakewright {
namespace {

InTheWay with(InTheWay in_the_way, const Plane& plane, Meets what) {
    in_the_way.barriers.push_back({plane, what});
    return in_the_way;
}

class AtBracket {
 public:
    AtBracket(const DrivingRoom& room, const PlateAt& plate, double over_square, Leg leg)
        : room_(room), plate_(plate), over_square_(over_square), leg_(leg) {}

    /// The least way that is free at any hole of the leg under the rail, the bracket on the post.
    FreeWay rail(bool past_picket) const {
        const double off_post = leg_ == Leg::down ? plate_.off_post : 0;
        InTheWay in_the_way = with(past(past_picket), {plate_.mark + off_post * plate_.face, plate_.face}, Meets::post);
        FreeWay least{INFINITY, Meets::nothing};
        for (const double hole : room_.build.rail_hole) {
            const FreeWay free =
                free_for_driver(in_the_way, {rail_hole(plate_, hole), -plate_.top}, room_.driver, room_.rail_screw);
            if (free.length < least.length) least = free;
        }
        return least;
    }

    /// Whether the post's screws can be driven with the bracket under its rail.
    bool under_rail(bool past_picket) const {
        if (leg_ == Leg::up || !driver_clear(room_.build, room_.driver, over_square_)) return false;
        const InTheWay in_the_way = with(past(past_picket), {plate_.mark, -plate_.top}, Meets::rail);
        return std::all_of(room_.build.post_hole.begin(), room_.build.post_hole.end(), [&](double hole) {
            const FreeWay free =
                free_for_driver(in_the_way, {plate_.post_hole(hole), plate_.face}, room_.driver, room_.post_screw);
            return fits(free, room_.post_screw);
        });
    }

    bool fits(const FreeWay& free, double screw) const {
        return no_more_than(needed_by(room_.driver, screw), free.length);
    }

 private:
    InTheWay past(bool picket) const {
        return picket && room_.picket ? with(room_.ground, *room_.picket, Meets::picket) : room_.ground;
    }

    const DrivingRoom& room_;
    const PlateAt& plate_;
    double over_square_;
    Leg leg_;
};

}  // namespace

Driving driving_at(const DrivingRoom& room, const PlateAt& plate, double over_square, Leg leg) {
    const AtBracket bracket(room, plate, over_square, leg);
    Driving driving;
    driving.rail = bracket.rail(false);
    driving.rail_clear = bracket.fits(driving.rail, room.rail_screw);
    if (driving.rail_clear && driver_clear(room.build, room.driver, over_square)) {
        driving.order = DrivingOrder::post_first;
        driving.picket_after = !bracket.fits(bracket.rail(true), room.rail_screw);
    } else if (bracket.under_rail(false)) {
        driving.order = DrivingOrder::rail_first;
        driving.picket_after = !bracket.under_rail(true);
    }
    return driving;
}

}  // namespace rakewright
