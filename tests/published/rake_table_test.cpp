#include "../../solver/measure/angle.hpp"
#include "../support/published.hpp"

// Angles of stairs and slopes: 29 CFR 1910.24(e), Table D-1 (superseded 2017; read in WAC 296-24-76511), and common
// slopes.

namespace rakewright::tests {
namespace {

double ours_of(const PublishedRow& row) {
    const Angle angle = read_angle(row.inputs).value();
    if (row.unit == "percent") return 100 * slope(angle);
    return row.unit == "degrees" ? degrees(angle) : 60 * degrees(angle);
}

double printed_of(const PublishedRow& row) {
    if (row.unit != "minutes") return printed_number(row.printed);
    const std::vector<int> parts = printed_parts(row.printed);
    return 60.0 * parts.at(0) + parts.at(1);
}

}  // namespace

TEST_CASE("published angles of rise and run", "[published][measure]") {
    const std::vector<PublishedRow> rows = published_table("rake_table.csv");
    REQUIRE(rows.size() == 19);  // 13 of Table D-1
    hold_published(rows, 1, ours_of, printed_of);
}

TEST_CASE("the wrong row of Table D-1 is 1.95 minutes too large", "[published][measure]") {
    // 8 on 9 1/2, printed 40 deg 08' in Table D-1 of 29 CFR 1910.24(e), as in WAC 296-24-76511; derived, atan(8 / 9.5):
    // 40 deg 06.05'.
    CHECK_THAT(60 * (degrees(read_angle("8 in 9 1/2").value()) - 40), within(6.05, 0.01));
}

}  // namespace rakewright::tests
