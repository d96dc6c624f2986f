#pragma once

#include <cstdint>
#include <vector>

// Cutting bars into pieces, in whole numbers alone: sizes are in a division so fine that rounding pieces up and bars
// down costs nothing, and a plan that fits in them fits on the bench.

namespace rakewright {

using Whole = std::int64_t;

/// Pieces of one size. `size` is what one takes of a bar together with one cut. Ends of one slant lie in a family:
/// pieces of a family that share a cut lie nested in each other. Family 0 is square at both ends. `half`: one of its
/// ends is square, the other of the family's slant.
struct PieceKind {
    Whole size = 0;
    int demand = 0;
    int family = 0;
    bool half = false;
};

/// What a family takes of a bar besides its pieces' sizes: `ends` where a row of them shows the slant at both its ends,
/// `odd` where at one (an odd number of halves). `cut` is the cut behind a row that ends in the slant.
struct PieceFamily {
    Whole ends = 0;
    Whole odd = 0;
    Whole cut = 0;
};

/// A length that can be bought, and what one costs.
struct BarKind {
    Whole room = 0;
    Whole cost = 0;
};

struct Cutting {
    std::vector<PieceKind> pieces;
    std::vector<PieceFamily> families;  // family 0 has its cut alone
    std::vector<BarKind> bars;
};

/// What comes out of one bar: how many of each kind of piece.
struct Pattern {
    int bar = 0;
    std::vector<int> counts;
};

/// The same pattern, `times` over.
struct CutBars {
    Pattern pattern;
    int times = 0;
};

/// A plan, its cost, and a cost that no plan can be under.
struct CuttingPlan {
    std::vector<CutBars> bars;
    Whole cost = 0;
    Whole bound = 0;
    bool proven() const { return cost == bound; }
};

/// Adds up what lies on a bar. What is needed of a bar never becomes less when a piece is added.
class Load {
 public:
    explicit Load(const Cutting& cutting);
    /// Fewer than none take pieces away again.
    void add(int piece, int count);
    /// The room that it takes: the cut behind the last piece is not needed, and the row with the widest cut lies last.
    Whole needed() const;

 private:
    const Cutting* cutting_;
    Whole sizes_ = 0;
    int pieces_ = 0;
    std::vector<int> whole_, half_;
};

Whole needed(const Cutting& cutting, const std::vector<int>& counts);

/// The cheapest bar that holds so much; -1 if none does.
int cheapest_bar(const Cutting& cutting, Whole room);

/// Largest pieces first, each bar filled before the next: for each length of bar such a plan, the cheapest of them.
/// Every piece must go into a bar.
CuttingPlan first_fit_decreasing(const Cutting& cutting);

/// The totals that bars can cost.
class Totals {
 public:
    /// Of this cutting's bars; each total is known up to `most`, beyond it by what divides every cost.
    Totals(const Cutting& cutting, Whole most);
    /// The least total that is not under `least`.
    Whole next(double least) const;

 private:
    Whole common_ = 0;
    std::vector<Whole> next_;  // in parts of common_
};

}  // namespace rakewright
