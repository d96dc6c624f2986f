#pragma once

#include "form.hpp"

namespace rakewright {

/// The keys of a fixed pitch, a punched channel and a weld, among those of the pickets.
void describe_metal(Form& form, PicketBuild& pickets);

void describe(Form& form, FeetBuild& feet);

/// The key `centre` of a section.
void describe_centre(Form& form, std::optional<CentreWish>& centre);

/// The key `spacing` of a job.
void describe_spacing(Form& form, std::optional<Spacing>& spacing);

}  // namespace rakewright
