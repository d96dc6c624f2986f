#include "telling.hpp"

namespace rakewright {

Told Telling::of_rail() const {
    switch (finding_.trouble) {
        case Trouble::lower_gap_missing:
            return {"the build has a lower group, but nothing says how high it stands",
                    "give `lower_gap` in the section or in the build"};
        case Trouble::rails_meet:
            return {"there is no room under the upper group: " + length(0) + " plumb is left over what is under it",
                    "raise `height`, or lower `lower_gap`"};
        case Trouble::below_surface:
            if (finding_.numbers[0] == 0) return {"the rail would stand " + length(1) + " below the floor", "raise it"};
            return {"the rail would stand " + length(1) + " below tread " + whole(0),
                    "raise it: this nosing stands highest over the nosing line"};
        case Trouble::auto_without_limit:
            return {"no rule in force limits the openings under this rail",
                    "name `rules` that do, or give the lower gap as a length"};
        case Trouble::auto_over_unknown_string:
            return {
                "the rail is over a closed string, and nothing says how high that is: what is open between them is "
                "not known",
                "give the stair's `string_above`, or the lower gap as a length"};
        case Trouble::no_lower_gap:
            return {"no lower gap will do: " + over_tread(2) + " already passes a ball of " + against(0, 1) +
                        " where the rail touches the nosings, and it must stay below " + size(1),
                    "a lower gap of your own, or other rules"};
        case Trouble::foot_without_size:
            return {std::string("nothing says how ") + (finding_.numbers[0] == 0 ? "wide" : "deep") +
                        " the feet are: " +
                        (finding_.numbers[1] > 0 ? "the build's pickets are round"
                                                 : "the build has no pickets to take it from"),
                    "the feet's `width` and `depth`"};
        case Trouble::too_many_feet:
            return {"more than " + whole(0) + " feet would stand under one rail", "feet farther apart"};
        case Trouble::no_place_to_splice:
            return {"a member of " + against(1, 0) +
                        " cannot be spliced at its pickets out of sticks of no more than " + size(0),
                    "a longer stick"};
        case Trouble::lower_gap_without_lower: return {"`lower_gap` has no effect: the build has no lower group", {}};
        case Trouble::lower_gap_chosen:
            return {"`lower_gap` is chosen as " + length(0) + ": " + over_tread(3) + " then passes a ball of " +
                        against(1, 2) + ", below " + size(2),
                    {}};
        case Trouble::out_of_saws_reach:
            return {(finding_.section < 0 ? "handrail " + handrail_name() + ": " : std::string()) + whole(0) +
                        (finding_.numbers[0] == 1 ? " end is" : " ends are") +
                        " beyond the reach of the saw: see its pieces at the saw",
                    {}};
        case Trouble::feet_without_lower: return {"`feet` has no effect: the build has no lower group", {}};
        case Trouble::feet_unplaced:
            return {
                "the feet are left out: where they would stand does not follow, since the posts have no place "
                "or the closed string no `string_above`",
                {}};
        case Trouble::vent_tubes:
            return {"build " + build_name() +
                        " is of tubes and galvanised: every closed tube needs vent and drain holes at its high and "
                        "its low corner as it hangs, beside the welds; one without can burst in the bath",
                    {}};
        case Trouble::foot_without_place:
            return {"foot " + whole(0) + ", wished for " + length(1) +
                        " from the from post, is left out: no picket is left that it can stand under clear of the "
                        "nosings",
                    {}};
        case Trouble::length_under_tape:
            return {"member " + member_name() + " is " + off_nothing(finding_.numbers[0]) +
                        " long, which the tape does not show: check `clear`",
                    {}};
        default: return {};
    }
}

}  // namespace rakewright
