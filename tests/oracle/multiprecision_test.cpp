#include <cmath>
#include <sstream>

#include "../../solver/solve.hpp"
#include "../identities/jobs.hpp"
#include "../support/catch.hpp"
#include "../support/random.hpp"
#include "pickets_in_digits.hpp"

// Every number of a solved section, worked out again in fifty digits by lines, planes and points. What the solver
// promises (solve.hpp): lengths within 1e-12 of themselves, angles within 2e-15 rad.

namespace rakewright::tests {
namespace {

constexpr double of_itself = 1e-12, in_radians = 2e-15;

std::string written(const Real& value) {
    std::ostringstream text;
    text.precision(22);
    text << value;
    return text.str();
}

/// Within 1e-12 of `scale`: a length of itself, a place of the length along which it lies.
void check_place(const char* what, double got, const Real& want, const Real& scale) {
    INFO(what << ": solver " << written(exactly(got)) << ", fifty digits " << written(want));
    CHECK(fabs(exactly(got) - want) <= of_itself * fabs(scale));
}

void check_length(const char* what, double got, const Real& want) { check_place(what, got, want, want); }

/// A slope that the solver shows as an angle, against an angle.
void check_angle(const char* what, double slope, const Real& want) {
    const double got = angle_of(slope);
    INFO(what << ": solver " << written(exactly(got)) << " rad, fifty digits " << written(want));
    CHECK(fabs(exactly(got) - want) <= in_radians);
}

void check_end(const EndCut& got, const EndInDigits& want, const CrossSection& section) {
    check_angle("flat miter", std::fabs(got.flat.miter), want.flat_miter);
    check_angle("flat bevel", std::fabs(got.flat.bevel), want.flat_bevel);
    check_angle("edge miter", std::fabs(got.edge.miter), want.edge_miter);
    check_angle("edge bevel", std::fabs(got.edge.bevel), want.edge_bevel);
    const auto check_side = [](int side, const Real& longer, double across) {
        // Between a slope of 1e-12 and one of 1e-11 the cut may be called square or not.
        if (side == 0)
            CHECK(fabs(longer) < 1e-11 * across);
        else
            CHECK(side * longer > 1e-13 * across);
    };
    check_side(got.long_point.left, want.left_over_right, section.width);
    check_side(got.long_point.top, want.top_over_bottom, section.depth);
}

class Section50 {
 public:
    Section50(const DrawnJob& drawn, const Solution& solution, std::size_t number)
        : section_(drawn.job.sections[number]),
          build_(drawn.job.builds[0]),
          got_(solution.sections[number]),
          stair_(stair_in_digits(drawn.job.stairs[0], drawn.rakes[0])),
          way_(way_in_digits(drawn, section_, stair_)),
          levels_(levels_in_digits(build_, section_, way_)),
          placed_(section_.from.named()) {}

    void check() {
        from_ = way_.face_along(0, levels_.middle());
        to_ = way_.face_along(1, levels_.middle());
        check_angle("rake", got_.slope, atan(way_.slope()));
        check_length("clear", got_.clear, to_ - from_);
        check_length("clear on slope", got_.clear_on_slope, (to_ - from_) * way_.lengthened());
        check_members();
        check_pickets();
        check_brackets();
        check_heights();
    }

    int members() const { return static_cast<int>(got_.members.size()); }
    int pickets() const { return got_.pickets ? got_.pickets->count : 0; }
    int brackets() const { return static_cast<int>(got_.brackets.size()); }

 private:
    Real height_met(std::size_t end, const Real& above) const {
        return meeting(way_.at(0, above), way_.way, way_.faces[end]).z;
    }

    /// Which way the bracket's leg is turned is not this test's affair.
    bool leg_up(std::size_t end, Group group) const {
        for (const Bracket& bracket : got_.brackets)
            if ((bracket.end == End::to) == (end == 1) && bracket.group == group) return bracket.leg == Leg::up;
        return false;
    }

