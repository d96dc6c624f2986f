#include "told.hpp"

#include <cmath>

namespace rakewright {
namespace {

class Telling {
 public:
    Telling(const Job& job, const Finding& finding) : job_(job), finding_(finding), tape_(tape_of(job)) {}

    Told told() const {
        switch (finding_.trouble) {
            case Trouble::slope_not_longer:
                return {"the step's slope of " + length(0) + " is not longer than its other side, " + length(1),
                        "`nosing_to_nosing` is along the nosing line, longer than both rise and run"};
            case Trouble::no_run_left:
                return {"a tread of " + length(0) + " leaves no run: the next nosing stands out " + length(1),
                        "the run is the tread less the projection of the next nosing"};
            case Trouble::step_without_run:
                return {"step " + whole(0) + " has no run",
                        "every step but the last has a `run`, nosing to nosing, or a `tread`"};
            case Trouble::step_with_two_runs: return {"a step has a run and a tread", "give one of the two"};
            case Trouble::last_step_with_run:
                return {"the last step has a run, but beyond it is the landing", "leave the run of the last step out"};
            case Trouble::wash_too_steep:
                return {"the wash lifts tread " + whole(0) + " by " + length(1) +
                            " at its back, where the next nosing is only " + length(2) + " up",
                        "a wash is small: 1/4 in 12 drains a tread"};
            case Trouble::thickness_missing:
                return {"the stair's risers are open, and nothing says how thick its treads are",
                        "give `tread_thickness`, plumb"};
            case Trouble::no_room_between_treads:
                return {"riser " + whole(0) + " would not be open: " + length(1) + " is left between its two treads",
                        "a thinner `tread_thickness`, or `riser: closed`"};
            case Trouble::nosing_beyond_stair:
                return {"there is no nosing " + whole(0) + ": the stair has " + whole(1),
                        "a number from 1 to " + whole(1) + ", or `last`"};
            case Trouble::tread_beyond_stair:
                return {"there is no tread " + whole(0) + ": the stair has " + whole(1) + " risers",
                        "`tread 0` is the floor at the foot, `tread " + whole(1) + "` the landing"};
            case Trouble::placed_without_stair:
                return {"this says how a post stands, but the post has no place",
                        "give its `at` with `stair` or `floor`, or leave this out"};
            case Trouble::post_at_both_ends: return {"a section runs from a post to the same post", "name two posts"};
            case Trouble::ground_unsaid:
                return {"the section's posts stand at two places, and nothing says what it is over",
                        "name its `stair` or its `floor`"};
            case Trouble::plan_missing:
                return {"the section's posts stand at two places, and one of these has no place in plan",
                        "give both a `plan`: `x`, `y`, `heading` and `level`"};
            case Trouble::stair_key_on_floor:
                return {"this is said of a post at a stair, and the post stands on a floor",
                        "leave it out: on a floor `at` counts from the floor's origin"};
            case Trouble::fall_way_unknown:
                return {
                    "the floor falls the way its first axis looks, and how the section lies to that does not follow",
                    "posts that stand on the `floor`, or `toward: to` or `from`"};
            case Trouble::fall_needs_heading:
                return {"posts stand on a floor that falls toward an end of whatever section is over it",
                        "`toward: heading` of the floor: the way its first axis looks, `at` of the posts on it"};
            case Trouble::low_high_between_placed:
                return {"the clear distance was taken twice, and both posts have a place",
                        "one `clear`, half-way up the pickets, and the posts' `lean`"};
            case Trouble::trim_not_thicker:
                return {"the boards round the post's foot, " + length(0) + " by " + length(2) +
                            ", are not thicker than the post, " + length(1) + " by " + length(3),
                        "the size of `base_trim` is over all"};
            case Trouble::two_sizes_of_round:
                return {"a round post is as thick one way as the other", "its diameter, once"};
            case Trouble::size_missing:
                return {"nothing says how thick the post is", "its `size`, or `around` if round"};
            case Trouble::post_key_on_joint:
                return {"this is said of a post, and at a joint there is none", "leave it out, or another `shape`"};
            case Trouble::joint_of_two:
                return {"a joint is where two sections meet, and " + whole(0) +
                            (finding_.numbers[0] == 1 ? " ends" : " end") + " here",
                        "name it in `from` or `to` of two sections"};
            case Trouble::joint_without_place:
                return {"the section ends at a joint, and its other end has no place",
                        "posts that have a place (`at` with `stair` or `floor`)"};
            case Trouble::ends_at_joint:
                return {"at a joint the rail is cut to the rail that it meets", "leave its `ends` out there"};
            case Trouble::clear_to_joint:
                return {"a clear distance is between the faces of posts, and at a joint there is none",
                        "leave it out: the places say how long the rail is"};
            case Trouble::auto_at_joint:
                return {"a lower gap left to the rules cannot be matched at a joint", "the gap as a length"};
            case Trouble::joint_folds_back:
                return {"at the " + end() + " end the other section's rail runs back along this one",
                        "check where the sections' other ends stand"};
            case Trouble::taper_between_nothing:
                return {"both sizes of the post are taken " + length(0) + " up it", "two heights, some way apart"};
            case Trouble::tapered_away:
                return {"the post would taper to nothing " + length(0) + " above what it stands on",
                        "check the two sizes and where they were taken"};
            case Trouble::rail_misses_post:
                return {"the rail's line passes the post at its " + end() + " end by: it runs " + length(0) +
                            " beside the post's centre",
                        "a smaller `offset`, square to the rail"};
            case Trouble::clear_missing:
                return {"the section does not say how long it is",
                        "give its `clear` distance, or posts that both have a place (`stair` and `at`)"};
            case Trouble::two_clears:
                return {"the section says its clear distance twice", "give `clear` or `clear_on_slope`"};
            case Trouble::slope_without_stair:
                return {"a clear distance on the slope needs a stair", "name the `stair`, or give the level `clear`"};
            case Trouble::no_nosing_line:
                return {"a single measured step has no nosing line, so nothing can be raked over it",
                        "give the stair as `risers`, `rise` and `run`"};
            case Trouble::floor_under_rake:
                return {"the section is raked over its stair, and names a floor",
                        "leave `floor` out: treads that drain are the stair's `wash`. A floor lies under a section "
                        "without a stair, or straight across a landing"};
            case Trouble::side_missing:
                return {"the stair's two strings differ, and the section does not say on which side it is",
                        "`side: left` or `side: right`, seen walking up"};
            case Trouble::string_above_missing:
                return {"the pickets stand on a closed string, and nothing says how high that is",
                        "give the stair's `string_above`, plumb from the nosing line to the string's top, or the "
                        "build a lower group"};
            case Trouble::below_string:
                return {"the lower group would stand " + length(0) + " below the closed string's top",
                        "a `lower_gap` of at least `string_above`: both count from the nosing line"};
            case Trouble::meets_corner:
                return {"the rail's centre line leaves this post through a corner",
                        "move the post, or turn it, so that the rail meets a face"};
            case Trouble::posts_overlap:
                return {"the section's posts overlap: " + length(0) + " is left between their faces",
                        "check where they stand: `at` is level, from a nosing to the post's centre unless `face` says "
                        "otherwise"};
            case Trouble::cut_too_steep:
                return {"a post's face runs along the rail, so that no cut can be made to it",
                        "check `turn` and `lean`"};
            case Trouble::no_length_left:
                return {"nothing is left of a member between its two cuts: its shortest edge would be " + length(0),
                        "the posts stand too near each other for a rail so deep"};
            case Trouble::lower_gap_missing:
                return {"the build has a lower group, but nothing says how high it stands",
                        "give `lower_gap` in the section or in the build"};
            case Trouble::rails_meet:
                return {"there is no room under the upper group: " + length(0) + " plumb is left over what is under it",
                        "raise `height`, or lower `lower_gap`"};
            case Trouble::below_surface:
                if (finding_.numbers[0] == 0)
                    return {"the rail would stand " + length(1) + " below the floor", "raise it"};
                return {"the rail would stand " + length(1) + " below tread " + whole(0),
                        "raise it: this nosing stands highest over the nosing line"};
            case Trouble::no_room_for_pickets:
                return {whole(1) + " pickets would be needed in " + length(0) + " clear, and they do not go in",
                        "raise `max_gap`, or move the posts"};
            case Trouble::too_many_pickets:
                return {"more than " + whole(0) + " pickets would be needed",
                        "a larger `max_gap` or a shorter section"};
            case Trouble::picket_through_rail:
                return {"a plough of " + length(0) + " goes through a member " + length(1) + " deep",
                        "a plough less deep than its member"};
            case Trouble::picket_past_nosing:
                return {"with " + whole(0) + " on each tread the last picket on tread " + whole(1) + " would reach " +
                            length(2) + " past the next nosing",
                        "fewer on each tread, or `fewest`"};
            case Trouble::no_count_per_tread:
                return {"no number of pickets on each tread keeps the gaps to " + length(0),
                        "thinner pickets, or a larger `max_gap`"};
            case Trouble::hole_beyond_leg:
                return {"a hole at " + length(0) + " is not on a leg of " + length(1),
                        "both are measured from the inside of the bend"};
            case Trouble::bend_past_leg:
                return {"the bend would reach " + length(0) + " from its inside at the " + end() +
                            " end, and a leg is only " + length(1) + " long",
                        "a smaller `inside_radius`, or a longer leg"};
            case Trouble::bend_past_hole:
                return {"the bend would reach " + length(0) + " from its inside at the " + end() +
                            " end, and take in the hole at " + length(1),
                        "a smaller `inside_radius`, or a hole farther from the bend"};
            case Trouble::found_nosing_beyond:
                return {"there is no number " + whole(0) + ": the stair has " + whole(1) + " risers",
                        "nosings are numbered from 1 to " + whole(1) + ", treads from 0, the floor at the foot"};
            case Trouble::found_heights_of_floor:
                return {"this is read at a stair, and the rail names none", "name its `stair`, or give one `height`"};
            case Trouble::found_height_of_stair:
                return {"a rail over a stair is read at nosings", "`heights`, by the number of the nosing"};
            case Trouble::found_tread_without_stair:
                return {"a tread is named, and the rail names no stair", "name its `stair`, or leave `tread` out"};
            case Trouble::nothing_to_do:
                return {"the job describes nothing to be solved or judged",
                        "`stairs`, `sections`, `handrails` or rails `as_found`"};
            case Trouble::auto_without_limit:
                return {"no rule in force limits the openings under this rail",
                        "name `rules` that do, or give the lower gap as a length"};
            case Trouble::return_without_clearance:
                return {"a return to the wall needs to know how far that is", "the handrail's `clearance`"};
            case Trouble::handrail_too_short:
                return {"nothing is left of one of the handrail's pieces between its two cuts",
                        "a longer extension, or more clearance"};
            case Trouble::stock_twice:
                return {"there is stock of this section already", "all its `lengths` in one entry"};
            case Trouble::prices_do_not_match:
                return {"prices and lengths do not match: " + whole(0) + " and " + whole(1),
                        "a price for each of `lengths`, in their order"};
            case Trouble::bar_trimmed_away:
                return {"a trim of " + length(0) + " at each end leaves nothing of a bar of " + length(1),
                        "a smaller `trim`: it is what is squared off at each end"};
            case Trouble::longer_than_stock:
                return {"a piece of " + length(0) +
                            " from tip to tip does not come out of this stock: its longest bar "
                            "gives " +
                            length(1) + (finding_.numbers[2] > 0 ? " between its trims" : ""),
                        "a longer bar among the stock's `lengths`, or a shorter piece"};
            case Trouble::too_many_to_cut:
                return {"more than " + whole(1) + " pieces would be cut from this stock",
                        "a plan for a part of the job"};
            case Trouble::left_out_of_stock:
                return {"the plan leaves out " + whole(0) + (finding_.numbers[0] == 1 ? " piece" : " pieces") +
                            " that no stick of stock is cut to: turned or round pickets, and handrails that are round "
                            "or known by their perimeter",
                        {}};
            case Trouble::no_stock_of_section:
                return {"the plan leaves out what is " + bare(0) + " x " + bare(1) + ", " + whole(2) +
                            (finding_.numbers[2] == 1 ? " piece" : " pieces") + ": no `stock` has that section",
                        {}};
            case Trouble::no_lower_gap:
                return {"no lower gap will do: " + over_tread(2) + " already passes a ball of " + length(0) +
                            " where the rail touches the nosings, and it must stay below " + length(1),
                        "a lower gap of your own, or other rules"};
            case Trouble::turned_key_on_square:
                return {std::string("this key is for turned pickets, and these are ") +
                            (finding_.numbers[0] > 0 ? "round" : "square"),
                        "`shape: turned`, or leave this key out"};
            case Trouble::turned_key_missing: {
                static constexpr const char* keys[] = {"length", "blocks", "turning"};
                return {
                    std::string("turned pickets without `") + keys[static_cast<std::size_t>(finding_.numbers[0])] + "`",
                    "`length`, `blocks` and `turning` of the picket as bought, or `shape: square`"};
            }
            case Trouble::blocks_fill_length:
                return {"a length of " + length(0) + " leaves nothing to turn between blocks of together " + length(1),
                        "the length as bought, both blocks included"};
            case Trouble::turning_not_rising:
                return {"a turning at " + length(0) + " does not stand over the one before, at " + length(1),
                        "from the top of the lower block upward"};
            case Trouble::turning_beyond_blocks:
                return {"a turning at " + length(0) + " stands beyond the " + length(1) + " between the blocks",
                        "`at` is from the top of the lower block"};
            case Trouble::turning_too_thick:
                return {"a diameter of " + length(0) + " does not come out of a picket " + length(1) + " wide",
                        "a diameter no more than `width`"};
            case Trouble::turning_height_unknown:
                return {
                    "where the turning stands does not follow: the posts have no place, so the longest picket is "
                    "not known",
                    "give `upper_block`, or posts that both have a place (`stair` and `at`)"};
            case Trouble::picket_too_short:
                return {"picket " + whole(2) + " must come out of a stick of " + length(1) + ", and one of " +
                            length(0) + " is bought",
                        "a longer picket, or a lower rail"};
            case Trouble::block_too_short:
                return {"picket " + whole(3) + " needs " + length(2) + " of the " + group() + " block, and " +
                            length(1) + " is bought",
                        "a longer block, or another `upper_block`"};
            case Trouble::too_little_block:
                return {"the " + group() + " block of picket " + whole(3) + " would be trimmed " + short_by() +
                            " too short at its short side" +
                            (finding_.numbers[2] > 0 ? ": " + length(2) + " must be left" : std::string()),
                        "another `upper_block`, `least_block` or picket"};
            case Trouble::no_count_for_sphere:
                return {"no number of pickets stops a ball of " + length(0) +
                            (finding_.numbers[1] > 0 ? ": at best one of " + length(1) + " passes" : std::string()),
                        "pickets with thicker turnings, or a larger `max_sphere`"};
            case Trouble::girth_of_square:
                return {"a girth is taped round a post that is not round", "`shape: round`, or the post's `size`"};
            case Trouble::timber_size_of_round:
                return {"a round post has no timber size", "its diameter as `size`, or its girth as `around`"};
            case Trouble::turn_of_round:
                return {"a round post is the same however it is turned", "leave `turn` out, or `shape: square`"};
            case Trouble::round_post_missed:
                return {"at the " + end() + " end a side of the rail runs " + length(0) +
                            " off the round post's axis, and its surface is only " + length(1) +
                            " off it: no cope can reach it",
                        "a narrower member, a thicker post, or one that leans less across the rail"};
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
            case Trouble::weld_gap_too_wide:
                return {"a weld gap of " + length(0) + " leaves nothing of a picket", "a smaller `weld_gap`"};
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
            case Trouble::foot_without_size:
                return {std::string("nothing says how ") + (finding_.numbers[0] == 0 ? "wide" : "deep") +
                            " the feet are: " +
                            (finding_.numbers[1] > 0 ? "the build's pickets are round"
                                                     : "the build has no pickets to take it from"),
                        "the feet's `width` and `depth`"};
            case Trouble::too_many_feet:
                return {"more than " + whole(0) + " feet would stand under one rail", "feet farther apart"};
            case Trouble::no_place_to_splice:
                return {"a member of " + length(1) +
                            " cannot be spliced at its pickets out of sticks of no more than " + length(0),
                        "a longer stick"};
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
            case Trouble::feet_without_lower: return {"`feet` has no effect: the build has no lower group", {}};
            case Trouble::feet_unplaced:
                return {
                    "the feet are left out: where they would stand does not follow, since the posts have no place "
                    "or the closed string no `string_above`",
                    {}};
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
            case Trouble::vent_tubes:
                return {"build " + build_name() +
                            " is of tubes and galvanised: every closed tube needs vent and drain holes at its high and "
                            "its low corner as it hangs, beside the welds; one without can burst in the bath",
                        {}};
            case Trouble::plate_under_hollow_post:
                return {"the plate, " + length(0) + " by " + length(2) + ", is smaller than the hollow post on it, " +
                            length(1) + " by " + length(3),
                        "a plate at least as large as the post that its rod holds down"};
            case Trouble::holes_off_plate:
                return {"holes of " + length(1) + ", " + length(0) + " apart, are not within a plate of " + length(2),
                        "a larger plate, or holes nearer each other: `holes` is centre to centre"};
            case Trouble::wood_under_concrete:
                return {"the thickness of wood is given, and the post is anchored in concrete",
                        "leave it out, or `anchored_in: wood`"};
            case Trouble::rod_without_reveal:
                return {"a rod goes up through the post, and how high that is does not follow",
                        "the post's `reveal`: its top over the highest rail's"};
            case Trouble::no_post_left:
                return {"nothing is left of the post: its top would be " + length(0) + " above what it stands on" +
                            (finding_.numbers[1] > 0 ? ", and its plate is " + length(1) + " thick" : std::string()),
                        "`reveal` counts up from the highest top of the rails that meet it"};
            case Trouble::little_wood_under:
                return {"post fixing " + fixing_name() + " has " + length(0) +
                            " of wood under its bolts; to bolt through it is common practice to have at least " +
                            length(1),
                        {}};
            case Trouble::holes_under_post:
                return {"post " + post_here() + " covers a part of each hole of its base plate", {}};
            case Trouble::post_top_unknown:
                return {"how high post " + post_here() +
                            " stands does not follow: no rail meets it whose height there is known",
                        {}};
            case Trouble::foot_without_place:
                return {"foot " + whole(0) + ", wished for " + length(1) +
                            " from the from post, is left out: no picket is left that it can stand under clear of the "
                            "nosings",
                        {}};
            case Trouble::gap_at_post_too_wide: return {gap_at_post(), {}};
            case Trouble::ball_at_post:
                return {
                    "at " + post_or_joint() + " a ball of " + length(0) + " passes, and none of " + length(1) +
                        " may: " + (finding_.numbers[2] > 0 ? whole(2) + " on each tread cures it, or move" : "move") +
                        " the " + kind_of_end() + " nearer",
                    {}};
            case Trouble::ball_between:
                return {whole(3) + " on each tread let a ball of " + length(0) + " through, and none of " + length(1) +
                            " may pass" +
                            (finding_.numbers[2] > 0 ? "; " + whole(2) + " on each tread would do" : std::string()),
                        {}};
            case Trouble::gap_between_too_wide:
                return {whole(3) + " on each tread leave gaps of " + length(0) + ", over the widest allowed, " +
                            length(1) +
                            (finding_.numbers[2] > 0 ? "; " + whole(2) + " on each tread would do" : std::string()),
                        {}};
            case Trouble::driver_blocked:
                return {"no straight driver gets home at the post screw of " + whole(0) +
                            (finding_.numbers[0] == 1 ? " bracket" : " brackets") + ": see `driver` at the posts",
                        {}};
            case Trouble::leg_below_surface:
                return {"the leg of the " + group() + " bracket at the " + end() + " end, turned down, would reach " +
                            length(1) + " below what its post stands on",
                        {}};
            case Trouble::lower_gap_chosen:
                return {"`lower_gap` is chosen as " + length(0) + ": " + over_tread(3) + " then passes a ball of " +
                            fine(1) + ", below " + fine(2),
                        {}};
            case Trouble::return_off_rake:
                return {"handrail " + handrail_name() +
                            ": a level return meets a raked rail, and their sections do not line up round the corner "
                            "but for a round one",
                        {}};
            case Trouble::lower_gap_without_lower:
                return {"`lower_gap` has no effect: the build has no lower group", {}};
            case Trouble::max_gap_without_pickets:
                return {std::string(finding_.numbers[0] == 0 ? "`max_gap`" : "`max_sphere`") +
                            " has no effect: the build has no pickets",
                        {}};
            case Trouble::per_tread_with_lower:
                return {"`per_tread` has no effect: the pickets stand on a lower group", {}};
            case Trouble::thickness_without_open: return {"`tread_thickness` has no effect: the risers are closed", {}};
            case Trouble::floor_falls:
                return {"the floor falls " + length(0) + " across the clear, toward the " + end() + " end", {}};
            case Trouble::leg_down_on_round:
                return {
                    "at a round post `leg: auto` turns the bracket's leg down: turned up, behind the rail, it would "
                    "lie hollow on the round face",
                    {}};
            case Trouble::joint_apart:
                return {"at joint " + post_here() + " the members do not end flush: up to " + length(0) +
                            " apart at an arris; see the joints for each, and for the section that would meet",
                        {}};
            case Trouble::joint_moved:
                return {"at joint " + post_here() + " the rails' tops meet " +
                            length_of(std::fabs(finding_.numbers[0])) +
                            (finding_.numbers[0] > 0 ? " past" : " short of") +
                            " its place, going by the section first named; they are cut there",
                        {}};
            case Trouble::clear_differs:
                return {"the clear distance of " + length(0) + " is used; the posts' places leave " + length(1) + ", " +
                            difference(0, 1),
                        {}};
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
            case Trouble::offset_without_effect:
                return {"`offset` has no effect: a clear distance to square posts is the same beside their centres",
                        {}};
            case Trouble::plate_past_round:
                return {"the plate of the " + group() + " bracket at the " + end() +
                            " end reaches past the round post, whose surface is " + length(1) + " off its axis",
                        {}};
            case Trouble::k_without_radius: return {"`k_factor` has no effect: the bracket has no `inside_radius`", {}};
            case Trouble::out_of_saws_reach:
                return {(finding_.section < 0 ? "handrail " + handrail_name() + ": " : std::string()) + whole(0) +
                            (finding_.numbers[0] == 1 ? " end is" : " ends are") +
                            " beyond the reach of the saw: see its pieces at the saw",
                        {}};
            case Trouble::mortise_near_side:
                return {"no mortise can be cut for the " + group() + " brackets: it would leave " + length(1) +
                            " on each side of the rail's lowest member, and `least_beside` asks for " + length(2) +
                            ". A rabbet right across it can be, or the bracket on the surface",
                        {}};
            case Trouble::seat_through_member:
                return {"the leg under the " + group() + " group cannot be let in: it is " + length(1) +
                            " thick, and the lowest member " + length(2) + " deep",
                        {}};
            case Trouble::picket_on_leg:
                return {"the first picket at the " + end() +
                            " end stands on the upper bracket's leg: its near face is " + length(0) +
                            " from the post at the underside, and the leg reaches " + length(1) + ", level",
                        {}};
            case Trouble::no_driving_order: return {no_driving_order(), {}};
            case Trouble::screw_comes_out:
                return {"the point of the screw of " + length(1) + " " + joint() +
                            " comes out: the longest that does "
                            "not is " +
                            floored(2) +
                            (finding_.numbers[3] > 0 ? ", and so short it holds less than is asked for" : ""),
                        {}};
            case Trouble::screw_holds_little:
                return {"the screw " + joint() + " holds in " + length(1) + ", less than " + length(2), {}};
            case Trouble::screw_without_joint:
                return {"the screw " + joint() + " has no effect: the build has no such joint", {}};
            case Trouble::screws_meet: return {screws_meet(), {}};
            case Trouble::follow_without_floor: return {"`follow` has no effect: the section names no floor", {}};
        }
        return {};
    }

