#include <cmath>

#include "../../solver/measure/angle.hpp"
#include "../support/published.hpp"

// The tables on a framing square, from the sine and cosine of the rake alone: the length of a common rafter or rail for
// each foot of run, of a hip, what jacks differ by, and the number of the side cut. The same tables through sticks and
// their cuts are in slope_length_test.cpp.

namespace rakewright::tests {
namespace {

double ours_of(const PublishedRow& row) {
    const Angle rake = read_angle(row.inputs).value();
    const double cosine = sine_cosine(rake).cosine;
    // A hip runs the diagonal of a foot in plan.
    const double diagonal = 12 * std::sqrt(2.0);
    if (row.unit == "common") return 12 / cosine;
    if (row.unit == "hip") return diagonal / sine_cosine({rake.rise, diagonal}).cosine;
    if (row.unit == "jacks at 16") return 16 / cosine;
    if (row.unit == "jacks at 20") return 20 / cosine;
    if (row.unit == "jacks at 24") return 24 / cosine;
    if (row.unit == "side cut") return 12 * cosine;
    if (row.unit == "degrees") return degrees(rake);
    throw std::runtime_error("not on a square: " + row.unit);
}

}  // namespace

TEST_CASE("the tables of a framing square", "[published][measure]") {
    const std::vector<PublishedRow> rows = published_table("framing_square.csv");
    REQUIRE(rows.size() == 143);  // 28 of secondary lists, 7 of books, 108 worked out
    hold_published(rows, 1, ours_of, printed_as_number);
}

}  // namespace rakewright::tests
