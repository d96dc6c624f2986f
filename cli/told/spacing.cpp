#include "telling.hpp"

namespace rakewright {

Told Telling::of_spacing() const {
    switch (finding_.trouble) {
        case Trouble::pitch_within_picket:
            return {"a pitch of " + against(0, 1) + " level leaves no gap between pickets " + size(1) + " wide",
                    "a longer pitch, centre to centre"};
        case Trouble::pitch_on_treads:
            return {"the pickets of this section stand on treads and follow them: a fixed pitch has no place",
                    "`max_gap` in place of the pitch, or a lower group"};
        case Trouble::no_room_at_pitch:
            return {"no picket goes into " + length(0) + " clear that leaves " + length(1) + " at both posts" +
                        (finding_.numbers[2] > 0 ? ", with what is wanted in the middle" : ""),
                    "a smaller `least_end_gap`, another `centre`, or a `max_gap` that needs no picket there"};
        case Trouble::block_over_limit:
            return {"a block of " + size(0) + " is wider than a gap may be, " + size(1),
                    "a shorter block, or a section with a larger limit"};
        case Trouble::block_does_not_fit:
            return {"section " + section_name() + " has no layout with a block of " + size(0) +
                        ": what is left at the posts would be wider than its limit, or under " + length(1),
                    "another block, `by: block` to look for one, or another `least_end_gap` or `centre`"};
        case Trouble::no_block:
            return {"no block of " + length(0) + " or more serves every section: " + section_name() +
                        " has no layout with it",
                    "a smaller `least_gap` or `least_end_gap`, another `centre`, or `alike`"};
        case Trouble::pitch_gap_too_wide:
            return {"the fixed pitch leaves gaps of " + against(0, 1) + ", over the widest allowed, " + size(1), {}};
        case Trouble::pitch_end_too_wide:
            return {"the fixed pitch leaves a gap of " + against(0, 1) + " at " + where() + ", " +
                        off_nothing(finding_.numbers[2]) + " over the widest allowed, " + size(1),
                    {}};
        case Trouble::pitch_ball_between:
            return {"the fixed pitch lets a ball of " + against(0, 1) + " through between pickets, and none of " +
                        size(1) + " may pass",
                    {}};
        case Trouble::centre_without_effect:
            return {std::string("`centre` has no effect: ") +
                        (finding_.numbers[0] == 0 ? "the build has no pickets" : "the pickets follow the treads"),
                    {}};
        case Trouble::end_gap_without_effect:
            return {"`least_end_gap` of the pickets has no effect: they have no fixed pitch", {}};
        case Trouble::least_gap_without_effect:
            return {finding_.numbers[0] == 0
                        ? std::string("`least_gap` of the spacing has no effect: no gap is looked for")
                        : "`least_gap` of the spacing leaves nothing to look for: no gap may be as wide as " + size(1) +
                              ", the widest " + size(2) + ", so each section has the fewest pickets",
                    {}};
        case Trouble::least_end_gap_without_block:
            return {"`least_end_gap` of the spacing has no effect: it is not spaced with a block", {}};
        default: return {};
    }
}

}  // namespace rakewright
