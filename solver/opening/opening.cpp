#include "opening.hpp"

#include <algorithm>
#include <cmath>

#include "../measure/compare.hpp"
#include "hollowed.hpp"
#include "notched.hpp"
#include "open_riser.hpp"

namespace rakewright {
namespace {

/// The side of a face on which the section lies, in the plumb plane through the rail.
Side2 beside_face(const RailLine& line, const Plane& face) {
    const double along = face.normal.x() * line.x + face.normal.y() * line.y, up = face.normal.z();
    const double size = std::sqrt(along * along + up * up);
    const Vector origin(line.origin.x(), line.origin.y(), 0);
    return {along / size, up / size, face.normal.dot(face.point - origin) / size};
}

Side2 beside_face(const RailLine& line, End end) { return beside_face(line, line.face(end)); }

/// The outline beside what stands at an end: the post, and the boards round its foot; nothing at a joint.
Outline beside_post(const Outline& outline, const RailLine& line, End end) {
    if (line.is_joint(end)) return outline;
    const Outline beside = clipped(outline, beside_face(line, end));
    const TrimMet& trim = line.trim(end);
    return trim.there() ? notched(beside, {beside_face(line, trim.face.plane), trim.up_to}) : beside;
}

/// At a joint nothing stops a ball, which then has its centre on one side of it or the other.
void add_joints(std::vector<Side2>& centre_within, const RailLine& line, std::initializer_list<End> ends) {
    for (const End end : ends)
        if (line.is_joint(end)) centre_within.push_back(beside_face(line, end));
}

Side2 beyond(double along) { return {1, 0, along}; }
Side2 before(double along) { return {-1, 0, -along}; }
Side2 above(double up) { return {0, 1, up}; }

/// Outlines of what lies over the treads or floor and under the rail.
class Profile {
 public:
    explicit Profile(const OpeningRoom& room) : room_(room), line_(room.line) {}

    bool over_treads() const { return room_.treads && line_.slope != 0; }

    double along_of(double x) const { return (x - line_.origin.x()) / line_.x; }

    /// Where two nosings or faces bound a tread: its extent along the line.
    std::array<double, 2> extent(int tread) const {
        const double lower = tread == 0 ? -INFINITY : along_of(room_.treads->nosing(tread).x);
        const double upper = tread == room_.treads->risers() ? INFINITY : along_of(room_.treads->nosing(tread + 1).x);
        if (line_.x > 0) return {lower, upper};
        return {tread == room_.treads->risers() ? -INFINITY : upper, tread == 0 ? INFINITY : lower};
    }

    double line_height(double along, double level) const { return line_.origin.z() + line_.slope * along + level; }

    /// Between the ground and a level over the line, from one place along it to another.
    Outline over_ground(double from, double to, double level) const {
        Outline outline = ground(from, to);
        close(outline, from, to, level);
        return outline;
    }

    /// Between two levels over the line.
    Outline between_levels(double from, double to, double lower, double upper) const {
        Outline outline{{from, line_height(from, lower)}, {to, line_height(to, lower)}};
        close(outline, from, to, upper);
        return outline;
    }

 private:
    void close(Outline& outline, double from, double to, double level) const {
        outline.push_back({to, line_height(to, level)});
        outline.push_back({from, line_height(from, level)});
    }

    /// Treads, riser faces and undersides of nosings from left to right, the nosings thin; or a floor.
    Outline ground(double from, double to) const {
        if (!over_treads()) {
            if (!room_.treads) return {{from, line_.floor_height(from)}, {to, line_.floor_height(to)}};
            const double x = line_.origin.x(), height = surface_height(*room_.treads, tread_under(*room_.treads, x), x);
            return {{from, height}, {to, height}};
        }
        const StairShape& stair = *room_.treads;
        Outline points;
        const double lowest_x = std::min(line_.at(from).x(), line_.at(to).x()),
                     highest_x = std::max(line_.at(from).x(), line_.at(to).x());
        int first = 0, last = 0;
        for (int number = 1; number <= stair.risers(); ++number) {
            const Nosing& nosing = stair.nosing(number);
            if (nosing.x + nosing.projection < lowest_x || nosing.x > highest_x) {
                if (nosing.x <= highest_x) first = last = number;
                continue;
            }
            last = number;
            const double riser = along_of(nosing.x + nosing.projection);
            points.push_back({riser, surface_height(stair, number - 1, nosing.x + nosing.projection)});
            points.push_back({riser, nosing.z});
            points.push_back({along_of(nosing.x), nosing.z});
        }
        const double lower = surface_height(stair, first, lowest_x), upper = surface_height(stair, last, highest_x);
        points.insert(points.begin(), {line_.x > 0 ? from : to, lower});
        points.push_back({line_.x > 0 ? to : from, upper});
        if (line_.x < 0) std::reverse(points.begin(), points.end());
        return points;
    }

