#include "solve.hpp"

#include <algorithm>

#include "build.hpp"
#include "post_screws.hpp"

namespace rakewright {
namespace {

template <class Values>
decltype(auto) named(Values& values, const Ref& ref) {
    return values[static_cast<std::size_t>(ref.index)];
}

const StandingPost* standing_of(const Solution& solution, const Ref& post) {
    if (!post.named()) return nullptr;
    const std::optional<StandingPost>& standing = named(solution.posts, post).standing;
    return standing ? &*standing : nullptr;
}

/// The radius of a post that is named and round; else 0.
double radius_of(const Job& job, const Ref& post) {
    if (!post.named() || named(job.posts, post).shape != PostShape::round) return 0;
    return size_of(named(job.posts, post)).along / 2;
}

/// The size of a post that is named and square, the smaller of two; else 0.
double size_through(const Job& job, const Ref& post) {
    if (!post.named() || named(job.posts, post).shape == PostShape::round) return 0;
    const PostSize& size = named(job.posts, post).size;
    return std::min(size.along, size.across);
}

/// What a section stands between, as far as its posts and stair are known.
Surroundings surroundings_of(const Job& job, const Solution& solution, const Section& section) {
    const StandingPost *from = standing_of(solution, section.from), *to = standing_of(solution, section.to);
    const Floor* const floor = section.floor.named() ? &named(job.floors, section.floor) : nullptr;
    const bool placed = from && to;
    const Ref& over = placed ? named(job.posts, section.from).stair : section.stair;
    Surroundings around;
    around.floor = floor;
    if (!placed) {
        around.radii = {radius_of(job, section.from), radius_of(job, section.to)};
        around.post_sizes = {size_through(job, section.from), size_through(job, section.to)};
    }
    if (!over.named()) return around;
    around.stair = &named(solution.stairs, over);
    if (placed) {
        around.from = from;
        around.to = to;
    }
    const Stair& stair = named(job.stairs, over);
    const StringKind string = section.side && !section.side->left ? stair.strings.right : stair.strings.left;
    around.closed_string = string == StringKind::closed && around.raked();
    if (around.closed_string) around.string_above = stair.string_above;
    return around;
}

class Solving {
 public:
    Solving(const Job& job, std::span<const RuleSet> rules, const Choices* given)
        : job_(job), rules_(rules), given_(given), tape_(tape_of(job)) {}

    Solution whole() && {
        solution_.stairs.reserve(job_.stairs.size());
        solution_.posts.reserve(job_.posts.size());
        solution_.sections.reserve(job_.sections.size());
        solution_.choices.sections.reserve(job_.sections.size());
        for (const Stair& stair : job_.stairs) add_stair(stair);
        for (const Post& post : job_.posts) add_post(post);
        for (const Build& build : job_.builds) add_build(build);
        for (const Section& section : job_.sections) add_section(section);
        note_screws_that_meet(job_, solution_);
        for (const Handrail& handrail : job_.handrails) add_handrail(handrail);
        for (const FoundRail& found : job_.as_found) check_found(found);
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
        if (!shape_is_sound(post)) return;
        if (!post.stair.named()) {
            check_unplaced(post);
            return;
        }
        const StairShape& stair = named(solution_.stairs, post.stair);
        if (stair.nosings.empty()) return;
        result.standing = stand(post, stair, solution_.findings);
    }

    /// Refuses what only a square or only a round post can have.
    bool shape_is_sound(const Post& post) {
        const std::size_t before = solution_.findings.size();
        const auto refuse = [&](Trouble trouble, const Place& place, bool given) {
            if (given) solution_.findings.push_back({trouble, place, {}, post.id.place});
        };
        const bool round = post.shape == PostShape::round;
        refuse(Trouble::girth_of_square, post.around ? post.around->place : Place{}, post.around && !round);
        refuse(Trouble::timber_size_of_round, post.size.place, round && !post.size.nominal.empty());
        refuse(Trouble::turn_of_round, post.turn.place,
               round && post.stair.named() && (post.turn.place.size > 0 || post.turn.angle.rise != 0));
        return solution_.findings.size() == before;
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
            return !post.named() || !named(job_.posts, post).stair.named() || standing(post);
        };
        const bool stair_is_sound = !section.stair.named() || !named(solution_.stairs, section.stair).nosings.empty();
        return stair_is_sound && stands(section.from) && stands(section.to) && named(build_is_sound_, section.build);
    }

    /// Keys that say how a post stands mean nothing at one that has no place.
    void check_unplaced(const Post& post) {
        const auto refuse = [&](const Place& place, bool given) {
            if (given) solution_.findings.push_back({Trouble::placed_without_stair, place, {}, post.id.place});
        };
        refuse(post.nosing.place, post.nosing.place.size > 0);
        refuse(post.across.place, post.across != 0);
        refuse(post.turn.place, post.turn.angle.rise != 0);
        refuse(post.lean.along.place, post.lean.along.angle.rise != 0);
        refuse(post.lean.across.place, post.lean.across.angle.rise != 0);
        refuse(post.base.place, post.base.on != Base::On::what_is_under);
    }

