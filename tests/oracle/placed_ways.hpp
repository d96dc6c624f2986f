#pragma once

#include <array>
#include <gp_Ax1.hxx>
#include <gp_Ax2.hxx>
#include <gp_Pln.hxx>
#include <gp_Trsf.hxx>
#include <gp_Vec.hxx>
#include <optional>
#include <vector>

#include "../../solver/solution.hpp"
#include "../support/random_placed_job.hpp"

// Where the rails of a placed job go and what their members end at, worked out in the plan of the job from what was
// drawn: the stairs are even, so that their nosing lines follow from rise and run. Of the solution only which way the
// legs of brackets are turned is taken.

namespace rakewright::tests {

/// What a member is cut to: a plane whose normal looks into the section, or a cylinder.
struct CutTo {
    gp_Pln plane;
    gp_Ax1 axis;
    double radius = 0;  // 0: the plane
    void move(const gp_Vec& by);
};

/// A post in plan: from its own axes, its foot at their origin, to the plan; half its sizes; its boards.
struct PostInPlan {
    gp_Trsf stands;
    gp_Pnt foot;
    double half_along = 0, half_across = 0, trim_along = 0, trim_across = 0, trim_up_to = 0;
    bool round = false, joint = false, trimmed = false;
};

/// A rail's way in plan: from a point of the nosing line or floor, where it passes the from post's centre.
struct WayInPlan {
    gp_Pnt origin;
    gp_Vec level;  // unit
    double slope = 0;
    std::array<double, 2> centres{};
    std::array<PostInPlan, 2> posts;
    std::array<CutTo, 2> faces, trims;
    std::array<double, 2> moved{};  // how far the posts are moved along it by a clear distance

    gp_Vec rising() const { return level + gp_Vec(0, 0, slope); }
    gp_Vec left() const { return gp_Vec(0, 0, 1).Crossed(level); }
    gp_Vec top() const { return rising().Crossed(left()).Normalized(); }
    double lengthened() const { return rising().Magnitude(); }
    gp_Pnt at(double along, double above) const { return origin.Translated(rising() * along + gp_Vec(0, 0, above)); }
};

/// A member before it is cut: about these axes, the main one along it, the first to its left.
struct LongMember {
    gp_Ax2 axes;
    double length = 0, width = 0, depth = 0;
    std::array<CutTo, 2> ends;
    std::array<bool, 2> at_post{};  // whether it ends beside the post and its boards, and not in them or past them
};

/// Two ends that meet at a joint, and whether the one rail is the other's image in the plane between them: then they
/// close, and not otherwise.
struct MetInPlan {
    int post = 0;
    bool closes = false;
};

class WaysInPlan {
 public:
    WaysInPlan(const DrawnPlacedJob& drawn, const Solution& solution);

    const std::vector<PostInPlan>& posts() const { return posts_; }
    const WayInPlan& way(std::size_t section) const { return ways_[section]; }
    /// The members of a section, in the solver's order.
    std::vector<LongMember> members(std::size_t section) const;
    std::vector<MetInPlan> joints() const;
    /// From the axes that a section is solved in to the plan.
    const gp_Trsf& placed(std::size_t section) const;

 private:
    struct Levels {
        double upper_top = 0, upper_underside = 0, lower_top = 0, lower_underside = 0;
        double top(Group group) const { return group == Group::upper ? upper_top : lower_top; }
        double underside(Group group) const { return group == Group::upper ? upper_underside : lower_underside; }
    };
    struct Beyond {
        std::size_t section;
        std::size_t end;
    };

    PostInPlan post_in_plan(std::size_t index) const;
    WayInPlan way_between(std::size_t section) const;
    void lay_over_floor(WayInPlan& way, const Section& section) const;
    void use_clear(WayInPlan& way, std::size_t section) const;
    Levels levels(const WayInPlan& way, const Section& section) const;
    CutTo cut_to(std::size_t section, std::size_t end, Group group, double underside, double depth) const;
    CutTo at_face(std::size_t section, std::size_t end, Group group, double underside, double depth) const;
    gp_Pln joint_plane(std::size_t section, std::size_t end, Group group) const;
    std::optional<Beyond> beyond(std::size_t section, std::size_t end) const;
    const Build& build() const { return drawn_.job.builds[0]; }
    const Section& section_at(std::size_t index) const { return drawn_.job.sections[index]; }
    double play(const Section& section) const { return section.play ? *section.play : build().play; }

    const DrawnPlacedJob& drawn_;
    const Solution& solution_;
    std::vector<gp_Trsf> stairs_, floors_;
    std::vector<PostInPlan> posts_;
    std::vector<WayInPlan> ways_;
};

}  // namespace rakewright::tests
