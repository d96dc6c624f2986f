#include "section_pickets.hpp"

#include <algorithm>
#include <cmath>

#include "measure/compare.hpp"

namespace rakewright {
namespace {

/// The fewest with equal gaps, by the limit on gaps.
std::optional<int> fewest_by_gap(const PicketStand& stand, double max_gap) {
    return fewest_between(span_of(stand), max_gap);
}

bool choose_by_gap(const PicketStand& stand, const Reading& max_gap, SectionChoices& choices,
                   std::vector<Finding>& findings) {
    if (standing_of(stand) != Standing::on_treads) {
        const PicketSpan span = span_of(stand);
        const std::optional<int> count = fewest_by_gap(stand, max_gap);
        if (!count) {
            findings.push_back({Trouble::too_many_pickets, max_gap.place, {double(most_pickets)}, {}});
            return false;
        }
        choices.pickets = *count;
        if (no_more_than(0, equal_gap(span, *count), span.clear)) return true;
        findings.push_back(
            {Trouble::no_room_for_pickets, place_of(stand), {span.clear, double(*count)}, max_gap.place});
        return false;
    }
    const std::optional<int> fewest = fewest_per_tread(tread_room(stand), max_gap);
    if (!fewest) {
        findings.push_back({Trouble::no_count_per_tread, max_gap.place, {max_gap}, place_of(stand)});
        return false;
    }
    choices.per_tread = *fewest;
    return true;
}

bool choose_by_sphere(const PicketStand& stand, const Reading& max_sphere, SectionChoices& choices,
                      std::vector<Finding>& findings) {
    const auto none = [&](double smallest) {
        const double shown = std::isfinite(smallest) ? smallest : 0;
        findings.push_back({Trouble::no_count_for_sphere, max_sphere.place, {max_sphere, shown}, place_of(stand)});
        return false;
    };
    if (standing_of(stand) != Standing::on_treads) {
        const FewestForBall fewest = fewest_for_ball(stand, max_sphere);
        if (!fewest.count) return none(fewest.smallest);
        choices.pickets = *fewest.count;
        return true;
    }
    // Where the posts stand too far from the pickets for any count, that is noted, as a gap there is.
    const OnTreadsBalls search(stand, max_sphere);
    const std::optional<int> fewest = search.between_and_at_posts ? search.between_and_at_posts : search.between_alone;
    if (!fewest)
        return none(
            search.most == 0 ? 0 : balls_of(stand, laid_out_on_treads(tread_room(stand), search.most).layout).between);
    choices.per_tread = *fewest;
    return true;
}

/// The pitch, level.
double level_pitch(const PicketStand& stand) {
    const PicketBuild& build = pickets_in(stand);
    return build.pitch ? build.pitch->value : *build.pitch_on_slope / stand.line.lengthened();
}

/// Whether so many at a fixed pitch have in the middle what the section itself asks for: the job's wish is for those
/// that are spaced together.
bool is_wanted(const PicketStand& stand, int count) {
    const std::optional<CentreWish>& wish = stand.task.section.centre;
    return !wish || (count % 2 == 1) == (wish->centre == Centre::picket);
}

/// Whether a section may do without pickets: nothing wants one, and it is no wider than a gap may be.
bool needs_none(const PicketStand& stand) {
    const std::optional<PicketLimit> limit = stand.task.picket_limit();
    if (!limit || !is_wanted(stand, 0)) return false;
    return limit->on == PicketLimit::On::gap ? no_more_than(equal_gap(span_of(stand), 0), limit->reading)
                                             : less_than(balls_of(stand, laid_out(stand, 0)).largest(), limit->reading);
}

/// As many as a rail that comes drilled has holes for.
bool choose_by_pitch(const PicketStand& stand, SectionChoices& choices, std::vector<Finding>& findings) {
    const PicketBuild& build = pickets_in(stand);
    const Place place = build.any_pitch()->place;
    if (standing_of(stand) == Standing::on_treads) {
        findings.push_back({Trouble::pitch_on_treads, place, {}, place_of(stand)});
        return false;
    }
    const PicketSpan span = span_of(stand);
    const double pitch = level_pitch(stand), gap = pitch - build.width;
    if (!less_than(0, gap, pitch)) {
        findings.push_back({Trouble::pitch_within_picket, place, {pitch, build.width}, build.width.place});
        return false;
    }
    const double least_end = build.least_end_gap ? build.least_end_gap->value : usual_least_end * gap;
    const std::optional<int> most = most_at_pitch(span, pitch, least_end);
    if (!most) {
        findings.push_back({Trouble::too_many_pickets, place, {double(most_pickets)}, {}});
        return false;
    }
    choices.pickets = *most;
    if (choices.pickets > 0 && !is_wanted(stand, choices.pickets)) --choices.pickets;
    choices.between = gap;
    if (choices.pickets > 0 || needs_none(stand)) return true;
    findings.push_back({Trouble::no_room_at_pitch,
                        place_of(stand),
                        {span.clear, least_end, stand.task.section.centre ? 1.0 : 0.0},
                        place});
    return false;
}

/// The section as the spacing of the whole job sees it, with the fewest pickets by its limit.
SpacedSection with_fewest(const PicketStand& stand, const PicketLimit& limit, int fewest) {
    SpacedSection section{span_of(stand), limit.reading, fewest, stand.task.section.count, {}, {}};
    if (stand.task.centre) section.centre = stand.task.centre->centre;
    if (limit.on == PicketLimit::On::sphere)
        section.stops = [&stand, ball = limit.reading.value](const Spaced& spaced) {
            return less_than(balls_of(stand, laid_out(stand, spaced)).largest(), ball);
        };
    return section;
}

/// Of those with what is wanted in the middle, the fewest.
bool choose_centred(const PicketStand& stand, const PicketLimit& limit, SectionChoices& choices,
                    std::vector<Finding>& findings) {
    if (!stand.task.centre || standing_of(stand) == Standing::on_treads) return true;
    if (choices.pickets == 0 && !stand.task.section.centre) return true;  // the job's wish asks for no picket more
    const std::optional<int> count = fewest_centred(with_fewest(stand, limit, choices.pickets));
    if (count) {
        choices.pickets = *count;
        return true;
    }
    findings.push_back({Trouble::no_room_for_pickets,
                        place_of(stand),
                        {span_of(stand).clear, double(choices.pickets + 1)},
                        stand.task.centre->place});
    return false;
}

bool choose_count(const PicketStand& stand, SectionChoices& choices, std::vector<Finding>& findings) {
    if (pickets_in(stand).any_pitch()) return choose_by_pitch(stand, choices, findings);
    if (const auto& given = pickets_in(stand).per_tread; given && standing_of(stand) == Standing::on_treads) {
        choices.per_tread = *given;
        const TreadLayout layout = laid_out_on_treads(tread_room(stand), choices.per_tread);
        if (layout.past_nosing == 0) return true;
        findings.push_back({Trouble::picket_past_nosing,
                            given->place,
                            {double(choices.per_tread), double(layout.past_nosing), layout.past_by},
                            place_of(stand)});
        return false;
    }
    const PicketLimit limit = *stand.task.picket_limit();
    return (limit.on == PicketLimit::On::gap ? choose_by_gap(stand, limit.reading, choices, findings)
                                             : choose_by_sphere(stand, limit.reading, choices, findings)) &&
           choose_centred(stand, limit, choices, findings);
}

/// Whether something is left of a picket's short side between its welds.
bool welds_fit(const PicketStand& stand, std::vector<Finding>& findings) {
    const Reading& weld = pickets_in(stand).weld_gap;
    if (weld == 0) return true;
    const Levels& levels = stand.levels;
    const double raked_off = pickets_in(stand).width * std::fabs(stand.line.slope);
    const double left = levels.upper_underside - levels.lower_top - (levels.has_lower ? 2 : 1) * weld -
                        (levels.parallel() ? 0 : raked_off / 2);
    if (less_than(0, left, levels.upper_top)) return true;
    findings.push_back({Trouble::weld_gap_too_wide, weld.place, {weld, left}, place_of(stand)});
    return false;
}

/// Whether the holes of round pickets end in their members, by the edge of a flat bottom that comes nearest to the
/// other side.
bool bores_fit(const PicketStand& stand, std::vector<Finding>& findings) {
    if (pickets_in(stand).shape != PicketShape::round) return true;
    const std::size_t before = findings.size();
    const auto check = [&](const Reading& enters, const MemberSize& member) {
        const double deep = enters + pickets_in(stand).width * std::fabs(stand.line.slope) / stand.line.lengthened();
        if (enters > 0 && !less_than(deep, member.depth))
            findings.push_back({Trouble::bore_through_rail, enters.place, {deep, member.depth}, place_of(stand)});
    };
    check(pickets_in(stand).plough.upper, stand.task.build.upper.back());
    if (stand.levels.has_lower) check(pickets_in(stand).plough.lower, stand.task.build.lower.front());
    return findings.size() == before;
}

/// Whether pickets on the side of the rail cover something of it.
bool heads_fit(const PicketStand& stand, std::vector<Finding>& findings) {
    const PicketBuild& build = pickets_in(stand);
    if (!build.on_face() || !build.past) return true;
    const double deep = stand.task.build.upper.back().depth * stand.line.lengthened();
    if (less_than(-build.past->upper, deep)) return true;
    findings.push_back({Trouble::head_off_rail, build.past->upper.place, {-build.past->upper, deep}, place_of(stand)});
    return false;
}

/// How far the treads lie under the nosing line at most, plumb, between the first nosing and the last.
double deepest_tread(const PicketStand& stand) {
    const StairShape& stair = *stand.around.treads();
    double deepest = 0;
    for (int tread = 1; tread < stair.risers(); ++tread) {
        const Nosing& next = stair.nosing(tread + 1);
        const double back = next.x + next.projection;
        deepest = std::fmax(deepest, stair.line->at(back) - surface_height(stair, tread, back));
    }
    return deepest;
}

/// Whether pickets beside treads reach down past what is beside each; past every tread where it is not known which.
bool feet_reach(const PicketStand& stand, const SectionChoices& choices, std::vector<Finding>& findings) {
    if (standing_of(stand) != Standing::beside_treads || !pickets_in(stand).past) return true;
    const Reading& past = pickets_in(stand).past->lower;
    double short_by = stand.around.placed() ? 0 : deepest_tread(stand) - past;
    if (stand.around.placed())
        for (const double centre : layout_of(stand, choices).layout.centres)
            for (const double side : {-0.5, 0.5}) {
                const StairShape& stair = *stand.around.treads();
                const Vector at = stand.line.at(centre + side * pickets_in(stand).width);
                short_by =
                    std::fmax(short_by, at.z() - past - surface_height(stair, tread_under(stair, at.x()), at.x()));
            }
    if (!less_than(0, short_by, stand.levels.upper_top)) return true;
    findings.push_back({Trouble::foot_above_tread, past.place, {past, short_by}, place_of(stand)});
    return false;
}

/// Says where feet of pickets on the side of a rail with a lower group reach down past what is walked on: there it has
/// to be out of their way.
void note_feet(const PicketStand& stand, const Layout& layout, std::vector<Finding>& findings) {
    const std::optional<RailSide> beside = picket_room(stand, {}).beside;
    if (!beside || !stand.levels.has_lower || layout.centres.empty()) return;
    const RailLine& line = stand.line;
    const bool on_stair = stand.around.treads() && line.slope != 0;
    double below = 0;
    for (const double centre : {layout.centres.front(), layout.centres.back()}) {
        const double surface = on_stair ? line.at(centre).z() : line.floor_height(centre);
        below = std::fmax(below, surface - line.at(centre, *beside->foot).z());
    }
    if (less_than(0, below, stand.levels.upper_top))
        findings.push_back({Trouble::feet_below_surface, place_of(stand), {below}, {}});
}

/// What a crew should know of the gaps that pickets on treads leave.
void note_gaps(const PicketStand& stand, double max_gap, const Pickets& pickets, std::vector<Finding>& findings) {
    const TreadRoom room = tread_room(stand);
    const auto cure = [&] { return double(per_tread_for_ends(room, max_gap, pickets.per_tread + 1).value_or(0)); };
    for (const End end : both_ends) {
        const double gap = end == End::from ? pickets.from_gap : pickets.to_gap;
        if (no_more_than(gap, max_gap)) continue;
        findings.push_back({Trouble::gap_at_post_too_wide,
                            place_of(stand),
                            {gap, max_gap, cure(), gap - max_gap},
                            {},
                            -1,
                            static_cast<int>(index_of(end))});
    }
    const double between = laid_out_on_treads(room, pickets.per_tread).widest_between(pickets.width);
    if (no_more_than(between, max_gap)) return;
    const double fewest = double(fewest_per_tread(room, max_gap).value_or(0));
    findings.push_back(
        {Trouble::gap_between_too_wide, place_of(stand), {between, max_gap, fewest, double(pickets.per_tread)}, {}});
}

/// What a crew should know of the balls that pass between pickets on treads.
void note_balls(const PicketStand& stand, double max_sphere, const TreadLayout& layout,
                std::vector<Finding>& findings) {
    const GapBalls balls = balls_of(stand, layout.layout);
    if (less_than(balls.largest(), max_sphere)) return;
    const OnTreadsBalls search(stand, max_sphere);
    for (const End end : both_ends) {
        const int index = static_cast<int>(index_of(end));
        const double ball = balls.at_post[static_cast<std::size_t>(index)];
        if (less_than(ball, max_sphere)) continue;
        findings.push_back({Trouble::ball_at_post,
                            place_of(stand),
                            {ball, max_sphere, double(search.between_and_at_posts.value_or(0))},
                            {},
                            -1,
                            index});
    }
    if (less_than(balls.between, max_sphere)) return;
    findings.push_back({Trouble::ball_between,
                        place_of(stand),
                        {balls.between, max_sphere, double(search.between_alone.value_or(0)), double(layout.per_tread)},
                        {}});
}

/// What a crew should know of the gaps that a fixed pitch leaves.
void note_pitch(const PicketStand& stand, const PicketLimit& limit, const Pickets& pickets, const Layout& layout,
                std::vector<Finding>& findings) {
    const Place place = place_of(stand);
    const double most = limit.reading;
    if (limit.on == PicketLimit::On::gap) {
        if (pickets.gap && !no_more_than(*pickets.gap, most))
            findings.push_back({Trouble::pitch_gap_too_wide, place, {*pickets.gap, most}, {}});
        for (const End end : both_ends) {
            const double gap = end == End::from ? pickets.from_gap : pickets.to_gap;
            if (no_more_than(gap, most)) continue;
            findings.push_back(
                {Trouble::pitch_end_too_wide, place, {gap, most, gap - most}, {}, -1, static_cast<int>(index_of(end))});
        }
        return;
    }
    const GapBalls balls = balls_of(stand, layout);
    if (!less_than(balls.between, most))
        findings.push_back({Trouble::pitch_ball_between, place, {balls.between, most}, {}});
    for (const int end : {0, 1})
        if (const double ball = balls.at_post[static_cast<std::size_t>(end)]; !less_than(ball, most))
            findings.push_back({Trouble::ball_at_post, place, {ball, most, 0}, {}, -1, end});
}

void note_centre(const PicketStand& stand, std::vector<Finding>& findings) {
    const std::optional<CentreWish>& own = stand.task.section.centre;
    if (own && standing_of(stand) == Standing::on_treads)
        findings.push_back({Trouble::centre_without_effect, own->place, {1}, {}});
}

}  // namespace

bool pickets_fit(const PicketStand& stand, const SectionChoices& choices, std::vector<Finding>& findings) {
    if (!is_turned(stand)) return feet_reach(stand, choices, findings);
    const Layout layout = layout_of(stand, choices).layout;
    const std::optional<double> level = turnings_of(stand, layout);
    if (!level || standing_of(stand) == Standing::heights_unknown) return true;
    return trims_fit(picket_room(stand, {}), layout, *level, place_of(stand), findings);
}

bool choose_pickets(const PicketStand& stand, SectionChoices& choices, std::vector<Finding>& findings) {
    if (is_turned(stand) && standing_of(stand) == Standing::heights_unknown && !pickets_in(stand).upper_block) {
        findings.push_back({Trouble::turning_height_unknown, place_of(stand), {}, pickets_in(stand).place});
        return false;
    }
    return welds_fit(stand, findings) && bores_fit(stand, findings) && heads_fit(stand, findings) &&
           choose_count(stand, choices, findings) && pickets_fit(stand, choices, findings);
}

std::optional<SpacedSection> spaced_section(const PicketStand& stand) {
    const std::optional<PicketLimit> limit = stand.task.picket_limit();
    if (!limit || pickets_in(stand).any_pitch() || standing_of(stand) == Standing::on_treads) return std::nullopt;
    const std::optional<int> fewest = limit->on == PicketLimit::On::gap ? fewest_by_gap(stand, limit->reading)
                                                                        : fewest_for_ball(stand, limit->reading).count;
    return fewest ? std::optional(with_fewest(stand, *limit, *fewest)) : std::nullopt;
}

Pickets measured_pickets(const PicketStand& stand, const SectionChoices& choices, const std::vector<Member>& members,
                         std::vector<Finding>& findings) {
    const TreadLayout layout = layout_of(stand, choices);
    const Pickets pickets = pickets_of(picket_room(stand, members), layout.layout, layout.feet, layout.per_tread);
    note_centre(stand, findings);
    note_feet(stand, layout.layout, findings);
    const std::optional<PicketLimit> limit = stand.task.picket_limit();
    if (!limit) return pickets;
    if (pickets_in(stand).any_pitch()) {
        note_pitch(stand, *limit, pickets, layout.layout, findings);
        return pickets;
    }
    if (standing_of(stand) != Standing::on_treads) return pickets;
    if (limit->on == PicketLimit::On::gap)
        note_gaps(stand, limit->reading, pickets, findings);
    else
        note_balls(stand, limit->reading, layout, findings);
    return pickets;
}

}  // namespace rakewright