    void add_section(const Section& section) {
        const std::size_t index = solution_.sections.size(), before = solution_.findings.size();
        solution_.sections.emplace_back();
        solution_.choices.sections.emplace_back();
        if (!rests_on_sound(section)) return;
        if (const std::optional<Surroundings> around = surroundings(section)) {
            const SectionTask task{section, named(job_.builds, section.build), tape_, limits_of(section)};
            const std::optional<SectionChoices> choices =
                given_ ? given_->sections[index] : decide(task, *around, solution_.findings);
            if (choices) {
                solution_.choices.sections.back() = *choices;
                solution_.sections.back() = measure(task, *around, *choices, solution_.findings);
                add_to_posts(section, solution_.sections.back());
            }
        }
        for (std::size_t i = before; i < solution_.findings.size(); ++i)
            solution_.findings[i].section = static_cast<int>(index);
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
    }

    const StandingPost* standing(const Ref& post) const { return standing_of(solution_, post); }

    /// What a section stands between; none if it does not say enough, or too much.
    std::optional<Surroundings> surroundings(const Section& section) {
        std::vector<Finding>& findings = solution_.findings;
        const std::size_t before = findings.size();
        const StandingPost *from = standing(section.from), *to = standing(section.to);
        if (section.from.named() && section.from.index == section.to.index)
            findings.push_back({Trouble::post_at_both_ends, section.to.place, {}, section.from.place});
        if (section.clear && section.clear_on_slope)
            findings.push_back({Trouble::two_clears, section.clear_on_slope->place, {}, section.clear->place});
        const bool has_clear = section.clear || section.clear_on_slope;
        if (from && to) {
            check_between_placed(section);
        } else if (!has_clear) {
            findings.push_back({Trouble::clear_missing, section.id.place, {}, {}});
        } else if (section.clear_on_slope && !section.stair.named()) {
            findings.push_back({Trouble::slope_without_stair, section.clear_on_slope->place, {}, {}});
        }
        const Surroundings around = surroundings_of(job_, solution_, section);
        if (around.stair && !around.stair->line)
            findings.push_back(
                {Trouble::no_nosing_line, section.stair.named() ? section.stair.place : section.id.place, {}, {}});
        if (around.floor && around.raked())
            findings.push_back({Trouble::floor_under_rake, section.floor.place, {}, {}});
        if (around.stair) check_side(section, around);
        if (findings.size() > before) return std::nullopt;
        return around;
    }

    /// A section up a stair whose strings differ has to say on which side it is.
    void check_side(const Section& section, const Surroundings& around) {
        const Stair& stair =
            named(job_.stairs, around.placed() ? named(job_.posts, section.from).stair : section.stair);
        if (stair.strings.left != stair.strings.right && !section.side && around.raked())
            solution_.findings.push_back({Trouble::side_missing, section.id.place, {}, stair.id.place});
    }

    void check_between_placed(const Section& section) {
        const Ref &from = named(job_.posts, section.from).stair, &to = named(job_.posts, section.to).stair;
        for (const std::optional<Reading>* clear : {&section.clear, &section.clear_on_slope})
            if (*clear) solution_.findings.push_back({Trouble::clear_between_placed, (*clear)->place, {}, {}});
        if (from.index != to.index)
            solution_.findings.push_back({Trouble::posts_on_two_stairs, section.to.place, {}, section.from.place});
        else if (section.stair.named() && section.stair.index != from.index)
            solution_.findings.push_back({Trouble::section_on_other_stair, section.stair.place, {}, from.place});
    }

    void add_to_posts(const Section& section, const SectionResult& result) {
        const int index = static_cast<int>(solution_.sections.size()) - 1;
        for (const End end : {End::from, End::to}) {
            const Ref& post = end == End::from ? section.from : section.to;
            if (!post.named()) continue;
            const EndHeights& heights = result.ends[end == End::from ? 0 : 1];
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
    Tape tape_;
    Solution solution_;
    std::vector<char> build_is_sound_;
};

}  // namespace

bool Solution::refused() const {
    return std::any_of(findings.begin(), findings.end(),
                       [](const Finding& finding) { return refuses(finding.trouble); });
}

void measure_openings(const Job& job, Solution& solution) {
    for (std::size_t i = 0; i < job.sections.size(); ++i) {
        const Section& section = job.sections[i];
        const SectionTask task{section, named(job.builds, section.build), tape_of(job), {}};
        solution.sections[i].openings =
            openings_in(task, surroundings_of(job, solution, section), solution.choices.sections[i]);
    }
}

Solution solve(const Job& job, std::span<const RuleSet> rules) { return Solving(job, rules, nullptr).whole(); }

Solution solve(const Job& job, const Choices& choices) { return Solving(job, {}, &choices).whole(); }

}  // namespace rakewright
