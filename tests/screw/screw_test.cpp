#include "../../solver/screw/screw.hpp"

#include <cmath>

#include "../support/even_example.hpp"
#include "../support/near.hpp"
#include "../support/random.hpp"
#include "../support/turned_build.hpp"

// A section of a plain rake r by hand: a line square to the rail runs at r to a plumb picket, and so leaves one w wide,
// entered by the middle of its end, after w / (2 sin r).

namespace rakewright::tests {
namespace {

const double slope_length = std::sqrt(even_rise * even_rise + even_run * even_run);
const double s = even_rise / slope_length, c = even_run / slope_length;

ScrewSize screw(double length, double diameter = 0.19) { return {{}, length, diameter}; }

template <class Change>
Job with_screws(Job job, const Change& change) {
    job.builds[0].screws.emplace();
    change(*job.builds[0].screws);
    return job;
}

std::vector<JointScrew> screws_of(const Job& job, Joint joint) {
    const Solution solution = solve(job);
    REQUIRE_FALSE(solution.refused());
    std::vector<JointScrew> screws;
    for (const JointScrew& one : solution.sections[0].screws)
        if (one.joint == joint) screws.push_back(one);
    REQUIRE_FALSE(screws.empty());
    return screws;
}

ScrewHold hold_of(const Job& job, Joint joint) { return screws_of(job, joint).front().hold; }

const auto down_into_picket = [](double length) {
    return [length](ScrewBuild& screws) { screws.picket_to_upper = screw(length); };
};

}  // namespace

TEST_CASE("on a rake a screw leaves a plumb picket through its side", "[screw]") {
    // A sub rail 1 1/2 deep, a picket 1 1/2 wide.
    const double in_picket = 0.75 / s;
    const ScrewHold fits = hold_of(with_screws(even_example(), down_into_picket(2.5)), Joint::picket_to_upper);
    CHECK_THAT(fits.hold, within(1, 1e-12));
    CHECK_THAT(fits.longest.value(), within(1.5 + in_picket, 1e-12));
    CHECK(fits.comes_out == ComesOut::nowhere);
    REQUIRE(fits.passed.size() == 2);
    CHECK(fits.passed[0].name == "sub rail");
    CHECK_THAT(fits.passed[0].length, within(1.5, 1e-12));
    CHECK(fits.passed[1].name == "picket");
    const ScrewHold out = hold_of(with_screws(even_example(), down_into_picket(3)), Joint::picket_to_upper);
    CHECK_THAT(out.hold, within(in_picket, 1e-12));
    CHECK(out.comes_out == ComesOut::side);
    // A 3-4-5 rake: 0.75 / 0.6 = 1.25.
    Job job = even_example();
    job.stairs[0].rise = Reading(9);
    job.stairs[0].run = Reading(12);
    CHECK_THAT(hold_of(with_screws(job, down_into_picket(2)), Joint::picket_to_upper).longest.value(),
               within(1.5 + 1.25, 1e-12));
}

TEST_CASE("up into a picket's foot the same", "[screw]") {
    const auto up = [](ScrewBuild& screws) { screws.picket_to_lower = screw(3); };
    const ScrewHold hold = hold_of(with_screws(even_example(), up), Joint::picket_to_lower);
    CHECK(hold.passed[0].name == "bottom rail");
    CHECK_THAT(hold.longest.value(), within(1.5 + 0.75 / s, 1e-12));
    CHECK(hold.comes_out == ComesOut::side);
}

TEST_CASE("a picket in its plough begins there", "[screw]") {
    Job job = even_example();
    job.builds[0].pickets->plough.upper = 0.5;
    const ScrewHold hold = hold_of(with_screws(job, down_into_picket(2)), Joint::picket_to_upper);
    CHECK_THAT(hold.passed[0].length, within(1, 1e-12));
    CHECK_THAT(hold.hold, within(1, 1e-12));
    CHECK_THAT(hold.longest.value(), within(1 + 0.75 / s, 1e-12));
}

TEST_CASE("level, a screw stays in the picket to its foot", "[screw]") {
    const ScrewHold hold = hold_of(with_screws(floor_example(60), down_into_picket(3)), Joint::picket_to_upper);
    CHECK_THAT(hold.longest.value(), within(1.5 + 33.25 - 3.5, 1e-12));
    CHECK(hold.comes_out == ComesOut::nowhere);
}

TEST_CASE("a rail aslant over its stair, and one that falls: its own rake counts", "[screw]") {
    Job job = even_example();
    job.posts[1].across = 40;
    const double apart = 44 + 4 + 5, level = std::sqrt(apart * apart + 1600), rise = even_slope * apart,
                 own = rise / std::sqrt(rise * rise + level * level);
    CHECK_THAT(hold_of(with_screws(job, down_into_picket(2)), Joint::picket_to_upper).longest.value(),
               within(1.5 + 0.75 / own, 1e-11));
    std::swap(job.sections[0].from, job.sections[0].to);
    CHECK_THAT(hold_of(with_screws(job, down_into_picket(2)), Joint::picket_to_upper).longest.value(),
               within(1.5 + 0.75 / own, 1e-11));
}

TEST_CASE("pickets on treads are screwed from above alone", "[screw]") {
    Job job = with_screws(even_example(open_build()), [](ScrewBuild& screws) {
        screws.picket_to_upper = screw(3);
        screws.picket_to_lower = screw(3);
    });
    CHECK_THAT(hold_of(job, Joint::picket_to_upper).longest.value(), within(2.5 + 0.625 / s, 1e-12));
    CHECK(has(solve(job), Trouble::screw_without_joint));
    // Without places for its posts their lengths are not known, and the side of their heads is.
    job = with_screws(floor_example(49.5, open_build()), down_into_picket(3));
    job.stairs = {even_stair()};
    job.sections[0].stair = ref(0);
    CHECK_THAT(hold_of(job, Joint::picket_to_upper).longest.value(), within(2.5 + 0.625 / s, 1e-12));
}

TEST_CASE("two screws from 2 1/2 or 64 mm up, a quarter of the width from the sides: the nearer one counts",
          "[screw]") {
    CHECK(screws_in_picket(2.5, Unit::inch) == 2);
    CHECK(screws_in_picket(2.49, Unit::inch) == 1);
    CHECK(screws_in_picket(64, Unit::millimetre) == 2);
    CHECK(screws_in_picket(63.5, Unit::millimetre) == 1);
    Job job = even_example();
    job.builds[0].pickets->width = 3;
    const JointScrew two = screws_of(with_screws(job, down_into_picket(2)), Joint::picket_to_upper).front();
    CHECK(two.count == 2);
    CHECK_THAT(two.hold.longest.value(), within(1.5 + 0.75 / s, 1e-12));
}

TEST_CASE("members to each other: up through each into what lies on it", "[screw]") {
    const auto between = [](double length) {
        return [length](ScrewBuild& screws) { screws.between_members = ScrewRow{screw(length, 0.1), 12, 3, Driven::up}; };
    };
    const Job job = with_screws(even_example(), between(2.5));
    REQUIRE(screws_of(job, Joint::between_members).size() == 1);  // the lower group is one member
    const ScrewHold hold = hold_of(job, Joint::between_members);
    CHECK(hold.passed[0].name == "sub rail");
    CHECK(hold.passed[1].name == "cap rail");
    CHECK_THAT(hold.hold, within(1, 1e-12));
    CHECK_THAT(hold.longest.value(), within(2.75, 1e-12));
    CHECK(hold_of(with_screws(even_example(), between(2.76)), Joint::between_members).comes_out == ComesOut::top);
    // One as long as the wood does not come out.
    CHECK(hold_of(with_screws(floor_example(60), between(2.75)), Joint::between_members).comes_out ==
          ComesOut::nowhere);
}

TEST_CASE("a bracket's screw in the post: through the plate, and through the post if it is long", "[screw]") {
    const auto into_post = [](double length) {
        return [length](ScrewBuild& screws) { screws.post_leg = screw(length); };
    };
    // Flush: the plate lies in the post, 3 1/2 from its face to the far one. On the surface it lies before that.
    Job job = even_example();
    ScrewHold hold = hold_of(with_screws(job, into_post(3)), Joint::post_leg);
    CHECK(hold.passed[0].name == "bracket");
    CHECK_THAT(hold.passed[0].length, within(0.125, 1e-15));
    CHECK_THAT(hold.hold, within(2.875, 1e-12));
    CHECK_THAT(hold.longest.value(), within(3.5, 1e-12));
    job.builds[0].bracket->post_seat = PostSeat::surface;
    CHECK_THAT(hold_of(with_screws(job, into_post(3)), Joint::post_leg).longest.value(), within(3.625, 1e-12));
    CHECK(hold_of(with_screws(job, into_post(3.63)), Joint::post_leg).comes_out == ComesOut::far_face);
    // One that is turned and leans is as thick square to its face.
    job.posts[0].turn = in_degrees(20);
    job.posts[0].lean.along = in_degrees(3);
    job.posts[0].size = {3.5, 5.5, "", {}};
    CHECK_THAT(hold_of(with_screws(job, into_post(3)), Joint::post_leg).longest.value(), within(3.625, 1e-12));
    // A round one, met in its middle: right across.
    Job round = even_example();
    round.posts[0].shape = PostShape::round;
    round.posts[0].size = {8, 8, "", {}};
    CHECK_THAT(hold_of(with_screws(round, into_post(3)), Joint::post_leg).longest.value(), within(8, 1e-12));
    // A post that has no place still has its size, the smaller; without a post nothing is known.
    Job deck = floor_example(60);
    CHECK_FALSE(hold_of(with_screws(deck, into_post(3)), Joint::post_leg).longest.has_value());
    deck.posts.resize(1);
    deck.posts[0].size = {3.5, 5.5, "", {}};
    deck.sections[0].from = ref(0);
    CHECK_THAT(hold_of(with_screws(deck, into_post(3)), Joint::post_leg).longest.value(), within(3.5, 1e-12));
}

TEST_CASE("a bracket's screw in the rail: out of its top, or at the foot out of its end", "[screw]") {
    const Job job = with_screws(even_example(), [](ScrewBuild& screws) { screws.rail_leg = screw(1.4); });
    // From end upper (holes 1 and 2), from end lower, to end upper, to end lower.
    const std::vector<JointScrew> screws = screws_of(job, Joint::rail_leg);
    REQUIRE(screws.size() == 8);
    // The rail's end is plumb, half the play off the post; the screw leans toward it by sin r for each unit.
    CHECK_THAT(screws[0].hold.longest.value(), within((1 * c - 0.03125) / s, 1e-12));
    CHECK(screws[0].hold.comes_out == ComesOut::nowhere);
    CHECK_THAT(screws[1].hold.longest.value(), within(2.75, 1e-12));
    CHECK_THAT(screws[3].hold.longest.value(), within(1.5, 1e-12));
    CHECK_THAT(screws[4].hold.longest.value(), within(2.75, 1e-12));  // at the head it leans away from the end
    CHECK_THAT(screws[0].hold.hold, within(1.4 - 0.125, 1e-12));
    Job longer = job;
    longer.builds[0].screws->rail_leg->length = 1.6;
    CHECK(screws_of(longer, Joint::rail_leg)[0].hold.comes_out == ComesOut::end);
    CHECK(screws_of(longer, Joint::rail_leg)[3].hold.comes_out == ComesOut::top);
    // On the surface the plate lies under the rail.
    longer.builds[0].bracket->rail_seat = RailSeat::surface;
    CHECK_THAT(screws_of(longer, Joint::rail_leg)[3].hold.longest.value(), within(1.625, 1e-12));
}

TEST_CASE("what comes out, and what holds too little, is told once for each joint", "[screw]") {
    Job job = with_screws(even_example(), down_into_picket(3));
    const auto told = [&](Trouble trouble) {
        std::vector<Finding> findings;
        for (const Finding& finding : solve(job).findings)
            if (finding.trouble == trouble) findings.push_back(finding);
        return findings;
    };
    REQUIRE(told(Trouble::screw_comes_out).size() == 1);
    CHECK(told(Trouble::screw_comes_out)[0].numbers[1] == 3);
    CHECK_THAT(told(Trouble::screw_comes_out)[0].numbers[2], within(1.5 + 0.75 / s, 1e-12));
    CHECK(told(Trouble::screw_comes_out)[0].numbers[3] == 0);
    CHECK(told(Trouble::screw_holds_little).empty());
    job.builds[0].screws->least_hold = Reading(1.5);  // more than the picket's side leaves
    CHECK(told(Trouble::screw_comes_out)[0].numbers[3] == 1);
    CHECK(told(Trouble::screw_holds_little).size() == 1);
    // Six diameters where nothing is said: 1.14.
    job.builds[0].screws->least_hold.reset();
    job.builds[0].screws->picket_to_upper = screw(2.6);
    REQUIRE(told(Trouble::screw_holds_little).size() == 1);
    CHECK_THAT(told(Trouble::screw_holds_little)[0].numbers[1], within(1.1, 1e-12));
    CHECK_THAT(told(Trouble::screw_holds_little)[0].numbers[2], within(1.14, 1e-12));
    job.builds[0].screws->picket_to_upper = screw(2.7);
    CHECK(told(Trouble::screw_holds_little).empty());
}

TEST_CASE("screws of which a build has no joint are told", "[screw]") {
    Job job = even_example();
    Build& build = job.builds[0];
    build.pickets.reset();
    build.bracket.reset();
    build.upper.resize(1);
    build.screws.emplace();
    for (std::optional<ScrewSize>* one :
         {&build.screws->picket_to_upper, &build.screws->picket_to_lower, &build.screws->post_leg,
          &build.screws->rail_leg})
        *one = screw(2);
    for (std::optional<ScrewRow>* one : {&build.screws->between_members, &build.screws->apron_to_lower})
        *one = ScrewRow{screw(2), 12, 3, Driven::up};
    const Solution solution = solve(job);
    CHECK_FALSE(solution.refused());
    int told = 0;
    for (const Finding& finding : solution.findings) told += finding.trouble == Trouble::screw_without_joint;
    CHECK(told == 6);
    CHECK(solution.sections[0].screws.empty());
}

TEST_CASE("turned pickets are screwed in their blocks", "[screw]") {
    const Job job = with_screws(even_example(turned_build(shaft(1))), down_into_picket(2));
    const double width = job.builds[0].pickets->width;
    CHECK_THAT(hold_of(job, Joint::picket_to_upper).longest.value(),
               within(job.builds[0].upper.back().depth + width / 2 / s, 1e-12));
}

TEST_CASE("where a line is in a stick: the points of it that are, tried one by one", "[screw]") {
    Random random("lines through sticks");
    int inside = 0;
    for (int i = 0; i < 100; ++i) {
        const double turn = random.uniform(-3, 3), slope = random.uniform(-1, 1);
        Stick stick;
        stick.frame = frame_on_slope(Vector(random.uniform(-5, 5), random.uniform(-5, 5), random.uniform(-5, 5)),
                                     std::cos(turn), std::sin(turn), slope);
        const auto slant = [&](double at) { return Slant{at, random.uniform(-1, 1), random.uniform(-1, 1)}; };
        stick.piece = {{random.uniform(1, 4), random.uniform(1, 4)}, slant(-6), slant(6)};
        const Vector way = Vector(random.uniform(-1, 1), random.uniform(-1, 1), random.uniform(-1, 1)).normalized();
        const ScrewWay line{stick.frame.origin + Vector(random.uniform(-1, 1), random.uniform(-1, 1), 0) - 10 * way,
                            way};
        const auto is_in = [&](double along) {
            const Vector point = line.seat + along * way - stick.frame.origin;
            const Spot spot{point.dot(stick.frame.left), point.dot(stick.frame.top)};
            const double on = point.dot(stick.frame.along);
            return std::fabs(spot.left) <= stick.piece.section.width / 2 &&
                   std::fabs(spot.top) <= stick.piece.section.depth / 2 && on >= reach(stick.piece.from, spot) &&
                   on <= reach(stick.piece.to, spot);
        };
        double first = NAN, last = NAN;
        for (double along = -5; along < 30; along += 0.01)
            if (is_in(along)) {
                if (std::isnan(first)) first = along;
                last = along;
            }
        const std::optional<Leaves> leaves = within_stick(stick, line);
        INFO("line " << i);
        if (std::isnan(first)) {
            CHECK((!leaves || leaves->within.end - leaves->within.begin < 0.011));
            continue;
        }
        ++inside;
        REQUIRE(leaves.has_value());
        CHECK_THAT(leaves->within.begin, within(first, 0.0101));
        CHECK_THAT(leaves->within.end, within(last, 0.0101));
    }
    CHECK(inside > 50);
}

}  // namespace rakewright::tests
