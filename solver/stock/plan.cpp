#include "plan.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

#include "relaxed.hpp"

namespace rakewright {
namespace {

class Planning {
 public:
    explicit Planning(const Cutting& cutting)
        : cutting_(cutting), best_(first_fit_decreasing(cutting)), totals_(cutting, best_.cost) {}

    CuttingPlan whole() && {
        std::vector<int> all;
        for (const PieceKind& piece : cutting_.pieces) all.push_back(piece.demand);
        const RelaxedPlan relaxed = relaxed_plan(cutting_, all, patterns_of(best_), table_);
        known_ = patterns_of(best_);
        for (const ShareOfPattern& share : relaxed.patterns) known_.push_back(share.pattern);
        best_.bound = totals_.next(relaxed.bound);
        constexpr int dives = 12;
        for (int second = 0; second < dives && !best_.proven(); ++second) dive(relaxed, all, second);
        if (!best_.proven()) search_all(relaxed, all);
        gather();
        return std::move(best_);
    }

 private:
    static std::vector<Pattern> patterns_of(const CuttingPlan& plan) {
        std::vector<Pattern> patterns;
        for (const CutBars& bars : plan.bars) patterns.push_back(bars.pattern);
        return patterns;
    }

    static bool any(const std::vector<int>& left) {
        return std::any_of(left.begin(), left.end(), [](int count) { return count > 0; });
    }

    /// Takes bars into a plan and their pieces out of what is left; the bar is the cheapest that holds them.
    void take(CuttingPlan& plan, std::vector<int>& left, const std::vector<int>& counts, int times) const {
        const int bar = cheapest_bar(cutting_, needed(cutting_, counts));
        for (std::size_t i = 0; i < left.size(); ++i) left[i] -= counts[i] * times;
        plan.cost += cutting_.bars[static_cast<std::size_t>(bar)].cost * times;
        plan.bars.push_back({{bar, counts}, times});
    }

    /// Rounds the relaxed plan down, relaxes what is left, and where nothing can be rounded down takes the pattern
    /// nearest to one more. The dive of number n > 0 takes the second nearest at the nth turn.
    void dive(RelaxedPlan relaxed, std::vector<int> left, int second) {
        CuttingPlan plan;
        for (int turn = 1; any(left); ++turn) {
            bool down = false;
            for (const ShareOfPattern& share : relaxed.patterns) {
                int times = static_cast<int>(std::floor(share.times + 1e-6));
                for (std::size_t i = 0; i < left.size(); ++i)
                    if (share.pattern.counts[i] > 0) times = std::min(times, left[i] / share.pattern.counts[i]);
                if (times < 1) continue;
                take(plan, left, share.pattern.counts, times);
                down = true;
            }
            if (!down || turn == second) take_one(plan, left, relaxed, turn == second);
            if (plan.cost >= best_.cost) return;
            if (!any(left)) break;
            relaxed = relaxed_plan(cutting_, left, known_, table_);
            for (const ShareOfPattern& share : relaxed.patterns)
                if (known_.size() < 400) known_.push_back(share.pattern);
            if (static_cast<double>(plan.cost) + relaxed.bound * (1 - 1e-9) > static_cast<double>(best_.cost) - 0.5)
                return;
        }
        plan.bound = best_.bound;
        if (plan.cost < best_.cost) best_ = std::move(plan);
    }

    void take_one(CuttingPlan& plan, std::vector<int>& left, const RelaxedPlan& relaxed, bool second) const {
        std::vector<std::pair<double, std::size_t>> order;
        for (std::size_t p = 0; p < relaxed.patterns.size(); ++p) {
            const std::vector<int>& counts = relaxed.patterns[p].pattern.counts;
            bool goes = true;
            for (std::size_t i = 0; i < left.size(); ++i) goes = goes && counts[i] <= left[i];
            if (goes) order.emplace_back(-relaxed.patterns[p].times, p);
        }
        if (order.empty()) return;
        std::sort(order.begin(), order.end());
        const std::size_t chosen = order[second && order.size() > 1 ? 1 : 0].second;
        take(plan, left, relaxed.patterns[chosen].pattern.counts, 1);
    }

