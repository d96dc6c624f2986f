#include "solve.hpp"

#include <algorithm>
#include <cmath>

#include "arrivals.hpp"
#include "build.hpp"
#include "job_pickets.hpp"
#include "measure/compare.hpp"
#include "pilot_list.hpp"
#include "post_check.hpp"
#include "post_fixing.hpp"
#include "post_screws.hpp"
#include "post_top.hpp"
#include "sawing.hpp"
#include "surroundings.hpp"

namespace rakewright {
namespace {

class Solving {
 public:
    Solving(const Job& job, std::span<const RuleSet> rules, const Choices* given)
        : job_(job), rules_(rules), given_(given) {}

    Solution whole() && {
        solution_.stairs.reserve(job_.stairs.size());
        solution_.posts.reserve(job_.posts.size());
        solution_.sections.reserve(job_.sections.size());
        solution_.choices.sections.reserve(job_.sections.size());
        for (const Stair& stair : job_.stairs) add_stair(stair);
        for (const Post& post : job_.posts) add_post(post);
        for (const Build& build : job_.builds) add_build(build);
        add_sections();
        note_screws_that_meet(job_, solution_);
        note_splitting(job_, solution_);
        add_joints();
        for (std::size_t p = 0; p < job_.posts.size(); ++p)
            solution_.posts[p].arrivals = arrivals_at(job_, solution_, p);
        cut_tops(job_, solution_);
        fix_posts(job_, solution_);
        for (const Handrail& handrail : job_.handrails) add_handrail(handrail);
        for (const FoundRail& found : job_.as_found) check_found(found);
        note_ends_out_of_reach(job_, solution_);
        if (job_.stairs.empty() && job_.sections.empty() && job_.handrails.empty() && job_.as_found.empty() &&
            job_.also_cut.empty())
            solution_.findings.push_back({Trouble::nothing_to_do, {}, {}, {}});
        return std::move(solution_);
    }

 private:
    void add_stair(const Stair& stair) {
        std::vector<Finding>& findings = solution_.findings;
        const std::size_t index = solution_.stairs.size();
        solution_.stairs.push_back(given_ ? shape_of(stair, given_->lines[index], findings)
                                          : shape_of(stair, findings));
        solution_.choices.lines.push_back(solution_.stairs.back().held_by);
    }

    void add_post(const Post& post) {
        PostResult& result = solution_.posts.emplace_back();
        const std::size_t before = solution_.findings.size();
        check(job_, solution_.posts.size() - 1, solution_.findings);
        if (solution_.findings.size() > before || !post.has_place()) return;
        if (post.floor.named()) {
            const Floor& floor = named(job_.floors, post.floor);
            result.standing = stand(post, floor.toward == Toward::heading ? slope(floor.falls.angle) : 0);
        } else {
            const StairShape& stair = named(solution_.stairs, post.stair);
            if (!stair.nosings.empty()) result.standing = stand(post, stair, solution_.findings);
        }
        const std::optional<Plan>& plan = plan_of(job_, ground_of(post));
        if (result.standing && plan) result.in_plan = in_plan(placed(*plan), result.standing->foot);
    }

    void add_build(const Build& build) {
        const std::size_t before = solution_.findings.size();
        check(build, solution_.findings);
        const auto added = solution_.findings.begin() + static_cast<std::ptrdiff_t>(before);
        build_is_sound_.push_back(std::none_of(added, solution_.findings.end(),
                                               [](const Finding& finding) { return refuses(finding.trouble); }));
    }

    /// Whether what a section rests on was not refused already: then nothing more can be said of it.
    bool rests_on_sound(const Section& section) {
        const auto stands = [&](const Ref& post) {
            return !post.named() || !named(job_.posts, post).has_place() || standing(post);
        };
        const bool stair_is_sound = !section.stair.named() || !named(solution_.stairs, section.stair).nosings.empty();
        return stair_is_sound && stands(section.from) && stands(section.to) && named(build_is_sound_, section.build);
    }

    /// Decides each section, spaces the pickets of all, then measures each.
    void add_sections() {
        const std::size_t before = solution_.findings.size();
        in_place_.reserve(job_.sections.size());
        for (const Section& section : job_.sections) decide_section(section);
        if (job_.spacing && !given_ && !solution_.refused())
            space_pickets(*job_.spacing, tape_of(job_), in_place_, solution_.findings);
        for (SectionInPlace& section : in_place_) measure_section(section);
        std::stable_sort(solution_.findings.begin() + static_cast<std::ptrdiff_t>(before), solution_.findings.end(),
                         [](const Finding& a, const Finding& b) { return a.section < b.section; });
    }

