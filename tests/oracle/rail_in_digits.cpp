#include "rail_in_digits.hpp"

namespace rakewright::tests {
namespace {

struct PostInDigits {
    Point foot;
    std::array<Point, 4> plan;     // corners about the foot, counter-clockwise from (uphill, right), plumb
    std::array<Point, 4> corners;  // the same on the post as it leans
    Point axis;
};

/// The shortest turn that takes plumb to `axis`, as two half turns: about plumb, then about what lies half-way.
Point leaned(const Point& v, const Point& axis) {
    const Point half = unit(axis + Point{0, 0, 1});
    const auto half_turn_about = [](const Point& w, const Point& u) { return (2 * dot(w, u)) * w - u; };
    return half_turn_about(half, half_turn_about({0, 0, 1}, v));
}

PostInDigits post_in_digits(const Post& post, const DrawnPost& angles, const StairInDigits& stair) {
    const Real half_along = exactly(post.size.along) / 2, half_across = exactly(post.size.across) / 2;
    const NosingInDigits& nosing =
        post.nosing.value == 0 ? stair.nosings.back() : stair.nosings[static_cast<std::size_t>(post.nosing.value - 1)];
    Real x = nosing.x + exactly(*post.at);
    if (post.face == PostFace::downhill) x += half_along;
    if (post.face == PostFace::uphill) x -= half_along;
    Real z = stair.tread_under(x);
    if (post.base.on == Base::On::tread) z = stair.tread(post.base.tread);
    if (post.base.on == Base::On::height) z = exactly(post.base.height);

    PostInDigits result;
    result.foot = {x, exactly(post.across), z};
    result.axis = unit({tan(radians(angles.along)), tan(radians(angles.across)), 1});
    const Real turn = radians(angles.turn), cosine = cos(turn), sine = sin(turn);
    constexpr int signs[4][2] = {{1, -1}, {1, 1}, {-1, 1}, {-1, -1}};
    for (std::size_t k = 0; k < 4; ++k) {
        const Real u = signs[k][0] * half_along, v = signs[k][1] * half_across;
        result.plan[k] = {u * cosine - v * sine, u * sine + v * cosine, 0};
        result.corners[k] = result.foot + leaned(result.plan[k], result.axis);
    }
    return result;
}

/// The face between the two corners between which a level direction leaves the post.
Facet face_left_by(const PostInDigits& post, const Point& direction) {
    for (std::size_t k = 0; k < 4; ++k) {
        const std::size_t next = (k + 1) % 4;
        if (cross(post.plan[k], direction).z < 0 || cross(direction, post.plan[next]).z <= 0) continue;
        return facet(post.corners[k], post.corners[next], post.corners[k] + post.axis);
    }
    throw std::logic_error("a direction that leaves no face");
}

WayInDigits with_left(WayInDigits way) {
    way.left = {-way.level.y, way.level.x, 0};
    return way;
}

WayInDigits over_a_distance(const Section& section, const StairInDigits& stair) {
    WayInDigits way;
    way.level = {1, 0, 0};
    way.way = {1, 0, section.stair.named() ? stair.slope : Real(0)};
    const Real clear = section.clear ? exactly(*section.clear) : exactly(*section.clear_on_slope) / way.lengthened();
    way.faces = {Facet{{0, 0, 0}, {1, 0, 0}}, Facet{{clear, 0, 0}, {-1, 0, 0}}};
    return with_left(way);
}

/// How far the cut stands along the stick over the four arrises.
std::array<Real, 4> stands(const std::array<Point, 4>& corners, const Point& axis) {
    std::array<Real, 4> along;
    for (std::size_t k = 0; k < 4; ++k) along[k] = dot(corners[k], axis);
    return along;
}

/// The swing of a trace off square across the face on which it lies, `axis` along that face.
Real off_square(const Point& a, const Point& b, const Point& axis) {
    const Point trace = b - a;
    const Real along = fabs(dot(trace, axis));
    return atan2(along, size(trace - dot(trace, axis) * axis));
}

/// How far a plane is tilted from square to a table.
Real tilt(const Facet& cut, const Point& table) { return fabs(half_turn() / 2 - angle_between(cut.normal, table)); }

}  // namespace

WayInDigits way_in_digits(const DrawnJob& drawn, const Section& section, const StairInDigits& stair) {
    const Job& job = drawn.job;
    if (!section.from.named() || !section.to.named()) return over_a_distance(section, stair);
    const auto post = [&](const Ref& ref) {
        const std::size_t index = static_cast<std::size_t>(ref.index);
        return post_in_digits(job.posts[index], drawn.posts[index], stair);
    };
    const PostInDigits from = post(section.from), to = post(section.to);
    WayInDigits way;
    way.level = unit({to.foot.x - from.foot.x, to.foot.y - from.foot.y, 0});
    way.way = way.level + Point{0, 0, way.level.x * stair.slope};
    way.origin = {from.foot.x, from.foot.y, stair.line_at(from.foot.x)};
    way.faces = {face_left_by(from, way.level), face_left_by(to, Real(-1) * way.level)};
    way.surfaces = {from.foot.z, to.foot.z};
    return with_left(way);
}

MemberInDigits member_in_digits(const WayInDigits& way, const CrossSection& section, const Real& underside,
                                const std::array<TakenOff, 2>& off, const Corner& set_out) {
    const Real half_width = exactly(section.width) / 2, plumb = exactly(section.depth) * way.lengthened();
    const Point axis = unit(way.way);
    const Point top_square = cross(axis, way.left);
    // A line along the member, so far left of its middle and so high, plumb, over the nosing line.
    const auto line_start = [&](const Real& left, const Real& above) { return way.at(0, above) + left * way.left; };
    const auto spot_start = [&](int left, int top) {
        return line_start(left * half_width, underside + (exactly(top) + 1) / 2 * plumb);
    };
    constexpr int spots[4][2] = {{1, 1}, {-1, 1}, {1, -1}, {-1, -1}};

    MemberInDigits member;
    std::array<Point, 2> centre, set;
    Real lowest = 0, highest = 0;
    for (std::size_t e = 0; e < 2; ++e) {
        Facet cut = way.faces[e];
        cut.through = cut.through + ((e == 0 ? 1 : -1) * off[e].level) * way.level + off[e].square * cut.normal;
        const auto ends_at = [&](int left, int top) { return meeting(spot_start(left, top), way.way, cut); };
        for (std::size_t k = 0; k < 4; ++k) member.corners[e][k] = ends_at(spots[k][0], spots[k][1]);
        centre[e] = ends_at(0, 0);
        member.over[e] = ends_at(0, 1);
        member.under[e] = ends_at(0, -1);
        set[e] = ends_at(set_out.left, set_out.top);
        const std::array<Point, 4>& corner = member.corners[e];
        const std::array<Real, 4> along = stands(corner, axis);
        const Real outward = e == 0 ? -1 : 1;
        member.ends[e] = {off_square(corner[2], corner[3], axis), tilt(cut, top_square),
                          off_square(corner[0], corner[2], axis), tilt(cut, way.left),
                          outward * (along[0] - along[1]),        outward * (along[0] - along[2])};
        for (std::size_t k = 0; k < 4; ++k) {
            lowest = e == 0 && k == 0 ? along[k] : fmin(lowest, along[k]);
            highest = e == 0 && k == 0 ? along[k] : fmax(highest, along[k]);
        }
    }
    member.length = apart(centre[0], centre[1]);
    member.top_edge = apart(member.over[0], member.over[1]);
    member.bottom_edge = apart(member.under[0], member.under[1]);
    member.set_out = apart(set[0], set[1]);
    member.overall = highest - lowest;
    return member;
}

Real included_angle(const WayInDigits& way, std::size_t end, Leg leg) {
    const Facet& face = way.faces[end];
    const Point top = cross(unit(way.way), way.left);
    const Point trace = unit(cross(face.normal, top));
    const auto square_to_trace = [&](const Point& v) { return v - dot(v, trace) * trace; };
    const Point inward = (end == 0 ? Real(1) : Real(-1)) * way.way;
    // Up the face: plumb, laid square to the trace within the face.
    const Point up = cross(face.normal, trace);
    const Point plumb = up.z > 0 ? up : Real(-1) * up;
    return angle_between(square_to_trace(inward), leg == Leg::up ? plumb : Real(-1) * plumb);
}

}  // namespace rakewright::tests
