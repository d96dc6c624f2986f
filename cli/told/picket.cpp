#include "telling.hpp"

namespace rakewright {

Told Telling::of_picket() const {
    switch (finding_.trouble) {
        case Trouble::no_room_for_pickets:
            return {whole(1) + " pickets would be needed in " + length(0) + " clear, and they do not go in",
                    "raise `max_gap`, or move the posts"};
        case Trouble::too_many_pickets:
            return {"more than " + whole(0) + " pickets would be needed", "a larger `max_gap` or a shorter section"};
        case Trouble::picket_through_rail:
            return {"a plough of " + size(0) + " goes through a member " + size(1) + " deep",
                    "a plough less deep than its member"};
        case Trouble::picket_past_nosing:
            return {"with " + whole(0) + " on each tread the last picket on tread " + whole(1) + " would reach " +
                        length(2) + " past the next nosing",
                    "fewer on each tread, or `fewest`"};
        case Trouble::no_count_per_tread:
            return {"no number of pickets on each tread keeps the gaps to " + size(0),
                    "thinner pickets, or a larger `max_gap`"};
        case Trouble::no_count_for_sphere:
            return {"no number of pickets stops a ball of " + size(0) +
                        (finding_.numbers[1] > 0 ? ": at best one of " + against(1, 0) + " passes" : std::string()),
                    "pickets with thicker turnings, or a larger `max_sphere`"};
        case Trouble::weld_gap_too_wide:
            return {"a weld gap of " + length(0) + " leaves nothing of a picket", "a smaller `weld_gap`"};
        case Trouble::gap_at_post_too_wide: return {gap_at_post(), {}};
        case Trouble::gap_between_too_wide:
            return {whole(3) + " on each tread leave gaps of " + against(0, 1) + ", over the widest allowed, " +
                        size(1) +
                        (finding_.numbers[2] > 0 ? "; " + whole(2) + " on each tread would do" : std::string()),
                    {}};
        case Trouble::ball_at_post:
            return {"at " + post_or_joint() + " a ball of " + against(0, 1) + " passes, and none of " + size(1) +
                        " may: " + (finding_.numbers[2] > 0 ? whole(2) + " on each tread cures it, or move" : "move") +
                        " the " + kind_of_end() + " nearer",
                    {}};
        case Trouble::ball_between:
            return {whole(3) + " on each tread let a ball of " + against(0, 1) + " through, and none of " + size(1) +
                        " may pass" +
                        (finding_.numbers[2] > 0 ? "; " + whole(2) + " on each tread would do" : std::string()),
                    {}};
        case Trouble::max_gap_without_pickets:
            return {std::string(finding_.numbers[0] == 0 ? "`max_gap`" : "`max_sphere`") +
                        " has no effect: the build has no pickets",
                    {}};
        case Trouble::per_tread_with_lower:
            return {"`per_tread` has no effect: the pickets stand on a lower group", {}};
        default: return {};
    }
}

}  // namespace rakewright
