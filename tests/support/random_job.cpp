#include "random_job.hpp"

#include <algorithm>
#include <cmath>
#include <string>

#include "random.hpp"

namespace rakewright::tests {
namespace {

// Every number is drawn in a statement of its own: compilers evaluate arguments in different orders.

class Drawing {
 public:
    Drawing(std::string_view name, Posts posts) : random_(name), nearly_plumb_(posts == Posts::nearly_plumb) {
        unit_ = one_in(3) ? Unit::millimetre : Unit::inch;
        raw_ = one_in(4);
    }

    DrawnJob whole() {
        drawn_.job.units = unit_;
        drawn_.job.title = "drawn";
        add_stair();
        add_posts();
        add_build();
        add_sections();
        return std::move(drawn_);
    }

 private:
    bool one_in(int count) { return random_.whole(1, count) == 1; }

    /// A length in the job's unit, drawn between two lengths in inches: as its tape reads, or any double.
    double length(double low, double high) {
        const double inches = random_.uniform(low, high);
        const double unit = unit_ == Unit::inch ? 1 : millimetres_in_an_inch;
        if (raw_) return inches * unit;
        if (unit_ == Unit::inch) return std::floor(inches * 16 + 0.5) / 16;
        return std::floor(inches * unit * 10 + 0.5) / 10;
    }

    DrawnAngle degrees_up_to(double most) {
        DrawnAngle angle;
        angle.in_degrees = true;
        angle.degrees = random_.uniform(-most, most);
        if (!raw_) angle.degrees = std::floor(angle.degrees * 10 + 0.5) / 10;
        return angle;
    }

    DrawnAngle slope_up_to(double most) {
        DrawnAngle angle;
        angle.rise = random_.uniform(-most, most);
        if (!raw_) angle.rise = std::floor(angle.rise * 32 + 0.5) / 32;
        angle.run = 48;
        return angle;
    }

    DrawnAngle turn() {
        switch (random_.whole(0, 6)) {
            case 0: return degrees_up_to(3);
            case 1: return slope_up_to(2);
            case 2: {
                DrawnAngle quarter;
                quarter.in_degrees = true;
                quarter.degrees = 90 * random_.whole(-3, 4);
                return quarter;
            }
            case 3: return degrees_up_to(nearly_plumb_ ? 4 : 180);
            default: return {};
        }
    }

    DrawnAngle lean() {
        switch (random_.whole(0, 8)) {
            case 0: return degrees_up_to(2);
            case 1: return slope_up_to(0.5);
            case 2: {
                DrawnAngle hardly = slope_up_to(0.5);
                hardly.run = 48e6;
                return hardly;
            }
            case 3: return degrees_up_to(nearly_plumb_ ? 1 : 12);
            case 4: return nearly_plumb_ ? DrawnAngle{} : degrees_up_to(one_in(3) ? 30 : 8);
            default: return {};
        }
    }

    static AngleReading read(const DrawnAngle& angle) {
        return {angle.in_degrees ? angle_from_degrees(angle.degrees) : Angle{angle.rise, angle.run}, {}};
    }

    void add_stair() {
        drawn_.job.stairs.emplace_back();
        drawn_.rakes.emplace_back();
        Stair& stair = drawn_.job.stairs.back();
        stair.id.name = "stair";
        stair.nosing = one_in(3) ? 0.0 : length(0.5, 1.5);
        if (one_in(2))
            even_steps(stair);
        else
            measured_steps(stair);
    }

    void even_steps(Stair& stair) {
        stair.risers = Count(one_in(8) ? 1 : random_.whole(2, 14));
        const double rise = length(5.5, 8.25), run = length(9, 14);
        const bool by_total = one_in(2), by_tread = one_in(2);
        const auto give_rise = [&] {
            if (by_total)
                stair.total_rise = Reading(rise * *stair.risers);
            else
                stair.rise = Reading(rise);
        };
        const auto give_run = [&] {
            if (by_tread)
                stair.tread = Reading(run + stair.nosing);
            else
                stair.run = Reading(run);
        };
        const auto give_rake = [&] {
            DrawnAngle& rake = drawn_.rakes.back();
            rake.rise = 7.25;
            rake.run = 11;
            if (one_in(2)) {
                rake.in_degrees = true;
                rake.degrees = std::floor(random_.uniform(250, 420)) / 10;
            }
            stair.rake = read(rake);
        };
        const double slope_length = length(13, 16.5);
        switch (random_.whole(0, 5)) {
            case 0: give_rise(), give_run(); return;
            case 1: give_rise(), give_rake(); return;
            case 2: give_run(), give_rake(); return;
            case 3: give_rake(); break;
            case 4: give_rise(); break;
            default: stair.run = Reading(std::min(run, length(9, 12))); break;
        }
        stair.nosing_to_nosing = Reading(slope_length);
    }

    void measured_steps(Stair& stair) {
        constexpr LineThrough rules[] = {LineThrough::minimax, LineThrough::fit, LineThrough::ends,
                                         LineThrough::straightedge};
        stair.line = rules[random_.whole(0, 3)];
        const int count = random_.whole(2, 12);
        const double rise = random_.uniform(6, 8), run = random_.uniform(9.5, 13);
        for (int i = 0; i < count; ++i) {
            Step step;
            step.rise = Reading(length(rise - 0.3, rise + 0.3));
            if (one_in(4)) step.nosing = Reading(length(0.5, 1.5));
            const double level = length(run - 0.4, run + 0.4);
            if (i + 1 < count) (one_in(3) ? step.tread : step.run) = Reading(level);
            stair.steps.push_back(step);
        }
    }

