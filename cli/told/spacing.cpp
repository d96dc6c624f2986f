#include "telling.hpp"

namespace rakewright {

Told Telling::of_spacing() const {
    switch (finding_.trouble) {
        case Trouble::pitch_within_picket:
            return {"a pitch of " + length(0) + " level leaves no gap between pickets " + length(1) + " wide",
                    "a longer pitch, centre to centre"};
        case Trouble::pitch_on_treads:
            return {"the pickets of this section stand on treads and follow them: a fixed pitch has no place",
                    "`max_gap` in place of the pitch, or a lower group"};
        case Trouble::no_room_at_pitch:
            return {"no picket goes into " + length(0) + " clear that leaves " + length(1) + " at both posts" +
                        (finding_.numbers[2] > 0 ? ", with what is wanted in the middle" : ""),
                    "a smaller `least_end_gap`, another `centre`, or a `max_gap` that needs no picket there"};
        case Trouble::block_over_limit:
            return {"a block of " + length(0) + " is wider than a gap may be, " + length(1),
                    "a shorter block, or a section with a larger limit"};
        case Trouble::block_does_not_fit:
            return {"section " + section_name() + " has no layout with a block of " + length(0) +
                        ": what is left at the posts would be wider than its limit, or under " + length(1),
                    "another block, `by: block` to look for one, or another `least_end_gap` or `centre`"};
        case Trouble::no_block:
            return {"no block of " + length(0) + " or more serves every section: " + section_name() +
                        " has no layout with it",
                    "a smaller `least_gap` or `least_end_gap`, another `centre`, or `alike`"};
        case Trouble::pitch_gap_too_wide:
            return {"the fixed pitch leaves gaps of " + fine(0) + ", over the widest allowed, " + fine(1), {}};
        case Trouble::pitch_end_too_wide:
            return {"the fixed pitch leaves a gap of " + fine(0) + " at " + where() + ", " + fine(2) +
                        " over the widest allowed, " + fine(1),
                    {}};
        case Trouble::pitch_ball_between:
            return {"the fixed pitch lets a ball of " + length(0) + " through between pickets, and none of " +
                        length(1) + " may pass",
                    {}};
        case Trouble::centre_without_effect:
            return {std::string("`centre` has no effect: ") +
                        (finding_.numbers[0] == 0 ? "the build has no pickets" : "the pickets follow the treads"),
                    {}};
        case Trouble::end_gap_without_effect:
            return {"`least_end_gap` of the pickets has no effect: they have no fixed pitch", {}};
        default: return {};
    }
}

}  // namespace rakewright
