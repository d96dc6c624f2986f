#pragma once

#include <optional>
#include <vector>

#include "reading.hpp"

// Stairs and floors, as asked.

namespace rakewright {

/// The line drawn through nosings that do not lie on one.
enum class LineThrough { minimax, fit, ends, straightedge };

struct Step {
    Place place;
    std::optional<Reading> rise, run, tread, nosing;
};

/// Whether there are boards between the treads.
enum class RiserKind { closed, open };

/// Whether a string is cut to the steps, or stands up past them.
enum class StringKind { open, closed };

/// Where the own axes of a stair or floor stand in the plan of the job: their origin, the way their first axis looks,
/// counter-clockwise from the plan's x, and the height of the floor at their origin.
struct Plan {
    Reading x = 0, y = 0, level = 0;
    AngleReading heading;
};

/// The strings of a stair, seen walking up.
struct Strings {
    StringKind left = StringKind::open, right = StringKind::open;
};

struct Stair {
    Id id;
    std::optional<Count> risers;
    std::optional<Reading> rise, total_rise, run, tread, nosing_to_nosing;
    std::optional<AngleReading> rake;
    std::vector<Step> steps;
    Reading nosing = 0;
    LineThrough line = LineThrough::minimax;
    std::optional<Reading> clear_width, headroom, drop;
    AngleReading wash;
    RiserKind riser = RiserKind::closed;
    std::optional<Reading> tread_thickness;
    Strings strings;
    std::optional<Reading> string_above;
    std::optional<Plan> plan;
};

/// Which end of a section a floor falls toward, or that it falls the way its own first axis looks.
enum class Toward { to, from, heading };

/// A floor: one that is not level, as it runs under a section, or one that posts stand on.
struct Floor {
    Id id;
    AngleReading falls;
    Toward toward = Toward::to;
    std::optional<Plan> plan;
};

}  // namespace rakewright
