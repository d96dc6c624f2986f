#pragma once

#include "judge.hpp"

namespace rakewright {

/// A figure that was judged, and how it is known.
struct FigureNow {
    double value = 0;
    Known known = Known::exactly;
};

/// What one quantity may be in a job for every rule that judges it there to pass: the narrowest of their bounds, in the
/// job's unit, and the rule that holds each of them; and what the job's own figures are now, none where it tells none.
/// The bounds may leave nothing between them: then two rules contradict each other.
struct PassingRange {
    Quantity quantity = Quantity::rise;
    RulePlace place = RulePlace::anywhere;
    Bounds bounds;
    const Rule* least_by = nullptr;
    const Rule* most_by = nullptr;
    std::optional<FigureNow> least_now, most_now;
};

/// The ranges of all quantities that the job's rules judge or would judge if it told more, in the order of the
/// quantities; stairs apart from floors where rules tell them apart.
std::vector<PassingRange> ranges_of(const Job& job, const Verdicts& verdicts);

}  // namespace rakewright
