#pragma once

#include "screw/row.hpp"
#include "section_fixings.hpp"

namespace rakewright {

/// The most screws of one row.
inline constexpr int most_in_row = 1000;

/// Where the screws of a row stand along the axis of the member that their heads lie on, from its frame's origin: in
/// each stretch between ends and splices of either member as far from those as the job asks for, along the grain, at
/// whatever height the screw is; clear of the legs of brackets, if the heads lie under a group, and between pickets
/// where those meet one of the two members. In a stretch too short for that one in the middle. None if there would be
/// more than `most_in_row`.
std::optional<RowOfScrews> row_between(const FixingRoom& room, const SectionResult& result, const ScrewRow& row,
                               const Member& heads, const Member& onto);

/// The marks of a row on the face of a member.
RowMarks marks_of(const Member& heads, Spot face, const std::vector<double>& places);

}  // namespace rakewright
