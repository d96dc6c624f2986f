#include "../../solver/picket/spacing.hpp"

#include <cmath>

#include "../support/even_example.hpp"
#include "../support/near.hpp"

namespace rakewright::tests {
namespace {

/// The first count that will do, tried one by one in whole 64ths.
int counted_in_64ths(long long clear, long long width, long long max_gap) {
    int count = 0;
    while (clear - count * width > max_gap * (count + 1)) ++count;
    return count;
}

/// An even flight under a rail straight up it between two plumb faces.
struct Flight {
    StairShape stair;
    RailLine line;

    Flight(double rise, double run, double nosing, int risers, double from_face, double to_face) {
        Stair given;
        given.risers = Count(risers);
        given.rise = Reading(rise);
        given.run = Reading(run);
        given.nosing = nosing;
        std::vector<Finding> findings;
        stair = shape_of(given, findings);
        line.origin = Vector(from_face, 0, stair.line->at(from_face));
        line.slope = stair.line->slope;
        line.from = {Vector(from_face, 0, 0), Vector::UnitX()};
        line.to = {Vector(to_face, 0, 0), -Vector::UnitX()};
    }

    TreadRoom room(double width) const {
        return {stair, line, 33, 0, line.to.point.x() - line.from.point.x(), width, width};
    }
};

/// Thirteen risers of 7 1/2 on 10, newels over the risers at both ends ("Building Construction" vol. 3,
/// Stair Building: the centre of the riser at the centre of the newel).
const Flight thirteen(7.5, 10, 1, 13, 2.75, 119.25);

std::vector<double> gaps_between(const TreadLayout& layout, double width) {
    std::vector<double> gaps = gaps_of(layout.layout, width);
    return {gaps.begin() + 1, gaps.end() - 1};
}

}  // namespace

TEST_CASE("equal gaps between two groups", "[picket][spacing]") {
    // Derived: (L - N w) / (N + 1).
    CHECK_THAT(equal_gap({68, 3}, 13), within(29.0 / 14, 1e-15));
    CHECK(fewest_between({68, 1.5}, 4) == 12);
    CHECK_THAT(equal_gap({68, 1.5}, 12), within(3.846154, 5e-7));
    CHECK(fewest_between({72, 0.75}, 4) == 15);
    CHECK(equal_gap({72, 0.75}, 15) == 3.796875);
    CHECK(fewest_between({1000, 19}, 99) == 8);
    CHECK_THAT(equal_gap({1000, 19}, 8), within(94.222222, 5e-7));
}

TEST_CASE("the fewest is the fewest: one picket less leaves too wide a gap", "[picket][spacing]") {
    for (long long clear = 64; clear < 64 * 130; clear += 37)
        for (const long long width : {32LL, 48LL, 80LL, 96LL, 224LL})
            for (const long long max_gap : {224LL, 240LL, 248LL, 256LL}) {
                const auto count = fewest_between({double(clear) / 64, double(width) / 64}, double(max_gap) / 64);
                REQUIRE(count == counted_in_64ths(clear, width, max_gap));
            }
}

TEST_CASE("a gap equal to max_gap is allowed, and takes not one picket more", "[picket][spacing]") {
    for (int count = 0; count <= 120; ++count)
        for (const double width : {0.5, 0.625, 0.75, 1.0, 1.25, 1.375, 1.5, 3.5, 0.1, 0.7, 1.1, 1.0 / 3}) {
            const double max_gap = 3.75, clear = count * width + (count + 1) * max_gap;
            INFO(count << " of " << width);
            REQUIRE(fewest_between({clear, width}, max_gap) == count);
            REQUIRE(fewest_between({clear + 1e-6, width}, max_gap) == count + 1);
            // The same in millimetres, each number converted by itself.
            REQUIRE(fewest_between({clear * 25.4, width * 25.4}, max_gap * 25.4) == count);
            // And as a chain of readings adds up.
            double added = max_gap;
            for (int i = 0; i < count; ++i) added = added + width + max_gap;
            REQUIRE(fewest_between({added, width}, max_gap) == count);
        }
}

TEST_CASE("exact gaps in millimetres", "[picket][spacing]") {
    for (int count = 0; count <= 120; ++count)
        for (const double width : {12.0, 16.5, 19.0, 31.75, 40.1, 88.9})
            for (const double max_gap : {99.0, 95.25, 98.4, 101.6, 100.1}) {
                const double clear = count * width + (count + 1) * max_gap;
                INFO(count << " of " << width << " at " << max_gap);
                REQUIRE(fewest_between({clear, width}, max_gap) == count);
                REQUIRE(fewest_between({clear / 25.4, width / 25.4}, max_gap / 25.4) == count);
                REQUIRE(fewest_between({clear * (1 + 1e-9), width}, max_gap) == count + 1);
            }
}

TEST_CASE("an opening no wider than max_gap takes no picket", "[picket][spacing]") {
    CHECK(fewest_between({3.75, 1.5}, 3.75) == 0);
    CHECK(fewest_between({2, 1.5}, 3.75) == 0);
    CHECK(fewest_between({3.76, 1.5}, 3.75) == 1);
    CHECK(equal_gap({4, 3.75}, 1) == 0.125);
    CHECK(equal_gap({4, 5}, 1) < 0);
    CHECK_FALSE(fewest_between({1e6, 1e-3}, 1e-3).has_value());  // more than anybody cuts
}

TEST_CASE("laid out between two faces: every gap is the same", "[picket][spacing]") {
    const Layout layout = laid_out_between(1.75, 51.25, {49.5, 1.5}, 9);
    CHECK(layout.clear() == 49.5);
    for (const double gap : gaps_of(layout, 1.5)) CHECK_THAT(gap, within(3.6, 1e-14));  // (49.5 - 13.5) / 10
    CHECK_THAT(layout.centres[0], within(1.75 + 3.6 + 0.75, 1e-14));
    CHECK_THAT(layout.centres[8], within(51.25 - 3.6 - 0.75, 1e-14));
}

TEST_CASE("at a joint half a gap is left, as if the span went on mirrored beyond it", "[picket][spacing]") {
    // A span with a joint at one end is one half of a span twice as long between two posts, with twice the pickets.
    const PicketSpan half{40, 1.5, {false, true}}, between_joints{40, 1.5, {true, true}};
    for (int count = 1; count < 12; ++count)
        CHECK_THAT(equal_gap(half, count), within(equal_gap({80, 1.5}, 2 * count), 1e-14));
    CHECK_THAT(equal_gap(between_joints, 8), within((40 - 8 * 1.5) / 8, 1e-14));
    CHECK(fewest_between(half, 3.875) == 8);             // (40 - 12) / 8.5 = 3.29; with 7: 29.5 / 7.5 = 3.93
    CHECK(fewest_between(between_joints, 3.875) == 8);   // 28 / 8 = 3.5; with 7: 29.5 / 7 = 4.21
    CHECK(fewest_between({3, 1.5, {true, true}}, 3.875) == 1);  // none would leave the gap open on both sides
    const Layout layout = laid_out_between(10, 50, half, 8);
    const std::vector<double> gaps = gaps_of(layout, 1.5);
    CHECK_THAT(gaps.front(), within(28 / 8.5, 1e-14));
    CHECK_THAT(gaps[4], within(28 / 8.5, 1e-13));
    CHECK_THAT(gaps.back(), within(14 / 8.5, 1e-13));
    // With a block between them: twice as much at the post as at the joint.
    const Layout blocked = laid_out_between(0, 40, half, {8, 3.25});
    const std::vector<double> with_block = gaps_of(blocked, 1.5);
    CHECK_THAT(with_block.front(), within(2 * with_block.back(), 1e-12));
    CHECK_THAT(with_block[3], within(3.25, 1e-13));
}

TEST_CASE("on treads: the first centre half its width from the riser face, the second half a tread on",
          "[picket][spacing][published]") {
    // American House Carpenter, art. 258; the half tread also in Building Construction, vol. 3, 19.
    const TreadLayout layout = laid_out_on_treads(thirteen.room(1.25), 2);
    for (std::size_t i = 0; i < layout.feet.size(); ++i) {
        const double x = 2.75 + layout.layout.centres[i], riser_face = (layout.feet[i].tread - 1) * 10 + 1;
        CHECK_THAT(x - riser_face, within(layout.feet[i].from_riser + 0.625, 1e-13));
        CHECK((layout.feet[i].from_riser == 0 || layout.feet[i].from_riser == 5));
    }
}

TEST_CASE("a flight of thirteen: 23 balusters, none astride, 3 3/4 apart", "[picket][spacing]") {
    // Two a tread, the second half a rise longer: "Building Construction" vol. 3, Stair Building; the first one's
    // centre half its diameter from the riser: American House Carpenter, art. 258. Counts derived: 1 1/4 balusters,
    // max_gap 3 15/16, two on each of twelve treads; the first stands in the newel.
    CHECK(fewest_per_tread(thirteen.room(1.25), 3.9375) == 2);
    const TreadLayout layout = laid_out_on_treads(thirteen.room(1.25), 2);
    CHECK(layout.layout.centres.size() == 23);
    CHECK(layout.past_nosing == 0);
    for (const double gap : gaps_between(layout, 1.25)) CHECK_THAT(gap, within(3.75, 1e-13));
    CHECK(layout.feet.front().from_riser == 5);
    for (std::size_t i = 0; i < layout.feet.size(); ++i) {
        const double x = 2.75 + layout.layout.centres[i], nosing = (layout.feet[i].tread - 1) * 10;
        CHECK(x - 0.625 >= nosing);
        CHECK(x + 0.625 <= nosing + 10);
    }
}

TEST_CASE("the gap on treads is T/k - w", "[picket][spacing]") {
    // Derived, T/k - w: 10, 1 1/4, 2: 3.75; 10, 5/8, 2: 4.375; 11, 1 1/4, 2: 4.25; 10, 1/2, 2: 4.5.
    const double rows[][3] = {{10, 1.25, 3.75}, {10, 0.625, 4.375}, {11, 1.25, 4.25}, {10, 0.5, 4.5}};
    for (const auto& [run, width, gap] : rows) {
        const Flight flight(7.5, run, 1, 8, -3, 8 * run);
        const TreadLayout layout = laid_out_on_treads(flight.room(width), 2);
        CHECK(layout.layout.centres.size() == 14);
        CHECK_THAT(layout.widest_between(width), within(gap, 1e-13));
        // Equal to the limit is allowed: two on each, and not three.
        CHECK(fewest_per_tread(flight.room(width), gap) == 2);
        CHECK(fewest_per_tread(flight.room(width), gap - 1e-6) == 3);
    }
}

TEST_CASE("thirds of a run that no double can hold are no wider than their limit", "[picket][spacing]") {
    for (const double run : {10.0, 10.5, 11.0, 10.1}) {
        const Flight flight(7.25, run, 0, 9, -3, 9 * run);
        CHECK(fewest_per_tread(flight.room(1.25), run / 3 - 1.25) == 3);
        const Flight metric(7.25 * 25.4, run * 25.4, 0, 9, -3 * 25.4, 9 * run * 25.4);
        CHECK(fewest_per_tread(metric.room(1.25 * 25.4), (run / 3 - 1.25) * 25.4) == 3);
    }
}

TEST_CASE("a picket that would cut into a post is left out; one that touches it stands", "[picket][spacing]") {
    // 7 1/4 on 11, nosing 1, two a tread: the last of four treads stands from 39.5 to 40.75.
    const auto with_head_face = [](double face) { return Flight(7.25, 11, 1, 5, -3.25, face); };
    const TreadLayout touching = laid_out_on_treads(with_head_face(40.75).room(1.25), 2);
    CHECK(touching.layout.centres.size() == 8);
    CHECK_THAT(gaps_of(touching.layout, 1.25).back(), within(0, 1e-13));
    const TreadLayout cut = laid_out_on_treads(with_head_face(40.6875).room(1.25), 2);
    CHECK(cut.layout.centres.size() == 7);
    CHECK_THAT(gaps_of(cut.layout, 1.25).back(), within(40.6875 - 35.25, 1e-13));
    // The foot post likewise: the first stands from 1 to 2.25.
    CHECK(laid_out_on_treads(Flight(7.25, 11, 1, 5, 1, 60).room(1.25), 2).layout.centres.size() == 8);
    CHECK(laid_out_on_treads(Flight(7.25, 11, 1, 5, 1.0625, 60).room(1.25), 2).layout.centres.size() == 7);
}

TEST_CASE("a post that leans over a picket's head leaves it out", "[picket][spacing]") {
    Flight flight(7.25, 11, 1, 5, -3.25, 41);
    CHECK(laid_out_on_treads(flight.room(1.25), 2).layout.centres.size() == 8);
    // The head post's face at 41 on the fourth tread, and 1 in 48 farther downhill with each inch up: 0.25 is gone
    // at 12.
    flight.line.to = {Vector(41, 0, 29), Vector(-1, 0, -1.0 / 48).normalized()};
    CHECK(laid_out_on_treads(flight.room(1.25), 2).layout.centres.size() == 7);
}

TEST_CASE("a picket may come up to the next nosing and not past it", "[picket][spacing]") {
    // Five on 11 at a nosing of 1: the last reaches to 1 + 8.8 + w.
    const auto flight = Flight(7.25, 11, 1, 5, -3.25, 60);
    CHECK(laid_out_on_treads(flight.room(1.2), 5).past_nosing == 0);
    const TreadLayout past = laid_out_on_treads(flight.room(1.25), 5);
    CHECK(past.past_nosing == 1);
    CHECK_THAT(past.past_by, within(0.05, 1e-13));
    CHECK(laid_out_on_treads(flight.room(1.25), 4).past_nosing == 0);
    // Four leave 1 1/2; five would leave 0.95 and do not fit; so there is no count for a limit of 1.
    CHECK(fewest_per_tread(flight.room(1.25), 1.5) == 4);
    CHECK_FALSE(fewest_per_tread(flight.room(1.25), 1).has_value());
}

TEST_CASE("one count serves the flight: the widest tread asks for it", "[picket][spacing]") {
    std::vector<Finding> findings;
    Flight flight(7.25, 10, 0, 4, -3, 60);
    flight.stair = shape_of(measured_stair({7.25, 7.25, 7.25, 7.25}, {10, 11, 10}), findings);
    // With two a tread the gaps are 5 - 1 1/4 on the tens, 5 1/2 - 1 1/4 on the eleven.
    CHECK_THAT(laid_out_on_treads(flight.room(1.25), 2).widest_between(1.25), within(4.25, 1e-13));
    CHECK(fewest_per_tread(flight.room(1.25), 4.25) == 2);
    CHECK(fewest_per_tread(flight.room(1.25), 4) == 3);
}

TEST_CASE("a step's own projection moves its pickets, and with them the gap", "[picket][spacing]") {
    Stair stair = measured_stair({7.25, 7.25, 7.25}, {10, 10});
    stair.nosing = 1;
    stair.steps[1].nosing = Reading(1.5);
    std::vector<Finding> findings;
    Flight flight(7.25, 10, 0, 3, -3, 40);
    flight.stair = shape_of(stair, findings);
    const std::vector<double> gaps = gaps_between(laid_out_on_treads(flight.room(1.25), 2), 1.25);
    REQUIRE(gaps.size() == 3);
    CHECK_THAT(gaps[0], within(3.75, 1e-13));
    CHECK_THAT(gaps[1], within(4.25, 1e-13));  // from 6 + 1 1/4 to 11 1/2
    CHECK_THAT(gaps[2], within(3.75, 1e-13));
}

TEST_CASE("named from the head the same pickets come in the other order", "[picket][spacing]") {
    Flight down(7.25, 11, 1, 5, -3.25, 46.25);
    const TreadLayout up = laid_out_on_treads(down.room(1.25), 3);
    down.line = {Vector(46.25, 0, down.stair.line->at(46.25)), -1, 0, -down.line.slope, down.line.to, down.line.from};
    const TreadLayout falling = laid_out_on_treads(down.room(1.25), 3);
    REQUIRE(falling.layout.centres.size() == up.layout.centres.size());
    const std::size_t n = up.layout.centres.size();
    for (std::size_t i = 0; i < n; ++i) {
        CHECK_THAT(falling.layout.centres[i], within(49.5 - up.layout.centres[n - 1 - i], 1e-13));
        CHECK(falling.feet[i].tread == up.feet[n - 1 - i].tread);
        CHECK(falling.feet[i].from_riser == up.feet[n - 1 - i].from_riser);
    }
}

TEST_CASE("the count that brings the gaps at the posts under the limit", "[picket][spacing]") {
    // Two on 11 end at 40.75, 5 1/2 short of the head post's face; three end at 34 + 22/3 + 1 1/4, 3.67 short.
    const Flight flight(7.25, 11, 1, 5, -3.25, 46.25);
    CHECK(per_tread_for_ends(flight.room(1.25), 4.5, 2) == 3);
    // The gap at the foot, 4 1/4, is the same at any count.
    CHECK_FALSE(per_tread_for_ends(flight.room(1.25), 4, 2).has_value());
}

}  // namespace rakewright::tests
