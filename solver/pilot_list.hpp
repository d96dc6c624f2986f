#pragma once

#include "solution.hpp"

namespace rakewright {

/// What the screws of one joint want drilled in one kind of piece, in all sections of a build together: how near any of
/// them comes, and in which section first; how deep the deepest is in it; and the hole.
struct PilotHoles {
    int build = 0;
    Joint joint = Joint::picket_to_upper;
    std::string piece;
    bool fastened = false;
    double diameter = 0;  // of the screw
    SplitRoom room;
    double deep = 0;
    int section = 0;
    Pilot pilot;
};

/// The pieces of wood that screws go into, whether or not they want a hole, in the order of builds and joints.
std::vector<PilotHoles> pilot_list(const Job& job, const Solution& solution);

/// Adds for each joint of a build where it is most likely that a piece splits although it is drilled.
void note_splitting(const Job& job, Solution& solution);

}  // namespace rakewright
