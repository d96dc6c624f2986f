#include <cmath>
#include <string>

#include "../support/near.hpp"
#include "../support/random_placed_job.hpp"
#include "every_result.hpp"
#include "jobs.hpp"

// What must hold for any job in plan, whatever its numbers: the same porch seen from elsewhere, in a mirror, from its
// other end or in another unit is the same porch.

namespace rakewright::tests {
namespace {

/// Every drawn job that solves, with its solution and its openings, given to a check.
template <class Check>
int for_each_drawn(const std::string& kind, int count, const Check& check) {
    int solved = 0;
    for (int i = 0; i < count; ++i) {
        const std::string name = kind + " " + std::to_string(i);
        const Job job = random_placed_job(name).job;
        Solution solution = solve(job);
        if (solution.refused()) continue;
        measure_openings(job, solution);
        INFO(name);
        check(job, solution);
        ++solved;
    }
    return solved;
}

Solution measured_anew(const Job& job) {
    Solution solution = solve(job);
    REQUIRE_FALSE(solution.refused());
    measure_openings(job, solution);
    return solution;
}

template <class Change>
void each_plan(Job& job, const Change& change) {
    for (Stair& stair : job.stairs) change(*stair.plan);
    for (Floor& floor : job.floors) change(*floor.plan);
}

/// Turned about the plan's origin, then moved.
Job turned_and_moved(Job job, double degrees, double x, double y, double up) {
    const Angle turn = angle_from_degrees(degrees);
    const auto [sine, cosine] = sine_cosine(turn);
    each_plan(job, [&, s = sine, c = cosine](Plan& plan) {
        const double was_x = plan.x, was_y = plan.y;
        plan.x = c * was_x - s * was_y + x;
        plan.y = s * was_x + c * was_y + y;
        plan.level = plan.level + up;
        const SineCosine own = sine_cosine(plan.heading.angle);
        plan.heading.angle = {own.sine * c + own.cosine * s, own.cosine * c - own.sine * s};
    });
    return job;
}

Job mirrored_in_plan(Job job) {
    job = mirrored(std::move(job));
    each_plan(job, [](Plan& plan) {
        plan.y.value = -plan.y.value;
        plan.heading.angle.rise = -plan.heading.angle.rise;
    });
    for (Section& section : job.sections) {
        section.offset.from.value = -section.offset.from.value;
        section.offset.to.value = -section.offset.to.value;
    }
    return job;
}

Job swapped_ends(Job job) {
    for (Section& section : job.sections) {
        std::swap(section.from, section.to);
        std::swap(section.ends.from, section.ends.to);
        std::swap(section.offset.from, section.offset.to);
        section.offset.from.value = -section.offset.from.value;
        section.offset.to.value = -section.offset.to.value;
    }
    return job;
}

/// Whether a result says where a post stands in plan: that alone depends on where the plan's origin is.
bool in_plan(const std::string& where) {
    if (where.rfind("posts[", 0) != 0) return false;
    const std::string key = where.substr(where.find('.') + 1);
    return key == "x" || key == "y" || key == "level";
}

void check_alike(const Job& job, const Solution& a, const Job& other, const Solution& b, double error) {
    const std::vector<Result> here = every_result(job, a), there = every_result(other, b);
    REQUIRE(here.size() == there.size());
    for (std::size_t i = 0; i < here.size(); ++i) {
        if (in_plan(here[i].where)) continue;
        INFO(here[i].where);
        REQUIRE(here[i].where == there[i].where);
        CHECK_THAT(there[i].value, within(here[i].value, error));
        CHECK(there[i].word == here[i].word);
    }
    CHECK(a.findings.size() == b.findings.size());
}

Corner other_hand(const Corner& corner) { return {-corner.left, corner.top}; }

void check_lengths(const Member& a, const Member& b, double error) {
    CHECK_THAT(a.length, within(b.length, error));
    CHECK_THAT(a.top_edge, within(b.top_edge, error));
    CHECK_THAT(a.bottom_edge, within(b.bottom_edge, error));
    CHECK_THAT(a.overall, within(b.overall, error));
}

void check_same_saw(const EndCut& a, const EndCut& b) {
    CHECK_THAT(std::fabs(a.flat.miter), within(std::fabs(b.flat.miter), 1e-10));
    CHECK_THAT(std::fabs(a.flat.bevel), within(std::fabs(b.flat.bevel), 1e-10));
    CHECK_THAT(std::fabs(a.edge.miter), within(std::fabs(b.edge.miter), 1e-10));
    CHECK_THAT(std::fabs(a.edge.bevel), within(std::fabs(b.edge.bevel), 1e-10));
}

/// What is 0 but for rounding is long at no corner, or at any.
bool same_long_point(const EndCut& a, const Corner& corner, const Slant& slant) {
    const bool sure = std::fabs(slant.per_left) > 1e-9 && std::fabs(slant.per_top) > 1e-9;
    return !sure || a.long_point == corner;
}

void check_copes(const std::optional<Cope>& a, const std::optional<Cope>& b, double error) {
    REQUIRE(a.has_value() == b.has_value());
    if (!a) return;
    CHECK_THAT(a->depth(), within(b->depth(), error));
    CHECK_THAT(a->per_top, within(b->per_top, 1e-10));
    CHECK_THAT(a->per_left, within(-b->per_left, 1e-10));
}

void check_openings(const SectionResult& a, const SectionResult& b, double error) {
    REQUIRE(a.openings.size() == b.openings.size());
    double one = 0, other = 0, widest = 0, widest_other = 0;
    for (std::size_t i = 0; i < a.openings.size(); ++i) {
        one += a.openings[i].sphere;
        other += b.openings[i].sphere;
        widest = std::max(widest, a.openings[i].sphere);
        widest_other = std::max(widest_other, b.openings[i].sphere);
    }
    CHECK_THAT(one, within(other, error * static_cast<double>(a.openings.size() + 1)));
    CHECK_THAT(widest, within(widest_other, error));
}

void check_pickets(const SectionResult& a, const SectionResult& b, bool turned_round, double error) {
    REQUIRE(a.pickets->count == b.pickets->count);
    const std::size_t n = static_cast<std::size_t>(a.pickets->count);
    for (std::size_t i = 0; i < n; ++i) {
        const double other = turned_round ? b.clear - b.pickets->centres[n - 1 - i] : b.pickets->centres[i];
        CHECK_THAT(a.pickets->centres[i], within(other, error));
    }
    CHECK_THAT(a.pickets->widest_gap, within(b.pickets->widest_gap, error));
}

/// How large a job's numbers are: those of a job in millimetres have fewer digits behind the point.
double size_of(const Job& job) { return job.units == Unit::inch ? 1 : millimetres_in_an_inch; }

}  // namespace

TEST_CASE("a job turned and moved in plan has the same pieces, pickets and openings", "[identity][placing][long]") {
    const int solved = for_each_drawn("turned in plan", 150, [](const Job& job, const Solution& solution) {
        for (const double degrees : {90.0, 37.5}) {
            const Job elsewhere = turned_and_moved(job, degrees, 130, -85.5, 12);
            check_alike(job, solution, elsewhere, measured_anew(elsewhere), 1e-10 * size_of(job));
        }
    });
    CHECK(solved > 130);
}

TEST_CASE("a job in a mirror has the same lengths and the other hand", "[identity][placing][long]") {
    const int solved = for_each_drawn("in a mirror", 150, [](const Job& job, const Solution& solution) {
        const double error = 1e-10 * size_of(job);
        const Solution mirror = measured_anew(mirrored_in_plan(job));
        for (std::size_t s = 0; s < job.sections.size(); ++s) {
            INFO("section " << s);
            const SectionResult &a = solution.sections[s], &b = mirror.sections[s];
            CHECK_THAT(a.clear, within(b.clear, error));
            REQUIRE(a.members.size() == b.members.size());
            for (std::size_t m = 0; m < a.members.size(); ++m) {
                const Member &one = a.members[m], &other = b.members[m];
                check_lengths(one, other, error);
                const Piece &piece = one.stick.piece, &image = other.stick.piece;
                for (const auto& [slant, reflected] :
                     {std::pair(piece.from, image.from), std::pair(piece.to, image.to)}) {
                    CHECK_THAT(slant.per_left, within(-reflected.per_left, 1e-10));
                    CHECK_THAT(slant.per_top, within(reflected.per_top, 1e-10));
                }
                CHECK(same_long_point(one.from_end, other_hand(other.from_end.long_point), piece.from));
                CHECK(same_long_point(one.to_end, other_hand(other.to_end.long_point), piece.to));
                for (const std::size_t e : {0u, 1u}) {
                    check_copes(one.copes[e], other.copes[e], error);
                    CHECK_THAT(one.shortened[e], within(other.shortened[e], error));
                }
            }
            check_pickets(a, b, false, error);
            check_openings(a, b, error);
            for (std::size_t i = 0; i < a.brackets.size(); ++i) {
                CHECK_THAT(a.brackets[i].tilt, within(-b.brackets[i].tilt, 1e-10));
                CHECK_THAT(a.brackets[i].skew, within(-b.brackets[i].skew, 1e-10));
            }
        }
        CHECK(solution.findings.size() == mirror.findings.size());
    });
    CHECK(solved > 130);
}

TEST_CASE("sections named from their other ends are the same sticks turned round", "[identity][placing][long]") {
    const int solved = for_each_drawn("from the other end", 150, [](const Job& drawn, const Solution&) {
        Job job = drawn;
        // A clear distance moves the to post: another one, named from the other end.
        for (Section& section : job.sections) section.clear.reset();
        const Solution solution = solve(job), other_way = solve(swapped_ends(job));
        REQUIRE(solution.refused() == other_way.refused());
        if (solution.refused()) return;
        const double error = 1e-10 * size_of(job);
        for (std::size_t s = 0; s < job.sections.size(); ++s) {
            INFO("section " << s);
            const SectionResult &a = solution.sections[s], &b = other_way.sections[s];
            CHECK_THAT(a.slope, within(-b.slope, 1e-12));
            CHECK_THAT(a.clear, within(b.clear, error));
            REQUIRE(a.members.size() == b.members.size());
            for (std::size_t m = 0; m < a.members.size(); ++m) {
                const Member &one = a.members[m], &other = b.members[m];
                check_lengths(one, other, error);
                check_same_saw(one.from_end, other.to_end);
                check_same_saw(one.to_end, other.from_end);
                CHECK(same_long_point(one.from_end, other_hand(other.to_end.long_point), one.stick.piece.from));
                CHECK(same_long_point(one.to_end, other_hand(other.from_end.long_point), one.stick.piece.to));
                check_copes(one.copes[0], other.copes[1], error);
                check_copes(one.copes[1], other.copes[0], error);
                if (!one.copes[0] && !one.copes[1]) CHECK(same_piece(one.stick.piece, other.stick.piece));
            }
            check_pickets(a, b, true, error);
        }
    });
    CHECK(solved > 130);
}

TEST_CASE("a placed job twice as large, and in millimetres", "[identity][placing]") {
    const int solved = for_each_drawn("in another unit", 150, [](const Job& job, const Solution& solution) {
        const bool inches = job.units == Unit::inch;
        for (const double factor : {2.0, inches ? millimetres_in_an_inch : 1 / millimetres_in_an_inch}) {
            Job other = scaled(job, factor);
            if (factor != 2.0) other.units = inches ? Unit::millimetre : Unit::inch;
            const std::vector<Result> here = every_result(job, solution),
                                      there = every_result(other, measured_anew(other));
            REQUIRE(here.size() == there.size());
            for (std::size_t i = 0; i < here.size(); ++i) {
                INFO(here[i].where << " times " << factor);
                const bool length = here[i].kind == Result::Kind::length;
                const double wanted = here[i].value * (length ? factor : 1),
                             size = size_of(job) * (length ? factor : 1);
                CHECK_THAT(there[i].value, within(wanted, factor == 2.0 ? 0.0 : 1e-10 * std::fmax(1, size)));
                CHECK((here[i].where == "units" || here[i].word == there[i].word));
            }
        }
    });
    CHECK(solved > 130);
}

TEST_CASE("nothing askew: the square job to the last bit", "[identity][placing]") {
    for (const Build& build : {square_build(), open_build()}) {
        const Job plain = even_example(build);
        Job placed = plain;
        placed.stairs[0].plan = Plan{};
        placed.stairs[0].plan->heading = in_degrees(0);
        placed.sections[0].offset = {0, -0.0};
        placed.sections[0].stair = ref(0);
        for (Post& post : placed.posts) {
            post.across = 0.0;
            post.turn = in_degrees(0);
            post.lean = {in_degrees(0), in_degrees(0)};
        }
        std::vector<Result> shown;
        for (const Result& result : every_result(placed, measured_anew(placed)))
            if (!in_plan(result.where)) shown.push_back(result);
        const std::vector<Result> wanted = every_result(plain, measured_anew(plain));
        REQUIRE(shown.size() == wanted.size());
        for (std::size_t i = 0; i < wanted.size(); ++i) {
            INFO(wanted[i].where);
            REQUIRE(shown[i].where == wanted[i].where);
            CHECK(same_bits(shown[i].value, wanted[i].value));
            CHECK(shown[i].word == wanted[i].word);
        }
    }
}

TEST_CASE("a joint in a straight run of one slope: two pieces as long as the one", "[identity][placing]") {
    for (const bool level : {false, true})
        for (const double at : {20.0, 31.375, 3.0})
            for (const double offset : {0.0, 0.75}) {
                Job one = even_example();
                one.stairs[0].plan = Plan{};
                one.stairs[0].plan->heading = in_degrees(33);
                Post joint = placed_post(at);
                joint.size = {};
                joint.shape = PostShape::joint;
                if (level) {
                    Floor deck;
                    deck.plan = Plan{};
                    deck.plan->heading = in_degrees(-71);
                    one.floors = {deck};
                    for (Post* post : {&one.posts[0], &one.posts[1], &joint}) {
                        post->stair = {};
                        post->floor = ref(0);
                        post->nosing.value = 1;
                    }
                    one.posts[1].at = Reading(48);
                }
                one.posts[0].turn = in_degrees(10);
                one.posts[1].lean.along = in_degrees(1);
                one.sections[0].offset = {offset, offset};
                Job two = one;
                two.posts.push_back(joint);
                two.sections.push_back(one.sections[0]);
                two.sections[0].to = ref(2);
                two.sections[1].from = ref(2);
                const Solution whole = measured_anew(one), parts = measured_anew(two);
                for (std::size_t m = 0; m < whole.sections[0].members.size(); ++m) {
                    const Member &all = whole.sections[0].members[m], &first = parts.sections[0].members[m],
                                 &second = parts.sections[1].members[m];
                    CHECK_THAT(first.length + second.length, within(all.length, 1e-11));
                    CHECK_THAT(first.top_edge + second.top_edge, within(all.top_edge, 1e-11));
                    CHECK_THAT(first.bottom_edge + second.bottom_edge, within(all.bottom_edge, 1e-11));
                }
                REQUIRE(parts.posts[2].joint.has_value());
                for (const MembersMet& met : parts.posts[2].joint->members) CHECK(met.apart() < 1e-11);
            }
}

}  // namespace rakewright::tests
