#include <cmath>

#include "../support/found.hpp"
#include "../support/near.hpp"
#include "judged.hpp"

namespace rakewright::tests {
namespace {

using Catch::Matchers::Contains;

constexpr const char* guard_rules[] = {"level guard height",    "stair guard height",
                                       "guard top as handrail", "opening",
                                       "stair opening",         "triangle under the rail"};

}  // namespace

TEST_CASE("a rail along a floor that falls is judged as one on a level", "[check]") {
    Job job = floor_example(70);
    Floor floor;
    floor.id = called("porch");
    floor.falls.angle = {0.125, 12};
    job.floors = {floor};
    job.sections[0].floor = ref(0);
    job.sections[0].follow = Follow::floor;
    job.sections[0].drop = Reading(40);
    const Check height = only_check(judged(job, rules("irc-2021")), "level guard height");
    CHECK(height.value == 36);
    CHECK(height.verdict == Verdict::pass);
}

TEST_CASE("a variation names both ends", "[check]") {
    const Job job = only_stair(measured_stair({7.25, 7.375, 7.5, 7.75}, {11, 10.5, 10.75}));
    const Verdicts verdicts = judged(job, rules("irc-2021"));
    const Check rises = only_check(verdicts, "riser variation"), runs = only_check(verdicts, "tread variation");
    CHECK(rises.where() == "stair back-steps, riser 4: 7 3/4, riser 1: 7 1/4");
    CHECK(rises.verdict == Verdict::fail);
    CHECK_THAT(rises.value, within(0.5, 1e-13));
    CHECK_THAT(rises.margin.value(), within(-0.125, 1e-13));
    CHECK(runs.where() == "stair back-steps, tread 1: 11, tread 2: 10 1/2");

    const Job metric = only_stair(measured_stair({170, 172, 178, 175}, {280, 281, 279}), Unit::millimetre);
    CHECK(only_check(judged(metric, rules("nbc-9.8")), "neighbouring risers").where() ==
          "stair back-steps, riser 3: 178, riser 2: 172");
    CHECK(only_check(judged(metric, rules("nbc-9.8")), "neighbouring runs").where() ==
          "stair back-steps, tread 2: 281, tread 3: 279");
}

TEST_CASE("a fall that nobody read is taken as asking for a guard, and said to be", "[check]") {
    const Verdicts verdicts = judged(even_example(), rules("irc-2021"));
    for (const char* rule : {"stair guard height", "guard top as handrail", "stair opening", "triangle under the rail"})
        for (const Check& check : checks_of(verdicts, rule)) {
            INFO(rule);
            CHECK(std::any_of(check.assumed.begin(), check.assumed.end(), [](const std::string& it) {
                return it == "no `drop` is given: it is taken as more than 30 in";
            }));
        }
    CHECK(only_check(verdicts, "stair guard height").verdict == Verdict::pass);
    CHECK(only_check(verdicts, "riser height").assumed.empty());
    CHECK_THAT(only_check(judged(even_example(), rules("ncc-2022")), "stair barrier height").assumed.at(0),
               Contains("at least 1000 mm"));

    Job told = even_example();
    told.stairs[0].drop = 40;
    CHECK(only_check(judged(told, rules("irc-2021")), "stair guard height").assumed.empty());
}

TEST_CASE("beside a small fall no guard rule applies", "[check]") {
    Job job = even_example();
    job.stairs[0].drop = 30;  // asked for above 30
    Section deck = floor_example(60).sections[0];
    deck.drop = 24;
    job.sections.push_back(deck);
    const Verdicts verdicts = judged(job, rules("irc-2021"));
    for (const char* rule : guard_rules) {
        INFO(rule);
        CHECK(checks_of(verdicts, rule).empty());
        CHECK_FALSE(names(verdicts.not_judged, rule));
        const auto found = std::find_if(verdicts.not_applied.begin(), verdicts.not_applied.end(),
                                        [&](const NotApplied& it) { return it.rule->id.name == rule; });
        REQUIRE(found != verdicts.not_applied.end());
        CHECK(found->because == Quantity::drop);
    }
    CHECK(only_check(verdicts, "handrail height").verdict == Verdict::pass);
}

TEST_CASE("of two tiers of guard height the fall chooses one", "[check]") {
    // 9.8.8.3: 900 at a fall of more than 600 and up to 1800, 1070 beyond.
    const auto at_fall = [](std::optional<double> drop) {
        FoundRail found = guard_on_floor(1000, 0);
        found.drop.reset();
        if (drop) found.drop = *drop;
        return judged(with_found(found, {}, Unit::millimetre), rules("nbc-9.8"));
    };
    for (const double drop : {601.0, 1500.0, 1800.0}) {
        INFO(drop);
        const Verdicts verdicts = at_fall(drop);
        CHECK(only_check(verdicts, "guard height").verdict == Verdict::pass);
        CHECK(checks_of(verdicts, "high guard height").empty());
        CHECK(names(verdicts.not_applied, "high guard height"));
    }
    const Verdicts high = at_fall(1801);
    CHECK(only_check(high, "high guard height").verdict == Verdict::fail);
    CHECK_THAT(only_check(high, "high guard height").margin.value(), within(-70, 1e-12));
    CHECK(checks_of(high, "guard height").empty());
    CHECK(names(high.not_applied, "guard height"));
    const Verdicts low = at_fall(600);
    CHECK(names(low.not_applied, "guard height"));
    CHECK(names(low.not_applied, "high guard height"));
    // Where it is not known the lower tier is taken; whether the higher applies cannot be told.
    const Verdicts unknown = at_fall({});
    CHECK(only_check(unknown, "guard height").assumed.at(0) == "no `drop` is given: it is taken as more than 600 mm");
    CHECK(checks_of(unknown, "high guard height").empty());
    CHECK(names(unknown.not_judged, "high guard height"));
}

TEST_CASE("a ball shows that an opening is at least so large, or smaller", "[check]") {
    const auto tried = [](double size, bool passes, const char* set, const char* rule) {
        FoundRail found = guard_on_floor(44, 60);
        found.balls = {ball_at(Ball::At::pickets, {}, size, passes)};
        return only_check(judged(with_found(found, {}), rules(set)), rule);
    };
    CHECK(tried(4, true, "irc-2021", "opening").verdict == Verdict::fail);
    CHECK(tried(4, true, "irc-2021", "opening").known == Known::at_least);
    CHECK(tried(4, true, "irc-2021", "opening").where() == "as found old-rail, a ball of 4 passed");
    CHECK(tried(3.9375, true, "irc-2021", "opening").verdict == Verdict::unsure);
    CHECK(tried(4, false, "irc-2021", "opening").verdict == Verdict::pass);
    CHECK(tried(4, false, "irc-2021", "opening").known == Known::under);
    CHECK(tried(3.5, false, "irc-2021", "opening").verdict == Verdict::pass);
    CHECK(tried(4.0625, false, "irc-2021", "opening").verdict == Verdict::unsure);
    // A larger limit, 125 mm: 4 in passes and may be far from it.
    CHECK(tried(4, true, "ncc-2022", "opening").verdict == Verdict::unsure);
    CHECK(tried(4, false, "ncc-2022", "opening").verdict == Verdict::pass);
    CHECK(tried(125 / 25.4, true, "ncc-2022", "opening").verdict == Verdict::fail);
    // The band above 36 has a larger limit than the rest: the same ball settles one of the two.
    CHECK(tried(4, true, "ibc-2021", "opening").verdict == Verdict::fail);
    CHECK(tried(4, true, "ibc-2021", "opening above 36").verdict == Verdict::unsure);
}

TEST_CASE("heights between readings lie on the straight rail", "[check]") {
    // Nosings at 7, 14, 21 1/2, 28 1/2 and 35 1/2, a foot apart. A rail 36 over the first and 37 1/2 over the last runs
    // from 43 to 73, 7 1/2 each foot: 50 1/2, 58 and 65 1/2 over the floor.
    FoundRail found = guard_on_stair(60);
    found.heights = {{5, Reading(37.5)}, {1, Reading(36)}};  // as somebody may have read them
    const Job job = with_found(found, measured_stair({7, 7, 7.5, 7, 7}, {12, 12, 12, 12}));
    std::vector<std::pair<std::string, double>> heights;
    for (const Subject& subject : subjects_of(job, measured(job)))
        for (const Fact& fact : subject.facts)
            if (fact.quantity == Quantity::guard_height) heights.emplace_back(fact.where, fact.value);
    REQUIRE(heights.size() == 5);
    const std::pair<const char*, double> expected[] = {{"nosing 1", 36},
                                                       {"nosing 2, between readings", 36.5},
                                                       {"nosing 3, between readings", 36.5},
                                                       {"nosing 4, between readings", 37},
                                                       {"nosing 5", 37.5}};
    for (std::size_t i = 0; i < 5; ++i) {
        CHECK(heights[i].first == expected[i].first);
        CHECK_THAT(heights[i].second, within(expected[i].second, 1e-12));
    }
}

TEST_CASE("equal figures that fail are one check that names all places", "[check]") {
    Stair stair = even_stair();
    stair.rise = Reading(8);
    const Check even = only_check(judged(only_stair(stair), rules("irc-2021")), "riser height");
    CHECK(even.where() == "stair lake-steps, riser 1, riser 2, riser 3, riser 4, riser 5");
    CHECK(even.value == 8);

    const std::vector<Check> two = checks_of(
        judged(only_stair(measured_stair({8, 7.5, 8.25, 8}, {11, 11, 11})), rules("irc-2021")), "riser height");
    REQUIRE(two.size() == 2);
    CHECK(two[0].where() == "stair back-steps, riser 3");
    CHECK(two[1].where() == "stair back-steps, riser 1, riser 4");

    // What passes everywhere is told where it is nearest to its limit.
    CHECK(only_check(judged(only_stair(measured_stair({7, 7.25, 7.125}, {11, 11})), rules("irc-2021")), "riser height")
              .where() == "stair back-steps, riser 2");
}

TEST_CASE("the worst comes first", "[check]") {
    Stair stair = measured_stair({7.875, 7.25, 8.5}, {9, 9.5});
    stair.clear_width = 36.5;
    Job job = even_example();
    job.stairs.push_back(stair);
    FoundRail found = guard_on_floor(44, 60);
    found.balls = {ball_at(Ball::At::pickets, {}, 3, true)};
    FoundRail wide = guard_on_floor(44, 60);
    wide.balls = {ball_at(Ball::At::pickets, {}, 4.125, true)};
    job.as_found = {found, wide};
    const std::vector<RuleSet> sets{rules("irc-2021"), rules("nbc-9.8")};
    const Verdicts verdicts = judge(job, measured(job), sets);
    CHECK(verdicts.any_fails());
    const auto rank = [](const Check& check) {
        return check.verdict == Verdict::fail ? 0 : check.verdict == Verdict::unsure ? 1 : 2;
    };
    // By margin against the larger bound, so that inches and millimetres compare.
    const auto nearness = [](const Check& check) {
        const Bounds& limit = check.rule->limit;
        return check.margin.value_or(0) / std::max(limit.least.value_or(0), limit.most.value_or(0));
    };
    const auto is_bound = [](const Check& check) {
        return check.verdict == Verdict::fail && check.known == Known::at_least;
    };
    int of_rank[3] = {};
    for (const Check& check : verdicts.checks) ++of_rank[rank(check)];
    for (const int count : of_rank) CHECK(count > 0);
    for (std::size_t i = 1; i < verdicts.checks.size(); ++i) {
        const Check &before = verdicts.checks[i - 1], &check = verdicts.checks[i];
        CHECK(rank(before) <= rank(check));
        if (rank(before) == rank(check) && is_bound(before) == is_bound(check))
            CHECK(nearness(before) <= nearness(check));
        if (rank(before) == rank(check)) CHECK(is_bound(before) >= is_bound(check));
    }
    // A ball of 4 1/8 passed: by how much the opening is too wide nobody knows. Then neighbouring risers that differ by
    // 1 1/4 in, 31.75 mm, where 5 are allowed: farther outside than any other.
    const auto measured_first = std::find_if_not(verdicts.checks.begin(), verdicts.checks.end(), is_bound);
    CHECK(measured_first - verdicts.checks.begin() == 2);
    CHECK(measured_first->rule->id.name == "neighbouring risers");
    CHECK(measured_first->where() == "stair back-steps, riser 3: 8 1/2, riser 2: 7 1/4");
    CHECK_FALSE(std::find_if(verdicts.checks.begin(), verdicts.checks.end(), [](const Check& check) {
                    return check.verdict == Verdict::unsure;
                })->margin);
}

TEST_CASE("without a rule for triangles theirs are openings like others", "[check]") {
    // Between stair, rail and riser of the even example the ball is 6.937 in (176.2 mm): more than 125.
    const Verdicts none = judged(even_example(), rules("ncc-2022"));
    const std::vector<Check> openings = checks_of(none, "opening");
    const auto at_tread = std::find_if(openings.begin(), openings.end(), [](const Check& check) {
        return check.where().find("under the lower rail, tread 2") != std::string::npos;
    });
    REQUIRE(at_tread != openings.end());
    CHECK(at_tread->verdict == Verdict::fail);
    // Derived, the circle in closed form: (R + T - sqrt(R^2 + T^2)) (1 + c/R + n/T).
    const double sphere = (7.25 + 11 - std::sqrt(7.25 * 7.25 + 11 * 11)) * (1 + 2 / 7.25 + 1.0 / 11);
    CHECK_THAT(at_tread->value, within(sphere * 25.4, 1e-9));
    CHECK_THAT(at_tread->in_job_unit, within(sphere, 1e-10));

    // Where there is one, the opening rule leaves the triangles alone: 150 mm.
    const Verdicts triangle = judged(even_example(), rules("nz-d1-f4"));
    for (const Check& check : checks_of(triangle, "opening")) CHECK(check.where().find("tread 2") == std::string::npos);
    CHECK_FALSE(checks_of(triangle, "triangle under the rail").empty());
}

TEST_CASE("under the rail the floor is judged as the stair's opening, the landing as a landing's", "[check]") {
    const auto rule_at = [](int tread) {
        FoundRail found = guard_on_stair(60);
        found.balls = {ball_at(Ball::At::under_rail, Count(tread), 5, true)};
        const Verdicts verdicts = judged(with_found(found, even_stair()), rules("irc-2021"));
        std::string judged_by;
        for (const char* rule : {"opening", "stair opening", "triangle under the rail"})
            for (const Check& check : checks_of(verdicts, rule))
                judged_by += std::string(rule) + (check.verdict == Verdict::fail ? " fails" : " unsure");
        return judged_by;
    };
    CHECK(rule_at(0) == "stair opening fails");
    CHECK(rule_at(1) == "triangle under the rail unsure");
    CHECK(rule_at(4) == "triangle under the rail unsure");
    CHECK(rule_at(5) == "opening fails");
}

TEST_CASE("a rule of which the job has no subject is not judged", "[check]") {
    const Verdicts floor = judged(floor_example(60), rules("irc-2021"));
    const std::pair<const char*, const char*> without[] = {{"riser height", "`stairs`"},
                                                           {"headroom", "`headroom` of the stair"},
                                                           {"handrail clearance", "`clearance` of a handrail"}};
    for (const auto& pair : without) {
        INFO(pair.first);
        const auto found = std::find_if(floor.not_judged.begin(), floor.not_judged.end(),
                                        [&](const NotJudged& it) { return it.rule->id.name == pair.first; });
        REQUIRE(found != floor.not_judged.end());
        CHECK(found->where.empty());
        CHECK(found->missing == pair.second);
        CHECK(checks_of(floor, pair.first).empty());
    }
    const Verdicts stair = judged(only_stair(even_stair()), rules("irc-2021"));
    CHECK(names(stair.not_judged, "opening"));
    CHECK(names(stair.not_judged, "handrail height"));
    CHECK(checks_of(stair, "opening").empty());
    CHECK_FALSE(names(stair.not_judged, "riser height"));
}

TEST_CASE("gaps between pickets are those that the marks leave", "[check]") {
    // Every near edge set to the nearest sixteenth along the rail: on a rake from either end, one rail from each; over
    // a floor from the from end.
    for (const bool raked : {true, false}) {
        const double along = raked ? std::sqrt(7.25 * 7.25 + 11 * 11) / 11 : 1, half_play = 0.03125;
        const double clear = raked ? 49.5 : 60;
        const int count = raked ? 9 : 11;
        const double gap = (clear - count * 1.5) / (count + 1);
        double widest = gap, first = gap, last = gap;
        for (const bool from_far_end : {false, raked}) {
            double before = 0;
            for (int i = 0; i < count; ++i) {
                const int number = from_far_end ? count - 1 - i : i;
                const double edge = ((number + 1) * gap + number * 1.5 - half_play) * along;
                const double set = std::floor(edge * 16 + 0.5) / 16 / along + half_play;
                const double low = from_far_end ? clear - set - 1.5 : set;
                double& wider = i == 0 ? first : widest;
                wider = std::max(wider, low - before);
                before = low + 1.5;
            }
            last = std::max(last, clear - before);
        }
        REQUIRE(std::max(widest, first) > gap + 0.001);
        const Job job = raked ? even_example() : floor_example(60);
        int gaps = 0;
        for (const Subject& subject : subjects_of(job, measured(job)))
            for (const Fact& fact : subject.facts) {
                if (fact.quantity != Quantity::picket_opening) continue;
                INFO(fact.where);
                const double expected = fact.where == "between pickets"    ? widest
                                        : fact.where == "at the from post" ? first
                                        : fact.where == "at the to post"   ? last
                                                                           : 0;
                if (expected == 0) continue;
                ++gaps;
                CHECK_THAT(fact.value, within(expected, 1e-11));
            }
        CHECK(gaps == 3);
    }
}

TEST_CASE("a handrail is as high over a nosing as that lies under the line", "[check]") {
    // Rises of 7, 8 and 7 on runs of 10: nosings at 7, 15 and 22. The narrowest strip lies along the line through the
    // first and last, 7 1/2 each run; the second stands 1/2 over that. The line runs 1/4 over the first and last.
    Job job = only_stair(measured_stair({7, 8, 7}, {10, 10}));
    Handrail rail;
    rail.id = called("left-hand");
    rail.stair = ref(0);
    rail.height = 36;
    rail.profile.diameter = Reading(1.5);
    job.handrails = {rail};
    std::vector<double> heights;
    for (const Subject& subject : subjects_of(job, measured(job)))
        for (const Fact& fact : subject.facts)
            if (fact.quantity == Quantity::handrail_height) heights.push_back(fact.value);
    REQUIRE(heights.size() == 3);
    CHECK_THAT(heights[0], within(36.25, 1e-12));
    CHECK_THAT(heights[1], within(35.75, 1e-12));
    CHECK_THAT(heights[2], within(36.25, 1e-12));
}

TEST_CASE("a grip with finger recesses is judged by them where the document does, and as any other where not",
          "[check]") {
    Job job = only_stair(even_stair());
    Handrail rail;
    rail.id = called("wide");
    rail.stair = ref(0);
    rail.height = 36;
    rail.profile.perimeter = Reading(7);
    rail.profile.width = Reading(2.5);
    job.handrails = {rail};
    CHECK(only_check(judged(job, rules("irc-2021")), "grip perimeter").verdict == Verdict::fail);
    job.handrails[0].profile.recess = Recess{0.5, 0.375, 0.75, 0.5, 2, 2};
    const Verdicts verdicts = judged(job, rules("irc-2021"));
    CHECK(only_check(verdicts, "recess depth").verdict == Verdict::pass);
    for (const Check& check : verdicts.checks) CHECK(check.rule->id.name != "grip perimeter");
    CHECK(std::any_of(verdicts.not_applied.begin(), verdicts.not_applied.end(), [](const NotApplied& rule) {
        return rule.rule->id.name == "grip perimeter" && rule.because == Quantity::recess_depth;
    }));
    // The business code without its dwelling exception knows no such grip.
    CHECK(only_check(judged(job, rules("ibc-2021")), "grip perimeter").verdict == Verdict::fail);
}

}  // namespace rakewright::tests
