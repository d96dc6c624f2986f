#pragma once

#include "section.hpp"
#include "sheet.hpp"

namespace rakewright {

/// How a bracket lies in post and rail, and where its screws are.
void describe(Sheet& sheet, const Seat& seat);
/// What a straight driver finds at a bracket.
void describe(Sheet& sheet, const Driving& driving);
/// A screw of a joint, behind what names it.
void describe(Sheet& sheet, const JointScrew& screw);

const char* words(RailSeat seat);
const char* words(Meets meets);
const char* words(DrivingOrder order);
const char* words(Joint joint);
const char* words(ComesOut out);
const char* words(PilotFor why);
/// Whether a screw is still too near an end, an edge, both or neither although it is drilled.
const char* words_of_near(const Pilot& pilot);

}  // namespace rakewright
