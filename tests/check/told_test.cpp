#include <cmath>

#include "../support/found.hpp"
#include "../support/near.hpp"
#include "judged.hpp"

// What an inspector must be able to rely on: that nothing passes that nobody measured, and nothing vanishes.

namespace rakewright::tests {
namespace {

std::vector<const NotJudged*> not_judged(const Verdicts& verdicts, const std::string& rule) {
    std::vector<const NotJudged*> found;
    for (const NotJudged& it : verdicts.not_judged)
        if (it.rule->id.name == rule) found.push_back(&it);
    return found;
}

Stair stair_of(int risers, double drop) {
    Stair stair = even_stair();
    stair.risers = Count(risers);
    stair.drop = drop;
    return stair;
}

}  // namespace

TEST_CASE("nosings and treads of a rail as found that nobody tried are named", "[check]") {
    // Nine risers: nosings 2 to 9 have no reading, and no second one makes a straight rail of them; treads 2 to 8 no
    // ball.
    FoundRail found = guard_on_stair(60);
    found.heights = {{1, Reading(36)}};
    found.balls = {ball_at(Ball::At::under_rail, Count(1), 6, false), ball_at(Ball::At::pickets, {}, 4.375, false)};
    const Verdicts part = judged(with_found(found, stair_of(9, 60)), rules("irc-2021"));
    CHECK(only_check(part, "stair guard height").verdict == Verdict::pass);
    for (const char* rule : {"stair guard height", "handrail height", "guard top as handrail"}) {
        INFO(rule);
        REQUIRE(not_judged(part, rule).size() == 1);
        CHECK(not_judged(part, rule)[0]->where == "as found old-rail, nosings 2 to 9");
        CHECK(not_judged(part, rule)[0]->missing == "`heights` at nosing 9");
    }
    REQUIRE(not_judged(part, "triangle under the rail").size() == 1);
    CHECK(not_judged(part, "triangle under the rail")[0]->where == "as found old-rail, under the rail, treads 2 to 8");
    CHECK(not_judged(part, "stair opening").empty());

    found.heights.push_back({9, Reading(36)});
    for (int tread = 2; tread < 9; ++tread)
        found.balls.push_back(ball_at(Ball::At::under_rail, Count(tread), 6, false));
    const Verdicts whole = judged(with_found(found, stair_of(9, 60)), rules("irc-2021"));
    for (const char* rule : {"stair guard height", "triangle under the rail", "stair opening"}) {
        INFO(rule);
        CHECK(not_judged(whole, rule).empty());
    }
}

TEST_CASE("a ball is judged where it was tried", "[check]") {
    // 5 1/2 passed between pickets over tread 3: of the stair's openings, which stay below 4 3/8, and not of a
    // triangle.
    FoundRail found = guard_on_stair(60);
    found.balls = {ball_at(Ball::At::pickets, Count(3), 5.5, true)};
    const Verdicts verdicts = judged(with_found(found, even_stair()), rules("irc-2021"));
    const Check check = only_check(verdicts, "stair opening");
    CHECK(check.verdict == Verdict::fail);
    CHECK(check.where() == "as found old-rail, a ball of 5 1/2 passed between pickets, tread 3");
    CHECK(checks_of(verdicts, "triangle under the rail").empty());
    // One that did not pass there tells nothing of the other treads.
    found.balls = {ball_at(Ball::At::pickets, Count(3), 4, false)};
    const Verdicts stopped = judged(with_found(found, even_stair()), rules("irc-2021"));
    CHECK(only_check(stopped, "stair opening").verdict == Verdict::pass);
    CHECK(not_judged(stopped, "stair opening").size() == 1);
    // With a tread and without `at` it was tried under the rail.
    Ball bare;
    bare.tread = Count(3);
    CHECK(bare.at() == Ball::At::under_rail);
    CHECK(Ball().at() == Ball::At::pickets);
}

TEST_CASE("several balls at one opening are one opening", "[check]") {
    FoundRail found = guard_on_floor(44, 60);
    const auto verdict = [&](const char* set) {
        return only_check(judged(with_found(found, {}), rules(set)), "opening");
    };
    // 3 3/4 passed, 4 did not: below 4.
    found.balls = {ball_at(Ball::At::pickets, {}, 5, false), ball_at(Ball::At::pickets, {}, 4, false),
                   ball_at(Ball::At::pickets, {}, 3.75, true), ball_at(Ball::At::pickets, {}, 3, true)};
    CHECK(verdict("irc-2021").verdict == Verdict::pass);
    CHECK(verdict("irc-2021").value == 4);
    // 4 passed, 5 did not: too wide; whether it is for 125 mm nobody knows.
    found.balls = {ball_at(Ball::At::pickets, {}, 5, false), ball_at(Ball::At::pickets, {}, 4, true)};
    CHECK(verdict("irc-2021").verdict == Verdict::fail);
    CHECK(verdict("irc-2021").known == Known::at_least);
    CHECK(verdict("ncc-2022").verdict == Verdict::unsure);
    // A gap that was measured settles what a ball leaves open.
    found.balls = {ball_at(Ball::At::pickets, {}, 4.25, false)};
    found.widest_gap = 3.5;
    CHECK(verdict("irc-2021").verdict == Verdict::pass);
    CHECK(verdict("irc-2021").value == 3.5);
}

TEST_CASE("nosings that nobody read are not judged, nor how they vary", "[check]") {
    Stair stair = measured_stair({7.75, 7.25, 7.5, 7.625, 7.75}, {10.5, 10.25, 10.375, 10.5});
    stair.steps[3].nosing = 1;
    const Verdicts verdicts = judged(only_stair(stair), rules("irc-2021"));
    CHECK(only_check(verdicts, "least nosing projection").verdict == Verdict::pass);
    CHECK(only_check(verdicts, "least nosing projection").where() == "stair back-steps, nosing 4");
    CHECK(checks_of(verdicts, "nosing variation").empty());
    REQUIRE(not_judged(verdicts, "nosing variation").size() == 1);
    CHECK(not_judged(verdicts, "nosing variation")[0]->where == "stair back-steps, nosings 1 to 3, 5");
    CHECK(not_judged(verdicts, "least nosing projection").size() == 1);
}

TEST_CASE("a section whose posts have no place is judged over every nosing", "[check]") {
    // Rises of 7, 8 and 7: the middle nosing stands 1/2 over the line through the others, 1/4 over the one that is
    // drawn; a rail 34 over the line is 33 3/4 over it.
    Job job = with_found({}, measured_stair({7, 8, 7}, {10, 10}));
    job.as_found.clear();
    job.stairs[0].drop = 60;
    job.builds = {square_build()};
    Section& section = job.sections.emplace_back();
    section.id = called("rail");
    section.build = ref(0);
    section.stair = ref(0);
    section.height = 34;
    section.clear = 15;
    const Check check = only_check(judged(job, rules("irc-2021")), "stair guard height");
    CHECK(check.verdict == Verdict::fail);
    CHECK_THAT(check.value, within(33.75, 1e-12));
    CHECK(check.where() == "section rail, nosing 2");
}

TEST_CASE("a fall that asks for a guard where the job has none is told", "[check]") {
    Job job = only_stair(stair_of(6, 60));
    Handrail rail;
    rail.id = called("wall-rail");
    rail.stair = ref(0);
    rail.height = 36;
    rail.profile.diameter = Reading(1.5);
    job.handrails = {rail};
    const Verdicts without = judged(job, rules("irc-2021"));
    REQUIRE(without.unguarded.size() == 1);
    CHECK(without.unguarded[0].where == "stair lake-steps");
    CHECK(without.unguarded[0].rule->id.name == "stair guard height");
    CHECK(without.unguarded[0].drop == 60);
    job.stairs[0].drop = 30;  // asked for above 30
    CHECK(judged(job, rules("irc-2021")).unguarded.empty());
    job.stairs[0].drop = 60;
    FoundRail guard = guard_on_stair(60);
    job.as_found = {guard};
    CHECK(judged(job, rules("irc-2021")).unguarded.empty());
    job.as_found[0].serves = FoundRail::Serves::handrail;
    CHECK(judged(job, rules("irc-2021")).unguarded.size() == 1);
}

TEST_CASE("no rule vanishes", "[check]") {
    Rule fall;
    fall.id = called("fall");
    fall.clause = "1";
    fall.judges = Quantity::drop;
    fall.limit.most = 20;
    RuleSet set;
    set.rules = {fall};
    CHECK(only_check(judged(only_stair(stair_of(6, 40)), set), "fall").verdict == Verdict::fail);
    CHECK(names(judged(only_stair(even_stair()), set).not_judged, "fall"));

    const auto held_once = [](const Job& job, const RuleSet& rules) {
        const Verdicts verdicts = judged(job, rules);
        for (const Rule& rule : rules.rules) {
            INFO(rules.name << ": " << rule.id.name);
            CHECK((names(verdicts.checks, rule.id.name) || names(verdicts.not_judged, rule.id.name) ||
                   names(verdicts.not_applied, rule.id.name)));
        }
    };
    Stair one_riser = measured_stair({7}, {});
    for (const char* name : {"irc-2021", "ibc-2021", "nbc-9.8", "ncc-2022", "nz-d1-f4"})
        for (const Job& job : {only_stair(one_riser), only_stair(even_stair()), even_example(), floor_example(60),
                               with_found(guard_on_stair(60), even_stair())})
            held_once(job, rules(name));
}

TEST_CASE("an open riser is judged by its own height over the ground", "[check]") {
    // Risers of 7 with treads of 1 1/2: the tops of the openings stand at 5 1/2, 12 1/2, 19 1/2, 26 1/2 and 33 1/2;
    // only the last is over 30. On ground that falls away by 5 more, so is the one below it.
    Stair stair = even_stair();
    stair.rise = Reading(7);
    stair.riser = RiserKind::open;
    stair.tread_thickness = 1.5;
    stair.drop = 35;
    const auto fails_at = [&] {
        std::string places;
        for (const Check& check : checks_of(judged(only_stair(stair), rules("irc-2021")), "open riser"))
            for (const std::string& place : check.places) places += place + " ";
        return places;
    };
    CHECK(fails_at() == "riser 5 ");
    stair.drop = 40;
    CHECK(fails_at() == "riser 4 riser 5 ");
    stair.drop = 33;  // the ground beside is higher: nothing is over 30 by more than the fall
    CHECK(fails_at() == "riser 5 ");
    stair.drop = 30;
    CHECK(fails_at().empty());
    CHECK(names(judged(only_stair(stair), rules("irc-2021")).not_applied, "open riser"));
}

TEST_CASE("two handrails that do not say on which sides they are may be on one", "[check]") {
    Job job = only_stair(stair_of(6, 40));
    Handrail rail;
    rail.stair = ref(0);
    rail.height = 36;
    rail.profile.diameter = Reading(1.5);
    job.handrails = {rail, rail};
    job.handrails[0].id = called("a");
    job.handrails[1].id = called("b");
    const Verdicts unsaid = judged(job, rules("ibc-2021"));
    CHECK(checks_of(unsaid, "handrail sides").empty());
    REQUIRE(not_judged(unsaid, "handrail sides").size() == 1);
    CHECK(not_judged(unsaid, "handrail sides")[0]->missing == "`side` of a, b");
    job.handrails[0].side = NamedSide{true, {}};
    job.handrails[1].side = NamedSide{false, {}};
    CHECK(only_check(judged(job, rules("ibc-2021")), "handrail sides").verdict == Verdict::pass);
    job.handrails[1].side = NamedSide{true, {}};
    CHECK(only_check(judged(job, rules("ibc-2021")), "handrail sides").verdict == Verdict::fail);

    // How far they run on was not said either; 0 that is written is a figure.
    CHECK(checks_of(unsaid, "top extension").empty());
    CHECK(names(unsaid.not_judged, "top extension"));
    job.handrails[0].extend.top = Reading(0);
    CHECK(checks_of(judged(job, rules("ibc-2021")), "top extension").size() == 1);
}

TEST_CASE("stairs that are even name no ends of a difference", "[check]") {
    Stair stair = even_stair();
    stair.risers = Count(1000);
    stair.rise = Reading(7.3);
    const Check check = only_check(judged(only_stair(stair), rules("irc-2021")), "riser variation");
    CHECK(check.where() == "stair lake-steps");
    CHECK(check.value == 0);
    // And those that are not are named as they were read, not as a tape shows them.
    const Job job = only_stair(measured_stair({196.85, 187.325, 187.325}, {254, 263.525}), Unit::millimetre);
    CHECK(only_check(judged(job, rules("irc-2021")), "riser variation").where() ==
          "stair back-steps, riser 1: 196.85, riser 2: 187.325");
}

}  // namespace rakewright::tests
