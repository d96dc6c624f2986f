#pragma once

#include "cut_list.hpp"
#include "sheet.hpp"

namespace rakewright {

/// Every result of a job, its kind and meaning, in the order of the public interface. The solution must be the job's
/// own.
void describe(Sheet& sheet, const Job& job, const Solution& solution);

/// Words for a corner or an edge: `top`, `bottom left`, `none`.
const char* words(const Corner& corner);
const char* words(End end);
const char* words(Group group);
const char* words(FootPast past);
const char* words(Leg leg);
const char* words(SideSeen side);
const char* words(LaidOn laid);
const char* words(Stuff stuff);
const char* words(Spacing::By by);
const char* words(Centre centre);
const char* words(AnchoredIn where);
const char* words(Reaching reaching);
const char* words(Opening::Kind kind);

}  // namespace rakewright
