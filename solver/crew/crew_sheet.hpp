#pragma once

#include "../sheet.hpp"
#include "order.hpp"
#include "paint.hpp"
#include "work.hpp"

namespace rakewright {

/// What a crew orders, paints and does first, where the job asks for it.
void describe_crew(Sheet& sheet, const Job& job, const Solution& solution);

const char* words(Ordered what);
const char* words(SectionShape shape);
const char* words(Work work);

}  // namespace rakewright
