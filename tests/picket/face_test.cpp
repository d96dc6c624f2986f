#include "../support/face_build.hpp"

#include <cmath>

#include "../../solver/cut_list.hpp"
#include "../identities/jobs.hpp"
#include "../support/measured.hpp"
#include "../support/near.hpp"

// Pickets on the side of the rails, by hand. On the even rake 11 of level are so long on the slope:
// sqrt(11^2 + 7.25^2) = 13.1743...

namespace rakewright::tests {
namespace {

const double on_slope = std::sqrt(11 * 11 + 7.25 * 7.25) / 11;

Pickets pickets_of_job(const Job& job) {
    const Solution solution = solve(job);
    REQUIRE_FALSE(solution.refused());
    return solution.sections.front().pickets.value();
}

Job with_foot(Job job, LowerEnd::Cut cut) {
    job.builds[0].pickets->lower_end->cut = cut;
    return job;
}

double sum(const std::vector<double>& lengths) {
    double all = 0;
    for (const double length : lengths) all += length;
    return all;
}

/// Two posts on a level floor, the second turned.
Job on_floor(double turn_deg, const Build& build = face_build()) {
    Job job = even_example(build);
    job.stairs.clear();
    job.floors.resize(1);
    job.posts = {placed_post(0), placed_post(60)};
    for (Post& post : job.posts) {
        post.stair = {};
        post.floor = ref(0);
    }
    job.posts[1].turn = in_degrees(turn_deg);
    return job;
}

/// From the from post's face to the to post's, level: gaps and pickets.
double laid_end_to_end(const Pickets& pickets) {
    return pickets.from_gap + pickets.to_gap + (pickets.count - 1) * *pickets.gap + pickets.count * pickets.width;
}

std::vector<double> balls(const Job& job, Opening::Kind kind) {
    const Solution solution = measured(job);
    std::vector<double> found;
    for (const Opening& opening : solution.sections[0].openings)
        if (opening.kind == kind) found.push_back(opening.sphere);
    return found;
}

}  // namespace

TEST_CASE("on a level they run from under the cap to past the lower rail", "[picket][face]") {
    // Heads 1 + 1/8 under 36, feet 1 under 3.
    const double length = 34.875 - 2;
    for (const LowerEnd::Cut cut : {LowerEnd::Cut::square, LowerEnd::Cut::rail}) {
        const Pickets pickets = pickets_of_job(with_foot(floor_example(60, face_build()), cut));
        REQUIRE(pickets.pieces.size() == 1);
        CHECK_THAT(pickets.pieces[0].uphill_side, within(length, 1e-13));
        CHECK_THAT(pickets.pieces[0].downhill_side, within(length, 1e-13));
        CHECK_THAT(pickets.pieces[0].overall, within(length, 1e-13));
        CHECK(pickets.pieces[0].outer == 0);
    }
    // A bevel of 45 takes the picket's own depth off the side that lies on the rail.
    const PicketPiece bevelled = pickets_of_job(floor_example(60, face_build())).pieces.at(0);
    REQUIRE(bevelled.outer == -1);
    CHECK_THAT(edge_length(bevelled.piece, {-1, 0}), within(length, 1e-13));
    CHECK_THAT(edge_length(bevelled.piece, {1, 0}), within(length - 1.5, 1e-13));
    CHECK_THAT(bevelled.overall, within(length, 1e-13));
}

TEST_CASE("on a rake the head is cut at it, the foot as asked for", "[picket][face]") {
    Job job = even_example(face_build());
    job.builds[0].lower_gap = LowerGap{2.5, false};
    // In the middle: a cap 1 deep is plumb 1 on_slope; the foot is 1 under 2 1/2. 3/4 uphill the rail is 3/4 of the
    // slope higher.
    const double middle = 36 - on_slope - 0.125 - 1.5, half = 0.75 * 7.25 / 11;
    CHECK_THAT(middle, within(33.17733, 1e-5));
    const PicketPiece square = pickets_of_job(with_foot(job, LowerEnd::Cut::square)).pieces.at(0);
    CHECK_THAT(square.uphill_side, within(middle + half, 1e-12));
    CHECK_THAT(square.downhill_side, within(middle - half, 1e-12));
    CHECK_THAT(square.overall, within(middle + half, 1e-12));
    const PicketPiece parallel = pickets_of_job(with_foot(job, LowerEnd::Cut::rail)).pieces.at(0);
    CHECK_THAT(parallel.uphill_side, within(middle, 1e-12));
    CHECK_THAT(parallel.downhill_side, within(middle, 1e-12));
    CHECK_THAT(parallel.overall, within(middle + 2 * half, 1e-12));

    const Pickets pickets = pickets_of_job(job);
    const PicketPiece& bevelled = pickets.pieces.at(0);
    CHECK_THAT(pickets.cut, within(7.25 / 11, 1e-13));
    CHECK_THAT(bevelled.uphill_side, within(middle + half - 0.75, 1e-12));
    // Going up, the left of the rail is the right of a picket that is looked at up from its foot, its top uphill.
    REQUIRE(bevelled.outer == -1);
    CHECK_THAT(edge_length(bevelled.piece, {-1, 1}), within(middle + half, 1e-12));
    CHECK_THAT(edge_length(bevelled.piece, {1, 1}), within(middle + half - 1.5, 1e-12));
    CHECK_THAT(edge_length(bevelled.piece, {-1, -1}), within(middle - half, 1e-12));
    CHECK_THAT(bevelled.overall, within(middle + half, 1e-12));
    const std::vector<CutPiece> list = cut_list(job, solve(job));
    CHECK(list.back().outer == -1);
    // It is set out on the arris that is long at both ends.
    const SetOut& measure = list.back().measure;
    CHECK(measure.edge == Corner{-1, 1});
    CHECK((measure.from == Reaching::long_there && measure.to == Reaching::long_there));
    CHECK_THAT(measure.length, within(bevelled.overall, 1e-12));

    // On the other side they are the other hand: not the same piece.
    job.sections.push_back(job.sections[0]);
    job.sections[1].picket_side = NamedSide{false, {}};
    const std::vector<CutPiece> both = cut_list(job, solve(job));
    CHECK(both.size() == list.size() + 1);
    CHECK(both.back().outer == 1);
}

TEST_CASE("in millimetres, over a floor that falls, feet go down with it", "[picket][face]") {
    Build build = string_build();
    build.height = 1000;
    build.upper = {{"cap", 140, 25}, {"top rail", 38, 89}};
    build.play = 0;
    build.pickets->width = 38;
    build.pickets->depth = 38;
    build.pickets->max_gap = 99;
    build.pickets->past = PicketPast{-5, 200, {}};
    build.pickets->lower_end = LowerEnd{};
    Job job = floor_example(1468, build);
    job.units = Unit::millimetre;
    Floor floor;
    floor.id = called("terrace");
    floor.falls = {{1, 50}, {}};
    floor.toward = Toward::to;
    job.floors = {floor};
    job.sections[0].floor = ref(0);
    const Pickets pickets = pickets_of_job(job);
    // 1468 = 11 gaps of 1088 / 11 and 10 pickets of 38; heads at 1000 - 25 - 5, the floor falls 1 in 50 from the from
    // post.
    REQUIRE(pickets.count == 10);
    REQUIRE(pickets.pieces.size() == 10);
    const double gap = 1088.0 / 11;
    CHECK_THAT(*pickets.gap, within(gap, 1e-10));
    for (std::size_t i = 0; i < 10; ++i) {
        const double centre = gap + 19 + static_cast<double>(i) * (gap + 38);
        CHECK_THAT(pickets.pieces[i].uphill_side, within(970 + 200 + centre / 50, 1e-9));
        CHECK_THAT(pickets.pieces[i].downhill_side, within(pickets.pieces[i].uphill_side, 1e-9));
    }
    CHECK(pickets.beside->foot == FootPast::floor);
    CHECK_THAT(pickets.beside->off_centre, within(38, 1e-13));
}

TEST_CASE("over a stair without a lower rail they pass the treads, all alike", "[picket][face]") {
    for (const bool placed : {true, false}) {
        Job job = even_example(string_build());
        if (!placed) {
            job = floor_example(49.5, string_build());
            job.stairs = {even_stair()};
            job.sections[0].stair = ref(0);
        }
        const Pickets pickets = pickets_of_job(job);
        // 49 1/2 clear: 9 pickets of 1 1/2 leave 10 gaps of 3.6.
        REQUIRE(pickets.count == 9);
        CHECK_THAT(*pickets.gap, within(3.6, 1e-12));
        CHECK(pickets.feet.empty());
        REQUIRE(pickets.pieces.size() == 1);
        CHECK_THAT(pickets.pieces[0].uphill_side, within(36 - on_slope + 8, 1e-12));
        CHECK_THAT(pickets.pieces[0].overall, within(36 - on_slope + 8 + 1.5 * 7.25 / 11, 1e-12));
        CHECK(pickets.beside->foot == FootPast::nosing_line);
    }
    // A ball between them is no wider than the gap, at the foot post and under the first nosing too.
    for (const double ball : balls(even_example(string_build()), Opening::Kind::post_gap))
        CHECK_THAT(ball, within(3.6, 1e-9));
    for (const double ball : balls(even_example(string_build()), Opening::Kind::picket_gap))
        CHECK_THAT(ball, within(3.6, 1e-9));
}

TEST_CASE("feet that stay above a tread are refused, by how much", "[picket][face]") {
    // A tread runs on under the next nosing to the riser, 12 behind its own nosing.
    Job job = floor_example(49.5, string_build());
    job.stairs = {even_stair()};
    job.sections[0].stair = ref(0);
    const double deepest = 7.25 * 12 / 11;
    const auto past = [&](double lower) {
        job.builds[0].pickets->past->lower = lower;
        return solve(job);
    };
    CHECK_FALSE(past(deepest).refused());
    const Solution refused = past(deepest - 0.25);
    REQUIRE(refused.findings.size() == 1);
    CHECK(refused.findings[0].trouble == Trouble::foot_above_tread);
    CHECK_THAT(refused.findings[0].numbers[1], within(0.25, 1e-12));

    // With placed posts only the treads beside pickets count.
    Job placed = even_example(string_build());
    placed.builds[0].pickets->past->lower = 4;
    const Solution solution = solve(placed);
    CHECK(has(solution, Trouble::foot_above_tread));
}

TEST_CASE("gaps at the posts are taken along the side of the rail", "[picket][face]") {
    // The face of a post 3 1/2 square and turned stands 1.75 / cos off its centre on the line, and tan as far as one is
    // off that.
    const double tangent = std::tan(10 * std::acos(-1.0) / 180), cosine = std::cos(10 * std::acos(-1.0) / 180);
    const double on_line = 60 - 1.75 - 1.75 / cosine;
    Job job = on_floor(10);
    const Solution solution = solve(job);
    CHECK_THAT(solution.sections[0].clear, within(on_line, 1e-12));
    const Pickets left = pickets_of_job(job);
    job.sections[0].picket_side = NamedSide{false, {}};
    const Pickets right = pickets_of_job(job);
    CHECK(left.beside->left);
    CHECK_FALSE(right.beside->left);
    // Counter-clockwise the face turns toward what comes along its left.
    CHECK_THAT(laid_end_to_end(left), within(on_line - 0.75 * tangent, 1e-12));
    CHECK_THAT(laid_end_to_end(right), within(on_line + 0.75 * tangent, 1e-12));
    CHECK_THAT(left.to_gap, within(left.from_gap, 1e-12));
    CHECK_THAT(left.centres[0], within(left.from_gap + 0.75, 1e-12));
    // Marks begin where the rail's own side ends: half the play off the post's face.
    for (const Pickets* pickets : {&left, &right})
        for (const Marks* marks : {&pickets->upper, &pickets->lower}) {
            CHECK_THAT(marks->centres[0], within(pickets->from_gap + 0.75 - 0.03125, 1e-12));
            CHECK_THAT(marks->face_length - marks->centres.back(), within(pickets->to_gap + 0.75 - 0.03125, 1e-12));
            CHECK_THAT(marks->centres[1] - marks->centres[0], within(*pickets->gap + 1.5, 1e-12));
        }
    // A tape hooks at the square end on the left, where the skew end is cut back there; on the right both do.
    CHECK(left.upper.hook == End::from);
    CHECK(right.upper.hook == End::from);
}

TEST_CASE("marks on a rake run along the facing edges of the rails' side", "[picket][face]") {
    Job job = even_example(face_build());
    const Pickets pickets = pickets_of_job(job);
    CHECK_THAT(pickets.upper.centres[0], within((pickets.from_gap + 0.75 - 0.03125) * on_slope, 1e-12));
    CHECK_THAT(pickets.lower.centres[0], within(pickets.upper.centres[0], 1e-12));
    CHECK_THAT(pickets.upper.half_width, within(0.75 * on_slope, 1e-13));
    CHECK(pickets.upper.hook == End::from);
    CHECK(pickets.lower.hook == End::to);
    CHECK(pickets.fillets.empty());
    CHECK_THAT(sum(pickets.centres), within(9 * 49.5 / 2, 1e-10));
}

TEST_CASE("screws go level through a picket into the side of its rail", "[picket][face]") {
    Job job = even_example(face_build());
    job.builds[0].screws.emplace();
    job.builds[0].screws->picket_to_upper = ScrewSize{{}, 2.5, 0.164};
    job.builds[0].screws->picket_to_lower = ScrewSize{{}, 3.25, 0.164};
    const Solution solution = solve(job);
    REQUIRE(solution.sections[0].screws.size() == 2);
    const JointScrew &upper = solution.sections[0].screws[0], &lower = solution.sections[0].screws[1];
    CHECK_THAT(upper.hold.hold, within(1, 1e-13));
    CHECK_THAT(*upper.hold.longest, within(3, 1e-13));
    CHECK(upper.hold.comes_out == ComesOut::nowhere);
    CHECK(lower.hold.comes_out == ComesOut::side);
    CHECK(has(solution, Trouble::screw_comes_out));
}

TEST_CASE("feet that reach below what is walked on are told of", "[picket][face]") {
    Job job = floor_example(60, face_build());
    CHECK_FALSE(has(solve(job), Trouble::feet_below_surface));
    job.builds[0].pickets->past->lower = 3.5;
    const Solution solution = solve(job);
    REQUIRE(has(solution, Trouble::feet_below_surface));
    CHECK_THAT(solution.findings[0].numbers[0], within(0.5, 1e-12));
}

TEST_CASE("a section names the side only of pickets that are on one", "[picket][face]") {
    Job job = even_example();
    job.sections[0].picket_side = NamedSide{true, {}};
    CHECK(has(solve(job), Trouble::picket_side_without_face));
}

TEST_CASE("spacing them across the job keeps to the side of each rail", "[picket][face]") {
    Job job = on_floor(10);
    job.sections.push_back(job.sections[0]);
    job.sections[1].picket_side = NamedSide{false, {}};
    job.spacing = Spacing();
    job.spacing->by = Spacing::By::block;
    const Solution solution = solve(job);
    REQUIRE_FALSE(solution.refused());
    const Pickets &left = *solution.sections[0].pickets, &right = *solution.sections[1].pickets;
    CHECK_THAT(*left.gap, within(*right.gap, 1e-12));
    CHECK_THAT(laid_end_to_end(right) - laid_end_to_end(left),
               within(1.5 * std::tan(10 * std::acos(-1.0) / 180), 1e-12));
}

}  // namespace rakewright::tests
