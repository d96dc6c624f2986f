#pragma once

#include <array>

#include "../space/stick.hpp"
#include "post.hpp"

namespace rakewright {

enum class Group { upper, lower };

inline constexpr std::array<Group, 2> both_groups{Group::upper, Group::lower};

/// The group's place in whatever is kept for both: the upper first.
constexpr std::size_t index_of(Group group) { return group == Group::upper ? 0 : 1; }

/// The floor under a section, plumb over its line's origin: as high as that at `high` along, and rising so much for
/// each unit of level from there.
struct FloorUnder {
    double high = 0;
    double slope = 0;
    double at(double along) const { return slope * (along - high); }
};

/// What a rail meets at one end: a plane, its normal looking into the section; or a round post, the plane being then
/// the one that touches it where the rail's middle line meets it.
struct Meeting {
    Plane plane;
    Shaft round;
    bool is_round() const { return round.radius > 0; }
};

/// The boards round a post's foot as a rail meets them, up to a height in the line's axes; none where that is 0 or
/// less than the foot.
struct TrimMet {
    Meeting face;
    double up_to = -INFINITY;
    bool there() const { return up_to > -INFINITY; }
};

/// How members end that do not end at what the line meets there.
struct RailEnd {
    enum class Kind { at_face, in_planes, square, over };
    Kind kind = Kind::at_face;
    std::array<Plane, 2> planes{};  // by group, looking into the section
    double along = 0;               // of a square end: where it stands along the line, on each member's centre line
    double pad = 0;                 // of what lies on the face: how thick it is

    /// Whether members of a group end at what the line meets: over a post the lower group does.
    bool at_face(Group group) const {
        return kind == Kind::at_face || (kind == Kind::over && group == Group::lower);
    }
    /// Whether a bracket of that group can stand there.
    bool at_bare_face(Group group) const { return at_face(group) && pad == 0; }
};

/// The way a section's rail goes: a plumb plane through the centres of its posts' feet, or beside them, the nosing line
/// or floor as it runs in that plane, and the post faces that bound it. Places along it are level distances from its
/// origin, along (x, y), which is where it passes the centre of the from post's foot, or that post's face where only
/// the clear distance is known. `above` is always plumb over the nosing line or floor.
struct RailLine {
    Vector origin = Vector::Zero();  // on the nosing line or floor
    double x = 1, y = 0;             // the level unit direction from the from end to the to end
    double slope = 0;                // rise for each unit of level
    Plane from, to;                  // normals looking into the section
    FloorUnder floor{};              // where the section is over a floor and not over treads
    // Round posts; `from` and `to` are then the planes that touch them where the rail's middle line meets them.
    std::array<Shaft, 2> rounds{};
    std::array<TrimMet, 2> trims{};
    std::array<double, 2> centres{};  // where along it passes the posts' centres
    std::array<RailEnd, 2> ends{};
    std::array<bool, 2> joints{};  // where there is no post

    const RailEnd& end_of(End end) const { return ends[index_of(end)]; }
    bool is_joint(End end) const { return joints[index_of(end)]; }
    const Plane& face(End end) const { return end == End::from ? from : to; }
    const Shaft& round(End end) const { return rounds[index_of(end)]; }
    const TrimMet& trim(End end) const { return trims[index_of(end)]; }
    bool is_round(End end) const { return round(end).radius > 0; }
    Vector at(double along, double above = 0) const {
        return origin + Vector(along * x, along * y, along * slope + above);
    }
    double floor_height(double along) const { return origin.z() + floor.at(along); }
    /// Length along the slope, or plumb of what is square to it, for each unit of level or square.
    double lengthened() const;
};

/// Two faces, at the from end and at the to end.
using FacesMet = std::array<Face, 2>;

/// How far the line passes to the left of the posts' centres, at the from end and at the to end.
using Offsets = std::array<double, 2>;

/// The level unit direction of a rail that passes two posts' centres so far to the left of them.
struct LevelWay {
    double x = 1, y = 0;
};

/// None where the posts stand on one another, or too near each other for the line to pass them so.
std::optional<LevelWay> way_between(const StandingPost& from, const StandingPost& to, const Offsets& beside);

/// Whether a rail between two posts runs straight across their stair.
bool straight_across(const StandingPost& from, const StandingPost& to, const Offsets& beside);

/// The way of a rail between two posts over a nosing line, or a level floor.
RailLine line_between(const StandingPost& from, const StandingPost& to, const LevelWay& way, const Offsets& beside,
                      const FacesMet& faces, const NosingLine& nosings);

/// A post that has no place: half its size along the rail, its radius if it is round, and the boards round its foot.
struct PlacelessPost {
    double half_along = 0;
    double radius = 0;
    std::optional<TrimmedFoot> trim;
};

/// The way of a rail of which only the level clear distance is known: plumb faces that look along it, and the nosing
/// line or floor that it follows as it runs from the first nosing. Round posts stand plumb, the clear distance between
/// their surfaces on the line. The boards round their feet stand on the floor, over a slope they are left out.
RailLine line_over(double clear, const NosingLine& nosings, const std::array<PlacelessPost, 2>& posts = {},
                   const Offsets& beside = {});

/// Lays the faces of posts that have no place through two clear distances, taken at two heights over the line; the line
/// has the mean of them.
void lean_faces(RailLine& line, const ClearTwice& clear, double low, double high);

/// Moves what an end meets so far along the line.
void move_end(RailLine& line, End end, double by);

/// How far along the line what it meets at that end stands, at a height over it; none where the face runs along the
/// rail, or the line misses a round post.
std::optional<double> face_along(const RailLine& line, End end, double above);

/// The plane to which a rail is cut that meets the post at a height over the line: its face, or the plane that touches
/// a round post where the middle line meets it. None where face_along has none.
std::optional<Plane> face_at(const RailLine& line, End end, double above);

/// What a member meets whose underside and top stand so high over the line: the boards round the post's foot if it
/// reaches down to them, else the post.
Meeting met_between(const RailLine& line, End end, double underside, double top);

/// How far a rail whose underside stands so high over the line sinks into the boards round a post's foot, plumb at the
/// post: one that clears their outer edge, is cut to the post, and is lower there. 0 where it does not.
double sinks_into_trim(const RailLine& line, End end, double underside);

/// The plane of a meeting for a middle line at that height; none where it cannot be cut to it.
std::optional<Plane> plane_met(const RailLine& line, const Meeting& meeting, End end, double above);

/// How far from a round post's axis the middle line at a height over the line passes.
double off_axis(const RailLine& line, End end, double above);

/// Lays the planes of round posts where the middle line at this height meets them; left as they are where it misses.
void touch_round_posts(RailLine& line, double above);

}  // namespace rakewright
