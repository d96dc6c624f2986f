#include "angle.hpp"

#include <charconv>
#include <cmath>

#include "length.hpp"

namespace rakewright {
namespace {

// A quarter turn is right_angle plus this, to twice the digits of a double.
constexpr double right_angle_rest = 6.123233995736766e-17;
constexpr double degrees_in_a_radian = 57.29577951308232;
constexpr double degrees_in_a_radian_rest = -1.9878495670576283e-15;

/// The angle of a slope from 0 to 1: two half-angle steps bring the tangent under 0.2, then the odd series to the 25th
/// power.
double angle_of_gentle(double slope) {
    const double half = slope / (1 + std::sqrt(1 + slope * slope)), quarter = half / (1 + std::sqrt(1 + half * half)),
                 square = quarter * quarter;
    double sum = 1.0 / 25;
    for (int k = 23; k >= 3; k -= 2) sum = 1.0 / k - square * sum;
    return 4 * (quarter - quarter * square * sum);
}

/// Sine and cosine of up to an eighth of a turn, by their series to the 17th and 16th power: what is left is under
/// 1e-18.
SineCosine of_small(double radians) {
    const double square = radians * radians;
    double sine = 0, cosine = 0;
    for (int k = 17; k >= 3; k -= 2) sine = (1 - sine) * square / (k * (k - 1));
    for (int k = 16; k >= 2; k -= 2) cosine = (1 - cosine) * square / (k * (k - 1));
    return {radians - radians * sine, 1 - cosine};
}

}  // namespace

double angle_of(double slope) {
    const double x = std::fabs(slope);
    if (x == 1) return std::copysign(right_angle / 2, slope);
    if (x < 1) return std::copysign(angle_of_gentle(x), slope);
    return std::copysign(right_angle - (angle_of_gentle(1 / x) - right_angle_rest), slope);
}

double degrees(double radians) { return radians * degrees_in_a_radian + radians * degrees_in_a_radian_rest; }

double degrees(const Angle& angle) {
    if (angle.run > 0) return degrees(angle_of(angle.rise / angle.run));
    if (angle.run == 0) return angle.rise > 0 ? 90 : -90;
    const double back = degrees(angle_of(angle.rise / angle.run));
    // A rise too small to tell from level behind: 180, not -180.
    return angle.rise < 0 && back - 180 > -180 ? back - 180 : back + 180;
}

Angle angle_from_degrees(double degrees) {
    // Both remainders are exact (IEC 60559), so that quarter turns are.
    const double turn = std::remainder(degrees, 360), rest = std::remainder(turn, 90);
    const int quarter = static_cast<int>((turn - rest) / 90) & 3;
    SineCosine of;
    if (std::fabs(rest) == 45) {
        of = {std::copysign(1, rest), 1};
    } else {
        of = of_small(rest / degrees_in_a_radian);
    }
    switch (quarter) {
        case 0: return {of.sine + 0.0, of.cosine};
        case 1: return {of.cosine, -of.sine + 0.0};
        case 2: return {-of.sine + 0.0, -of.cosine};
        default: return {-of.cosine, of.sine + 0.0};
    }
}

SineCosine sine_cosine(const Angle& angle) {
    if (angle.rise == 0) return {0, std::copysign(1, angle.run)};
    if (angle.run == 0) return {std::copysign(1, angle.rise), 0};
    // Only the ratio counts: halving and doubling both sides is exact, and keeps their squares within the doubles.
    const double greater = std::fmax(std::fabs(angle.rise), std::fabs(angle.run));
    const int size = greater < 1e-100 || greater > 1e100 ? -std::ilogb(greater) : 0;
    const double rise = std::ldexp(angle.rise, size), run = std::ldexp(angle.run, size);
    const double side = std::sqrt(rise * rise + run * run);
    return {rise / side, run / side};
}

std::optional<double> read_degrees(std::string_view text) {
    if (text.find_first_not_of("-./ 0123456789") != std::string_view::npos) return std::nullopt;
    return read_length(text, Unit::inch);
}

std::optional<Angle> read_angle(std::string_view text) {
    if (const std::optional<double> given = read_degrees(text)) return angle_from_degrees(*given);
    constexpr std::string_view in = " in ";
    const std::size_t between = text.find(in);
    if (between == std::string_view::npos) return std::nullopt;
    const std::optional<double> rise = read_length(text.substr(0, between), Unit::inch),
                                run = read_length(text.substr(between + in.size()), Unit::inch);
    if (!rise || !run || *run <= 0) return std::nullopt;
    return Angle{*rise, *run};
}

const char* angle_pattern() {
    static const std::string pattern = [] {
        const std::string rise = length_pattern(true), run = length_pattern(false);
        return std::string(number_pattern()) + "|" + rise.substr(0, rise.size() - 1) + " in " + run.substr(1);
    }();
    return pattern.c_str();
}

}  // namespace rakewright