 private:
    std::string length_of(double value) const {
        return words_of_length(value, tape_) + (job_.units == Unit::inch ? " in" : " mm");
    }
    std::string length(std::size_t i) const { return length_of(finding_.numbers[i]); }
    std::string difference(std::size_t i, std::size_t j) const {
        const double more = finding_.numbers[j] - finding_.numbers[i];
        return words_of_length(std::fabs(more), tape_) + (more < 0 ? " less" : " more");
    }
    std::string bare(std::size_t i) const { return words_of_length(finding_.numbers[i], tape_); }
    /// A length so fine that it cannot be taken for its limit.
    std::string fine(std::size_t i) const {
        const Tape decimals{tape_.unit, 0.001};
        return words_of_length(finding_.numbers[i], decimals) + (job_.units == Unit::inch ? " in" : " mm");
    }
    std::string short_by() const {
        return words_of_length(finding_.numbers[2] - finding_.numbers[1], tape_) +
               (job_.units == Unit::inch ? " in" : " mm");
    }
    std::string whole(std::size_t i) const { return std::to_string(static_cast<int>(finding_.numbers[i])); }
    std::string over_tread(std::size_t i) const {
        return finding_.numbers[i] < 0 ? "the opening under the rail" : "the opening over tread " + whole(i);
    }
    std::string end() const { return finding_.end == 0 ? "from" : "to"; }
    std::string group() const { return finding_.numbers[0] == 0 ? "upper" : "lower"; }

