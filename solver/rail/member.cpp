#include "member.hpp"

#include "../measure/compare.hpp"

namespace rakewright {
namespace {

double depth_of(const std::vector<MemberSize>& members) {
    double depth = 0;
    for (const MemberSize& member : members) depth += member.depth;
    return depth;
}

/// The plane that cuts a member at one end.
Plane cutting_plane(const RailLine& line, End end, double play, double thickness) {
    const Plane& face = line.face(end);
    const double inward = end == End::from ? play / 2 : -play / 2;
    return {face.point + inward * Vector(line.x, line.y, 0) + thickness * face.normal, face.normal};
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
        if (const double shortest = shortest_arris(piece); !no_more_than(0, shortest, rakewright::length(piece))) {
            findings_.push_back({Trouble::no_length_left, place_, {shortest}, {}});
            return std::nullopt;
        }
        member.length = rakewright::length(piece);
        member.top_edge = edge_length(piece, {0, 1});
        member.bottom_edge = edge_length(piece, {0, -1});
        member.overall = rakewright::overall(piece);
        member.from_end = end_cut(piece, End::from);
        member.to_end = end_cut(piece, End::to);
        member.measure = set_out(piece);
        return member;
    }

 private:
    bool trim(Member& member, End end, double underside, Slant& slant) {
        const std::size_t e = end == End::from ? 0 : 1;
        const LegBetween leg = overlapping(member.group, end, underside);
        const std::optional<Slant> cut_there = cut(member.stick.frame, cutting_plane(line_, end, play_, leg.thickness));
        if (!cut_there) {
            findings_.push_back({Trouble::cut_too_steep, place_, {}, {}, -1, static_cast<int>(e)});
            return false;
        }
        slant = *cut_there;
        if (leg.thickness > 0) {
            const double bare = cut(member.stick.frame, cutting_plane(line_, end, play_, 0))->at;
            member.shortened[e] = end == End::from ? slant.at - bare : bare - slant.at;
        }
        return true;
    }

    /// The group's leg at that end where it reaches higher than the member's underside; nothing otherwise.
    LegBetween overlapping(Group group, End end, double underside) const {
        const LegBetween& leg = legs_[end == End::from ? 0 : 1][group == Group::upper ? 0 : 1];
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

std::optional<double> height_met(const RailLine& line, End end, double above) {
    const std::optional<double> along = face_along(line, end, above);
    if (!along) return std::nullopt;
    return line.at(*along, above).z();
}

}  // namespace rakewright
