#include <algorithm>
#include <cmath>

#include "../support/near.hpp"
#include "every_result.hpp"
#include "jobs.hpp"

// What must hold for any job, whatever its numbers: the same thing said or seen in another way is the same thing.

namespace rakewright::tests {
namespace {

Solution solved(const Job& job) {
    Solution solution = solve(job);
    REQUIRE_FALSE(solution.refused());
    return solution;
}

void check_same_bits(const Job& job_a, const Solution& a, const Job& job_b, const Solution& b) {
    const std::vector<Result> left = every_result(job_a, a), right = every_result(job_b, b);
    REQUIRE(left.size() == right.size());
    REQUIRE(left.size() > 20);
    for (std::size_t i = 0; i < left.size(); ++i) {
        INFO(left[i].where << ": " << left[i].value << " and " << right[i].value);
        REQUIRE(left[i].where == right[i].where);
        CHECK(same_bits(left[i].value, right[i].value));
        CHECK(left[i].word == right[i].word);
    }
    CHECK(a.findings.size() == b.findings.size());
}

void check_same_bits(const Job& a, const Job& b) { check_same_bits(a, solved(a), b, solved(b)); }

/// The sides of every picket, in the order in which they stand.
std::vector<std::pair<double, double>> sides(const Pickets& pickets) {
    std::vector<std::pair<double, double>> all(static_cast<std::size_t>(pickets.count));
    for (const PicketPiece& piece : pickets.pieces)
        for (const int number : piece.at)
            all[static_cast<std::size_t>(number - 1)] = {piece.uphill_side, piece.downhill_side};
    return all;
}

Corner other_hand(const Corner& corner) { return {-corner.left, corner.top}; }

void check_same_saw(const SawSetting& a, const SawSetting& b) {
    CHECK_THAT(std::fabs(a.miter), within(std::fabs(b.miter), 1e-13));
    CHECK_THAT(std::fabs(a.bevel), within(std::fabs(b.bevel), 1e-13));
}

void check_same_cut(const EndCut& a, const EndCut& b) {
    check_same_saw(a.flat, b.flat);
    check_same_saw(a.edge, b.edge);
}

void check_all_within(const std::vector<double>& a, const std::vector<double>& b) {
    REQUIRE(a.size() == b.size());
    for (std::size_t i = 0; i < a.size(); ++i) CHECK_THAT(a[i], within(b[i], 1e-11));
}

void check_same_height(const std::optional<double>& a, const std::optional<double>& b) {
    REQUIRE(a.has_value() == b.has_value());
    if (a) CHECK_THAT(*a, within(*b, 1e-12));
}

void check_mirrored(const SectionResult& a, const SectionResult& b) {
    CHECK_THAT(a.slope, within(b.slope, 1e-15));
    CHECK_THAT(a.clear, within(b.clear, 1e-12));
    REQUIRE(a.members.size() == b.members.size());
    for (std::size_t m = 0; m < a.members.size(); ++m) {
        const Member &left = a.members[m], &right = b.members[m];
        INFO(left.name);
        CHECK_THAT(left.length, within(right.length, 1e-12));
        CHECK_THAT(left.top_edge, within(right.top_edge, 1e-12));
        CHECK_THAT(left.bottom_edge, within(right.bottom_edge, 1e-12));
        CHECK_THAT(left.overall, within(right.overall, 1e-12));
        check_same_cut(left.from_end, right.from_end);
        check_same_cut(left.to_end, right.to_end);
        CHECK(left.from_end.long_point == other_hand(right.from_end.long_point));
        CHECK(left.to_end.long_point == other_hand(right.to_end.long_point));
        CHECK_THAT(left.stick.piece.from.per_left, within(-right.stick.piece.from.per_left, 1e-14));
        CHECK_THAT(left.stick.piece.from.per_top, within(right.stick.piece.from.per_top, 1e-14));
    }
    REQUIRE(a.brackets.size() == b.brackets.size());
    for (std::size_t i = 0; i < a.brackets.size(); ++i) {
        CHECK(a.brackets[i].leg == b.brackets[i].leg);
        CHECK(a.brackets[i].driver_clear == b.brackets[i].driver_clear);
        CHECK_THAT(a.brackets[i].over_square, within(b.brackets[i].over_square, 1e-14));
        CHECK_THAT(a.brackets[i].tilt, within(-b.brackets[i].tilt, 1e-14));
        CHECK_THAT(a.brackets[i].skew, within(-b.brackets[i].skew, 1e-14));
        check_same_height(a.brackets[i].mark_height, b.brackets[i].mark_height);
        check_same_height(a.brackets[i].mark_left, b.brackets[i].mark_right);
        check_same_height(a.brackets[i].mark_right, b.brackets[i].mark_left);
    }
    REQUIRE(a.pickets->count == b.pickets->count);
    check_all_within(a.pickets->centres, b.pickets->centres);
    check_all_within(a.pickets->upper.centres, b.pickets->upper.centres);
    check_all_within(a.pickets->lower.centres, b.pickets->lower.centres);
    const auto left_sides = sides(*a.pickets), right_sides = sides(*b.pickets);
    for (std::size_t i = 0; i < left_sides.size(); ++i) {
        CHECK_THAT(left_sides[i].first, within(right_sides[i].first, 1e-12));
        CHECK_THAT(left_sides[i].second, within(right_sides[i].second, 1e-12));
    }
}

void check_turned_round(const SectionResult& a, const SectionResult& b) {
    CHECK_THAT(a.slope, within(-b.slope, 1e-15));
    CHECK_THAT(a.clear, within(b.clear, 1e-12));
    REQUIRE(a.members.size() == b.members.size());
    for (std::size_t m = 0; m < a.members.size(); ++m) {
        const Member &one = a.members[m], &other = b.members[m];
        INFO(one.name);
        CHECK_THAT(one.length, within(other.length, 1e-12));
        CHECK_THAT(one.top_edge, within(other.top_edge, 1e-12));
        CHECK_THAT(one.bottom_edge, within(other.bottom_edge, 1e-12));
        CHECK_THAT(one.overall, within(other.overall, 1e-12));
        check_same_cut(one.from_end, other.to_end);
        check_same_cut(one.to_end, other.from_end);
        CHECK(one.from_end.long_point == other_hand(other.to_end.long_point));
        CHECK(one.to_end.long_point == other_hand(other.from_end.long_point));
        CHECK_THAT(one.shortened[0], within(other.shortened[1], 1e-13));
        CHECK_THAT(one.shortened[1], within(other.shortened[0], 1e-13));
        CHECK(same_piece(one.stick.piece, other.stick.piece));
    }
    const std::size_t groups = a.brackets.size() / 2;
    for (std::size_t i = 0; i < a.brackets.size(); ++i) {
        const Bracket &one = a.brackets[i], &other = b.brackets[(i + groups) % (2 * groups)];
        CHECK(one.group == other.group);
        CHECK(one.leg == other.leg);
        CHECK(one.driver_clear == other.driver_clear);
        CHECK_THAT(one.over_square, within(other.over_square, 1e-14));
        CHECK_THAT(one.tilt, within(other.tilt, 1e-14));
        CHECK_THAT(one.skew, within(other.skew, 1e-14));
        check_same_height(one.mark_height, other.mark_height);
        check_same_height(one.mark_left, other.mark_left);
        check_same_height(one.mark_right, other.mark_right);
    }
    const Pickets &one = *a.pickets, &other = *b.pickets;
    REQUIRE(one.count == other.count);
    CHECK(one.per_tread == other.per_tread);
    CHECK_THAT(one.from_gap, within(other.to_gap, 1e-12));
    CHECK_THAT(one.to_gap, within(other.from_gap, 1e-12));
    CHECK_THAT(one.widest_gap, within(other.widest_gap, 1e-12));
    const std::size_t n = static_cast<std::size_t>(one.count);
    const auto one_sides = sides(one), other_sides = sides(other);
    // Between the faces that the gaps are taken to: of pickets on the side of the rail, along that.
    const double across = one.beside ? one.centres.back() + one.width / 2 + one.to_gap : a.clear;
    for (std::size_t i = 0; i < n; ++i) {
        const std::size_t mine = n - 1 - i;
        CHECK_THAT(one.centres[i], within(across - other.centres[mine], 1e-12));
        CHECK_THAT(one.upper.centres[i], within(other.upper.face_length - other.upper.centres[mine], 1e-11));
        CHECK_THAT(one.upper.near_edge(i), within(other.upper.near_edge(mine), 1e-11));
        // On a level rail neither end is long, and the tape is hooked at the from end: nothing is turned round then.
        CHECK_THAT(one_sides[i].first,
                   within(a.slope == 0 ? other_sides[mine].second : other_sides[mine].first, 1e-12));
    }
}

}  // namespace

TEST_CASE("the same choices give the same bits", "[identity]") {
    for (const auto& [name, job] : jobs_of_every_kind()) {
        INFO(name);
        const Solution first = solved(job);
        check_same_bits(job, first, job, solve(job, first.choices));
        check_same_bits(job, job);
    }
}

TEST_CASE("mirrored left and right: the same lengths and settings, the other hand", "[identity]") {
    for (const auto& [name, job] : jobs_of_every_kind()) {
        INFO(name);
        check_mirrored(solved(job).sections[0], solved(mirrored(job)).sections[0]);
    }
}

TEST_CASE("named from the other end: the same sticks, turned round", "[identity]") {
    for (const auto& [name, job] : jobs_of_every_kind()) {
        if (job.posts.empty()) continue;  // with only a distance known, which end is the foot is how it is named
        INFO(name);
        check_turned_round(solved(job).sections[0], solved(from_the_other_end(job)).sections[0]);
    }
}

TEST_CASE("in millimetres every length is 25.4 times as many", "[identity]") {
    for (const auto& [name, job] : jobs_of_every_kind()) {
        Job metric = scaled(job, 25.4);
        metric.units = Unit::millimetre;
        const std::vector<Result> inches = every_result(job, solved(job)),
                                  millimetres = every_result(metric, solved(metric));
        REQUIRE(inches.size() == millimetres.size());
        for (std::size_t i = 0; i < inches.size(); ++i) {
            const Result &a = inches[i], &b = millimetres[i];
            INFO(name << ", " << a.where);
            REQUIRE(a.where == b.where);
            switch (a.kind) {
                case Result::Kind::length: CHECK_THAT(b.value, within(a.value * 25.4, 25.4 * 2e-12)); break;
                case Result::Kind::slope: CHECK_THAT(b.value, within(a.value, 1e-13)); break;
                case Result::Kind::number: CHECK_THAT(b.value, within(a.value, 1e-12)); break;
                case Result::Kind::count: CHECK(a.value == b.value); break;
                case Result::Kind::word: CHECK((a.where == "units" || a.word == b.word)); break;
            }
        }
        CHECK(solved(job).findings.size() == solved(metric).findings.size());
    }
}

TEST_CASE("twice or half of every length, to the bit", "[identity]") {
    for (const auto& [name, job] : jobs_of_every_kind())
        for (const double factor : {2.0, 0.5}) {
            INFO(name << " times " << factor);
            const Job other = scaled(job, factor);
            const std::vector<Result> once = every_result(job, solved(job)),
                                      scaled_results = every_result(other, solved(other));
            REQUIRE(once.size() == scaled_results.size());
            for (std::size_t i = 0; i < once.size(); ++i) {
                INFO(once[i].where);
                CHECK(same_bits(once[i].value * (once[i].kind == Result::Kind::length ? factor : 1),
                                scaled_results[i].value));
            }
        }
}

TEST_CASE("a post is where it is, from whichever nosing and to whichever face it was taped", "[identity]") {
    const Job job = even_example();
    Job from_the_first = job;
    from_the_first.posts[1] = placed_post(48);
    check_same_bits(job, from_the_first);
    Job to_the_face = job;
    to_the_face.posts[1].at = Reading(2.25);
    to_the_face.posts[1].face = PostFace::downhill;
    to_the_face.posts[0].at = Reading(-3.25);
    to_the_face.posts[0].face = PostFace::uphill;
    check_same_bits(job, to_the_face);
    Job named_floor = job;
    named_floor.posts[0].base = {Base::On::tread, 0, 0, {}};
    named_floor.posts[1].base = {Base::On::height, 0, 36.25, {}};
    check_same_bits(job, named_floor);
}

TEST_CASE("shifted along the stair by whole steps, a section is the same", "[identity]") {
    for (const Build& build : {square_build(), open_build()})
        for (const double across : {0.0, 9.0}) {
            Job job = even_example(build);
            job.stairs[0].risers = Count(12);
            job.posts = {placed_post(4, 2), placed_post(4, 6)};
            job.posts[1].across = across;
            Job shifted = job;
            shifted.posts = {placed_post(4, 5), placed_post(4, 9)};
            shifted.posts[1].across = across;
            const std::vector<Result> here = every_result(job, solved(job)),
                                      there = every_result(shifted, solved(shifted));
            REQUIRE(here.size() == there.size());
            for (std::size_t i = 0; i < here.size(); ++i) {
                INFO(here[i].where);
                REQUIRE(here[i].where == there[i].where);
                if (here[i].where.find("].base") != std::string::npos)
                    CHECK_THAT(there[i].value - here[i].value, within(3 * 7.25, 1e-13));
                else if (here[i].kind == Result::Kind::count && here[i].value != there[i].value)
                    CHECK(there[i].value - here[i].value == 3);  // a nosing's number
                else
                    CHECK_THAT(there[i].value, within(here[i].value, 1e-11));
            }
        }
}

TEST_CASE("moved across together, no skew, no turn, no lean: the square job to the bit", "[identity]") {
    const Job job = even_example();
    Job moved = job;
    for (Post& post : moved.posts) post.across = 7.3125;
    check_same_bits(job, moved);
    Job zeros = job;
    for (Post& post : zeros.posts) {
        post.turn = in_degrees(0);
        post.lean = {in_degrees(0), in_degrees(0)};
        post.across = -0.0;
    }
    check_same_bits(job, zeros);
}

TEST_CASE("square posts turned by quarter turns are the same posts to the bit", "[identity]") {
    for (const auto& [name, job] : jobs_of_every_kind()) {
        if (name.find("askew") != std::string::npos) continue;  // turned by another angle already
        for (const double turn_deg : {90.0, 180.0, 270.0, 360.0, -90.0, 720.0}) {
            INFO(name << " turned " << turn_deg);
            Job turned_job = job;
            for (Post& post : turned_job.posts) post.turn = in_degrees(turn_deg);
            if (job.posts.empty()) continue;
            const std::vector<Result> plain = every_result(job, solved(job)),
                                      other = every_result(turned_job, solved(turned_job));
            REQUIRE(plain.size() == other.size());
            for (std::size_t i = 0; i < plain.size(); ++i) {
                INFO(plain[i].where);
                CHECK(plain[i].value == other[i].value);  // a zero may have another sign
            }
        }
    }
}

TEST_CASE("an oblong post turned by 90 is the one with its sizes changed over", "[identity]") {
    Job turned_job = even_example(), plain = even_example();
    turned_job.posts[1].size = {5, 3, "", {}};
    turned_job.posts[1].turn = in_degrees(90);
    plain.posts[1].size = {3, 5, "", {}};
    const std::vector<Result> a = every_result(turned_job, solved(turned_job)), b = every_result(plain, solved(plain));
    REQUIRE(a.size() == b.size());
    for (std::size_t i = 0; i < a.size(); ++i) CHECK(a[i].value == b[i].value);
}

TEST_CASE("straight across the stair: the level section's numbers", "[identity]") {
    // At a rise of 7 1/2 on 10 the nosing line comes down to the floor 10 before the first nosing.
    for (const Build& build : {square_build(), open_build()}) {
        Job job = even_example(build);
        job.stairs[0].rise = Reading(7.5);
        job.stairs[0].run = Reading(10);
        job.posts = {placed_post(-10), placed_post(-10)};
        job.posts[1].across = 63.5;
        const SectionResult across = solved(job).sections[0], floor = solved(floor_example(60, build)).sections[0];
        CHECK(across.slope == 0);
        CHECK_FALSE(across.raked());
        CHECK(across.clear == 60);
        for (std::size_t m = 0; m < floor.members.size(); ++m) {
            CHECK_THAT(across.members[m].length, within(floor.members[m].length, 1e-13));
            CHECK_THAT(across.members[m].overall, within(floor.members[m].overall, 1e-13));
            CHECK(across.members[m].from_end.long_point == Corner{0, 0});
            CHECK(across.members[m].from_end.flat.bevel == 0);
            CHECK(across.members[m].from_end.flat.miter == 0);
        }
        CHECK(across.pickets->count == floor.pickets->count);
        CHECK(across.pickets->per_tread == 0);
        check_all_within(across.pickets->centres, floor.pickets->centres);
        check_all_within(across.pickets->upper.centres, floor.pickets->upper.centres);
        CHECK_THAT(across.pickets->widest_marked, within(floor.pickets->widest_marked, 1e-12));
        REQUIRE(across.pickets->pieces.size() == 1);
        CHECK_THAT(across.pickets->pieces[0].uphill_side, within(floor.pickets->pieces[0].uphill_side, 1e-13));
        CHECK(across.brackets.size() == floor.brackets.size());
        for (std::size_t i = 0; i < floor.brackets.size(); ++i) {
            CHECK(across.brackets[i].over_square == 0);
            CHECK(across.brackets[i].leg == floor.brackets[i].leg);
            CHECK_THAT(*across.brackets[i].mark_height, within(*floor.brackets[i].mark_height, 1e-13));
        }
    }
}

TEST_CASE("straight across a tread, pickets stand on that tread", "[identity]") {
    Job job = even_example(open_build());
    job.stairs[0].rise = Reading(7.5);
    job.stairs[0].run = Reading(10);
    job.posts = {placed_post(4), placed_post(4)};
    job.posts[1].across = 63.5;
    // 36 over the nosing line, which lies 3 over the tread there; less 2 1/2.
    CHECK_THAT(solved(job).sections[0].pickets->pieces.at(0).uphill_side, within(36.5, 1e-13));
}

TEST_CASE("a clear distance over a stair gives what two posts with that clear distance give", "[identity]") {
    Job between = even_example(), known = floor_example(49.5);
    known.stairs = {even_stair()};
    known.sections[0].stair = ref(0);
    const SectionResult a = solved(between).sections[0], b = solved(known).sections[0];
    for (std::size_t m = 0; m < a.members.size(); ++m) {
        CHECK_THAT(a.members[m].length, within(b.members[m].length, 1e-12));
        CHECK_THAT(a.members[m].overall, within(b.members[m].overall, 1e-12));
    }
    check_all_within(a.pickets->upper.centres, b.pickets->upper.centres);
    check_all_within(a.pickets->lower.centres, b.pickets->lower.centres);
    CHECK_THAT(a.pickets->pieces[0].overall, within(b.pickets->pieces[0].overall, 1e-12));
}

}  // namespace rakewright::tests
