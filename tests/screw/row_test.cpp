#include "../../solver/screw/row.hpp"

#include <cmath>

#include "../support/even_example.hpp"
#include "../support/near.hpp"
#include "../support/random.hpp"

// Rows of screws along two members, counted by hand.

namespace rakewright::tests {
namespace {

const double slope_length = std::sqrt(even_rise * even_rise + even_run * even_run);
const double c = even_run / slope_length;
const double cap = 1.25, sub = 1.5, play = 0.0625;

ScrewRow row(double length, double every = 12, double from_end = 3, Driven driven = Driven::up) {
    return {{{}, length, 0.164}, every, from_end, driven};
}

Job between(Job job, const ScrewRow& row) {
    job.builds[0].bracket.reset();
    job.builds[0].screws.emplace();
    job.builds[0].screws->between_members = row;
    return job;
}

Job bare(Job job) {
    job.builds[0].pickets.reset();
    return job;
}

std::vector<JointScrew> rows_of(const Job& job, Joint joint) {
    const Solution solution = solve(job);
    REQUIRE_FALSE(solution.refused());
    std::vector<JointScrew> rows;
    for (const JointScrew& one : solution.sections[0].screws)
        if (one.joint == joint) rows.push_back(one);
    return rows;
}

std::vector<double> places_of(const Job& job, Joint joint = Joint::between_members) {
    return rows_of(job, joint).at(0).row->places;
}

}  // namespace

TEST_CASE("a row goes from end to end evenly, nowhere wider apart than asked for", "[screw][row]") {
    const auto places = [](double length, double every) { return row_in({0, length}, every, 1, {}).places; };
    CHECK(places(24, 12) == std::vector<double>{0, 12, 24});
    CHECK(places(24.1, 12).size() == 4);
    CHECK(places(3.3 * 3, 3.3 * 3 / 3).size() == 4);  // but for rounding no more than asked for
    CHECK(places(5, 12) == std::vector<double>{0, 5});
    CHECK(places(0.5, 12) == std::vector<double>{0.25});  // no room for two
}

TEST_CASE("one that would stand in what is taken goes to the middle of the nearest gap", "[screw][row]") {
    // Of 0, 12, 24 the middle one is taken: the gap over it, 13 to 19, has its middle nearer.
    const RowOfScrews moved = row_in({0, 24}, 17, 1, {{-2, -1}, {3, 13}, {19, 20}});
    CHECK(moved.places == std::vector<double>{0, 16, 24});
    CHECK(moved.at_taken == 0);
    // So close they cannot be clear of what is taken: told, and left where they were.
    const RowOfScrews none = row_in({0, 24}, 4, 1, {{3, 13}});
    CHECK(none.places.size() == 7);
    CHECK(none.at_taken == 3);  // 4, 8 and 12
}

TEST_CASE("rows tried by chance: clear of what is taken, near enough, in the stretch", "[screw][row]") {
    Random random("rows of screws");
    for (int i = 0; i < 300; ++i) {
        std::vector<Bore> taken;
        double at = random.uniform(-3, 3);
        const double length = random.uniform(10, 120), every = random.uniform(6, 20);
        while (at < length) {
            const double width = random.uniform(0.5, 2);
            taken.push_back({at, at + width});
            at += width + random.uniform(1, 4);
        }
        const RowOfScrews row = row_in({0, length}, every, 1, taken);
        INFO("row " << i);
        REQUIRE(row.places.size() >= 2);
        CHECK(row.places.front() >= 0);
        CHECK(row.places.back() <= length);
        CHECK(row.at_taken == 0);
        for (std::size_t k = 0; k < row.places.size(); ++k) {
            if (k > 0) CHECK(row.places[k] - row.places[k - 1] <= every + 1e-9);
            for (const Bore& one : taken)
                CHECK((row.places[k] <= one.begin + 1e-9 || row.places[k] >= one.end - 1e-9));
        }
    }
}

TEST_CASE("level, without pickets, cap rail and sub rail are screwed as they are long", "[screw][row]") {
    // 59 15/16 long: from 3 to 56 15/16 five steps of 10.7875.
    const std::vector<double> places = places_of(between(bare(floor_example(60)), row(2.5)));
    REQUIRE(places.size() == 6);
    for (std::size_t i = 0; i < 6; ++i)
        CHECK_THAT(places[i], within(3 + 10.7875 * static_cast<double>(i), 1e-12));
    const JointScrew screw = rows_of(between(bare(floor_example(60)), row(2.5)), Joint::between_members)[0];
    CHECK(screw.row->members == std::array<std::string, 2>{"sub rail", "cap rail"});
    CHECK_THAT(screw.hold.passed[0].room->end.value(), within(3, 1e-12));
    CHECK_THAT(screw.hold.passed[0].room->edge.value(), within(1.25, 1e-12));
    CHECK_THAT(screw.hold.passed[1].room->edge.value(), within(1.75, 1e-12));
}

TEST_CASE("between pickets", "[screw][row]") {
    // Eleven pickets, centres from 4 11/32 every 5 1/8; with half a head each takes up 0.914 to both sides. Of seven, 8.9896
    // apart, the middle one, at 29.97, would meet the sixth picket: it goes half-way to the fifth.
    const std::vector<double> places = places_of(between(floor_example(60), row(2.5)));
    REQUIRE(places.size() == 7);
    const double step = 53.9375 / 6;
    for (const std::size_t i : {0u, 1u, 2u, 4u, 5u, 6u})
        CHECK_THAT(places[i], within(3 + step * static_cast<double>(i), 1e-12));
    CHECK_THAT(places[3], within(4.34375 + 4.5 * 5.125, 1e-12));
    const Solution close = solve(between(floor_example(60), row(2.5, 1)));
    CHECK(has(close, Trouble::screws_at_pickets));
    CHECK_FALSE(has(solve(between(floor_example(60), row(2.5))), Trouble::screws_at_pickets));
}

TEST_CASE("on a rake they keep off the raked ends of both members", "[screw][row]") {
    // Under the sub rail: at the foot the cap's top ends 2 3/4 tan r farther up the slope than the sub rail's underside.
    const double length = (49.5 - play) / c;
    const std::vector<double> places = places_of(between(bare(even_example()), row(2.5)));
    REQUIRE(places.size() == 6);
    CHECK_THAT(places.front(), within((cap + sub) * even_slope + 3, 1e-12));
    CHECK_THAT(places.back(), within(length - 3, 1e-12));
    // From above, the tape hooked at the to end, where the cap's top is long: its mark there is as far from it.
    const Job down = between(bare(even_example()), row(2.5, 12, 3, Driven::down));
    const JointScrew from_above = rows_of(down, Joint::between_members)[0];
    CHECK(from_above.row->hook == End::to);
    CHECK(from_above.row->members == std::array<std::string, 2>{"cap rail", "sub rail"});
    CHECK_THAT(from_above.row->places.front(), within((cap + sub) * even_slope + 3, 1e-12));
    CHECK_THAT(from_above.row->places.back(), within(length - 3, 1e-12));
    CHECK_THAT(from_above.hold.passed[0].length, within(cap, 1e-12));
    CHECK_THAT(from_above.hold.hold, within(2.5 - cap, 1e-12));
    CHECK_THAT(from_above.hold.longest.value(), within(cap + sub, 1e-12));
}

TEST_CASE("in millimetres, aslant over the stair, the same", "[screw][row]") {
    Job job = between(bare(even_example()), row(2.5));
    const auto inches = places_of(job);
    Job skew = job;
    skew.posts[1].across = 40;
    const double apart = 44 + 4 + 5, level = std::sqrt(apart * apart + 1600), own = even_slope * apart / level;
    // The posts' faces are square to the stair: along the rail's middle line plumb cuts all the same.
    CHECK_THAT(places_of(skew).front(), within((cap + sub) * own + 3, 1e-11));
    CHECK(places_of(skew).size() > inches.size());
}

TEST_CASE("off a bracket's leg, and one in the middle of a short piece", "[screw][row]") {
    // The leg reaches 2 1/2 from the bend, which lies in the post's face; the rail begins 1/32 off it.
    Job job = between(bare(floor_example(60)), row(2.5, 12, 1));
    job.builds[0].bracket = bent_plate();
    CHECK_THAT(places_of(job).front(), within(2.5 + 0.164 - 0.03125, 1e-12));
    job.builds[0].screws->between_members->driven = Driven::down;
    CHECK_THAT(places_of(job).front(), within(1, 1e-12));
    const std::vector<double> short_piece = places_of(between(bare(floor_example(5)), row(2.5)));
    REQUIRE(short_piece.size() == 1);
    CHECK_THAT(short_piece[0], within((5 - play) / 2, 1e-12));
}

TEST_CASE("an apron under the bottom rail is a joint of its own", "[screw][row]") {
    Job job = between(bare(floor_example(60)), row(2.5));
    Build& build = job.builds[0];
    build.lower.push_back({"apron", 1, 2.5});
    CHECK(rows_of(job, Joint::between_members).size() == 2);  // cap rail, and the apron by the same key
    build.screws->apron_to_lower = row(2.75, 9, 2, Driven::down);
    CHECK(rows_of(job, Joint::between_members).size() == 1);
    const JointScrew apron = rows_of(job, Joint::apron_to_lower).at(0);
    CHECK(apron.row->members == std::array<std::string, 2>{"bottom rail", "apron"});
    CHECK(apron.group == Group::lower);
    // From 2 to 57 15/16: seven steps.
    CHECK(apron.row->places.size() == 8);
    CHECK_THAT(apron.hold.passed[0].length, within(1.5, 1e-12));
    CHECK_THAT(apron.hold.hold, within(1.25, 1e-12));
    CHECK_THAT(apron.hold.longest.value(), within(4, 1e-12));
    CHECK(apron.hold.comes_out == ComesOut::nowhere);
    CHECK_THAT(apron.hold.passed[1].room->edge.value(), within(0.5, 1e-12));
    CHECK(apron.pilots[1].why == PilotFor::edge);
    CHECK_FALSE(apron.pilots[1].near_edge);  // 3 x 0.164 is 0.492
    build.screws->apron_to_lower = row(4.1, 9, 2, Driven::down);
    CHECK(rows_of(job, Joint::apron_to_lower).at(0).hold.comes_out == ComesOut::bottom);
    build.lower.pop_back();
    CHECK(has(solve(job), Trouble::screw_without_joint));
}

TEST_CASE("a spliced member is screwed at both sides of its joint", "[screw][row]") {
    Job job = between(floor_example(60), row(2.5));
    job.builds[0].longest_stick = Reading(40);
    const Solution solution = solve(job);
    REQUIRE_FALSE(solution.refused());
    const std::vector<Member>& members = solution.sections[0].members;
    REQUIRE(members[1].splices.size() == 1);
    const std::vector<double> places = places_of(job);
    for (const std::size_t m : {0u, 1u})
        for (const Splice& splice : members[m].splices) {
            double below = INFINITY, above = INFINITY;
            for (const double place : places) {
                if (place < splice.at) below = std::fmin(below, splice.at - place);
                if (place > splice.at) above = std::fmin(above, place - splice.at);
            }
            // Cap rail and sub rail are spliced one picket apart: half-way between stands one.
            CHECK(below >= 5.125 / 2 - 1e-9);
            CHECK(above >= 5.125 / 2 - 1e-9);
            CHECK(below < 8);
            CHECK(above < 8);
        }
}

}  // namespace rakewright::tests
