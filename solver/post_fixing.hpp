#pragma once

#include "solution.hpp"

namespace rakewright {

/// The code's concentrated load on a guard or handrail: 200 lbf, or 0.89 kN. IBC 2021, 1607.9.1.1.
double concentrated_load(Unit unit);

/// The least thickness of wood under a post's bolts, in the job's unit: 3 in, or 76 mm. Common practice.
double usual_wood_under(Unit unit);

/// The four holes of a plate, counter-clockwise from above, from the one to the front and left of the post's own axes.
std::vector<Vector> plate_holes(const BasePlate& plate, const StandingPost& post);

/// What a level load at `height` above the plate's underside pulls each of two bolts with: the plate turns about its
/// edge on the side that is pressed, `size` wide that way with bolts `spacing` apart; the two bolts nearer to that edge
/// hold nothing, and neither does what the post weighs. The pull is in the load's unit.
BoltPull bolt_pull(double load, double height, double size, double spacing);

/// Measures the posts that say how high they stand over their rails, or how they are fixed. Every section has been
/// solved before. Adds what is wrong, or worth knowing, to the solution's findings.
void fix_posts(const Job& job, Solution& solution);

}  // namespace rakewright
