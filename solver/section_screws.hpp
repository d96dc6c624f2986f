#pragma once

#include "section_fixings.hpp"

namespace rakewright {

/// Adds each screw that the build names, with what it holds and where it comes out, and what a crew should know of
/// them. Members, pickets and brackets are measured already. Screws of which the build has no joint are passed over.
void add_screws(const FixingRoom& room, SectionResult& result, std::vector<Finding>& findings);

/// Where the job gives the screw of a joint. It does.
const Place& place_of(const ScrewBuild& screws, Joint joint);

}  // namespace rakewright
