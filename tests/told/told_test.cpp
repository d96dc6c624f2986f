#include "../../cli/told/telling.hpp"
#include "../../solver/stock_plan.hpp"
#include "../support/catch.hpp"
#include "../support/even_example.hpp"

// Findings in words, and notes of keys that mean nothing where they stand: each is said where it is so, and not where
// the key has its meaning.

namespace rakewright::tests {
namespace {

std::vector<std::string> notes_on(const Job& job) {
    Solution solution = solve(job);
    REQUIRE_FALSE(solution.refused());
    plan_stock(job, solution);
    std::vector<std::string> texts;
    for (const Note& note : notes_of(job, solution)) texts.push_back(note.text);
    return texts;
}

bool is_noted(const Job& job, const std::string& text) {
    const std::vector<std::string> notes = notes_on(job);
    return std::find(notes.begin(), notes.end(), text) != notes.end();
}

Build without_pickets() {
    Build build = square_build();
    build.pickets.reset();
    return build;
}

Post post_without_place(const std::string& name) {
    Post post;
    post.id = called(name);
    post.size = {5.5, 5.5, "", {}};
    return post;
}

/// A level rail between two posts without a place, of which only the clear distance is known.
Job between_posts() {
    Job job = floor_example(60);
    job.posts = {post_without_place("near"), post_without_place("far")};
    job.sections[0].from = ref(0);
    job.sections[0].to = ref(1);
    return job;
}

/// The same over a stair.
Job raked_between_posts() {
    Job job = between_posts();
    job.stairs = {even_stair()};
    job.sections[0].stair = ref(0);
    return job;
}

}  // namespace

TEST_CASE("every trouble is told in the words of its room, and what refuses with a remedy", "[told]") {
    const Job job = raked_between_posts();
    int trouble = 0;
    for (; room_of(static_cast<Trouble>(trouble)); ++trouble) {
        INFO("trouble " << trouble);
        Finding finding;
        finding.trouble = static_cast<Trouble>(trouble);
        finding.section = 0;
        finding.end = 0;
        const Told told = tell(job, finding);
        CHECK_FALSE(told.sentence.empty());
        CHECK(told.remedy.empty() != refuses(finding.trouble));
    }
    CHECK(trouble > static_cast<int>(Trouble::gap_at_post_too_wide));
    CHECK(tell(job, {static_cast<Trouble>(trouble), {}, {}, {}}).sentence.empty());
}

TEST_CASE("a limit of pickets without pickets has no effect", "[told]") {
    const std::string gap = "`max_gap` has no effect: the build has no pickets",
                      ball = "`max_sphere` has no effect: the build has no pickets";
    Job job = floor_example(60, without_pickets());
    CHECK_FALSE(is_noted(job, gap));
    job.sections[0].max_gap = Reading(3);
    CHECK(is_noted(job, gap));
    CHECK_FALSE(is_noted(job, ball));
    job.sections[0].max_gap.reset();
    job.sections[0].max_sphere = Reading(3);
    CHECK(is_noted(job, ball));
    job.builds[0].pickets = square_pickets();
    CHECK_FALSE(is_noted(job, ball));
}

TEST_CASE("a number of pickets on each tread has no effect over a lower group", "[told]") {
    const std::string text = "`per_tread` has no effect: the pickets stand on a lower group";
    Job job = even_example();
    CHECK_FALSE(is_noted(job, text));
    job.builds[0].pickets->per_tread = Count(2);
    CHECK(is_noted(job, text));
    Job on_treads = even_example(open_build());
    on_treads.builds[0].pickets->per_tread = Count(2);
    CHECK_FALSE(is_noted(on_treads, text));
}

TEST_CASE("a least gap at the posts has no effect without a pitch", "[told]") {
    const std::string text = "`least_end_gap` of the pickets has no effect: they have no fixed pitch";
    Job job = floor_example(60);
    job.builds[0].pickets->least_end_gap = Reading(2);
    CHECK(is_noted(job, text));
    job.builds[0].pickets->pitch = Reading(5);
    CHECK_FALSE(is_noted(job, text));
}

TEST_CASE("feet have no effect without a lower group", "[told]") {
    const std::string text = "`feet` has no effect: the build has no lower group";
    Job job = floor_example(60, open_build());
    job.builds[0].feet = FeetBuild{Reading(48), {}, {}, {}};
    CHECK(is_noted(job, text));
    Job with_lower = floor_example(60);
    with_lower.builds[0].feet = job.builds[0].feet;
    CHECK_FALSE(is_noted(with_lower, text));
}

TEST_CASE("boards round the foot of a post without a place are left out over a slope", "[told]") {
    const std::string text =
        "the boards round the foot of post far are left out: over a slope how high they reach follows from the post's "
        "place only";
    Job raked = raked_between_posts(), level = between_posts();
    CHECK_FALSE(is_noted(raked, text));
    raked.posts[1].base_trim = level.posts[1].base_trim = BaseTrim{{Reading(7)}, Reading(6)};
    CHECK(is_noted(raked, text));
    CHECK_FALSE(is_noted(level, text));
}

TEST_CASE("the taper of a post without a place is left out unless the clear was taken twice", "[told]") {
    const std::string text =
        "the taper of post near is left out: it has no place. A clear distance taken `low` and `high` says the same";
    Job job = between_posts();
    CHECK_FALSE(is_noted(job, text));
    job.posts[0].taper = Taper{{Reading(4.5)}, {}, Reading(96), 0, {}};
    CHECK(is_noted(job, text));
    job.sections[0].clear.reset();
    job.sections[0].clear_twice = ClearTwice{Reading(60), Reading(60.25), PlumbPost::to, {}};
    CHECK_FALSE(is_noted(job, text));
}

TEST_CASE("an offset means nothing between square posts of which the clear is known", "[told]") {
    const std::string text =
        "`offset` has no effect: a clear distance to square posts is the same beside their centres";
    Job job = between_posts();
    job.sections[0].offset.from = Reading(1);
    CHECK(is_noted(job, text));
    job.posts[0].shape = PostShape::round;
    CHECK_FALSE(is_noted(job, text));
    CHECK_FALSE(is_noted(between_posts(), text));
}

TEST_CASE("what no stick of stock is cut to is left out of the plan, and counted", "[told]") {
    Job job = even_example();
    Stock stock;
    stock.section = {Reading(1.5), Reading(1.5)};
    stock.lengths = {Reading(96)};
    job.stock = {stock};
    const auto text = [](const std::string& pieces) {
        return "the plan leaves out " + pieces +
               " that no stick of stock is cut to: turned or round pickets, and handrails that are round or known "
               "by their perimeter";
    };
    CHECK_FALSE(is_noted(job, text("1 piece")));
    Handrail rail;
    rail.id = called("right-hand");
    rail.stair = ref(0);
    rail.height = Reading(36);
    rail.profile.diameter = Reading(1.5);
    job.handrails = {rail};
    CHECK(is_noted(job, text("1 piece")));
    job.handrails.push_back(rail);
    CHECK(is_noted(job, text("2 pieces")));
    for (Handrail& handrail : job.handrails) {
        handrail.profile.diameter.reset();
        handrail.profile.width = handrail.profile.depth = Reading(1.5);
    }
    CHECK_FALSE(is_noted(job, text("2 pieces")));
}

}  // namespace rakewright::tests