    void decide_section(const Section& section) {
        const std::size_t index = solution_.sections.size(), before = solution_.findings.size();
        solution_.sections.emplace_back();
        solution_.choices.sections.emplace_back();
        if (!rests_on_sound(section)) return;
        if (const std::optional<Surroundings> around = surroundings(section, index)) {
            const SectionTask task = task_of(job_, section, limits_of(section));
            const std::optional<SectionChoices> choices =
                given_ ? given_->sections[index] : decide(task, *around, solution_.findings);
            if (choices) in_place_.push_back({static_cast<int>(index), task, *around, *choices});
        }
        number_findings(before, static_cast<int>(index));
    }

    void measure_section(const SectionInPlace& section) {
        const auto index = static_cast<std::size_t>(section.index);
        const std::size_t before = solution_.findings.size();
        solution_.choices.sections[index] = section.choices;
        solution_.sections[index] = measure(section.task, section.around, section.choices, solution_.findings);
        add_to_posts(section.task.section, section.index);
        number_findings(before, section.index);
    }

    void number_findings(std::size_t from, int section) {
        for (std::size_t i = from; i < solution_.findings.size(); ++i) solution_.findings[i].section = section;
    }

    void add_joints() {
        for (std::size_t p = 0; p < job_.posts.size(); ++p) {
            if (job_.posts[p].shape != PostShape::joint) continue;
            PostResult& post = solution_.posts[p];
            post.joint = joint_of(job_, solution_, static_cast<int>(p));
            if (!post.joint) continue;
            const JointResult& joint = *post.joint;
            const Place place = job_.posts[p].id.place;
            if (!same(joint.moved, 0, 1))
                solution_.findings.push_back({Trouble::joint_moved, place, {joint.moved}, {}});
            const auto apart =
                std::max_element(joint.members.begin(), joint.members.end(),
                                 [](const MembersMet& a, const MembersMet& b) { return a.apart() < b.apart(); });
            if (apart != joint.members.end() && apart->apart() > alike_within)
                solution_.findings.push_back({Trouble::joint_apart, place, {apart->apart()}, {}});
        }
    }

    void add_handrail(const Handrail& handrail) {
        const StairShape& stair = named(solution_.stairs, handrail.stair);
        solution_.handrails.push_back(stair.nosings.empty() ? HandrailResult{}
                                                            : handrail_of(handrail, stair, solution_.findings));
    }

    /// Refuses readings that a rail as found cannot have.
    void check_found(const FoundRail& found) {
        const auto refuse = [&](Trouble trouble, Place place, double first = 0, double second = 0) {
            solution_.findings.push_back({trouble, place, {first, second}, found.id.place});
        };
        if (!found.stair.named()) {
            if (!found.heights.empty()) refuse(Trouble::found_heights_of_floor, found.heights.front().reading.place);
            if (found.extend) refuse(Trouble::found_heights_of_floor, found.id.place);
            for (const Ball& ball : found.balls)
                if (ball.tread) refuse(Trouble::found_tread_without_stair, ball.tread->place);
            check_balls(found);
            return;
        }
        if (found.height) refuse(Trouble::found_height_of_stair, found.height->place);
        const int risers = named(solution_.stairs, found.stair).risers();
        if (risers == 0) return;
        for (const Numbered& height : found.heights)
            if (height.number > risers)
                refuse(Trouble::found_nosing_beyond, height.reading.place, height.number, risers);
        for (const Ball& ball : found.balls)
            if (ball.tread && *ball.tread > risers)
                refuse(Trouble::found_nosing_beyond, ball.tread->place, *ball.tread, risers);
        for (const Ball& ball : found.balls)
            if (ball.at() == Ball::At::under_rail && !ball.tread) refuse(Trouble::found_tread_missing, ball.place);
        check_balls(found);
    }

    /// Whether what one ball showed holds where the other was tried: at the same opening, or at pickets anywhere.
    static bool shows_at(const Ball& ball, const Ball& other) {
        if (ball.at() != other.at()) return false;
        if (!ball.tread || !other.tread)
            return ball.tread.has_value() == other.tread.has_value() ||
                   (ball.at() == Ball::At::pickets && ball.tread.has_value());
        return *ball.tread == *other.tread;
    }