    const OpeningRoom& room_;
    const RailLine& line_;
};

double sphere_in(const Outline& outline, const std::vector<Side2>& centre_within = {}) {
    const std::optional<LargestCircle> largest = largest_circle(walls_of(outline), centre_within);
    return largest ? largest->circle.diameter : 0;
}

class Openings {
 public:
    Openings(const OpeningRoom& room, const Layout& layout, double width)
        : room_(room), layout_(layout), width_(width), profile_(room) {
        // Beyond the faces a leaning post cuts the outline somewhat farther out than half-way up.
        reach_ = room.levels.upper_top;
        if (!room.treads) reach_ -= std::min(room.line.floor.at(layout.from_face), room.line.floor.at(layout.to_face));
        for (const End end : {End::from, End::to}) {
            const std::optional<double> low = face_along(room.line, end, 0);
            const double half_way = end == End::from ? layout.from_face : layout.to_face;
            // The boards round a post's foot are met before the post.
            if (low) post_room_ = std::max(post_room_, std::fabs(*low - half_way));
        }
    }

    std::vector<Opening> all() {
        if (layout_.centres.size() > 1)
            add(Opening::Kind::picket_gap, {}, {}, widest_between_pickets(room_.levels.parallel(), INFINITY));
        for (const End end : {End::from, End::to}) add(Opening::Kind::post_gap, end, {}, at_post(end));
        if (room_.levels.has_lower) add_under_lower();
        return std::move(openings_);
    }

    std::vector<Opening> under_rail() {
        add_under_lower();
        return std::move(openings_);
    }

    GapBalls through_gaps(double enough) const {
        const bool all_alike = room_.levels.parallel() || !profile_.over_treads() || !room_.placed;
        return {widest_between_pickets(all_alike, enough), {at_post(End::from), at_post(End::to)}};
    }

 private:
    void add(Opening::Kind kind, std::optional<End> end, std::optional<int> tread, double sphere) {
        openings_.push_back({kind, end, tread, sphere});
    }

    Outline opening(double from, double to) const {
        const Levels& levels = room_.levels;
        if (levels.parallel()) return profile_.between_levels(from, to, levels.lower_top, levels.upper_underside);
        // Where the posts have no place the treads are not known to be here or there: the nosing line stands for them.
        if (room_.treads && !room_.placed) return profile_.between_levels(from, to, 0, levels.upper_underside);
        return profile_.over_ground(from, to, levels.upper_underside);
    }

    /// The outline beside a picket, let into it where it is turned; the picket lies behind its face, +1 or -1 along.
    Outline beside_picket(const Outline& outline, double centre, double behind) const {
        if (!room_.turned) return outline;
        return hollowed(outline, *room_.turned,
                        {centre - behind * width_ / 2, profile_.line_height(centre, room_.turned->level), behind});
    }

    double widest_between_pickets(bool all_alike, double enough) const {
        double widest = 0;
        for (std::size_t i = 1; i < layout_.centres.size(); ++i) {
            const double from = layout_.centres[i - 1] + width_ / 2, to = layout_.centres[i] - width_ / 2;
            if ((all_alike && i > 1) || widest >= enough) break;
            const Outline outline = clipped(clipped(opening(from - width_, to + width_), beyond(from)), before(to));
            widest = std::max(widest, sphere_in(beside_picket(beside_picket(outline, layout_.centres[i - 1], -1),
                                                              layout_.centres[i], 1)));
        }
        return widest;
    }