    TakenOff taken_off(std::size_t end, Group group, const Real& underside) const {
        const Real level = exactly(section_.play ? *section_.play : build_.play) / 2;
        if (!build_.bracket || build_.bracket->post_seat == PostSeat::mortise || !leg_up(end, group)) return {level, 0};
        const Real lowest = group == Group::upper ? levels_.upper_underside : levels_.lower_underside;
        const Real top_of_leg = height_met(end, lowest) + exactly(build_.bracket->post_leg);
        const bool overlaps = height_met(end, underside) < top_of_leg - 1e-12 * fabs(top_of_leg);
        return {level, overlaps ? exactly(build_.bracket->thickness) : Real(0)};
    }

    void check_members() {
        REQUIRE(got_.members.size() == build_.upper.size() + build_.lower.size());
        std::size_t index = 0;
        for (const Group group : {Group::upper, Group::lower}) {
            Real underside = group == Group::upper ? levels_.upper_top : levels_.lower_top;
            for (const MemberSize& size : group == Group::upper ? build_.upper : build_.lower) {
                underside -= exactly(size.depth) * way_.lengthened();
                const Member& got = got_.members[index++];
                want_.push_back(member_in_digits(way_, {size.width, size.depth}, underside,
                                                 {taken_off(0, group, underside), taken_off(1, group, underside)},
                                                 got.measure.edge));
                INFO("member " << index);
                check_member(got, want_.back());
            }
        }
    }

    static void check_member(const Member& got, const MemberInDigits& want) {
        check_length("length", got.length, want.length);
        check_length("top edge", got.top_edge, want.top_edge);
        check_length("bottom edge", got.bottom_edge, want.bottom_edge);
        check_length("overall", got.overall, want.overall);
        check_length("set out", got.measure.length, want.set_out);
        const CrossSection section{got.width, got.depth};
        {
            INFO("from end");
            check_end(got.from_end, want.ends[0], section);
        }
        INFO("to end");
        check_end(got.to_end, want.ends[1], section);
    }

    bool on_treads() const { return !levels_.has_lower && placed_ && way_.slope() != 0; }

    void check_pickets() {
        REQUIRE(got_.pickets.has_value() == build_.pickets.has_value());
        if (!got_.pickets) return;
        const Pickets& got = *got_.pickets;
        const std::vector<PicketInDigits> want =
            on_treads() ? pickets_on_treads(build_, levels_, way_, stair_, got.per_tread)
                        : pickets_between(build_, levels_, way_, placed_ ? &stair_ : nullptr, {from_, to_}, got.count);
        REQUIRE(got.centres.size() == want.size());
        const Real clear = to_ - from_, half = exactly(got.width) / 2;
        const Real first = want.empty() ? clear : want.front().centre - half - from_;
        const Real last = want.empty() ? clear : to_ - want.back().centre - half;
        check_place("from gap", got.from_gap, first, clear);
        check_place("to gap", got.to_gap, last, clear);
        for (std::size_t i = 0; i < want.size(); ++i)
            check_place("centre", got.centres[i], want[i].centre - from_, clear);
        check_marks(want);
        if (!levels_.has_lower && section_.stair.named() && !placed_) {
            CHECK(got.pieces.empty());
            return;
        }
        check_angle("head", got.cut, atan(way_.slope()));
        check_pieces(want);
    }

    void check_marks(const std::vector<PicketInDigits>& pickets) {
        if (pickets.empty()) return;
        const MemberInDigits& above = want_[build_.upper.size() - 1];
        check_marks_on(got_.pickets->upper, above.under, pickets);
        if (levels_.has_lower) check_marks_on(got_.pickets->lower, want_[build_.upper.size()].over, pickets);
    }

    /// From the end of the member's picket face to where a plumb plane through the picket meets it.
    void check_marks_on(const Marks& got, const std::array<Point, 2>& face,
                        const std::vector<PicketInDigits>& pickets) {
        REQUIRE(got.centres.size() == pickets.size());
        const Real whole = apart(face[0], face[1]);
        check_length("face", got.face_length, whole);
        for (std::size_t i = 0; i < pickets.size(); ++i) {
            const Facet plumb{way_.at(pickets[i].centre), way_.level};
            const Point mark = meeting(face[0], way_.way, plumb);
            check_place("mark", got.centres[i], dot(mark - face[0], unit(way_.way)), whole);
        }
    }

