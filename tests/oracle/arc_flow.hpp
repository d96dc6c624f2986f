#pragma once

#include "../../solver/stock/cutting.hpp"

namespace rakewright::tests {

/// What a general integer-programming solver makes of a cutting: the cost of its best plan, none if it found none in
/// time, what it holds to be a bound, and whether it proved the plan.
struct ArcFlow {
    double cost = 0, bound = 0;
    bool found = false, proven = false;
    int columns = 0;
};

/// Plans a cutting of square-ended pieces alone as a flow over the places of a bar (Valerio de Carvalho, 1999): an arc
/// for each piece at each place that larger pieces leave, arcs over what is wasted, and one back for each kind of bar.
ArcFlow arc_flow(const Cutting& cutting, int most_seconds);

}  // namespace rakewright::tests
