#include <cmath>

#include "../../solver/measure/angle.hpp"
#include "../../solver/measure/length.hpp"
#include "../../solver/space/saw.hpp"
#include "../support/published.hpp"

// Framing-square tables: the length of a rail of so much rise for each 12 of run is the table's length of a rafter.

namespace rakewright::tests {
namespace {

/// A stick of that run, from plumb cut to plumb cut, at a rise of so much in 12.
Piece rafter(double rise_in_12, double run) {
    const Frame frame = frame_on_slope(Vector::Zero(), 1, 0, rise_in_12 / 12);
    const Plane foot{Vector::Zero(), Vector::UnitX()}, head{Vector(run, 0, 0), Vector::UnitX()};
    return {{1.5, 5.5}, cut(frame, foot).value(), cut(frame, head).value()};
}

}  // namespace

TEST_CASE("a framing square's rafters and jacks, as sticks", "[published][slope]") {
    std::vector<PublishedRow> rows = published_table("framing_square.csv");
    std::erase_if(rows, [](const PublishedRow& row) { return row.unit != "common" && row.unit.find("jacks") != 0; });
    REQUIRE(rows.size() == 77);
    const auto ours_of = [](const PublishedRow& row) {
        const double run = row.unit == "common" ? 12 : printed_number(row.unit.substr(sizeof "jacks at"));
        return length(rafter(12 * slope(read_angle(row.inputs).value()), run));
    };
    hold_published(rows, 1, ours_of, printed_as_number);
    CHECK(length(rafter(5, 12)) == 13);
    CHECK_THAT(length(rafter(9, 12)), within_ulp(15, 1));
    CHECK_THAT(length(rafter(16, 12)), within_ulp(20, 1));
}

TEST_CASE("NAVEDTRA 14044: unit rise 7, run 8 ft", "[published][slope]") {
    // NAVEDTRA 14044: 111 1/8 in. to the nearest 1/16, from a factor cut to 13.89 and 1.92 sixteenths.
    const double ours = length(rafter(7, 96));
    CHECK_THAT(ours, within(111.1396, 5e-5));
    CHECK(words_of_length(ours, Tape{}) == "111 1/8");
    CHECK(std::fabs(ours - 8 * 13.89) > 0.015);  // the printed factor is truncated
}

TEST_CASE("Army EN0069A: unit rise 13, run 10 ft 4 in.", "[published][slope]") {
    // Army EN0069A: factor 17.69, 182.79, printed as 15 ft 3 in., rounded up to the inch: 182.8153 exactly.
    const double ours = length(rafter(13, 124));
    CHECK_THAT(ours, within(182.8153, 5e-5));
    CHECK(std::ceil(ours) == 183);
}

TEST_CASE("Griffith and Noyes: quarter pitch and other readings", "[published][slope]") {
    // Griffith, Carpentry: run 12 1/2 ft at 6 in 12 is 13.98 ft.
    CHECK_THAT(length(rafter(6, 150)) / 12, within(13.98, 5e-3));
    // Noyes, Handwork in Wood, to a twelfth of an inch: pitch is rise over twice the run.
    struct Reading {
        double pitch, run, length;
    };
    const Reading readings[] = {{0.25, 144, 161},          {1.0 / 3, 132, 158 + 8.0 / 12}, {0.625, 84, 134 + 6.0 / 12},
                                {0.25, 12, 13 + 5.0 / 12}, {1.0 / 3, 11, 13 + 3.0 / 12},   {0.5, 138, 195 + 2.0 / 12}};
    for (const Reading& reading : readings) {
        INFO("pitch " << reading.pitch << ", run " << reading.run);
        CHECK_THAT(length(rafter(24 * reading.pitch, reading.run)), within(reading.length, 0.51 / 12));
    }
}

TEST_CASE("Audel: what jacks at 16 and 20 in. differ by, unit rise 10", "[published][slope]") {
    // Audel's Carpenters and Builders Guide, vol. 3, p. 975: 20.83 and 26.
    CHECK_THAT(length(rafter(10, 16)), within(20.83, 5e-3));
    CHECK_THAT(length(rafter(10, 20)), within(26, 5e-2));
}

TEST_CASE("Hodgson: half pitch, and braces", "[published][slope]") {
    // Hodgson, ABC of the Steel Square: run 12 ft at half pitch 16 ft 11 8/12; brace 24 and 18 is 30; 36 and 36
    // is 50.91.
    CHECK_THAT(length(rafter(12, 144)), within(203 + 8.0 / 12, 0.51 / 12));
    CHECK_THAT(length(rafter(12 * 18.0 / 24, 24)), within_ulp(30, 1));
    CHECK_THAT(length(rafter(12, 36)), within(50.91, 5e-3));
    // Derived: half of a 60 ft building at half pitch takes 360 sqrt 2 in., 42 ft 5.117 in. The same book prints 42 ft
    // 6 1/8 in.: an inch too much, a misprint.
    CHECK_THAT(length(rafter(12, 360)), within(12 * 42 + 5.117, 5e-4));
}

TEST_CASE("Hodgson: side cuts by length, measured from the edge", "[published][slope]") {
    // Hodgson: rise 9, 12 and 15; rise 10, 12 and 15 5/8.
    for (const auto& [rise, setting] : {std::pair{9.0, 15.0}, std::pair{10.0, 15.625}}) {
        const Frame frame = frame_on_slope(Vector::Zero(), 1, 0, rise / 12);
        const Slant end = cut(frame, {Vector::Zero(), Vector(1, 1, 0).normalized()}).value();
        const EndCut cut = end_cut({{1.5, 5.5}, end, end}, End::to);
        CHECK_THAT(12 * std::fabs(cut.flat.miter), within(setting, 5e-3));
    }
}

}  // namespace rakewright::tests
