#include "random_placed_job.hpp"

#include <cmath>
#include <string>

#include "../../solver/measure/angle.hpp"
#include "random.hpp"

namespace rakewright::tests {
namespace {

// Every number is drawn in a statement of its own: compilers evaluate arguments in different orders.

/// A spot of the porch, seen from its first stair, which climbs along x from its first nosing; `level` over the floor
/// at its foot.
struct Spot3 {
    double x = 0, y = 0, level = 0;
};

/// A spot turned about the origin by degrees, counter-clockwise.
Spot3 turned_by(const Spot3& spot, double degrees) {
    const auto [sine, cosine] = sine_cosine(angle_from_degrees(degrees));
    return {cosine * spot.x - sine * spot.y, sine * spot.x + cosine * spot.y, spot.level};
}

/// Axes of a stair or floor on the porch.
struct Standing {
    Spot3 origin;
    double heading = 0;  // degrees

    Spot3 inside(const Spot3& spot) const {
        return turned_by({spot.x - origin.x, spot.y - origin.y, spot.level}, -heading);
    }
    Spot3 outside(double along, double across) const {
        const Spot3 spot = turned_by({along, across, 0}, heading);
        return {origin.x + spot.x, origin.y + spot.y, origin.level};
    }
};

enum class On { stair, floor };

class Placing {
 public:
    Placing(std::string_view name, const PlacedKinds& kinds) : random_(name), kinds_(kinds) {
        job_.units = one_in(3) ? Unit::millimetre : Unit::inch;
        unit_ = job_.units == Unit::inch ? 1 : millimetres_in_an_inch;
        job_.title = "drawn";
    }

    DrawnPlacedJob whole() {
        whole_turn_ = heading();
        shift_ = {length(-400, 400), length(-400, 400), length(-100, 100)};
        add_build();
        add_first_stair();
        add_first_posts();
        if (one_in(4))
            second_flight(1);
        else
            over_the_deck();
        for (std::size_t s = 0; s < job_.sections.size(); ++s) wish_for(job_.sections[s]);
        offset_joints();
        for (Section& section : job_.sections)
            if (one_in(4)) turn_round(section);
        return std::move(drawn_);
    }

 private:
    bool one_in(int count) { return random_.whole(1, count) == 1; }
    double uniform(double low, double high) { return random_.uniform(low, high); }

    /// In the job's unit, between two lengths in inches, as a tape reads.
    double length(double low, double high) {
        const double inches = uniform(low, high);
        return unit_ == 1 ? std::floor(inches * 16 + 0.5) / 16 : std::floor(inches * unit_ * 2 + 0.5) / 2;
    }

    static DrawnAngle in_degrees(double degrees) {
        DrawnAngle angle;
        angle.in_degrees = true;
        angle.degrees = degrees;
        return angle;
    }
    static AngleReading read(const DrawnAngle& angle) {
        return {angle.in_degrees ? angle_from_degrees(angle.degrees) : Angle{angle.rise, angle.run}, {}};
    }
    double tenths(double most) { return std::floor(uniform(-most, most) * 10 + 0.5) / 10; }
    double heading() { return one_in(2) ? 90.0 * random_.whole(-1, 2) : tenths(179); }

    Plan plan_of(const Standing& standing, DrawnAngle& heading) {
        const Spot3 origin = turned_by(standing.origin, whole_turn_);
        Plan plan;
        plan.x = origin.x + shift_.x;
        plan.y = origin.y + shift_.y;
        plan.level = origin.level + shift_.level;
        const double turn = standing.heading + whole_turn_;
        heading = in_degrees(turn > 180 ? turn - 360 : turn < -180 ? turn + 360 : turn);
        plan.heading = read(heading);
        return plan;
    }

    int add_stair(int risers, double rise, double run, const Standing& standing) {
        Stair stair;
        stair.id.name = "stair " + std::to_string(job_.stairs.size());
        stair.risers = Count(risers);
        stair.rise = Reading(rise);
        stair.run = Reading(run);
        stair.plan = plan_of(standing, drawn_.stairs.emplace_back());
        job_.stairs.push_back(stair);
        stairs_.push_back(standing);
        return static_cast<int>(job_.stairs.size()) - 1;
    }

