#pragma once

#include "sheet.hpp"
#include "solution.hpp"

namespace rakewright {

/// Every result of the posts, the joints and arrivals at them included.
void describe_posts(Sheet& sheet, const Job& job, const Solution& solution);

void describe(Sheet& sheet, const GroupHeights& heights, const char* above);

}  // namespace rakewright
