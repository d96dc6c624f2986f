#include "surroundings.hpp"

#include <algorithm>

#include "way.hpp"

namespace rakewright {
namespace {

/// A post as a rail meets it that knows no place of it.
PlacelessPost placeless(const Job& job, const Ref& ref) {
    if (!ref.named()) return {};
    const Post& post = named(job.posts, ref);
    const double half = size_of(post).along / 2;
    return {half, post.shape == PostShape::round ? half : 0, trim_of(post)};
}

/// A placed post in the axes of a ground; none if one of the two grounds has no plan.
std::optional<StandingPost> in_axes_of(const Job& job, const Solution& solution, const Ref& post,
                                       const Ground& ground) {
    const StandingPost& standing = *named(solution.posts, post).standing;
    const Ground own = ground_of(named(job.posts, post));
    if (own == ground) return standing;
    const std::optional<Carrying> carry = carrying(job, own, ground);
    return carry ? std::optional(carry->post(standing)) : std::nullopt;
}

/// The size of a post that is named and square, the smaller of two; else 0.
double size_through(const Job& job, const Ref& post) {
    if (!post.named() || named(job.posts, post).shape != PostShape::square) return 0;
    const PostSize& size = named(job.posts, post).size;
    return std::min(size.along, size.across);
}

Surroundings without_joints(const Job& job, const Solution& solution, const Section& section) {
    const bool has_places = standing_of(solution, section.from) && standing_of(solution, section.to);
    const Ground ground = has_places              ? ground_of(job, section)
                          : section.stair.named() ? Ground{Ground::Kind::stair, section.stair.index}
                                                  : Ground{};
    Surroundings around;
    around.beside = {section.offset.from, section.offset.to};
    around.on_floor = ground.kind == Ground::Kind::floor;
    if (around.on_floor)
        around.floor = &job.floors[static_cast<std::size_t>(ground.index)];
    else if (section.floor.named())
        around.floor = &named(job.floors, section.floor);
    if (has_places) {
        around.from = in_axes_of(job, solution, section.from, ground);
        around.to = in_axes_of(job, solution, section.to, ground);
        if (!around.from || !around.to) around.from = around.to = std::nullopt;
    } else {
        around.posts = {placeless(job, section.from), placeless(job, section.to)};
        for (const End end : both_ends) {
            const Ref& post = end == End::from ? section.from : section.to;
            around.tapered[index_of(end)] = post.named() && named(job.posts, post).taper;
        }
        around.post_sizes = {size_through(job, section.from), size_through(job, section.to)};
    }
    if (ground.kind != Ground::Kind::stair) return around;
    around.stair = &solution.stairs[static_cast<std::size_t>(ground.index)];
    const Stair& stair = job.stairs[static_cast<std::size_t>(ground.index)];
    const StringKind string = section.side && !section.side->left ? stair.strings.right : stair.strings.left;
    around.closed_string = string == StringKind::closed && around.raked();
    if (around.closed_string) around.string_above = stair.string_above;
    return around;
}

/// The rail of a section away from the joint at one of its ends, in the axes of a ground.
std::optional<RailBeyond> rail_beyond(const Job& job, const Solution& solution, const SectionEnd& at,
                                      const Ground& ground) {
    const Section& section = job.sections[static_cast<std::size_t>(at.section)];
    const Surroundings around = without_joints(job, solution, section);
    const std::optional<Carrying> carry = carrying(job, ground_of(job, section), ground);
    if (!around.placed() || !carry || (around.stair && !around.stair->line)) return std::nullopt;
    const SectionTask task = task_of(job, section, {});
    if (!task.build.lower.empty() && (!task.lower_gap() || task.lower_gap()->is_auto)) return std::nullopt;
    if (!way_between(*around.from, *around.to, around.beside)) return std::nullopt;
    const Way way = way_of(task, around, {Face::joint, Face::joint}, task.lower_gap());
    const double out = at.end == End::from ? 1 : -1;
    const Vector direction = carry->way(Vector(out * way.line.x, out * way.line.y, 0));
    const Vector place = carry->point(way.line.at(way.line.centres[index_of(at.end)]));
    return RailBeyond{direction.x(),
                      direction.y(),
                      out * way.line.slope,
                      {place.z() + way.levels.upper_top, place.z() + way.levels.lower_top},
                      way.levels.has_lower};
}

/// The members of a group, from the top down.
std::vector<std::size_t> members_in(const SectionResult& section, Group group) {
    std::vector<std::size_t> found;
    for (std::size_t m = 0; m < section.members.size(); ++m)
        if (section.members[m].group == group) found.push_back(m);
    return found;
}

}  // namespace

std::optional<Carrying> carrying(const Job& job, const Ground& own, const Ground& other) {
    if (own == other) return Carrying({Vector::Zero(), {}}, {Vector::Zero(), {}});
    const std::optional<Plan>&from = plan_of(job, own), &to = plan_of(job, other);
    if (!from || !to) return std::nullopt;
    return Carrying(placed(*from), placed(*to));
}

const StandingPost* standing_of(const Solution& solution, const Ref& post) {
    if (!post.named()) return nullptr;
    const std::optional<StandingPost>& standing = named(solution.posts, post).standing;
    return standing ? &*standing : nullptr;
}

SectionTask task_of(const Job& job, const Section& section, const OpeningLimits& limits) {
    const std::optional<CentreWish> of_job = job.spacing ? job.spacing->centre : std::nullopt;
    return {section, named(job.builds, section.build), tape_of(job), limits, section.centre ? section.centre : of_job};
}

std::vector<SectionEnd> ends_at(const Job& job, int post) {
    std::vector<SectionEnd> ends;
    for (std::size_t s = 0; s < job.sections.size(); ++s)
        for (const End end : both_ends)
            if ((end == End::from ? job.sections[s].from : job.sections[s].to).index == post)
                ends.push_back({static_cast<int>(s), end});
    return ends;
}

Surroundings surroundings_of(const Job& job, const Solution& solution, std::size_t index) {
    const Section& section = job.sections[index];
    Surroundings around = without_joints(job, solution, section);
    if (!around.placed()) return around;
    for (const End end : both_ends) {
        const Ref& post = end == End::from ? section.from : section.to;
        if (named(job.posts, post).shape != PostShape::joint) continue;
        for (const SectionEnd& other : ends_at(job, post.index))
            if (other.section != static_cast<int>(index))
                around.joints[index_of(end)] = rail_beyond(job, solution, other, ground_of(job, section));
    }
    return around;
}

std::optional<JointResult> joint_of(const Job& job, const Solution& solution, int post) {
    const std::vector<SectionEnd> ends = ends_at(job, post);
    if (ends.size() != 2) return std::nullopt;
    const auto section = [&](std::size_t i) -> const Section& {
        return job.sections[static_cast<std::size_t>(ends[i].section)];
    };
    const auto result = [&](std::size_t i) -> const SectionResult& {
        return solution.sections[static_cast<std::size_t>(ends[i].section)];
    };
    const std::optional<Carrying> carry = carrying(job, ground_of(job, section(1)), ground_of(job, section(0)));
    const std::optional<RailJoint>& joint = result(0).joints[index_of(ends[0].end)];
    if (!carry || !joint) return std::nullopt;
    JointResult met{ends[0], ends[1], joint->straight, joint->moved, {}};
    for (const Group group : both_groups) {
        const std::vector<std::size_t> first = members_in(result(0), group), second = members_in(result(1), group);
        for (std::size_t m = 0; m < std::min(first.size(), second.size()); ++m) {
            Stick other = result(1).members[second[m]].stick;
            other.frame = carry->frame(other.frame);
            met.members.push_back(
                {first[m], second[m], corners_met(result(0).members[first[m]].stick, ends[0].end, other, ends[1].end)});
        }
    }
    return met;
}

}  // namespace rakewright
