#include "../../solver/measure/length.hpp"

#include <fstream>
#include <regex>
#include <sstream>

#include "../support/catch.hpp"

using namespace rakewright;

namespace {

struct Written {
    const char* text;
    double inches;
};

const Written accepted[] = {{"36", 36},
                            {"7.25", 7.25},
                            {".5", 0.5},
                            {"010", 10},
                            {"3/4", 0.75},
                            {"7 3/4", 7.75},
                            {"7-3/4", 7.75},
                            {"7-3/4\"", 7.75},
                            {"7 3/4 in", 7.75},
                            {"5'", 60},
                            {"8 ft", 96},
                            {"5' 2 3/8\"", 62.375},
                            {"5'-2 3/8\"", 62.375},
                            {"5ft 2-3/8in", 62.375},
                            {"5\u2032 2 3/8\u2033", 62.375},
                            {"2' 0\"", 24},
                            {"1 1/2'", 18},
                            {"254 mm", 10},
                            {"25.4cm", 10},
                            {"0.254 m", 10},
                            {" 12 ", 12}};

const char* const refused[] = {"",          " ",       "-",          "--5",       "+5",        "1e3",       "1,5",
                               "0x10",      "nan",     "inf",        "7 3/4 1/2", "7 4/3",     "3/0",       "/4",
                               "3/",        "5.",      "5' 13\"",    "5'2'",      "7 x",       "7 3/4x",    "1_000",
                               "5 6",       "7 in mm", "1 1/2' 3\"", "1000001",   "0.0000001", "1/2000000", "1e400",
                               "12 inches", "''",      "1.5/2",      "5 - - 1/2"};

}  // namespace

TEST_CASE("Lengths are read as people write them") {
    for (const Written& written : accepted) {
        INFO(written.text);
        const auto read = read_length(written.text, Unit::inch);
        REQUIRE(read);
        CHECK(std::fabs(*read - written.inches) <= 1e-14 * written.inches);
        CHECK(*read_length(std::string("-") + written.text, Unit::inch) == -*read);
    }
}

TEST_CASE("Everything else is refused") {
    for (const char* text : refused) {
        INFO(text);
        CHECK_FALSE(read_length(text, Unit::inch));
    }
}

TEST_CASE("In a job in millimetres a bare number is millimetres, and text keeps its own unit") {
    CHECK(*read_length("184", Unit::millimetre) == 184);
    CHECK(*read_length("18.4 cm", Unit::millimetre) == 184);
    CHECK(*read_length("1.2 m", Unit::millimetre) == 1200);
    CHECK(*read_length("7 3/4 in", Unit::millimetre) == 7.75 * 25.4);
    CHECK(*read_length("5'", Unit::millimetre) == 60 * 25.4);
}

// NIST SP 811, B.8: 1 in = 25.4 mm, 1 ft = 0.3048 m, both exact; B.7.2 converts 36 ft to 10.9728 m.
TEST_CASE("Conversions are the exact ones of NIST SP 811") {
    CHECK(std::fabs(*read_length("36 ft", Unit::millimetre) - 10972.8) < 1e-11);
    CHECK(*read_length("1 in", Unit::millimetre) == 25.4);
    // NIST LC 1137: 36 in is 91.44 cm, 40.1 in is 101.854 cm.
    CHECK(std::fabs(*read_length("36 in", Unit::millimetre) - 914.4) < 1e-12);
    CHECK(std::fabs(*read_length("40.1 in", Unit::millimetre) - 1018.54) < 1e-12);
}

TEST_CASE("The patterns match every text that is read, and none that is refused but for size") {
    const std::regex any(length_pattern(true)), not_negative(length_pattern(false));
    for (const Written& written : accepted) {
        INFO(written.text);
        CHECK(std::regex_search(written.text, not_negative));
        CHECK(std::regex_search(std::string("-") + written.text, any));
        CHECK_FALSE(std::regex_search(std::string("-") + written.text, not_negative));
    }
    for (const char* text : {"--5", "1e3", "1,5", "7 x", "12 inches", "nan", "5."})
        CHECK_FALSE(std::regex_search(text, any));
}

// Principles and Practice of Plumbing, Table LXIII: exact decimal equivalents of 64ths of an inch, n/64. (Its "3/62 =
// .046875" is a misprint for 3/64: 3/62 is .0484.)
TEST_CASE("Sixty-fourths have their exact decimal equivalents, and are read back from them") {
    const Tape tape{Unit::inch, 1.0 / 64};
    for (int n = 1; n < 64; ++n) {
        const double decimal = *read_length(std::to_string(n) + "/64", Unit::inch);
        CHECK(decimal == n * 0.015625);
        CHECK(*read_length(words_of_length(decimal, tape), Unit::inch) == decimal);
    }
    CHECK(words_of_length(0.046875, tape) == "3/64");
    CHECK(*read_length("3/62", Unit::inch) != 0.046875);
}

