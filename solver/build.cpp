#include "build.hpp"

#include <array>

#include "measure/compare.hpp"

namespace rakewright {
namespace {

void check_holes(const std::vector<Reading>& holes, const Reading& leg, std::vector<Finding>& findings) {
    for (const Reading& hole : holes)
        if (!less_than(hole, leg)) findings.push_back({Trouble::hole_beyond_leg, hole.place, {hole, leg}, leg.place});
}

void check_plough(const Reading& plough, const MemberSize& member, std::vector<Finding>& findings) {
    if (!less_than(plough, member.depth))
        findings.push_back({Trouble::picket_through_rail, plough.place, {plough, member.depth}, member.depth.place});
}

void check_turning(const PicketBuild& pickets, std::vector<Finding>& findings) {
    const double between = *pickets.length - pickets.blocks->lower - pickets.blocks->upper;
    if (!less_than(0, between, *pickets.length))
        findings.push_back({Trouble::blocks_fill_length,
                            pickets.length->place,
                            {*pickets.length, pickets.blocks->lower + pickets.blocks->upper},
                            pickets.blocks->lower.place});
    const Turning* before = nullptr;
    for (const Turning& turning : pickets.turning) {
        if (before && !less_than(before->at, turning.at))
            findings.push_back(
                {Trouble::turning_not_rising, turning.at.place, {turning.at, before->at}, before->at.place});
        if (between > 0 && !no_more_than(turning.at, between, *pickets.length))
            findings.push_back({Trouble::turning_beyond_blocks, turning.at.place, {turning.at, between}, {}});
        if (!no_more_than(turning.diameter, pickets.width))
            findings.push_back({Trouble::turning_too_thick,
                                turning.diameter.place,
                                {turning.diameter, pickets.width},
                                pickets.width.place});
        before = &turning;
    }
}

/// What is said of a turned picket stands with a turned one only, and all of it.
void check_shape(const PicketBuild& pickets, std::vector<Finding>& findings) {
    const bool round = pickets.shape == PicketShape::round;
    if (!(pickets.depth > 0))
        findings.push_back({Trouble::picket_without_depth, pickets.place, {}, {}});
    else if (round && pickets.depth != pickets.width.value)
        findings.push_back(
            {Trouble::round_picket_flat, pickets.depth.place, {pickets.depth, pickets.width}, pickets.width.place});
    if (pickets.shape != PicketShape::turned) {
        const auto refuse = [&](const std::optional<Reading>& key) {
            if (key) findings.push_back({Trouble::turned_key_on_square, key->place, {round ? 1.0 : 0.0}, {}});
        };
        refuse(pickets.length);
        if (pickets.blocks) refuse(pickets.blocks->lower);
        if (!pickets.turning.empty()) refuse(pickets.turning.front().at);
        refuse(pickets.least_block);
        refuse(pickets.upper_block);
        return;
    }
    const std::size_t before = findings.size();
    const std::array given{pickets.length.has_value(), pickets.blocks.has_value(), !pickets.turning.empty()};
    for (std::size_t key = 0; key < given.size(); ++key)
        if (!given[key]) findings.push_back({Trouble::turned_key_missing, pickets.place, {double(key)}, {}});
    if (findings.size() == before) check_turning(pickets, findings);
}

/// Feet are like the pickets where they are given no size, if those are not round.
void check_feet(const Build& build, std::vector<Finding>& findings) {
    const FeetBuild& feet = *build.feet;
    if (build.lower.empty()) findings.push_back({Trouble::feet_without_lower, feet.place, {}, {}});
    const double round = build.pickets ? 1 : 0;
    if (build.pickets && build.pickets->shape != PicketShape::round) return;
    if (!feet.width) findings.push_back({Trouble::foot_without_size, feet.place, {0, round}, {}});
    if (!feet.depth) findings.push_back({Trouble::foot_without_size, feet.place, {1, round}, {}});
}

/// Which keys stand with pickets on the rails' side only, and which not with them.
void check_face_keys(const PicketBuild& pickets, std::vector<Finding>& findings) {
    const auto refuse = [&](Trouble trouble, bool given, const Place& place) {
        if (given) findings.push_back({trouble, place, {}, {}});
    };
    if (!pickets.on_face()) {
        const auto only_on_face = [&](const auto& key) {
            if (key) refuse(Trouble::face_key_on_between, true, key->place.size > 0 ? key->place : pickets.place);
        };
        only_on_face(pickets.past);
        only_on_face(pickets.lower_end);
        only_on_face(pickets.side);
        return;
    }
    const auto only_between = [&](bool given, const Place& place) {
        refuse(Trouble::between_key_on_face, given, place);
    };
    if (pickets.shape == PicketShape::turned)
        findings.push_back({Trouble::between_key_on_face, pickets.place, {1}, {}});
    if (const std::optional<Reading>& pitch = pickets.any_pitch()) only_between(true, pitch->place);
    if (pickets.slot) only_between(true, pickets.slot->web.place);
    if (pickets.per_tread) only_between(true, pickets.per_tread->place);
    only_between(pickets.weld_gap > 0, pickets.weld_gap.place);
    only_between(pickets.plough.upper > 0, pickets.plough.upper.place);
    only_between(pickets.plough.lower > 0, pickets.plough.lower.place);
}

/// Whether the members that pickets on the rails' side lie on are flush there, and nothing stands out in their way.
void check_face(const Build& build, std::vector<Finding>& findings) {
    const PicketBuild& pickets = *build.pickets;
    const Reading& width = build.upper.back().width;
    const PicketPast past = pickets.past.value_or(PicketPast());
    for (const MemberSize& member : build.lower) {
        const bool is_met = &member == &build.lower.front();
        if (no_more_than(member.width, width) && (!is_met || no_more_than(width, member.width))) continue;
        findings.push_back({Trouble::face_widths_differ, pickets.place, {width, member.width}, member.width.place});
    }
    if (past.upper > 0)
        for (const MemberSize& member : build.upper)
            if (less_than(width, member.width)) {
                findings.push_back({Trouble::head_under_wider,
                                    past.upper.place,
                                    {past.upper, (member.width - width) / 2},
                                    member.width.place});
                break;
            }
    if (build.lower.empty() && !(past.lower > 0))
        findings.push_back({Trouble::foot_on_nothing, pickets.past ? pickets.past->place : pickets.place, {}, {}});
}

/// A pilot hole lets a screw nearer, never less near.
void check_pilot(const PilotRule& pilot, std::vector<Finding>& findings) {
    const auto check = [&](const Reading& drilled, const Reading& undrilled) {
        if (!no_more_than(drilled, undrilled))
            findings.push_back({Trouble::drilled_not_nearer, drilled.place, {drilled, undrilled}, undrilled.place});
    };
    check(pilot.drilled_end, pilot.end);
    check(pilot.drilled_edge, pilot.edge);
}

/// Says which screws have no joint in the build.
void check_screws(const Build& build, std::vector<Finding>& findings) {
    const ScrewBuild& screws = *build.screws;
    check_pilot(screws.pilot, findings);
    const auto note = [&](const auto& screw, double joint, bool has_joint) {
        if (screw && !has_joint) findings.push_back({Trouble::screw_without_joint, screw->place, {joint}, {}});
    };
    note(screws.picket_to_upper, 0, build.pickets.has_value());
    note(screws.picket_to_lower, 1, build.pickets && !build.lower.empty());
    note(screws.between_members, 2, build.upper.size() > 1 || (build.lower.size() > 1 && !screws.apron_to_lower));
    note(screws.apron_to_lower, 3, build.lower.size() > 1);
    note(screws.post_leg, 4, build.bracket.has_value());
    note(screws.rail_leg, 5, build.bracket && !build.bracket->rail_hole.empty());
}

}  // namespace

void check(const Build& build, std::vector<Finding>& findings) {
    if (build.bracket) {
        check_holes(build.bracket->post_hole, build.bracket->post_leg, findings);
        check_holes(build.bracket->rail_hole, build.bracket->rail_leg, findings);
        if (build.bracket->k_factor.place.size > 0 && !build.bracket->inside_radius)
            findings.push_back({Trouble::k_without_radius, build.bracket->k_factor.place, {}, {}});
    }
    if (build.screws) check_screws(build, findings);
    const bool has_lower = !build.lower.empty();
    if (build.pickets) {
        check_shape(*build.pickets, findings);
        check_plough(build.pickets->plough.upper, build.upper.back(), findings);
        if (has_lower) check_plough(build.pickets->plough.lower, build.lower.front(), findings);
        check_face_keys(*build.pickets, findings);
        if (build.pickets->on_face()) check_face(build, findings);
        if (has_lower && build.pickets->per_tread && !build.pickets->on_face())
            findings.push_back({Trouble::per_tread_with_lower, build.pickets->per_tread->place, {}, {}});
    }
    if (build.pickets && build.pickets->least_end_gap && !build.pickets->any_pitch())
        findings.push_back({Trouble::end_gap_without_effect, build.pickets->least_end_gap->place, {}, {}});
    if (build.feet) check_feet(build, findings);
    if (build.tube && build.galvanised) findings.push_back({Trouble::vent_tubes, build.id.place, {}, {}});
    if (!has_lower && build.lower_gap)
        findings.push_back({Trouble::lower_gap_without_lower, build.lower_gap->size.place, {}, {}});
}

}  // namespace rakewright
