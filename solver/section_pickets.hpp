#pragma once

#include "section.hpp"

namespace rakewright {

/// What the pickets of a section stand in; `faces` are the level places of the two post faces half-way up them. Its
/// build has pickets.
struct PicketStand {
    const SectionTask& task;
    const Surroundings& around;
    const RailLine& line;
    const Levels& levels;
    std::array<double, 2> faces;
};

/// How many pickets stand in the section, or on each tread; false with a finding where none will do.
bool choose_pickets(const PicketStand& stand, SectionChoices& choices, std::vector<Finding>& findings);

/// Every picket of the section as chosen, with what a crew should know of the gaps that they leave.
Pickets measured_pickets(const PicketStand& stand, const SectionChoices& choices, const std::vector<Member>& members,
                         std::vector<Finding>& findings);

/// Every opening that the section leaves with its pickets as chosen.
std::vector<Opening> openings_of_pickets(const PicketStand& stand, const SectionChoices& choices);

}  // namespace rakewright
