#pragma once

#include "picket_stand.hpp"
#include "solution.hpp"

namespace rakewright {

/// A section of which all is decided but how its pickets are spaced with the rest of the job's; `index` is its place in
/// the job.
struct SectionInPlace {
    int index = 0;
    SectionTask task;
    Surroundings around;
    SectionChoices choices;
};

/// Spaces the pickets of all sections as the job asks for, into their choices; what stands against it is in `findings`.
/// Sections whose pickets follow treads or a fixed pitch are left as they are.
void space_pickets(const Spacing& spacing, const Tape& tape, std::vector<SectionInPlace>& sections,
                   std::vector<Finding>& findings);

/// The ways of spacing the same job, the one that it asks for among them.
std::vector<SpacingChoice> compared(const Spacing& spacing, const Tape& tape,
                                    const std::vector<SectionInPlace>& sections);

}  // namespace rakewright
