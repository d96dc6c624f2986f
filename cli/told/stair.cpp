#include "telling.hpp"

namespace rakewright {

Told Telling::of_stair() const {
    switch (finding_.trouble) {
        case Trouble::slope_not_longer:
            return {"the step's slope of " + against(0, 1) + " is not longer than its other side, " + against(1, 0),
                    "`nosing_to_nosing` is along the nosing line, longer than both rise and run"};
        case Trouble::no_run_left:
            return {"a tread of " + length(0) + " leaves no run: the next nosing stands out " + length(1),
                    "the run is the tread less the projection of the next nosing"};
        case Trouble::step_without_run:
            return {"step " + whole(0) + " has no run",
                    "every step but the last has a `run`, nosing to nosing, or a `tread`"};
        case Trouble::step_with_two_runs: return {"a step has a run and a tread", "give one of the two"};
        case Trouble::last_step_with_run:
            return {"the last step has a run, but beyond it is the landing", "leave the run of the last step out"};
        case Trouble::wash_too_steep:
            return {"the wash lifts tread " + whole(0) + " by " + length(1) +
                        " at its back, where the next nosing is only " + length(2) + " up",
                    "a wash is small: 1/4 in 12 drains a tread"};
        case Trouble::thickness_missing:
            return {"the stair's risers are open, and nothing says how thick its treads are",
                    "give `tread_thickness`, plumb"};
        case Trouble::no_room_between_treads:
            return {"riser " + whole(0) + " would not be open: " + length(1) + " is left between its two treads",
                    "a thinner `tread_thickness`, or `riser: closed`"};
        case Trouble::nosing_beyond_stair:
            return {"there is no nosing " + whole(0) + ": the stair has " + whole(1),
                    "a number from 1 to " + whole(1) + ", or `last`"};
        case Trouble::tread_beyond_stair:
            return {"there is no tread " + whole(0) + ": the stair has " + whole(1) + " risers",
                    "`tread 0` is the floor at the foot, `tread " + whole(1) + "` the landing"};
        case Trouble::fall_way_unknown:
            return {"the floor falls the way its first axis looks, and how the section lies to that does not follow",
                    "posts that stand on the `floor`, or `toward: to` or `from`"};
        case Trouble::fall_needs_heading:
            return {"posts stand on a floor that falls toward an end of whatever section is over it",
                    "`toward: heading` of the floor: the way its first axis looks, `at` of the posts on it"};
        case Trouble::no_nosing_line:
            return {"a single measured step has no nosing line, so nothing can be raked over it",
                    "give the stair as `risers`, `rise` and `run`"};
        case Trouble::floor_under_rake:
            return {"the section is raked over its stair, and names a floor",
                    "leave `floor` out: treads that drain are the stair's `wash`. A floor lies under a section "
                    "without a stair, or straight across a landing"};
        case Trouble::side_missing:
            return {"the stair's two strings differ, and the section does not say on which side it is",
                    "`side: left` or `side: right`, seen walking up"};
        case Trouble::string_above_missing:
            return {"the pickets stand on a closed string, and nothing says how high that is",
                    "give the stair's `string_above`, plumb from the nosing line to the string's top, or the "
                    "build a lower group"};
        case Trouble::below_string:
            return {"the lower group would stand " + length(0) + " below the closed string's top",
                    "a `lower_gap` of at least `string_above`: both count from the nosing line"};
        case Trouble::thickness_without_open: return {"`tread_thickness` has no effect: the risers are closed", {}};
        case Trouble::floor_falls: return {"the floor falls " + length(0) + " across the clear, toward " + where(), {}};
        case Trouble::follow_without_floor: return {"`follow` has no effect: the section names no floor", {}};
        default: return {};
    }
}

}  // namespace rakewright