    Post post_at(double at, int nosing) {
        Post post;
        post.stair = {0, {}};
        post.at = Reading(at);
        post.nosing.value = nosing;
        const double along = length(2.5, 5.5), other = length(2.5, 5.5);
        post.size = {along, one_in(3) ? other : along, "", {}};
        constexpr PostFace faces[] = {PostFace::centre, PostFace::downhill, PostFace::uphill};
        post.face = faces[random_.whole(0, 2)];
        DrawnPost angles;
        angles.turn = turn();
        angles.along = lean();
        angles.across = lean();
        post.turn = read(angles.turn);
        post.lean = {read(angles.along), read(angles.across)};
        drawn_.posts.push_back(angles);
        if (one_in(8)) post.base = {Base::On::tread, random_.whole(0, 1), 0, {}};
        if (one_in(10)) post.base = {Base::On::height, 0, length(0, 6), {}};
        return post;
    }

    void add_posts() {
        std::vector<Post>& posts = drawn_.job.posts;
        const double before = length(-14, -6), behind = length(6, 14);
        posts.push_back(post_at(before, 1));
        posts.push_back(post_at(behind, 0));
        const double side = length(-6, 6), a_little = length(-3, 3), much = length(-40, 40);
        for (Post& post : posts) post.across = one_in(2) ? 0.0 : side;
        switch (random_.whole(0, 9)) {
            case 0:
            case 1: posts[1].across = posts[0].across + a_little; break;
            case 2: posts[1].across = posts[0].across + much; break;
            case 3:
                if (!one_in(2)) break;
                posts[1].nosing = posts[0].nosing;
                posts[1].at = posts[0].at;
                posts[1].face = posts[0].face = PostFace::centre;
                posts[1].across = posts[0].across + length(40, 80);
                break;
            default: break;
        }
    }

    MemberSize member(const char* name) {
        const double width = length(1.5, 5.5), depth = length(0.75, 3.5);
        return {name, width, depth};
    }

    void add_build() {
        Build build;
        build.id.name = "build";
        build.height = length(33, 42);
        const int upper = random_.whole(1, 3), lower = random_.whole(0, 2);
        for (int i = 0; i < upper; ++i) build.upper.push_back(member("upper"));
        for (int i = 0; i < lower; ++i) build.lower.push_back(member("lower"));
        if (lower > 0) build.lower_gap = LowerGap{length(1.5, 5), one_in(3)};
        build.play = one_in(4) ? 0.0 : length(0, 0.25);
        if (!one_in(6)) add_pickets(build);
        if (!one_in(4)) add_bracket(build);
        build.driver = usual_driver(unit_);
        drawn_.job.builds.push_back(build);
    }

    void add_pickets(Build& build) {
        PicketBuild pickets;
        pickets.width = length(0.75, 1.75);
        pickets.depth = length(0.75, 1.75);
        pickets.max_gap = length(3.5, 5.5);
        if (one_in(3)) pickets.plough.upper = length(0.125, 0.5);
        if (one_in(3)) pickets.plough.lower = length(0.125, 0.5);
        if (build.lower.empty() && one_in(4)) pickets.per_tread = Count(random_.whole(1, 2));
        build.pickets = pickets;
    }

    void add_bracket(Build& build) {
        BracketBuild bracket;
        bracket.post_leg = length(1, 4);
        bracket.rail_leg = length(1.5, 4);
        bracket.width = length(1, 2);
        bracket.thickness = length(0.0625, 0.3125);
        bracket.post_hole = {Reading(bracket.post_leg * 0.75)};
        bracket.rail_hole = {Reading(bracket.rail_leg * 0.5)};
        if (one_in(3)) bracket.post_seat = PostSeat::mortise;
        constexpr LegWish wishes[] = {LegWish::by_driver, LegWish::up, LegWish::down};
        bracket.leg = wishes[random_.whole(0, 2)];
        build.bracket = bracket;
    }

    void add_sections() {
        Section between;
        between.id.name = "between";
        const bool downhill = one_in(3);
        between.from = {downhill ? 1 : 0, {}};
        between.to = {downhill ? 0 : 1, {}};
        between.build = {0, {}};
        if (one_in(4)) between.play = Reading(length(0, 0.5));
        Section floor;
        floor.id.name = "floor";
        floor.build = {0, {}};
        floor.clear = Reading(length(20, 150));
        Section up;
        up.id.name = "up";
        up.build = {0, {}};
        up.stair = {0, {}};
        (one_in(2) ? up.clear : up.clear_on_slope) = Reading(length(20, 150));
        drawn_.job.sections = {between, floor};
        if (drawn_.job.stairs[0].steps.size() != 1) drawn_.job.sections.push_back(up);
    }

    Random random_;
    bool nearly_plumb_;
    Unit unit_ = Unit::inch;
    bool raw_ = false;
    DrawnJob drawn_;
};

}  // namespace

DrawnJob random_job(std::string_view name, Posts posts) { return Drawing(name, posts).whole(); }

}  // namespace rakewright::tests
