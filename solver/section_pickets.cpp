#include "section_pickets.hpp"

#include <algorithm>
#include <cmath>

#include "measure/compare.hpp"

namespace rakewright {
namespace {

constexpr std::array both_ends{End::from, End::to};

/// How pickets stand in this section.
enum class Standing { between_groups, on_floor, on_treads, heights_unknown };

Standing standing_of(const PicketStand& stand) {
    if (stand.levels.parallel()) return Standing::between_groups;
    if (stand.line.slope == 0 || !stand.around.treads()) return Standing::on_floor;
    return stand.around.placed() ? Standing::on_treads : Standing::heights_unknown;
}

const PicketBuild& pickets_in(const PicketStand& stand) { return *stand.task.build.pickets; }
const Place& place_of(const PicketStand& stand) { return stand.task.section.id.place; }
bool is_turned(const PicketStand& stand) { return pickets_in(stand).shape == PicketShape::turned; }

TreadRoom tread_room(const PicketStand& stand) {
    return {*stand.around.stair,    stand.line,     stand.levels.upper_underside,
            stand.faces[0],         stand.faces[1], pickets_in(stand).width,
            pickets_in(stand).depth};
}

PicketRoom picket_room(const PicketStand& stand, const std::vector<Member>& members) {
    return {pickets_in(stand),
            stand.line,
            stand.levels,
            members,
            stand.around.placed() ? stand.around.treads() : nullptr,
            standing_of(stand) != Standing::heights_unknown,
            stand.task.tape};
}

Layout between(const PicketStand& stand, int count) {
    return laid_out_between(stand.faces[0], stand.faces[1], pickets_in(stand).width, count);
}

TreadLayout layout_of(const PicketStand& stand, const SectionChoices& choices) {
    if (standing_of(stand) == Standing::on_treads) return laid_out_on_treads(tread_room(stand), choices.per_tread);
    return {between(stand, choices.pickets), {}};
}

/// The level of the turnings; none of square pickets.
std::optional<double> turnings_of(const PicketStand& stand, const Layout& layout) {
    if (!is_turned(stand)) return std::nullopt;
    return turning_level(picket_room(stand, {}), layout);
}

/// What a layout's openings are measured with.
template <class Measure>
auto with_openings(const PicketStand& stand, const Layout& layout, const Measure& measure) {
    const std::optional<double> level = turnings_of(stand, layout);
    const Silhouette silhouette = level ? silhouette_of(pickets_in(stand), *level) : Silhouette();
    const OpeningRoom room{stand.line,
                           stand.levels,
                           stand.around.treads(),
                           stand.around.placed(),
                           stand.around.closed_string,
                           level ? &silhouette : nullptr};
    return measure(room, layout, pickets_in(stand).width);
}

GapBalls balls_of(const PicketStand& stand, const Layout& layout, double enough = INFINITY) {
    return with_openings(stand, layout, [&](const OpeningRoom& room, const Layout& pickets, double width) {
        return balls_through_gaps(room, pickets, width, enough);
    });
}

/// Looks for the fewest pickets, equally spaced, through which no ball of the limit passes.
class BetweenBalls {
 public:
    BetweenBalls(const PicketStand& stand, double limit) : stand_(stand), limit_(limit) {}

    std::optional<int> fewest() {
        const double clear = stand_.faces[1] - stand_.faces[0], width = pickets_in(stand_).width;
        for (const int count : {0, 1})
            if (goes_in(count) && stops(count)) return count;
        // A ball as wide as the gap between two passes, unless it is too high: then it passes without any.
        std::optional<int> start = fewest_between(clear, width, limit_);
        while (start && !less_than(equal_gap(clear, width, *start), limit_)) ++*start;
        smallest_ = INFINITY;
        if (!start) return std::nullopt;
        int count = std::max(2, *start), most = count - 1;
        while (most < most_pickets && goes_in(most + 1)) ++most;
        // Where an opening between fewer has room for all that one between more has.
        const bool fewer_leave_more = !is_turned(stand_) || stand_.line.slope == 0;
        if (!fewer_leave_more) {
            while (count <= most && !stops(count)) ++count;
            return count <= most ? std::optional(count) : std::nullopt;
        }
        if (most < count || stops(count)) return most < count ? std::nullopt : std::optional(count);
        if (!stops(most)) return std::nullopt;
        int stopping = most;
        while (stopping - count > 1) {
            const int middle = (count + stopping) / 2;
            (stops(middle) ? stopping : count) = middle;
        }
        return stopping;
    }

