#pragma once

#include "bracket/driving.hpp"
#include "opening/opening.hpp"
#include "picket/rail_foot.hpp"
#include "rail/joint.hpp"
#include "rule/opening_limits.hpp"
#include "screw/pilot.hpp"

namespace rakewright {

/// What is decided in a section before anything is measured: the faces that the rail meets, which way each bracket's
/// leg is turned (by end, then by group), how many pickets stand between two groups or on a floor and how far apart,
/// and how many on each tread.
struct SectionChoices {
    FacesMet faces{};
    std::array<std::array<Leg, 2>, 2> legs{};
    int pickets = 0;
    std::optional<double> between;  // the gap between two pickets, where it is not the one at the posts too
    int per_tread = 0;
    std::optional<double> lower_gap;  // of one that is left to the rules, plumb
};

/// A group's underside and top, plumb above something.
struct GroupHeights {
    double underside = 0;
    double top = 0;
};

/// The rail over one nosing that it passes: its groups, plumb above that nosing.
struct OverNosing {
    int nosing = 0;
    GroupHeights upper;
    std::optional<GroupHeights> lower;
};

/// The two diagonals of a panel, between the edges of its rails that face each other, at the middle of their thickness:
/// from the lower rail's from end up to the upper rail's to end, and from its to end up to the upper rail's from end.
struct Diagonals {
    double from_foot = 0;
    double to_foot = 0;
};

/// Where the rail's groups meet the post at one end, plumb above the surface that it stands on; none where that is not
/// known.
struct EndHeights {
    std::optional<GroupHeights> upper, lower;
};

/// What a bracket asks of post and rail: its seats, and, where its leg under the rail has holes, how its screws are
/// driven.
struct Fixing {
    Seat seat;
    std::optional<Driving> driving;
};

/// A joint that screws hold, in the order of their keys.
enum class Joint { picket_to_upper, picket_to_lower, between_members, apron_to_lower, post_leg, rail_leg };
inline constexpr std::array every_joint{Joint::picket_to_upper, Joint::picket_to_lower, Joint::between_members,
                                        Joint::apron_to_lower,  Joint::post_leg,        Joint::rail_leg};

/// Where the screws of a row stand: along the middle of the face that their heads lie on, from its edge at the end
/// where a tape can be hooked; and the two members, first the one that the heads lie on.
struct RowMarks {
    End hook = End::from;
    std::vector<double> places;
    std::array<std::string, 2> members;
};

/// A screw of a joint: of which group; of a bracket's at which end and at which of its holes, from 1 (else 0); how many
/// alike stand side by side. Of screws that are alike it is the one that holds least, and of their distances to ends and
/// edges the least.
struct JointScrew {
    Joint joint = Joint::picket_to_upper;
    Group group = Group::upper;
    std::optional<End> end;
    int hole = 0;
    int count = 1;
    double length = 0, diameter = 0;
    ScrewHold hold;
    std::optional<RowMarks> row = std::nullopt;  // of screws between members: where each stands
    std::vector<Pilot> pilots = {};              // of each thing that it passes
};

/// A screw that is in a post: from where it enters wood, how long in it, how deep behind the post's face its point is,
/// and how high it enters above what the post stands on; none where that is not known.
struct PostScrew {
    End end = End::from;
    ScrewWay way;
    double inside = 0, deep = 0, diameter = 0;
    std::optional<double> height;
};

/// A section, solved. Lengths in the job's unit, `slope` signed from the from end to the to end.
struct SectionResult {
    double slope = 0;
    double clear = 0, clear_on_slope = 0;
    std::optional<double> floor_falls;  // across the clear, plumb, where it does
    std::vector<Member> members;
    std::optional<Pickets> pickets;
    std::vector<RailFoot> feet;
    std::vector<Bracket> brackets;
    std::vector<Fixing> fixings;  // of each bracket
    std::vector<JointScrew> screws;
    std::vector<PostScrew> post_screws;
    std::vector<OverNosing> over_nosings;
    std::optional<Diagonals> diagonals;
    std::vector<Opening> openings;    // where they were measured
    std::optional<double> lower_gap;  // chosen by the rules
    std::array<EndHeights, 2> ends;
    std::array<std::optional<RailJoint>, 2> joints;

    bool raked() const { return slope != 0; }
};

/// What a section stands between: its stair, if it is over one, its posts, if both have a place, and the floor that it
/// names.
struct Surroundings {
    const StairShape* stair = nullptr;
    std::optional<StandingPost> from, to;  // both or none, in the axes of the stair or floor
    const Floor* floor = nullptr;          // that it names, or is over
    bool on_floor = false;                 // the axes are the floor's own
    bool closed_string = false;            // whether the stair's string on its side is closed
    std::optional<Reading> string_above;   // the top of that string, plumb above the nosing line
    std::array<PlacelessPost, 2> posts{};  // where the posts have no place
    std::array<bool, 2> tapered{};  // posts without a place: that is left out
    Offsets beside{};
    std::array<std::optional<RailBeyond>, 2> joints{};  // what it meets where there is no post
    std::array<double, 2> post_sizes{};  // of square posts without a place: the smaller; 0 where it is not known
    /// The treads that it is over; none over a floor.
    const StairShape* treads() const { return floor ? nullptr : stair; }
    bool placed() const { return from.has_value(); }
    /// Whether it runs up its stair, and not straight across it.
    bool raked() const { return stair && !(placed() && straight_across(*from, *to, beside)); }
    /// How much the floor falls along its own first axis, as a slope.
    double fall_of_axes() const {
        return on_floor && floor->toward == Toward::heading ? slope(floor->falls.angle) : 0;
    }
};

/// Everything about a section but its surroundings, as it was asked for: its build with what it restates.
struct SectionTask {
    const Section& section;
    const Build& build;
    Tape tape;
    OpeningLimits limits;
    std::optional<CentreWish> centre;  // of its pickets: its own, or the job's
    double height() const { return section.height ? *section.height : build.height; }
    double play() const { return section.play ? *section.play : build.play; }
    std::optional<PicketLimit> picket_limit() const { return limit_of(section, *build.pickets); }
    const std::optional<LowerGap>& lower_gap() const { return section.lower_gap ? section.lower_gap : build.lower_gap; }
    /// The same, with one that is left to the rules as it was chosen.
    std::optional<LowerGap> lower_gap(const SectionChoices& choices) const {
        if (choices.lower_gap) return LowerGap{*choices.lower_gap};
        return lower_gap();
    }
};

/// Decides what is to be decided in a section; none if it cannot be built, with what is wrong in `findings`.
std::optional<SectionChoices> decide(const SectionTask& task, const Surroundings& around,
                                     std::vector<Finding>& findings);

/// Measures a section with these choices made.
SectionResult measure(const SectionTask& task, const Surroundings& around, const SectionChoices& choices,
                      std::vector<Finding>& findings);

/// Measures the openings of a section with these choices made, and these feet under it.
std::vector<Opening> openings_in(const SectionTask& task, const Surroundings& around, const SectionChoices& choices,
                                 const std::vector<RailFoot>& feet);

}  // namespace rakewright
