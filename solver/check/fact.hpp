#pragma once

#include "../rule/rule.hpp"
#include "../solution.hpp"

namespace rakewright {

/// How well a figure is known: exactly; or a ball passed, so that the opening is at least so large; or it did not, so
/// that it is smaller.
enum class Known { exactly, at_least, under };

/// One figure of a job that a rule can judge: in the job's unit, angles in degrees. `where` says at which of the things
/// that its subject has: "riser 3"; a variation names both: "riser 4: 7 3/4, riser 1: 7 1/4". Facts that several trials
/// told of one opening share the words of `opening`.
struct Fact {
    Quantity quantity = Quantity::rise;
    RulePlace place = RulePlace::anywhere;
    std::string where;
    double value = 0;
    Known known = Known::exactly;
    std::string opening;
    std::optional<double> over_ground;  // the top of an open riser, where it is known
};

/// Places of a subject at which nobody read a quantity that others of its places tell, and what would tell it there.
struct Untold {
    Quantity quantity = Quantity::rise;
    RulePlace place = RulePlace::anywhere;
    std::string where;
    std::string needs;
};

/// What is judged as one: a stair, a section, a handrail or a rail as found. `tells` lists the quantities that it
/// should tell of: one that has no fact is missing, one that it does not list does not occur in it.
struct Subject {
    std::string words;  // "stair lake-steps"
    RulePlace place = RulePlace::stair;
    int stair = -1;
    std::optional<double> drop;
    std::vector<Quantity> tells;
    std::vector<Fact> facts;
    std::vector<Untold> untold;
    std::string assumed;  // what was taken for granted of its handrail
    bool is_stair = false, is_guard = false, is_handrail = false;
    bool has_recess = false;  // for fingers, in its profile

    bool is(SubjectKind kind) const;
};

/// Every figure of a job that was solved and whose openings were measured. Gaps between pickets are those that the
/// marks leave when they are put where the tape reads them.
std::vector<Subject> subjects_of(const Job& job, const Solution& solution);

}  // namespace rakewright
