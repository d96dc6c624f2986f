#include "member.hpp"

#include <algorithm>
#include <cmath>

#include "../measure/compare.hpp"

namespace rakewright {
namespace {

double depth_of(const std::vector<MemberSize>& members) {
    double depth = 0;
    for (const MemberSize& member : members) depth += member.depth;
    return depth;
}

/// The plane that cuts a member at one end.
Plane cutting_plane(const RailLine& line, const Plane& face, End end, double play, double thickness) {
    const double inward = end == End::from ? play / 2 : -play / 2;
    return {face.point + inward * Vector(line.x, line.y, 0) + thickness * face.normal, face.normal};
}

/// How far past the cut at its centre line an end reaches over a spot, along the member and away from it.
double outward_of(const Member& member, End end, Spot spot) {
    if (const std::optional<Cope>& cope = member.copes[index_of(end)]) return outward(*cope, spot);
    const Slant& slant = end == End::from ? member.stick.piece.from : member.stick.piece.to;
    const double beyond = slant.per_left * spot.left + slant.per_top * spot.top;
    return end == End::from ? -beyond : beyond;
}

double length_over(const Member& member, Spot spot) { return length_over(member.stick.piece, member.copes, spot); }

double longest_outward(const Member& member, End end) {
    if (const std::optional<Cope>& cope = member.copes[index_of(end)]) return cope->longest;
    const Slant& slant = end == End::from ? member.stick.piece.from : member.stick.piece.to;
    return (std::fabs(slant.per_left) * member.width + std::fabs(slant.per_top) * member.depth) / 2;
}

void measure_coped(Member& member) {
    member.top_edge = length_over(member, {0, member.depth / 2});
    member.bottom_edge = length_over(member, {0, -member.depth / 2});
    member.overall = member.length + longest_outward(member, End::from) + longest_outward(member, End::to);
}

/// The shortest of the arrises; of a coped member also of the middle lines of its faces, where copes are hollow.
double shortest_line(const Member& member) {
    if (!member.copes[0] && !member.copes[1]) return shortest_arris(member.stick.piece);
    double shortest = length(member.stick.piece);
    for (const int left : {-1, 0, 1})
        for (const int top : {-1, 0, 1})
            shortest = std::min(shortest, length_over(member, spot_of({left, top}, member.stick.piece.section)));
    return shortest;
}

/// What a leg between post and member takes off it at a round post: from where the middle line would meet the post.
double thickness_along(const Frame& frame, const Plane& touching, const Vector& inward, End end, const Slant& slant) {
    const double bare = cut(frame, {touching.point + inward, touching.normal})->at;
    return end == End::from ? slant.at - bare : bare - slant.at;
}

class Cutting {
 public:
    Cutting(const Levels& levels, const RailLine& line, double play, const LegsBetween& legs, Place place,
            std::vector<Finding>& findings)
        : levels_(levels), line_(line), play_(play), legs_(legs), place_(place), findings_(findings) {}

    std::optional<Member> cut_member(const MemberSize& size, Group group, double underside) {
        const double lengthened = line_.lengthened();
        Member member;
        member.name = size.name;
        member.group = group;
        member.width = size.width;
        member.depth = size.depth;
        const Frame frame =
            frame_on_slope(line_.at(0, underside + size.depth / 2 * lengthened), line_.x, line_.y, line_.slope);
        member.stick = {frame, {{size.width, size.depth}, {}, {}}};
        Piece& piece = member.stick.piece;
        if (!trim(member, End::from, underside, piece.from) || !trim(member, End::to, underside, piece.to))
            return std::nullopt;
        if (const double shortest = shortest_line(member); !no_more_than(0, shortest, rakewright::length(piece))) {
            findings_.push_back({Trouble::no_length_left, place_, {shortest}, {}});
            return std::nullopt;
        }
        member.length = rakewright::length(piece);
        if (!member.copes[0] && !member.copes[1]) {
            member.top_edge = edge_length(piece, {0, 1});
            member.bottom_edge = edge_length(piece, {0, -1});
            member.overall = rakewright::overall(piece);
        } else {
            measure_coped(member);
        }
        member.from_end = end_cut(piece, End::from);
        member.to_end = end_cut(piece, End::to);
        member.measure = set_out(piece);
        return member;
    }

 private:
    bool trim(Member& member, End end, double underside, Slant& slant) {
        const std::size_t e = index_of(end);
        const RailEnd& own = line_.end_of(end);
        if (!own.at_face(member.group)) return trim_plain(member, own, end, underside, slant);
        LegBetween leg = overlapping(member.group, end, underside);
        leg.thickness += own.pad;
        const Meeting met = met_between(line_, end, underside, underside + member.depth * line_.lengthened());
        if (met.is_round()) return trim_round(member, met, end, underside, leg.thickness, slant);
        const std::optional<Slant> cut_there =
            cut(member.stick.frame, cutting_plane(line_, met.plane, end, play_, leg.thickness));
        if (!cut_there) {
            findings_.push_back({Trouble::cut_too_steep, place_, {}, {}, -1, static_cast<int>(e)});
            return false;
        }
        slant = *cut_there;
        if (leg.thickness > 0) {
            const double bare = cut(member.stick.frame, cutting_plane(line_, met.plane, end, play_, 0))->at;
            member.shortened[e] = end == End::from ? slant.at - bare : bare - slant.at;
        }
        return true;
    }

