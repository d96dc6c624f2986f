#pragma once

#include "section_fixings.hpp"

namespace rakewright {

/// A member as wood that may split; none where the build is of tubes.
std::optional<Timber> timber_of(const FixingRoom& room, const Member& member);

/// A picket, likewise.
std::optional<Timber> timber_of(const FixingRoom& room, const Stick& picket);

/// The post behind a bracket's plate; its ends are not reckoned with. None where its size is not known.
std::optional<Timber> post_timber(const FixingRoom& room, End end, const PlateAt& plate);

}  // namespace rakewright
