#include "../../solver/measure/length.hpp"
#include "../support/published.hpp"

// Readings of a tape: decimals and fractions of an inch, rounding to a division, feet and inches, and the metre.

namespace rakewright::tests {
namespace {

/// The sum of lengths written with " + " between them, in inches.
double sum_of(const std::string& text) {
    const std::size_t plus = text.find(" + ");
    const double first = read_length(text.substr(0, plus), Unit::inch).value();
    return plus == std::string::npos ? first : first + sum_of(text.substr(plus + 3));
}

double printed_of(const PublishedRow& row) {
    if (row.unit != "feet-inches-twelfths") return printed_number(row.printed);
    const std::vector<int> parts = printed_parts(row.printed);
    return (12.0 * parts.at(0) + parts.at(1)) * 12 + parts.at(2);
}

double ours_of(const PublishedRow& row) {
    const double inches = sum_of(row.inputs), millimetres = sum_of(row.inputs) * millimetres_in_an_inch;
    const auto count = [&](double division) {
        return static_cast<double>(nearest_mark(inches, Tape{Unit::inch, division}));
    };
    if (row.unit == "inches") return inches;
    if (row.unit == "nearest 16th") return count(1.0 / 16);
    if (row.unit == "nearest 64th") return count(1.0 / 64);
    if (row.unit == "feet-inches-twelfths") return count(1.0 / 12);
    if (row.unit == "metres") return read_length(row.inputs, Unit::millimetre).value() / 1000;
    if (row.unit == "centimetres") return millimetres / 10;
    throw std::runtime_error("not on a tape: " + row.unit);
}

}  // namespace

TEST_CASE("published readings of a tape", "[published][measure]") {
    const std::vector<PublishedRow> rows = published_table("tape_readings.csv");
    REQUIRE(rows.size() == 19);
    hold_published(rows, 1, ours_of, printed_of);
}

TEST_CASE("a length midway between two sixty-fourths goes up", "[published][measure]") {
    // ICS Building Trades Pocketbook: from a mid value on, the next fraction. 17/128 lies between 8/64 and 9/64.
    const Tape tape{Unit::inch, 1.0 / 64};
    for (int n = 0; n < 64; ++n) CHECK(nearest_mark((n + 0.5) / 64, tape) == n + 1);
    CHECK(nearest_mark(0.1328, tape) == 8);
    CHECK(nearest_mark(0.1330, tape) == 9);
}

TEST_CASE("a reading is rounded once, after the sum and not before", "[published][measure]") {
    // NAVEDTRA 14044, unit rise 7 on a run of 8 ft: 8 times 13.89 is 111.12, which is 9 ft 3 1/8 in.
    const Tape sixteenths{Unit::inch, 1.0 / 16};
    CHECK(words_of_length(8 * 13.89, sixteenths) == "111 1/8");
    CHECK(nearest_mark(read_length("9' 3 1/8\"", Unit::inch).value(), sixteenths) == 111 * 16 + 2);
}

}  // namespace rakewright::tests