    void check_pieces(const std::vector<PicketInDigits>& want) {
        std::vector<int> seen(want.size());
        for (const PicketPiece& piece : got_.pickets->pieces) {
            CHECK(piece.count == static_cast<int>(piece.at.size()));
            for (const int number : piece.at) {
                const std::size_t i = static_cast<std::size_t>(number - 1);
                REQUIRE(i < want.size());
                ++seen[i];
                // A piece stands for all that are equal to 1e-9; its own numbers are those of the first.
                const bool own = number == piece.at.front();
                const Real uphill = want[i].uphill_side, downhill = want[i].downhill_side;
                INFO("picket " << number);
                check_place("uphill side", piece.uphill_side, uphill, own ? uphill : uphill + 1000);
                check_place("downhill side", piece.downhill_side, downhill, own ? downhill : downhill + 1000);
                if (own) check_length("overall", piece.overall, fmax(uphill, downhill) + foot_slack());
            }
        }
        for (const int times : seen) CHECK(times == 1);
    }

    /// Between two raked groups the foot is cut on the rake too: the one side stands out by what the width rises.
    Real foot_slack() const { return levels_.has_lower ? exactly(got_.pickets->width) * fabs(way_.slope()) : Real(0); }

    void check_brackets() {
        for (const Bracket& got : got_.brackets) {
            const std::size_t end = index_of(got.end);
            INFO("bracket at " << (end == 0 ? "from" : "to") << (got.leg == Leg::up ? " up" : " down"));
            check_angle("included", got.over_square, included_angle(way_, end, got.leg) - half_turn() / 2);
            if (!got.mark_height) continue;
            const Real above = got.group == Group::upper ? levels_.upper_underside : levels_.lower_underside;
            check_place("mark height", *got.mark_height, height_met(end, above) - way_.surfaces[end], size_of_job());
        }
    }

    /// Heights are differences of heights over the floor at the foot.
    Real size_of_job() const { return levels_.upper_top + stair_.nosings.back().z; }

    void check_heights() {
        for (std::size_t end = 0; end < 2; ++end) {
            const EndHeights& got = got_.ends[end];
            const auto check_group = [&](const GroupHeights& heights, const Real& underside, const Real& top) {
                const Real surface = way_.surfaces[end];
                check_place("underside", heights.underside, height_met(end, underside) - surface, size_of_job());
                check_place("top", heights.top, height_met(end, top) - surface, size_of_job());
            };
            if (got.upper) check_group(*got.upper, levels_.upper_underside, levels_.upper_top);
            if (got.lower) check_group(*got.lower, levels_.lower_underside, levels_.lower_top);
        }
        CHECK(got_.diagonals.has_value() == levels_.has_lower);
        if (!got_.diagonals) return;
        const MemberInDigits &above = want_[build_.upper.size() - 1], &below = want_[build_.upper.size()];
        check_length("diagonal from the foot", got_.diagonals->from_foot, apart(above.under[1], below.over[0]));
        check_length("diagonal to the foot", got_.diagonals->to_foot, apart(above.under[0], below.over[1]));
    }

