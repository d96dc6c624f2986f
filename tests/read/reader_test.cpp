#include "../../cli/read/reader.hpp"

#include <filesystem>
#include <fstream>
#include <sstream>

#include "../support/catch.hpp"
#include "../support/near.hpp"
#include "../support/random.hpp"

namespace rakewright::tests {
namespace {

std::string file(const std::filesystem::path& path) {
    std::ifstream stream(path, std::ios::binary);
    std::stringstream text;
    text << stream.rdbuf();
    return text.str();
}

std::string fixture(const char* name) { return file(std::filesystem::path(RAKEWRIGHT_FIXTURES) / "jobs" / name); }

ReadJob read(std::string text) { return read_job(source_of("job", std::move(text))); }

/// The text under the place of the first refusal.
std::string refused_at(const std::string& text) {
    const ReadJob result = read(text);
    REQUIRE_FALSE(result.job);
    REQUIRE_FALSE(result.refusals.empty());
    const Place place = result.refusals.front().place;
    return text.substr(place.begin, place.size);
}

constexpr const char* rest = "builds: {b: {height: 36, upper: [{name: r, width: 2, depth: 1}]}}\nsections: {s: {clear: 40, build: b}}\n";

}  // namespace

TEST_CASE("a job is read as it stands, with places that point at its values", "[read]") {
    const std::string text = std::string("units: in\nround: 1/32\n") + rest;
    const ReadJob result = read(text);
    REQUIRE(result.job);
    CHECK(result.refusals.empty());
    CHECK(*result.job->round == 1.0 / 32);
    const Place place = result.job->round->place;
    CHECK(text.substr(place.begin, place.size) == "1/32");
    REQUIRE(result.job->builds.size() == 1);
    CHECK(result.job->builds[0].id.name == "b");
    CHECK(result.job->builds[0].height == 36);
    CHECK(result.job->sections[0].build.index == 0);
}

TEST_CASE("lengths that say their unit mean the same in both unit systems", "[read]") {
    const std::string inches = fixture("fennel-wharf.yaml");
    const ReadJob result = read(inches);
    REQUIRE(result.job);
    CHECK(result.job->posts[1].size.along == 3.5);
    CHECK(result.job->posts[1].size.nominal == "4x4");
    CHECK(result.job->posts[2].size.across == 5.5);
    const ReadJob metric = read("units: mm\nposts: {p: {size: 4x6}}\n" + std::string(rest));
    REQUIRE(metric.job);
    CHECK(metric.job->posts[0].size.along == 3.5 * 25.4);
    CHECK(metric.job->posts[0].size.across == 5.5 * 25.4);
    CHECK(metric.job->builds[0].driver.bit.reach == 3 * 25.4);
}

TEST_CASE("a driver's sizes may be restated one by one", "[read]") {
    const ReadJob result =
        read("units: in\nbuilds: {b: {height: 36, upper: [{name: r, width: 2, depth: 1}], driver: {bit: {reach: 6}}}}\n"
             "sections: {s: {clear: 40, build: b}}\n");
    REQUIRE(result.job);
    CHECK(result.job->builds[0].driver.bit.reach == 6);
    CHECK(result.job->builds[0].driver.bit.diameter == 0.25);
    CHECK(result.job->builds[0].driver.body.diameter == 2);
}

TEST_CASE("an end that is given by keys is what they say", "[read]") {
    const auto ends = [](const std::string& from) {
        const ReadJob result = read(
            "units: in\nbuilds: {b: {height: 36, upper: [{name: r, width: 2, depth: 1}]}}\n"
            "sections: {s: {clear: 40, build: b, ends: {from: " +
            from + "}}}\n");
        REQUIRE(result.job);
        return result.job->sections[0].ends.from;
    };
    CHECK(ends("centre").meets == EndWish::Meets::centre);
    CHECK(ends("face").meets == EndWish::Meets::face);
    CHECK(ends("{past: 4}").meets == EndWish::Meets::past);
    CHECK(ends("{past: 4}").by == 4);
    CHECK(ends("{square: 3}").meets == EndWish::Meets::square);
    CHECK(ends("{pad: 1/2}").meets == EndWish::Meets::pad);
}

TEST_CASE("pickets are read as they stand on the side of a rail, and as round ones", "[read]") {
    const auto pickets = [](const std::string& keys) {
        const ReadJob result =
            read("units: in\nbuilds: {b: {height: 36, upper: [{name: r, width: 2, depth: 1}], pickets: {" + keys +
                 ", max_gap: 4}}}\nsections: {s: {clear: 40, build: b, picket_side: right}}\n");
        REQUIRE(result.job);
        CHECK_FALSE(result.job->sections[0].picket_side->left);
        return *result.job->builds[0].pickets;
    };
    const PicketBuild beside =
        pickets("width: 2, depth: 1, fixed: face, side: left, past: {upper: -1/8, lower: 3}, lower_end: {bevel: 45}");
    CHECK(beside.on_face());
    CHECK(beside.depth == 1);
    CHECK(beside.side->left);
    CHECK(beside.past->upper == -0.125);
    CHECK(beside.past->lower == 3);
    CHECK(beside.lower_end->cut == LowerEnd::Cut::bevel);
    CHECK_THAT(slope(beside.lower_end->bevel.angle), within(1, 1e-15));
    CHECK(pickets("width: 2, depth: 1, fixed: face, lower_end: rail").lower_end->cut == LowerEnd::Cut::rail);
    CHECK_FALSE(pickets("width: 2, depth: 1, fixed: face, lower_end: square").lower_end);
    const PicketBuild round = pickets("width: 3/4, shape: round");
    CHECK(round.shape == PicketShape::round);
    CHECK(round.depth == 0.75);
    CHECK(pickets("width: 3/4, depth: 3/4, shape: round").depth == 0.75);
}

TEST_CASE("what yaml-cpp 0.7 would misread is refused where it stands", "[read]") {
    CHECK(refused_at("units: in\njob: \"abc\nsections: 2\n") == "\"");            // a quote that swallows the rest
    CHECK(refused_at("units: in\n%job: 3\nsections: {}\n") == "%");               // hides every later line
    CHECK(refused_at("units: in\n---\nunits: mm\n") == "---");                    // only the first document is returned
    CHECK(refused_at("units: in\nunits: mm\n" + std::string(rest)) == "units");   // repeated keys are kept
    CHECK(refused_at("units: in\nround: {a: &x 1}\n") == "&");                    // anchors
    CHECK(refused_at("units: in\nround: !!int 1\n") == "!");                      // tags
    CHECK(refused_at("units: in\nround:\n" + std::string(rest)) == "round");      // a null is marked on another line
    CHECK(refused_at("units: in\nround: 1e-2\n" + std::string(rest)) == "1e-2");  // no exponents
    CHECK(refused_at("units: in\nround: .nan\n" + std::string(rest)) == ".nan");
    CHECK(refused_at("units: in\nround: 0x10\n" + std::string(rest)) == "0x10");
    CHECK(refused_at("units: in\nround: 1,5\n" + std::string(rest)) == "1,5");
    CHECK(refused_at("units: in\nround: [1,, 2]\n" + std::string(rest)) == "[");
    CHECK(refused_at("units: in\n\xffx: 1\n") == "\xff");
    CHECK(refused_at(std::string("units: in\n\0x: 1\n", 16)) == std::string("\0", 1));
    CHECK(refused_at("units: in\nx: \x1b[31m\n") == "\x1b");
}

TEST_CASE("text that the parser passes over is refused", "[read]") {
    CHECK_FALSE(read("\"units\",\"in\"\n").job);
    CHECK_FALSE(read("units: in\n,\n").job);
    CHECK_FALSE(read(",").job);
    CHECK_FALSE(read("").job);
    CHECK_FALSE(read("# only a comment\n").job);
    CHECK_FALSE(read("[1, 2]").job);
}

TEST_CASE("limits have names", "[read]") {
    CHECK_FALSE(read(std::string(100, '[')).job);
    CHECK_FALSE(read("job: " + std::string(longest_value + 1, 'x') + "\n" + rest).job);
    CHECK_FALSE(read("job: " + std::string(longest_line, ' ') + "x\n").job);
    const ReadJob deep = read("a: " + std::string(40, '[') + std::string(40, ']') + "\n");
    REQUIRE(deep.refusals.size() == 1);
    CHECK(deep.refusals[0].sentence.find("deeper than 32") != std::string::npos);
}

TEST_CASE("every mistake is told in one run, and a key that was misspelt is not missed as well", "[read]") {
    const ReadJob result = read(file(std::filesystem::path(RAKEWRIGHT_FIXTURES) / "refused" / "twelve-mistakes.yaml"));
    CHECK_FALSE(result.job);
    CHECK(result.refusals.size() >= 12);
    for (const Refusal& refusal : result.refusals)
        CHECK(refusal.sentence.find("`depth` is missing") == std::string::npos);
}

TEST_CASE("the nearest name is offered, ties together, and none that is far", "[read]") {
    CHECK(nearest("runn", {"run", "rise", "risers"}) == "'run'");
    CHECK(nearest("deepth", {"width", "depth"}) == "'depth'");
    CHECK(nearest("solev", {"solve", "schema"}) == "'solve'");
    CHECK(nearest("bat", {"cat", "rat", "horse"}) == "'cat' or 'rat'");
    CHECK(nearest("zebra", {"run", "rise"}).empty());
}

TEST_CASE("a refusal shows its line and a caret under the exact span", "[read]") {
    Refusal refusal;
    refusal.place = {13, 3};
    refusal.sentence = "something is wrong";
    const Source source{"job", "job: \xc3\xa9t\xc3\xa9\r\nx: abc # y\r\n"};
    CHECK(rendered(source, {refusal}, false) == "job:2:2: something is wrong\n  | x: abc # y\n  |  ^^^\n");
}

TEST_CASE("twenty thousand mistyped jobs are read or refused with a place in the text", "[read]") {
    Random random("mutants of a job");
    const std::string good = fixture("fennel-wharf.yaml");
    const std::string signs = " \n:{}[],\"'#-/.&*!|>%@`x7\t\\";
    int refused = 0;
    for (int i = 0; i < 20000; ++i) {
        std::string text = good;
        const int changes = random.whole(1, 2);
        for (int c = 0; c < changes; ++c) {
            const auto at = static_cast<std::size_t>(random.whole(0, static_cast<int>(text.size()) - 1));
            const char sign = signs[static_cast<std::size_t>(random.whole(0, static_cast<int>(signs.size()) - 1))];
            switch (random.whole(0, 2)) {
                case 0: text[at] = sign; break;
                case 1: text.insert(at, 1, sign); break;
                default: text.erase(at, 1); break;
            }
        }
        const ReadJob result = read(text);
        REQUIRE(result.job.has_value() == result.refusals.empty());
        for (const Refusal& refusal : result.refusals) {
            REQUIRE(refusal.place.begin <= text.size());
            REQUIRE(refusal.place.begin + refusal.place.size <= text.size());
            ++refused;
        }
        if (!result.job) REQUIRE_FALSE(rendered({"job", text}, result.refusals, false).empty());
    }
    CHECK(refused > 5000);
}

}  // namespace rakewright::tests
