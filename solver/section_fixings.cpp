#include "section_fixings.hpp"

#include <Eigen/Geometry>
#include <algorithm>
#include <cmath>

#include "measure/compare.hpp"
#include "way.hpp"

namespace rakewright {
namespace {

/// A plane parallel to the rail, so much plumb over its line, that is free above.
Plane parallel_to_rail(const RailLine& line, double above) {
    return {line.at(0, above), frame_on_slope(Vector::Zero(), line.x, line.y, line.slope).top};
}

/// What is under a group.
InTheWay ground_under(const FixingRoom& room, Group group) {
    const RailLine& line = room.line;
    InTheWay ground;
    if (room.around.placed() && room.around.treads())
        ground.stair = room.around.treads();
    else if (room.around.treads())
        ground.barriers.push_back({parallel_to_rail(line, 0), Meets::nosing_line});
    else
        ground.barriers.push_back({{Vector(line.origin.x(), line.origin.y(), line.floor_height(0)),
                                    frame_on_slope(Vector::Zero(), line.x, line.y, line.floor.slope).top},
                                   Meets::floor});
    if (room.around.string_above)
        ground.barriers.push_back({parallel_to_rail(line, *room.around.string_above), Meets::string});
    if (group == Group::upper && room.levels.has_lower)
        ground.barriers.push_back({parallel_to_rail(line, room.levels.lower_top), Meets::lower_rail});
    return ground;
}

class Fixings {
 public:
    Fixings(const FixingRoom& room, SectionResult& result, std::vector<Finding>& findings)
        : room_(room), build_(*room.task.build.bracket), result_(result), findings_(findings) {}

    void add() {
        result_.fixings.reserve(result_.brackets.size());
        for (const Bracket& bracket : result_.brackets) {
            const PlateAt plate = plate_of(bracket, bracket.leg);
            const Member& lowest = lowest_of(result_.members, bracket.group);
            const std::optional<double> surface = surface_at(room_.around, room_.line, bracket.end);
            Fixing& fixing = result_.fixings.emplace_back();
            fixing.seat = seat_of(build_, plate, room_.line, lowest, bracket.end, bracket.leg, surface);
            if (!build_.rail_hole.empty()) fixing.driving = driving(bracket, bracket.leg);
            if (surface) note_leg(bracket, plate, *surface);
            if (bracket.group == Group::upper) note_picket(bracket.end, plate);
        }
        for (const Group group : {Group::upper, Group::lower}) note_seats(group);
        note_driving();
    }

 private:
    PlateAt plate_of(const Bracket& bracket, Leg leg) const {
        return *plate_at(build_, room_.line, room_.levels, bracket.end, bracket.group, leg);
    }

    double leg_below(const PlateAt& plate, double surface) const {
        return surface - (plate.bend + build_.post_leg * plate.on_post).z();
    }

    /// How far along the line the near face of the first picket stands; none without pickets, or where they are
    /// fastened to the side of the rails, once those are fixed.
    std::optional<double> picket_face(End end) const {
        if (!result_.pickets || result_.pickets->count == 0 || result_.pickets->beside) return std::nullopt;
        const std::vector<double>& centres = result_.pickets->centres;
        const double half = result_.pickets->width / 2, from = result_.pickets->from_face;
        return from + (end == End::from ? centres.front() - half : centres.back() + half);
    }

    Driving driving(const Bracket& bracket, Leg leg) const {
        const std::optional<ScrewBuild>& screws = room_.task.build.screws;
        DrivingRoom room{build_, room_.task.build.driver, ground_under(room_, bracket.group), std::nullopt, 0, 0};
        if (screws && screws->post_leg) room.post_screw = screws->post_leg->length;
        if (screws && screws->rail_leg) room.rail_screw = screws->rail_leg->length;
        if (const std::optional<double> face = picket_face(bracket.end); face && bracket.group == Group::upper) {
            const double outward = bracket.end == End::from ? -1 : 1;
            room.picket = Plane{room_.line.at(*face), outward * Vector(room_.line.x, room_.line.y, 0)};
        }
        const PlateAt plate = plate_of(bracket, leg);
        const double turned = leg == bracket.leg ? bracket.over_square : -bracket.over_square;
        return driving_at(room, plate, turned, leg);
    }

    /// Whether the bracket could be driven with its leg turned the other way.
    bool other_leg_would_do(const Bracket& bracket) const {
        const Leg other = bracket.leg == Leg::up ? Leg::down : Leg::up;
        if (other == Leg::up && room_.line.is_round(bracket.end)) return false;
        const std::optional<double> surface = surface_at(room_.around, room_.line, bracket.end);
        if (other == Leg::down && surface && less_than(0, leg_below(plate_of(bracket, other), *surface), *surface))
            return false;
        return driving(bracket, other).order != DrivingOrder::none;
    }

