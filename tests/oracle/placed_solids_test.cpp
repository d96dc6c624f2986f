#include <algorithm>
#include <cmath>
#include <string>

#include "../../solver/solve.hpp"
#include "../support/catch.hpp"
#include "../support/near.hpp"
#include "placed_ways.hpp"
#include "solid.hpp"

// Placed jobs as solids in the plan of the job: posts as prisms and cylinders turned and tipped, members as boxes long
// enough, cut by what they end at. Then the solver's members, carried to the plan, have the same corners, edges and
// volume; and put together, no two pieces are in one place.

namespace rakewright::tests {
namespace {

using Solids = std::vector<TopoDS_Shape>;

gp_Pnt point(const Vector& v) { return {v.x(), v.y(), v.z()}; }

double nearest(const std::vector<gp_Pnt>& corners, const gp_Pnt& wanted) {
    double least = INFINITY;
    for (const gp_Pnt& corner : corners) least = std::min(least, corner.Distance(wanted));
    return least;
}

TopoDS_Shape cut_solid(const LongMember& member) {
    TopoDS_Shape solid = long_box(member.axes, member.length, member.width, member.depth);
    for (std::size_t end = 0; end < 2; ++end) {
        const CutTo& cut = member.ends[end];
        const gp_Vec into = gp_Vec(member.axes.Direction()) * (end == 0 ? 1 : -1);
        solid = cut.radius > 0 ? hollowed(solid, cut.axis, cut.radius, into, member.length + 1000 * cut.radius)
                               : trimmed(solid, cut.plane);
    }
    return solid;
}

/// A coped member's volume by the solver's own ends, summed over its section by Gauss's rule of five points on strips.
double volume_of(const Member& member) {
    constexpr double at[] = {0, 0.5384693101056831, -0.5384693101056831, 0.9061798459386640, -0.9061798459386640};
    constexpr double weight[] = {0.5688888888888889, 0.4786286704993665, 0.4786286704993665, 0.2369268850561891,
                                 0.2369268850561891};
    constexpr int strips = 40;
    const double wide = member.width / strips, deep = member.depth / 4;
    double sum = 0;
    for (int i = 0; i < strips; ++i)
        for (int j = 0; j < 4; ++j)
            for (std::size_t g = 0; g < 5; ++g)
                for (std::size_t h = 0; h < 5; ++h) {
                    const Spot spot{(i + 0.5) * wide - member.width / 2 + at[g] * wide / 2,
                                    (j + 0.5) * deep - member.depth / 2 + at[h] * deep / 2};
                    sum += weight[g] * weight[h] * (reach(member, End::to, spot) - reach(member, End::from, spot));
                }
    return sum * wide * deep / 4;
}

struct Tally {
    int jobs = 0, members = 0, coped = 0, pairs = 0, joints = 0, closed = 0;
};

class Checking {
 public:
    Checking(const DrawnPlacedJob& drawn, const Solution& solution, Tally& tally)
        : drawn_(drawn), solution_(solution), ways_(drawn, solution), tally_(tally) {}

    void members() {
        for (std::size_t s = 0; s < drawn_.job.sections.size(); ++s) {
            const std::vector<LongMember> asked = ways_.members(s);
            const std::vector<Member>& got = solution_.sections[s].members;
            REQUIRE(asked.size() == got.size());
            solids_.emplace_back();
            for (std::size_t m = 0; m < got.size(); ++m) {
                INFO("section " << s << ", member " << m);
                solids_.back().push_back(cut_solid(asked[m]));
                check(got[m], asked[m], solids_.back().back(), ways_.placed(s));
            }
        }
    }

    /// Whether they close is told by whether the one rail is the other's image in the plane between them.
    void joints() {
        for (const MetInPlan& met : ways_.joints()) {
            INFO("joint " << met.post);
            const std::optional<JointResult>& joint = solution_.posts[static_cast<std::size_t>(met.post)].joint;
            REQUIRE(joint.has_value());
            double apart = 0;
            for (const MembersMet& members : joint->members) apart = std::max(apart, members.apart());
            CHECK((apart < 1e-9) == met.closes);
            ++tally_.joints;
            tally_.closed += met.closes ? 1 : 0;
        }
    }

    /// Members of a section among themselves, and with the posts beside which they end; members of two sections at a
    /// joint that closes.
    void nothing_in_one_place() {
        for (std::size_t s = 0; s < solids_.size(); ++s) {
            INFO("section " << s);
            for (std::size_t a = 0; a < solids_[s].size(); ++a)
                for (std::size_t b = a + 1; b < solids_[s].size(); ++b) apart(solids_[s][a], solids_[s][b]);
            const std::vector<LongMember> members = ways_.members(s);
            for (const std::size_t end : {0u, 1u}) {
                if (ways_.way(s).posts[end].joint) continue;
                for (const TopoDS_Shape& post : post_solids(ways_.way(s), end))
                    for (std::size_t m = 0; m < members.size(); ++m)
                        if (members[m].at_post[end]) apart(solids_[s][m], post);
            }
        }
        for (const MetInPlan& met : ways_.joints()) {
            if (!met.closes) continue;
            INFO("joint " << met.post);
            const JointResult& joint = *solution_.posts[static_cast<std::size_t>(met.post)].joint;
            for (const TopoDS_Shape& one : solids_[static_cast<std::size_t>(joint.first.section)])
                for (const TopoDS_Shape& other : solids_[static_cast<std::size_t>(joint.second.section)])
                    apart(one, other);
        }
    }

