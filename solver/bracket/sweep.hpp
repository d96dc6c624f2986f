#pragma once

#include <vector>

#include "../rail/member.hpp"

namespace rakewright {

/// What a driver on its way meets first.
enum class Meets { nothing, post, picket, lower_rail, rail, string, tread, floor, nosing_line };

/// A straight way for a tool: from its screw's seat, a unit direction.
struct DriverWay {
    Vector seat, way;
};

/// A plane that a tool may not cross: it stays on the side that the normal looks to.
struct Barrier {
    Plane plane;
    Meets what = Meets::nothing;
};

/// What stands in a driver's way: planes without end, and the treads, risers and nosings of a stair in its own axes.
struct InTheWay {
    std::vector<Barrier> barriers;
    const StairShape* stair = nullptr;
};

/// How far along its way from the screw's seat a tool is free, and what it meets there; without end where it meets
/// nothing.
struct FreeWay {
    double length = 0;
    Meets meets = Meets::nothing;
};

/// How far a round tool of a diameter goes along its way, from `start` on, until it meets what is in its way. Touching
/// with its side is free.
FreeWay free_for(const InTheWay& in_the_way, const DriverWay& way, double diameter, double start);

/// How far from the screw's seat a straight driver is free while it turns in a screw so long: first its bit out to its
/// reach, then its body, both farther out by the screw at the start.
FreeWay free_for_driver(const InTheWay& in_the_way, const DriverWay& way, const Driver& driver, double screw);

/// What a driver needs: its reach, its body and the screw.
double needed_by(const Driver& driver, double screw);

}  // namespace rakewright
