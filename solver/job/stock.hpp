#pragma once

#include <optional>
#include <string>
#include <vector>

#include "reading.hpp"

// What is bought and what it is cut and painted with, as asked.

namespace rakewright {

/// How pieces of a stock may lie to share a raked cut: turned over and end for end, end for end alone with their tops up
/// as they will be, or not at all.
enum class Nest { turned, face_up, no };

/// What can be bought to cut sticks from: one section in some lengths. A price for each length, or none at all.
struct Stock {
    Place place;
    std::vector<Reading> section, lengths, prices;  // section: width and depth, or one for both
    Reading kerf = 0, trim = 0;
    Nest nest = Nest::turned;

    double width() const { return section.front(); }
    double depth() const { return section.back(); }
};

/// A square-ended stick that comes out of the same stock.
struct AlsoCut {
    std::string name;
    Place place;
    std::vector<Reading> section;
    Reading length;
    Count count = 1;
};

/// How far a saw goes: a quarter turn is as far as any does. The depth is that of a square cut.
struct Saw {
    AngleReading largest_miter{{1, 0}, {}}, largest_bevel{{1, 0}, {}};
    std::optional<Reading> depth_of_cut;
};

/// What is bought: so many percent to spare of what is bought by the piece, whether the posts are bought, and a cap for
/// each.
struct OrderWish {
    Count spare = 0;
    bool posts = true, caps = false;
    Place place;
};

/// What the pieces are painted with: square feet a gallon in inch jobs, square metres a litre in mm jobs; none if only
/// their surface is asked for.
struct PaintWish {
    std::optional<Reading> coverage;
    Count coats = 2;
    Place place;
};

}  // namespace rakewright
