#include "telling.hpp"

namespace rakewright {

Told Telling::of_turned() const {
    switch (finding_.trouble) {
        case Trouble::turned_key_on_square:
            return {std::string("this key is for turned pickets, and these are ") +
                        (finding_.numbers[0] > 0 ? "round" : "square"),
                    "`shape: turned`, or leave this key out"};
        case Trouble::turned_key_missing: {
            static constexpr const char* keys[] = {"length", "blocks", "turning"};
            return {std::string("turned pickets without `") + keys[static_cast<std::size_t>(finding_.numbers[0])] + "`",
                    "`length`, `blocks` and `turning` of the picket as bought, or `shape: square`"};
        }
        case Trouble::blocks_fill_length:
            return {"a length of " + size(0) + " leaves nothing to turn between blocks of together " + size(1),
                    "the length as bought, both blocks included"};
        case Trouble::turning_not_rising:
            return {"a turning at " + size(0) + " does not stand over the one before, at " + size(1),
                    "from the top of the lower block upward"};
        case Trouble::turning_beyond_blocks:
            return {"a turning at " + size(0) + " stands beyond the " + size(1) + " between the blocks",
                    "`at` is from the top of the lower block"};
        case Trouble::turning_too_thick:
            return {"a diameter of " + size(0) + " does not come out of a picket " + size(1) + " wide",
                    "a diameter no more than `width`"};
        case Trouble::turning_height_unknown:
            return {
                "where the turning stands does not follow: the posts have no place, so the longest picket is "
                "not known",
                "give `upper_block`, or posts that both have a place (`stair` and `at`)"};
        case Trouble::picket_too_short:
            return {"picket " + whole(2) + " must come out of a stick of " + against(1, 0) + ", and one of " + size(0) +
                        " is bought",
                    "a longer picket, or a lower rail"};
        case Trouble::block_too_short:
            return {"picket " + whole(3) + " needs " + against(2, 1) + " of the " + group() + " block, and " + size(1) +
                        " is bought",
                    "a longer block, or another `upper_block`"};
        case Trouble::too_little_block:
            return {"the " + group() + " block of picket " + whole(3) + " would be trimmed " + short_by() +
                        " too short at its short side" +
                        (finding_.numbers[2] > 0 ? ": " + length(2) + " must be left" : std::string()),
                    "another `upper_block`, `least_block` or picket"};
        default: return {};
    }
}

}  // namespace rakewright
