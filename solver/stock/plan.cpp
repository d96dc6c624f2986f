#include "plan.hpp"

#include <algorithm>
#include <cmath>

#include "choice.hpp"
#include "dive.hpp"

namespace rakewright {
namespace {

// Work is counted in numbers gone through, about a thousand million of them a second; never in time, so that every
// machine comes to the same plan.
constexpr std::int64_t work_of_choice = 100000000, work_of_counts = 100000000;
constexpr int first_dives = 3, dives_at_whole_counts = 12, most_counts = 200, counts_between_dives = 8;

class Planning {
 public:
    explicit Planning(const Cutting& cutting)
        : cutting_(cutting), best_(first_fit_decreasing(cutting)), totals_(cutting, best_.cost), relaxation_(cutting) {}

    CuttingPlan whole() && {
        const Possible all = everything();
        best_.bound = all.bound;
        dive_from(all, first_dives);
        if (!best_.proven()) choose(all.outlook.relaxed);
        if (!best_.proven()) count_bars(all);
        gather();
        return std::move(best_);
    }

 private:
    /// Plans with so many bars of each kind, none of them cheaper than the bound.
    struct Possible {
        Outlook outlook;
        Whole bound = 0;
    };

    Possible everything() {
        Possible all;
        ToRelax& asked = all.outlook.asked;
        for (const PieceKind& piece : cutting_.pieces) asked.left.push_back(piece.demand);
        asked.limits.least.resize(cutting_.bars.size(), 0);
        asked.limits.most.resize(cutting_.bars.size(), any_number);
        asked.dearest = best_.cost;
        for (const CutBars& bars : best_.bars) relaxation_.know(bars.pattern);
        relax(all);
        return all;
    }

    void relax(Possible& possible) {
        possible.outlook.relaxed = relaxation_.plan(possible.outlook.asked, totals_);
        possible.outlook.state = relaxation_.state();
        possible.bound = totals_.next(possible.outlook.relaxed.bound);
    }

    void keep(std::optional<CuttingPlan> plan) {
        if (!plan || plan->cost >= best_.cost) return;
        plan->bound = best_.bound;
        best_ = std::move(*plan);
    }

    void dive_from(const Possible& possible, int dives) {
        for (int number = 0; number < dives && !best_.proven() && possible.bound < best_.cost; ++number)
            keep(dive(cutting_, totals_, relaxation_, possible.outlook, best_.cost - 1, number));
    }

    /// Looks for a plan a little over the bound, then for one a little further over it, until there is one or none.
    void choose(const RelaxedPlan& relaxed) {
        std::int64_t work = work_of_choice;
        for (double over = relaxed.bound / 400; !best_.proven(); over *= 2) {
            const Whole dearest =
                std::min(best_.cost - 1, std::max(best_.bound, static_cast<Whole>(relaxed.bound + over)));
            Choice choice = choose_patterns(cutting_, relaxed, totals_, relaxation_.pricing(), dearest, work);
            const bool found = choice.plan.has_value();
            keep(std::move(choice.plan));
            if (!choice.complete) return;
            best_.bound = found ? best_.cost : std::min(best_.cost, totals_.next(static_cast<double>(dearest + 1)));
        }
    }

    /// Makes the number of bars of each kind whole, the plans of the least bound first, and dives from there. Once a
    /// dive from whole numbers does not come to their cost, the bound stays.
    void count_bars(const Possible& all) {
        std::vector<Possible> open{all};
        bool bound_rises = true;
        const std::int64_t until = relaxation_.work() + work_of_counts;
        for (int n = 1; n <= most_counts && !best_.proven() && relaxation_.work() < until; ++n) {
            const auto least =
                std::min_element(open.begin(), open.end(), [](auto& a, auto& b) { return a.bound < b.bound; });
            const Whole bound = least == open.end() ? best_.cost : std::min(least->bound, best_.cost);
            if (bound_rises) best_.bound = std::max(best_.bound, bound);
            if (bound == best_.cost) return;
            const Possible possible = std::move(*least);
            open.erase(least);
            const std::vector<double> bars = bars_of(possible.outlook.relaxed);
            const std::size_t between = furthest_from_whole(bars);
            if (between < bars.size()) {
                split(possible, between, static_cast<int>(std::floor(bars[between])), open);
                if (n % counts_between_dives == 0) dive_from(possible, 1);
                continue;
            }
            dive_from(possible, dives_at_whole_counts);
            bound_rises = false;
            split_around(possible, bars, open);
        }
    }

    std::vector<double> bars_of(const RelaxedPlan& relaxed) const {
        std::vector<double> bars(cutting_.bars.size(), 0);
        for (const ShareOfPattern& share : relaxed.patterns)
            bars[static_cast<std::size_t>(share.pattern.bar)] += share.times;
        return bars;
    }

    static std::size_t furthest_from_whole(const std::vector<double>& bars) {
        std::size_t furthest = bars.size();
        double most = 1e-6;
        for (std::size_t b = 0; b < bars.size(); ++b)
            if (const double off = std::fabs(bars[b] - std::round(bars[b])); off > most) {
                most = off;
                furthest = b;
            }
        return furthest;
    }

    /// At most so many bars of a kind, or more.
    void split(const Possible& possible, std::size_t bar, int most, std::vector<Possible>& open) {
        const BarLimits& limits = possible.outlook.asked.limits;
        add(possible, bar, limits.least[bar], most, open);
        add(possible, bar, most + 1, limits.most[bar], open);
    }

    /// All but these numbers themselves.
    void split_around(Possible possible, const std::vector<double>& bars, std::vector<Possible>& open) {
        BarLimits& limits = possible.outlook.asked.limits;
        for (std::size_t b = 0; b < bars.size(); ++b) {
            const int here = static_cast<int>(std::lround(bars[b]));
            add(possible, b, limits.least[b], here - 1, open);
            add(possible, b, here + 1, limits.most[b], open);
            limits.least[b] = limits.most[b] = here;
        }
    }

    void add(const Possible& of, std::size_t bar, int least, int most, std::vector<Possible>& open) {
        if (least > most) return;
        Possible possible;
        ToRelax& asked = possible.outlook.asked = of.outlook.asked;
        asked.limits.least[bar] = least;
        asked.limits.most[bar] = most;
        asked.dearest = best_.cost - 1;
        relaxation_.restore(of.outlook.state);
        relax(possible);
        if (possible.bound < best_.cost) open.push_back(std::move(possible));
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
    Relaxation relaxation_;
};

}  // namespace

CuttingPlan plan_of(const Cutting& cutting) { return Planning(cutting).whole(); }

}  // namespace rakewright
