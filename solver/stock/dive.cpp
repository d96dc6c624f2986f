#include "dive.hpp"

#include <algorithm>
#include <cmath>

namespace rakewright {
namespace {

constexpr double whole_within = 1e-6;

bool any(const std::vector<int>& counts) {
    return std::any_of(counts.begin(), counts.end(), [](int count) { return count > 0; });
}

class Dive {
 public:
    Dive(const Cutting& cutting, const Outlook& from, Whole dearest)
        : cutting_(cutting), asked_(from.asked), relaxed_(from.relaxed) {
        asked_.dearest = dearest;
    }

    std::optional<CuttingPlan> plan(const Totals& totals, Relaxation& relaxation, int number) && {
        for (int turn = 1;; ++turn) {
            const bool second = turn == number;
            const bool down = round_down();
            const bool took = (!down || second) && take_nearest(second);
            if (asked_.spent > asked_.dearest || (!down && !took)) return {};
            if (!any(asked_.left)) return finished();
            relaxed_ = relaxation.plan(asked_, totals);
            if (totals.next(static_cast<double>(asked_.spent) + relaxed_.bound) > asked_.dearest) return {};
        }
    }

 private:
    bool round_down() {
        bool down = false;
        for (const ShareOfPattern& share : relaxed_.patterns) {
            const int times = std::min(static_cast<int>(std::floor(share.times + whole_within)), fits(share.pattern));
            if (times < 1) continue;
            take(share.pattern, times);
            down = true;
        }
        return down;
    }

    bool take_nearest(bool second) {
        std::vector<const ShareOfPattern*> nearest;
        for (const ShareOfPattern& share : relaxed_.patterns)
            if (fits(share.pattern) > 0) nearest.push_back(&share);
        if (nearest.empty()) return false;
        std::stable_sort(nearest.begin(), nearest.end(), [](auto* a, auto* b) { return a->times > b->times; });
        take(nearest[second && nearest.size() > 1 ? 1 : 0]->pattern, 1);
        return true;
    }

    /// How often a pattern goes into what is asked for; an empty one does not.
    int fits(const Pattern& pattern) const {
        if (!any(pattern.counts)) return 0;
        int times = asked_.limits.most[static_cast<std::size_t>(pattern.bar)];
        for (std::size_t i = 0; i < asked_.left.size(); ++i)
            if (pattern.counts[i] > 0) times = std::min(times, asked_.left[i] / pattern.counts[i]);
        return times;
    }

    void take(const Pattern& pattern, int times) {
        const auto bar = static_cast<std::size_t>(pattern.bar);
        for (std::size_t i = 0; i < asked_.left.size(); ++i) asked_.left[i] -= pattern.counts[i] * times;
        asked_.limits.least[bar] = std::max(0, asked_.limits.least[bar] - times);
        if (asked_.limits.most[bar] < any_number) asked_.limits.most[bar] -= times;
        asked_.spent += cutting_.bars[bar].cost * times;
        plan_.bars.push_back({pattern, times});
    }

    /// Each pattern out of the cheapest bar that holds it.
    CuttingPlan finished() {
        for (CutBars& bars : plan_.bars) {
            bars.pattern.bar = cheapest_bar(cutting_, needed(cutting_, bars.pattern.counts));
            plan_.cost += cutting_.bars[static_cast<std::size_t>(bars.pattern.bar)].cost * bars.times;
        }
        return std::move(plan_);
    }

    const Cutting& cutting_;
    ToRelax asked_;
    RelaxedPlan relaxed_;
    CuttingPlan plan_;
};

}  // namespace

std::optional<CuttingPlan> dive(const Cutting& cutting, const Totals& totals, Relaxation& relaxation,
                                const Outlook& from, Whole dearest, int number) {
    relaxation.restore(from.state);
    return Dive(cutting, from, dearest).plan(totals, relaxation, number);
}

}  // namespace rakewright
