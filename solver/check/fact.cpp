#include "fact.hpp"

#include <algorithm>
#include <cmath>

#include "../measure/compare.hpp"
#include "telling.hpp"

namespace rakewright {
namespace {

using Q = Quantity;

/// The largest difference in a row of readings, and the two that differ so: of any two, or of neighbours.
struct Difference {
    double size = 0;
    std::size_t larger = 0, smaller = 0;
};

Difference largest_difference(const std::vector<double>& values) {
    const auto [least, most] = std::minmax_element(values.begin(), values.end());
    return {*most - *least, static_cast<std::size_t>(most - values.begin()),
            static_cast<std::size_t>(least - values.begin())};
}

Difference largest_step(const std::vector<double>& values) {
    Difference largest{-1, 0, 0};
    for (std::size_t i = 1; i < values.size(); ++i) {
        const double size = std::fabs(values[i] - values[i - 1]);
        if (size <= largest.size) continue;
        largest = values[i] > values[i - 1] ? Difference{size, i, i - 1} : Difference{size, i - 1, i};
    }
    return largest;
}

class Facts {
 public:
    Facts(const Job& job, const Solution& solution) : job_(job), solution_(solution) {}

    std::vector<Subject> all() && {
        for (std::size_t i = 0; i < job_.stairs.size(); ++i) add_stair(static_cast<int>(i));
        for (std::size_t i = 0; i < job_.sections.size(); ++i) add_section(i);
        for (const Handrail& handrail : job_.handrails) add_handrail(handrail);
        for (const FoundRail& found : job_.as_found) add_found(found);
        return std::move(subjects_);
    }

 private:
    Subject& begin(const char* kind, const Id& id, RulePlace place, int stair) {
        Subject& subject = subjects_.emplace_back();
        subject.words = std::string(kind) + ' ' + id.name;
        subject.place = place;
        subject.stair = stair;
        return subject;
    }

    /// Names both ends, unless they are alike.
    void tell_difference(Subject& subject, Q quantity, const char* word, const std::vector<double>& values,
                         const Difference& difference) const {
        const double larger = values[difference.larger], smaller = values[difference.smaller];
        const double scale = solution_.stairs[static_cast<std::size_t>(subject.stair)].rise_total();
        if (same(larger, smaller, scale)) return tell(subject, quantity, {}, 0);
        const auto named = [&](std::size_t i, double value) {
            return numbered(word, static_cast<int>(i) + 1) + ": " + reading_words(value, job_.units);
        };
        tell(subject, quantity, named(difference.larger, larger) + ", " + named(difference.smaller, smaller),
             difference.size);
    }

    void tell_row(Subject& subject, const char* word, const std::vector<double>& values, Q each, Q variation,
                  std::optional<Q> step) const {
        for (std::size_t i = 0; i < values.size(); ++i)
            tell(subject, each, numbered(word, static_cast<int>(i) + 1), values[i]);
        if (values.size() < 2) return;
        tell_difference(subject, variation, word, values, largest_difference(values));
        if (step) tell_difference(subject, *step, word, values, largest_step(values));
    }

    void add_stair(int index) {
        const Stair& stair = job_.stairs[static_cast<std::size_t>(index)];
        const StairShape& shape = solution_.stairs[static_cast<std::size_t>(index)];
        Subject& subject = begin("stair", stair.id, RulePlace::stair, index);
        subject.is_stair = true;
        if (stair.drop) subject.drop = *stair.drop;
        std::vector<double> rises, runs, projections;
        for (int i = 1; i <= shape.risers(); ++i) {
            rises.push_back(shape.nosing(i).z - (i > 1 ? shape.nosing(i - 1).z : 0));
            if (i > 1) runs.push_back(shape.nosing(i).x - shape.nosing(i - 1).x);
            projections.push_back(shape.nosing(i).projection);
        }
        tell_row(subject, "riser", rises, Q::rise, Q::rise_variation, Q::rise_step);
        tell_row(subject, "tread", runs, Q::run, Q::run_variation, Q::run_step);
        tell_nosings(subject, stair, projections);
        for (std::size_t i = 0; i < runs.size(); ++i)
            tell(subject, Q::two_rises_and_run, numbered("step", static_cast<int>(i) + 1), 2 * rises[i] + runs[i]);
        if (shape.line) tell(subject, Q::rake, {}, degrees(angle_of(shape.line->slope)));
        tell(subject, Q::flight_rise, {}, shape.rise_total());
        tell(subject, Q::risers, {}, shape.risers());
        tell(subject, Q::clear_width, stair.clear_width);
        tell(subject, Q::headroom, stair.headroom);
        tell(subject, Q::drop, stair.drop);
        tell_sides(subject, index);
        subject.tells.push_back(Q::tread_slope);
        if (stair.wash.place.size > 0 || stair.wash.angle.rise != 0)
            tell(subject, Q::tread_slope, {}, slope(stair.wash.angle));
        for (const OpenRiser& riser : shape.open_risers) {
            tell(subject, Q::open_riser, numbered("riser", riser.number), riser.sphere);
            subject.facts.back().over_ground = riser_over_ground(shape, riser.number, subject.drop);
        }
    }

