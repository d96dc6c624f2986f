#pragma once

#include <array>

#include "job.hpp"

namespace rakewright {

/// What is wrong with a job, or worth knowing about it. The comment names what the finding's numbers are, in their
/// order, and its place; the sentences are written elsewhere.
enum class Trouble {
    // The job cannot be solved.
    slope_not_longer,         // nosing_to_nosing at its place: it, the rise or run it must be longer than
    no_run_left,              // tread at its place: it, the projection of the next nosing
    step_without_run,         // at the step, number counted from 1
    step_with_two_runs,       // at the tread; also: the run
    last_step_with_run,       // at the run or tread
    wash_too_steep,           // wash: tread, how far it rises to the riser, how far it is to the next nosing
    thickness_missing,        // the stair
    no_room_between_treads,   // tread_thickness: riser, what would be left over its tread, negative or 0
    nosing_beyond_stair,      // at the nosing number: the number, how many there are
    tread_beyond_stair,       // at the base: the number, how many risers there are
    placed_without_stair,     // a key of a post without a place that has no meaning there
    post_at_both_ends,        // to; also: from
    ground_unsaid,            // to; also: the stair of the from post
    plan_missing,             // the post's stair or floor; also: what lacks a plan
    stair_key_on_floor,       // a key of a post on a floor that means something at a stair only
    fall_way_unknown,         // the section's floor; also: the floor
    fall_needs_heading,       // the post's floor; also: the floor
    low_high_between_placed,  // clear
    trim_not_thicker,         // base_trim's size: it, the post's
    two_sizes_of_round,       // the second size
    taper_between_nothing,    // taper's height: it, size_at
    tapered_away,             // taper: how far up the post nothing is left of it; also: the post
    size_missing,             // the post: it is no joint
    post_key_on_joint,        // a key of a joint that only a post has; also: the joint
    joint_of_two,             // the joint: how many sections end there
    joint_without_place,      // the joint named at an end; also: the section, whose other end has no place
    auto_at_joint,            // lower_gap; also: the section
    joint_folds_back,         // the joint named at that end
    face_at_joint,            // the joint that pickets on the side of the rails come to; also: the section
    ends_at_joint,            // the joint named at the end that `ends` speaks of; also: the section
    clear_to_joint,           // clear or clear_on_slope; also: the section
    rail_misses_post,         // the post named at that end: how far the line passes the centre; the end
    clear_missing,            // the section
    two_clears,               // clear_on_slope; also: clear
    slope_without_stair,      // clear_on_slope
    no_nosing_line,           // the stair named, or the section
    floor_under_rake,         // floor
    side_missing,             // the section; also: its stair
    string_above_missing,     // the section; also: its build
    below_string,             // lower_gap: how far below the string's top; also: string_above
    meets_corner,             // the post named at that end
    posts_overlap,            // the section: the clear distance that is left, negative or 0
    cut_too_steep,            // the post named at that end
    no_length_left,           // the section: the shortest edge that would be left; member by name
    lower_gap_missing,        // the section; also: the build's lower group
    rails_meet,               // height: room left between upper underside and lower top, plumb, negative or 0
    below_surface,            // lower_gap or height: nosing number or 0 for the floor, how far below
    no_room_for_pickets,      // the section: clear distance, the count that max_gap asks for
    too_many_pickets,         // max_gap: how many
    picket_through_rail,      // plough: it, the depth of the member
    picket_past_nosing,       // per_tread: k, tread number, how far it would reach past the nosing
    no_count_per_tread,       // max_gap: the widest gap left at the most pickets that fit
    hole_beyond_leg,          // hole: it, the leg
    bend_past_leg,           // inside_radius: how far the bend reaches from its inside, the leg; also: the leg; the end
    bend_past_hole,          // inside_radius: how far the bend reaches, the hole; also: the hole; the end
    turned_key_on_square,    // a key of the pickets that means something with turned ones only: 1 if they are round
    turned_key_missing,      // the pickets: 0 for length, 1 for blocks, 2 for turning
    blocks_fill_length,      // length: it, both blocks together
    turning_not_rising,      // at: it, the one before
    turning_beyond_blocks,   // at: it, how much is between the blocks
    turning_too_thick,       // diameter: it, the width; also: width
    turning_height_unknown,  // the section; also: the pickets
    picket_too_short,        // length: it, the length needed, picket number; also: the section
    block_too_short,      // the block: 0 upper or 1 lower, it, what is needed of it, picket number; also: the section
    too_little_block,     // the section: 0 upper or 1 lower, what is left, the least, picket number; also: the block
    no_count_for_sphere,  // max_sphere: it, the smallest ball that passes (on treads: the most pickets), or 0 where
                          // none go in; also: the section
    found_nosing_beyond,  // reading or ball: the number, how many there are
    found_heights_of_floor,     // the first of heights, or extend: there is no stair
    found_height_of_stair,      // height: there is a stair
    found_tread_without_stair,  // the ball's tread
    found_tread_missing,        // the ball: under the rail of a stair, over no tread
    balls_contradict,           // the ball that passed: it, one at the same opening that did not; also: that one
    ball_against_gap,           // the ball: it, the widest gap, 1 where it passed; also: widest_gap
    nothing_to_do,              // the job
    auto_without_limit,         // lower_gap
    auto_over_unknown_string,   // lower_gap; also: the section
    return_without_clearance,   // the handrail
    handrail_too_short,         // the handrail
    stock_twice,                // the stock; also: the first of its section
    prices_do_not_match,        // the first price: how many prices, how many lengths
    bar_trimmed_away,           // trim: it, the length that has nothing left
    longer_than_stock,          // also_cut's length, or the stock's longest: the piece, what a bar gives, the trim
    too_many_to_cut,            // the stock: how many pieces, how many are the most
    no_lower_gap,               // lower_gap: the ball at a gap of 0, what it must stay below, tread or -1
    girth_of_square,            // around: the post is square; also: the post
    timber_size_of_round,       // size; also: the post
    turn_of_round,              // turn; also: the post
    round_post_missed,          // the section: how far a side of a member runs off the post's axis, the radius; the end
    pitch_within_picket,        // pitch: it, level, and the width; also: width
    pitch_on_treads,            // pitch; also: the section
    no_room_at_pitch,           // the section: clear distance, least end gap, 1 if a centre is wanted; also: pitch
    weld_gap_too_wide,          // weld_gap: it, what would be left of the short side of a picket; also: the section
    block_over_limit,           // block: it, the limit; also: the section
    block_does_not_fit,         // block: it, the least end gap; also: the section
    no_block,                   // spacing: the shortest that would be taken; also: the section that has none
    foot_without_size,          // the feet: 0 width or 1 depth
    too_many_feet,              // every: the most; also: the section
    no_place_to_splice,         // longest_stick: it, the member, tip to tip; also: the section
    plate_under_hollow_post,    // base_plate's size: it, the post's, both ways; also: the post
    holes_off_plate,            // holes: them, the hole's diameter, the plate that way; also: its size
    wood_under_concrete,        // wood_under
    rod_without_reveal,         // the post's fixing; also: the rod
    reveal_under_rail,          // reveal; also: the section that runs over the post
    too_many_screws,            // every: the most; also: the section
    drilled_not_nearer,         // drilled_end or drilled_edge: it, the distance not drilled
    no_post_left,  // reveal, or the post: the top above what it stands on, the plate's thickness; also: the post
    picket_without_depth,  // the pickets
    round_picket_flat,     // depth: it, the width; also: width
    bore_through_rail,     // plough: how deep its hole is, square to the rail, the depth; also: the section
    face_key_on_between,   // a key of the pickets that means something with those on the rails' side only
    between_key_on_face,   // a key that means nothing with those on the rails' side: 1 for turned ones
    face_widths_differ,    // the pickets: the width of the upper member, of a lower one; also: that
    head_under_wider,      // past's upper: it, how far a member above stands out past the one met; also: it
    head_off_rail,         // past's upper: how far the head is under the top, the depth; also: the section
    foot_on_nothing,       // the pickets, or past
    foot_above_tread,      // past's lower: it, how far short it is at worst; also: the section
    // The job is solved; somebody should know.
    gap_at_post_too_wide,     // at the section: gap, max_gap, k that cures it or 0, how far the post would have to move
    gap_between_too_wide,     // at the section: gap, max_gap, the fewest k that cures it or 0, k
    ball_at_post,             // at the section: the ball, max_sphere, k that cures it or 0
    ball_between,             // at the section: the ball, max_sphere, the fewest k that cures it or 0, k
    driver_blocked,           // at the section: at how many of its brackets
    leg_below_surface,        // at the section: group, how far the leg turned down would reach below the surface
    lower_gap_without_lower,  // the lower_gap
    max_gap_without_pickets,  // the max_gap, or the max_sphere: 0 or 1
    per_tread_with_lower,     // the per_tread
    lower_gap_chosen,  // the lower_gap: what was chosen, the ball that holds it, what it must stay below, tread or -1
    thickness_without_open,  // the tread_thickness
    floor_falls,             // at the section: how far across the clear; the end it falls toward
    follow_without_floor,    // at the section
    return_off_rake,         // the handrail
    leg_down_on_round,       // at the section
    joint_apart,             // the joint: how far apart the two rails' tops stand there
    joint_moved,             // the joint: how far beside its place the tops meet
    clear_differs,           // clear: it, what the posts' places leave
    trim_left_out,           // the post named at that end
    taper_left_out,          // the post named at that end
    sinks_into_trim,         // the post named at that end: how far
    offset_without_effect,   // the section: its posts are square, and have no place
    plate_past_round,        // at the section: group, the radius; the end
    k_without_radius,        // the k_factor
    out_of_saws_reach,       // the section or handrail: how many ends
    mortise_near_side,    // the section: group, what the leg leaves to its left and to its right, least_beside; also:
                          // least_beside; the end, or none where both are alike
    leg_leaves_rail,      // the section: group, what the leg leaves to its left and to its right, less than 0 where it
                          // stands out, 1 where a mortise is asked for; the end, or none where both are alike
    seat_through_member,  // the section: group, how thick the leg is, how deep the member
    picket_on_leg,        // the section: the gap at the post, how far the leg reaches; the end
    no_driving_order,     // the section: at how many brackets, the least room, the room needed, at how many of them
                          // another leg would do
    screw_comes_out,      // the screw: joint, length, the longest that does not, 1 where even that holds too little
    screw_holds_little,   // the screw: joint, how much it holds in, the least
    screw_without_joint,  // the screw: joint
    screw_near_end,       // the screw: joint, how near, the least, the member or -1 picket, -2 post; the section
    screw_near_edge,      // likewise
    screws_at_pickets,    // the screw: joint, every, how many; the section
    screws_meet,          // the section: how near they come, how far they must be, the other section, 1 where how
                          // they lie to each other is known; the end
    no_stock_of_section,  // none, or the also_cut: width, depth, how many pieces
    left_out_of_stock,    // none: how many pieces
    pitch_gap_too_wide,   // at the section: the gap between pickets, max_gap
    pitch_end_too_wide,   // at the section: the gap at the post, max_gap, how far over; the end
    pitch_ball_between,   // at the section: the ball, max_sphere
    centre_without_effect,        // the centre: 0 no pickets, 1 pickets that follow the treads
    end_gap_without_effect,       // the least_end_gap
    least_gap_without_effect,     // the spacing's least_gap: 0 nothing seeks a gap, 1 wider than any may be; it, the
                                  // widest
    least_end_gap_without_block,  // the spacing's least_end_gap
    nothing_from_stock,           // the stock: width, depth
    fixing_without_post,          // the post fixing
    length_under_tape,            // the section: how long a member is, its number
    feet_without_lower,           // the feet
    feet_unplaced,                // at the section
    feet_below_surface,           // at the section: how far, at most
    picket_side_without_face,     // the picket_side
    vent_tubes,                   // the build
    little_wood_under,            // wood_under: it, the least by common practice
    holes_under_post,             // the post
    post_top_unknown,             // the post
    over_beside_face,             // the post that a rail runs over; also: the section that ends at its face
    over_round_corner,            // the post that two rails run over round a corner
    foot_without_place,           // at the section: the foot's number, level from the from post to where it would stand
};

/// One finding. `end` where an end of a section is meant.
struct Finding {
    Trouble trouble = Trouble::clear_missing;
    Place place;
    std::array<double, 4> numbers{};
    Place also;
    int section = -1;
    int end = -1;
};

/// Whether a job with this finding is refused.
bool refuses(Trouble trouble);

}  // namespace rakewright