 private:
    void check(const Member& got, const LongMember& asked, const TopoDS_Shape& solid, const gp_Trsf& placed) {
        const int copes = (asked.ends[0].radius > 0 ? 1 : 0) + (asked.ends[1].radius > 0 ? 1 : 0);
        const bool coped = copes > 0;
        CHECK(coped == (got.copes[0] || got.copes[1]));
        const double size = std::max(1.0, got.overall), section = got.width * got.depth;
        const double volume = coped ? volume_of(got) : section * got.length;
        // Open CASCADE holds the edges of a cope to 1e-7.
        CHECK_THAT(tests::volume_of(solid), within(volume, section * (1e-9 * size + 1e-7 * copes)));
        CHECK_THAT(extent(solid, asked.axes.Direction()), within(got.overall, 1e-9 * size));
        const std::vector<gp_Pnt> corners = corners_of(solid);
        REQUIRE(corners.size() == 8);
        std::vector<double> arrises;
        for (const int left : {-1, 1})
            for (const int high : {-1, 1}) {
                const Spot spot = spot_of({left, high}, got.stick.piece.section);
                const double from = reach(got, End::from, spot), to = reach(got, End::to, spot);
                arrises.push_back(to - from);
                for (const double along : {from, to})
                    CHECK(nearest(corners, point(point_on(got.stick.frame, along, spot)).Transformed(placed)) <
                          1e-9 * size);
            }
        std::sort(arrises.begin(), arrises.end());
        const std::vector<double> edges = edges_along(solid, asked.axes.Direction());
        REQUIRE(edges.size() == 4);
        for (std::size_t i = 0; i < 4; ++i) CHECK_THAT(arrises[i], within(edges[i], 1e-9 * size));
        ++tally_.members;
        tally_.coped += coped ? 1 : 0;
    }

    /// A post and the boards round its foot, where a clear distance says that it stands.
    static Solids post_solids(const WayInPlan& way, std::size_t end) {
        const PostInPlan& post = way.posts[end];
        const gp_Vec moved = way.level * way.moved[end];
        const double tall = 40 * std::max(post.half_along, post.half_across);
        const gp_Pnt foot = post.foot.Translated(moved);
        const gp_Dir up = gp::DZ().Transformed(post.stands);
        const auto prism = [&](double half_along, double half_across) {
            return post.round ? long_cylinder(gp_Ax1(foot, up), tall, half_along)
                              : long_box(gp_Ax2(foot, up, gp::DX().Transformed(post.stands)), 2 * tall, 2 * half_along,
                                         2 * half_across);
        };
        Solids solids{prism(post.half_along, post.half_across)};
        if (post.trimmed)
            solids.push_back(trimmed(prism(post.trim_along, post.trim_across),
                                     gp_Pln(gp_Pnt(foot.X(), foot.Y(), post.trim_up_to), gp::DZ().Reversed())));
        return solids;
    }

    void apart(const TopoDS_Shape& one, const TopoDS_Shape& other) {
        const double smaller = std::min(tests::volume_of(one), tests::volume_of(other));
        CHECK(common_volume(one, other) < 1e-9 * smaller);
        ++tally_.pairs;
    }

    const DrawnPlacedJob& drawn_;
    const Solution& solution_;
    WaysInPlan ways_;
    Tally& tally_;
    std::vector<Solids> solids_;
};

Tally check_jobs(const std::string& kind, int count, const PlacedKinds& kinds, bool put_together) {
    Tally tally;
    for (int i = 0; i < count; ++i) {
        const std::string name = kind + " " + std::to_string(i);
        const DrawnPlacedJob drawn = random_placed_job(name, kinds);
        const Solution solution = solve(drawn.job);
        if (solution.refused()) continue;
        INFO(name);
        Checking checking(drawn, solution, tally);
        checking.members();
        checking.joints();
        if (put_together) checking.nothing_in_one_place();
        ++tally.jobs;
    }
    return tally;
}

}  // namespace

TEST_CASE("members of placed jobs between square posts are what their posts and joints leave", "[oracle]") {
    const Tally tally = check_jobs("placed solids", 200, {false, true}, false);
    CHECK(tally.jobs > 170);
    CHECK(tally.members > 900);
    CHECK(tally.joints > 80);
    CHECK(tally.closed > 15);
}

TEST_CASE("members of placed jobs that end at round posts are hollowed as their posts leave them", "[oracle]") {
    const Tally tally = check_jobs("placed copes", 80, {true, true}, false);
    CHECK(tally.coped > 80);
}

TEST_CASE("put together, no two pieces of a placed job are in one place", "[oracle]") {
    const Tally tally = check_jobs("placed together", 80, {true, true}, true);
    CHECK(tally.pairs > 400);
    CHECK(tally.closed > 4);
}

}  // namespace rakewright::tests
