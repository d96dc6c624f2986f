#include <algorithm>
#include <array>
#include <cmath>

#include "../../cli/read/reader.hpp"
#include "../../solver/cut_list.hpp"
#include "../../solver/solve.hpp"
#include "../../solver/stock_plan.hpp"
#include "../support/near.hpp"

// Pieces laid on their bars as solids: each is slid and turned as its stock allows until no two come closer than a cut.

namespace rakewright::tests {
namespace {

/// A half turn of a stick about one of its axes, or none: what becomes of along, left and top.
struct HalfTurn {
    int along, left, top;
};
constexpr HalfTurn as_it_is{1, 1, 1}, rolled{1, -1, -1}, end_for_end_top_up{-1, -1, 1}, end_for_end_top_down{-1, 1, -1};

std::vector<HalfTurn> turns_of(Nest nest) {
    if (nest == Nest::turned) return {as_it_is, rolled, end_for_end_top_up, end_for_end_top_down};
    if (nest == Nest::face_up) return {as_it_is, end_for_end_top_up};
    return {as_it_is};
}

/// How far along its four arrises reach, at the left end and at the right.
struct Arrises {
    std::array<double, 4> left, right;
};

Arrises turned(const Piece& piece, const HalfTurn& turn) {
    Arrises arrises{};
    for (std::size_t corner = 0; corner < 4; ++corner) {
        const Spot spot{(corner % 2 == 0 ? 0.5 : -0.5) * turn.left * piece.section.width,
                        (corner < 2 ? 0.5 : -0.5) * turn.top * piece.section.depth};
        const double from = turn.along * reach(piece.from, spot), to = turn.along * reach(piece.to, spot);
        arrises.left[corner] = turn.along > 0 ? from : to;
        arrises.right[corner] = turn.along > 0 ? to : from;
    }
    return arrises;
}

Piece rolled_over(const Piece& piece) {
    const auto roll = [](const Slant& slant) { return Slant{slant.at, -slant.per_left, -slant.per_top}; };
    return {piece.section, roll(piece.from), roll(piece.to)};
}

/// Whether pieces n and on can be turned so that they lie where they are said to, a kerf at least behind the one before
/// and, square to a cut that they share, a kerf exactly.
bool can_lie(const std::vector<PieceOnBar>& places, const std::vector<Piece>& pieces, Nest nest, double kerf, std::size_t n,
             const std::array<double, 4>& before) {
    if (n == places.size()) return true;
    for (const HalfTurn& turn : turns_of(nest)) {
        Arrises arrises = turned(pieces[n], turn);
        const double moved = places[n].at - *std::min_element(arrises.left.begin(), arrises.left.end());
        bool apart = true;
        for (std::size_t corner = 0; corner < 4; ++corner) {
            arrises.left[corner] += moved;
            arrises.right[corner] += moved;
            if (n == 0) continue;
            const double gap = arrises.left[corner] - before[corner];
            const Slant& slant = alike(pieces[n].from.per_left, 0) && alike(pieces[n].from.per_top, 0) ? pieces[n].to : pieces[n].from;
            const double along = kerf * std::sqrt(1 + slant.per_left * slant.per_left + slant.per_top * slant.per_top);
            apart = apart && (places[n].nested ? std::fabs(gap - along) < 1e-6 : gap > kerf - 1e-6);
        }
        const double end = *std::max_element(arrises.right.begin(), arrises.right.end());
        if (apart && std::fabs(end - places[n].at - places[n].length) < 1e-6 && can_lie(places, pieces, nest, kerf, n + 1, arrises.right))
            return true;
    }
    return false;
}

/// Lays every bar; equal pieces of a cut list may each be the other rolled over, so in more than one way.
void check_laid(const Job& job, const Solution& solution) {
    const std::vector<CutPiece> list = cut_list(job, solution);
    for (const BarResult& bar : solution.stock.front().bars)
        for (int mix = 0; mix < 4; ++mix) {
            std::vector<Piece> pieces;
            for (std::size_t n = 0; n < bar.pieces.size(); ++n) {
                const Piece& piece = list[static_cast<std::size_t>(bar.pieces[n].cut)].piece;
                pieces.push_back(mix == 1 || (mix == 2 && n % 2 == 0) || (mix == 3 && n % 3 == 0) ? rolled_over(piece) : piece);
            }
            INFO("mix " << mix);
            CHECK(can_lie(bar.pieces, pieces, job.stock.front().nest, job.stock.front().kerf, 0, {}));
        }
}

struct Ends {
    double from_left, from_top, to_left, to_top;
};

struct Laid {
    Job job;
    Solution solution;
    int nested = 0;
};

/// Rails of a job, a section each, whose ends are cut anew; out of one bar of 2 x 4.
Laid laid(const std::vector<Ends>& shapes, const std::string& nest) {
    std::string text =
        "units: in\nstairs: {s: {risers: 5, rise: 6, run: 8}}\n"
        "builds: {b: {height: 36, upper: [{name: rail, width: 2, depth: 4}]}}\n"
        "stock: [{section: [2, 4], lengths: [400], kerf: 0.2, nest: " + nest + "}]\nsections:\n";
    for (std::size_t i = 0; i < shapes.size(); ++i)
        text += "  r" + std::to_string(i) + ": {stair: s, clear_on_slope: 40, build: b}\n";
    const Source source = source_of("job", text);
    ReadJob read = read_job(source);
    REQUIRE(read.job);
    Laid whole{std::move(*read.job), {}, 0};
    whole.solution = solve(whole.job);
    REQUIRE_FALSE(whole.solution.refused());
    for (std::size_t i = 0; i < shapes.size(); ++i) {
        Member& rail = whole.solution.sections[i].members.front();
        const double half = length(rail.stick.piece) / 2;
        rail.stick.piece.from = {-half, shapes[i].from_left, shapes[i].from_top};
        rail.stick.piece.to = {half, shapes[i].to_left, shapes[i].to_top};
        rail.overall = overall(rail.stick.piece);
    }
    plan_stock(whole.job, whole.solution);
    REQUIRE(whole.solution.stock.size() == 1);
    REQUIRE(whole.solution.stock.front().bar_count == 1);
    for (const PieceOnBar& piece : whole.solution.stock.front().bars.front().pieces) whole.nested += piece.nested ? 1 : 0;
    return whole;
}

}  // namespace

TEST_CASE("pieces share a cut only where their stock lets them be turned so", "[stock]") {
    struct Shape {
        const char* name;
        Ends ends;
        int turned, face_up;  // how many of four share the cut of the one before
    };
    const Shape shapes[] = {
        {"parallel down the sides", {0, 0.75, 0, 0.75}, 3, 3},
        {"mirrored down the sides", {0, 0.75, 0, -0.75}, 3, 0},
        {"parallel across the top", {0.5, 0, 0.5, 0}, 3, 0},
        {"mirrored across the top", {0.5, 0, -0.5, 0}, 3, 3},
        {"parallel, compound", {0.3, 0.4, 0.3, 0.4}, 3, 0},
        {"mirrored, compound", {0.3, 0.4, -0.3, -0.4}, 3, 0},
        {"one slant of two mirrored", {0.3, 0.4, 0.3, -0.4}, 0, 0},
        {"half down the sides", {0, 0, 0, 0.75}, 2, 0},
        {"half across the top", {0.5, 0, 0, 0}, 2, 0},
        {"half, compound", {0, 0, 0.3, 0.4}, 0, 0},
    };
    for (const Shape& shape : shapes)
        for (const auto& [nest, nested] : {std::pair{"turned", shape.turned}, {"face_up", shape.face_up}, {"no", 0}}) {
            INFO(shape.name << ", nest: " << nest);
            const Laid whole = laid(std::vector<Ends>(4, shape.ends), nest);
            CHECK(whole.nested == nested);
            check_laid(whole.job, whole.solution);
        }
}

TEST_CASE("pieces of several shapes and one slant lie in one row", "[stock]") {
    // By hand: of three whole and two halves all but the first share a cut.
    const Laid down = laid({{0, 0.75, 0, 0.75}, {0, 0.75, 0, -0.75}, {0, -0.75, 0, 0.75}, {0, 0, 0, 0.75}, {0, -0.75, 0, 0}}, "turned");
    CHECK(down.nested == 4);
    check_laid(down.job, down.solution);
    const Laid compound = laid({{0.3, 0.4, 0.3, 0.4}, {0.3, -0.4, 0.3, -0.4}, {0.3, -0.4, -0.3, 0.4}, {0.3, 0.4, 0.3, -0.4}}, "turned");
    CHECK(compound.nested == 2);
    check_laid(compound.job, compound.solution);
}

TEST_CASE("a coped end is no cut to share", "[stock]") {
    const std::string text =
        "units: in\nstairs: {s: {risers: 5, rise: 6, run: 8}}\n"
        "builds: {b: {height: 36, upper: [{name: rail, width: 2, depth: 4}]}}\n"
        "stock: [{section: [2, 4], lengths: [400], kerf: 0.2}]\nsections: {r: {stair: s, clear_on_slope: 40, build: b, count: 3}}\n";
    const Source source = source_of("job", text);
    ReadJob read = read_job(source);
    REQUIRE(read.job);
    Solution solution = solve(*read.job);
    Member& rail = solution.sections.front().members.front();
    rail.copes[0] = Cope{};
    rail.overall = 45;
    plan_stock(*read.job, solution);
    REQUIRE(solution.stock.size() == 1);
    const BarResult& bar = solution.stock.front().bars.front();
    REQUIRE(bar.pieces.size() == 3);
    for (const PieceOnBar& piece : bar.pieces) {
        CHECK_FALSE(piece.nested);
        CHECK_THAT(piece.length, within(45, 1e-9));
    }
}

}  // namespace rakewright::tests