    void add_first_stair() {
        risers_ = random_.whole(3, 8);
        rise_ = length(6.5, 7.75);
        run_ = length(10, 12);
        head_ = {(risers_ - 1) * run_, 0, risers_ * rise_};
        add_stair(risers_, rise_, run_, {});
    }

    void add_deck() {
        deck_ = {head_, one_in(2) ? 0 : heading()};
        Floor floor;
        floor.id.name = "deck";
        floor.plan = plan_of(deck_, drawn_.floors.emplace_back());
        if (one_in(4)) {
            floor.falls = {Angle{0.25, 48}, {}};
            floor.toward = Toward::heading;
        }
        job_.floors.push_back(floor);
    }

    // Posts.

    DrawnAngle lean() { return one_in(3) ? in_degrees(tenths(2)) : DrawnAngle{}; }

    /// A post at a spot; `faces` is the way, in degrees, that a square one is turned to, if it is.
    int add_post(On on, int ground, const Spot3& spot, double faces, bool joint) {
        Post post;
        post.id.name = "post " + std::to_string(job_.posts.size());
        (on == On::stair ? post.stair : post.floor) = {ground, {}};
        const Standing& standing = on == On::stair ? stairs_[static_cast<std::size_t>(ground)] : deck_;
        const Spot3 inside = standing.inside(spot);
        post.at = Reading(inside.x);
        post.across = inside.y;
        DrawnPost angles;
        if (joint) {
            post.shape = PostShape::joint;
        } else {
            shape(post, angles, faces - standing.heading);
            angles.along = lean();
            angles.across = lean();
            post.lean = {read(angles.along), read(angles.across)};
        }
        job_.posts.push_back(post);
        drawn_.posts.push_back(angles);
        places_.push_back(spot);
        return static_cast<int>(job_.posts.size()) - 1;
    }

    void shape(Post& post, DrawnPost& angles, double square_to) {
        const bool round = one_in(4) && kinds_.round, trimmed = one_in(4);
        const double along = round ? length(4.5, 6) : length(3.5, 5.5), other = length(3.5, 5.5);
        const double across = round || !one_in(4) ? along : other;
        post.size = {along, across, "", {}};
        if (round) post.shape = PostShape::round;
        const double more = length(1.5, 2.5), height = length(2, 8);
        if (trimmed) {
            post.base_trim = BaseTrim{{Reading(along + more)}, Reading(height)};
            if (!round) post.base_trim->size.push_back(Reading(across + more));
        }
        const double a_little = tenths(6);
        const int way = random_.whole(0, 3);
        if (round || way == 0) return;
        angles.turn = in_degrees(way == 1 ? a_little : std::remainder(square_to, 90.0));
        post.turn = read(angles.turn);
    }

    Spot3 on_from(const Spot3& spot, double distance, double way) const {
        const Spot3 step = turned_by({distance, 0, 0}, way);
        return {spot.x + step.x, spot.y + step.y, spot.level};
    }

    /// The way on, past a corner or none.
    double way_on(double way) {
        switch (random_.whole(0, 5)) {
            case 1: return way + (one_in(2) ? 90 : -90);
            case 2: return way + (one_in(2) ? 45 : -45);
            case 3: return way + tenths(100);
            default: return way;
        }
    }

    void add_first_posts() {
        const double before = length(3, 8), across = length(-20, 20), a_little = length(-3, 3);
        behind_ = length(2, 6);
        add_post(On::stair, 0, {-before, across + (one_in(3) ? a_little : 0), 0}, 0, false);
        const Spot3 head{head_.x + behind_, across, head_.level};
        const bool joint = one_in(3);
        if (one_in(2)) {
            add_deck();
            add_post(On::floor, 0, head, 0, joint);
        } else {
            add_post(On::stair, 0, head, 0, joint);
        }
        add_section(0, 1, On::stair, 0);
    }

