#pragma once

#include <string>

#include "../../solver/solution.hpp"

namespace rakewright {

/// Full-size templates of every coped end of a solved job, and of every end of a round handrail that is not square, as
/// one SVG of that size in millimetres: for each end the four faces of the member unfolded, or the girth of the
/// handrail, to be wrapped round it printed side out, with the outline of the cut and rulers of the job's tape. Empty
/// where there is no such end.
std::string template_page(const Job& job, const Solution& solution);

}  // namespace rakewright
