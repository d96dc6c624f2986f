#pragma once

#include "linear.hpp"
#include "pricing.hpp"

namespace rakewright {

/// A pattern, and how many times over it is used where that need not be a whole number.
struct ShareOfPattern {
    Pattern pattern;
    double times = 0;
};

/// The cheapest plan in which a pattern may be used in part. No plan in whole bars costs less than `bound`. `worth` is
/// what each piece adds to the cost; where bars are not limited, no pattern is worth more than its bar costs by it.
struct RelaxedPlan {
    std::vector<ShareOfPattern> patterns;
    std::vector<double> worth;
    double cost = 0;
    double bound = 0;
};

/// How many bars of each kind there may be: no fewer than `least`, no more than `most`.
struct BarLimits {
    std::vector<int> least, most;
};

/// A number of bars that limits nothing.
constexpr int any_number = 1000000;

/// What a relaxed plan is asked for: of how many pieces, out of how many bars, what has been spent before, and from
/// where on it is of no use.
struct ToRelax {
    std::vector<int> left;
    BarLimits limits;
    Whole spent = 0;
    Whole dearest = 0;
};

/// The linear relaxation over all patterns, by column generation (Gilmore and Gomory 1961, 1963), of the whole cutting
/// and then of what is left of it. What was found before is to hand again.
class Relaxation {
 public:
    explicit Relaxation(const Cutting& cutting);

    void know(const Pattern& pattern);

    /// Patterns are looked for until there are no better ones, or what is spent and the bound together come to the same
    /// of `totals` as the cost does, or to more than the dearest.
    RelaxedPlan plan(const ToRelax& asked, const Totals& totals);

    /// Where the last plan stands. Pieces and limits may only become fewer and closer from one plan to the next; to go
    /// back, restore.
    const LinearState& state() const { return program_.state(); }
    void restore(const LinearState& state) { program_.restore(state); }

    Pricing& pricing() { return pricing_; }
    std::int64_t work() const { return program_.work() + pricing_.work(); }

 private:
    double cost(std::size_t bar) const { return static_cast<double>(cutting_.bars[bar].cost) / scale_; }
    void ask(const ToRelax& asked);
    bool look_for_patterns(const ToRelax& asked, RelaxedPlan& plan, bool fine);

    const Cutting& cutting_;
    Pricing pricing_;
    double scale_ = 1;
    LinearProgram program_;          // rows: pieces, then bars
    std::vector<Pattern> patterns_;  // a column each; bar -1: a piece out of nothing
};

}  // namespace rakewright
