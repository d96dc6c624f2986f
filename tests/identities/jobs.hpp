#pragma once

#include <string>
#include <utility>
#include <vector>

#include "../support/even_example.hpp"
#include "../support/face_build.hpp"

namespace rakewright::tests {

/// Jobs of every kind that the solver knows, each to be put through every identity.
inline std::vector<std::pair<std::string, Job>> jobs_of_every_kind() {
    std::vector<std::pair<std::string, Job>> jobs;
    jobs.emplace_back("even", even_example());
    jobs.emplace_back("on treads", even_example(open_build()));

    Job ploughed = even_example();
    ploughed.builds[0].pickets->plough = {0.25, 0.375};
    ploughed.sections[0].lower_gap = LowerGap{0.75, true};
    jobs.emplace_back("ploughed", ploughed);

    Job surface = even_example();
    surface.builds[0].bracket->post_seat = PostSeat::surface;
    surface.builds[0].bracket->leg = LegWish::up;
    jobs.emplace_back("legs on the surface", surface);

    Job askew = even_example();
    askew.posts[1].across = 12;
    askew.posts[0].turn = in_degrees(20);
    askew.posts[0].lean = {{Angle{0.125, 48}, {}}, {Angle{-0.25, 48}, {}}};
    askew.posts[1].lean = {{Angle{-0.25, 48}, {}}, {Angle{0.1875, 48}, {}}};
    jobs.emplace_back("askew and leaning", askew);

    Job bent = askew;
    bent.builds[0].bracket->inside_radius = Reading(0.125);
    bent.saw = Saw{in_degrees(40), in_degrees(25), Reading(3)};
    jobs.emplace_back("askew, plates laid out flat, a saw", bent);

    Job askew_open = even_example(open_build());
    askew_open.posts[1].across = -6;
    askew_open.posts[1].turn = in_degrees(-7.5);
    jobs.emplace_back("on treads, askew", askew_open);

    Job uneven = even_example(open_build());
    uneven.stairs[0] = measured_stair({7.25, 7.5, 7, 7.375, 7.125}, {11, 10.75, 11.125, 10.875});
    jobs.emplace_back("steps that differ", uneven);
    uneven.stairs[0].line = LineThrough::straightedge;
    uneven.stairs[0].nosing = 1;
    jobs.emplace_back("straightedge", uneven);
    uneven.stairs[0].line = LineThrough::fit;
    jobs.emplace_back("fitted", uneven);

    Job metal = even_example();
    metal.story_stick = true;
    metal.piece_list = true;
    metal.builds[0].pickets->max_gap.reset();
    metal.builds[0].pickets->pitch_on_slope = Reading(5.25);
    metal.builds[0].pickets->slot = Punched{0.125, 0.03125};
    metal.builds[0].pickets->weld_gap = 0.0625;
    metal.builds[0].feet = FeetBuild{14, {}, {}, {}};
    jobs.emplace_back("drilled, punched, welded, on feet", metal);

    Job blocked = even_example();
    blocked.spacing = Spacing();
    blocked.spacing->by = Spacing::By::block;
    jobs.emplace_back("a block for the whole job", blocked);
    blocked.spacing->by = Spacing::By::alike;
    blocked.spacing->centre = CentreWish{Centre::gap, {}};
    blocked.sections.push_back(floor_example(71.625).sections[0]);
    blocked.sections.push_back(floor_example(38).sections[0]);
    jobs.emplace_back("alike over three sections, on a gap", blocked);

    Job straight_across = even_example();
    straight_across.posts[1] = straight_across.posts[0];
    straight_across.posts[1].across = 61.5;
    straight_across.posts[1].lean.across = {Angle{0.5, 48}, {}};
    jobs.emplace_back("straight across", straight_across);

    jobs.emplace_back("round, bored in", even_example(round_build()));
    Job beside = even_example(face_build());
    jobs.emplace_back("on the side of the rails", beside);
    beside.posts[1].across = 12;
    beside.posts[0].turn = in_degrees(20);
    beside.posts[1].lean = {{Angle{-0.25, 48}, {}}, {Angle{0.1875, 48}, {}}};
    jobs.emplace_back("on the side of the rails, askew", beside);
    jobs.emplace_back("down over the string", even_example(string_build()));

    jobs.emplace_back("floor", floor_example(71.625));

    Job on_slope = floor_example(49.5);
    on_slope.stairs = {even_stair()};
    on_slope.sections[0].stair = ref(0);
    on_slope.sections[0].clear.reset();
    on_slope.sections[0].clear_on_slope = Reading(59.25);
    jobs.emplace_back("only the slope known", on_slope);
    return jobs;
}

/// The same job in another unit: every length times a factor.
inline Job scaled(Job job, double factor) {
    const auto scale = [&](Reading& reading) { reading.value *= factor; };
    const auto scale_if = [&](std::optional<Reading>& reading) {
        if (reading) reading->value *= factor;
    };
    const auto scale_gap = [&](std::optional<LowerGap>& gap) {
        if (gap) gap->size.value *= factor;
    };
    job.round = Reading(tape_of(job).division * factor);
    if (job.saw) scale_if(job.saw->depth_of_cut);
    const auto scale_plan = [&](std::optional<Plan>& plan) {
        if (plan)
            for (Reading* reading : {&plan->x, &plan->y, &plan->level}) scale(*reading);
    };
    for (Floor& floor : job.floors) scale_plan(floor.plan);
    for (Stair& stair : job.stairs) {
        for (auto* reading : {&stair.rise, &stair.total_rise, &stair.run, &stair.tread, &stair.nosing_to_nosing})
            scale_if(*reading);
        scale(stair.nosing);
        scale_plan(stair.plan);
        for (Step& step : stair.steps)
            for (auto* reading : {&step.rise, &step.run, &step.tread, &step.nosing}) scale_if(*reading);
    }
    for (Post& post : job.posts) {
        scale_if(post.at);
        scale(post.across);
        post.size.along *= factor;
        post.size.across *= factor;
        post.base.height *= factor;
        scale_if(post.around);
        if (!post.base_trim) continue;
        scale(post.base_trim->height);
        for (Reading& reading : post.base_trim->size) scale(reading);
    }
    for (Build& build : job.builds) {
        scale(build.height);
        scale(build.play);
        scale_gap(build.lower_gap);
        for (auto* members : {&build.upper, &build.lower})
            for (MemberSize& member : *members) {
                scale(member.width);
                scale(member.depth);
            }
        if (build.pickets) {
            PicketBuild& pickets = *build.pickets;
            for (Reading* reading : {&pickets.width, &pickets.depth, &pickets.plough.upper, &pickets.plough.lower})
                scale(*reading);
            for (auto* reading :
                 {&pickets.max_gap, &pickets.max_sphere, &pickets.length, &pickets.least_block, &pickets.upper_block,
                  &pickets.pitch, &pickets.pitch_on_slope, &pickets.least_end_gap})
                scale_if(*reading);
            scale(pickets.weld_gap);
            if (pickets.past)
                for (Reading* reading : {&pickets.past->upper, &pickets.past->lower}) scale(*reading);
            if (pickets.slot)
                for (Reading* reading : {&pickets.slot->web, &pickets.slot->clearance}) scale(*reading);
            if (pickets.blocks)
                for (Reading* reading : {&pickets.blocks->lower, &pickets.blocks->upper}) scale(*reading);
            for (Turning& turning : pickets.turning)
                for (Reading* reading : {&turning.at, &turning.diameter}) scale(*reading);
        }
        if (build.feet) {
            scale(build.feet->every);
            scale_if(build.feet->width);
            scale_if(build.feet->depth);
        }
        if (build.bracket) {
            BracketBuild& bracket = *build.bracket;
            for (Reading* reading : {&bracket.post_leg, &bracket.rail_leg, &bracket.width, &bracket.thickness})
                scale(*reading);
            scale_if(bracket.inside_radius);
            for (auto* holes : {&bracket.post_hole, &bracket.rail_hole})
                for (Reading& hole : *holes) scale(hole);
        }
        Driver& driver = build.driver;
        for (Reading* reading : {&driver.bit.diameter, &driver.bit.reach, &driver.body.diameter, &driver.body.length})
            scale(*reading);
    }
    for (Section& section : job.sections) {
        for (auto* reading : {&section.clear, &section.clear_on_slope, &section.height, &section.max_gap,
                              &section.max_sphere, &section.play})
            scale_if(*reading);
        scale_gap(section.lower_gap);
        for (Reading* reading : {&section.offset.from, &section.offset.to, &section.ends.from.by, &section.ends.to.by})
            scale(*reading);
        if (section.clear_twice)
            for (Reading* reading : {&section.clear_twice->low, &section.clear_twice->high}) scale(*reading);
    }
    if (job.spacing)
        for (auto* reading : {&job.spacing->block, &job.spacing->least_gap, &job.spacing->least_end_gap})
            scale_if(*reading);
    return job;
}

/// The same job with pickets that are on the side of rails on their other side.
inline Job on_the_other_side(Job job) {
    for (Build& build : job.builds)
        if (build.pickets && build.pickets->on_face())
            build.pickets->side = NamedSide{build.pickets->side && !build.pickets->side->left, {}};
    return job;
}

/// The same job seen in a mirror that stands plumb along its stairs.
inline Job mirrored(const Job& seen) {
    Job job = on_the_other_side(seen);
    for (Post& post : job.posts) {
        post.across.value = -post.across.value;
        post.turn.angle.rise = -post.turn.angle.rise;
        post.lean.across.angle.rise = -post.lean.across.angle.rise;
    }
    return job;
}

/// The same job with every section named from its other end.
inline Job from_the_other_end(const Job& named) {
    Job job = on_the_other_side(named);
    for (Section& section : job.sections) std::swap(section.from, section.to);
    return job;
}

}  // namespace rakewright::tests
