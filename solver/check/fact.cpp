#include "fact.hpp"

#include <algorithm>
#include <cmath>

#include "../measure/compare.hpp"
#include "../rule/opening_limits.hpp"

namespace rakewright {
namespace {

using Q = Quantity;

std::string numbered(const char* word, int number) { return std::string(word) + ' ' + std::to_string(number); }

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
    Facts(const Job& job, const Solution& solution) : job_(job), solution_(solution), tape_(tape_of(job)) {}

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

    static void tell(Subject& subject, Q quantity, std::string where, double value, Known known = Known::exactly) {
        subject.facts.push_back({quantity, subject.place, std::move(where), value, known});
    }

    static void tell(Subject& subject, Q quantity, const std::optional<Reading>& reading) {
        subject.tells.push_back(quantity);
        if (reading) tell(subject, quantity, {}, *reading);
    }

    std::string reading(double value) const { return words_of_length(value, tape_); }

    void tell_difference(Subject& subject, Q quantity, const char* word, const std::vector<double>& values,
                         const Difference& difference) const {
        const auto named = [&](std::size_t i) {
            return numbered(word, static_cast<int>(i) + 1) + ": " + reading(values[i]);
        };
        tell(subject, quantity, named(difference.larger) + ", " + named(difference.smaller), difference.size);
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
        subject.tells.insert(subject.tells.end(), {Q::nosing_projection, Q::nosing_variation});
        if (nosings_given(stair))
            tell_row(subject, "nosing", projections, Q::nosing_projection, Q::nosing_variation, std::nullopt);
        for (std::size_t i = 0; i < runs.size(); ++i)
            tell(subject, Q::two_rises_and_run, numbered("step", static_cast<int>(i) + 1), 2 * rises[i] + runs[i]);
        if (shape.line) tell(subject, Q::rake, {}, degrees(angle_of(shape.line->slope)));
        tell(subject, Q::flight_rise, {}, shape.rise_total());
        tell(subject, Q::risers, {}, shape.risers());
        tell(subject, Q::clear_width, stair.clear_width);
        tell(subject, Q::headroom, stair.headroom);
        subject.tells.push_back(Q::handrail_sides);
        if (const int sides = sides_with_handrail(index)) tell(subject, Q::handrail_sides, {}, sides);
        subject.tells.push_back(Q::tread_slope);
        if (stair.wash.place.size > 0 || stair.wash.angle.rise != 0)
            tell(subject, Q::tread_slope, {}, slope(stair.wash.angle));
        for (const OpenRiser& riser : shape.open_risers)
            tell(subject, Q::open_riser, numbered("riser", riser.number), riser.sphere);
    }

    /// A projection that nobody read is no figure, though the geometry takes it as none.
    static bool nosings_given(const Stair& stair) {
        return stair.nosing.place.size > 0 || stair.nosing > 0 ||
               std::any_of(stair.steps.begin(), stair.steps.end(), [](const Step& step) { return step.nosing; });
    }

    static bool is_left(const std::optional<NamedSide>& side) { return !side || side->left; }

    int sides_with_handrail(int stair) const {
        bool has[2] = {false, false};
        for (const Handrail& handrail : job_.handrails)
            if (handrail.stair.index == stair) has[is_left(handrail.side)] = true;
        for (const FoundRail& found : job_.as_found)
            if (found.stair.index == stair && found.serves != FoundRail::Serves::guard) has[is_left(found.side)] = true;
        return (has[0] ? 1 : 0) + (has[1] ? 1 : 0);
    }

