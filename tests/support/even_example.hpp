#pragma once

#include "../../solver/solve.hpp"

// An example of our own: five risers of 7 1/4 on runs of 11, nosings 1 proud; a post before the
// first nosing and one behind the last; a cap, a sub rail and a bottom rail between them. Built by hand, so that no
// reader is tested by its tests.

namespace rakewright::tests {

inline constexpr double even_rise = 7.25, even_run = 11, even_slope = even_rise / even_run;

inline Ref ref(int index) { return {index, {}}; }

inline Id called(std::string name) { return {std::move(name), {}}; }

inline AngleReading in_degrees(double number) { return {angle_from_degrees(number), {}}; }

/// Where a stair or floor stands in plan; `heading` in degrees.
inline Plan planned(double x, double y, double heading, double level) {
    Plan plan;
    plan.x = x;
    plan.y = y;
    plan.heading = in_degrees(heading);
    plan.level = level;
    return plan;
}

inline Stair even_stair() {
    Stair stair;
    stair.id = called("lake-steps");
    stair.risers = Count(5);
    stair.rise = Reading(even_rise);
    stair.run = Reading(even_run);
    stair.nosing = 1;
    return stair;
}

/// A measured stair, without projections: the last rise has no run.
inline Stair measured_stair(const std::vector<double>& rises, const std::vector<double>& runs,
                            LineThrough line = LineThrough::minimax) {
    Stair stair;
    stair.id = called("back-steps");
    stair.line = line;
    for (std::size_t i = 0; i < rises.size(); ++i) {
        Step step;
        step.rise = Reading(rises[i]);
        if (i < runs.size()) step.run = Reading(runs[i]);
        stair.steps.push_back(step);
    }
    return stair;
}

/// A post on the first stair; nosing 0 is the last.
inline Post placed_post(double at, int nosing = 1, double size = 3.5) {
    Post post;
    post.stair = ref(0);
    post.at = Reading(at);
    post.nosing.value = nosing;
    post.size = {size, size, "", {}};
    return post;
}

inline PicketBuild square_pickets() {
    PicketBuild pickets;
    pickets.width = 1.5;
    pickets.depth = 1.5;
    pickets.max_gap = 3.875;
    return pickets;
}

inline BracketBuild bent_plate() {
    BracketBuild bracket;
    bracket.post_leg = 1.25;
    bracket.rail_leg = 2.5;
    bracket.width = 1.5;
    bracket.thickness = 0.125;
    bracket.post_hole = {Reading(0.75)};
    bracket.rail_hole = {Reading(1), Reading(2)};
    bracket.post_seat = PostSeat::mortise;
    bracket.rail_seat = RailSeat::rabbet;
    return bracket;
}

inline Build square_build() {
    Build build;
    build.id = called("square");
    build.height = 36;
    build.upper = {{"cap rail", 3.5, 1.25}, {"sub rail", 2.5, 1.5}};
    build.lower = {{"bottom rail", 2.5, 1.5}};
    build.lower_gap = LowerGap{2, false};
    build.play = 0.0625;
    build.pickets = square_pickets();
    build.bracket = bent_plate();
    return build;
}

/// One rail, its pickets on the treads.
inline Build open_build(double picket = 1.25, double max_gap = 3.9375) {
    Build build;
    build.id = called("open");
    build.height = 36;
    build.upper = {{"hand rail", 2.25, 2.5}};
    build.play = 0.0625;
    build.pickets = square_pickets();
    build.pickets->width = picket;
    build.pickets->depth = picket;
    build.pickets->max_gap = max_gap;
    return build;
}

inline Section section_between(int from, int to) {
    Section section;
    section.id = called("left");
    section.from = ref(from);
    section.to = ref(to);
    section.build = ref(0);
    return section;
}

/// The foot post 5 before the first nosing, the head post 4 behind the last, 3 1/2 square: 49 1/2 clear.
inline Job even_example(const Build& build = square_build()) {
    Job job;
    job.title = "even example";
    job.stairs = {even_stair()};
    job.posts = {placed_post(-5), placed_post(4, 0)};
    job.builds = {build};
    job.sections = {section_between(0, 1)};
    return job;
}

/// A rail of which only the level clear distance is known, over a floor.
inline Job floor_example(double clear, const Build& build = square_build()) {
    Job job;
    job.builds = {build};
    Section section;
    section.id = called("deck");
    section.build = ref(0);
    section.clear = Reading(clear);
    job.sections = {section};
    return job;
}

inline bool has(const Solution& solution, Trouble trouble) {
    for (const Finding& finding : solution.findings)
        if (finding.trouble == trouble) return true;
    return false;
}

}  // namespace rakewright::tests