    /// A cut to no post's face: no leg stands there. Joints are cut without play.
    bool trim_plain(Member& member, const RailEnd& own, End end, double underside, Slant& slant) {
        const double middle = underside + member.depth / 2 * line_.lengthened();
        const Vector along = member.stick.frame.along;
        const Plane plane = own.kind == RailEnd::Kind::square
                                ? Plane{line_.at(own.along, middle), end == End::from ? along : Vector(-along)}
                                : own.planes[index_of(member.group)];
        const double play = own.kind == RailEnd::Kind::square || line_.is_joint(end) ? 0 : play_;
        const std::optional<Slant> cut_there = cut(member.stick.frame, cutting_plane(line_, plane, end, play, 0));
        if (cut_there)
            slant = *cut_there;
        else
            findings_.push_back({Trouble::cut_too_steep, place_, {}, {}, -1, static_cast<int>(index_of(end))});
        return cut_there.has_value();
    }

    /// The cope is that of the post moved inward as a flat cut is.
    bool trim_round(Member& member, const Meeting& met, End end, double underside, double thickness, Slant& slant) {
        const std::size_t e = index_of(end);
        const Vector inward = (end == End::from ? play_ / 2 : -play_ / 2) * Vector(line_.x, line_.y, 0);
        Shaft post = met.round;
        const std::optional<Plane> bare = plane_met(line_, met, end, underside + member.depth / 2 * line_.lengthened());
        post.point += inward;
        if (bare) post.point += thickness * bare->normal;
        const Coping coping = cope_to(member.stick.frame, member.stick.piece.section, post, end);
        if (coping.missed || !coping.touching) {
            const Trouble trouble = coping.missed ? Trouble::round_post_missed : Trouble::cut_too_steep;
            findings_.push_back({trouble, place_, {coping.farthest, post.radius}, {}, -1, static_cast<int>(e)});
            return false;
        }
        slant = *coping.touching;
        member.copes[e] = coping.cope;
        if (thickness > 0) member.shortened[e] = thickness_along(member.stick.frame, *bare, inward, end, slant);
        return true;
    }

    /// The group's leg at that end where it reaches higher than the member's underside; nothing otherwise.
    LegBetween overlapping(Group group, End end, double underside) const {
        const LegBetween& leg = legs_[index_of(end)][index_of(group)];
        if (leg.thickness == 0) return {};
        const std::optional<double> foot = height_met(line_, end, levels_.underside(group)),
                                    own = height_met(line_, end, underside);
        if (!foot || !own) return {};
        return less_than(*own, *foot + leg.up) ? leg : LegBetween{};
    }

    const Levels& levels_;
    const RailLine& line_;
    double play_;
    const LegsBetween& legs_;
    Place place_;
    std::vector<Finding>& findings_;
};

}  // namespace

Levels levels_of(const Build& build, double height, const std::optional<LowerGap>& lower_gap, const RailLine& line) {
    const double lengthened = line.lengthened();
    Levels levels;
    levels.upper_top = height;
    levels.upper_underside = height - depth_of(build.upper) * lengthened;
    levels.has_lower = !build.lower.empty();
    if (!levels.has_lower) return levels;
    levels.lower_underside = lower_gap->size * (lower_gap->is_block ? lengthened : 1);
    levels.lower_top = levels.lower_underside + depth_of(build.lower) * lengthened;
    return levels;
}

std::vector<Member> members_of(const Build& build, const Levels& levels, const RailLine& line, double play,
                               const LegsBetween& legs, Place place, std::vector<Finding>& findings) {
    Cutting cutting(levels, line, play, legs, place, findings);
    std::vector<Member> members;
    members.reserve(build.upper.size() + build.lower.size());
    const auto add_group = [&](const std::vector<MemberSize>& sizes, Group group) {
        double underside = levels.top(group);
        for (const MemberSize& size : sizes) {
            underside -= size.depth * line.lengthened();
            const bool lowest = &size == &sizes.back();
            std::optional<Member> member =
                cutting.cut_member(size, group, lowest ? levels.underside(group) : underside);
            if (!member) return;
            members.push_back(std::move(*member));
        }
    };
    add_group(build.upper, Group::upper);
    add_group(build.lower, Group::lower);
    return members;
}

double reach(const Member& member, End end, Spot spot) {
    const Slant& slant = end == End::from ? member.stick.piece.from : member.stick.piece.to;
    if (!member.copes[index_of(end)]) return reach(slant, spot);
    const double beyond = outward_of(member, end, spot);
    return end == End::from ? slant.at - beyond : slant.at + beyond;
}

End hook_on(const Member& member, Spot face) {
    const auto is_short = [&](End end) {
        const Corner longest = long_point(member.stick.piece, end);
        return longest.top * face.top < 0 || longest.left * face.left < 0;
    };
    return is_short(End::from) && !is_short(End::to) ? End::to : End::from;
}

std::optional<double> height_met(const RailLine& line, End end, double above) {
    const std::optional<double> along = face_along(line, end, above);
    if (!along) return std::nullopt;
    return line.at(*along, above).z();
}

}  // namespace rakewright
