#pragma once

#include <cstdint>

#include "cutting.hpp"

namespace rakewright {

/// What a pattern may be worth at most, and the best that was found: `counts` is empty where none is worth more than
/// was asked for.
struct BestPattern {
    double most = 0;
    double worth = 0;
    std::vector<int> counts;
};

/// Looks for patterns by what each piece is worth (none negative) and no more of a piece than are left. A table over
/// the room in cells, sizes rounded down, bounds a search that knows the exact sizes; where all sizes are whole cells
/// the search goes straight to the best.
class Pricing {
 public:
    explicit Pricing(const Cutting& cutting);

    /// Each time before patterns are looked for. `fine`: with many more cells, for a bound that is close.
    void value(const std::vector<int>& left, const std::vector<double>& worth, bool fine = false);

    /// The pattern worth most, as long as it is worth more than `over`. After so many `steps` the best so far is taken,
    /// and `most` is the table's.
    BestPattern best(std::size_t bar, double over, int steps = 20000);

    /// Adds every pattern worth no less than `over` to which nothing can be added. False, and some are missing, where
    /// that would be more than `most` in all, or takes too many steps.
    bool all(std::size_t bar, double over, std::size_t most, std::vector<std::vector<int>>& patterns);

    /// Steps so far, each counted by the numbers that it went through.
    std::int64_t work() const { return work_; }

 private:
    Whole size(int piece) const { return cutting_.pieces[static_cast<std::size_t>(piece)].size; }
    void choose_cell(bool fine);
    double at_most(std::size_t i, Whole room) const;
    void fill_row(std::size_t i);
    void start(std::size_t bar, int steps);
    void search(std::size_t i, Whole used, double worth);
    void gather(std::size_t i, Whole used, double worth);
    bool nothing_can_be_added();

    const Cutting& cutting_;
    Whole widest_cut_ = 0;
    std::vector<int> left_;
    std::vector<double> worth_;
    std::vector<int> order_, rest_;  // those worth something, the most for its size first; those worth nothing
    Whole cell_ = 1, room_ = 0;
    std::size_t cells_ = 0;
    std::vector<double> table_;  // a row for each place in the order: what the pieces from there on can be worth
    Load load_;
    std::vector<int> counts_;
    int steps_ = 0;
    BestPattern best_;
    double over_ = 0;
    std::size_t most_patterns_ = 0;
    std::vector<std::vector<int>>* patterns_ = nullptr;
    std::int64_t work_ = 0;
};

}  // namespace rakewright
