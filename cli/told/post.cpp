#include "telling.hpp"

namespace rakewright {

Told Telling::of_post() const {
    switch (finding_.trouble) {
        case Trouble::placed_without_stair:
            return {"this says how a post stands, but the post has no place",
                    "give its `at` with `stair` or `floor`, or leave this out"};
        case Trouble::stair_key_on_floor:
            return {"this is said of a post at a stair, and the post stands on a floor",
                    "leave it out: on a floor `at` counts from the floor's origin"};
        case Trouble::trim_not_thicker:
            return {"the boards round the post's foot, " + size(0) + " by " + size(2) +
                        ", are not thicker than the post, " + size(1) + " by " + size(3),
                    "the size of `base_trim` is over all"};
        case Trouble::two_sizes_of_round:
            return {"a round post is as thick one way as the other", "its diameter, once"};
        case Trouble::taper_between_nothing:
            return {"both sizes of the post are taken " + length(0) + " up it", "two heights, some way apart"};
        case Trouble::tapered_away:
            return {"the post would taper to nothing " + length(0) + " above what it stands on",
                    "check the two sizes and where they were taken"};
        case Trouble::size_missing: return {"nothing says how thick the post is", "its `size`, or `around` if round"};
        case Trouble::girth_of_square:
            return {"a girth is taped round a post that is not round", "`shape: round`, or the post's `size`"};
        case Trouble::timber_size_of_round:
            return {"a round post has no timber size", "its diameter as `size`, or its girth as `around`"};
        case Trouble::turn_of_round:
            return {"a round post is the same however it is turned", "leave `turn` out, or `shape: square`"};
        case Trouble::plate_under_hollow_post:
            return {"the plate, " + size(0) + " by " + size(2) + ", is smaller than the hollow post on it, " + size(1) +
                        " by " + size(3),
                    "a plate at least as large as the post that its rod holds down"};
        case Trouble::holes_off_plate:
            return {"holes of " + size(1) + ", " + size(0) + " apart, are not within a plate of " + size(2),
                    "a larger plate, or holes nearer each other: `holes` is centre to centre"};
        case Trouble::wood_under_concrete:
            return {"the thickness of wood is given, and the post is anchored in concrete",
                    "leave it out, or `anchored_in: wood`"};
        case Trouble::reveal_under_rail:
            return {"a rail runs over this post, which ends under it", "leave out `reveal`"};
        case Trouble::rod_without_reveal:
            return {"a rod goes up through the post, and how high that is does not follow",
                    "the post's `reveal`: its top over the highest rail's"};
        case Trouble::no_post_left:
            return {"nothing is left of the post: its top would be " + length(0) + " above what it stands on" +
                        (finding_.numbers[1] > 0 ? ", and its plate is " + length(1) + " thick" : std::string()),
                    "`reveal` counts up from the highest top of the rails that meet it"};
        case Trouble::trim_left_out:
            return {"the boards round the foot of post " + post_name() +
                        " are left out: over a slope how high they reach follows from the post's place only",
                    {}};
        case Trouble::taper_left_out:
            return {"the taper of post " + post_name() +
                        " is left out: it has no place. A clear distance taken `low` and `high` says the same",
                    {}};
        case Trouble::sinks_into_trim:
            return {"at post " + post_name() + " the lowest member comes down " + length(0) +
                        " into the boards round its foot: notch it over them, or cut them there",
                    {}};
        case Trouble::little_wood_under:
            return {"post fixing " + fixing_name() + " has " + size(0) +
                        " of wood under its bolts; to bolt through it is common practice to have at least " + size(1),
                    {}};
        case Trouble::holes_under_post:
            return {"post " + post_here() + " covers a part of each hole of its base plate", {}};
        case Trouble::over_beside_face: {
            std::string section;
            for (const Section& other : job_.sections)
                if (other.id.place.begin == finding_.also.begin) section = other.id.name;
            return {"post " + post_here() + " is cut off under a rail that runs over it, and the rail of " + section +
                        " ends at its face above that: give that end `over` too, or leave the other out",
                    {}};
        }
        case Trouble::over_round_corner:
            return {"two rails run over post " + post_here() +
                        " round a corner: each is cut square over the post's axis, so that they overlap there. Miter "
                        "them by half the corner, and add to each what that takes on its long side",
                    {}};
        case Trouble::post_top_unknown:
            return {"how high post " + post_here() +
                        " stands does not follow: no rail meets it whose height there is known",
                    {}};
        case Trouble::fixing_without_post:
            return {"post fixing " + fixing_here() + " has no effect: no post names it", {}};
        default: return {};
    }
}

}  // namespace rakewright