    std::string fixing_name() const {
        for (const PostFixing& fixing : job_.post_fixings)
            if (fixing.id.place.begin == finding_.also.begin) return fixing.id.name;
        return {};
    }

    /// The post or joint that the finding is at.
    std::string post_here() const {
        for (const Post& post : job_.posts)
            if (post.id.place.begin == finding_.place.begin) return post.id.name;
        return {};
    }

    /// A length that must not be more than it is: the mark under it.
    std::string floored(std::size_t i) const {
        return words_of_mark(fitting_mark(finding_.numbers[i], 0, tape_), tape_) +
               (job_.units == Unit::inch ? " in" : " mm");
    }

    /// Which screw, by its key.
    std::string joint() const {
        static constexpr const char* keys[] = {"`picket_to_upper`", "`picket_to_lower`", "`between_members`",
                                               "`post_leg`", "`rail_leg`"};
        return keys[static_cast<std::size_t>(finding_.numbers[0])];
    }

    std::string no_driving_order() const {
        const bool one = finding_.numbers[0] == 1;
        std::string text = "no straight driver gets home at both screws of " + whole(0) +
                           (one ? " bracket" : " brackets") + ", on the post first or on the rail first";
        if (finding_.numbers[1] < finding_.numbers[2])
            text += "; at a screw in the rail " + length(1) + " is free, square to the rail, and " + length(2) +
                    " is needed";
        if (finding_.numbers[3] > 0) text += "; with the leg turned the other way " + whole(3) + " would do";
        return text;
    }