    /// Refuses balls of which one passed where a smaller one, or one alike, did not, and what the widest gap denies. A
    /// ball tried at pickets anywhere that did not pass passed nowhere.
    void check_balls(const FoundRail& found) {
        for (const Ball& ball : found.balls) {
            if (found.widest_gap && ball.at() == Ball::At::pickets) {
                const double gap = *found.widest_gap;
                if (ball.passes ? less_than(gap, ball.size) : !ball.tread && less_than(ball.size, gap))
                    solution_.findings.push_back({Trouble::ball_against_gap,
                                                  ball.place,
                                                  {ball.size, gap, ball.passes ? 1.0 : 0.0},
                                                  found.widest_gap->place});
            }
            if (!ball.passes) continue;
            for (const Ball& other : found.balls)
                if (!other.passes && shows_at(ball, other) && no_more_than(other.size, ball.size))
                    solution_.findings.push_back(
                        {Trouble::balls_contradict, ball.place, {ball.size, other.size}, other.place});
        }
    }

    const StandingPost* standing(const Ref& post) const { return standing_of(solution_, post); }

    /// What a section stands between; none if it does not say enough, or too much.
    std::optional<Surroundings> surroundings(const Section& section, std::size_t index) {
        std::vector<Finding>& findings = solution_.findings;
        const std::size_t before = findings.size();
        const StandingPost *from = standing(section.from), *to = standing(section.to);
        if (section.from.named() && section.from.index == section.to.index)
            findings.push_back({Trouble::post_at_both_ends, section.to.place, {}, section.from.place});
        if ((section.clear || section.clear_twice) && section.clear_on_slope)
            findings.push_back({Trouble::two_clears,
                                section.clear_on_slope->place,
                                {},
                                section.clear ? section.clear->place : section.clear_twice->place});
        const bool has_clear = section.clear || section.clear_on_slope || section.clear_twice;
        if (from && to) {
            check_between_placed(section);
        } else if (!has_clear) {
            findings.push_back({Trouble::clear_missing, section.id.place, {}, {}});
        } else if (section.clear_on_slope && !section.stair.named()) {
            findings.push_back({Trouble::slope_without_stair, section.clear_on_slope->place, {}, {}});
        }
        check_at_joints(section, from && to);
        const Surroundings around = surroundings_of(job_, solution_, index);
        if (around.stair && !around.stair->line)
            findings.push_back(
                {Trouble::no_nosing_line, section.stair.named() ? section.stair.place : section.id.place, {}, {}});
        if (around.floor && around.raked())
            findings.push_back({Trouble::floor_under_rake, section.floor.place, {}, {}});
        if (around.floor && around.floor->toward == Toward::heading && around.floor->falls.angle.rise != 0 &&
            !around.on_floor)
            findings.push_back({Trouble::fall_way_unknown, section.floor.place, {}, around.floor->id.place});
        if (around.stair) check_side(section, around);
        if (findings.size() > before) return std::nullopt;
        return around;
    }

    /// What a section that ends at a joint cannot say.
    void check_at_joints(const Section& section, bool between_placed) {
        const auto refuse = [&](Trouble trouble, const Place& place) {
            solution_.findings.push_back({trouble, place, {}, section.id.place});
        };
        for (const End end : both_ends) {
            const Ref& post = end == End::from ? section.from : section.to;
            if (!is_joint(job_, post)) continue;
            if (!between_placed) refuse(Trouble::joint_without_place, post.place);
            const EndWish& wish = end == End::from ? section.ends.from : section.ends.to;
            if (wish.meets != EndWish::Meets::face) refuse(Trouble::ends_at_joint, post.place);
            const std::optional<PicketBuild>& pickets = named(job_.builds, section.build).pickets;
            if (pickets && pickets->on_face()) refuse(Trouble::face_at_joint, post.place);
            if (section.clear) refuse(Trouble::clear_to_joint, section.clear->place);
            if (section.clear_on_slope) refuse(Trouble::clear_to_joint, section.clear_on_slope->place);
            const Build& build = named(job_.builds, section.build);
            const std::optional<LowerGap>& gap = section.lower_gap ? section.lower_gap : build.lower_gap;
            if (!build.lower.empty() && gap && gap->is_auto) refuse(Trouble::auto_at_joint, gap->size.place);
        }
    }

