#include "pricing.hpp"

#include <algorithm>
#include <numeric>

namespace rakewright {
namespace {

constexpr Whole most_exact_cells = 4096, usual_cells = 2048, fine_cells = 16384;
constexpr double alike_worth = 1e-12;

}  // namespace

Pricing::Pricing(const Cutting& cutting) : cutting_(cutting), load_(cutting) {
    for (const PieceFamily& family : cutting.families) widest_cut_ = std::max(widest_cut_, family.cut);
}

void Pricing::value(const std::vector<int>& left, const std::vector<double>& worth, bool fine) {
    left_ = left;
    worth_ = worth;
    order_.clear();
    rest_.clear();
    for (std::size_t i = 0; i < left.size(); ++i)
        if (left[i] > 0) (worth[i] > 0 ? order_ : rest_).push_back(static_cast<int>(i));
    const auto density = [&](int piece) {
        return worth_[static_cast<std::size_t>(piece)] / static_cast<double>(size(piece));
    };
    std::stable_sort(order_.begin(), order_.end(), [&](int a, int b) { return density(a) > density(b); });
    choose_cell(fine);
    table_.resize((order_.size() + 1) * cells_);
    std::fill(table_.end() - static_cast<std::ptrdiff_t>(cells_), table_.end(), 0.0);
    for (std::size_t i = order_.size(); i-- > 0;) fill_row(i);
}

void Pricing::choose_cell(bool fine) {
    Whole longest = 0, common = 0;
    for (const BarKind& bar : cutting_.bars) longest = std::max(longest, bar.room + widest_cut_);
    for (const int piece : order_) common = std::gcd(common, size(piece));
    cell_ = std::max(common, Whole(1));
    if (longest / cell_ > (fine ? fine_cells : most_exact_cells)) cell_ = longest / (fine ? fine_cells : usual_cells);
    cells_ = static_cast<std::size_t>(longest / cell_) + 1;
}

/// What pieces i and on in the order can be worth in so much room.
double Pricing::at_most(std::size_t i, Whole room) const {
    return table_[i * cells_ + static_cast<std::size_t>(room / cell_)];
}

void Pricing::fill_row(std::size_t i) {
    double* const here = table_.data() + i * cells_;
    const double* const after = here + cells_;
    const auto takes = static_cast<std::size_t>(size(order_[i]) / cell_);
    const double one = worth_[static_cast<std::size_t>(order_[i])];
    const auto most = static_cast<std::size_t>(left_[static_cast<std::size_t>(order_[i])]);
    const std::size_t fit = takes > 0 ? (cells_ - 1) / takes : most;
    if (takes > 0 && most >= fit) {
        std::copy(after, after + std::min(takes, cells_), here);
        for (std::size_t c = takes; c < cells_; ++c) here[c] = std::max(after[c], here[c - takes] + one);
        work_ += static_cast<std::int64_t>(cells_);
        return;
    }
    std::copy(after, after + cells_, here);
    for (std::size_t n = 1; n <= std::min(most, fit); ++n) {
        const double worth = static_cast<double>(n) * one;
        for (std::size_t c = n * takes; c < cells_; ++c) here[c] = std::max(here[c], after[c - n * takes] + worth);
        work_ += static_cast<std::int64_t>(cells_);
    }
}

void Pricing::start(std::size_t bar, int steps) {
    room_ = cutting_.bars[bar].room;
    steps_ = steps;
    counts_.assign(left_.size(), 0);
    load_ = Load(cutting_);
}

BestPattern Pricing::best(std::size_t bar, double over, int steps) {
    start(bar, steps);
    best_ = {at_most(0, room_ + widest_cut_), over, {}};
    search(0, 0, 0);
    if (steps_ > 0) best_.most = best_.worth;
    work_ += 8 * (steps - steps_);
    return std::move(best_);
}

void Pricing::search(std::size_t i, Whole used, double worth) {
    if (worth > best_.worth + alike_worth) {
        best_.worth = worth;
        best_.counts = counts_;
    }
    if (i == order_.size() || --steps_ <= 0) return;
    const int piece = order_[i];
    const auto at = static_cast<std::size_t>(piece);
    const Whole free = room_ + widest_cut_ - used;
    if (free < 0 || worth + at_most(i, free) <= best_.worth + alike_worth) return;
    const int most = static_cast<int>(std::min<Whole>(left_[at], free / size(piece)));
    for (int n = most; n >= 0 && steps_ > 0; --n) {
        const Whole then = used + n * size(piece);
        const double now = worth + n * worth_[at];
        if (now + at_most(i + 1, room_ + widest_cut_ - then) <= best_.worth + alike_worth) continue;
        load_.add(piece, n);
        counts_[at] = n;
        if (load_.needed() <= room_) search(i + 1, then, now);
        load_.add(piece, -n);
        counts_[at] = 0;
    }
}

bool Pricing::all(std::size_t bar, double over, std::size_t most, std::vector<std::vector<int>>& patterns) {
    constexpr int steps = 400000;
    start(bar, steps);
    over_ = over;
    most_patterns_ = most;
    patterns_ = &patterns;
    order_.insert(order_.end(), rest_.begin(), rest_.end());
    gather(0, 0, 0);
    order_.resize(order_.size() - rest_.size());
    work_ += 8 * (steps - steps_);
    return steps_ > 0;
}

void Pricing::gather(std::size_t i, Whole used, double worth) {
    if (--steps_ <= 0) return;
    if (i == order_.size()) {
        if (!nothing_can_be_added()) return;
        if (patterns_->size() == most_patterns_)
            steps_ = 0;
        else
            patterns_->push_back(counts_);
        return;
    }
    const int piece = order_[i];
    const auto at = static_cast<std::size_t>(piece);
    const std::size_t valued = order_.size() - rest_.size();
    const Whole free = room_ + widest_cut_ - used;
    for (int n = static_cast<int>(std::min<Whole>(left_[at], free / size(piece))); n >= 0 && steps_ > 0; --n) {
        const Whole then = used + n * size(piece);
        const double now = worth + n * worth_[at];
        if (now + at_most(std::min(i + 1, valued), room_ + widest_cut_ - then) < over_) continue;
        load_.add(piece, n);
        counts_[at] = n;
        if (load_.needed() <= room_) gather(i + 1, then, now);
        load_.add(piece, -n);
        counts_[at] = 0;
    }
}

bool Pricing::nothing_can_be_added() {
    for (const int piece : order_) {
        if (counts_[static_cast<std::size_t>(piece)] == left_[static_cast<std::size_t>(piece)]) continue;
        load_.add(piece, 1);
        const bool goes = load_.needed() <= room_;
        load_.add(piece, -1);
        if (goes) return false;
    }
    return true;
}

}  // namespace rakewright
