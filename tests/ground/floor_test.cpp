#include <cmath>

#include "../identities/every_result.hpp"
#include "../support/measured.hpp"
#include "../support/near.hpp"

namespace rakewright::tests {
namespace {

Floor falling(double rise, double run, Toward toward) {
    Floor floor;
    floor.id = called("porch");
    floor.falls = {{rise, run}, {}};
    floor.toward = toward;
    return floor;
}

Job over(const Floor& floor, double clear, const Build& build, Follow follow = Follow::level) {
    Job job = floor_example(clear, build);
    job.floors = {floor};
    job.sections[0].floor = ref(0);
    job.sections[0].follow = follow;
    return job;
}

/// Two posts straight across the landing of the even example, and a section between them.
Job across_the_landing(const Build& build) {
    Job job = even_example(build);
    for (Post& post : job.posts) {
        post.nosing.value = 0;
        post.at = Reading(6);
    }
    job.posts[0].across = 30;
    job.posts[1].across = -30;
    return job;
}

double ball_under(const SectionResult& section) {
    for (const Opening& opening : section.openings)
        if (opening.kind == Opening::Kind::under_rail) return opening.sphere;
    FAIL("no opening under the rail");
    return 0;
}

Build porch_build() {
    Build build = square_build();
    build.lower_gap = LowerGap{2.5, false};
    build.bracket->leg = LegWish::up;
    return build;
}

/// The largest circle at the tall end of a trapezoid with a plumb end `tall` high, a level top and a bottom that rises
/// by `slope`: the incircle of the right triangle that its three lines make, of diameter a + b - c.
double at_tall_end(double tall, double slope) {
    const double level = tall / slope;
    return tall + level - std::sqrt(tall * tall + level * level);
}

bool same_results(const Job& one, const Job& other) {
    const std::vector<Result> a = every_result(one, measured(one)), b = every_result(other, measured(other));
    if (a.size() != b.size()) return false;
    for (std::size_t i = 0; i < a.size(); ++i)
        if (a[i].where != b[i].where || a[i].word != b[i].word || !same_bits(a[i].value, b[i].value)) return false;
    return true;
}

}  // namespace

// Miller, The Carpenters' Guide, Porch: a porch floor falls 1 in 6 ft; 2 1/2 left at the high end is 2 1/2 + 1 2/3 = 4
// 1/6 after 10 ft.
TEST_CASE("over a porch floor that falls 1 in 6 ft, 2 1/2 under a level rail becomes 4 1/6 in 10 ft",
          "[floor][published]") {
    const Job job = over(falling(1, 72, Toward::to), 120, porch_build());
    const Solution solution = measured(job);
    const SectionResult& section = solution.sections[0];
    CHECK(section.slope == 0);
    CHECK_THAT(section.floor_falls.value(), within(1 + 2.0 / 3, 1e-14));
    CHECK(section.ends[0].lower->underside == 2.5);
    CHECK_THAT(section.ends[1].lower->underside, within(4 + 1.0 / 6, 1e-14));
    CHECK(section.ends[0].upper->top == 36);
    CHECK_THAT(section.ends[1].upper->top, within(37 + 2.0 / 3, 1e-13));
    CHECK_THAT(section.brackets[3].mark_height.value(), within(4 + 1.0 / 6, 1e-14));
    CHECK_THAT(ball_under(section), within(at_tall_end(4 + 1.0 / 6, 1.0 / 72), 1e-11));
    CHECK(has(solution, Trouble::floor_falls));
}

TEST_CASE("the ball under a level rail stands at the low end, whichever that is and however steep", "[floor]") {
    for (const double fall : {0.25 / 12, 1.0 / 48, 0.1, 0.17})
        for (const Toward toward : {Toward::to, Toward::from}) {
            const Job job = over(falling(fall, 1, toward), 90, porch_build());
            CHECK_THAT(ball_under(measured(job).sections[0]), within(at_tall_end(2.5 + 90 * fall, fall), 1e-11));
        }
}

TEST_CASE("pickets without a lower group stand on the floor where it is under their centres", "[floor]") {
    // Sums by hand: 24 clear, four pickets of 1 1/4, so five gaps of 3.8 and a pitch of 5.05.
    const double fall = 0.25 / 12;
    for (const Toward toward : {Toward::to, Toward::from}) {
        const Job job = over(falling(0.25, 12, toward), 24, open_build(1.25, 3.875));
        const SectionResult section = measured(job).sections[0];
        REQUIRE(section.pickets->count == 4);
        REQUIRE(section.pickets->pieces.size() == 4);
        const double centres[] = {4.425, 9.475, 14.525, 19.575};
        for (std::size_t i = 0; i < 4; ++i) {
            const PicketPiece& piece = section.pickets->pieces[i];
            const double from_high = toward == Toward::to ? centres[i] : 24 - centres[i];
            CHECK_THAT(piece.uphill_side, within(36 - 2.5 + fall * from_high, 1e-13));
            CHECK_THAT(piece.downhill_side, within(piece.uphill_side, 1e-13));
        }
    }
}

TEST_CASE("a rail that follows its floor is raked as the floor is, all heights plumb above it", "[floor]") {
    const double fall = 1.0 / 48, lengthened = std::sqrt(1 + fall * fall);
    for (const Toward toward : {Toward::to, Toward::from}) {
        const Job job = over(falling(0.25, 12, toward), 120, porch_build(), Follow::floor);
        const SectionResult section = measured(job).sections[0];
        CHECK(section.slope == (toward == Toward::to ? -fall : fall));
        CHECK_THAT(section.clear_on_slope, within(120 * lengthened, 1e-12));
        for (const EndHeights& end : section.ends) {
            CHECK_THAT(end.upper->top, within(36, 1e-13));
            CHECK_THAT(end.lower->underside, within(2.5, 1e-13));
        }
        for (const Bracket& bracket : section.brackets)
            CHECK_THAT(bracket.mark_height.value(),
                       within(bracket.group == Group::lower ? 2.5 : 36 - 2.75 * lengthened, 1e-13));
        CHECK_THAT(ball_under(section), within(2.5 / lengthened, 1e-12));
        REQUIRE(section.pickets->pieces.size() == 1);
        CHECK_THAT(section.pickets->pieces[0].uphill_side, within(36 - 2.5 - 4.25 * lengthened, 1e-12));
    }
    // On the floor itself: feet cut square, heads at the floor's own slope, so that the sides differ by it over the
    // width.
    const Job job = over(falling(0.25, 12, Toward::from), 24, open_build(1.25, 3.875), Follow::floor);
    const SectionResult section = measured(job).sections[0];
    REQUIRE(section.pickets->pieces.size() == 1);
    CHECK_THAT(section.pickets->pieces[0].uphill_side, within(36 - 2.5 * lengthened + fall * 0.625, 1e-12));
    CHECK_THAT(section.pickets->pieces[0].downhill_side, within(36 - 2.5 * lengthened - fall * 0.625, 1e-12));
}

TEST_CASE("a floor that falls to the from end mirrors one that falls to the to end", "[floor]") {
    for (const Build& build : {porch_build(), open_build()})
        for (const Follow follow : {Follow::level, Follow::floor}) {
            const SectionResult there = measured(over(falling(3, 100, Toward::to), 77.3, build, follow)).sections[0],
                                back = measured(over(falling(3, 100, Toward::from), 77.3, build, follow)).sections[0];
            CHECK(there.slope == -back.slope);
            for (std::size_t end : {0U, 1U}) {
                CHECK_THAT(there.ends[end].upper->top, within(back.ends[1 - end].upper->top, 1e-12));
                CHECK_THAT(there.ends[end].upper->underside, within(back.ends[1 - end].upper->underside, 1e-12));
            }
            for (std::size_t i = 0; i < there.members.size(); ++i) {
                CHECK_THAT(there.members[i].length, within(back.members[i].length, 1e-12));
                CHECK_THAT(there.members[i].overall, within(back.members[i].overall, 1e-12));
            }
            const std::vector<PicketPiece>&a = there.pickets->pieces, &b = back.pickets->pieces;
            REQUIRE(a.size() == b.size());
            for (std::size_t i = 0; i < a.size(); ++i) {
                CHECK(a[i].count == b[b.size() - 1 - i].count);
                CHECK_THAT(a[i].uphill_side, within(b[b.size() - 1 - i].uphill_side, 1e-12));
                CHECK_THAT(a[i].downhill_side, within(b[b.size() - 1 - i].downhill_side, 1e-12));
            }
            REQUIRE(there.openings.size() == back.openings.size());
            for (const Opening& one : there.openings)
                for (const Opening& other : back.openings)
                    if (one.kind == other.kind && (!one.end || *one.end != *other.end))
                        CHECK_THAT(one.sphere, within(other.sphere, 1e-11));
        }
}

TEST_CASE("a floor that falls by nothing is a level floor, to the last bit", "[floor]") {
    for (const Build& build : {porch_build(), open_build()})
        for (const Follow follow : {Follow::level, Follow::floor})
            for (const Toward toward : {Toward::to, Toward::from})
                CHECK(same_results(over(falling(0, 1, toward), 77.3, build, follow), floor_example(77.3, build)));
}

TEST_CASE("straight across a landing a floor takes the place of the nosing line", "[floor]") {
    // The landing is at 36 1/4, and the feet of the posts with it; 56 1/2 clear, so the floor falls 56 1/2 / 48.
    const double fall = 56.5 / 48;
    for (const Toward toward : {Toward::to, Toward::from})
        for (const Follow follow : {Follow::level, Follow::floor}) {
            Job job = across_the_landing(porch_build());
            job.floors = {falling(0.25, 12, toward)};
            job.sections[0].floor = ref(0);
            job.sections[0].follow = follow;
            const Solution solution = measured(job);
            const SectionResult& section = solution.sections[0];
            CHECK(solution.posts[0].base() == 36.25);
            CHECK_THAT(section.floor_falls.value(), within(fall, 1e-12));
            const bool follows = follow == Follow::floor;
            const std::size_t low = toward == Toward::to ? 1 : 0;
            CHECK_THAT(section.ends[1 - low].upper->top, within(36, 1e-12));
            CHECK_THAT(section.ends[low].upper->top, within(follows ? 36 : 36 + fall, 1e-12));
            CHECK_THAT(ball_under(section),
                       within(follows ? 2.5 / std::sqrt(1 + 1.0 / 48 / 48) : at_tall_end(2.5 + fall, 1.0 / 48), 1e-11));
        }
    // Pickets on the floor: as with the clear distance alone.
    Job placed = across_the_landing(open_build());
    placed.floors = {falling(0.25, 12, Toward::to)};
    placed.sections[0].floor = ref(0);
    const SectionResult a = measured(placed).sections[0],
                        b = measured(over(placed.floors[0], 56.5, open_build())).sections[0];
    REQUIRE(a.pickets->pieces.size() == b.pickets->pieces.size());
    for (std::size_t i = 0; i < a.pickets->pieces.size(); ++i)
        CHECK_THAT(a.pickets->pieces[i].uphill_side, within(b.pickets->pieces[i].uphill_side, 1e-12));
}

TEST_CASE("in millimetres everything is 25.4 times as long", "[floor]") {
    const double mm = millimetres_in_an_inch;
    Build build = porch_build();
    const Job inches = over(falling(0.25, 12, Toward::to), 90, build);
    for (std::vector<MemberSize>* group : {&build.upper, &build.lower})
        for (MemberSize& member : *group) member = {member.name, member.width * mm, member.depth * mm};
    build.height = build.height * mm;
    build.lower_gap->size = build.lower_gap->size * mm;
    build.play = build.play * mm;
    build.pickets->width = build.pickets->width * mm;
    build.pickets->depth = build.pickets->depth * mm;
    build.pickets->max_gap = build.pickets->max_gap->value * mm;
    build.bracket.reset();
    Job metric = over(falling(6.35, 304.8, Toward::to), 90 * mm, build);
    metric.units = Unit::millimetre;
    const SectionResult a = measured(inches).sections[0], b = measured(metric).sections[0];
    CHECK_THAT(b.floor_falls.value(), within(*a.floor_falls * mm, 1e-10));
    CHECK_THAT(b.ends[1].lower->underside, within(a.ends[1].lower->underside * mm, 1e-10));
    CHECK_THAT(ball_under(b), within(ball_under(a) * mm, 1e-9));
}

TEST_CASE("a floor under a raked section is refused, and `follow` without a floor is said to do nothing", "[floor]") {
    Job raked = even_example();
    raked.floors = {falling(0.25, 12, Toward::to)};
    raked.sections[0].floor = ref(0);
    CHECK(has(solve(raked), Trouble::floor_under_rake));
    Job with_clear = over(raked.floors[0], 40, porch_build());
    with_clear.stairs = {even_stair()};
    with_clear.sections[0].stair = ref(0);
    CHECK(has(solve(with_clear), Trouble::floor_under_rake));
    Job nearly_across = across_the_landing(porch_build());
    nearly_across.posts[1].at = Reading(6.5);
    nearly_across.floors = raked.floors;
    nearly_across.sections[0].floor = ref(0);
    CHECK(has(solve(nearly_across), Trouble::floor_under_rake));
    Job nothing = floor_example(60, porch_build());
    nothing.sections[0].follow = Follow::floor;
    CHECK(has(solve(nothing), Trouble::follow_without_floor));
}

}  // namespace rakewright::tests
