#include "../../cli/read/refusal.hpp"

#include "../../cli/read/character.hpp"
#include "../../cli/read/reader.hpp"
#include "../support/catch.hpp"

namespace rakewright::tests {
namespace {

Refusal refusal_at(std::uint32_t begin, std::uint32_t size, std::string sentence) {
    return {{begin, size}, std::move(sentence), {}, {}, {}};
}

std::string shown_in(const std::string& text, const Refusal& refusal) {
    return rendered({"job", text}, {refusal}, false);
}

constexpr const char* rest =
    "builds: {b: {height: 36, upper: [{name: r, width: 2, depth: 1}]}}\nsections: {s: {clear: 40, build: b}}\n";

}  // namespace

TEST_CASE("lines and columns count characters from one", "[read][refusal]") {
    CHECK(shown_in("a: \xc3\xa9\xc3\xa9 x\n", refusal_at(8, 1, "here")) ==
          "job:1:7: here\n  | a: \xc3\xa9\xc3\xa9 x\n  |       ^\n");
    CHECK(shown_in("a: 1\r\n\r\nb: 2\r\n", refusal_at(8, 1, "here")) == "job:3:1: here\n  | b: 2\n  | ^\n");
    CHECK(shown_in("a: 1", refusal_at(4, 0, "here")) == "job:1:5: here\n  | a: 1\n  |     ^\n");
    CHECK(shown_in("", refusal_at(0, 0, "here")) == "job:1:1: here\n  | \n  | ^\n");
}

TEST_CASE("a caret stands under its span behind tabs, wide characters and marks", "[read][refusal]") {
    CHECK(shown_in("a:\t\tx\n", refusal_at(4, 1, "here")) == "job:1:5: here\n  | a:  x\n  |     ^\n");
    // Two columns each: U+6F22 and U+5B57 are W in Unicode's EastAsianWidth.txt.
    CHECK(shown_in("\xe6\xbc\xa2: \xe5\xad\x97!\n", refusal_at(5, 3, "here")) ==
          "job:1:4: here\n  | \xe6\xbc\xa2: \xe5\xad\x97!\n  |     ^^\n");
    // e and a combining acute, U+0301: one column, two characters.
    CHECK(shown_in("e\xcc\x81: x\n", refusal_at(5, 1, "here")) == "job:1:5: here\n  | e\xcc\x81: x\n  |    ^\n");
}

TEST_CASE("of a long line only what stands around the span is shown, the caret still under it", "[read][refusal]") {
    const std::string line = std::string(500, 'x') + "BAD" + std::string(500, 'y');
    const std::string text = shown_in(line, refusal_at(500, 3, "here"));
    const std::size_t first = text.find("  | "), second = text.find("  | ", first + 1);
    CHECK(text.find("BAD") - first == text.find("^^^") - second);
    CHECK(second - first < 300);
    CHECK(text.substr(0, first) == "job:1:501: here\n");
}

TEST_CASE("nothing that a terminal obeys is passed on", "[read][refusal]") {
    Refusal refusal = refusal_at(3, 1, "here");
    const std::string text =
        rendered({"a\x1b[31m\xc2\x9b.yaml", "a: \x1b[2J\xff\xc2\x9b\xe2\x80\xae\n"}, {refusal}, false);
    CHECK(text == "a?[31m?.yaml:1:4: here\n  | a: ?[2J???\n  |    ^\n");
    CHECK(shown("\x1b]0;x\x07") == "?]0;x?");
}

TEST_CASE("refusals come in the order of their places, and many are counted", "[read][refusal]") {
    std::vector<Refusal> refusals{refusal_at(6, 1, "second"), refusal_at(0, 1, "first")};
    const std::string text = rendered({"job", "a: 1\n\nb: 2\n"}, refusals, false);
    CHECK(text.find("first") < text.find("second"));
    refusals.assign(most_shown + 7, refusal_at(0, 1, "again"));
    const std::string many = rendered({"job", "a: 1\n"}, refusals, false);
    CHECK(many.substr(many.size() - 15) == "... and 7 more\n");
}

TEST_CASE("another place is shown with its own line", "[read][refusal]") {
    Refusal refusal = refusal_at(5, 1, "`a` is given twice");
    refusal.also.push_back({{0, 1}, "first given here"});
    const std::string text = shown_in("a: 1\na: 2\n", refusal);
    CHECK_THAT(
        text, Catch::Matchers::StartsWith("job:2:1: `a` is given twice\n  | a: 2\n  | ^\n  first given here: job:1:1"));
    CHECK_THAT(text, Catch::Matchers::EndsWith("  | a: 1\n  | ^\n"));
}

TEST_CASE("colour only where it is asked for", "[read][refusal]") {
    const Source source{"job", "a: 1\n"};
    CHECK(rendered(source, {refusal_at(0, 1, "here")}, false).find('\033') == std::string::npos);
    CHECK(rendered(source, {refusal_at(0, 1, "here")}, true).find("\033[31m^\033[0m") != std::string::npos);
}

TEST_CASE("the nearest names: letters put in, left out, changed or swapped", "[read][refusal]") {
    CHECK(nearest("heigth", {"height", "width"}) == "'height'");  // two neighbours swapped
    CHECK(nearest("hight", {"height", "width"}) == "'height'");
    CHECK(nearest("post-1O", {"post-1", "post-10", "post-20"}) == "'post-1' or 'post-10'");
    CHECK(nearest("p0", {"p1", "p2", "p3", "p4", "p5"}).empty());
    CHECK(nearest("post-0", {"post-1", "post-2", "post-3", "post-4", "post-5"}) == "'post-1' or 'post-2' or 'post-3'");
    CHECK(nearest(std::string(65, 'x'), {std::string(64, 'x')}).empty());
    CHECK(nearest("run", {}).empty());
}

TEST_CASE("a usual slip in a length is told beside what is expected", "[read][refusal]") {
    const auto expected = [](const std::string& length) {
        const ReadJob result = read_job({"job", "units: in\nround: " + length + "\n" + rest});
        REQUIRE(result.refusals.size() == 1);
        return result.refusals[0].expected;
    };
    CHECK_THAT(expected("1e3"), Catch::Matchers::EndsWith("without an exponent"));
    CHECK_THAT(expected("1E-3"), Catch::Matchers::EndsWith("without an exponent"));
    CHECK_THAT(expected("7 1/4 in 11"), Catch::Matchers::EndsWith("this is a slope"));
    CHECK_THAT(expected("33 deg"), Catch::Matchers::EndsWith("this is an angle"));
    CHECK_THAT(expected("1,5"), Catch::Matchers::Contains("behind a point"));
    CHECK_THAT(expected("2000000"), Catch::Matchers::EndsWith("larger than 1000000"));
    CHECK_THAT(expected("wide"), Catch::Matchers::EndsWith("1.2 m"));
}

TEST_CASE("a job with very many mistakes is refused with so many kept, and at once", "[read][refusal]") {
    std::string text = "units: in\nposts:\n";
    for (int i = 0; i < 20000; ++i) text += "  post-number-" + std::to_string(i) + ": {size: 4}\n";
    text += "builds: {b: {height: 36, upper: [{name: r, width: 2, depth: 1}]}}\nsections:\n";
    for (int i = 0; i < 20000; ++i)
        text += "  s" + std::to_string(i) + ": {from: post-numbre-" + std::to_string(i) + ", clear: 40, build: b}\n";
    const ReadJob result = read_job({"job", text});
    CHECK(result.refusals.size() == most_kept);
    CHECK(result.refusals.front().nearest == "'post-number-0'");
    // Comparing every wrong name with every right one would take minutes: from some number on, none is suggested.
    CHECK(result.refusals.back().nearest.empty());
}

}  // namespace rakewright::tests
