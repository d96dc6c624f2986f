#pragma once

#include <functional>

#include "../../solver/rule/rule.hpp"

namespace rakewright::tests {

/// One way in which a job has a quantity at a value; the value in the document's unit, or in degrees, or a number.
struct Way {
    std::string words;
    std::function<Job(double)> job;
};

/// Jobs in `unit` that have `quantity` at any value near `limit`, over the steps of a stair or over a floor, and that
/// meet whatever the published rules ask for before they judge it. The fall beside them is 1524 mm, or 2032 where
/// `deep`; the risers are open where that is asked for. None where nothing in a job tells the quantity there exactly.
struct Judged {
    Quantity quantity = Quantity::rise;
    RulePlace place = RulePlace::stair;
    double limit = 0;
    Unit document = Unit::inch;
    bool deep = false;
    bool open_risers = false;
};
std::vector<Way> ways_to(const Judged& judged, Unit unit);

}  // namespace rakewright::tests