    std::string screws_meet() const {
        const std::string other = job_.sections[static_cast<std::size_t>(finding_.numbers[2])].id.name;
        const bool known = finding_.numbers[3] > 0;
        return "in post " + post_name() + " a screw " + (known ? "meets" : "may meet") + " one of section " + other +
               (known ? ": their middles come within "
                      : ", if the rails come in square round a corner or from "
                        "opposite sides: their middles may come within ") +
               fine(0) + ", and must stay " + fine(1) + " apart";
    }

    std::string handrail_name() const {
        for (const Handrail& handrail : job_.handrails)
            if (handrail.id.place.begin == finding_.place.begin) return handrail.id.name;
        return {};
    }

    std::string build_name() const {
        for (const Build& build : job_.builds)
            if (build.id.place.begin == finding_.place.begin) return build.id.name;
        return {};
    }

    const std::string& section_name() const {
        return job_.sections[static_cast<std::size_t>(finding_.section)].id.name;
    }

    std::string post_name() const {
        const Section& section = job_.sections[static_cast<std::size_t>(finding_.section)];
        const Ref& post = finding_.end == 0 ? section.from : section.to;
        return post.named() ? job_.posts[static_cast<std::size_t>(post.index)].id.name : end() + " end";
    }

    /// The post at an end, or the end where none is named.
    std::string where() const {
        const Section& section = job_.sections[static_cast<std::size_t>(finding_.section)];
        const bool named = (finding_.end == 0 ? section.from : section.to).named();
        return named ? post_or_joint() : "the " + end() + " end";
    }

