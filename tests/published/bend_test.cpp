#include <sstream>

#include "../../solver/bracket/blank.hpp"
#include "../support/published.hpp"

// Setback, bend allowance and flat lengths of the airframe handbooks. What they print as K is the setback factor, the
// tangent of half the bend; a k-factor is where the neutral line lies.

namespace rakewright::tests {
namespace {

double number_of(const std::string& inputs, const std::string& name) {
    std::istringstream words(inputs);
    for (std::string word, number; words >> word >> number;)
        if (word == name) return printed_number(number);
    return 0;
}

/// The slope of what the angle inside is over a right angle.
double over_square_of(double bend_deg) {
    const Angle bend = angle_from_degrees(bend_deg);
    return bend.run / bend.rise;
}

double ours_of(const PublishedRow& row) {
    const auto given = [&](const char* name) { return number_of(row.inputs, name); };
    const double over_square = over_square_of(given("bend"));
    const Bending bending{given("radius"), given("thickness"), given("k")};
    if (row.unit == "setback factor") return setback_factor(over_square);
    if (row.unit == "allowance") return bend_allowance(bending, over_square);
    BracketBuild plate;
    const double inside = given("thickness") * setback_factor(over_square);  // how much shorter a leg is inside
    const double outside = given("outside") > 0 ? given("outside") : 20 * given("thickness");
    plate.post_leg = outside - inside;
    plate.rail_leg = plate.post_leg;
    plate.thickness = bending.thickness;
    plate.inside_radius = Reading(bending.inside_radius);
    plate.k_factor = bending.k_factor;
    const Blank blank = blank_of(plate, over_square);
    if (row.unit == "setback") return blank.setback;
    if (row.unit == "deduction") return blank.deduction;
    if (row.unit == "flat") return blank.bend_start;
    // A channel of 1, 2 and 1 to the mold lines has two bends.
    if (row.unit == "channel") return 4 - 2 * blank.deduction;
    throw std::runtime_error("no bend: " + row.unit);
}

}  // namespace

TEST_CASE("published bends", "[published][bracket]") {
    const std::vector<PublishedRow> rows = published_table("bends.csv");
    REQUIRE(rows.size() == 33);
    hold_published(rows, 4, ours_of, printed_as_number);
}

TEST_CASE("a strip of four legs and three bends lies as flat as the shop printed it", "[published][bracket]") {
    // Legs of 0.740, 0.420, 1.050 and 1.000 outside, 0.05 thick, bent square to 0.032: flat 2.973, from three
    // deductions printed to three places.
    BracketBuild plate;
    plate.post_leg = 0.74 - 0.05;
    plate.rail_leg = 0.42 - 0.05;
    plate.thickness = 0.05;
    plate.inside_radius = Reading(0.032);
    plate.k_factor = 0.44691;
    const double deduction = blank_of(plate, 0).deduction;
    CHECK_THAT(0.74 + 0.42 + 1.05 + 1 - 3 * deduction, within(2.973, 3 * 0.0005));
    // Of the first two legs alone.
    CHECK_THAT(blank_of(plate, 0).length, within(0.74 + 0.42 - deduction, 1e-15));
}

}  // namespace rakewright::tests