    /// Of the balls that pass between more than one.
    double smallest() const { return smallest_; }

 private:
    bool goes_in(int count) const {
        const double clear = stand_.faces[1] - stand_.faces[0];
        return no_more_than(0, equal_gap(clear, pickets_in(stand_).width, count), clear);
    }

    bool stops(int count) {
        const double ball = balls_of(stand_, between(stand_, count)).largest();
        smallest_ = std::fmin(smallest_, ball);
        return less_than(ball, limit_);
    }

    const PicketStand& stand_;
    double limit_;
    double smallest_ = INFINITY;
};

/// Looks for pickets on each tread through which no ball of the limit passes.
struct OnTreadsBalls {
    std::optional<int> between_and_at_posts, between_alone;
    int most = 0;  // that do not reach past their nosing

    OnTreadsBalls(const PicketStand& stand, double limit) {
        for (int k = 1; k <= most_per_tread && !between_and_at_posts; ++k) {
            const TreadLayout layout = laid_out_on_treads(tread_room(stand), k);
            if (layout.past_nosing != 0) break;  // more of them only reach farther
            most = k;
            // The posts alone come first: there are but two of them.
            const bool at_posts = less_than(balls_of(stand, layout.layout, 0).largest(), limit);
            if (between_alone && !at_posts) continue;
            if (!less_than(balls_of(stand, layout.layout, limit).between, limit)) continue;
            if (!between_alone) between_alone = k;
            if (at_posts) between_and_at_posts = k;
        }
    }
};

bool choose_by_gap(const PicketStand& stand, const Reading& max_gap, SectionChoices& choices,
                   std::vector<Finding>& findings) {
    const PicketBuild& build = pickets_in(stand);
    if (standing_of(stand) != Standing::on_treads) {
        const double clear = stand.faces[1] - stand.faces[0];
        const std::optional<int> count = fewest_between(clear, build.width, max_gap);
        if (!count) {
            findings.push_back({Trouble::too_many_pickets, max_gap.place, {double(most_pickets)}, {}});
            return false;
        }
        choices.pickets = *count;
        if (no_more_than(0, equal_gap(clear, build.width, *count), clear)) return true;
        findings.push_back({Trouble::no_room_for_pickets, place_of(stand), {clear, double(*count)}, max_gap.place});
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
        BetweenBalls search(stand, max_sphere);
        const std::optional<int> fewest = search.fewest();
        if (!fewest) return none(search.smallest());
        choices.pickets = *fewest;
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

bool choose_count(const PicketStand& stand, SectionChoices& choices, std::vector<Finding>& findings) {
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
    const PicketLimit limit = stand.task.picket_limit();
    return limit.on == PicketLimit::On::gap ? choose_by_gap(stand, limit.reading, choices, findings)
                                            : choose_by_sphere(stand, limit.reading, choices, findings);
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
                            end == End::from ? 0 : 1});
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
        const int index = end == End::from ? 0 : 1;
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

}  // namespace

bool choose_pickets(const PicketStand& stand, SectionChoices& choices, std::vector<Finding>& findings) {
    if (is_turned(stand) && standing_of(stand) == Standing::heights_unknown && !pickets_in(stand).upper_block) {
        findings.push_back({Trouble::turning_height_unknown, place_of(stand), {}, pickets_in(stand).place});
        return false;
    }
    if (!choose_count(stand, choices, findings)) return false;
    if (!is_turned(stand)) return true;
    const Layout layout = layout_of(stand, choices).layout;
    const std::optional<double> level = turnings_of(stand, layout);
    if (!level || standing_of(stand) == Standing::heights_unknown) return true;
    return trims_fit(picket_room(stand, {}), layout, *level, place_of(stand), findings);
}

Pickets measured_pickets(const PicketStand& stand, const SectionChoices& choices, const std::vector<Member>& members,
                         std::vector<Finding>& findings) {
    const TreadLayout layout = layout_of(stand, choices);
    const Pickets pickets = pickets_of(picket_room(stand, members), layout.layout, layout.feet, layout.per_tread);
    if (standing_of(stand) != Standing::on_treads) return pickets;
    const PicketLimit limit = stand.task.picket_limit();
    if (limit.on == PicketLimit::On::gap)
        note_gaps(stand, limit.reading, pickets, findings);
    else
        note_balls(stand, limit.reading, layout, findings);
    return pickets;
}

std::vector<Opening> openings_of_pickets(const PicketStand& stand, const SectionChoices& choices) {
    return with_openings(stand, layout_of(stand, choices).layout, openings_of);
}

}  // namespace rakewright
