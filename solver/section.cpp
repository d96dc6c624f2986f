#include "section.hpp"

#include <algorithm>
#include <cmath>

#include "lower_gap.hpp"
#include "measure/compare.hpp"
#include "section_feet.hpp"
#include "section_fixings.hpp"
#include "section_pickets.hpp"
#include "section_screws.hpp"
#include "section_splices.hpp"
#include "way.hpp"

namespace rakewright {
namespace {

/// Whether two feet stand on one spot in plan.
bool same_place(const Vector& a, const Vector& b) {
    const double scale = std::fmax(a.norm(), b.norm());
    return same(a.x(), b.x(), scale) && same(a.y(), b.y(), scale);
}

class Checking {
 public:
    Checking(const SectionTask& task, const Surroundings& around, const RailLine& line, const Levels& levels,
             std::vector<Finding>& findings)
        : task_(task), around_(around), line_(line), levels_(levels), findings_(findings) {}

    /// Adds what makes the section impossible.
    void groups_and_ground() {
        const double room = levels_.upper_underside - levels_.lower_top;
        if (!less_than(0, room, levels_.upper_top)) {
            findings_.push_back({Trouble::rails_meet, height_place(), {room}, {}});
            return;
        }
        if (around_.string_above && levels_.has_lower &&
            less_than(levels_.lower_underside, *around_.string_above, levels_.upper_top)) {
            findings_.push_back({Trouble::below_string,
                                 task_.lower_gap()->size.place,
                                 {*around_.string_above - levels_.lower_underside},
                                 around_.string_above->place});
            return;
        }
        if (!around_.placed() || !around_.treads()) return;
        const Group lowest = levels_.has_lower ? Group::lower : Group::upper;
        for (const OverNosing& over : nosings_passed()) {
            const GroupHeights& heights = over.lower ? *over.lower : over.upper;
            if (less_than(heights.underside - dip(lowest), 0, levels_.upper_top)) {
                below(over.nosing, dip(lowest) - heights.underside);
                return;
            }
        }
        for (const End end : both_ends) {
            const std::optional<double> along = face_along(line_, end, levels_.underside(lowest));
            if (!along) continue;
            const Vector met = line_.at(*along, levels_.underside(lowest));
            const int tread = tread_under(*around_.stair, met.x());
            const double ground = surface_height(*around_.stair, tread, met.x());
            if (less_than(met.z(), ground, levels_.upper_top)) {
                below(tread, ground - met.z());
                return;
            }
        }
    }

    /// The rail over each nosing between the faces.
    std::vector<OverNosing> nosings_passed() const {
        std::vector<OverNosing> passed;
        const auto faces = faces_half_way(line_, levels_);
        if (!around_.placed() || !around_.treads() || line_.slope == 0 || !faces) return passed;
        passed.reserve(around_.stair->nosings.size());
        for (int number = 1; number <= around_.stair->risers(); ++number) {
            const Nosing& nosing = around_.stair->nosing(number);
            const double along = (nosing.x - line_.origin.x()) / line_.x;
            if (!no_more_than((*faces)[0], along) || !no_more_than(along, (*faces)[1])) continue;
            const auto above = [&](Group group) {
                return GroupHeights{levels_.underside(group) - nosing.off_line, levels_.top(group) - nosing.off_line};
            };
            passed.push_back({number, above(Group::upper), std::nullopt});
            if (levels_.has_lower) passed.back().lower = above(Group::lower);
        }
        if (line_.x < 0) std::reverse(passed.begin(), passed.end());
        return passed;
    }

 private:
    Place height_place() const { return task_.section.height ? task_.section.height->place : task_.build.height.place; }

    /// How much lower than its middle line a group's underside comes to a nosing that the rail crosses askew: the
    /// nosing passes under its two sides at different places.
    double dip(Group group) const {
        const std::vector<MemberSize>& members = group == Group::upper ? task_.build.upper : task_.build.lower;
        return std::fabs(line_.slope * line_.y / line_.x) * members.back().width / 2;
    }

