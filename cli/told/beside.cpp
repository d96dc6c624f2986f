#include "telling.hpp"

namespace rakewright {

Told Telling::of_beside() const {
    switch (finding_.trouble) {
        case Trouble::picket_without_depth:
            return {"the pickets have no depth, across the rail", "their `depth`, or `shape: round`"};
        case Trouble::round_picket_flat:
            return {"round pickets " + length(1) + " wide cannot be " + length(0) + " deep",
                    "their diameter as `width`, and no `depth`"};
        case Trouble::bore_through_rail:
            return {"a hole bored plumb for the pickets reaches " + length(0) + " into a member " + length(1) +
                        " deep, square to the rail, and comes out of it",
                    "a smaller `plough`, or a deeper member"};
        case Trouble::face_key_on_between:
            return {"this key is for pickets on the side of the rails, and these stand between them",
                    "`fixed: face`, or leave this key out"};
        case Trouble::between_key_on_face:
            if (finding_.numbers[0] > 0)
                return {"turned pickets are not fixed to the side of rails",
                        "`shape: square` or `shape: round`, or `fixed: between`"};
            return {
                "pickets on the side of the rails are plain sticks, as far apart as `max_gap` or `max_sphere` "
                "leaves them: this key means nothing with them",
                "`fixed: between`, or leave this key out"};
        case Trouble::face_widths_differ:
            return {"pickets on the side of an upper member " + length(0) + " wide cannot lie on a lower one of " +
                        length(1) + " as well",
                    "lower members no wider, the highest as wide, or `fixed: between`"};
        case Trouble::head_under_wider:
            return {"the pickets' heads would run up " + length(0) +
                        " past the member that they are fixed to, into "
                        "one that stands out " +
                        length(1) + " over it",
                    "`upper` of 0 or less, so that the heads end under that member"};
        case Trouble::head_off_rail:
            return {"heads " + length(0) + " under the top of a member " + length(1) +
                        " deep, plumb, do not reach it at all",
                    "an `upper` nearer to 0"};
        case Trouble::foot_on_nothing:
            return {
                "without a lower group the pickets' feet are fixed to what bounds the floor or stair, and these "
                "do not reach down past it",
                "`past: {lower: ...}` more than 0, or a lower group"};
        case Trouble::foot_above_tread:
            return {"feet " + length(0) + " below the nosing line stay " + length(1) +
                        " above the tread or floor beside them: they do not reach a string",
                    "`past: {lower: ...}` greater by more than that"};
        case Trouble::feet_below_surface:
            return {"the pickets' feet reach " + length(0) +
                        " below the nosing line or floor: where they stand it must leave them room",
                    {}};
        case Trouble::picket_side_without_face:
            return {"`picket_side` has no effect: the build has no pickets on the side of its rails", {}};
        default: return {};
    }
}

}  // namespace rakewright
