#include <cmath>

#include "../support/catch.hpp"
#include "../support/even_example.hpp"
#include "../support/near.hpp"

// The lower gap that is left to the rules, against the closed form of the ball under a rail on an even stair,
// D = (R + T - sqrt(R^2 + T^2)) (1 + c / R + n / T): c the gap, n the nosing (derived: the incircle of a right
// triangle, grown as the triangle grows; valid while riser, tread and rail bound the ball).

namespace rakewright::tests {
namespace {

RuleSet limits(std::optional<double> triangle, std::optional<double> level = std::nullopt, Unit unit = Unit::inch) {
    RuleSet set;
    set.units = unit;
    const auto add = [&](Quantity quantity, RulePlace where, const std::optional<double>& limit) {
        if (!limit) return;
        Rule rule;
        rule.judges = quantity;
        rule.units = unit;
        rule.where = where;
        rule.limit.most = limit;
        rule.limit.most_excluded = true;
        set.rules.push_back(rule);
    };
    add(Quantity::under_rail_opening, RulePlace::stair, triangle);
    add(Quantity::picket_opening, RulePlace::level, level);
    return set;
}

Job left_to_rules(double rise, double run, double nosing, double margin = 0) {
    Job job = even_example();
    job.stairs[0].rise = Reading(rise);
    job.stairs[0].run = Reading(run);
    job.stairs[0].nosing = nosing;
    job.sections[0].lower_gap = LowerGap{margin, false, true};
    return job;
}

double ball(double rise, double run, double nosing, double gap) {
    return (rise + run - std::sqrt(rise * rise + run * run)) * (1 + gap / rise + nosing / run);
}

/// The largest gap with every ball below a limit that is not itself allowed.
double largest_gap(double rise, double run, double nosing, double limit) {
    return rise * (limit / (rise + run - std::sqrt(rise * rise + run * run)) - 1 - nosing / run);
}

double chosen(const Job& job, const RuleSet& rules) {
    const Solution solution = solve(job, {&rules, 1});
    REQUIRE_FALSE(solution.refused());
    REQUIRE(solution.sections[0].lower_gap);
    return *solution.sections[0].lower_gap;
}

}  // namespace

TEST_CASE("on an even stair the gap is the last mark below the closed form", "[lower_gap]") {
    // Derived, the closed form solved for a ball of 6: 0.661 for 7 1/4 in 11 and a nosing of 1, 1.320 without a nosing,
    // 0.789 for 7 3/4.
    const auto [rise, run, nosing, most] = GENERATE(
        table<double, double, double, double>({{7.25, 11, 1, 0.661}, {7.25, 11, 0, 1.320}, {7.75, 10, 0.75, 0.789}}));
    CHECK_THAT(largest_gap(rise, run, nosing, 6), within(most, 6e-4));
    const double gap = chosen(left_to_rules(rise, run, nosing), limits(6));
    CHECK(gap == std::floor(most * 16) / 16);
    CHECK(ball(rise, run, nosing, gap) < 6);
    CHECK(ball(rise, run, nosing, gap + 1.0 / 16) > 6);
}

TEST_CASE("what was chosen is told, with the ball that holds it and what that must stay below", "[lower_gap]") {
    const RuleSet rules = limits(6);
    const Solution solution = solve(left_to_rules(7.25, 11, 1, 0.125), {&rules, 1});
    const Finding* told = nullptr;
    for (const Finding& finding : solution.findings)
        if (finding.trouble == Trouble::lower_gap_chosen) told = &finding;
    REQUIRE(told);
    CHECK(told->numbers[0] == *solution.sections[0].lower_gap);
    CHECK_THAT(told->numbers[1], within(ball(7.25, 11, 1, told->numbers[0]), 1e-12));
    CHECK(told->numbers[2] == 5.875);
    CHECK((told->numbers[3] >= 1 && told->numbers[3] <= 4));
    CHECK_FALSE(has(solve(even_example()), Trouble::lower_gap_chosen));
}

TEST_CASE("a gap whose ball is the limit itself is too large", "[lower_gap]") {
    // 7 1/2 in 10 is a 3-4-5 triangle: with a nosing of 1 a gap of 3/4 lets a ball of exactly 6 pass.
    CHECK_THAT(ball(7.5, 10, 1, 0.75), within(6, 1e-14));
    CHECK(chosen(left_to_rules(7.5, 10, 1), limits(6)) == 0.6875);
}

TEST_CASE("a margin is kept", "[lower_gap]") {
    const double gap = chosen(left_to_rules(7.25, 11, 1, 0.25), limits(6));
    CHECK(gap == std::floor(largest_gap(7.25, 11, 1, 5.75) * 16) / 16);
}

TEST_CASE("steps that differ are kept below the limit at the worst of them", "[lower_gap]") {
    Job job = even_example();
    job.stairs[0] = measured_stair({7.25, 7.5, 7, 7.375, 7.125}, {11, 10.75, 11.125, 10.875});
    job.sections[0].lower_gap = LowerGap{0, false, true};
    const RuleSet rules = limits(6);
    const double gap = chosen(job, rules);
    const auto largest_ball = [&](double lower_gap) {
        Job with = job;
        with.sections[0].lower_gap = LowerGap{lower_gap};
        Solution solution = solve(with);
        REQUIRE_FALSE(solution.refused());
        measure_openings(with, solution);
        double largest = 0;
        for (const Opening& opening : solution.sections[0].openings)
            if (opening.kind == Opening::Kind::under_rail && *opening.tread > 0 && *opening.tread < 5)
                largest = std::max(largest, opening.sphere);
        return largest;
    };
    CHECK(largest_ball(gap) < 6);
    CHECK(largest_ball(gap + 1.0 / 16) >= 6);
}

TEST_CASE("a metric job keeps a limit in inches to its own marks, and the other way round", "[lower_gap]") {
    Job job = left_to_rules(178, 279, 25);
    job.units = Unit::millimetre;
    job.builds[0].height = 900;
    for (auto* const group : {&job.builds[0].upper, &job.builds[0].lower})
        for (MemberSize& member : *group) {
            member.width = member.width * 25.4;
            member.depth = member.depth * 25.4;
        }
    job.builds[0].play = 1;
    job.builds[0].pickets.reset();
    job.builds[0].bracket.reset();
    for (Post& post : job.posts) {
        post.size = {90, 90, "", {}};
        post.at = Reading(*post.at * 25.4);
    }
    CHECK(chosen(job, limits(6)) == std::floor(largest_gap(178, 279, 25, 152.4)));
    CHECK(chosen(job, limits(150, std::nullopt, Unit::millimetre)) == std::floor(largest_gap(178, 279, 25, 150)));
}

TEST_CASE("under a level rail the gap is the ball", "[lower_gap]") {
    Job job = floor_example(60);
    job.sections[0].lower_gap = LowerGap{0, false, true};
    CHECK(chosen(job, limits(std::nullopt, 4)) == 3.9375);
    job.sections[0].lower_gap = LowerGap{0.25, false, true};
    CHECK(chosen(job, limits(std::nullopt, 4)) == 3.6875);
    // A limit of the triangle alone limits nothing here.
    const RuleSet triangle = limits(6);
    const Solution solution = solve(job, {&triangle, 1});
    REQUIRE(solution.findings.size() == 1);
    CHECK(solution.findings[0].trouble == Trouble::auto_without_limit);
}

TEST_CASE("rules that are not in force where nobody can fall leave the gap open", "[lower_gap]") {
    RuleSet rules = limits(6);
    rules.rules[0].only_if = {{Quantity::drop, {30, std::nullopt, true, false}}};
    Job job = left_to_rules(7.25, 11, 1);
    CHECK(chosen(job, rules) == 0.625);  // a fall that nobody gave is taken as enough
    job.sections[0].drop = Reading(20);
    const Solution solution = solve(job, {&rules, 1});
    REQUIRE(solution.findings.size() == 1);
    CHECK(solution.findings[0].trouble == Trouble::auto_without_limit);
}

TEST_CASE("over a closed string the gap is what keeps a ball between them under the stair's limit", "[lower_gap]") {
    // The ball is (gap - string_above) / sqrt(1 + slope^2), and has to stay below 4 3/8.
    Job job = left_to_rules(7.25, 11, 1);
    job.stairs[0].strings = {StringKind::closed, StringKind::closed};
    job.stairs[0].string_above = Reading(2);
    RuleSet rules = limits(6, 4.375);
    rules.rules.back().where = RulePlace::stair;
    const double lengthened = std::sqrt(1 + 7.25 / 11 * (7.25 / 11));
    const double gap = chosen(job, rules);
    CHECK((gap - 2) / lengthened < 4.375);
    CHECK((gap + 1.0 / 16 - 2) / lengthened >= 4.375);
    job.stairs[0].string_above.reset();
    const Solution solution = solve(job, {&rules, 1});
    REQUIRE(solution.findings.size() == 1);
    CHECK(solution.findings[0].trouble == Trouble::auto_over_unknown_string);
}

}  // namespace rakewright::tests
