#pragma once

#include "../rule/opening_limits.hpp"
#include "fact.hpp"

// How the facts of a subject are put down.

namespace rakewright {

/// "riser 3".
std::string numbered(const char* word, int number);

/// "tread 3", "treads 3 to 5", "treads 1, 3 to 5": numbers in rising order.
std::string numbered(const char* word, const std::vector<int>& numbers);

/// A reading as it was given: in inches a fraction where it is one, else decimals, as many as it has (at most 6).
std::string reading_words(double value, Unit unit);

void tell(Subject& subject, Quantity quantity, std::string where, double value, Known known = Known::exactly);

/// A quantity that the subject should tell, and does where it was read.
void tell(Subject& subject, Quantity quantity, const std::optional<Reading>& reading);

/// A part of the subject that nobody read, and what would tell it.
void leave_untold(Subject& subject, Quantity quantity, std::string where, std::string needs);

/// What is open under a lower rail, over a tread or a closed string.
void tell_under_rail(Subject& subject, UnderRail kind, std::string where, double sphere, Known known,
                     std::string opening = {});

/// A grip's facts; its size across, level, for how far the rail stands out.
double tell_profile(Subject& subject, const Profile& profile);
void tell_rectangle(Subject& subject, double width, double depth);

void tell_wall(Subject& subject, const std::optional<Reading>& clearance, std::optional<double> across);

/// How far a handrail runs on past its flight, where that was said.
void tell_extension(Subject& subject, const Extension& extension, const StairShape& stair);

/// How high the top of an open riser is over the ground under it: level with the floor at the foot, or as much lower as
/// the fall beside the stair is more than its rise; no more than that fall, where it is known.
double riser_over_ground(const StairShape& stair, int riser, const std::optional<double>& drop);

/// Everything that was read of a rail as it stands; its stair's shape, none over a floor.
void tell_found(Subject& subject, const FoundRail& found, const StairShape* stair, Unit unit);

}  // namespace rakewright