    void below(int nosing, double by) {
        const std::optional<LowerGap>& gap = task_.lower_gap();
        findings_.push_back({Trouble::below_surface,
                             levels_.has_lower && gap ? gap->size.place : height_place(),
                             {double(nosing), by},
                             {}});
    }

    const SectionTask& task_;
    const Surroundings& around_;
    const RailLine& line_;
    const Levels& levels_;
    std::vector<Finding>& findings_;
};

std::optional<GroupHeights> heights_at_post(const RailLine& line, const Levels& levels, End end, Group group,
                                            std::optional<double> surface) {
    const std::optional<double> underside = height_met(line, end, levels.underside(group)),
                                top = height_met(line, end, levels.top(group));
    if (!surface || !underside || !top) return std::nullopt;
    return GroupHeights{*underside - *surface, *top - *surface};
}

/// The diagonals between the facing edges of two members, by the points where their middle lines end.
Diagonals diagonals_between(const Member& upper, const Member& lower) {
    const auto corner = [](const Member& member, End end) {
        const Spot spot{0, (member.group == Group::upper ? -member.depth : member.depth) / 2};
        return point_on(member.stick.frame, reach(member, end, spot), spot);
    };
    return {(corner(upper, End::to) - corner(lower, End::from)).norm(),
            (corner(upper, End::from) - corner(lower, End::to)).norm()};
}

/// Refuses bends that take in a leg's end or a hole, by the sharpest, which reaches farthest.
void check_bends(const BracketBuild& build, const std::vector<Bracket>& brackets, std::vector<Finding>& findings) {
    const Bracket& sharpest =
        *std::min_element(brackets.begin(), brackets.end(),
                          [](const Bracket& one, const Bracket& other) { return one.over_square < other.over_square; });
    const std::optional<InTheBend> bend = in_the_bend(build, sharpest.over_square);
    if (!bend) return;
    findings.push_back({bend->is_hole ? Trouble::bend_past_hole : Trouble::bend_past_leg,
                        build.inside_radius->place,
                        {bend->inside_setback, bend->nearest},
                        bend->nearest.place,
                        -1,
                        static_cast<int>(index_of(sharpest.end))});
}

void add_brackets(const SectionTask& task, const Surroundings& around, const RailLine& line, const Levels& levels,
                  const SectionChoices& choices, SectionResult& result, std::vector<Finding>& findings) {
    const BracketBuild& build = *task.build.bracket;
    result.brackets.reserve(4);
    int blocked = 0;
    if (build.leg == LegWish::by_driver && (line.is_round(End::from) || line.is_round(End::to)))
        findings.push_back({Trouble::leg_down_on_round, task.section.id.place, {}, {}});
    for (const End end : both_ends)
        for (const Group group : both_groups) {
            if (!line.end_of(end).at_bare_face(group) || (group == Group::lower && !levels.has_lower)) continue;
            const Leg leg = choices.legs[index_of(end)][index_of(group)];
            const Bracket bracket =
                bracket_at(build, task.build.driver, line, levels, end, group, leg, surface_at(around, line, end));
            blocked += bracket.driver_clear ? 0 : 1;
            if (line.is_round(end) && !bracket.stands_off)
                findings.push_back({Trouble::plate_past_round,
                                    task.section.id.place,
                                    {double(index_of(group)), line.round(end).radius},
                                    {},
                                    -1,
                                    static_cast<int>(index_of(end))});
            result.brackets.push_back(bracket);
        }
    if (build.inside_radius) check_bends(build, result.brackets, findings);
    add_fixings({task, around, line, levels, choices}, result, findings);
    if (blocked > 0) findings.push_back({Trouble::driver_blocked, task.section.id.place, {double(blocked)}, {}});
}

void note_fall(const SectionTask& task, const RailLine& line, SectionResult& result, std::vector<Finding>& findings) {
    if (line.floor.slope == 0) return;
    result.floor_falls = std::fabs(line.floor.slope) * result.clear;
    const End low = line.floor.slope > 0 ? End::from : End::to;
    findings.push_back(
        {Trouble::floor_falls, task.section.id.place, {*result.floor_falls}, {}, -1, static_cast<int>(index_of(low))});
}

/// Says where a clear distance that was measured differs from what the posts' places leave by more than the tape reads.
void note_moved(const SectionTask& task, double clear, double moved, std::vector<Finding>& findings) {
    if (no_more_than(std::fabs(moved), task.tape.division / 2)) return;
    const std::optional<Reading>& given = task.section.clear ? task.section.clear : task.section.clear_on_slope;
    findings.push_back({Trouble::clear_differs, given->place, {clear, clear - moved}, {}});
}

/// Says which boards round a post's foot, and which tapers, are left out, because how high they are does not follow,
/// and which boards a rail sinks into.
void note_left_out(const SectionTask& task, const Surroundings& around, const RailLine& line, const Levels& levels,
                   std::vector<Finding>& findings) {
    for (const End end : both_ends) {
        const auto note = [&](Trouble trouble) {
            const Place place = (end == End::from ? task.section.from : task.section.to).place;
            findings.push_back({trouble, place, {}, {}, -1, static_cast<int>(index_of(end))});
        };
        if (around.posts[index_of(end)].trim && !line.trim(end).there()) note(Trouble::trim_left_out);
        if (around.tapered[index_of(end)] && !task.section.clear_twice) note(Trouble::taper_left_out);
        const Group lowest = levels.has_lower ? Group::lower : Group::upper;
        if (const double by = sinks_into_trim(line, end, levels.underside(lowest)); by > 0) {
            note(Trouble::sinks_into_trim);
            findings.back().numbers[0] = by;
        }
    }
}

void note_keys_without_effect(const SectionTask& task, const Surroundings& around, const RailLine& line,
                              std::vector<Finding>& findings) {
    const Offset& offset = task.section.offset;
    if (!around.placed() &&
        ((offset.from != 0 && !line.is_round(End::from)) || (offset.to != 0 && !line.is_round(End::to))))
        findings.push_back({Trouble::offset_without_effect, task.section.id.place, {}, {}});
    if (task.build.lower.empty() && task.section.lower_gap)
        findings.push_back({Trouble::lower_gap_without_lower, task.section.lower_gap->size.place, {}, {}});
    if (task.section.picket_side && !(task.build.pickets && task.build.pickets->on_face()))
        findings.push_back({Trouble::picket_side_without_face, task.section.picket_side->place, {}, {}});
    if (task.section.follow == Follow::floor && !task.section.floor.named())
        findings.push_back({Trouble::follow_without_floor, task.section.id.place, {}, {}});
    if (task.build.pickets) return;
    if (task.section.max_gap)
        findings.push_back({Trouble::max_gap_without_pickets, task.section.max_gap->place, {0}, {}});
    if (task.section.max_sphere)
        findings.push_back({Trouble::max_gap_without_pickets, task.section.max_sphere->place, {1}, {}});
    if (task.section.centre) findings.push_back({Trouble::centre_without_effect, task.section.centre->place, {0}, {}});
}

/// Says why there are no faces half-way up.
void no_faces(const SectionTask& task, const RailLine& line, const Levels& levels, std::vector<Finding>& findings) {
    for (const End end : both_ends) {
        if (!line.is_round(end)) continue;
        const double off = off_axis(line, end, levels.middle()), radius = line.round(end).radius;
        if (off < radius) continue;
        findings.push_back({Trouble::round_post_missed,
                            task.section.id.place,
                            {off, radius},
                            {},
                            -1,
                            static_cast<int>(index_of(end))});
        return;
    }
    findings.push_back({Trouble::cut_too_steep, task.section.id.place, {}, {}});
}

/// Refuses a joint at which the other rail runs back along this one.
void check_joints(const SectionTask& task, const Surroundings& around,
                  const std::array<std::optional<RailJoint>, 2>& joints, std::vector<Finding>& findings) {
    for (const End end : both_ends) {
        const std::size_t e = index_of(end);
        if (!around.joints[e] || joints[e]) continue;
        const Place place = (end == End::from ? task.section.from : task.section.to).place;
        findings.push_back({Trouble::joint_folds_back, place, {}, {}, -1, static_cast<int>(e)});
    }
}

/// Which face the line leaves each post by; false, and said why, where it does not leave both by one.
bool choose_faces(const SectionTask& task, const Surroundings& around, SectionChoices& choices,
                  std::vector<Finding>& findings) {
    const std::size_t before = findings.size();
    const std::optional<LevelWay> way = way_between(*around.from, *around.to, around.beside);
    for (const End end : both_ends) {
        const std::size_t e = index_of(end);
        const bool at_from = end == End::from;
        const Place place = (at_from ? task.section.from : task.section.to).place;
        const LeavingBy leaving = !way      ? LeavingBy{std::nullopt, true}
                                  : at_from ? leaving_by(*around.from, way->x, way->y, around.beside[0])
                                            : leaving_by(*around.to, -way->x, -way->y, -around.beside[1]);
        if (leaving.missed)
            findings.push_back(
                {Trouble::rail_misses_post, place, {std::fabs(around.beside[e])}, {}, -1, static_cast<int>(e)});
        else if (!leaving.face)
            findings.push_back({Trouble::meets_corner, place, {}, {}, -1, static_cast<int>(e)});
        else
            choices.faces[e] = *leaving.face;
    }
    return findings.size() == before;
}

/// Says of the first member that is so short that the tape reads nothing.
void note_under_tape(const SectionTask& task, const std::vector<Member>& members, std::vector<Finding>& findings) {
    for (std::size_t m = 0; m < members.size(); ++m)
        if (nearest_mark(members[m].length, task.tape) == 0) {
            findings.push_back(
                {Trouble::length_under_tape, task.section.id.place, {members[m].length, static_cast<double>(m)}, {}});
            return;
        }
}

}  // namespace

std::optional<SectionChoices> decide(const SectionTask& task, const Surroundings& around,
                                     std::vector<Finding>& findings) {
    SectionChoices choices;
    std::size_t before = findings.size();
    if (around.placed()) {
        if (same_place(around.from->foot, around.to->foot)) {
            findings.push_back({Trouble::posts_overlap, task.section.id.place, {0}, {}});
            return std::nullopt;
        }
        if (!choose_faces(task, around, choices, findings)) return std::nullopt;
    }
    if (!task.build.lower.empty() && !task.lower_gap())
        findings.push_back({Trouble::lower_gap_missing, task.section.id.place, {}, task.build.id.place});
    if (task.build.lower.empty() && around.closed_string && !around.string_above)
        findings.push_back({Trouble::string_above_missing, task.section.id.place, {}, task.build.id.place});
    if (findings.size() > before) return std::nullopt;

    if (!task.build.lower.empty() && task.lower_gap()->is_auto) {
        choices.lower_gap = largest_lower_gap(task, around, choices.faces, findings);
        if (!choices.lower_gap) return std::nullopt;
        before = findings.size();  // what was chosen is told, and refuses nothing
    }
    const auto [line, levels, faces, joints, moved] = way_of(task, around, choices.faces, task.lower_gap(choices));
    check_joints(task, around, joints, findings);
    if (findings.size() > before) return std::nullopt;
    if (!faces) {
        no_faces(task, line, levels, findings);
        return std::nullopt;
    }
    if (!less_than(0, (*faces)[1] - (*faces)[0], std::fabs((*faces)[1]))) {
        findings.push_back({Trouble::posts_overlap, task.section.id.place, {(*faces)[1] - (*faces)[0]}, {}});
        return std::nullopt;
    }
    Checking(task, around, line, levels, findings).groups_and_ground();
    if (findings.size() > before) return std::nullopt;
    if (task.build.pickets && !choose_pickets(stand_of(task, around, line, levels, *faces), choices, findings))
        return std::nullopt;
    if (task.build.bracket)
        for (const End end : both_ends)
            choices.legs[index_of(end)].fill(chosen_leg(*task.build.bracket, task.build.driver, line, end));
    return choices;
}

SectionResult measure(const SectionTask& task, const Surroundings& around, const SectionChoices& choices,
                      std::vector<Finding>& findings) {
    const auto [line, levels, faces, joints, moved] = way_of(task, around, choices.faces, task.lower_gap(choices));
    SectionResult result;
    if (!faces) return result;
    result.joints = joints;
    result.slope = line.slope;
    result.clear = (*faces)[1] - (*faces)[0];
    result.clear_on_slope = result.clear * line.lengthened();
    if (around.floor) note_fall(task, line, result, findings);
    if (moved != 0) note_moved(task, result.clear, moved, findings);
    note_left_out(task, around, line, levels, findings);

    LegsBetween legs{};
    if (task.build.bracket)
        for (std::size_t e = 0; e < 2; ++e)
            for (const Group group : both_groups)
                if (const std::size_t g = index_of(group); line.ends[e].at_bare_face(group))
                    legs[e][g] = leg_between(*task.build.bracket, choices.legs[e][g]);
    const std::size_t before = findings.size();
    result.members = members_of(task.build, levels, line, task.play(), legs, task.section.id.place, findings);
    if (findings.size() > before) return result;
    note_under_tape(task, result.members, findings);
    if (task.build.pickets)
        result.pickets =
            measured_pickets(stand_of(task, around, line, levels, *faces), choices, result.members, findings);
    if (task.build.feet && levels.has_lower)
        result.feet =
            feet_of(task, around, line, levels, *faces,
                    result.pickets ? result.pickets->centres_from((*faces)[0]) : std::vector<double>(), findings);
    splice_members(task, line, (*faces)[0], result, findings);
    if (task.build.bracket) add_brackets(task, around, line, levels, choices, result, findings);
    if (task.build.screws) add_screws({task, around, line, levels, choices}, result, findings);
    if (around.placed()) result.over_nosings = Checking(task, around, line, levels, findings).nosings_passed();
    if (levels.has_lower)
        result.diagonals =
            diagonals_between(result.members[task.build.upper.size() - 1], result.members[task.build.upper.size()]);
    for (const End end : both_ends) {
        EndHeights& heights = result.ends[index_of(end)];
        heights.upper = heights_at_post(line, levels, end, Group::upper, surface_at(around, line, end));
        if (levels.has_lower)
            heights.lower = heights_at_post(line, levels, end, Group::lower, surface_at(around, line, end));
    }
    note_keys_without_effect(task, around, line, findings);
    result.lower_gap = choices.lower_gap;
    return result;
}

std::vector<Opening> openings_in(const SectionTask& task, const Surroundings& around, const SectionChoices& choices,
                                 const std::vector<RailFoot>& feet) {
    const auto [line, levels, faces, joints, moved] = way_of(task, around, choices.faces, task.lower_gap(choices));
    if (!faces) return {};
    const std::vector<Upright> uprights = uprights_of(feet, (*faces)[0]);
    if (task.build.pickets) return openings_of_pickets(stand_of(task, around, line, levels, *faces), choices, uprights);
    return openings_of({line, levels, around.treads(), around.placed(), around.closed_string, nullptr,
                        around.string_above, false, uprights},
                       {{}, (*faces)[0], (*faces)[1]}, 0);
}

}  // namespace rakewright
