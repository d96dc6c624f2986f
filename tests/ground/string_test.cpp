#include <cmath>

#include "../support/measured.hpp"
#include "../support/near.hpp"

namespace rakewright::tests {
namespace {

const double lengthened = std::sqrt(1 + even_slope * even_slope);

Job closed(const Build& build, double above) {
    Job job = even_example(build);
    job.stairs[0].strings = {StringKind::closed, StringKind::closed};
    job.stairs[0].string_above = Reading(above);
    return job;
}

int count_under_rail(const SectionResult& section) {
    int count = 0;
    for (const Opening& opening : section.openings) count += opening.kind == Opening::Kind::under_rail;
    return count;
}

std::optional<double> over_string(const SectionResult& section) {
    for (const Opening& opening : section.openings)
        if (opening.kind == Opening::Kind::over_string) return opening.sphere;
    return std::nullopt;
}

}  // namespace

TEST_CASE("over a closed string pickets are spaced and cut as between two groups", "[string]") {
    const SectionResult section = measured(closed(open_build(), 2)).sections[0];
    // Sums by hand: 49 1/2 clear, 1 1/4 pickets, at most 3 15/16: nine, and ten gaps of 38 1/4 / 10.
    REQUIRE(section.pickets->count == 9);
    CHECK_THAT(section.pickets->gap.value(), within(3.825, 1e-12));
    CHECK(section.pickets->feet.empty());
    REQUIRE(section.pickets->pieces.size() == 1);
    CHECK_THAT(section.pickets->pieces[0].uphill_side, within(36 - 2.5 * lengthened - 2, 1e-12));
    CHECK_THAT(section.pickets->pieces[0].downhill_side, within(36 - 2.5 * lengthened - 2, 1e-12));
    CHECK_THAT(section.clear, within(49.5, 1e-12));
    CHECK(section.pickets->lower.centres.empty());
    CHECK(count_under_rail(section) == 0);
    CHECK_THAT(section.openings[0].sphere, within(3.825, 1e-11));
}

TEST_CASE("pickets on a string are those on a lower group whose top is as high", "[string]") {
    const double top = 2 + 1.5 * lengthened;
    Build build = square_build();
    build.pickets->plough = {0.25, 0.375};
    const Job on_rail = even_example(build);
    build.lower.clear();
    build.lower_gap.reset();
    const Job on_string = closed(build, top);
    const SectionResult rail = measured(on_rail).sections[0], string = measured(on_string).sections[0];
    REQUIRE(rail.pickets->centres.size() == string.pickets->centres.size());
    for (std::size_t i = 0; i < rail.pickets->centres.size(); ++i)
        CHECK_THAT(string.pickets->centres[i], within(rail.pickets->centres[i], 1e-12));
    REQUIRE(string.pickets->pieces.size() == 1);
    CHECK_THAT(string.pickets->pieces[0].uphill_side, within(rail.pickets->pieces[0].uphill_side, 1e-12));
    CHECK_THAT(string.pickets->pieces[0].overall, within(rail.pickets->pieces[0].overall, 1e-12));
    for (std::size_t i = 0; i < 3; ++i) {
        CHECK(string.openings[i].kind == rail.openings[i].kind);
        CHECK_THAT(string.openings[i].sphere, within(rail.openings[i].sphere, 1e-11));
    }
    // The same from the clear distance alone.
    Job taped = on_string;
    taped.posts.clear();
    taped.sections[0].from = taped.sections[0].to = {};
    taped.sections[0].stair = ref(0);
    taped.sections[0].clear = Reading(49.5);
    const SectionResult by_tape = measured(taped).sections[0];
    REQUIRE(by_tape.pickets->pieces.size() == 1);
    CHECK_THAT(by_tape.pickets->pieces[0].uphill_side, within(rail.pickets->pieces[0].uphill_side, 1e-12));
}

TEST_CASE("a closed string leaves a lower group where it is", "[string]") {
    const SectionResult open = measured(even_example()).sections[0],
                        shut = measured(closed(square_build(), 2)).sections[0];
    CHECK(count_under_rail(open) == 6);
    CHECK(count_under_rail(shut) == 0);
    CHECK(over_string(shut) == 0.0);  // it stands on it
    for (std::size_t i = 0; i < open.members.size(); ++i) CHECK(open.members[i].length == shut.members[i].length);
    CHECK(open.ends[0].lower->underside == shut.ends[0].lower->underside);
    Job low = closed(square_build(), 2);
    low.stairs[0].string_above = Reading(2.0625);
    CHECK(has(solve(low), Trouble::below_string));
    low.stairs[0].string_above.reset();
    CHECK_FALSE(solve(low).refused());
}

TEST_CASE("between a closed string and a lower group the ball is what is plumb between them, square to the rake",
          "[string]") {
    // Two lines on the slope, 3 1/2 apart plumb: a ball touches both square to the rake, 3.5 / sqrt(1 + slope^2).
    Job job = closed(square_build(), 2);
    job.sections[0].lower_gap = LowerGap{5.5};
    CHECK_THAT(over_string(measured(job).sections[0]).value(), within(3.5 / lengthened, 1e-12));
    Job taped = job;
    taped.posts.clear();
    taped.sections[0].from = taped.sections[0].to = {};
    taped.sections[0].stair = ref(0);
    taped.sections[0].clear = Reading(49.5);
    CHECK_THAT(over_string(measured(taped).sections[0]).value(), within(3.5 / lengthened, 1e-12));
    // 2 level between the posts, and more than that from the string to the rail: a ball fits between the posts.
    taped.sections[0].clear = Reading(2);
    CHECK_THAT(over_string(measured(taped).sections[0]).value(), within(2, 1e-12));
    // Where nobody says how high the string is, nobody can say how wide that is.
    job.stairs[0].string_above.reset();
    CHECK_FALSE(over_string(measured(job).sections[0]));
}

TEST_CASE("where the strings differ a section says on which side it is", "[string]") {
    Job job = closed(open_build(), 2);
    job.stairs[0].strings.right = StringKind::open;
    CHECK(has(solve(job), Trouble::side_missing));
    job.sections[0].side = NamedSide{true, {}};
    CHECK(measured(job).sections[0].pickets->feet.empty());
    job.sections[0].side = NamedSide{false, {}};
    CHECK(measured(job).sections[0].pickets->feet.size() == 12);
    job.sections[0].side = NamedSide{true, {}};
    job.stairs[0].string_above.reset();
    CHECK(has(solve(job), Trouble::string_above_missing));
    // Straight across, and over a floor, there is no string.
    job.sections[0].side.reset();
    job.posts = {placed_post(6, 0), placed_post(6, 0)};
    job.posts[1].across = 50;
    CHECK_FALSE(solve(job).refused());
}

}  // namespace rakewright::tests
