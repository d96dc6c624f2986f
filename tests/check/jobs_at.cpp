#include "jobs_at.hpp"

#include <array>
#include <cmath>

#include "../identities/jobs.hpp"

namespace rakewright::tests {
namespace {

using Q = Quantity;
using Ways = std::vector<Way>;

constexpr double pi = 3.14159265358979323846;
constexpr int risers = 6;

/// From inches, and from the document's unit, to the job's.
struct Scale {
    Unit unit = Unit::inch;
    double inch = 1, document = 1;
    double drop = 0;

    Scale(const Judged& judged, Unit job) : unit(job) {
        inch = job == Unit::inch ? 1 : 25.4;
        const double millimetre = job == Unit::inch ? 1 / 25.4 : 1;
        document = judged.document == Unit::inch ? inch : millimetre;
        drop = (judged.deep ? 2032 : 1524) * millimetre;
    }
    double inches(double number) const { return number * inch; }
    double told(double value) const { return value * document; }
};

/// Six risers of 7 1/4 on runs of 10, nosings 1 proud: 43 1/2 (1105 mm) high.
Job with_stair(const Scale& s) {
    Job job;
    job.units = s.unit;
    Stair& stair = job.stairs.emplace_back(even_stair());
    stair.risers = Count(risers);
    stair.rise = s.inches(7.25);
    stair.run = s.inches(10);
    stair.nosing = s.inches(1);
    stair.clear_width = s.inches(44);
    stair.drop = s.drop;
    return job;
}

template <class Change>
Way of_stair(const Scale& s, const Change& change, const char* words = "an even stair") {
    return {words, [=](double value) {
                Job job = with_stair(s);
                change(job.stairs[0], value);
                return job;
            }};
}

/// A measured stair; `rises` and `runs` say how much of the value each reading is over the least.
Way of_steps(const Scale& s, const std::vector<double>& rises, const std::vector<double>& runs, const char* words) {
    return of_stair(
        s,
        [=](Stair& stair, double value) {
            std::vector<double> tall, wide;
            for (const double part : rises) tall.push_back(s.inches(7) + part * s.told(value));
            for (const double part : runs) wide.push_back(s.inches(10) + part * s.told(value));
            const Stair measured = measured_stair(tall, wide);
            stair.risers.reset();
            stair.rise.reset();
            stair.run.reset();
            stair.steps = measured.steps;
        },
        words);
}

Way of_rises(const Scale& s, const std::vector<double>& parts) {
    return of_steps(s, parts, {0, 0, 0, 0, 0}, "measured rises");
}
Way of_runs(const Scale& s, const std::vector<double>& parts) {
    return of_steps(s, {0, 0, 0, 0, 0, 0}, parts, "measured runs");
}

Ways of_nosings(const Scale& s) {
    return {{"measured projections", [=](double value) {
                 Job job = of_rises(s, {0, 0, 0, 0, 0, 0}).job(value);
                 const double parts[] = {0.5, 0.25, 1, 0, 0.5, 0.75};
                 for (std::size_t i = 0; i < risers; ++i)
                     job.stairs[0].steps[i].nosing = s.inches(0.875) + parts[i] * s.told(value);
                 return job;
             }}};
}

Ways of_rake(const Scale& s) {
    return {
        of_stair(s, [=](Stair& stair, double value) { stair.rise = stair.run->value * std::tan(value * pi / 180); }),
        of_stair(
            s,
            [](Stair& stair, double value) {
                stair.rise.reset();
                stair.rake = in_degrees(value);
            },
            "a rake that was read")};
}

Profile round_grip(const Scale& s) {
    Profile profile;
    profile.diameter = s.inches(1.5);
    return profile;
}

Handrail handrail(const Scale& s) {
    Handrail rail;
    rail.id = called("left-hand");
    rail.stair = ref(0);
    rail.height = s.inches(36);
    rail.profile = round_grip(s);
    return rail;
}

FoundRail found_rail(const Scale& s, bool on_stair) {
    FoundRail found;
    found.id = called("old-rail");
    found.side = NamedSide{false, {}};
    if (on_stair) {
        found.stair = ref(0);
        found.heights = {{1, s.inches(36)}, {risers, s.inches(36)}};
    } else {
        found.height = s.inches(36);
        found.drop = s.drop;
    }
    return found;
}

/// Two sides are a handrail on the left and a rail as found on the right.
Ways of_sides(const Scale& s) {
    return {{"a handrail and a rail as found", [=](double sides) {
                 Job job = with_stair(s);
                 if (sides >= 1) job.handrails = {handrail(s)};
                 if (sides >= 1) job.handrails[0].side = NamedSide{true, {}};
                 if (sides >= 2) job.as_found = {found_rail(s, true)};
                 return job;
             }}};
}

template <class Change>
Way of_handrail(const Scale& s, const Change& change, const char* words = "a handrail") {
    return {words, [=](double value) {
                Job job = with_stair(s);
                job.handrails = {handrail(s)};
                change(job.handrails[0], value);
                return job;
            }};
}

template <class Change>
Way of_found(const Scale& s, bool on_stair, const Change& change, const char* words = "a rail as found") {
    return {words, [=](double value) {
                Job job;
                if (on_stair)
                    job = with_stair(s);
                else
                    job.units = s.unit;
                job.as_found = {found_rail(s, on_stair)};
                change(job.as_found[0], value);
                return job;
            }};
}

/// Between two posts on the stair, or over a floor: a cap, a sub rail and a bottom rail, pickets 2 1/2 apart at most.
Job with_section(const Scale& s, bool on_stair) {
    Build build = square_build();
    build.pickets->max_gap = 2.5;
    Job inches = on_stair ? even_example(build) : floor_example(60, build);
    Job job = s.unit == Unit::inch ? inches : scaled(inches, 25.4);
    job.units = s.unit;
    if (on_stair)
        job.stairs = with_stair(s).stairs;
    else
        job.sections[0].drop = s.drop;
    return job;
}

template <class Change>
Way of_section(const Scale& s, bool on_stair, const Change& change, const char* words = "a section") {
    return {words, [=](double value) {
                Job job = with_section(s, on_stair);
                change(job, value);
                return job;
            }};
}

Ways heights(const Scale& s, bool on_stair) {
    return {of_section(s, on_stair, [=](Job& job, double value) { job.sections[0].height = s.told(value); }),
            of_found(s, on_stair, [=](FoundRail& found, double value) {
                if (found.height) found.height = s.told(value);
                for (Numbered& height : found.heights) height.reading = s.told(value);
            })};
}

Ways handrail_heights(const Scale& s, bool on_stair) {
    if (!on_stair) return {};
    Ways ways = heights(s, true);
    ways.push_back(of_handrail(s, [=](Handrail& rail, double value) { rail.height = s.told(value); }));
    return ways;
}

Ways widest_gaps(const Scale& s, bool on_stair) {
    return {of_found(s, on_stair, [=](FoundRail& found, double value) { found.widest_gap = s.told(value); })};
}

/// Over a floor the gap under the lower rail is an opening like others.
Ways openings(const Scale& s, bool on_stair) {
    Ways ways = widest_gaps(s, on_stair);
    if (!on_stair)
        ways.push_back(
            of_section(s, false, [=](Job& job, double value) { job.sections[0].lower_gap = LowerGap{s.told(value)}; }));
    return ways;
}

/// Over an even stair of rise R, run T and projection n, the rail c over the nosing line, the sphere is
/// (R + T - sqrt(R^2 + T^2)) (1 + c/R + n/T), derived: the incircle of a right triangle, grown as the triangle grows.
/// The stair is made to the limit so that c is positive and small.
void set_sphere(Job& job, double limit, double sphere) {
    const double rise = 1.2 * limit, run = 2 * limit, nosing = 0.1 * limit;
    job.stairs[0].rise = rise;
    job.stairs[0].run = run;
    job.stairs[0].nosing = nosing;
    const double on_line = rise + run - std::sqrt(rise * rise + run * run);
    job.sections[0].lower_gap = LowerGap{rise * (sphere / on_line - 1 - nosing / run)};
}

Ways under_rail(const Scale& s, double limit) {
    return {of_section(
                s, true, [=](Job& job, double value) { set_sphere(job, s.told(limit), s.told(value)); },
                "a section between posts"),
            of_section(
                s, true,
                [=](Job& job, double value) {
                    set_sphere(job, s.told(limit), s.told(value));
                    job.posts.clear();
                    job.sections[0].from = job.sections[0].to = {};
                    job.sections[0].stair = ref(0);
                    job.sections[0].clear = s.inches(60);
                },
                "a section whose posts have no place")};
}

Ways side_gaps(const Scale& s, bool on_stair) {
    return {of_section(s, on_stair, [=](Job& job, double value) { job.sections[0].side_gap = s.told(value); }),
            of_found(s, on_stair, [=](FoundRail& found, double value) { found.side_gap = s.told(value); })};
}

/// A handrail and a rail as found of a profile.
template <class Make>
void add_profile(Ways& ways, const Scale& s, const Make& make) {
    ways.push_back(of_handrail(
        s, [=](Handrail& rail, double value) { rail.profile = make(value); }, "the profile of a handrail"));
    ways.push_back(of_found(
        s, true, [=](FoundRail& found, double value) { found.profile = make(value); },
        "the profile of a rail as found"));
}

/// The same, and a top rail that is judged as the handrail.
template <class Sides>
Ways of_rectangle(const Scale& s, const Sides& sides) {
    Ways ways;
    add_profile(ways, s, [=](double value) {
        Profile profile;
        profile.width = sides(value)[0];
        profile.depth = sides(value)[1];
        return profile;
    });
    ways.push_back(of_section(s, true, [=](Job& job, double value) {
        job.builds[0].upper[0].width = sides(value)[0];
        job.builds[0].upper[0].depth = sides(value)[1];
    }));
    return ways;
}

Ways of_recess(const Scale& s, Reading Recess::*measure) {
    Ways ways;
    add_profile(ways, s, [=](double value) {
        Profile profile;
        profile.perimeter = s.inches(7);
        profile.width = s.inches(2.5);
        profile.recess =
            Recess{s.inches(0.5), s.inches(0.375), s.inches(0.75), s.inches(0.5), s.inches(2), s.inches(2)};
        (*profile.recess).*measure = s.told(value);
        return profile;
    });
    return ways;
}

Ways grip_diameters(const Scale& s) {
    Ways ways;
    add_profile(ways, s, [=](double value) {
        Profile profile;
        profile.diameter = s.told(value);
        return profile;
    });
    add_profile(ways, s, [=](double value) {
        Profile profile;
        profile.around = s.told(value) * pi;
        return profile;
    });
    return ways;
}

Ways grip_perimeters(const Scale& s) {
    Ways ways = of_rectangle(s, [=](double value) {
        return std::array{s.inches(1.5), s.told(value) / 2 - s.inches(1.5)};
    });
    add_profile(ways, s, [=](double value) {
        Profile profile;
        profile.perimeter = s.told(value);
        profile.width = s.inches(1.5);
        return profile;
    });
    return ways;
}

Ways grip_widths(const Scale& s) {
    Ways ways = of_rectangle(s, [=](double value) {
        const double width = s.inches(1), across = s.told(value);
        return std::array{width, std::sqrt(across * across - width * width)};
    });
    add_profile(ways, s, [=](double value) {
        Profile profile;
        profile.perimeter = s.inches(5);
        profile.width = s.told(value);
        return profile;
    });
    return ways;
}

Ways of_clearance(const Scale& s, double across) {
    return {of_handrail(s, [=](Handrail& rail, double value) { rail.clearance = s.told(value) - s.inches(across); }),
            of_found(s, true, [=](FoundRail& found, double value) {
                found.profile = round_grip(s);
                found.clearance = s.told(value) - s.inches(across);
            })};
}

template <class Set>
Ways of_extension(const Scale& s, const Set& set) {
    return {of_handrail(s, [=](Handrail& rail, double value) { set(rail.extend, value); }),
            of_found(s, true, [=](FoundRail& found, double value) { set(found.extend.emplace(), value); })};
}

Ways of_number_of_risers(const Scale& s) {
    return {of_stair(s, [](Stair& stair, double value) { stair.risers = Count(static_cast<int>(value)); })};
}

Ways of_flight_rise(const Scale& s) {
    return {of_stair(s, [=](Stair& stair, double value) {
        stair.risers = Count(20);
        stair.rise.reset();
        stair.total_rise = s.told(value);
    })};
}

}  // namespace

Ways ways_to(const Judged& judged, Unit unit) {
    const Scale s(judged, unit);
    const bool on_stair = judged.place == RulePlace::stair;
    switch (judged.quantity) {
        case Q::rise: return {of_stair(s, [=](Stair& stair, double value) { stair.rise = s.told(value); })};
        case Q::rise_variation: return {of_rises(s, {0, 0.5, 1, 0.5, 0, 0}), of_rises(s, {0.25, 0.5, 1, 0.75, 0.5, 0})};
        case Q::rise_step: return {of_rises(s, {0, 1, 1.75, 1.75, 1, 0.5}), of_rises(s, {0, 0, 0, 0, 0, 1})};
        case Q::run: return {of_stair(s, [=](Stair& stair, double value) { stair.run = s.told(value); })};
        case Q::run_variation: return {of_runs(s, {0, 0.5, 1, 0.5, 0}), of_runs(s, {1, 0.75, 0.5, 0.25, 0})};
        case Q::run_step: return {of_runs(s, {0, 1, 1.75, 1.75, 1}), of_runs(s, {0, 0, 0, 0, 1})};
        case Q::two_rises_and_run:
            return {
                of_stair(s, [=](Stair& stair, double value) { stair.run = s.told(value) - 2 * stair.rise->value; })};
        case Q::nosing_projection:
            return {of_stair(s, [=, open = judged.open_risers](Stair& stair, double value) {
                stair.nosing = s.told(value);
                if (!open) return;
                stair.riser = RiserKind::open;
                stair.tread_thickness = s.inches(1.5);
            })};
        case Q::open_riser:
            // The treads lie over one another, so that a ball finds what is left of the rise over a tread.
            return {of_stair(s, [=](Stair& stair, double value) {
                stair.riser = RiserKind::open;
                stair.nosing = s.inches(1);
                stair.rise = s.inches(7);
                stair.tread_thickness = *stair.rise - s.told(value);
            })};
        case Q::tread_slope: return {of_stair(s, [](Stair& stair, double value) { stair.wash = {{value, 1}, {}}; })};
        case Q::nosing_variation: return of_nosings(s);
        case Q::rake: return of_rake(s);
        case Q::flight_rise: return of_flight_rise(s);
        case Q::risers: return of_number_of_risers(s);
        case Q::clear_width:
            return {of_stair(s, [=](Stair& stair, double value) { stair.clear_width = s.told(value); })};
        case Q::headroom: return {of_stair(s, [=](Stair& stair, double value) { stair.headroom = s.told(value); })};
        case Q::guard_height: return heights(s, on_stair);
        case Q::guard_top_height: return on_stair ? heights(s, true) : Ways{};
        case Q::handrail_height: return handrail_heights(s, on_stair);
        case Q::handrail_sides: return of_sides(s);
        case Q::picket_opening: return openings(s, on_stair);
        case Q::guard_opening_above: return widest_gaps(s, on_stair);
        case Q::under_rail_opening: return on_stair ? under_rail(s, judged.limit) : Ways{};
        case Q::grip_diameter: return grip_diameters(s);
        case Q::grip_perimeter: return grip_perimeters(s);
        case Q::grip_width: return grip_widths(s);
        case Q::grip_least:
            return of_rectangle(s, [=](double value) { return std::array{s.inches(1.75), s.told(value)}; });
        case Q::recess_start: return of_recess(s, &Recess::start);
        case Q::recess_depth: return of_recess(s, &Recess::depth);
        case Q::recess_reach: return of_recess(s, &Recess::reach);
        case Q::recess_held: return of_recess(s, &Recess::held);
        case Q::recess_end: return of_recess(s, &Recess::end);
        case Q::width_above_recess: return of_recess(s, &Recess::width_above);
        case Q::wall_clearance: return of_clearance(s, 0);
        case Q::handrail_projection: return of_clearance(s, 1.5);
        case Q::extension_top:
            return of_extension(s, [=](Extension& extension, double value) { extension.top = s.told(value); });
        case Q::extension_bottom_treads:
            return of_extension(s,
                                [=](Extension& extension, double value) { extension.bottom = s.inches(10) * value; });
        case Q::side_gap: return side_gaps(s, on_stair);
        case Q::drop:
        case Q::open_riser_height: return {};
    }
    return {};
}

}  // namespace rakewright::tests
