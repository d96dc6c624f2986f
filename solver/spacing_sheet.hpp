#pragma once

#include "sheet.hpp"
#include "story_stick.hpp"

namespace rakewright {

/// The results of a job's spacing, feet and story sticks.
void describe(Sheet& sheet, const RailFoot& foot);
void describe(Sheet& sheet, const StoryStick& stick);
void describe(Sheet& sheet, const Job& job, const SpacingChoice& choice);

}  // namespace rakewright
