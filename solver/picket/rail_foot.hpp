#pragma once

#include "picket.hpp"

namespace rakewright {

/// A foot under the lowest member: the picket that it stands under (from 1; 0 where there are none), level from the
/// from post's face to its centre, and the plumb lengths of its sides. The piece stands as a picket does.
struct RailFoot {
    int picket = 0;
    double at = 0;
    double uphill_side = 0, downhill_side = 0, overall = 0;
    Piece piece;
};

/// What feet stand on and reach to.
struct FootRoom {
    CrossSection section;  // a picket's: depth across the rail, width along it
    const RailLine& line;
    const Levels& levels;
    const StairShape* treads = nullptr;  // that they stand on; none: the line's floor
    std::optional<double> string_above;  // the closed string that they stand on in place of treads
    double from_face = 0, to_face = 0;
};

/// No section may have more feet than this.
inline constexpr int most_feet = 1000;

/// How many feet, equally spaced, part so much clear into lengths of no more than `every`; none above `most_feet`.
std::optional<int> feet_under(double clear, double every);

/// Feet equally spaced, each moved to the nearest picket that it can stand under: off the nosings, and something left
/// of its short side; without pickets each stays where it is if it can (trade practice). `pickets` are level from the
/// from post's face. One that has no place is none.
std::vector<std::optional<RailFoot>> feet_placed(const FootRoom& room, int count, const std::vector<double>& pickets);

}  // namespace rakewright