    /// A projection that nobody read is no figure, though the geometry takes it as none; without all of them the
    /// variation is not known.
    void tell_nosings(Subject& subject, const Stair& stair, const std::vector<double>& projections) const {
        const bool one_for_all = stair.nosing.place.size > 0 || stair.nosing > 0;
        std::vector<int> missing;
        for (std::size_t i = 0; i < projections.size(); ++i) {
            const int number = static_cast<int>(i) + 1;
            if (one_for_all || (i < stair.steps.size() && stair.steps[i].nosing))
                tell(subject, Q::nosing_projection, numbered("nosing", number), projections[i]);
            else
                missing.push_back(number);
        }
        if (!missing.empty()) {
            for (const Q quantity : {Q::nosing_projection, Q::nosing_variation})
                leave_untold(subject, quantity, numbered("nosing", missing),
                             "`nosing` of the stair, or of each of its `steps`");
            return;
        }
        if (projections.size() > 1)
            tell_difference(subject, Q::nosing_variation, "nosing", projections, largest_difference(projections));
    }

    /// The rails for hands at a stair: how many there are, on which sides, and those that do not say.
    struct HandrailSides {
        int rails = 0;
        bool left = false, right = false;
        std::string unsaid;
    };

    HandrailSides handrails_at(int stair) const {
        HandrailSides sides;
        const auto add = [&](const Id& id, const std::optional<NamedSide>& side) {
            ++sides.rails;
            if (side)
                (side->left ? sides.left : sides.right) = true;
            else
                sides.unsaid += (sides.unsaid.empty() ? "" : ", ") + id.name;
        };
        for (const Handrail& handrail : job_.handrails)
            if (handrail.stair.index == stair) add(handrail.id, handrail.side);
        for (const FoundRail& found : job_.as_found)
            if (found.stair.index == stair && found.serves != FoundRail::Serves::guard) add(found.id, found.side);
        return sides;
    }

    /// One rail is on one side, whichever that is; of two that do not both say, nobody knows whether they are on one.
    void tell_sides(Subject& subject, int stair) const {
        const HandrailSides sides = handrails_at(stair);
        if (sides.rails == 0) {
            subject.tells.push_back(Q::handrail_sides);
        } else if (sides.unsaid.empty() || sides.rails == 1 || (sides.left && sides.right)) {
            tell(subject, Q::handrail_sides, {}, sides.left && sides.right ? 2 : 1);
        } else {
            leave_untold(subject, Q::handrail_sides, {}, "`side` of " + sides.unsaid);
        }
    }

    void add_section(std::size_t index) {
        const Section& section = job_.sections[index];
        const SectionResult& result = solution_.sections[index];
        const Build& build = job_.builds[static_cast<std::size_t>(section.build.index)];
        const int stair = stair_of(job_, section);
        const bool raked = result.raked() && stair >= 0;  // a rail along a floor that falls is on a level
        Subject& subject = begin("section", section.id, raked ? RulePlace::stair : RulePlace::level, stair);
        subject.drop = drop_beside(job_, section.drop, stair);
        subject.tells = {Q::guard_height, Q::picket_opening, Q::guard_opening_above};
        tell(subject, Q::side_gap, section.side_gap);
        const bool is_handrail = raked && handrails_at(stair).rails == 0;
        subject.is_guard = true;
        subject.is_handrail = is_handrail;
        if (is_handrail) subject.tells.insert(subject.tells.end(), {Q::handrail_height, Q::guard_top_height});
        const auto height = [&](const std::string& where, double value) {
            tell(subject, Q::guard_height, where, value);
            if (!is_handrail) return;
            tell(subject, Q::handrail_height, where, value);
            tell(subject, Q::guard_top_height, where, value);
        };
        for (const OverNosing& over : result.over_nosings) height(numbered("nosing", over.nosing), over.upper.top);
        if (result.over_nosings.empty()) {
            const double over_line = section.height ? *section.height : build.height;
            if (!raked) height({}, over_line);
            // Where the posts have no place, the rail may be over any of the nosings.
            for (int i = 1; raked && i <= solution_.stairs[static_cast<std::size_t>(stair)].risers(); ++i)
                height(numbered("nosing", i),
                       over_line - solution_.stairs[static_cast<std::size_t>(stair)].nosing(i).off_line);
        }
        if (stair >= 0 && over_unknown_string(section, result, build, job_.stairs[static_cast<std::size_t>(stair)]))
            leave_untold(subject, Q::picket_opening, "under the lower rail, over the closed string",
                         "`string_above` of the stair");
        tell_openings(subject, result, stair);
        if (!is_handrail) return;
        const MemberSize& top = build.upper.front();
        subject.assumed = "no handrail is named at this stair: the " + top.name + " is judged as one";
        tell_rectangle(subject, top.width, top.depth);
        subject.tells.insert(subject.tells.end(), {Q::extension_top, Q::extension_bottom_treads});
    }

