#include "picket_stand.hpp"

#include <algorithm>
#include <cmath>

#include "measure/compare.hpp"

namespace rakewright {
namespace {

/// What a layout's openings are measured with.
template <class Measure>
auto with_openings(const PicketStand& stand, const Layout& layout, const std::vector<Upright>& feet,
                   const Measure& measure) {
    const std::optional<double> level = turnings_of(stand, layout);
    const Silhouette silhouette = level ? silhouette_of(pickets_in(stand), *level) : Silhouette();
    const OpeningRoom room{stand.line,
                           stand.levels,
                           stand.around.treads(),
                           stand.around.placed(),
                           stand.around.closed_string,
                           level ? &silhouette : nullptr,
                           stand.around.string_above,

                           standing_of(stand) == Standing::beside_treads,
                           feet};
    return measure(room, layout, pickets_in(stand).width);
}

/// Looks for the fewest pickets, equally spaced, through which no ball of the limit passes.
class BetweenBalls {
 public:
    BetweenBalls(const PicketStand& stand, double limit) : stand_(stand), limit_(limit) {}

    std::optional<int> fewest() {
        const PicketSpan span = span_of(stand_);
        for (const int count : {0, 1})
            if (goes_in(count) && stops(count)) return count;
        // A ball as wide as the gap between two passes, unless it is too high: then it passes without any.
        std::optional<int> start = fewest_between(span, limit_);
        while (start && !less_than(equal_gap(span, *start), limit_)) ++*start;
        smallest_ = INFINITY;
        if (!start) return std::nullopt;
        int count = std::max(2, *start), most = count - 1;
        while (most < most_pickets && goes_in(most + 1)) ++most;
        // Where an opening between fewer has room for all that one between more has.
        const bool fewer_leave_more =
            stand_.line.slope == 0 || (!is_turned(stand_) && standing_of(stand_) != Standing::beside_treads);
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
        const PicketSpan span = span_of(stand_);
        return no_more_than(0, equal_gap(span, count), span.clear);
    }

    bool stops(int count) {
        const double ball = balls_of(stand_, laid_out(stand_, count)).largest();
        smallest_ = std::fmin(smallest_, ball);
        return less_than(ball, limit_);
    }

    const PicketStand& stand_;
    double limit_;
    double smallest_ = INFINITY;
};

/// +1 where pickets stand on the left side of the rail, -1 on its right.
double side_of(const SectionTask& task) {
    const std::optional<NamedSide>& own = task.section.picket_side;
    const std::optional<NamedSide>& side = own ? own : task.build.pickets->side;
    return !side || side->left ? 1 : -1;
}

/// Half the width of the member that the pickets lie on the side of.
double half_of_rail(const SectionTask& task) { return task.build.upper.back().width / 2; }

/// What the pickets lie on and reach to, where that is the side of the rail.
std::optional<RailSide> rail_side(const PicketStand& stand) {
    const PicketBuild& build = pickets_in(stand);
    if (!build.on_face()) return std::nullopt;
    const PicketPast past = build.past.value_or(PicketPast());
    const Levels& levels = stand.levels;
    const double deep = stand.task.build.upper.back().depth * stand.line.lengthened();
    RailSide side{side_of(stand.task), half_of_rail(stand.task), levels.upper_underside + deep + past.upper, {}, {}};
    side.past = levels.has_lower                                ? FootPast::lower_rail
                : levels.on_string                              ? FootPast::string
                : standing_of(stand) == Standing::beside_treads ? FootPast::nosing_line
                                                                : FootPast::floor;
    if (side.past != FootPast::floor)
        side.foot = (levels.has_lower ? levels.lower_underside : levels.lower_top) - past.lower;
    return side;
}

}  // namespace

PicketStand stand_of(const SectionTask& task, const Surroundings& around, const RailLine& line, const Levels& levels,
                     const std::array<double, 2>& faces) {
    PicketStand stand{task, around, line, levels, faces};
    if (!task.build.pickets->on_face()) return stand;
    RailLine side = line;
    side.origin += side_of(task) * half_of_rail(task) * Vector(-line.y, line.x, 0);
    // A side that passes a round post by is refused where its member is cut.
    stand.faces = {face_along(side, End::from, levels.middle()).value_or(faces[0]),
                   face_along(side, End::to, levels.middle()).value_or(faces[1])};
    return stand;
}

Standing standing_of(const PicketStand& stand) {
    if (stand.levels.parallel()) return Standing::between_groups;
    if (stand.line.slope == 0 || !stand.around.treads()) return Standing::on_floor;
    if (pickets_in(stand).on_face()) return Standing::beside_treads;
    return stand.around.placed() ? Standing::on_treads : Standing::heights_unknown;
}

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
            stand.task.tape,
            rail_side(stand)};
}

Layout laid_out(const PicketStand& stand, const Spaced& spaced) {
    return laid_out_between(stand.faces[0], stand.faces[1], span_of(stand), spaced);
}

TreadLayout layout_of(const PicketStand& stand, const SectionChoices& choices) {
    if (standing_of(stand) == Standing::on_treads) return laid_out_on_treads(tread_room(stand), choices.per_tread);
    return {laid_out(stand, {choices.pickets, choices.between}), {}};
}

std::optional<double> turnings_of(const PicketStand& stand, const Layout& layout) {
    if (!is_turned(stand)) return std::nullopt;
    return turning_level(picket_room(stand, {}), layout);
}

GapBalls balls_of(const PicketStand& stand, const Layout& layout, double enough) {
    return with_openings(stand, layout, {}, [&](const OpeningRoom& room, const Layout& pickets, double width) {
        return balls_through_gaps(room, pickets, width, enough);
    });
}

FewestForBall fewest_for_ball(const PicketStand& stand, double limit) {
    BetweenBalls search(stand, limit);
    const std::optional<int> count = search.fewest();
    return {count, search.smallest()};
}

OnTreadsBalls::OnTreadsBalls(const PicketStand& stand, double limit) {
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

std::vector<Opening> openings_of_pickets(const PicketStand& stand, const SectionChoices& choices,
                                         const std::vector<Upright>& feet) {
    return with_openings(stand, layout_of(stand, choices).layout, feet, openings_of);
}

}  // namespace rakewright
