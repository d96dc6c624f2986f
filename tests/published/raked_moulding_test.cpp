#include <cmath>

#include "../support/measured.hpp"
#include "../support/near.hpp"

// Rules that were published for mouldings that turn a corner onto a rake, held to by whole jobs.

namespace rakewright::tests {
namespace {

Plan planned(double heading, double level) {
    Plan plan;
    plan.heading = in_degrees(heading);
    plan.level = level;
    return plan;
}

/// A level rail along y to the plan's origin, and from there to the right a rail up a flight along x. Both tops are 36
/// over the origin.
Job level_then_up(double rise, double run, double width, double depth) {
    Job job = even_example();
    job.stairs[0].rise = Reading(rise);
    job.stairs[0].run = Reading(run);
    job.stairs[0].plan = planned(0, -rise);
    Floor deck;
    deck.id = called("deck");
    deck.plan = planned(90, 0);
    job.floors = {deck};
    Build build;
    build.id = called("rail");
    build.height = 36;
    build.upper = {{"moulding", width, depth}};
    job.builds = {build};
    const auto on_deck = [](Post post) {
        post.stair = {};
        post.floor = ref(0);
        return post;
    };
    Post joint = on_deck(placed_post(0));
    joint.size = {};
    joint.shape = PostShape::joint;
    Post top = placed_post(60);
    top.base = {Base::On::tread, 0, 0, {}};
    job.posts = {on_deck(placed_post(-60)), joint, top};
    job.sections = {section_between(0, 1), section_between(1, 2)};
    job.sections[0].floor = ref(0);
    job.sections[1].stair = ref(0);
    return job;
}

}  // namespace

TEST_CASE("the section of a raked moulding is drawn as the textbooks draw it", "[published][joint]") {
    // Griffith, Carpentry, s. 52, and two older books by the same construction: through the points of the level profile
    // lines at the pitch; on a line square to them, each as far out as it was. A point x out and y up comes to
    // (x, y cos r + x sin r) at the lower return. Numbers for 7 in 12 worked out by it: (1, 0) to (1, 0.503871), (0, 1)
    // to (0, 0.863779).
    const Solution solution = measured(level_then_up(7, 12, 2, 2));
    const MembersMet& met = solution.posts[1].joint.value().members.at(0);
    CHECK(met.first == 0);
    // The tops are equally high at the joint: the raked one's middle lies lower by what its depth takes more, plumb.
    const double lower = 1 / 0.863779 - 1;
    for (const CornerMet& corner : met.corners) {
        const double out = corner.corner.left, up = corner.corner.top;  // to the left is the outside of the corner
        CHECK_THAT(corner.moulded.left, within(out, 1e-12));
        CHECK_THAT(corner.moulded.top, within((up + lower) * 0.863779 + out * 0.503871, 2e-6));
    }
}

}  // namespace rakewright::tests