    void tell_openings(Subject& subject, const SectionResult& result, int stair) const {
        const int risers = stair < 0 ? 0 : solution_.stairs[static_cast<std::size_t>(stair)].risers();
        for (const Opening& opening : result.openings) {
            if (opening.kind == Opening::Kind::picket_gap || opening.kind == Opening::Kind::post_gap) {
                const double wider = result.pickets ? widened_by_marks(*result.pickets, opening) : 0;
                const std::string where =
                    opening.end ? std::string("at the ") + (*opening.end == End::from ? "from" : "to") + " post"
                                : "between pickets";
                tell(subject, Q::picket_opening, where, opening.sphere + wider);
                tell(subject, Q::guard_opening_above, where, opening.sphere + wider);
                continue;
            }
            const bool over_string = opening.kind == Opening::Kind::over_string;
            const UnderRail kind = under_rail_at(opening.tread, risers, over_string);
            const std::string where = over_string           ? ", over the closed string"
                                      : !opening.tread      ? ""
                                      : *opening.tread == 0 ? ", over the floor at the foot"
                                                            : ", " + numbered("tread", *opening.tread);
            if (kind == UnderRail::triangle) add_telling(subject, Q::under_rail_opening);
            tell_under_rail(subject, kind, "under the lower rail" + where, opening.sphere, Known::exactly);
        }
    }

    static bool over_unknown_string(const Section& section, const SectionResult& result, const Build& build,
                                    const Stair& stair) {
        const bool right = section.side && !section.side->left;
        return result.raked() && !build.lower.empty() && !stair.string_above &&
               (right ? stair.strings.right : stair.strings.left) == StringKind::closed;
    }

    static void add_telling(Subject& subject, Q quantity) {
        if (std::find(subject.tells.begin(), subject.tells.end(), quantity) == subject.tells.end())
            subject.tells.push_back(quantity);
    }

    /// How much wider than computed the marks leave this opening.
    static double widened_by_marks(const Pickets& pickets, const Opening& opening) {
        if (!opening.end) return pickets.widened.between;
        return *opening.end == End::from ? pickets.widened.at_from : pickets.widened.at_to;
    }

    void add_handrail(const Handrail& handrail) {
        const StairShape& shape = solution_.stairs[static_cast<std::size_t>(handrail.stair.index)];
        Subject& subject = begin("handrail", handrail.id, RulePlace::stair, handrail.stair.index);
        subject.drop = drop_beside(job_, std::nullopt, handrail.stair.index);
        subject.is_handrail = true;
        subject.tells.push_back(Q::handrail_height);
        for (int i = 1; i <= shape.risers(); ++i)
            tell(subject, Q::handrail_height, numbered("nosing", i), handrail.height - shape.nosing(i).off_line);
        tell_wall(subject, handrail.clearance, tell_profile(subject, handrail.profile));
        tell_extension(subject, handrail.extend, shape);
    }

    void add_found(const FoundRail& found) {
        const bool over_stair = found.stair.named();
        Subject& subject =
            begin("as found", found.id, over_stair ? RulePlace::stair : RulePlace::level, found.stair.index);
        subject.drop = drop_beside(job_, found.drop, found.stair.index);
        tell_found(subject, found,
                   over_stair ? &solution_.stairs[static_cast<std::size_t>(found.stair.index)] : nullptr, job_.units);
    }

    const Job& job_;
    const Solution& solution_;
    std::vector<Subject> subjects_;
};

}  // namespace

bool Subject::is(SubjectKind kind) const {
    switch (kind) {
        case SubjectKind::stair: return is_stair;
        case SubjectKind::guard: return is_guard;
        case SubjectKind::handrail: return is_handrail;
    }
    return false;
}

std::vector<Subject> subjects_of(const Job& job, const Solution& solution) { return Facts(job, solution).all(); }

}  // namespace rakewright