    /// Bar by bar, each with one of the largest pieces left: every pattern to which nothing can be added, in every bar.
    void search_all(const RelaxedPlan& relaxed, const std::vector<int>& all) {
        worth_ = relaxed.worth;
        order_.resize(cutting_.pieces.size());
        std::iota(order_.begin(), order_.end(), 0);
        std::stable_sort(order_.begin(), order_.end(), [&](int a, int b) {
            return cutting_.pieces[static_cast<std::size_t>(a)].size >
                   cutting_.pieces[static_cast<std::size_t>(b)].size;
        });
        steps_ = 200000;
        const Whole bound = best_.bound;
        CuttingPlan plan;
        next_bar(plan, all);
        best_.bound = steps_ > 0 ? best_.cost : bound;
    }

    void next_bar(CuttingPlan& plan, const std::vector<int>& left) {
        if (best_.proven() || --steps_ <= 0) return;
        if (!any(left)) {
            if (plan.cost < best_.cost) {
                const Whole bound = best_.bound;
                best_ = plan;
                best_.bound = bound;
            }
            return;
        }
        double least = 0;
        for (std::size_t i = 0; i < left.size(); ++i) least += left[i] * worth_[i];
        if (plan.cost + totals_.next(least * (1 - 1e-9)) >= best_.cost) return;
        const std::size_t first = static_cast<std::size_t>(
            *std::find_if(order_.begin(), order_.end(), [&](int i) { return left[static_cast<std::size_t>(i)] > 0; }));
        for (std::size_t bar = 0; bar < cutting_.bars.size(); ++bar) {
            std::vector<int> counts(left.size(), 0);
            counts[first] = 1;
            if (needed(cutting_, counts) <= cutting_.bars[bar].room) fill(plan, left, bar, counts, 0);
        }
    }

    void fill(CuttingPlan& plan, const std::vector<int>& left, std::size_t bar, std::vector<int>& counts,
              std::size_t at) {
        if (best_.proven() || --steps_ <= 0) return;
        const Whole room = cutting_.bars[bar].room;
        if (at == order_.size()) {
            for (std::size_t i = 0; i < counts.size(); ++i) {
                if (counts[i] == left[i]) continue;
                ++counts[i];
                const bool goes = needed(cutting_, counts) <= room;
                --counts[i];
                if (goes) return;
            }
            std::vector<int> rest = left;
            for (std::size_t i = 0; i < rest.size(); ++i) rest[i] -= counts[i];
            plan.bars.push_back({{static_cast<int>(bar), counts}, 1});
            plan.cost += cutting_.bars[bar].cost;
            next_bar(plan, rest);
            plan.cost -= cutting_.bars[bar].cost;
            plan.bars.pop_back();
            return;
        }
        const auto piece = static_cast<std::size_t>(order_[at]);
        const int before = counts[piece];
        while (counts[piece] < left[piece]) {
            ++counts[piece];
            if (needed(cutting_, counts) <= room) continue;
            --counts[piece];
            break;
        }
        for (; counts[piece] >= before; --counts[piece]) fill(plan, left, bar, counts, at + 1);
        counts[piece] = before;
    }

    /// Equal bars together, in the order in which they were found.
    void gather() {
        std::vector<CutBars> together;
        for (CutBars& bars : best_.bars) {
            const auto same = std::find_if(together.begin(), together.end(), [&](const CutBars& other) {
                return other.pattern.bar == bars.pattern.bar && other.pattern.counts == bars.pattern.counts;
            });
            if (same == together.end())
                together.push_back(std::move(bars));
            else
                same->times += bars.times;
        }
        best_.bars = std::move(together);
    }

    const Cutting& cutting_;
    CuttingPlan best_;
    Totals totals_;
    PricingTable table_;
    std::vector<Pattern> known_;
    std::vector<int> order_;
    std::vector<double> worth_;
    int steps_ = 0;
};

}  // namespace

CuttingPlan plan_of(const Cutting& cutting) { return Planning(cutting).whole(); }

}  // namespace rakewright
