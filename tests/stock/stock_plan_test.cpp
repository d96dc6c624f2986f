#include <array>

#include "../../cli/read/reader.hpp"
#include "../../solver/solve.hpp"
#include "../../solver/stock_plan.hpp"
#include "../support/near.hpp"

namespace rakewright::tests {
namespace {

struct Planned {
    Job job;
    Solution solution;
};

Planned planned(const std::string& text) {
    const Source source = source_of("job", text);
    ReadJob read = read_job(source);
    REQUIRE(read.job);
    Planned whole{std::move(*read.job), {}};
    whole.solution = solve(whole.job);
    REQUIRE_FALSE(whole.solution.refused());
    plan_stock(whole.job, whole.solution);
    return whole;
}

std::string bars_of(const std::string& lengths, const std::string& more) {
    return "units: in\nstock: [{section: [2, 4], lengths: [" + lengths + "], " + more + "}]\n";
}

const StockResult& only(const Planned& whole) {
    REQUIRE(whole.solution.stock.size() == 1);
    return whole.solution.stock.front();
}

/// Rails of 40 along the slope, 4 deep, on a rake of 3 in 4: cos is 4/5, so a kerf of 0.2 takes 0.25 along the bar.
std::string rails(int count, const std::string& size = "width: 2, depth: 4") {
    return "stairs: {s: {risers: 5, rise: 6, run: 8}}\n"
           "builds: {b: {height: 36, upper: [{name: rail, " +
           size +
           "}]}}\n"
           "sections: {r: {stair: s, clear_on_slope: 40, build: b, count: " +
           std::to_string(count) + "}}\n";
}

}  // namespace

TEST_CASE("trim comes off each end, a cut between neighbours and none where nothing is left", "[stock]") {
    const std::string two = "also_cut: [{name: board, section: [4, 2], length: 47 3/8, count: 2}]\n";
    // By hand: 2 x 47.375 + 0.25 = 95 = 96 - 2 x 0.5.
    const Planned fits = planned(bars_of("96", "kerf: 1/4, trim: 1/2") + two);
    REQUIRE(only(fits).bar_count == 1);
    const BarResult& bar = only(fits).bars.front();
    CHECK_THAT(bar.pieces[0].at, within(0.5, 1e-12));
    CHECK_THAT(bar.pieces[1].at, within(0.5 + 47.375 + 0.25, 1e-12));
    CHECK(bar.offcut == 0);
    CHECK(only(fits).bought == 96);
    CHECK(only(fits).proven);
    CHECK(only(planned(bars_of("96", "kerf: 0.2501, trim: 1/2") + two)).bar_count == 2);
    CHECK(only(planned(bars_of("96", "kerf: 1/4, trim: 0.5001") + two)).bar_count == 2);
    // 96 - 2 x 40 - 2 x 0.25 = 15.5: the cut behind the last is made.
    const Planned left =
        planned(bars_of("96", "kerf: 1/4") + "also_cut: [{name: board, section: [2, 4], length: 40, count: 2}]\n");
    CHECK_THAT(only(left).bars.front().offcut, within(15.5, 1e-12));
}

TEST_CASE("parallel raked ends nest and share a cut", "[stock]") {
    // By hand, n pieces with one common miter: 3 x 40 + 2 x 0.2 / 0.8 + 4 x 3/4 = 123.5.
    const Planned three = planned(bars_of("123.5", "kerf: 0.2") + rails(3));
    REQUIRE(only(three).bar_count == 1);
    const BarResult& bar = only(three).bars.front();
    for (std::size_t i = 0; i < 3; ++i) {
        CHECK_THAT(bar.pieces[i].at, within(40.25 * static_cast<double>(i), 1e-9));
        CHECK_THAT(bar.pieces[i].length, within(43, 1e-9));
    }
    CHECK(bar.offcut == 0);
    CHECK(only(planned(bars_of("123.499", "kerf: 0.2") + rails(3))).bar_count == 2);
    // One alone takes its overall: 40 + 3.
    CHECK(only(planned(bars_of("43", "kerf: 0.2") + rails(1))).bar_count == 1);
    // Turned over in its stock it is the same piece.
    CHECK(only(planned(bars_of("123.5", "kerf: 0.2") + rails(3, "width: 2, depth: 4"))).bars.front().pieces.size() ==
          3);
    // A square stick before them: 30 + 0.2 and the row.
    const std::string stick = "also_cut: [{name: stick, section: [2, 4], length: 30}]\n";
    CHECK(only(planned(bars_of("153.7", "kerf: 0.2") + rails(3) + stick)).bar_count == 1);
    CHECK(only(planned(bars_of("153.699", "kerf: 0.2") + rails(3) + stick)).bar_count == 2);
}

TEST_CASE("pickets on treads pair up head to head", "[stock]") {
    const std::string job =
        "units: in\nstairs: {s: {risers: 5, rise: 6, run: 8, nosing: 0}}\n"
        "posts: {a: {stair: s, at: -5, size: 4x4}, b: {stair: s, at: 4, nosing: last, size: 4x4}}\n"
        "builds: {b: {height: 36, upper: [{name: rail, width: 2, depth: 4}], pickets: {width: 1, depth: 1, max_gap: "
        "8}}}\n"
        "sections: {r: {from: a, to: b, build: b}}\n"
        "stock: [{section: 1, lengths: [1000], kerf: 0.2}]\n";
    const Planned whole = planned(job);
    REQUIRE(only(whole).bar_count == 1);
    const std::vector<PieceOnBar>& pieces = only(whole).bars.front().pieces;
    REQUIRE(pieces.size() >= 4);
    // A head's tip reaches 1 x 3/4 past the short side, so nested tips overlap by 3/4 less the cut's 0.25.
    int pairs = 0;
    for (std::size_t i = 1; i < pieces.size(); ++i) {
        const double between = pieces[i].at - pieces[i - 1].at - pieces[i - 1].length;
        CHECK_THAT(between, within(pieces[i].nested ? 0.25 - 0.75 : 0.2, 1e-9));
        pairs += pieces[i].nested ? 1 : 0;
    }
    CHECK(pairs == static_cast<int>(pieces.size() / 2));
}

TEST_CASE("prices decide where they are given", "[stock]") {
    // One of 96 for 5 is dearer than one of 144 for 4.
    const std::string board = "also_cut: [{name: board, section: [2, 4], length: 60}]\n";
    const Planned whole = planned(bars_of("96, 144", "prices: [5, 4]") + board);
    CHECK(only(whole).bars.front().length == 144);
    CHECK(only(whole).bought == 4);
    CHECK(only(whole).bound == 4);
    CHECK(only(whole).total_length == 144);
}

TEST_CASE("a metric job is cut to the tenth of a millimetre", "[stock]") {
    // By hand: 3 x 797.6 + 2 x 3.2 + 2 x 0.4 = 2400.
    const std::string job =
        "units: mm\nstock: [{section: [45, 70], lengths: [2400], kerf: 3.2, trim: 0.4}]\n"
        "also_cut: [{name: stick, section: [70, 45], length: 797.6, count: 3}]\n";
    CHECK(only(planned(job)).bar_count == 1);
    CHECK(only(planned("# \n" + std::string(job).replace(job.find("797.6"), 5, "797.7"))).bar_count == 2);
}

TEST_CASE("what cannot be cut is refused where it stands", "[stock]") {
    const auto refused = [](const std::string& text, Trouble trouble, const std::string& at) {
        const Planned whole = planned(text);
        INFO(text);
        REQUIRE(whole.solution.findings.size() == 1);
        const Finding& finding = whole.solution.findings.front();
        CHECK(finding.trouble == trouble);
        CHECK(refuses(finding.trouble));
        CHECK(text.substr(finding.place.begin, finding.place.size) == at);
        CHECK(whole.solution.stock.empty());
    };
    const std::string board = "also_cut: [{name: board, section: [2, 4], length: 97, count: 2}]\n";
    refused(bars_of("96, 48", "kerf: 1/4") + board, Trouble::longer_than_stock, "97");
    refused(bars_of("96, 97 1/4", "trim: 1/4") + board, Trouble::longer_than_stock, "97");
    refused(bars_of("42", "kerf: 0.2") + rails(1), Trouble::longer_than_stock, "42");
    refused(bars_of("96, 100", "prices: [7]") + board, Trouble::prices_do_not_match, "7");
    refused(bars_of("96", "trim: 48") + board, Trouble::bar_trimmed_away, "48");
    const std::string twice =
        "units: in\nstock: [{section: [2, 4], lengths: [99]}, {section: [4, 2], lengths: [99]}]\n";
    const Planned whole = planned(twice + board);
    REQUIRE(whole.solution.findings.size() == 1);
    CHECK(whole.solution.findings.front().trouble == Trouble::stock_twice);
    CHECK(whole.solution.findings.front().place.begin > whole.solution.findings.front().also.begin);
}

TEST_CASE("a section without stock is noted, and the rest is planned", "[stock]") {
    const Planned whole = planned(
        bars_of("96", "kerf: 1/8") +
        "also_cut: [{name: a, section: [2, 4], length: 30}, {name: b, section: [1, 1], length: 30, count: 3}]\n");
    CHECK(only(whole).bar_count == 1);
    REQUIRE(whole.solution.findings.size() == 1);
    CHECK(whole.solution.findings.front().trouble == Trouble::no_stock_of_section);
    CHECK(whole.solution.findings.front().numbers == std::array<double, 4>{1, 1, 3, 0});
}

TEST_CASE("a job without stock is left alone", "[stock]") {
    const Planned whole = planned("units: in\n" + rails(3));
    CHECK(whole.solution.stock.empty());
    CHECK(whole.solution.findings.empty());
}

TEST_CASE("which end of a piece lies first, and stock that nothing is cut from", "[stock]") {
    // Pickets on treads are square at the foot, their from end, and slanted at the head: two share a slanted cut, head
    // to head, so that the second lies with its head first.
    const Planned whole = planned(
        "units: in\nstairs: {s: {risers: 5, rise: 7 1/4, run: 11, nosing: 1}}\n"
        "posts: {a: {stair: s, at: -5, size: 4}, b: {stair: s, at: 4, nosing: last, size: 4}}\n"
        "builds: {b: {height: 36, upper: [{name: rail, width: 2, depth: 2}], pickets: {width: 1, depth: 1, max_gap: "
        "4}}}\n"
        "sections: {r: {from: a, to: b, build: b}}\n"
        "stock: [{section: 1, lengths: [96]}, {section: [9, 9], lengths: [96]}, {section: 2, lengths: [96]}]\n");
    REQUIRE(whole.solution.stock.size() == 3);
    int nested = 0;
    for (const BarResult& bar : whole.solution.stock[0].bars)
        for (const PieceOnBar& piece : bar.pieces) {
            CHECK(piece.to_end_first == piece.nested);
            nested += piece.nested;
        }
    CHECK(nested > 0);
    int told = 0;
    for (const Finding& finding : whole.solution.findings) {
        if (finding.trouble != Trouble::nothing_from_stock) continue;
        CHECK(finding.numbers[0] == 9);
        ++told;
    }
    CHECK(told == 1);
}

}  // namespace rakewright::tests
