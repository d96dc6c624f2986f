#include "../../solver/check/range.hpp"

#include "../support/near.hpp"
#include "judged.hpp"

namespace rakewright::tests {
namespace {

const PassingRange* range_of(const std::vector<PassingRange>& ranges, Quantity quantity, RulePlace place) {
    for (const PassingRange& range : ranges)
        if (range.quantity == quantity && range.place == place) return &range;
    return nullptr;
}

}  // namespace

TEST_CASE("two codes leave what both allow, each bound with its clause", "[check]") {
    const std::vector<RuleSet> sets{rules("irc-2021"), rules("nbc-9.8")};
    const Job job = only_stair(even_stair());
    Solution solution = solve(job);
    measure_openings(job, solution);
    const Verdicts verdicts = judge(job, solution, sets);
    const std::vector<PassingRange> ranges = ranges_of(job, verdicts);
    const PassingRange* const rise = range_of(ranges, Quantity::rise, RulePlace::anywhere);
    REQUIRE(rise);
    CHECK_THAT(*rise->bounds.least, within(125 / 25.4, 1e-14));
    CHECK(rise->least_by->clause == "9.8.4.1");
    CHECK(rise->bounds.most == 7.75);
    CHECK(rise->most_by->clause == "R311.7.5.1");
    CHECK(rise->least_now->value == 7.25);
    CHECK(rise->most_now->value == 7.25);
    // What the job does not tell has a range too, and no figure.
    const PassingRange* const width = range_of(ranges, Quantity::clear_width, RulePlace::anywhere);
    REQUIRE(width);
    CHECK(width->bounds.least == 36.0);
    CHECK_FALSE(width->least_now);
    // A limit that is not itself allowed says so.
    const PassingRange* const triangle = range_of(ranges, Quantity::under_rail_opening, RulePlace::stair);
    REQUIRE(triangle);
    CHECK(triangle->bounds.most_excluded);
}

TEST_CASE("any value within its range passes, and one outside fails", "[check]") {
    const std::vector<RuleSet> sets{rules("irc-2021"), rules("ibc-2021")};
    for (const double rise : {3.9, 4.0, 5.5, 7.0, 7.1}) {
        Stair stair = even_stair();
        stair.rise = Reading(rise);
        const Job job = only_stair(stair);
        const Solution solution = solve(job);
        const Verdicts verdicts = judge(job, solution, sets);
        const std::vector<PassingRange> ranges = ranges_of(job, verdicts);
        const PassingRange* const range = range_of(ranges, Quantity::rise, RulePlace::anywhere);
        REQUIRE(range);
        bool fails = false;
        for (const Check& check : verdicts.checks)
            fails = fails || (check.rule->judges == Quantity::rise && check.verdict == Verdict::fail);
        CHECK(margin_in(range->bounds, rise).allowed == !fails);
    }
}

TEST_CASE("what a ball showed is no more in a range than it showed", "[check]") {
    Job job;
    FoundRail found;
    found.id = called("old-rail");
    found.height = Reading(44);
    found.drop = 60;
    Ball& ball = found.balls.emplace_back();
    ball.size = 6;
    job.as_found = {found};
    const Verdicts verdicts = judged(job, rules("irc-2021"));
    const std::vector<PassingRange> ranges = ranges_of(job, verdicts);
    const PassingRange* const opening = range_of(ranges, Quantity::picket_opening, RulePlace::level);
    REQUIRE(opening);
    REQUIRE(opening->least_now);
    CHECK(opening->least_now->value == 6);
    CHECK(opening->least_now->known == Known::under);
}

}  // namespace rakewright::tests