    void add_section(std::size_t index) {
        const Section& section = job_.sections[index];
        const SectionResult& result = solution_.sections[index];
        const Build& build = job_.builds[static_cast<std::size_t>(section.build.index)];
        const bool raked = result.raked();
        const int stair = stair_of(job_, section);
        Subject& subject = begin("section", section.id, raked ? RulePlace::stair : RulePlace::level, stair);
        subject.drop = drop_beside(job_, section.drop, stair);
        subject.tells = {Q::guard_height, Q::picket_opening, Q::guard_opening_above};
        tell(subject, Q::side_gap, section.side_gap);
        const bool is_handrail = raked && sides_with_handrail(stair) == 0;
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
        if (result.over_nosings.empty()) height({}, section.height ? *section.height : build.height);
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
            if (opening.kind != Opening::Kind::under_rail) {
                const double wider = result.pickets ? widened_by_marks(*result.pickets, opening) : 0;
                const std::string where =
                    opening.end ? std::string("at the ") + (*opening.end == End::from ? "from" : "to") + " post"
                                : "between pickets";
                tell(subject, Q::picket_opening, where, opening.sphere + wider);
                tell(subject, Q::guard_opening_above, where, opening.sphere + wider);
                continue;
            }
            const std::string where = !opening.tread ? "under the lower rail"
                                      : *opening.tread == 0
                                          ? "under the lower rail, over the floor at the foot"
                                          : "under the lower rail, " + numbered("tread", *opening.tread);
            Fact fact = under_rail(opening.tread, risers, where, opening.sphere, Known::exactly);
            if (fact.quantity == Q::under_rail_opening) add_telling(subject, Q::under_rail_opening);
            subject.facts.push_back(std::move(fact));
        }
    }