    void over_the_deck() {
        if (job_.floors.empty()) add_deck();
        const double way = way_on(0), distance = length(45, 90);
        const Spot3 end = on_from(places_[1], distance, way);
        const bool goes_on = !one_in(3), joint = goes_on && one_in(3);
        const int post = add_post(On::floor, 0, end, way, joint);
        way_ = way;
        add_section(1, post, On::floor, 0);
        const bool stays = joint && one_in(2);
        if (goes_on && !stays) second_flight(post);
        if (!stays && (joint || !one_in(3))) return;
        const double aside = way + (one_in(2) ? 90 : -90), far = length(30, 60);
        add_section(post, add_post(On::floor, 0, on_from(end, far, aside), aside, false), On::floor, 0);
    }

    /// A second stair at a post, of the first one's slope or not: on up, or down.
    void second_flight(int post) {
        const bool climbs = one_in(2), alike = one_in(2);
        const int risers = random_.whole(3, 6);
        const double other_rise = length(6.5, 7.75), other_run = length(10, 12);
        const double rise = alike ? rise_ : other_rise, run = alike ? run_ : other_run;
        const double way = way_on(way_), near = alike ? behind_ : length(3, 6), far = length(3, 6),
                     across = length(-15, 15);
        const double last = (risers - 1) * run;
        const Spot3 spot = places_[static_cast<std::size_t>(post)];
        const double uphill = climbs ? way : way + 180;
        const Spot3 inside = turned_by({climbs ? -near : last + near, across, 0}, uphill);
        const Standing standing{{spot.x - inside.x, spot.y - inside.y, head_.level - (climbs ? 0 : risers * rise)},
                                uphill > 180 ? uphill - 360 : uphill};
        const int stair = add_stair(risers, rise, run, standing);
        const double skew = length(-3, 3);
        const Spot3 end = standing.outside(climbs ? last + far : -far, across + (one_in(3) ? skew : 0));
        add_section(post, add_post(On::stair, stair, end, uphill, false), On::stair, stair);
    }

    // Builds and sections.

    MemberSize member(const char* name, double widest) {
        const double width = length(1.5, widest), depth = length(1, 2.5);
        return {name, width, depth};
    }

    void add_build() {
        Build build;
        build.id.name = "build";
        build.height = length(34, 40);
        const int upper = random_.whole(1, 2), lower = random_.whole(0, 1);
        for (int i = 0; i < upper; ++i) build.upper.push_back(member("upper", 3.5));
        for (int i = 0; i < lower; ++i) build.lower.push_back(member("lower", 2.5));
        if (lower > 0) build.lower_gap = LowerGap{length(2, 4), one_in(3)};
        if (!one_in(3)) build.play = length(0.0625, 0.25);
        PicketBuild pickets;
        pickets.width = length(0.75, 1.75);
        pickets.depth = length(0.75, 1.75);
        pickets.max_gap = length(3.5, 4.5);
        build.pickets = pickets;
        if (one_in(2)) add_bracket(build);
        build.driver = usual_driver(job_.units);
        job_.builds.push_back(build);
    }

    void add_bracket(Build& build) {
        BracketBuild bracket;
        bracket.post_leg = length(1, 3);
        bracket.rail_leg = length(1.5, 3);
        bracket.width = length(1, 1.5);
        bracket.thickness = length(0.0625, 0.25);
        bracket.post_hole = {Reading(bracket.post_leg * 0.75)};
        if (one_in(3)) bracket.post_seat = PostSeat::mortise;
        constexpr LegWish wishes[] = {LegWish::by_driver, LegWish::up, LegWish::up, LegWish::down};
        bracket.leg = wishes[random_.whole(0, 3)];
        build.bracket = bracket;
    }

    void add_section(int from, int to, On on, int ground) {
        Section section;
        section.id.name = "section " + std::to_string(job_.sections.size());
        section.from = {from, {}};
        section.to = {to, {}};
        section.build = {0, {}};
        (on == On::stair ? section.stair : section.floor) = {ground, {}};
        if (on == On::floor && one_in(2)) section.follow = Follow::floor;
        if (one_in(3)) section.height = Reading(length(34, 40));
        job_.sections.push_back(section);
    }

