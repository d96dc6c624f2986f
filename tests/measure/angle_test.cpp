#include "../../solver/measure/angle.hpp"

#include <boost/multiprecision/cpp_bin_float.hpp>
#include <cmath>
#include <regex>

#include "../support/catch.hpp"
#include "../support/near.hpp"
#include "../support/random.hpp"

namespace rakewright::tests {
namespace {

using Wide = boost::multiprecision::cpp_bin_float_50;

const Wide wide_pi("3.14159265358979323846264338327950288419716939937510582097494459");

double error_of_angle(double slope) { return std::fabs(static_cast<double>(atan(Wide(slope)) - Wide(angle_of(slope)))); }

}  // namespace

TEST_CASE("the angle of a slope is within 5e-16 of its value in fifty digits", "[measure][angle][long]") {
    Random random("angle of slope");
    double worst = 0;
    for (int i = 0; i < 20000; ++i) {
        const double exponent = random.uniform(-12, 12);
        worst = std::max({worst, error_of_angle(std::pow(10, exponent)), error_of_angle(-random.uniform(0, 2))});
    }
    for (const double slope : {0.0, 1.0, -1.0, 0.9999999999999999, 1.0000000000000002, 1e-300, 1e300, 5e-324, 7.25 / 11})
        worst = std::max(worst, error_of_angle(slope));
    CHECK(worst < 5e-16);
    CHECK(angle_of(INFINITY) == right_angle);
    CHECK(degrees(angle_of(1)) == 45);
}

TEST_CASE("sine and cosine of degrees are within 4e-16 of fifty digits, quarter turns exact", "[measure][angle][long]") {
    Random random("angle from degrees");
    double worst = 0;
    for (int i = 0; i < 20000; ++i) {
        const double given = random.uniform(-400, 400);
        const auto [sine, cosine] = sine_cosine(angle_from_degrees(given));
        const Wide radians = Wide(given) * wide_pi / 180;
        worst = std::max({worst, std::fabs(static_cast<double>(sin(radians) - sine)), std::fabs(static_cast<double>(cos(radians) - cosine))});
    }
    CHECK(worst < 4e-16);
    for (int turn = -8; turn <= 8; ++turn) {
        const auto [sine, cosine] = sine_cosine(angle_from_degrees(90.0 * turn));
        CHECK(std::fabs(sine) + std::fabs(cosine) == 1);
        CHECK(sine * cosine == 0);
    }
    CHECK(angle_from_degrees(90) == Angle{1, 0});
    CHECK(angle_from_degrees(180).run == -1);
    CHECK(slope(angle_from_degrees(45)) == 1);
    CHECK(slope(angle_from_degrees(-45)) == -1);
    CHECK(degrees(angle_from_degrees(135)) == 135);
    CHECK_THAT(degrees(angle_from_degrees(-120)), within(-120, 3e-14));
}

TEST_CASE("angles are read as degrees or as a slope", "[measure][angle]") {
    CHECK(*read_angle("7 1/4 in 11") == Angle{7.25, 11});
    CHECK(*read_angle("1/4 in 48") == Angle{0.25, 48});
    CHECK(*read_angle("-1/4 in 48") == Angle{-0.25, 48});
    CHECK(degrees(*read_angle("8 1/2")) == degrees(angle_from_degrees(8.5)));
    for (const char* text : {"", "in", "7 in", " in 11", "7 in 0", "7 in -3", "1e3", "nan", "7 deg", "7,5"}) {
        INFO(text);
        CHECK_FALSE(read_angle(text));
    }
    const std::regex pattern(angle_pattern());
    for (const char* text : {"33.4", "-8 1/2", "7 1/4 in 11", "1/4 in 48"}) CHECK(std::regex_search(text, pattern));
    for (const char* text : {"7 in", " in 11", "1e3", "7,5"}) CHECK_FALSE(std::regex_search(text, pattern));
}

}  // namespace rakewright::tests