    /// What the section ends at.
    std::string kind_of_end() const {
        const Section& section = job_.sections[static_cast<std::size_t>(finding_.section)];
        const Ref& post = finding_.end == 0 ? section.from : section.to;
        return is_joint(job_, post) ? "joint" : "post";
    }

    std::string post_or_joint() const { return kind_of_end() + " " + post_name(); }

    std::string gap_at_post() const {
        return "the gap at " + post_or_joint() + " is " + length(0) + ", over the widest allowed, " + length(1) + ": " +
               (finding_.numbers[2] > 0 ? whole(2) + " on each tread cures it, or move" : std::string("move")) +
               " the " + kind_of_end() + " " + length(3) + " nearer";
    }

    const Job& job_;
    const Finding& finding_;
    Tape tape_;
};

}  // namespace

Told tell(const Job& job, const Finding& finding) { return Telling(job, finding).told(); }

std::vector<Note> notes_of(const Job& job, const Solution& solution) {
    std::vector<Note> notes;
    for (const Finding& finding : solution.findings) {
        if (refuses(finding.trouble)) continue;
        const std::string section =
            finding.section < 0 ? std::string() : job.sections[static_cast<std::size_t>(finding.section)].id.name;
        notes.push_back({section, tell(job, finding).sentence});
    }
    return notes;
}

}  // namespace rakewright
