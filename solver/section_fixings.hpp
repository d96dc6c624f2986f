#pragma once

#include "section.hpp"

namespace rakewright {

/// What a section's brackets and screws are set in.
struct FixingRoom {
    const SectionTask& task;
    const Surroundings& around;
    const RailLine& line;
    const Levels& levels;
    const SectionChoices& choices;
};

/// The last member of a group, from the top down: the one that the bracket's leg lies under.
const Member& lowest_of(const std::vector<Member>& members, Group group);

/// Adds the seats and the driving of each of the section's brackets, with what a crew should know of them. Members,
/// pickets and brackets are measured already.
void add_fixings(const FixingRoom& room, SectionResult& result, std::vector<Finding>& findings);

}  // namespace rakewright