    const Post& post_of(const Ref& ref) const { return job_.posts[static_cast<std::size_t>(ref.index)]; }
    bool is_joint(const Ref& ref) const { return post_of(ref).shape == PostShape::joint; }

    /// What a tape could read between two posts that were not set out as carefully.
    double nearly_clear(const Section& section) {
        const Spot3 &from = places_[static_cast<std::size_t>(section.from.index)],
                    &to = places_[static_cast<std::size_t>(section.to.index)];
        const double x = to.x - from.x, y = to.y - from.y, off = length(-0.5, 0.5);
        const double halves = (post_of(section.from).size.along + post_of(section.to).size.along) / 2;
        return std::floor((std::sqrt(x * x + y * y) - halves) * 16) / 16 + off;
    }

    double small_offset() {
        const double offset = length(-0.75, 0.75);
        return one_in(2) ? offset : 0;
    }

    EndWish end_wish(const Post& post) {
        constexpr EndWish::Meets kinds[] = {EndWish::Meets::centre, EndWish::Meets::past, EndWish::Meets::square,
                                            EndWish::Meets::pad, EndWish::Meets::over};
        EndWish wish;
        wish.meets = kinds[random_.whole(0, 4)];
        const double past = length(1, 8), short_of = length(1, 5), thick = length(0.25, 1);
        if (wish.meets == EndWish::Meets::past || wish.meets == EndWish::Meets::over) wish.by = past;
        if (wish.meets == EndWish::Meets::square) wish.by = std::fmax(post.size.along, post.size.across) + short_of;
        if (wish.meets == EndWish::Meets::pad) wish.by = thick;
        return wish;
    }

    void wish_for(Section& section) {
        const bool from_post = !is_joint(section.from), to_post = !is_joint(section.to);
        const double at_from = small_offset(), at_to = small_offset();
        const bool askew = (from_post && to_post) || one_in(3);
        if (from_post && askew) section.offset.from = at_from;
        if (to_post && askew) section.offset.to = at_to;
        if (from_post && to_post && one_in(6)) section.clear = Reading(nearly_clear(section));
        if (kinds_.wishes && from_post && one_in(6)) section.ends.from = end_wish(post_of(section.from));
        if (kinds_.wishes && to_post && one_in(6)) section.ends.to = end_wish(post_of(section.to));
        if (one_in(6)) section.play = Reading(length(0, 0.25));
    }

    /// Rails that pass a joint's place on one side, as much before it as behind it.
    void offset_joints() {
        for (std::size_t p = 0; p < job_.posts.size(); ++p) {
            if (job_.posts[p].shape != PostShape::joint || !one_in(3)) continue;
            const double offset = length(-1, 1);
            const bool all_along = one_in(2);
            for (Section& section : job_.sections) {
                const bool starts = section.from.index == static_cast<int>(p),
                           ends = section.to.index == static_cast<int>(p);
                if (starts || (ends && all_along)) section.offset.from = offset;
                if (ends || (starts && all_along)) section.offset.to = offset;
            }
        }
    }

    static void turn_round(Section& section) {
        std::swap(section.from, section.to);
        std::swap(section.ends.from, section.ends.to);
        std::swap(section.offset.from, section.offset.to);
        section.offset.from.value = 0 - section.offset.from.value;
        section.offset.to.value = 0 - section.offset.to.value;
    }

    Random random_;
    PlacedKinds kinds_;
    double unit_ = 1;
    DrawnPlacedJob drawn_;
    Job& job_ = drawn_.job;
    double whole_turn_ = 0;  // of the porch in plan
    Spot3 shift_;
    int risers_ = 0;
    double rise_ = 0, run_ = 0, behind_ = 0, way_ = 0;
    Spot3 head_;  // the last nosing of the first stair
    Standing deck_;
    std::vector<Standing> stairs_;
    std::vector<Spot3> places_;  // of the posts
};

}  // namespace

DrawnPlacedJob random_placed_job(std::string_view name, const PlacedKinds& kinds) {
    return Placing(name, kinds).whole();
}

}  // namespace rakewright::tests
