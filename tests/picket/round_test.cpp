#include <cmath>

#include "../../solver/crew/order.hpp"
#include "../../solver/crew/paint.hpp"
#include "../../solver/cut_list.hpp"
#include "../../solver/stock_plan.hpp"
#include "../identities/jobs.hpp"
#include "../support/face_build.hpp"
#include "../support/measured.hpp"
#include "../support/near.hpp"

// Round pickets: a square one of their diameter has the same lengths, marks and openings.

namespace rakewright::tests {
namespace {

const double pi = std::acos(-1.0), on_slope = std::sqrt(11 * 11 + 7.25 * 7.25) / 11;

Pickets pickets_of_job(const Job& job) {
    const Solution solution = solve(job);
    REQUIRE_FALSE(solution.refused());
    return solution.sections.front().pickets.value();
}

}  // namespace

TEST_CASE("a round picket is as long as a square one of its diameter", "[picket][round]") {
    const Job job = even_example(round_build());
    Job square = job;
    square.builds[0].pickets->shape = PicketShape::square;
    const Pickets one = pickets_of_job(job), other = pickets_of_job(square);
    REQUIRE(one.count == other.count);
    CHECK(one.upper.centres == other.upper.centres);
    CHECK(one.pieces[0].uphill_side == other.pieces[0].uphill_side);
    CHECK(one.pieces[0].downhill_side == other.pieces[0].downhill_side);
    CHECK(one.pieces[0].overall == other.pieces[0].overall);
    const Solution round_one = measured(job), square_one = measured(square);
    const std::vector<Opening>&a = round_one.sections[0].openings, &b = square_one.sections[0].openings;
    REQUIRE(a.size() == b.size());
    for (std::size_t i = 0; i < a.size(); ++i) CHECK(a[i].sphere == b[i].sphere);
    // A square one in a plough has strips between; a round one has its hole.
    CHECK_FALSE(other.fillets.empty());
    CHECK(one.fillets.empty());
    CHECK_FALSE(other.hole);
}

TEST_CASE("holes bored plumb take in the long side of a raked end", "[picket][round]") {
    const Pickets raked = pickets_of_job(even_example(round_build()));
    REQUIRE(raked.hole);
    CHECK(raked.hole->diameter == 0.75);
    CHECK_THAT(raked.hole->upper, within(on_slope + 0.375 * 7.25 / 11, 1e-12));
    CHECK_THAT(raked.hole->lower, within(0.5 * on_slope + 0.375 * 7.25 / 11, 1e-12));
    const Pickets level = pickets_of_job(floor_example(60, round_build()));
    CHECK(level.hole->upper == 1);
    CHECK(level.hole->lower == 0.5);
    // On a tread a hole is bored into what is level.
    Build open = round_build();
    open.lower.clear();
    open.lower_gap.reset();
    const Pickets on_treads = pickets_of_job(even_example(open));
    CHECK(on_treads.hole->lower == 0.5);
    Build none = round_build();
    none.pickets->plough = {};
    CHECK_FALSE(pickets_of_job(even_example(none)).hole);
}

TEST_CASE("a hole that comes out of its rail is refused by its flat bottom's edge", "[picket][round]") {
    // Square to the rail the bottom's far edge is deeper than the picket enters by diameter times the sine of the rake.
    const double sine = 7.25 / 11 / on_slope;
    Job job = even_example(round_build());
    const auto with_rail = [&](double depth) {
        job.builds[0].upper[0].depth = depth;
        return solve(job);
    };
    CHECK_FALSE(with_rail(1 + 0.75 * sine + 1e-6).refused());
    const Solution solution = with_rail(1 + 0.75 * sine - 1e-6);
    REQUIRE(solution.refused());
    CHECK(has(solution, Trouble::bore_through_rail));
}

TEST_CASE("a round bar through a web needs a slot of its diameter", "[picket][round]") {
    Job job = even_example(round_build());
    job.builds[0].pickets->plough = {};
    job.builds[0].pickets->slot = Punched{0.125, 0.0625};
    const Pickets pickets = pickets_of_job(job);
    CHECK_THAT(pickets.slot->length, within(0.75 * on_slope + 0.125 * 7.25 / 11 + 0.0625, 1e-12));
    CHECK_THAT(pickets.slot->width, within(0.8125, 1e-13));
}

TEST_CASE("round pickets are bought, cut and painted as round bars", "[picket][round]") {
    Job job = even_example(round_build());
    job.order_list = OrderWish();
    job.paint = PaintWish();
    Stock stock;
    stock.section = {Reading(0.75)};
    stock.lengths = {Reading(120)};
    job.stock = {stock};
    // As many square ones of the same size in a second section.
    job.builds.push_back(job.builds[0]);
    job.builds[1].pickets->shape = PicketShape::square;
    job.builds[1].pickets->plough = {};
    job.builds[0].pickets->plough = {};
    job.sections.push_back(job.sections[0]);
    job.sections[1].build = ref(1);
    Solution solution = solve(job);
    plan_stock(job, solution);
    REQUIRE_FALSE(solution.refused());
    const Pickets pickets = *solution.sections[0].pickets;

    const std::vector<CutPiece> list = cut_list(job, solution);
    int round = 0, square = 0;
    for (const CutPiece& piece : list) {
        if (piece.stuff == Stuff::round_picket) round += piece.quantity;
        if (piece.stuff == Stuff::picket) square += piece.quantity;
    }
    CHECK(round == pickets.count);
    CHECK(square == pickets.count);

    // The bars of stock are square: the round ones are left out, and said so.
    int planned = 0;
    for (const BarResult& bar : solution.stock[0].bars) planned += bar.times * static_cast<int>(bar.pieces.size());
    CHECK(planned == pickets.count);
    bool told = false;
    for (const Finding& finding : solution.findings)
        told = told || (finding.trouble == Trouble::left_out_of_stock && finding.numbers[0] == pickets.count);
    CHECK(told);

    bool ordered = false;
    for (const OrderLine& line : order_list(job, solution))
        if (line.what == Ordered::stick && line.shape == SectionShape::circle) {
            CHECK(line.section.width == 0.75);
            CHECK(line.needed == pickets.count);
            CHECK_THAT(*line.in_all, within(pickets.count * pickets.pieces[0].overall, 1e-10));
            ordered = true;
        }
    CHECK(ordered);

    // A mantle and two ellipses, each a circle times the slope's length; in square feet.
    const PaintList painted = paint_list(job, solution);
    const double middle = (pickets.pieces[0].uphill_side + pickets.pieces[0].downhill_side) / 2;
    for (std::size_t i = 0; i < list.size(); ++i)
        if (list[i].stuff == Stuff::round_picket) {
            CHECK_THAT(painted.pieces[i].each.sides, within(pi * 0.75 * middle / 144, 1e-12));
            CHECK_THAT(painted.pieces[i].each.ends, within(2 * pi * 0.375 * 0.375 * on_slope / 144, 1e-12));
        }
}

TEST_CASE("one screw stands in a round picket, whatever its diameter", "[picket][round]") {
    Job job = floor_example(60, round_build());
    job.builds[0].pickets->plough = {};
    job.builds[0].pickets->width = 2.5;
    job.builds[0].pickets->depth = 2.5;
    job.builds[0].screws.emplace();
    job.builds[0].screws->picket_to_upper = ScrewSize{{}, 3, 0.164};
    CHECK(solve(job).sections[0].screws.at(0).count == 1);
    job.builds[0].pickets->shape = PicketShape::square;
    CHECK(solve(job).sections[0].screws.at(0).count == 2);
}

}  // namespace rakewright::tests
