#pragma once

#include "sheet.hpp"
#include "solution.hpp"

namespace rakewright {

/// What to buy of one stock, and how to cut it. `listed`: how many rows the cut list has.
void describe(Sheet& sheet, const Stock& stock, const StockResult& result, std::size_t listed);

}  // namespace rakewright
