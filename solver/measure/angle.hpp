#pragma once

#include <optional>
#include <string_view>

namespace rakewright {

/// An angle as the right triangle that it stands in: up `rise` for each `run`. Exact for a slope ("7 1/4 in 11") and
/// for quarter turns. Its size is that of nothing: only the ratio and the two signs count; both are never zero
/// together.
struct Angle {
    double rise = 0;
    double run = 1;
    friend bool operator==(const Angle&, const Angle&) = default;
};

inline constexpr double right_angle = 1.5707963267948966;  // radians

/// The angle, in radians, whose slope (tangent) this is. Made of + - * / and square roots alone, so that every machine
/// gives the same bits. Odd; any slope, infinite too. Error under 5e-16 rad.
double angle_of(double slope);

/// Degrees of an angle in radians.
double degrees(double radians);

/// The angle in degrees, -180 < d <= 180, that this triangle has: its slope's angle, in the quadrant of its signs.
double degrees(const Angle& angle);

/// An angle given in degrees. Multiples of 90 (and of 45, in the slope) are exact. Any finite number; the error of rise
/// and run is under 4e-16. From + - * / and square roots alone.
Angle angle_from_degrees(double degrees);

/// The slope (tangent) of an angle; infinite for a quarter turn.
inline double slope(const Angle& angle) { return angle.rise / angle.run; }

/// Sine and cosine of an angle: its triangle with a hypotenuse of 1. A triangle with a zero side gives exact values.
struct SineCosine {
    double sine = 0;
    double cosine = 1;
};
SineCosine sine_cosine(const Angle& angle);

/// Reads degrees: a bare number, with a fraction or not ("33.4", "-8 1/2"). None if the text is anything else.
std::optional<double> read_degrees(std::string_view text);

/// Reads an angle: degrees, or a slope, rise in run: "7 1/4 in 11", "1/4 in 48" (both readings of a tape in one unit,
/// run positive, at most 1e6). None if the text is neither.
std::optional<Angle> read_angle(std::string_view text);

/// A regular expression (ECMA 262, as JSON Schema has it) that matches every text that read_angle takes. Anchored.
const char* angle_pattern();

}  // namespace rakewright