    const Section& section_;
    const Build& build_;
    const SectionResult& got_;
    StairInDigits stair_;
    WayInDigits way_;
    LevelsInDigits levels_;
    bool placed_;
    Real from_, to_;
    std::vector<MemberInDigits> want_;
};

void check_stair(const StairShape& got, const StairInDigits& want) {
    REQUIRE(got.nosings.size() == want.nosings.size());
    REQUIRE(got.line);
    check_angle("rake of the stair", got.line->slope, atan(want.slope));
    const Real all = want.nosings.back().z;
    check_place("line at the foot", got.line->height, want.height, all);
    for (std::size_t i = 0; i < want.nosings.size(); ++i) {
        const Nosing& nosing = got.nosings[i];
        check_length("level", nosing.x, want.nosings[i].x);
        check_length("height", nosing.z, want.nosings[i].z);
        check_place("off line", nosing.off_line, want.nosings[i].z - want.line_at(want.nosings[i].x), all);
    }
}

struct Tally {
    int jobs = 0, members = 0, pickets = 0, brackets = 0;
    double steepest = 0, nearest_to_square = 1;
};

void tell_cut(const SawSetting& saw, Tally& tally) {
    for (const double slope : {std::fabs(saw.miter), std::fabs(saw.bevel)}) {
        tally.steepest = std::fmax(tally.steepest, slope);
        if (slope > 1e-14) tally.nearest_to_square = std::fmin(tally.nearest_to_square, slope);
    }
}

void check_job(const std::string& name, const DrawnJob& drawn, Tally& tally) {
    const Solution solution = solve(drawn.job);
    if (solution.refused()) return;
    ++tally.jobs;
    INFO(name);
    check_stair(solution.stairs[0], stair_in_digits(drawn.job.stairs[0], drawn.rakes[0]));
    for (std::size_t s = 0; s < drawn.job.sections.size(); ++s) {
        INFO("section " << drawn.job.sections[s].id.name);
        Section50 section(drawn, solution, s);
        section.check();
        tally.members += section.members();
        tally.pickets += section.pickets();
        tally.brackets += section.brackets();
        for (const Member& member : solution.sections[s].members) {
            tell_cut(member.from_end.flat, tally);
            tell_cut(member.to_end.flat, tally);
        }
    }
}

/// The head post made broad and thin, turned so far that the rail comes upon its broad face at a glancing angle; far
/// enough off that the arrises do not cross.
void turn_away(DrawnJob& drawn, double degrees) {
    const double inch = drawn.job.units == Unit::inch ? 1 : millimetres_in_an_inch;
    Post& post = drawn.job.posts[1];
    post.size = {0.5 * inch, 60 * inch, "", {}};
    post.at = Reading(400 * inch);
    post.nosing.value = 0;
    post.across = drawn.job.posts[0].across;
    post.turn = in_degrees(degrees);
    drawn.posts[1].turn = {true, degrees, 0, 1};
}

}  // namespace

TEST_CASE("sections agree with fifty digits", "[oracle]") {
    Tally tally;
    for (int i = 0; i < 400; ++i) {
        const std::string name = "fifty digits " + std::to_string(i);
        check_job(name, random_job(name), tally);
    }
    // Most of what is drawn can be built: the comparison is of something.
    CHECK(tally.jobs > 360);
    CHECK(tally.members > 2000);
    CHECK(tally.pickets > 5000);
    CHECK(tally.brackets > 1000);
    // Among them cuts that are all but square: their angles are not lost.
    CHECK(tally.nearest_to_square < 1e-8);
}

TEST_CASE("sections agree with fifty digits at every size", "[oracle]") {
    for (const double factor : {1e-3, 0.037, 23.0, 500.0}) {
        Tally tally;
        for (int i = 0; i < 40; ++i) {
            const std::string name = "every size " + std::to_string(i);
            DrawnJob drawn = random_job(name);
            drawn.job = scaled(drawn.job, factor);
            INFO("times " << factor);
            check_job(name, drawn, tally);
        }
        CHECK(tally.jobs > 35);
    }
}

TEST_CASE("sections agree with fifty digits where cuts run far off square", "[oracle]") {
    Random random("glancing");
    Tally tally;
    for (int i = 0; i < 80; ++i) {
        const std::string name = "far off square " + std::to_string(i);
        DrawnJob drawn = random_job(name, Posts::nearly_plumb);
        const double degrees = random.uniform(70, 88.5);
        turn_away(drawn, i % 2 == 0 ? degrees : -degrees);
        check_job(name, drawn, tally);
    }
    CHECK(tally.jobs > 50);
    CHECK(tally.steepest > 30);
}

}  // namespace rakewright::tests