    double at_post(End end) const {
        const bool at_from = end == End::from;
        double from = layout_.from_face - reach_, to = layout_.to_face + reach_;
        if (!layout_.centres.empty() && at_from) to = layout_.centres.front() - width_ / 2;
        if (!layout_.centres.empty() && !at_from) from = layout_.centres.back() + width_ / 2;
        Outline outline = beside_post(opening(from, to), room_.line, end);
        if (layout_.centres.empty()) outline = beside_post(outline, room_.line, at_from ? End::to : End::from);
        if ((room_.turned || room_.past_treads) && !layout_.centres.empty()) {
            outline = clipped(outline, at_from ? before(to) : beyond(from));
            outline = at_from ? beside_picket(outline, layout_.centres.front(), 1)
                              : beside_picket(outline, layout_.centres.back(), -1);
        }
        std::vector<Side2> centre_within;
        add_joints(centre_within, room_.line, {End::from, End::to});
        return sphere_in(outline, centre_within);
    }

    /// The largest ball in any of the bays into which feet part an outline.
    double between_feet(const Outline& outline, const std::vector<Side2>& centre_within) const {
        double largest = 0;
        for (std::size_t bay = 0; bay <= room_.feet.size(); ++bay) {
            Outline within = outline;
            if (bay > 0) within = clipped(within, beyond(room_.feet[bay - 1].to));
            if (bay < room_.feet.size()) within = clipped(within, before(room_.feet[bay].from));
            if (within.size() >= 3) largest = std::fmax(largest, sphere_in(within, centre_within));
        }
        return largest;
    }

    void add_under_lower() {
        if (!room_.closed_string)
            add_under_rail();
        else if (room_.string_above)
            add_over_string(*room_.string_above);
    }

    /// The top of the string and the underside of the rail are parallel.
    void add_over_string(double string_above) {
        const double underside = room_.levels.lower_underside;
        double sphere = 0;
        if (underside > string_above) {
            Outline outline = profile_.between_levels(layout_.from_face - reach_, layout_.to_face + reach_,
                                                      string_above, underside);
            for (const End end : {End::from, End::to}) outline = beside_post(outline, room_.line, end);
            std::vector<Side2> centre_within;
            add_joints(centre_within, room_.line, {End::from, End::to});
            sphere = between_feet(outline, centre_within);
        }
        add(Opening::Kind::over_string, {}, {}, sphere);
    }

    void add_under_rail() {
        if (!profile_.over_treads()) {
            Outline outline = profile_.over_ground(layout_.from_face - reach_, layout_.to_face + reach_,
                                                   room_.levels.lower_underside);
            for (const End end : {End::from, End::to}) outline = beside_post(outline, room_.line, end);
            std::vector<Side2> centre_within;
            add_joints(centre_within, room_.line, {End::from, End::to});
            add(Opening::Kind::under_rail, {}, {}, between_feet(outline, centre_within));
            return;
        }
        const int risers = room_.treads->risers();
        for (int i = 0; i <= risers; ++i) {
            const int tread = room_.line.x > 0 ? i : risers - i;
            const bool between_nosings = tread > 0 && tread < risers;
            if (room_.placed)
                add_over_tread(tread);
            else if (between_nosings)
                add(Opening::Kind::under_rail, {}, tread, over_tread(tread, false));
        }
    }

    void add_over_tread(int tread) {
        const auto [from, to] = profile_.extent(tread);
        if (to < layout_.from_face || from > layout_.to_face) return;
        if (const double sphere = over_tread(tread, true); sphere > 0)
            add(Opening::Kind::under_rail, {}, tread, sphere);
    }