    /// A section up a stair whose strings differ has to say on which side it is.
    void check_side(const Section& section, const Surroundings& around) {
        const Stair& stair = job_.stairs[static_cast<std::size_t>(stair_of(job_, section))];
        if (stair.strings.left != stair.strings.right && !section.side && around.raked())
            solution_.findings.push_back({Trouble::side_missing, section.id.place, {}, stair.id.place});
    }

    void check_between_placed(const Section& section) {
        if (section.clear_twice)
            solution_.findings.push_back({Trouble::low_high_between_placed, section.clear_twice->place, {}, {}});
        const Ground ground = ground_of(job_, section);
        if (ground.kind == Ground::Kind::none) {
            solution_.findings.push_back({Trouble::ground_unsaid, section.to.place, {}, section.from.place});
            return;
        }
        for (const Ref* post : {&section.from, &section.to}) {
            const Ground own = ground_of(named(job_.posts, *post));
            if (own == ground) continue;
            for (const Ground& needed : {own, ground})
                if (!plan_of(job_, needed))
                    solution_.findings.push_back({Trouble::plan_missing, post->place, {}, id_of(needed).place});
        }
    }

    const Id& id_of(const Ground& ground) const {
        const std::size_t index = static_cast<std::size_t>(ground.index);
        return ground.kind == Ground::Kind::stair ? job_.stairs[index].id : job_.floors[index].id;
    }

    void add_to_posts(const Section& section, int index) {
        const SectionResult& result = solution_.sections[static_cast<std::size_t>(index)];
        for (const End end : both_ends) {
            const Ref& post = end == End::from ? section.from : section.to;
            if (!post.named()) continue;
            const EndHeights& heights = result.ends[index_of(end)];
            std::vector<RailAtPost>& rails = named(solution_.posts, post).rails;
            if (heights.upper) rails.push_back({index, end, Group::upper, *heights.upper});
            if (heights.lower) rails.push_back({index, end, Group::lower, *heights.lower});
        }
    }

    OpeningLimits limits_of(const Section& section) const {
        return rules_.empty()
                   ? OpeningLimits{}
                   : opening_limits(rules_, drop_beside(job_, section.drop, stair_of(job_, section)), job_.units);
    }

    const Job& job_;
    std::span<const RuleSet> rules_;
    const Choices* given_;
    Solution solution_;
    std::vector<char> build_is_sound_;
    std::vector<SectionInPlace> in_place_;  // the sections that can be measured
};

}  // namespace

std::optional<double> PostResult::highest_rail() const {
    std::optional<double> highest;
    for (const RailAtPost& rail : rails)
        if (!highest || rail.heights.top > *highest) highest = rail.heights.top;
    return highest;
}

double MembersMet::apart() const {
    double most = 0;
    for (const CornerMet& corner : corners)
        most = std::max(most, std::sqrt(corner.plumb * corner.plumb + corner.level * corner.level));
    return most;
}

bool Solution::refused() const {
    return std::any_of(findings.begin(), findings.end(),
                       [](const Finding& finding) { return refuses(finding.trouble); });
}

void measure_openings(const Job& job, Solution& solution) {
    for (std::size_t i = 0; i < job.sections.size(); ++i) {
        const Section& section = job.sections[i];
        const SectionTask task = task_of(job, section, {});
        SectionResult& result = solution.sections[i];
        result.openings =
            openings_in(task, surroundings_of(job, solution, i), solution.choices.sections[i], result.feet);
    }
}

void compare_spacings(const Job& job, Solution& solution) {
    if (!job.spacing) return;
    std::vector<SectionInPlace> sections;
    sections.reserve(job.sections.size());
    for (std::size_t i = 0; i < job.sections.size(); ++i)
        sections.push_back({static_cast<int>(i), task_of(job, job.sections[i], {}), surroundings_of(job, solution, i),
                            solution.choices.sections[i]});
    solution.spacings = compared(*job.spacing, tape_of(job), sections);
}

Solution solve(const Job& job, std::span<const RuleSet> rules) { return Solving(job, rules, nullptr).whole(); }

Solution solve(const Job& job, const Choices& choices) { return Solving(job, {}, &choices).whole(); }

}  // namespace rakewright
