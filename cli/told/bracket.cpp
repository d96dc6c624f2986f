#include "telling.hpp"

namespace rakewright {

Told Telling::of_bracket() const {
    switch (finding_.trouble) {
        case Trouble::hole_beyond_leg:
            return {"a hole at " + size(0) + " is not on a leg of " + size(1),
                    "both are measured from the inside of the bend"};
        case Trouble::bend_past_leg:
            return {"the bend would reach " + against(0, 1) + " from its inside at " + where() +
                        ", and a leg is only " + size(1) + " long",
                    "a smaller `inside_radius`, or a longer leg"};
        case Trouble::bend_past_hole:
            return {"the bend would reach " + against(0, 1) + " from its inside at " + where() +
                        ", and take in the hole at " + size(1),
                    "a smaller `inside_radius`, or a hole farther from the bend"};
        case Trouble::driver_blocked:
            return {"no straight driver gets home at the post screw of " + whole(0) +
                        (finding_.numbers[0] == 1 ? " bracket" : " brackets") + ": see `driver` at the posts",
                    {}};
        case Trouble::leg_below_surface:
            return {"the leg of the " + group() + " bracket at " + where() + ", turned down, would reach " + length(1) +
                        " below what its post stands on",
                    {}};
        case Trouble::leg_down_on_round:
            return {
                "at a round post `leg: auto` turns the bracket's leg down: turned up, behind the rail, it would "
                "lie hollow on the round face",
                {}};
        case Trouble::plate_past_round:
            return {"the plate of the " + group() + " bracket at " + where() +
                        " reaches past the round post, whose surface is " + length(1) + " off its axis",
                    {}};
        case Trouble::k_without_radius: return {"`k_factor` has no effect: the bracket has no `inside_radius`", {}};
        case Trouble::mortise_near_side: return {mortise_near_side(), {}};
        case Trouble::seat_through_member:
            return {"the leg under the " + group() + " group cannot be let in: it is " + size(1) +
                        " thick, and the lowest member " + size(2) + " deep",
                    {}};
        case Trouble::picket_on_leg:
            return {"the first picket at " + where() + " stands on the upper bracket's leg: its near face is " +
                        against(0, 1) + " from the post at the underside, and the leg reaches " + against(1, 0) +
                        ", level",
                    {}};
        case Trouble::no_driving_order: return {no_driving_order(), {}};
        case Trouble::leg_leaves_rail: return {leg_leaves_rail(), {}};
        default: return {};
    }
}

}  // namespace rakewright
