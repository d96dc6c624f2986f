#include "telling.hpp"

namespace rakewright {

Told Telling::of_section() const {
    switch (finding_.trouble) {
        case Trouble::post_at_both_ends: return {"a section runs from a post to the same post", "name two posts"};
        case Trouble::ground_unsaid:
            return {"the section's posts stand at two places, and nothing says what it is over",
                    "name its `stair` or its `floor`"};
        case Trouble::plan_missing:
            return {"the section's posts stand at two places, and one of these has no place in plan",
                    "give both a `plan`: `x`, `y`, `heading` and `level`"};
        case Trouble::low_high_between_placed:
            return {"the clear distance was taken twice, and both posts have a place",
                    "one `clear`, half-way up the pickets, and the posts' `lean`"};
        case Trouble::rail_misses_post:
            return {"the rail's line passes " + where() + " by: it runs " + length(0) + " beside the post's centre",
                    "a smaller `offset`, square to the rail"};
        case Trouble::clear_missing:
            return {"the section does not say how long it is",
                    "give its `clear` distance, or posts that both have a place (`stair` and `at`)"};
        case Trouble::two_clears:
            return {"the section says its clear distance twice", "give `clear` or `clear_on_slope`"};
        case Trouble::slope_without_stair:
            return {"a clear distance on the slope needs a stair", "name the `stair`, or give the level `clear`"};
        case Trouble::meets_corner:
            return {"the rail's centre line leaves this post through a corner",
                    "move the post, or turn it, so that the rail meets a face"};
        case Trouble::posts_overlap:
            return {"the section's posts overlap: " + length(0) + " is left between their faces",
                    "check where they stand: `at` is level, from a nosing to the post's centre unless `face` says "
                    "otherwise"};
        case Trouble::cut_too_steep:
            return {"a post's face runs along the rail, so that no cut can be made to it", "check `turn` and `lean`"};
        case Trouble::no_length_left:
            return {"nothing is left of a member between its two cuts: its shortest edge would be " + length(0),
                    "the posts stand too near each other for a rail so deep"};
        case Trouble::nothing_to_do:
            return {"the job describes nothing to be solved or judged",
                    "`stairs`, `sections`, `handrails` or rails `as_found`"};
        case Trouble::round_post_missed:
            return {"at " + where() + " a side of the rail runs " + against(0, 1) +
                        " off the round post's axis, and its surface is only " + against(1, 0) +
                        " off it: no cope can reach it",
                    "a narrower member, a thicker post, or one that leans less across the rail"};
        case Trouble::clear_differs:
            return {"the clear distance of " + against(0, 1) + " is used; the posts' places leave " + against(1, 0) +
                        ", " + difference(0, 1),
                    {}};
        case Trouble::offset_without_effect:
            return {"`offset` has no effect: a clear distance to square posts is the same beside their centres", {}};
        default: return {};
    }
}

}  // namespace rakewright
