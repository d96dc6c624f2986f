#include "telling.hpp"

namespace rakewright {

std::optional<TroubleRoom> room_of(Trouble trouble) {
    switch (trouble) {
        case Trouble::slope_not_longer:
        case Trouble::no_run_left:
        case Trouble::step_without_run:
        case Trouble::step_with_two_runs:
        case Trouble::last_step_with_run:
        case Trouble::wash_too_steep:
        case Trouble::thickness_missing:
        case Trouble::no_room_between_treads:
        case Trouble::nosing_beyond_stair:
        case Trouble::tread_beyond_stair:
        case Trouble::fall_way_unknown:
        case Trouble::fall_needs_heading:
        case Trouble::no_nosing_line:
        case Trouble::floor_under_rake:
        case Trouble::side_missing:
        case Trouble::string_above_missing:
        case Trouble::below_string:
        case Trouble::thickness_without_open:
        case Trouble::floor_falls:
        case Trouble::follow_without_floor: return TroubleRoom::stair;
        case Trouble::placed_without_stair:
        case Trouble::stair_key_on_floor:
        case Trouble::trim_not_thicker:
        case Trouble::two_sizes_of_round:
        case Trouble::taper_between_nothing:
        case Trouble::tapered_away:
        case Trouble::size_missing:
        case Trouble::girth_of_square:
        case Trouble::timber_size_of_round:
        case Trouble::turn_of_round:
        case Trouble::plate_under_hollow_post:
        case Trouble::holes_off_plate:
        case Trouble::wood_under_concrete:
        case Trouble::rod_without_reveal:
        case Trouble::reveal_under_rail:
        case Trouble::no_post_left:
        case Trouble::trim_left_out:
        case Trouble::taper_left_out:
        case Trouble::sinks_into_trim:
        case Trouble::little_wood_under:
        case Trouble::holes_under_post:
        case Trouble::over_beside_face:
        case Trouble::over_round_corner:
        case Trouble::post_top_unknown:
        case Trouble::fixing_without_post: return TroubleRoom::post;
        case Trouble::post_key_on_joint:
        case Trouble::joint_of_two:
        case Trouble::joint_without_place:
        case Trouble::auto_at_joint:
        case Trouble::joint_folds_back:
        case Trouble::ends_at_joint:
        case Trouble::face_at_joint:
        case Trouble::clear_to_joint:
        case Trouble::joint_apart:
        case Trouble::joint_moved: return TroubleRoom::joint;
        case Trouble::post_at_both_ends:
        case Trouble::ground_unsaid:
        case Trouble::plan_missing:
        case Trouble::low_high_between_placed:
        case Trouble::rail_misses_post:
        case Trouble::clear_missing:
        case Trouble::two_clears:
        case Trouble::slope_without_stair:
        case Trouble::meets_corner:
        case Trouble::posts_overlap:
        case Trouble::cut_too_steep:
        case Trouble::no_length_left:
        case Trouble::nothing_to_do:
        case Trouble::round_post_missed:
        case Trouble::clear_differs:
        case Trouble::offset_without_effect: return TroubleRoom::section;
        case Trouble::lower_gap_missing:
        case Trouble::rails_meet:
        case Trouble::below_surface:
        case Trouble::auto_without_limit:
        case Trouble::auto_over_unknown_string:
        case Trouble::no_lower_gap:
        case Trouble::foot_without_size:
        case Trouble::too_many_feet:
        case Trouble::no_place_to_splice:
        case Trouble::lower_gap_without_lower:
        case Trouble::lower_gap_chosen:
        case Trouble::out_of_saws_reach:
        case Trouble::feet_without_lower:
        case Trouble::feet_unplaced:
        case Trouble::vent_tubes:
        case Trouble::foot_without_place:
        case Trouble::length_under_tape: return TroubleRoom::rail;
        case Trouble::no_room_for_pickets:
        case Trouble::too_many_pickets:
        case Trouble::picket_through_rail:
        case Trouble::picket_past_nosing:
        case Trouble::no_count_per_tread:
        case Trouble::no_count_for_sphere:
        case Trouble::weld_gap_too_wide:
        case Trouble::gap_at_post_too_wide:
        case Trouble::gap_between_too_wide:
        case Trouble::ball_at_post:
        case Trouble::ball_between:
        case Trouble::max_gap_without_pickets:
        case Trouble::per_tread_with_lower: return TroubleRoom::picket;
        case Trouble::pitch_within_picket:
        case Trouble::pitch_on_treads:
        case Trouble::no_room_at_pitch:
        case Trouble::block_over_limit:
        case Trouble::block_does_not_fit:
        case Trouble::no_block:
        case Trouble::pitch_gap_too_wide:
        case Trouble::pitch_end_too_wide:
        case Trouble::pitch_ball_between:
        case Trouble::centre_without_effect:
        case Trouble::end_gap_without_effect:
        case Trouble::least_gap_without_effect:
        case Trouble::least_end_gap_without_block: return TroubleRoom::spacing;
        case Trouble::turned_key_on_square:
        case Trouble::turned_key_missing:
        case Trouble::blocks_fill_length:
        case Trouble::turning_not_rising:
        case Trouble::turning_beyond_blocks:
        case Trouble::turning_too_thick:
        case Trouble::turning_height_unknown:
        case Trouble::picket_too_short:
        case Trouble::block_too_short:
        case Trouble::too_little_block: return TroubleRoom::turned;
        case Trouble::picket_without_depth:
        case Trouble::round_picket_flat:
        case Trouble::bore_through_rail:
        case Trouble::face_key_on_between:
        case Trouble::between_key_on_face:
        case Trouble::face_widths_differ:
        case Trouble::head_under_wider:
        case Trouble::head_off_rail:
        case Trouble::foot_on_nothing:
        case Trouble::foot_above_tread:
        case Trouble::feet_below_surface:
        case Trouble::picket_side_without_face: return TroubleRoom::beside;
        case Trouble::hole_beyond_leg:
        case Trouble::bend_past_leg:
        case Trouble::bend_past_hole:
        case Trouble::driver_blocked:
        case Trouble::leg_below_surface:
        case Trouble::leg_down_on_round:
        case Trouble::plate_past_round:
        case Trouble::k_without_radius:
        case Trouble::mortise_near_side:
        case Trouble::seat_through_member:
        case Trouble::picket_on_leg:
        case Trouble::no_driving_order:
        case Trouble::leg_leaves_rail: return TroubleRoom::bracket;
        case Trouble::screw_comes_out:
        case Trouble::screw_holds_little:
        case Trouble::screw_without_joint:
        case Trouble::too_many_screws:
        case Trouble::drilled_not_nearer:
        case Trouble::screw_near_end:
        case Trouble::screw_near_edge:
        case Trouble::screws_at_pickets:
        case Trouble::screws_meet: return TroubleRoom::screw;
        case Trouble::found_nosing_beyond:
        case Trouble::found_heights_of_floor:
        case Trouble::found_height_of_stair:
        case Trouble::found_tread_without_stair:
        case Trouble::found_tread_missing:
        case Trouble::balls_contradict:
        case Trouble::ball_against_gap:
        case Trouble::return_without_clearance:
        case Trouble::handrail_too_short:
        case Trouble::return_off_rake: return TroubleRoom::handrail;
        case Trouble::stock_twice:
        case Trouble::prices_do_not_match:
        case Trouble::bar_trimmed_away:
        case Trouble::longer_than_stock:
        case Trouble::too_many_to_cut:
        case Trouble::no_stock_of_section:
        case Trouble::left_out_of_stock:
        case Trouble::nothing_from_stock: return TroubleRoom::stock;
    }
    return {};
}

Told Telling::told() const {
    const std::optional<TroubleRoom> room = room_of(finding_.trouble);
    if (!room) return {};
    switch (*room) {
        case TroubleRoom::stair: return of_stair();
        case TroubleRoom::post: return of_post();
        case TroubleRoom::joint: return of_joint();
        case TroubleRoom::section: return of_section();
        case TroubleRoom::rail: return of_rail();
        case TroubleRoom::picket: return of_picket();
        case TroubleRoom::spacing: return of_spacing();
        case TroubleRoom::turned: return of_turned();
        case TroubleRoom::beside: return of_beside();
        case TroubleRoom::bracket: return of_bracket();
        case TroubleRoom::screw: return of_screw();
        case TroubleRoom::handrail: return of_handrail();
        case TroubleRoom::stock: return of_stock();
    }
    return {};
}

}  // namespace rakewright