// ICS Building Trades Pocketbook, decimal equivalents of 64ths: .1330 is nearest to 9/64, .3670 to 23/64, .8979 to
// 57/64.
TEST_CASE("Decimals are rounded to the nearest sixty-fourth as the pocketbook works them") {
    const Tape tape{Unit::inch, 1.0 / 64};
    CHECK(nearest_mark(0.1330, tape) == 9);
    CHECK(nearest_mark(0.3670, tape) == 23);
    CHECK(nearest_mark(0.8979, tape) == 57);
}

// NAVEDTRA 14044: .12 in is 1.92 sixteenths, called 2/16; half or more goes up. 111.1396 in is 111 1/8 in.
TEST_CASE("Half a division or more goes up, as the Navy's builders round") {
    const Tape tape{Unit::inch, 1.0 / 16};
    CHECK(words_of_length(0.12, tape) == "1/8");
    CHECK(words_of_length(8 * 13.892443989449804, tape) == "111 1/8");
    CHECK(nearest_mark(0.5 / 16, tape) == 1);
    CHECK(nearest_mark(-0.5 / 16, tape) == -1);
    CHECK(nearest_mark(0.1 + 0.2, Tape{Unit::millimetre, 0.2}) == 2);  // 0.3 but for rounding: one division and a half
}

TEST_CASE("A tape shows fractions in inches and decimals in millimetres, and never -0") {
    const Tape sixteenths{Unit::inch, 1.0 / 16}, tenths{Unit::inch, 0.1}, halves{Unit::millimetre, 0.5},
        whole{Unit::millimetre, 1}, twelfths{Unit::inch, 1.0 / 12};
    CHECK(words_of_length(59.1875, sixteenths) == "59 3/16");
    CHECK(words_of_length(-0.5, sixteenths) == "-1/2");
    CHECK(words_of_length(-0.001, sixteenths) == "0");
    CHECK(words_of_length(12, sixteenths) == "12");
    CHECK(words_of_length(3.14, tenths) == "3.1");
    CHECK(words_of_length(1504.4, halves) == "1504.5");
    CHECK(words_of_length(1504.4, whole) == "1504");
    // Noyes, Handwork in Wood: lengths to twelfths of an inch.
    CHECK(words_of_length(8.0 / 12, twelfths) == "2/3");
}

TEST_CASE("A stated size is printed as it was given, whatever the tape marks") {
    const Tape eighths{Unit::inch, 1.0 / 8}, twelfths{Unit::inch, 1.0 / 12}, tenths{Unit::inch, 0.1},
        half_millimetres{Unit::millimetre, 0.5};
    CHECK(words_of_size(1.315, eighths) == "1.315");
    CHECK(words_of_size(0.075, eighths) == "0.075");
    CHECK(words_of_size(0.164, eighths) == "0.164");
    CHECK(words_of_size(0.19, eighths) == "0.19");
    CHECK(words_of_size(2.375, eighths) == "2 3/8");
    CHECK(words_of_size(3 + 9.0 / 16, eighths) == "3 9/16");
    CHECK(words_of_size(3 + 1.0 / 64, eighths) == "3 1/64");
    CHECK(words_of_size(1 / 3.0, twelfths) == "1/3");
    CHECK(words_of_size(1.5, tenths) == "1.5");
    CHECK(words_of_size(4.5, half_millimetres) == "4.5");
    CHECK(words_of_size(5, half_millimetres) == "5");
    CHECK(words_of_size(38.1, Tape{Unit::millimetre, 1}) == "38.1");
    CHECK(words_of_size(40 / 25.4, eighths) == "1.5748");  // 1.57480 to five
    CHECK(words_of_size(0, eighths) == "0");
}

TEST_CASE("Two lengths at one mark are told apart by decimals, three at the least") {
    const Tape sixteenths{Unit::inch, 1.0 / 16};
    CHECK(words_against(1.12, 1.125, sixteenths) == "1.120");
    CHECK(words_against(1.125, 1.12, sixteenths) == "1.125");
    CHECK(words_against(1.1249, 1.125, sixteenths) == "1.1249");
    CHECK(words_against(1.0625, 1.125, sixteenths) == "1 1/16");
    CHECK(words_against(1.125, 1.125, sixteenths) == "1 1/8");
    CHECK(words_against(114.2, 114, Tape{Unit::millimetre, 1}) == "114.200");
}

TEST_CASE("A length between fixed faces never rounds up past the room that is left") {
    const Tape tape{Unit::inch, 1.0 / 16};
    const double length = 59 + 3.0 / 16 + 0.04;  // nearest is 59 1/4, 0.0225 longer
    CHECK(words_of_mark(fitting_mark(length, 0, tape), tape) == "59 3/16");
    CHECK(words_of_mark(fitting_mark(length, 0.02, tape), tape) == "59 3/16");
    CHECK(words_of_mark(fitting_mark(length, 0.0225, tape), tape) == "59 1/4");
    CHECK(words_of_mark(fitting_mark(length, 1, tape), tape) == "59 1/4");
    CHECK(side_of_mark(length, fitting_mark(length, 0, tape), tape) == Side::over);
    CHECK(side_of_mark(length, fitting_mark(length, 1, tape), tape) == Side::under);
    CHECK(side_of_mark(59.01, nearest_mark(59.01, tape), tape) == Side::on);
}