    /// Notes the seats of a group's two brackets: once where they lie alike, else for each end.
    void note_seats(Group group) {
        std::vector<std::size_t> of_group;
        for (std::size_t i = 0; i < result_.brackets.size(); ++i)
            if (result_.brackets[i].group == group) of_group.push_back(i);
        if (of_group.empty()) return;
        const auto seat = [&](std::size_t i) -> const Seat& { return result_.fixings[of_group[i]].seat; };
        const auto alike_beside = [&](const Seat& a, const Seat& b) {
            return alike(a.beside_left, b.beside_left) && alike(a.beside_right, b.beside_right);
        };
        if (of_group.size() == 2 && alike_beside(seat(0), seat(1))) return note_seat(seat(0), group, -1);
        for (const std::size_t i : of_group)
            note_seat(result_.fixings[i].seat, group, static_cast<int>(index_of(result_.brackets[i].end)));
    }

    void note_seat(const Seat& seat, Group group, int end) {
        const Member& lowest = lowest_of(result_.members, group);
        const Place& section = room_.task.section.id.place;
        const double number = double(index_of(group));
        if (build_.rail_seat != RailSeat::surface && seat.possible == RailSeat::surface && end < 1)
            findings_.push_back({Trouble::seat_through_member, section, {number, build_.thickness, lowest.depth}, {}});
        if (less_than(seat.beside(), 0, build_.width))
            findings_.push_back(
                {Trouble::leg_leaves_rail,
                 section,
                 {number, seat.beside_left, seat.beside_right, build_.rail_seat == RailSeat::mortise ? 1.0 : 0.0},
                 {},
                 -1,
                 end});
        else if (build_.rail_seat == RailSeat::mortise && seat.possible == RailSeat::rabbet)
            findings_.push_back({Trouble::mortise_near_side,
                                 section,
                                 {number, seat.beside_left, seat.beside_right, build_.least_beside},
                                 build_.least_beside.place,
                                 -1,
                                 end});
    }

    void note_leg(const Bracket& bracket, const PlateAt& plate, double surface) {
        const double below = leg_below(plate, surface);
        if (bracket.leg == Leg::up || no_more_than(below, 0, std::fmax(build_.post_leg, std::fabs(surface)))) return;
        findings_.push_back({Trouble::leg_below_surface,
                             room_.task.section.id.place,
                             {double(index_of(bracket.group)), below},
                             {},
                             -1,
                             static_cast<int>(index_of(bracket.end))});
    }

    /// Says where the first picket would stand on the leg under the upper group.
    void note_picket(End end, const PlateAt& plate) {
        const std::optional<double> picket = picket_face(end);
        if (!picket) return;
        const RailLine& line = room_.line;
        const Vector level(line.x, line.y, 0), across(-line.y, line.x, 0);
        const Vector edge = plate.top.cross(plate.on_rail), tip = plate.bend + build_.rail_leg * plate.on_rail;
        // Askew, one corner of the leg's tip reaches farther, as far across as the picket does.
        const double most = std::fabs(edge.dot(across)),
                     half = std::fmin(build_.width / 2, most > 0 ? result_.pickets->depth / 2 / most : INFINITY);
        const double inward = end == End::from ? 1 : -1;
        const double reach = inward * (tip - plate.mark).dot(level) + half * std::fabs(edge.dot(level)),
                     gap = inward * (*picket - (plate.mark - line.at(0)).dot(level));
        if (!less_than(gap, reach)) return;
        findings_.push_back({Trouble::picket_on_leg,
                             room_.task.section.id.place,
                             {gap, reach},
                             {},
                             -1,
                             static_cast<int>(index_of(end))});
    }

    void note_driving() {
        int none = 0, cured = 0;
        double least = INFINITY;
        for (std::size_t i = 0; i < result_.fixings.size(); ++i) {
            const std::optional<Driving>& driving = result_.fixings[i].driving;
            if (!driving || driving->order != DrivingOrder::none) continue;
            ++none;
            least = std::fmin(least, driving->rail.length);
            cured += other_leg_would_do(result_.brackets[i]) ? 1 : 0;
        }
        if (none == 0) return;
        const std::optional<ScrewBuild>& screws = room_.task.build.screws;
        const double screw = screws && screws->rail_leg ? screws->rail_leg->length.value : 0;
        findings_.push_back({Trouble::no_driving_order,
                             room_.task.section.id.place,
                             {double(none), least, needed_by(room_.task.build.driver, screw), double(cured)},
                             {}});
    }

    const FixingRoom& room_;
    const BracketBuild& build_;
    SectionResult& result_;
    std::vector<Finding>& findings_;
};

}  // namespace

const Member& lowest_of(const std::vector<Member>& members, Group group) {
    return *std::find_if(members.rbegin(), members.rend(), [&](const Member& member) { return member.group == group; });
}

void add_fixings(const FixingRoom& room, SectionResult& result, std::vector<Finding>& findings) {
    Fixings(room, result, findings).add();
}

}  // namespace rakewright
