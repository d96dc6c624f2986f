#include <set>

#include "../../solver/stock_plan.hpp"
#include "../support/catch.hpp"
#include "../support/even_example.hpp"
#include "../support/face_build.hpp"
#include "../support/found.hpp"
#include "../support/turned_build.hpp"

// A job for each thing that refuses one, and all that is wrong with a job in one run.

namespace rakewright::tests {
namespace {

struct Refused {
    Trouble trouble;
    Job job;
    std::vector<RuleSet> rules = {};
};

/// A rule set of one limit for the triangle under a stair's rail.
RuleSet triangle_below(double limit) {
    Rule rule;
    rule.judges = Quantity::under_rail_opening;
    rule.limit.most = limit;
    rule.limit.most_excluded = true;
    RuleSet set;
    set.rules = {rule};
    return set;
}

Job found_rail(const FoundRail& found) {
    Job job;
    job.stairs = {even_stair()};
    job.as_found = {found};
    return job;
}

template <class Change>
Job with_handrail(const Change& change) {
    Job job;
    job.stairs = {even_stair()};
    Handrail rail;
    rail.stair = ref(0);
    rail.height = 36;
    rail.profile.diameter = Reading(1.5);
    change(rail);
    job.handrails = {rail};
    return job;
}

FoundRail read_at_nosing(int nosing, Ref stair) {
    FoundRail found;
    found.stair = stair;
    found.heights = {{nosing, Reading(35)}};
    return found;
}

FoundRail ball_at_tread(int tread) {
    FoundRail found;
    found.balls.resize(1);
    found.balls[0].tread = Count(tread);
    found.balls[0].size = 6;
    return found;
}

FoundRail with_balls(const std::vector<Ball>& balls, Ref stair) {
    FoundRail found;
    found.stair = stair;
    found.balls = balls;
    return found;
}

FoundRail height_over_stair() {
    FoundRail found;
    found.stair = ref(0);
    found.height = Reading(36);
    return found;
}

/// Two sections up the stair that meet at a joint.
Job with_joint() {
    Job job = even_example();
    Post joint = placed_post(20);
    joint.size = {};
    joint.shape = PostShape::joint;
    job.posts = {placed_post(-5), joint, placed_post(48)};
    job.sections = {section_between(0, 1), section_between(1, 2)};
    return job;
}

/// The foot post on a plate 6 square with holes of 1/2, 5 apart.
Job with_plate() {
    Job job = even_example();
    BasePlate plate;
    plate.size = {Reading(6)};
    plate.thickness = 0.5;
    plate.holes = {Reading(5)};
    plate.hole = 0.5;
    job.post_fixings.resize(1);
    job.post_fixings[0].base_plate = plate;
    job.posts[0].fixing = ref(0);
    return job;
}

/// Two posts on a floor, 60 apart.
Job on_floor() {
    Job job = even_example();
    job.stairs.clear();
    job.floors.resize(1);
    job.posts = {placed_post(0), placed_post(60)};
    for (Post& post : job.posts) {
        post.stair = {};
        post.floor = ref(0);
    }
    return job;
}

Job with_stair(const Stair& stair) {
    Job job = even_example();
    job.stairs[0] = stair;
    return job;
}

Spacing block_of(const std::optional<Reading>& length) {
    Spacing spacing;
    spacing.by = Spacing::By::block;
    spacing.block = length;
    return spacing;
}

template <class Change>
Job changed(Job job, const Change& change) {
    change(job);
    return job;
}

void put_straight_across(Job& job, double by) {
    job.posts = {placed_post(-10), placed_post(-10)};
    job.posts[1].across = by;
    job.stairs[0].rise = Reading(7.5);
    job.stairs[0].run = Reading(10);
}

std::vector<Refused> refused_jobs() {
    const Job even = even_example(), floor = floor_example(60), open = even_example(open_build()),
              turned = even_example(turned_build(shaft(1))), plated = with_plate(), bored = even_example(round_build()),
              beside = even_example(face_build()), down_string = even_example(string_build());
    Stair steep = even_stair(), narrow = even_stair(), both = measured_stair({7, 7}, {10}),
          single = measured_stair({7}, {});
    steep.run.reset();
    steep.nosing_to_nosing = Reading(7);
    narrow.run.reset();
    narrow.tread = Reading(0.5);
    both.steps[0].tread = Reading(11);
    Job boards;
    boards.stock.push_back({{}, {2, 4}, {96}, {}, 0, 0});
    boards.also_cut.push_back({"board", {}, {4, 2}, 30, 2});
    return {
        {Trouble::slope_not_longer, with_stair(steep)},
        {Trouble::no_run_left, with_stair(narrow)},
        {Trouble::step_without_run, with_stair(measured_stair({7, 7, 7}, {10}))},
        {Trouble::step_with_two_runs, with_stair(both)},
        {Trouble::last_step_with_run, with_stair(measured_stair({7, 7}, {10, 10}))},
        {Trouble::wash_too_steep, changed(even,
                                          [](Job& job) {
                                              job.stairs[0].wash.angle = {8, 12};
                                          })},
        {Trouble::thickness_missing, changed(even, [](Job& job) { job.stairs[0].riser = RiserKind::open; })},
        {Trouble::no_room_between_treads, changed(even,
                                                  [](Job& job) {
                                                      job.stairs[0].riser = RiserKind::open;
                                                      job.stairs[0].tread_thickness = Reading(8);
                                                  })},
        {Trouble::floor_under_rake, changed(even,
                                            [](Job& job) {
                                                job.floors.resize(1);
                                                job.sections[0].floor = ref(0);
                                            })},
        {Trouble::side_missing, changed(even, [](Job& job) { job.stairs[0].strings.left = StringKind::closed; })},
        {Trouble::string_above_missing, changed(open,
                                                [](Job& job) {
                                                    job.stairs[0].strings = {StringKind::closed, StringKind::closed};
                                                })},
        {Trouble::below_string, changed(even,
                                        [](Job& job) {
                                            job.stairs[0].strings = {StringKind::closed, StringKind::closed};
                                            job.stairs[0].string_above = Reading(3);
                                        })},
        {Trouble::nosing_beyond_stair, changed(even, [](Job& job) { job.posts[1].nosing.value = 6; })},
        {Trouble::tread_beyond_stair, changed(even,
                                              [](Job& job) {
                                                  job.posts[1].base = {Base::On::tread, 6, 0, {}};
                                              })},
        {Trouble::placed_without_stair, changed(floor,
                                                [](Job& job) {
                                                    job.posts = {Post()};
                                                    job.posts[0].size = {3.5, 3.5, "", {}};
                                                    job.posts[0].turn = in_degrees(10);
                                                })},
        {Trouble::post_at_both_ends, changed(even, [](Job& job) { job.sections[0].to = job.sections[0].from; })},
        {Trouble::ground_unsaid, changed(even,
                                         [](Job& job) {
                                             job.stairs.push_back(even_stair());
                                             job.posts[1].stair = ref(1);
                                         })},
        {Trouble::plan_missing, changed(even,
                                        [](Job& job) {
                                            job.stairs.push_back(even_stair());
                                            job.sections[0].stair = ref(1);
                                        })},
        {Trouble::stair_key_on_floor, changed(on_floor(),
                                              [](Job& job) {
                                                  job.posts[0].nosing = {2, {1, 1}};
                                              })},
        {Trouble::fall_needs_heading, changed(on_floor(),
                                              [](Job& job) {
                                                  job.floors[0].falls = {Angle{1, 48}, {}};
                                              })},
        {Trouble::fall_way_unknown, changed(floor,
                                            [](Job& job) {
                                                job.floors.resize(1);
                                                job.floors[0].falls = {Angle{1, 48}, {}};
                                                job.floors[0].toward = Toward::heading;
                                                job.sections[0].floor = ref(0);
                                            })},
        {Trouble::low_high_between_placed, changed(even,
                                                   [](Job& job) {
                                                       job.sections[0].clear_twice = ClearTwice{49.5, 49.625, {}, {}};
                                                   })},
        {Trouble::trim_not_thicker, changed(even,
                                            [](Job& job) {
                                                job.posts[0].base_trim = BaseTrim{{Reading(3.5)}, 6};
                                            })},
        {Trouble::two_sizes_of_round, changed(even,
                                              [](Job& job) {
                                                  job.posts[0].shape = PostShape::round;
                                                  job.posts[0].size = {5, 6, "", {}};
                                              })},
        {Trouble::size_missing, changed(even, [](Job& job) { job.posts[0].size = {}; })},
        {Trouble::post_key_on_joint, changed(even, [](Job& job) { job.posts[0].shape = PostShape::joint; })},
        {Trouble::joint_of_two, changed(even,
                                        [](Job& job) {
                                            job.posts[0].shape = PostShape::joint;
                                            job.posts[0].size = {};
                                        })},
        {Trouble::joint_without_place, changed(with_joint(),
                                               [](Job& job) {
                                                   job.posts[2].stair = {};
                                                   job.posts[2].at.reset();
                                                   job.sections[1].clear = Reading(30);
                                               })},
        {Trouble::face_at_joint, changed(with_joint(),
                                         [](Job& job) {
                                             job.builds[0].pickets = square_pickets();
                                             job.builds[0].pickets->fixed = PicketsFixed::face;
                                         })},
        {Trouble::ends_at_joint, changed(with_joint(),
                                         [](Job& job) {
                                             job.sections[0].ends.to = {EndWish::Meets::centre, {}, {}};
                                         })},
        {Trouble::clear_to_joint, changed(with_joint(), [](Job& job) { job.sections[0].clear = Reading(20); })},
        {Trouble::auto_at_joint, changed(with_joint(),
                                         [](Job& job) {
                                             job.sections[0].lower_gap = LowerGap{0, false, true};
                                         })},
        {Trouble::joint_folds_back, changed(with_joint(), [](Job& job) { job.posts[2].at = Reading(-20); })},
        {Trouble::taper_between_nothing,
         changed(even, [](Job& job) { job.posts[0].taper = Taper{{Reading(3)}, {}, 12, 12, {}}; })},
        {Trouble::tapered_away,
         changed(even, [](Job& job) { job.posts[0].taper = Taper{{Reading(8)}, {}, 20, 12, {}}; })},
        {Trouble::rail_misses_post, changed(even, [](Job& job) { job.sections[0].offset.to = 2; })},
        {Trouble::clear_missing, changed(floor, [](Job& job) { job.sections[0].clear.reset(); })},
        {Trouble::two_clears, changed(floor,
                                      [](Job& job) {
                                          job.stairs = {even_stair()};
                                          job.sections[0].stair = ref(0);
                                          job.sections[0].clear_on_slope = Reading(70);
                                      })},
        {Trouble::slope_without_stair, changed(floor,
                                               [](Job& job) {
                                                   job.sections[0].clear.reset();
                                                   job.sections[0].clear_on_slope = Reading(70);
                                               })},
        {Trouble::no_nosing_line, with_stair(single)},
        {Trouble::meets_corner, changed(even, [](Job& job) { job.posts[1].turn = in_degrees(45); })},
        {Trouble::posts_overlap, changed(even, [](Job& job) { job.posts[1] = placed_post(-2); })},
        {Trouble::cut_too_steep, changed(even,
                                         [](Job& job) {
                                             job.posts[0].lean.along = {Angle{11, 7.25}, {}};
                                         })},
        {Trouble::no_length_left, changed(even,
                                          [](Job& job) {
                                              put_straight_across(
                                                  job, 3.3);  // the feet overlap by 0.2; half-way up 0.7 is clear
                                              job.posts[1].lean.across = {Angle{1, 20}, {}};
                                          })},
        {Trouble::lower_gap_missing, changed(even, [](Job& job) { job.builds[0].lower_gap.reset(); })},
        {Trouble::rails_meet, changed(even, [](Job& job) { job.sections[0].height = Reading(7); })},
        {Trouble::below_surface,
         changed(
             even,
             [](Job& job) {
                 job.stairs[0] = measured_stair({7.25, 7.5, 7, 7.375, 7.125}, {11, 10.75, 11.125, 10.875});
                 job.sections[0].lower_gap = LowerGap{0.0625, false};  // the second nosing stands 0.104 over the line
             })},
        {Trouble::no_room_for_pickets,
         changed(floor_example(2), [](Job& job) { job.sections[0].max_gap = Reading(0.2); })},
        {Trouble::too_many_pickets, changed(floor,
                                            [](Job& job) {
                                                job.builds[0].pickets->width = 0.001;
                                                job.builds[0].pickets->max_gap = 0.001;
                                            })},
        {Trouble::picket_through_rail, changed(even, [](Job& job) { job.builds[0].pickets->plough.lower = 1.5; })},
        {Trouble::picket_past_nosing, changed(open, [](Job& job) { job.builds[0].pickets->per_tread = Count(5); })},
        {Trouble::no_count_per_tread, changed(open, [](Job& job) { job.sections[0].max_gap = Reading(1); })},
        {Trouble::found_nosing_beyond, found_rail(read_at_nosing(6, ref(0)))},
        {Trouble::found_heights_of_floor, found_rail(read_at_nosing(1, {}))},
        {Trouble::found_height_of_stair, found_rail(height_over_stair())},
        {Trouble::found_tread_without_stair, found_rail(ball_at_tread(1))},
        {Trouble::found_tread_missing, found_rail(with_balls({ball_at(Ball::At::under_rail, {}, 5, true)}, ref(0)))},
        {Trouble::balls_contradict,
         found_rail(with_balls({ball_at(Ball::At::pickets, {}, 5, true), ball_at(Ball::At::pickets, {}, 4, false)}, {}))},
        {Trouble::ball_against_gap, found_rail([] {
             FoundRail found = with_balls({ball_at(Ball::At::pickets, {}, 5, true)}, {});
             found.widest_gap = Reading(4);
             return found;
         }())},
        {Trouble::auto_over_unknown_string, changed(even,
                                                    [](Job& job) {
                                                        job.stairs[0].strings = {StringKind::closed, StringKind::closed};
                                                        job.sections[0].lower_gap = LowerGap{0, false, true};
                                                    })},
        {Trouble::nothing_to_do, Job{}},
        {Trouble::return_without_clearance, with_handrail([](Handrail& rail) { rail.returned.top = Return::wall; })},
        {Trouble::handrail_too_short, with_handrail([](Handrail& rail) {
             rail.returned.top = Return::wall;
             rail.clearance = 2;
             rail.extend.top = 0.5;
         })},
        {Trouble::auto_without_limit, changed(even,
                                              [](Job& job) {
                                                  job.sections[0].lower_gap = LowerGap{0, false, true};
                                              })},
        {Trouble::no_lower_gap,
         changed(even,
                 [](Job& job) {
                     job.sections[0].lower_gap = LowerGap{0, false, true};
                 }),
         {triangle_below(5)}},
        {Trouble::hole_beyond_leg, changed(even, [](Job& job) { job.builds[0].bracket->post_hole = {Reading(1.25)}; })},
        {Trouble::bend_past_leg, changed(even,
                                         [](Job& job) {
                                             // Bent by 56.6 degrees: 0.539 of the radius from its inside.
                                             job.builds[0].bracket->inside_radius = Reading(1);
                                             job.builds[0].bracket->rail_leg = 0.5;
                                             job.builds[0].bracket->rail_hole.clear();
                                         })},
        {Trouble::bend_past_hole, changed(even, [](Job& job) { job.builds[0].bracket->inside_radius = Reading(1.5); })},
        {Trouble::turned_key_on_square,
         changed(even, [](Job& job) { job.builds[0].pickets->upper_block = Reading(5); })},
        {Trouble::turned_key_missing, changed(turned, [](Job& job) { job.builds[0].pickets->turning.clear(); })},
        {Trouble::blocks_fill_length, changed(turned, [](Job& job) { job.builds[0].pickets->blocks->upper = 27; })},
        {Trouble::turning_not_rising, changed(turned,
                                              [](Job& job) {
                                                  job.builds[0].pickets->turning = {{5, 1}, {5, 1.5}};
                                              })},
        {Trouble::turning_beyond_blocks,
         changed(turned, [](Job& job) { job.builds[0].pickets->turning.back().at = turned_span + 0.01; })},
        {Trouble::turning_too_thick,
         changed(turned, [](Job& job) { job.builds[0].pickets->turning.back().diameter = 1.76; })},
        {Trouble::turning_height_unknown, changed(floor_example(60, turned_open_build(shaft(1))),
                                                  [](Job& job) {
                                                      job.stairs = {even_stair()};
                                                      job.sections[0].stair = ref(0);
                                                  })},
        {Trouble::picket_too_short, changed(turned, [](Job& job) { job.sections[0].height = Reading(45); })},
        {Trouble::block_too_short,
         changed(turned, [](Job& job) { job.builds[0].pickets->upper_block = Reading(7.5); })},
        {Trouble::too_little_block,
         changed(turned, [](Job& job) { job.builds[0].pickets->upper_block = Reading(0.5); })},
        {Trouble::girth_of_square, changed(even, [](Job& job) { job.posts[0].around = Reading(11); })},
        {Trouble::timber_size_of_round, changed(even,
                                                [](Job& job) {
                                                    job.posts[0].shape = PostShape::round;
                                                    job.posts[0].size.nominal = "4x4";
                                                })},
        {Trouble::turn_of_round, changed(even,
                                         [](Job& job) {
                                             job.posts[0].shape = PostShape::round;
                                             job.posts[0].turn = in_degrees(10);
                                         })},
        {Trouble::round_post_missed, changed(even,
                                             [](Job& job) {
                                                 job.posts[0].shape = PostShape::round;
                                                 job.posts[0].size = {3.25, 3.25, "", {}};  // the cap is 3 1/2 wide
                                             })},
        {Trouble::stock_twice, changed(boards, [](Job& job) { job.stock.push_back(job.stock[0]); })},
        {Trouble::prices_do_not_match, changed(boards,
                                               [](Job& job) {
                                                   job.stock[0].prices = {1, 2};
                                               })},
        {Trouble::bar_trimmed_away, changed(boards, [](Job& job) { job.stock[0].trim = 48; })},
        {Trouble::longer_than_stock, changed(boards, [](Job& job) { job.also_cut[0].length = 96.01; })},
        {Trouble::too_many_to_cut, changed(boards, [](Job& job) { job.also_cut[0].count = 20001; })},
        {Trouble::pitch_within_picket, changed(even, [](Job& job) { job.builds[0].pickets->pitch = Reading(1.5); })},
        {Trouble::pitch_on_treads, changed(open, [](Job& job) { job.builds[0].pickets->pitch = Reading(4.5); })},
        {Trouble::no_room_at_pitch, changed(floor,
                                            [](Job& job) {
                                                job.sections[0].clear = Reading(4);
                                                job.builds[0].pickets->pitch = Reading(4.5);
                                            })},
        {Trouble::weld_gap_too_wide, changed(even, [](Job& job) { job.builds[0].pickets->weld_gap = 15; })},
        {Trouble::block_over_limit, changed(floor, [](Job& job) { job.spacing = block_of(Reading(4)); })},
        {Trouble::block_does_not_fit, changed(floor,
                                              [](Job& job) {
                                                  job.sections[0].clear = Reading(7);
                                                  job.spacing = block_of(Reading(3));
                                                  job.spacing->least_end_gap = Reading(3);
                                              })},
        {Trouble::no_block, changed(floor,
                                    [](Job& job) {
                                        job.sections[0].clear = Reading(7);
                                        job.spacing = block_of({});
                                        job.spacing->least_end_gap = Reading(3);
                                    })},
        {Trouble::foot_without_size, changed(even,
                                             [](Job& job) {
                                                 job.builds[0].pickets.reset();
                                                 job.builds[0].feet = FeetBuild{30, {}, {}, {}};
                                             })},
        {Trouble::too_many_feet, changed(even,
                                         [](Job& job) {
                                             job.builds[0].feet = FeetBuild{0.01, {}, {}, {}};
                                         })},
        {Trouble::too_many_screws, changed(even,
                                           [](Job& job) {
                                               job.builds[0].screws.emplace();
                                               job.builds[0].screws->between_members =
                                                   ScrewRow{{{}, 2, 0.1}, 0.04, 3, Driven::up};
                                           })},
        {Trouble::drilled_not_nearer, changed(even,
                                              [](Job& job) {
                                                  job.builds[0].screws.emplace();
                                                  job.builds[0].screws->pilot.drilled_edge = 6;
                                              })},
        {Trouble::no_place_to_splice, changed(even, [](Job& job) { job.builds[0].longest_stick = Reading(3); })},
        {Trouble::plate_under_hollow_post, changed(plated,
                                                   [](Job& job) {
                                                       job.post_fixings[0].rod = PostRod{};
                                                       job.posts[0].reveal = Reading(1);
                                                       job.post_fixings[0].base_plate->size = {Reading(3)};
                                                       job.post_fixings[0].base_plate->holes = {Reading(1)};
                                                   })},
        {Trouble::holes_off_plate, changed(plated,
                                           [](Job& job) {
                                               job.post_fixings[0].base_plate->holes = {Reading(4), Reading(5.5)};
                                           })},
        {Trouble::wood_under_concrete, changed(plated,
                                               [](Job& job) {
                                                   job.post_fixings[0].anchored_in = AnchoredIn::concrete;
                                                   job.post_fixings[0].wood_under = Reading(4);
                                               })},
        {Trouble::reveal_under_rail, changed(even,
                                             [](Job& job) {
                                                 job.sections[0].ends.to = {EndWish::Meets::over, 0, {}};
                                                 job.posts[1].reveal = Reading(1);
                                             })},
        {Trouble::rod_without_reveal, changed(plated, [](Job& job) { job.post_fixings[0].rod = PostRod{}; })},
        {Trouble::no_post_left, changed(plated, [](Job& job) { job.posts[0].reveal = Reading(-50); })},
        {Trouble::picket_without_depth, changed(even, [](Job& job) { job.builds[0].pickets->depth = 0; })},
        {Trouble::round_picket_flat, changed(bored, [](Job& job) { job.builds[0].pickets->depth = 0.5; })},
        {Trouble::bore_through_rail, changed(bored, [](Job& job) { job.builds[0].pickets->plough.lower = 1.25; })},
        {Trouble::face_key_on_between,
         changed(beside, [](Job& job) { job.builds[0].pickets->fixed = PicketsFixed::between; })},
        {Trouble::between_key_on_face, changed(beside, [](Job& job) { job.builds[0].pickets->weld_gap = 0.0625; })},
        {Trouble::face_widths_differ, changed(beside, [](Job& job) { job.builds[0].lower[0].width = 1.25; })},
        {Trouble::head_under_wider, changed(beside, [](Job& job) { job.builds[0].pickets->past->upper = 0.25; })},
        {Trouble::head_off_rail, changed(beside, [](Job& job) { job.builds[0].pickets->past->upper = -4.25; })},
        {Trouble::foot_on_nothing, changed(down_string, [](Job& job) { job.builds[0].pickets->past->lower = 0; })},
        {Trouble::foot_above_tread, changed(down_string, [](Job& job) { job.builds[0].pickets->past->lower = 2; })},
        {Trouble::no_count_for_sphere, changed(turned, [](Job& job) { job.sections[0].max_sphere = Reading(0.7); })},
    };
}

}  // namespace

TEST_CASE("whatever refuses a job is found, and found by name", "[refusal]") {
    std::set<Trouble> seen;
    for (const Refused& refused : refused_jobs()) {
        INFO("trouble " << static_cast<int>(refused.trouble));
        Solution solution = solve(refused.job, refused.rules);
        if (!solution.refused()) plan_stock(refused.job, solution);
        CHECK(refuses(refused.trouble));
        CHECK(solution.refused());
        CHECK(has(solution, refused.trouble));
        seen.insert(refused.trouble);
    }
    // Every trouble that refuses has its job above; the first that does not refuse comes right after the last of them.
    for (int trouble = 0; refuses(static_cast<Trouble>(trouble)); ++trouble) {
        INFO("trouble " << trouble);
        CHECK(seen.count(static_cast<Trouble>(trouble)) == 1);
    }
}

TEST_CASE("every section that is wrong is found in one run, with its number", "[refusal]") {
    Job job = even_example();
    for (int i = 1; i < 5; ++i) job.sections.push_back(job.sections[0]);
    job.sections[0].height = Reading(5);
    job.sections[1].offset.from = 2;
    job.sections[3].to = job.sections[3].from;
    job.sections[4].lower_gap = LowerGap{40, false};
    const Solution solution = solve(job);
    CHECK(solution.refused());
    std::set<std::pair<int, Trouble>> found;
    for (const Finding& finding : solution.findings)
        if (refuses(finding.trouble)) found.insert({finding.section, finding.trouble});
    CHECK(found == std::set<std::pair<int, Trouble>>{{0, Trouble::rails_meet},
                                                     {1, Trouble::rail_misses_post},
                                                     {3, Trouble::post_at_both_ends},
                                                     {4, Trouble::rails_meet}});
}

TEST_CASE("stairs, posts and builds that are wrong are found in one run", "[refusal]") {
    Job job = even_example();
    job.stairs.push_back(measured_stair({7, 7, 7}, {10}));
    job.posts[1].nosing.value = 9;
    job.posts.push_back(placed_post(0));
    job.posts[2].base = {Base::On::tread, 17, 0, {}};
    job.builds[0].bracket->rail_hole = {Reading(1), Reading(2.5), Reading(3)};
    job.builds[0].pickets->plough.upper = 2;
    const Solution solution = solve(job);
    for (const Trouble trouble : {Trouble::step_without_run, Trouble::nosing_beyond_stair, Trouble::tread_beyond_stair,
                                  Trouble::hole_beyond_leg, Trouble::picket_through_rail})
        CHECK(has(solution, trouble));
    int holes = 0;
    for (const Finding& finding : solution.findings) holes += finding.trouble == Trouble::hole_beyond_leg;
    CHECK(holes == 2);
}

TEST_CASE("what should only be known does not refuse", "[refusal]") {
    Job job = even_example(open_build());
    job.sections[0].lower_gap = LowerGap{2, false};
    const Solution solution = solve(job);
    CHECK(has(solution, Trouble::lower_gap_without_lower));
    CHECK(has(solution, Trouble::gap_at_post_too_wide));
    CHECK_FALSE(solution.refused());
}

}  // namespace rakewright::tests
