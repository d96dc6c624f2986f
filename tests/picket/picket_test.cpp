#include "../../solver/picket/picket.hpp"

#include <algorithm>
#include <cmath>

#include "../support/even_example.hpp"
#include "../support/near.hpp"

namespace rakewright::tests {
namespace {

const double lengthened = std::sqrt(7.25 * 7.25 + 11 * 11) / 11;

Solution solved(const Job& job) {
    Solution solution = solve(job);
    REQUIRE_FALSE(solution.refused());
    return solution;
}

Pickets pickets_of_job(const Job& job) { return solved(job).sections.front().pickets.value(); }

Job with_stair(Job job, int risers, double rise, double run) {
    job.stairs[0].risers = Count(risers);
    job.stairs[0].rise = Reading(rise);
    job.stairs[0].run = Reading(run);
    return job;
}

Job open_example(std::optional<int> per_tread = std::nullopt, double picket = 1.25, double max_gap = 4.5) {
    Build build = open_build(picket, max_gap);
    if (per_tread) build.pickets->per_tread = Count(*per_tread);
    return even_example(build);
}

double middle_length(const PicketPiece& piece) { return (piece.uphill_side + piece.downhill_side) / 2; }

const Finding& only(const Solution& solution) {
    REQUIRE(solution.findings.size() == 1);
    return solution.findings.front();
}

}  // namespace

TEST_CASE("between two rails on a rake: one length, both sides alike, heads cut at the rake", "[picket]") {
    const Pickets pickets = pickets_of_job(even_example());
    // 49 1/2 clear, 1 1/2 wide, gaps to 3 7/8: nine, 3.6 apart.
    CHECK(pickets.count == 9);
    CHECK_THAT(pickets.gap.value(), within(3.6, 1e-13));
    CHECK_THAT(pickets.from_gap, within(3.6, 1e-13));
    CHECK_THAT(pickets.to_gap, within(3.6, 1e-13));
    CHECK_THAT(pickets.pitch.value(), within(5.1, 1e-13));
    CHECK_THAT(pickets.pitch_on_slope.value(), within(5.1 * lengthened, 1e-13));
    CHECK(pickets.cut == even_slope);
    REQUIRE(pickets.pieces.size() == 1);
    const PicketPiece& piece = pickets.pieces[0];
    CHECK(piece.count == 9);
    CHECK(piece.at == std::vector<int>{1, 2, 3, 4, 5, 6, 7, 8, 9});
    CHECK_THAT(piece.uphill_side, within(34 - 4.25 * lengthened, 1e-13));  // 36 less all depths plumb less the gap of 2
    CHECK_THAT(piece.downhill_side, within(piece.uphill_side, 1e-13));
    CHECK_THAT(piece.overall, within(piece.uphill_side + 1.5 * even_slope, 1e-13));
}

TEST_CASE("on a floor between two groups: square at both ends", "[picket]") {
    const Pickets pickets = pickets_of_job(floor_example(71.625));
    CHECK(pickets.count == 13);
    CHECK_THAT(pickets.gap.value(), within((71.625 - 13 * 1.5) / 14, 1e-13));
    CHECK(pickets.cut == 0);
    CHECK_THAT(pickets.pieces[0].uphill_side, within(36 - 2.75 - 2 - 1.5, 1e-13));
    CHECK_THAT(pickets.pieces[0].overall, within(29.75, 1e-13));
    CHECK(pickets.upper.hook == End::from);
}

TEST_CASE("a gap of exactly max_gap: the even example at 3.6", "[picket]") {
    Job job = even_example();
    job.builds[0].pickets->max_gap = 3.6;
    CHECK(pickets_of_job(job).count == 9);
    job.sections[0].max_gap = Reading(3.5999);
    CHECK(pickets_of_job(job).count == 10);
    job.sections[0].max_gap = Reading(3.875);
    CHECK(pickets_of_job(job).count == 9);
}

TEST_CASE("a clear distance that makes 3 3/4 exactly takes that count, whatever the width and unit", "[picket]") {
    for (int count = 1; count <= 30; ++count)
        for (const double width : {0.75, 1.25, 1.5, 0.7, 1.1})
            for (const double unit : {1.0, 25.4}) {
                Build build = square_build();
                build.pickets->width = width * unit;
                build.pickets->max_gap = 3.75 * unit;
                build.height = 36 * unit;
                build.bracket.reset();
                const Pickets pickets =
                    pickets_of_job(floor_example((count * width + (count + 1) * 3.75) * unit, build));
                INFO(count << " of " << width << " times " << unit);
                REQUIRE(pickets.count == count);
                REQUIRE_THAT(pickets.widest_gap, within(3.75 * unit, 1e-12 * unit));
            }
}

TEST_CASE("one picket has no gap between neighbours, none has no marks", "[picket]") {
    const Pickets one = pickets_of_job(floor_example(8));
    CHECK(one.count == 1);
    CHECK_FALSE(one.gap.has_value());
    CHECK_FALSE(one.pitch.has_value());
    CHECK_FALSE(one.pitch_on_slope.has_value());
    CHECK_THAT(one.from_gap, within(3.25, 1e-14));
    CHECK(one.pieces.size() == 1);
    const Pickets none = pickets_of_job(floor_example(3.875));
    CHECK(none.count == 0);
    CHECK(none.pieces.empty());
    CHECK(none.centres.empty());
    CHECK(none.upper.centres.empty());
    CHECK(none.lower.centres.empty());
    CHECK(none.widest_gap == 3.875);
}

TEST_CASE("a plough makes pickets longer by its depth over cos r, square to each rail", "[picket]") {
    Job job = even_example();
    job.builds[0].pickets->plough = {0.25, 0.375};
    const PicketPiece piece = pickets_of_job(job).pieces[0];
    CHECK_THAT(piece.uphill_side, within(34 - 4.25 * lengthened + 0.625 * lengthened, 1e-13));
    CHECK_THAT(piece.downhill_side, within(piece.uphill_side, 1e-13));
}

TEST_CASE("balusters of 2 ft 5 and 2 ft 9: half a rise apart", "[picket][published]") {
    // American House Carpenter, art. 258: two a tread, long less short is half a riser; 29 and 33, so a rise of 8.
    Job job = with_stair(open_example(2, 1.5), 9, 8, 10);
    const double cosine = 10 / std::sqrt(164.0);
    // The short one's middle stands 1 3/4 behind its nosing: the rail's underside is 29 above the tread there.
    job.builds[0].height = 29 - 0.8 * 1.75 + 2.5 / cosine;
    const Pickets pickets = pickets_of_job(job);
    REQUIRE(pickets.pieces.size() == 2);
    CHECK_THAT(middle_length(pickets.pieces[0]), within(29, 1e-12));
    CHECK_THAT(middle_length(pickets.pieces[1]), within(33, 1e-12));
    CHECK(pickets.pieces[0].count == 8);
    CHECK(pickets.pieces[1].count == 8);
    CHECK(pickets.pieces[0].at == std::vector<int>{1, 3, 5, 7, 9, 11, 13, 15});
    CHECK_THAT(pickets.pieces[0].uphill_side - pickets.pieces[0].downhill_side, within(1.5 * 0.8, 1e-12));
}

TEST_CASE("the second baluster stands half a tread on and is half a rise longer", "[picket][published]") {
    // Building Construction, vol. 3, 19.
    const Pickets pickets = pickets_of_job(open_example(2));
    REQUIRE(pickets.pieces.size() == 2);
    CHECK_THAT(pickets.pieces[1].uphill_side - pickets.pieces[0].uphill_side, within(7.25 / 2, 1e-12));
    CHECK_THAT(pickets.centres[1] - pickets.centres[0], within(11.0 / 2, 1e-13));
    CHECK_THAT(pickets.centres[2] - pickets.centres[1], within(11.0 / 2, 1e-13));
}

TEST_CASE("stock of 28 and 32 with an inch into rail and tread shows 26 and 30", "[picket][published]") {
    // Building Construction, vol. 3, 26. Its inch into the rail is along the baluster, plumb: square to the rail it is
    // cos r.
    Job job = with_stair(open_example(2, 1.5), 9, 8, 10);
    const double cosine = 10 / std::sqrt(164.0);
    job.builds[0].height = 26 - 0.8 * 1.75 + 2.5 / cosine;
    const Pickets bare = pickets_of_job(job);
    job.builds[0].pickets->plough = {cosine, 1};
    const Pickets stock = pickets_of_job(job);
    CHECK_THAT(middle_length(bare.pieces[0]), within(26, 1e-12));
    CHECK_THAT(middle_length(bare.pieces[1]), within(30, 1e-12));
    CHECK_THAT(middle_length(stock.pieces[0]), within(28, 1e-12));
    CHECK_THAT(middle_length(stock.pieces[1]), within(32, 1e-12));
}

TEST_CASE("k on a tread are k lengths, R/k apart, the same on every tread", "[picket]") {
    for (const int k : {1, 2, 3, 4}) {
        INFO(k << " a tread");
        const Pickets pickets = pickets_of_job(open_example(k, 1.25, 20));
        CHECK(pickets.per_tread == k);
        CHECK(pickets.count == 4 * k);
        REQUIRE(pickets.pieces.size() == static_cast<std::size_t>(k));
        for (std::size_t j = 0; j < pickets.pieces.size(); ++j) {
            CHECK(pickets.pieces[j].count == 4);
            // At the riser face, 1 behind the nosing, the rail's underside is 36 - 2 1/2 / cos r + tan r over the
            // tread.
            const double downhill = 36 - 2.5 * lengthened + even_slope + double(j) * 7.25 / k;
            CHECK_THAT(pickets.pieces[j].downhill_side, within(downhill, 1e-12));
            CHECK_THAT(pickets.pieces[j].uphill_side, within(downhill + 1.25 * even_slope, 1e-12));
            CHECK_THAT(pickets.pieces[j].overall, within(downhill + 1.25 * even_slope, 1e-12));
        }
        if (k > 1) CHECK_THAT(pickets.gap.value(), within(11.0 / k - 1.25, 1e-12));
    }
}

TEST_CASE("a flight of thirteen between newels: 23 balusters of two lengths", "[picket]") {
    // Two a tread, the second half a rise longer: "Building Construction" vol. 3, Stair Building; the first one's
    // centre half its diameter from the riser: American House Carpenter, art. 258. Derived: 23 balusters of 2 lengths,
    // none astride, 3 3/4 between them. The rule for pickets between two rails would give 22 of 22 lengths.
    Job job = with_stair(open_example(std::nullopt, 1.25, 3.9375), 13, 7.5, 10);
    for (Post& post : job.posts) {
        post.at = Reading(1);  // over the riser faces
        post.base = {Base::On::tread, 0, 0, {}};
    }
    const Pickets pickets = pickets_of_job(job);
    CHECK(pickets.per_tread == 2);
    CHECK(pickets.count == 23);
    CHECK(pickets.pieces.size() == 2);
    CHECK_THAT(std::fabs(middle_length(pickets.pieces[0]) - middle_length(pickets.pieces[1])), within(3.75, 1e-12));
    CHECK_THAT(pickets.gap.value(), within(3.75, 1e-12));
    CHECK_THAT(pickets.from_gap, within(3.25, 1e-12));  // from the newel's face, 2 3/4, to the second's, 6
    CHECK_THAT(pickets.to_gap, within(2, 1e-12));
}

TEST_CASE("on a floor, without a lower group: as between two groups, down to the floor", "[picket]") {
    const Pickets pickets = pickets_of_job(floor_example(60, open_build()));
    CHECK(pickets.count == fewest_between({60, 1.25}, 3.9375));
    CHECK(pickets.per_tread == 0);
    REQUIRE(pickets.pieces.size() == 1);
    CHECK_THAT(pickets.pieces[0].uphill_side, within(33.5, 1e-13));
    CHECK(pickets.lower.centres.empty());
}

TEST_CASE("over a stair whose posts have no place pickets are spaced alike and have no lengths", "[picket]") {
    Job job = floor_example(49.5, open_build());
    job.stairs = {even_stair()};
    job.sections[0].stair = ref(0);
    const Pickets pickets = pickets_of_job(job);
    CHECK(pickets.count == fewest_between({49.5, 1.25}, 3.9375));
    CHECK(pickets.pieces.empty());
    CHECK(pickets.upper.centres.size() == static_cast<std::size_t>(pickets.count));
    // Between two rails their length is known all the same.
    job.builds[0] = square_build();
    CHECK(pickets_of_job(job).pieces.size() == 1);
}

TEST_CASE("the gap at a post too wide: the count that cures it does", "[picket]") {
    // Two on 11: the last ends at 40.75, 5 1/2 before the head post's face.
    const Solution solution = solved(open_example(2, 1.25, 4.5));
    const Finding& finding = only(solution);
    CHECK(finding.trouble == Trouble::gap_at_post_too_wide);
    CHECK(finding.end == 1);
    CHECK(finding.section == 0);
    CHECK_THAT(finding.numbers[0], within(5.5, 1e-13));
    CHECK(finding.numbers[1] == 4.5);
    CHECK(finding.numbers[2] == 3);
    CHECK_THAT(finding.numbers[3], within(1, 1e-13));
    CHECK(solved(open_example(3, 1.25, 4.5)).findings.empty());
    // And so does moving the post by as much.
    Job moved = open_example(2, 1.25, 4.5);
    moved.posts[1].at = Reading(4 - finding.numbers[3]);
    CHECK(solved(moved).findings.empty());
}

TEST_CASE("the gap at the foot is the same at any count: only a move cures it", "[picket]") {
    const Solution solution = solved(open_example(std::nullopt, 1.25, 3.9375));
    const Finding& finding = only(solution);
    CHECK(finding.trouble == Trouble::gap_at_post_too_wide);
    CHECK(finding.end == 0);
    CHECK_THAT(finding.numbers[0], within(4.25, 1e-13));  // from the face at -3 1/4 to the riser face at 1
    CHECK(finding.numbers[2] == 0);
    CHECK_THAT(finding.numbers[3], within(0.3125, 1e-13));
    Job moved = open_example(std::nullopt, 1.25, 3.9375);
    moved.posts[0].at = Reading(-5 + finding.numbers[3]);
    CHECK(solved(moved).findings.empty());
}

TEST_CASE("fewer on a tread than the limit asks for: said, with the count that serves", "[picket]") {
    Job job = open_example(1, 1.25, 4.5);
    job.posts[1].at = Reading(-4);  // so that the gap at the head is not wide as well
    const Solution solution = solved(job);
    REQUIRE(has(solution, Trouble::gap_between_too_wide));
    const auto finding = std::find_if(solution.findings.begin(), solution.findings.end(),
                                      [](const Finding& f) { return f.trouble == Trouble::gap_between_too_wide; });
    CHECK_THAT(finding->numbers[0], within(9.75, 1e-13));
    CHECK(finding->numbers[2] == 2);
    CHECK(finding->numbers[3] == 1);
}

TEST_CASE("on a rail askew the middle of a picket's downhill face stands at the riser face", "[picket]") {
    Job job = open_example(2);
    job.posts[1].across = 20;
    const Pickets pickets = pickets_of_job(job);
    REQUIRE(pickets.count == 8);
    const double plan = std::sqrt(53.0 * 53 + 20 * 20), x = 53 / plan;
    for (std::size_t i = 0; i < 8; ++i) {
        // Centres are level from the foot post's face, which the rail's centre line leaves 1 3/4 up the stair.
        const double middle_of_face = -5 + 1.75 + (pickets.centres[i] - 0.625) * x;
        CHECK_THAT(middle_of_face, within(1 + 5.5 * double(i), 1e-12));
    }
}

}  // namespace rakewright::tests
