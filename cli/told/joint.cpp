#include "telling.hpp"

namespace rakewright {

Told Telling::of_joint() const {
    switch (finding_.trouble) {
        case Trouble::post_key_on_joint:
            return {"this is said of a post, and at a joint there is none", "leave it out, or another `shape`"};
        case Trouble::joint_of_two:
            return {"a joint is where two sections meet, and " + whole(0) +
                        (finding_.numbers[0] == 1 ? " ends" : " end") + " here",
                    "name it in `from` or `to` of two sections"};
        case Trouble::joint_without_place:
            return {"the section ends at a joint, and its other end has no place",
                    "posts that have a place (`at` with `stair` or `floor`)"};
        case Trouble::auto_at_joint:
            return {"a lower gap left to the rules cannot be matched at a joint", "the gap as a length"};
        case Trouble::joint_folds_back:
            return {"at " + where() + " the other section's rail runs back along this one",
                    "check where the sections' other ends stand"};
        case Trouble::ends_at_joint:
            return {"at a joint the rail is cut to the rail that it meets", "leave its `ends` out there"};
        case Trouble::face_at_joint:
            return {
                "pickets on the side of the rails come to a joint without a post: on one side of it they would meet "
                "those of the other rail, on the other leave them apart",
                "a post there, or `fixed: between`"};
        case Trouble::clear_to_joint:
            return {"a clear distance is between the faces of posts, and at a joint there is none",
                    "leave it out: the places say how long the rail is"};
        case Trouble::joint_apart:
            return {"at joint " + post_here() + " the members do not end flush: up to " + length(0) +
                        " apart at an arris; see the joints for each, and for the section that would meet",
                    {}};
        case Trouble::joint_moved:
            return {"at joint " + post_here() + " the rails' tops meet " + length_of(std::fabs(finding_.numbers[0])) +
                        (finding_.numbers[0] > 0 ? " past" : " short of") +
                        " its place, going by the section first named; they are cut there",
                    {}};
        default: return {};
    }
}

}  // namespace rakewright
