#pragma once

#include "picket/whole_job.hpp"
#include "picket_stand.hpp"

namespace rakewright {

/// How many pickets stand in the section, or on each tread; false with a finding where none will do.
bool choose_pickets(const PicketStand& stand, SectionChoices& choices, std::vector<Finding>& findings);

/// Whether pickets so chosen can be made; what stands against it in `findings`.
bool pickets_fit(const PicketStand& stand, const SectionChoices& choices, std::vector<Finding>& findings);

/// The section as the spacing of the whole job sees it; none where its pickets follow treads or a fixed pitch. The
/// stand must outlive it.
std::optional<SpacedSection> spaced_section(const PicketStand& stand);

/// Every picket of the section as chosen, with what a crew should know of the gaps that they leave.
Pickets measured_pickets(const PicketStand& stand, const SectionChoices& choices, const std::vector<Member>& members,
                         std::vector<Finding>& findings);

}  // namespace rakewright
