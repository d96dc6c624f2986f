#pragma once

#include <cmath>

#include "handrail/handrail.hpp"
#include "section.hpp"
#include "stock/stock.hpp"

namespace rakewright {

/// A rail that meets a post: which section, which of its ends, which group, and where, plumb above the surface that the
/// post stands on.
struct RailAtPost {
    int section = 0;
    End end = End::from;
    Group group = Group::upper;
    GroupHeights heights;
};

/// An end of a section.
struct SectionEnd {
    int section = 0;
    End end = End::from;
};

/// Two members that meet at a joint, by their numbers in their sections.
struct MembersMet {
    std::size_t first = 0, second = 0;
    std::array<CornerMet, 4> corners;

    /// How far apart their arrises end, at most.
    double apart() const;
};

/// How two sections meet without a post.
struct JointResult {
    SectionEnd first, second;
    bool straight = false;  // in one plumb plane
    double moved = 0;       // how far along the first rail, past the joint's place, the tops of the upper groups meet
    std::vector<MembersMet> members;
};

/// How rails of more than one section arrive at a post: what of its height their groups take up, above the surface that
/// it stands on, so long must the square block of a turned newel be; and where a raked rail and a level one come together.
struct Arrivals {
    GroupHeights upper;
    std::optional<GroupHeights> lower;
    double apart = 0;                // of the tops of the upper groups, the highest over the lowest
    std::optional<double> set_back;  // level, past the stair's last nosing, or before its first one negative
};

/// What a rail that runs over a post leaves of it: how far up the post, along its axis from its foot, the rail's
/// underside lies on the rail's line at the face that looks into the section, at the post's axis, and where the line
/// leaves it on the other side; and the cut across the post, that lies on the saw with its own second axis up.
struct PostTop {
    SectionEnd under;
    double near = 0, centre = 0;
    std::optional<double> far;  // none where the line leaves the post by a corner
    double overall = 0;         // to the highest corner of the post
    SawSetting cut;
};

/// A hole of a post's base plate, in the axes of what the post stands on, and in plan where that has one.
struct PlateHole {
    Vector at;
    std::optional<Vector> in_plan;
};

/// The parts of a threaded rod, each along it.
struct RodLength {
    double below = 0, floor = 0, plate = 0, post = 0, channel = 0, washer = 0, nut = 0, spare = 0;

    double whole() const { return below + floor + plate + post + channel + washer + nut + spare; }
};

/// What a level push at the top of the highest rail pulls a bolt of the plate with: `arm` from the plate's edge.
struct BoltPull {
    double arm = 0;
    double pull = 0;  // lbf, or kN where the job is in mm
};

/// How a post is fixed, in figures, for information: none of them is held against any strength.
struct FixedPost {
    double load = 0;    // lbf, or kN
    double moment = 0;  // in-lbf, or kN m
    std::optional<BoltPull> along, across;
};

/// A post, solved: how it stands, none where it has no place, and every rail that meets it, in the order of the
/// sections.
struct PostResult {
    std::optional<StandingPost> standing;
    std::optional<Vector> in_plan;  // the centre of its foot, where its stair or floor has a plan
    std::vector<RailAtPost> rails;
    std::optional<JointResult> joint;  // where there is no post
    std::optional<Arrivals> arrivals;  // where there is a post, and rails of more than one section meet it
    std::vector<PostTop> tops;         // where rails run over it
    std::optional<double> height;      // of its top above what it stands on, plumb, on its axis
    std::optional<double> length;      // of the post along its axis, less its plate
    std::optional<double> stick;       // the shortest square-topped post that it comes from, likewise
    std::vector<PlateHole> holes;
    std::optional<RodLength> rod;
    std::optional<FixedPost> fixed;

    /// The highest top of the rails that meet it, above what it stands on; none where that is not known.
    std::optional<double> highest_rail() const;

    /// Height of the surface that it stands on above its stair's floor, or its floor's origin.
    std::optional<double> base() const { return standing ? std::optional(standing->foot.z()) : std::nullopt; }
};

/// From the least to the most of some lengths; none where there is none.
struct LengthRange {
    std::optional<double> least, most;
    void take(double length) {
        least = least ? std::fmin(*least, length) : length;
        most = most ? std::fmax(*most, length) : length;
    }
};

/// How a section comes out of one way of spacing the job: `gap` between two pickets, `end` at each post, and how far
/// the wider of them stays below its limit, where that is one on gaps.
struct SpacedResult {
    int section = 0;
    int pickets = 0;
    std::optional<double> gap;
    double end = 0;
    std::optional<double> below;
};

/// One way of spacing the pickets of the whole job, and what comes of it; `without` is a section that cannot be spaced
/// so: then nothing does. Sections that need no picket are left out.
struct SpacingChoice {
    Spacing::By by = Spacing::By::fewest;
    std::optional<Centre> centre;  // of every section that asks for none itself
    bool taken = false;
    std::optional<double> block;
    std::optional<int> without;
    std::vector<SpacedResult> sections;
    LengthRange gaps, ends, all;
    int pickets = 0;  // in all

    double spread() const { return all.most ? *all.most - *all.least : 0; }
};

/// Everything that was decided, in the order of the job: `solve` takes it back.
struct Choices {
    std::vector<LineHolders> lines;
    std::vector<SectionChoices> sections;
};

/// What came out, each list in the order of the job's. A job is refused if one of the findings refuses it; its results
/// are then not to be used.
struct Solution {
    std::vector<StairShape> stairs;
    std::vector<PostResult> posts;
    std::vector<SectionResult> sections;
    std::vector<HandrailResult> handrails;
    std::vector<StockResult> stock;       // none until plan_stock
    std::vector<SpacingChoice> spacings;  // none until compare_spacings
    Choices choices;
    std::vector<Finding> findings;

    bool refused() const;
};

}  // namespace rakewright
