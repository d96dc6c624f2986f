#pragma once

#include <string>

#include "../../solver/solution.hpp"

namespace rakewright {

/// Full-size templates of every coped end of a solved job, as one SVG of that size in millimetres: for each end the
/// four faces of the member unfolded, to be wrapped round it printed side out, with the outline of the cope and rulers
/// of the job's tape. Empty where nothing is coped.
std::string template_page(const Job& job, const Solution& solution);

}  // namespace rakewright
