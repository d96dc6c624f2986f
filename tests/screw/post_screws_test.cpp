#include "../../solver/post_screws.hpp"

#include <cmath>

#include "../support/even_example.hpp"
#include "../support/near.hpp"

namespace rakewright::tests {
namespace {

PostScrew line(const Vector& seat, const Vector& way, double inside) {
    PostScrew screw;
    screw.way = {seat, way};
    screw.inside = inside;
    return screw;
}

/// Two level rails that meet a post from opposite sides, straight across a stair: three posts in a row.
Job across(double screw) {
    Job job = even_example();
    job.posts = {placed_post(5, 2), placed_post(5, 2), placed_post(5, 2)};
    job.posts[0].across = 60;
    job.posts[2].across = -60;
    job.sections = {section_between(0, 1), section_between(1, 2)};
    job.builds[0].screws.emplace();
    job.builds[0].screws->post_leg = ScrewSize{{}, screw, 0.19};
    return job;
}

/// Two level rails at a corner post that has no place.
Job corner(double screw, double second_height) {
    Job job = floor_example(60);
    job.posts.resize(1);
    job.posts[0].size = {3.5, 3.5, "", {}};
    job.sections[0].to = ref(0);
    job.sections.push_back(job.sections[0]);
    std::swap(job.sections[1].from, job.sections[1].to);
    job.sections[1].height = Reading(second_height);
    job.sections[1].lower_gap = LowerGap{second_height - 34, false};
    job.builds[0].screws.emplace();
    job.builds[0].screws->post_leg = ScrewSize{{}, screw, 0.19};
    return job;
}

}  // namespace

TEST_CASE("how near two straight stretches come", "[screw]") {
    const Vector x = Vector::UnitX(), y = Vector::UnitY();
    CHECK_THAT(between_screws(line({0, 0, 0}, x, 4), line({2, -1, 0.25}, y, 3)), within(0.25, 1e-15));
    CHECK_THAT(between_screws(line({0, 0, 0}, x, 1), line({2, -1, 0}, y, 3)), within(1, 1e-15));
    CHECK_THAT(between_screws(line({0, 0, 0}, x, 1), line({4, 4, 0}, y, 3)), within(5, 1e-15));
    CHECK_THAT(between_screws(line({0, 0, 0}, x, 2), line({3.5, 0, 0}, -x, 1)), within(0.5, 1e-15));
    CHECK_THAT(between_screws(line({0, 0, 0}, x, 2), line({3.5, 0, 0}, -x, 2)), within(0, 1e-15));
    CHECK_THAT(between_screws(line({0, 0, 0}, x, 4), line({1, 0.3, 0.4}, x, 1)), within(0.5, 1e-15));
}

TEST_CASE("screws from opposite sides of one post meet where both are longer than it is thick", "[screw]") {
    // 3 1/2 between the faces: two screws of 1 3/4 touch with their points.
    CHECK(has(solve(across(3)), Trouble::screws_meet));
    CHECK_FALSE(has(solve(across(1.6)), Trouble::screws_meet));
    CHECK(has(solve(across(1.66)), Trouble::screws_meet));  // 0.18 apart, and 0.19 thick
    for (const Finding& finding : solve(across(1.66)).findings)
        if (finding.trouble == Trouble::screws_meet) {
            CHECK_THAT(finding.numbers[0], within(3.5 - 2 * 1.66, 1e-12));
            CHECK_THAT(finding.numbers[1], within(0.19, 1e-15));
            CHECK(finding.numbers[2] == 1);
            CHECK(finding.numbers[3] == 1);
        }
}

TEST_CASE("where it is not known how two rails lie to each other they may meet", "[screw]") {
    // As deep as the middle, but for half a screw: round a corner they meet there.
    CHECK(has(solve(corner(1.66, 36)), Trouble::screws_meet));
    CHECK_FALSE(has(solve(corner(1.65, 36)), Trouble::screws_meet));
    CHECK_FALSE(has(solve(corner(3, 36.2)), Trouble::screws_meet));  // 0.2 over each other
    CHECK(has(solve(corner(3, 36.18)), Trouble::screws_meet));
    for (const Finding& finding : solve(corner(3, 36.18)).findings)
        if (finding.trouble == Trouble::screws_meet) {
            CHECK_THAT(finding.numbers[0], within(0.18, 1e-12));
            CHECK(finding.numbers[3] == 0);
        }
}

}  // namespace rakewright::tests
