#include "pricing.hpp"

#include <algorithm>
#include <numeric>

namespace rakewright {
namespace {

constexpr Whole most_exact_cells = 8192, usual_cells = 2048;

class Pricing {
 public:
    Pricing(const Cutting& cutting, const std::vector<int>& left, const std::vector<double>& worth,
            std::vector<double>& table)
        : cutting_(cutting), left_(left), worth_(worth), table_(table) {
        for (std::size_t i = 0; i < worth.size(); ++i)
            if (worth[i] > 0 && left[i] > 0) order_.push_back(static_cast<int>(i));
        std::stable_sort(order_.begin(), order_.end(), [&](int a, int b) { return density(a) > density(b); });
        for (const PieceFamily& family : cutting.families) widest_cut_ = std::max(widest_cut_, family.cut);
        choose_cell();
        fill_table();
    }

    BestPattern best(std::size_t bar, double over, int steps) {
        room_ = cutting_.bars[bar].room;
        steps_ = steps;
        best_ = {at_most(0, room_ + widest_cut_), over, {}};
        counts_.assign(left_.size(), 0);
        search(0, 0, 0, Load(cutting_));
        if (steps_ > 0) best_.most = best_.worth;
        return std::move(best_);
    }

 private:
    double density(int piece) const {
        return worth_[static_cast<std::size_t>(piece)] /
               static_cast<double>(cutting_.pieces[static_cast<std::size_t>(piece)].size);
    }

    Whole size(int piece) const { return cutting_.pieces[static_cast<std::size_t>(piece)].size; }

    void choose_cell() {
        Whole longest = 0, common = 0;
        for (const BarKind& bar : cutting_.bars) longest = std::max(longest, bar.room + widest_cut_);
        for (const int piece : order_) common = std::gcd(common, size(piece));
        cell_ = std::max(common, Whole(1));
        if (longest / cell_ > most_exact_cells) cell_ = longest / usual_cells;
        cells_ = static_cast<std::size_t>(longest / cell_) + 1;
    }

    /// What pieces i and on in the order can be worth in so much room.
    double at_most(std::size_t i, Whole room) const {
        return table_[i * cells_ + static_cast<std::size_t>(room / cell_)];
    }

    /// A row for each place in the order: what the pieces from there on can be worth in so many cells.
    void fill_table() {
        table_.resize((order_.size() + 1) * cells_);
        std::fill(table_.end() - static_cast<std::ptrdiff_t>(cells_), table_.end(), 0.0);
        for (std::size_t i = order_.size(); i-- > 0;) {
            double* const here = table_.data() + i * cells_;
            const double* const after = here + cells_;
            const auto takes = static_cast<std::size_t>(size(order_[i]) / cell_);
            const double one = worth_[static_cast<std::size_t>(order_[i])];
            const auto most = static_cast<std::size_t>(left_[static_cast<std::size_t>(order_[i])]);
            std::copy(after, after + cells_, here);
            const std::size_t fit = takes > 0 ? (cells_ - 1) / takes : most;
            if (takes > 0 && most >= fit) {
                for (std::size_t c = takes; c < cells_; ++c) here[c] = std::max(after[c], here[c - takes] + one);
                continue;
            }
            for (std::size_t n = 1; n <= std::min(most, fit); ++n)
                for (std::size_t c = n * takes; c < cells_; ++c)
                    here[c] = std::max(here[c], after[c - n * takes] + static_cast<double>(n) * one);
        }
    }

    void search(std::size_t i, Whole used, double worth, const Load& load) {
        if (worth > best_.worth + 1e-12) {
            best_.worth = worth;
            best_.counts = counts_;
        }
        if (i == order_.size() || --steps_ <= 0) return;
        const int piece = order_[i];
        const auto at = static_cast<std::size_t>(piece);
        const Whole free = room_ + widest_cut_ - used;
        if (free < 0 || worth + at_most(i, free) <= best_.worth + 1e-12) return;
        const int most = static_cast<int>(std::min<Whole>(left_[at], free / size(piece)));
        for (int n = most; n >= 0 && steps_ > 0; --n) {
            const Whole then = used + n * size(piece);
            const double now = worth + n * worth_[at];
            if (now + at_most(i + 1, room_ + widest_cut_ - then) <= best_.worth + 1e-12) continue;
            Load more = load;
            more.add(piece, n);
            if (more.needed() > room_) continue;
            counts_[at] = n;
            search(i + 1, then, now, more);
            counts_[at] = 0;
        }
    }

    const Cutting& cutting_;
    const std::vector<int>& left_;
    const std::vector<double>& worth_;
    std::vector<int> order_;
    Whole widest_cut_ = 0, cell_ = 1, room_ = 0;
    std::size_t cells_ = 0;
    std::vector<double>& table_;
    int steps_ = 0;
    BestPattern best_;
    std::vector<int> counts_;
};

}  // namespace

std::vector<BestPattern> best_patterns(const Cutting& cutting, const std::vector<int>& left,
                                       const std::vector<double>& worth, const std::vector<double>& over,
                                       PricingTable& table, int steps) {
    Pricing pricing(cutting, left, worth, table.worth);
    std::vector<BestPattern> best;
    for (std::size_t bar = 0; bar < cutting.bars.size(); ++bar) best.push_back(pricing.best(bar, over[bar], steps));
    return best;
}

}  // namespace rakewright
