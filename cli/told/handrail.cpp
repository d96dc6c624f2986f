#include "telling.hpp"

namespace rakewright {

Told Telling::of_handrail() const {
    switch (finding_.trouble) {
        case Trouble::found_nosing_beyond:
            return {"there is no number " + whole(0) + ": the stair has " + whole(1) + " risers",
                    "nosings are numbered from 1 to " + whole(1) + ", treads from 0, the floor at the foot"};
        case Trouble::found_heights_of_floor:
            return {"this is read at a stair, and the rail names none", "name its `stair`, or give one `height`"};
        case Trouble::found_height_of_stair:
            return {"a rail over a stair is read at nosings", "`heights`, by the number of the nosing"};
        case Trouble::found_tread_without_stair:
            return {"a tread is named, and the rail names no stair", "name its `stair`, or leave `tread` out"};
        case Trouble::found_tread_missing:
            return {"under a rail that runs over steps every tread has an opening of its own",
                    "name the `tread` over which the ball was tried; 0 is the floor at the foot"};
        case Trouble::balls_contradict:
            return {"a ball of " + length(0) + " passed where one of " + length(1) + " did not",
                    "try both again; where they are two openings, say `at` which `tread` each is"};
        case Trouble::ball_against_gap:
            return {"a ball of " + length(0) + (finding_.numbers[2] > 0 ? " passed" : " did not pass") +
                        " where the widest gap is given as " + length(1),
                    "try and measure again, or leave one of the two out"};
        case Trouble::return_without_clearance:
            return {"a return to the wall needs to know how far that is", "the handrail's `clearance`"};
        case Trouble::handrail_too_short:
            return {"nothing is left of one of the handrail's pieces between its two cuts",
                    "a longer extension, or more clearance"};
        case Trouble::return_off_rake:
            return {"handrail " + handrail_name() +
                        ": a level return meets a raked rail, and their sections do not line up round the corner "
                        "but for a round one",
                    {}};
        default: return {};
    }
}

}  // namespace rakewright