    /// The largest ball with its centre over a tread, between its nosings. It is no wider than the rail is high above
    /// the tread there, so that half of that bounds it beside.
    double over_tread(int tread, bool between_posts) {
        const auto [from, to] = profile_.extent(tread);
        const double left = std::max(from, layout_.from_face - reach_), right = std::min(to, layout_.to_face + reach_);
        const double underside = room_.levels.lower_underside, height = tread_height(*room_.treads, tread);
        const double beside =
            (std::max(profile_.line_height(left, underside), profile_.line_height(right, underside)) - height) / 2;
        if (beside <= 0 || right <= left) return 0;
        const bool clear_of_posts = !between_posts || (left - beside > layout_.from_face + post_room_ &&
                                                       right + beside < layout_.to_face - post_room_);
        const bool unbroken = clear_of_posts && room_.feet.empty();
        if (unbroken && tread > 1 && like_tread_before(tread, beside)) return *unbroken_before_;
        if (room_.treads->open()) {
            OverTread over{tread, from, to, left - beside, right + beside, {}};
            for (const End end : {End::from, End::to})
                if (!clear_of_posts && !room_.line.is_joint(end)) over.faces.push_back(beside_face(room_.line, end));
            return between_plates_and_feet(over);
        }
        Outline outline = profile_.over_ground(left - beside, right + beside, underside);
        if (!clear_of_posts)
            for (const End end : {End::from, End::to}) outline = beside_post(outline, room_.line, end);
        std::vector<Side2> centre_within{above(height)};
        if (std::isfinite(from)) centre_within.push_back(beyond(from));
        if (std::isfinite(to)) centre_within.push_back(before(to));
        if (!clear_of_posts) add_joints(centre_within, room_.line, {End::from, End::to});
        const double sphere = between_feet(outline, centre_within);
        unbroken_before_.reset();
        if (unbroken) {
            unbroken_before_ = sphere;
            tread_before_ = tread;
        }
        return sphere;
    }

    double between_plates_and_feet(const OverTread& over) const {
        double largest = 0;
        for (std::size_t bay = 0; bay <= room_.feet.size(); ++bay) {
            OverTread within = over;
            if (bay > 0) within.faces.push_back(beyond(room_.feet[bay - 1].to));
            if (bay < room_.feet.size()) within.faces.push_back(before(room_.feet[bay].from));
            largest = std::fmax(largest, ball_between_plates(room_, within));
        }
        return largest;
    }

    /// Whether the steps about a tread, as far as a ball over it can reach, are those about the one measured last: then
    /// so is the ball.
    bool like_tread_before(int tread, double beside) const {
        if (!unbroken_before_) return false;
        const StairShape& stair = *room_.treads;
        const double scale = stair.rise_total() + stair.run_total();
        const auto exists = [&](int number) { return number >= 1 && number <= stair.risers(); };
        const auto in_reach = [&](int of, int number) {
            return exists(number) && std::fabs(stair.nosing(number).x - stair.nosing(of).x) <
                                         (beside + run_of(of)) * std::fabs(room_.line.x);
        };
        for (int step = -2; step <= 3; ++step) {
            const int number = tread + step, other = tread_before_ + step;
            if (!in_reach(tread, number) && !in_reach(tread_before_, other)) continue;
            if (!exists(number) || !exists(other)) return false;
            if (stair.wash != 0 && (number == stair.risers()) != (other == stair.risers())) return false;
            const Nosing &a = stair.nosing(number), &b = stair.nosing(other), &at = stair.nosing(tread),
                         &at_before = stair.nosing(tread_before_);
            if (!same(a.projection, b.projection, scale) || !same(a.off_line, b.off_line, scale) ||
                !same(a.x - at.x, b.x - at_before.x, scale) || !same(a.z - at.z, b.z - at_before.z, scale))
                return false;
        }
        return true;
    }

    /// Level along the rail from a nosing to the next.
    double run_of(int tread) const {
        return std::fabs(profile_.along_of(room_.treads->nosing(tread + 1).x) -
                         profile_.along_of(room_.treads->nosing(tread).x)) +
               room_.treads->nosing(tread + 1).projection / std::fabs(room_.line.x);
    }

    const OpeningRoom& room_;
    const Layout& layout_;
    double width_;
    Profile profile_;
    double reach_ = 0;
    double post_room_ = 0;
    std::optional<double> unbroken_before_;
    int tread_before_ = 0;
    std::vector<Opening> openings_;
};

}  // namespace

std::vector<Opening> openings_of(const OpeningRoom& room, const Layout& layout, double width) {
    return Openings(room, layout, width).all();
}

std::vector<Opening> openings_under_rail(const OpeningRoom& room, double from_face, double to_face) {
    const Layout layout{{}, from_face, to_face};
    return Openings(room, layout, 0).under_rail();
}

GapBalls balls_through_gaps(const OpeningRoom& room, const Layout& layout, double width, double enough) {
    return Openings(room, layout, width).through_gaps(enough);
}

}  // namespace rakewright
