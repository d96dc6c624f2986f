#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace rakewright {

/// The unit of a job's lengths.
enum class Unit { inch, millimetre };

inline constexpr double millimetres_in_an_inch = 25.4;  // exact: NIST SP 811, B.8

/// A length of one unit in another.
inline double in_unit(double length, Unit from, Unit to) {
    if (from == to) return length;
    return from == Unit::inch ? length * millimetres_in_an_inch : length / millimetres_in_an_inch;
}

/// A length read from text: its value in the job's unit.
///
/// Takes a bare number in the job's unit ("36", "7.25", "-5"), a number with a fraction ("7 3/4", "7-3/4", "3/4"), and
/// text that says its unit: inches (`in`, `"`), feet and inches (`5' 2 3/8"`, `5'-2 3/8"`, `5ft 2-3/8in`, `8'`, `8 ft`,
/// also with the typographic primes), `mm`, `cm`, `m`. Blanks are free between parts. A minus sign in front makes the
/// whole negative. With feet, the inches are from 0 and under 12. A fraction has digits over digits, the lower not 0,
/// and is under 1 when a whole number stands before it. In a job in millimetres a bare fraction is still a fraction of
/// a millimetre. No exponents, no thousands marks, no leading `+`, a leading zero is a zero ("010" is 10). None when
/// the text is anything else, or larger than `largest_length`. Numbers are read to the nearest double; a length that
/// says another unit is converted with one rounding more.
std::optional<double> read_length(std::string_view text, Unit unit);

/// A regular expression (ECMA 262) that matches every bare number: with or without a sign, a fraction, decimals.
/// Anchored.
const char* number_pattern();

/// No length of a job may be larger than this, in the job's unit (25 km in millimetres, 16 miles in inches).
inline constexpr double largest_length = 1e6;

/// Nor smaller, but for 0: a millionth is far below any tape, and slopes and counts stay within what can be reckoned
/// with.
inline constexpr double smallest_length = 1e-6;

/// A regular expression (ECMA 262) that matches every text that read_length takes, but for the size of its numbers:
/// with `may_be_negative` also those with a minus sign. Anchored.
const char* length_pattern(bool may_be_negative);

/// How a length lies to the mark that was read for it on a tape.
enum class Side { on, under, over };

/// A tape: the job's unit and the size of its smallest division, in that unit (1/16, 1/32, 0.5, 1). Division positive.
struct Tape {
    Unit unit = Unit::inch;
    double division = 1.0 / 16;
};

/// The number of whole divisions nearest to a length; half or more goes up, away from zero (NAVEDTRA 14044, "half or
/// more"). A length that is a half but for rounding counts as a half.
long long nearest_mark(double length, const Tape& tape);

/// The nearest mark that does not exceed `length + room`, for a piece that goes between fixed faces; the nearest mark
/// where that is no more. `room` not negative.
long long fitting_mark(double length, double room, const Tape& tape);

/// Where a mark lies, in the tape's unit.
double at_mark(long long mark, const Tape& tape);

/// The words on a tape: `59 3/16`, `-1/2`, `0`, `1504.5`. In inches, divisions by halves (1/2, 1/4, ... 1/128) are
/// shown as reduced fractions, and so are those that no decimal ends; all others as decimals, as many as the division
/// has (at most 6). Never "-0".
std::string words_of_mark(long long mark, const Tape& tape);

/// The words of the nearest mark.
std::string words_of_length(double length, const Tape& tape);

/// A size that somebody stated (of a section, a plate, a hole, a screw, stock, a limit), as it was given and not as a
/// tape reads it: on a tape of fractions a fraction where one of the tape's divisions or of 64ths is exact; else
/// decimals, as many as it has, and four of them where it has more than six (one that was converted).
std::string words_of_size(double size, const Tape& tape);

/// The words of a length that is told beside another: of the nearest mark, or, where both lie at one mark, as many
/// decimals as tell them apart, from three to six.
std::string words_against(double length, double other, const Tape& tape);

/// How an exact length lies to the mark that was read for it: over or under it by more than a quarter of a division.
Side side_of_mark(double length, long long mark, const Tape& tape);

}  // namespace rakewright