    static Fact under_rail(std::optional<int> tread, int risers, std::string where, double sphere, Known known) {
        const UnderRail kind = under_rail_at(tread, risers);
        return {kind == UnderRail::triangle ? Q::under_rail_opening : Q::picket_opening,
                kind == UnderRail::level ? RulePlace::level : RulePlace::stair, std::move(where), sphere, known};
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

    static void tell_rectangle(Subject& subject, double width, double depth) {
        subject.tells.insert(subject.tells.end(), {Q::grip_perimeter, Q::grip_width, Q::grip_least});
        tell(subject, Q::grip_perimeter, {}, 2 * (width + depth));
        tell(subject, Q::grip_width, "the diagonal", std::sqrt(width * width + depth * depth));
        tell(subject, Q::grip_least, {}, std::fmin(width, depth));
    }

    /// A grip's facts; its size across, level, for how far the rail stands out.
    static double tell_profile(Subject& subject, const Profile& profile) {
        const CrossSection section = section_of(profile);
        if (is_round(profile)) {
            subject.tells.push_back(Q::grip_diameter);
            tell(subject, Q::grip_diameter, {}, section.width);
        } else if (profile.depth) {
            tell_rectangle(subject, section.width, section.depth);
        } else {
            subject.tells.insert(subject.tells.end(), {Q::grip_perimeter, Q::grip_width, Q::grip_least});
            tell(subject, Q::grip_perimeter, {}, *profile.perimeter);
            tell(subject, Q::grip_width, {}, section.width);
        }
        if (profile.recess) tell_recess(subject, *profile.recess);
        return section.width;
    }

    static void tell_recess(Subject& subject, const Recess& recess) {
        subject.has_recess = true;
        tell(subject, Q::recess_start, {}, recess.start);
        tell(subject, Q::recess_depth, {}, recess.depth);
        tell(subject, Q::recess_reach, {}, recess.reach);
        tell(subject, Q::recess_held, {}, recess.held);
        tell(subject, Q::recess_end, {}, recess.end);
        tell(subject, Q::width_above_recess, {}, recess.width_above);
    }

    void tell_wall(Subject& subject, const std::optional<Reading>& clearance, std::optional<double> across) const {
        tell(subject, Q::wall_clearance, clearance);
        subject.tells.push_back(Q::handrail_projection);
        if (clearance && across) tell(subject, Q::handrail_projection, {}, *clearance + *across);
    }

    void tell_extension(Subject& subject, const Extension& extension) const {
        subject.tells.insert(subject.tells.end(), {Q::extension_top, Q::extension_bottom_treads});
        tell(subject, Q::extension_top, {}, extension.top);
        const StairShape& shape = solution_.stairs[static_cast<std::size_t>(subject.stair)];
        if (shape.risers() > 1) tell(subject, Q::extension_bottom_treads, {}, extension.bottom / shape.nosing(2).x);
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
        tell_extension(subject, handrail.extend);
    }

    void add_found(const FoundRail& found) {
        const bool over_stair = found.stair.named();
        Subject& subject =
            begin("as found", found.id, over_stair ? RulePlace::stair : RulePlace::level, found.stair.index);
        subject.drop = drop_beside(job_, found.drop, found.stair.index);
        const bool is_guard = found.serves != FoundRail::Serves::handrail,
                   is_handrail = found.serves != FoundRail::Serves::guard && over_stair;
        subject.is_guard = is_guard;
        subject.is_handrail = is_handrail;
        if (is_guard) {
            subject.tells.insert(subject.tells.end(), {Q::guard_height, Q::picket_opening, Q::guard_opening_above});
            tell(subject, Q::side_gap, found.side_gap);
            if (over_stair) subject.tells.push_back(Q::under_rail_opening);
        }
        if (is_handrail) subject.tells.push_back(Q::handrail_height);
        if (is_handrail && is_guard) subject.tells.push_back(Q::guard_top_height);
        for (const auto& [where, height] : heights_found(found)) {
            if (is_guard) tell(subject, Q::guard_height, where, height);
            if (is_handrail) tell(subject, Q::handrail_height, where, height);
            if (is_handrail && is_guard) tell(subject, Q::guard_top_height, where, height);
        }
        if (found.widest_gap)
            for (const Q quantity : {Q::picket_opening, Q::guard_opening_above})
                tell(subject, quantity, "the widest gap found", *found.widest_gap);
        for (const Ball& ball : found.balls) tell_ball(subject, ball);
        if (!is_handrail) return;
        std::optional<double> across;
        if (found.profile)
            across = tell_profile(subject, *found.profile);
        else
            subject.tells.push_back(Q::grip_diameter);
        tell_wall(subject, found.clearance, across);
        if (found.extend)
            tell_extension(subject, *found.extend);
        else
            subject.tells.insert(subject.tells.end(), {Q::extension_top, Q::extension_bottom_treads});
    }

    /// Heights where they were read, and at the nosings between two readings by the straight rail between them.
    std::vector<std::pair<std::string, double>> heights_found(const FoundRail& found) const {
        std::vector<std::pair<std::string, double>> heights;
        if (found.height) heights.emplace_back("", *found.height);
        if (!found.stair.named()) return heights;
        const StairShape& shape = solution_.stairs[static_cast<std::size_t>(found.stair.index)];
        std::vector<Numbered> read = found.heights;
        std::sort(read.begin(), read.end(), [](const Numbered& a, const Numbered& b) { return a.number < b.number; });
        for (std::size_t i = 0; i < read.size(); ++i) {
            heights.emplace_back(numbered("nosing", read[i].number), read[i].reading);
            if (i + 1 == read.size()) break;
            const Nosing &low = shape.nosing(read[i].number), &high = shape.nosing(read[i + 1].number);
            const double low_top = low.z + read[i].reading, high_top = high.z + read[i + 1].reading;
            for (int number = read[i].number + 1; number < read[i + 1].number; ++number) {
                const Nosing& nosing = shape.nosing(number);
                const double part = (nosing.x - low.x) / (high.x - low.x);
                heights.emplace_back(numbered("nosing", number) + ", between readings",
                                     low_top + part * (high_top - low_top) - nosing.z);
            }
        }
        return heights;
    }

    void tell_ball(Subject& subject, const Ball& ball) const {
        const Known known = ball.passes ? Known::at_least : Known::under;
        const std::string words = "a ball of " + reading(ball.size) + (ball.passes ? " passed" : " did not pass");
        const std::string at = ball.tread ? ", " + numbered("tread", *ball.tread) : std::string();
        const int risers = subject.stair < 0 ? 0 : solution_.stairs[static_cast<std::size_t>(subject.stair)].risers();
        if (ball.at == Ball::At::riser) {
            tell(subject, Q::open_riser, words + at, ball.size, known);
        } else if (ball.at == Ball::At::pickets && !ball.tread) {
            for (const Q quantity : {Q::picket_opening, Q::guard_opening_above})
                tell(subject, quantity, words, ball.size, known);
        } else {
            subject.facts.push_back(under_rail(ball.tread, risers, words + " under the rail" + at, ball.size, known));
        }
    }

    const Job& job_;
    const Solution& solution_;
    Tape tape_;
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
