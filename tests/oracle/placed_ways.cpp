#include "placed_ways.hpp"

#include <algorithm>
#include <cmath>
#include <gp_Quaternion.hxx>

namespace rakewright::tests {
namespace {

double radians_of(const DrawnAngle& angle) {
    return angle.in_degrees ? angle.degrees * M_PI / 180 : std::atan2(angle.rise, angle.run);
}

gp_Trsf placed_by(const Plan& plan, const DrawnAngle& heading) {
    gp_Trsf turn, shift;
    turn.SetRotation(gp_Ax1(gp::Origin(), gp::DZ()), radians_of(heading));
    shift.SetTranslation(gp_Vec(plan.x, plan.y, plan.level));
    return shift * turn;
}

double inward(std::size_t end) { return end == 0 ? 1 : -1; }

double falls(const Floor& floor) { return floor.falls.angle.rise / floor.falls.angle.run; }

/// The side of a post's rectangle by which a level line leaves it that passes this point in this direction, as an
/// upright plane of the post before it is tipped, its normal looking out.
gp_Pln leaving_by(double half_along, double half_across, double x, double y, double dx, double dy) {
    const auto reached = [](double half, double at, double by) {
        return by == 0 ? INFINITY : (by > 0 ? half - at : -half - at) / by;
    };
    if (reached(half_along, x, dx) < reached(half_across, y, dy))
        return {gp_Pnt(dx > 0 ? half_along : -half_along, 0, 0), gp_Dir(dx, 0, 0)};
    return {gp_Pnt(0, dy > 0 ? half_across : -half_across, 0), gp_Dir(0, dy, 0)};
}

/// How far along its way a line so high over it meets what bounds it.
std::optional<double> met_along(const WayInPlan& way, const CutTo& what, std::size_t end, double above) {
    const gp_Pnt start = way.at(0, above);
    const gp_Vec along = way.rising();
    if (what.radius == 0) {
        const gp_Vec normal(what.plane.Axis().Direction());
        return gp_Vec(start, what.plane.Location()) * normal / (along * normal);
    }
    const gp_Vec axis(what.axis.Direction()), apart(what.axis.Location(), start);
    const gp_Vec d = along - axis * (along * axis), p = apart - axis * (apart * axis);
    const double a = d * d, b = p * d, room = b * b - a * (p * p - what.radius * what.radius);
    if (room < 0) return std::nullopt;
    return (-b + inward(end) * std::sqrt(room)) / a;
}

bool low_enough(const WayInPlan& way, std::size_t end, double above) {
    if (!way.posts[end].trimmed) return false;
    const std::optional<double> met = met_along(way, way.trims[end], end, above);
    return met && way.at(*met, above).Z() < way.posts[end].trim_up_to - 1e-9;  // what touches does not reach down
}

/// Whether a member's underside or top reaches down to the boards where they begin.
bool reaches_boards(const WayInPlan& way, std::size_t end, double underside, double depth) {
    return low_enough(way, end, underside) || low_enough(way, end, underside + depth * way.lengthened());
}

/// How far along its way a line so high over it meets the post, or the boards round the foot where they reach so high.
std::optional<double> face_along(const WayInPlan& way, std::size_t end, double above) {
    return met_along(way, low_enough(way, end, above) ? way.trims[end] : way.faces[end], end, above);
}

/// Whether a member that is cut to a post comes down into the boards round its foot on the way there, with its middle
/// or a side: it clears their outer edge and is lower at the post, or is lower at one side. Such a member has to be
/// notched, which is not reckoned.
bool sinks_into_boards(const WayInPlan& way, std::size_t end, double underside, double width) {
    if (!way.posts[end].trimmed) return false;
    for (const double side : {-0.5, 0.0, 0.5}) {
        WayInPlan arris = way;
        arris.origin.Translate(way.left() * (side * width));
        for (const CutTo& met : {way.faces[end], way.trims[end]}) {
            const std::optional<double> along = met_along(arris, met, end, underside);
            if (along && arris.at(*along, underside).Z() < way.posts[end].trim_up_to) return true;
        }
    }
    return false;
}

CutTo bound_by(const PostInPlan& post, const WayInPlan& way, std::size_t end, double half_along, double half_across) {
    CutTo face;
    if (post.joint) return face;
    if (post.round) {
        face.axis = gp_Ax1(post.foot, gp::DZ().Transformed(post.stands));
        face.radius = half_along;
        return face;
    }
    // Seen plumb from above, along the post's own axes before it was tipped.
    gp_Trsf tipped_back;
    tipped_back.SetRotation(gp_Quaternion(gp_Vec(gp::DZ().Transformed(post.stands)), gp_Vec(0, 0, 1)));
    const gp_Dir first = gp::DX().Transformed(post.stands).Transformed(tipped_back),
                 second = gp::DY().Transformed(post.stands).Transformed(tipped_back);
    const gp_Vec off(post.foot, way.at(way.centres[end], 0)), out = way.level * inward(end);
    face.plane = leaving_by(half_along, half_across, off * gp_Vec(first), off * gp_Vec(second), out * gp_Vec(first),
                            out * gp_Vec(second));
    face.plane.Transform(post.stands);
    return face;
}

}  // namespace

void CutTo::move(const gp_Vec& by) {
    plane.Translate(by);
    axis.Translate(by);
}

WaysInPlan::WaysInPlan(const DrawnPlacedJob& drawn, const Solution& solution) : drawn_(drawn), solution_(solution) {
    const Job& job = drawn.job;
    for (std::size_t i = 0; i < job.stairs.size(); ++i)
        stairs_.push_back(placed_by(*job.stairs[i].plan, drawn.stairs[i]));
    for (std::size_t i = 0; i < job.floors.size(); ++i)
        floors_.push_back(placed_by(*job.floors[i].plan, drawn.floors[i]));
    for (std::size_t i = 0; i < job.posts.size(); ++i) posts_.push_back(post_in_plan(i));
    for (std::size_t i = 0; i < job.sections.size(); ++i) ways_.push_back(way_between(i));
}

const gp_Trsf& WaysInPlan::placed(std::size_t section) const {
    const Section& asked = section_at(section);
    return asked.stair.named() ? stairs_[static_cast<std::size_t>(asked.stair.index)]
                               : floors_[static_cast<std::size_t>(asked.floor.index)];
}

PostInPlan WaysInPlan::post_in_plan(std::size_t index) const {
    const Post& post = drawn_.job.posts[index];
    const DrawnPost& angles = drawn_.posts[index];
    const double x = *post.at;
    double z = 0;
    if (post.floor.named()) {
        z = -falls(drawn_.job.floors[static_cast<std::size_t>(post.floor.index)]) * x;
    } else {
        const Stair& stair = drawn_.job.stairs[static_cast<std::size_t>(post.stair.index)];
        if (x >= 0) z = *stair.rise * std::min<double>(*stair.risers, std::floor(x / *stair.run) + 1);
    }
    gp_Trsf turn, tip, shift;
    turn.SetRotation(gp_Ax1(gp::Origin(), gp::DZ()), radians_of(angles.turn));
    tip.SetRotation(gp_Quaternion(gp_Vec(0, 0, 1),
                                  gp_Vec(std::tan(radians_of(angles.along)), std::tan(radians_of(angles.across)), 1)));
    shift.SetTranslation(gp_Vec(x, post.across, z));
    PostInPlan result;
    result.stands = (post.floor.named() ? floors_[static_cast<std::size_t>(post.floor.index)]
                                        : stairs_[static_cast<std::size_t>(post.stair.index)]) *
                    shift * tip * turn;
    result.foot = gp::Origin().Transformed(result.stands);
    result.half_along = post.size.along / 2;
    result.half_across = post.size.across / 2;
    result.round = post.shape == PostShape::round;
    result.joint = post.shape == PostShape::joint;
    if (!post.base_trim) return result;
    result.trimmed = true;
    result.trim_along = post.base_trim->size.front() / 2;
    result.trim_across = post.base_trim->size.back() / 2;
    result.trim_up_to = result.foot.Z() + post.base_trim->height;
    return result;
}

WayInPlan WaysInPlan::way_between(std::size_t index) const {
    const Section& section = section_at(index);
    WayInPlan way;
    way.posts = {posts_[static_cast<std::size_t>(section.from.index)],
                 posts_[static_cast<std::size_t>(section.to.index)]};
    const gp_Pnt &from = way.posts[0].foot, &to = way.posts[1].foot;
    const double x = to.X() - from.X(), y = to.Y() - from.Y();
    const double direction = std::atan2(y, x) + std::asin((section.offset.to - section.offset.from) / std::hypot(x, y));
    way.level = gp_Vec(std::cos(direction), std::sin(direction), 0);
    way.origin = from.Translated(way.left() * section.offset.from.value);
    way.centres[1] = gp_Vec(way.origin, to) * way.level;
    if (section.stair.named()) {
        const Stair& stair = drawn_.job.stairs[static_cast<std::size_t>(section.stair.index)];
        const gp_Trsf& axes = placed(index);
        const double rake = *stair.rise / *stair.run;
        way.slope = rake * (way.level * gp_Vec(gp::DX().Transformed(axes)));
        way.origin.SetZ(stair.plan->level + *stair.rise + rake * way.origin.Transformed(axes.Inverted()).X());
    } else {
        lay_over_floor(way, section);
    }
    for (const std::size_t end : {0u, 1u}) {
        const PostInPlan& post = way.posts[end];
        way.faces[end] = bound_by(post, way, end, post.half_along, post.half_across);
        if (!post.trimmed) continue;
        // The boards are met by the same side as the post.
        way.trims[end] = way.faces[end];
        if (post.round) {
            way.trims[end].radius = post.trim_along;
        } else {
            const gp_Vec normal(way.faces[end].plane.Axis().Direction());
            const bool along = std::fabs(normal * gp_Vec(gp::DX().Transformed(post.stands))) > 0.5;
            way.trims[end].move(normal *
                                (along ? post.trim_along - post.half_along : post.trim_across - post.half_across));
        }
    }
    if (section.clear) use_clear(way, index);
    return way;
}

/// Level, as high as the higher of the two spots of the floor where it passes the posts' centres; or as the floor.
void WaysInPlan::lay_over_floor(WayInPlan& way, const Section& section) const {
    const Floor& floor = drawn_.job.floors[static_cast<std::size_t>(section.floor.index)];
    const gp_Trsf& axes = floors_[static_cast<std::size_t>(section.floor.index)];
    const auto height = [&](double along) {
        const gp_Pnt spot = way.origin.Translated(way.level * along);
        return floor.plan->level - falls(floor) * spot.Transformed(axes.Inverted()).X();
    };
    const double at_from = height(0), at_to = height(way.centres[1]);
    if (section.follow == Follow::floor) way.slope = (at_to - at_from) / way.centres[1];
    way.origin.SetZ(section.follow == Follow::floor ? at_from : std::max(at_from, at_to));
}

/// Half-way up the pickets the faces are as far apart as was measured: the to post is moved.
void WaysInPlan::use_clear(WayInPlan& way, std::size_t index) const {
    const Levels heights = levels(way, section_at(index));
    const double middle = (heights.upper_underside + heights.lower_top) / 2;
    const double by = *section_at(index).clear - (*face_along(way, 1, middle) - *face_along(way, 0, middle));
    way.moved[1] = by;
    way.faces[1].move(way.level * by);
    way.trims[1].move(way.level * by);
    way.centres[1] += by;
}

WaysInPlan::Levels WaysInPlan::levels(const WayInPlan& way, const Section& section) const {
    const auto plumb = [&](double square) { return square / std::cos(std::atan(way.slope)); };
    double upper = 0, lower = 0;
    for (const MemberSize& size : build().upper) upper += size.depth;
    for (const MemberSize& size : build().lower) lower += size.depth;
    const double height = section.height ? *section.height : build().height;
    Levels heights{height, height - plumb(upper), 0, 0};
    if (build().lower.empty()) return heights;
    heights.lower_underside =
        build().lower_gap->is_block ? plumb(build().lower_gap->size) : build().lower_gap->size.value;
    heights.lower_top = heights.lower_underside + plumb(lower);
    return heights;
}

std::optional<WaysInPlan::Beyond> WaysInPlan::beyond(std::size_t section, std::size_t end) const {
    const Section& own = section_at(section);
    const int post = (end == 0 ? own.from : own.to).index;
    for (std::size_t s = 0; s < drawn_.job.sections.size(); ++s) {
        if (s == section) continue;
        if (section_at(s).from.index == post) return Beyond{s, 0};
        if (section_at(s).to.index == post) return Beyond{s, 1};
    }
    return std::nullopt;
}

/// In one plumb plane: through where the tops of the groups meet, and halving the bend there. Round a corner: plumb,
/// through the joint's place, halving the corner.
gp_Pln WaysInPlan::joint_plane(std::size_t section, std::size_t end, Group group) const {
    const Beyond other = *beyond(section, end);
    const WayInPlan &one = ways_[section], &two = ways_[other.section];
    const gp_Vec away = one.rising() * inward(end), on = two.rising() * inward(other.end);
    const gp_Vec level_away = one.level * inward(end), level_on = two.level * inward(other.end);
    if (level_away.CrossMagnitude(level_on) > 1e-12) return {one.posts[end].foot, gp_Dir(level_away - level_on)};
    const double top = levels(one, section_at(section)).top(group),
                 over = levels(two, section_at(other.section)).top(group);
    const gp_Pnt own = one.at(one.centres[end], top);
    const double apart = own.Z() - two.at(two.centres[other.end], over).Z();
    const double bend = away.Z() + on.Z();  // of both rails together, for each unit of level into this section
    const double back = std::fabs(apart) < 1e-11 || std::fabs(bend) < 1e-12 ? 0 : -apart / bend;
    return {own.Translated(away * back), gp_Dir(away.Normalized() - on.Normalized())};
}

CutTo WaysInPlan::at_face(std::size_t index, std::size_t end, Group group, double underside, double depth) const {
    const Section& section = section_at(index);
    const WayInPlan& way = ways_[index];
    const EndWish& wish = end == 0 ? section.ends.from : section.ends.to;
    const bool low = reaches_boards(way, end, underside, depth);
    CutTo cut = low ? way.trims[end] : way.faces[end];
    double thick = wish.meets == EndWish::Meets::pad ? wish.by.value : 0;
    const Leg leg = solution_.choices.sections[index].legs[end][index_of(group)];
    if (thick == 0 && build().bracket && build().bracket->post_seat == PostSeat::surface && leg == Leg::up) {
        const auto height = [&](double above) { return way.at(*face_along(way, end, above), above).Z(); };
        const double leg_top = height(levels(way, section).underside(group)) + build().bracket->post_leg;
        if (height(underside) < leg_top) thick = build().bracket->thickness;
    }
    gp_Vec normal(cut.plane.Axis().Direction());
    if (cut.radius > 0) {
        const double middle = underside + depth / 2 * way.lengthened();
        const gp_Vec off(cut.axis.Location(), way.at(*met_along(way, cut, end, middle), middle));
        normal = (off - gp_Vec(cut.axis.Direction()) * (off * gp_Vec(cut.axis.Direction()))).Normalized();
    }
    cut.move(normal * thick + way.level * (inward(end) * play(section) / 2));
    return cut;
}

CutTo WaysInPlan::cut_to(std::size_t index, std::size_t end, Group group, double underside, double depth) const {
    const Section& section = section_at(index);
    const WayInPlan& way = ways_[index];
    CutTo cut;
    if (way.posts[end].joint) {
        cut.plane = joint_plane(index, end, build().lower.empty() ? Group::upper : group);
        return cut;
    }
    const EndWish& wish = end == 0 ? section.ends.from : section.ends.to;
    const double in = inward(end), plumb_back = in * play(section) / 2;
    const double middle = underside + depth / 2 * way.lengthened();
    switch (wish.meets) {
        case EndWish::Meets::centre:
            cut.plane = {way.at(way.centres[end] + plumb_back, 0), gp_Dir(way.level * in)};
            return cut;
        case EndWish::Meets::over:
            if (group == Group::lower) break;
            [[fallthrough]];
        case EndWish::Meets::past:
            cut.plane = {way.at(way.centres[end] - in * wish.by + plumb_back, 0), gp_Dir(way.level * in)};
            return cut;
        case EndWish::Meets::square:
            cut.plane = {way.at(way.centres[end] + in * wish.by, middle), gp_Dir(way.rising() * in)};
            return cut;
        case EndWish::Meets::face:
        case EndWish::Meets::pad: break;
    }
    return at_face(index, end, group, underside, depth);
}

std::vector<LongMember> WaysInPlan::members(std::size_t index) const {
    const WayInPlan& way = ways_[index];
    const Levels heights = levels(way, section_at(index));
    std::vector<LongMember> members;
    for (const Group group : {Group::upper, Group::lower}) {
        double square = 0;  // under the group's top
        for (const MemberSize& size : group == Group::upper ? build().upper : build().lower) {
            square += size.depth;
            const double underside = heights.top(group) - square * way.lengthened();
            LongMember member;
            const double half = way.centres[1] / 2;
            member.axes = gp_Ax2(way.at(half, underside).Translated(way.top() * (size.depth / 2.0)),
                                 gp_Dir(way.rising()), gp_Dir(way.left()));
            member.length = 4 * way.centres[1] * way.lengthened();
            member.width = size.width;
            member.depth = size.depth;
            for (const std::size_t end : {0u, 1u}) {
                member.ends[end] = cut_to(index, end, group, underside, size.depth);
                const EndWish::Meets meets = (end == 0 ? section_at(index).ends.from : section_at(index).ends.to).meets;
                const bool notched = !reaches_boards(way, end, underside, size.depth) &&
                                     sinks_into_boards(way, end, underside, size.width);
                const bool to_face = meets == EndWish::Meets::face || meets == EndWish::Meets::pad ||
                                     (meets == EndWish::Meets::over && group == Group::lower);
                member.at_post[end] = !notched && to_face;
            }
            members.push_back(member);
        }
    }
    return members;
}

std::vector<MetInPlan> WaysInPlan::joints() const {
    std::vector<MetInPlan> met;
    for (std::size_t s = 0; s < ways_.size(); ++s)
        for (const std::size_t end : {0u, 1u}) {
            if (!ways_[s].posts[end].joint) continue;
            const Beyond other = *beyond(s, end);
            if (other.section < s) continue;
            bool closes = true;
            for (const Group group : {Group::upper, Group::lower}) {
                if (group == Group::lower && build().lower.empty()) continue;
                const gp_Pln plane = joint_plane(s, end, group),
                             from_other = joint_plane(other.section, other.end, group);
                const WayInPlan &one = ways_[s], &two = ways_[other.section];
                const gp_Ax2 between(plane.Location(), plane.Axis().Direction());
                const gp_Pnt top = one.at(one.centres[end], levels(one, section_at(s)).top(group)).Mirrored(between);
                const gp_Pnt line = two.at(two.centres[other.end], levels(two, section_at(other.section)).top(group));
                const gp_Vec along = two.rising().Normalized();
                closes = closes && gp_Vec(line, top).CrossMagnitude(along) < 1e-9 &&
                         one.rising().Normalized().Mirrored(between).CrossMagnitude(along) < 1e-12 &&
                         from_other.Distance(plane.Location()) < 1e-9;
            }
            met.push_back({end == 0 ? section_at(s).from.index : section_at(s).to.index, closes});
        }
    return met;
}

}  // namespace rakewright::tests
