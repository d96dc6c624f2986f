#include "cutting.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numeric>

namespace rakewright {

Load::Load(const Cutting& cutting)
    : cutting_(&cutting), whole_(cutting.families.size(), 0), half_(cutting.families.size(), 0) {}

void Load::add(int piece, int count) {
    const PieceKind& kind = cutting_->pieces[static_cast<std::size_t>(piece)];
    sizes_ += kind.size * count;
    pieces_ += count;
    (kind.half ? half_ : whole_)[static_cast<std::size_t>(kind.family)] += count;
}

Whole Load::needed() const {
    if (pieces_ == 0) return 0;
    if (whole_.size() == 1) return sizes_ - cutting_->families[0].cut;
    Whole sum = sizes_, last = 0;
    bool ends_square = whole_[0] > 0;
    for (std::size_t f = 1; f < whole_.size(); ++f) {
        if (half_[f] > 0) {
            ends_square = true;
            if (half_[f] % 2 != 0) sum += cutting_->families[f].odd;
        } else if (whole_[f] > 0) {
            sum += cutting_->families[f].ends;
            last = std::max(last, cutting_->families[f].cut);
        }
    }
    if (ends_square) last = std::max(last, cutting_->families[0].cut);
    return sum - last;
}

Whole needed(const Cutting& cutting, const std::vector<int>& counts) {
    Load load(cutting);
    for (std::size_t i = 0; i < counts.size(); ++i)
        if (counts[i] > 0) load.add(static_cast<int>(i), counts[i]);
    return load.needed();
}

int cheapest_bar(const Cutting& cutting, Whole room) {
    int best = -1;
    for (std::size_t b = 0; b < cutting.bars.size(); ++b)
        if (cutting.bars[b].room >= room &&
            (best < 0 || cutting.bars[b].cost < cutting.bars[static_cast<std::size_t>(best)].cost))
            best = static_cast<int>(b);
    return best;
}

namespace {

/// As many of each kind as go in, the largest first.
std::vector<int> filled(const Cutting& cutting, const std::vector<int>& order, const std::vector<int>& left,
                        Whole room) {
    std::vector<int> counts(left.size(), 0);
    Load load(cutting);
    for (const int piece : order)
        while (counts[static_cast<std::size_t>(piece)] < left[static_cast<std::size_t>(piece)]) {
            load.add(piece, 1);
            if (load.needed() > room) {
                load.add(piece, -1);
                break;
            }
            ++counts[static_cast<std::size_t>(piece)];
        }
    return counts;
}

CuttingPlan fitted_into(const Cutting& cutting, const std::vector<int>& order, std::size_t bar) {
    CuttingPlan plan;
    const Whole longest = std::max_element(cutting.bars.begin(), cutting.bars.end(), [](auto& a, auto& b) {
                              return a.room < b.room;
                          })->room;
    std::vector<int> left;
    for (const PieceKind& piece : cutting.pieces) left.push_back(piece.demand);
    while (std::any_of(left.begin(), left.end(), [](int count) { return count > 0; })) {
        const int first = *std::find_if(order.begin(), order.end(),
                                        [&](int piece) { return left[static_cast<std::size_t>(piece)] > 0; });
        Load alone(cutting);
        alone.add(first, 1);
        const Whole room = alone.needed() <= cutting.bars[bar].room ? cutting.bars[bar].room : longest;
        const std::vector<int> counts = filled(cutting, order, left, room);
        int times = std::numeric_limits<int>::max();
        for (std::size_t i = 0; i < counts.size(); ++i)
            if (counts[i] > 0) times = std::min(times, left[i] / counts[i]);
        for (std::size_t i = 0; i < counts.size(); ++i) left[i] -= counts[i] * times;
        const int cheapest = cheapest_bar(cutting, needed(cutting, counts));
        plan.cost += cutting.bars[static_cast<std::size_t>(cheapest)].cost * times;
        plan.bars.push_back({{cheapest, counts}, times});
    }
    return plan;
}

}  // namespace

CuttingPlan first_fit_decreasing(const Cutting& cutting) {
    std::vector<int> order(cutting.pieces.size());
    std::iota(order.begin(), order.end(), 0);
    std::stable_sort(order.begin(), order.end(), [&](int a, int b) {
        return cutting.pieces[static_cast<std::size_t>(a)].size > cutting.pieces[static_cast<std::size_t>(b)].size;
    });
    CuttingPlan best;
    for (std::size_t bar = 0; bar < cutting.bars.size(); ++bar) {
        CuttingPlan plan = fitted_into(cutting, order, bar);
        if (bar == 0 || plan.cost < best.cost) best = std::move(plan);
    }
    return best;
}

Totals::Totals(const Cutting& cutting, Whole most) {
    Whole cheapest = std::numeric_limits<Whole>::max();
    for (const BarKind& bar : cutting.bars) {
        common_ = std::gcd(common_, bar.cost);
        cheapest = std::min(cheapest, bar.cost);
    }
    // Which totals can be reached at all matters near zero most; beyond this many the division alone is kept.
    constexpr Whole most_known = 100000;
    if (cheapest / common_ > most_known) return;
    std::vector<char> reached(static_cast<std::size_t>(std::min(most_known, most / common_) + cheapest / common_) + 1,
                              0);
    reached[0] = 1;
    for (std::size_t i = 1; i < reached.size(); ++i)
        for (const BarKind& bar : cutting.bars)
            if (const auto cost = static_cast<std::size_t>(bar.cost / common_); cost <= i && reached[i - cost])
                reached[i] = 1;
    next_.resize(reached.size());
    for (std::size_t i = reached.size(); i-- > 0;)
        next_[i] = reached[i] || i + 1 == reached.size() ? static_cast<Whole>(i) : next_[i + 1];
}

Whole Totals::next(double least) const {
    const auto total = std::max(Whole(0), static_cast<Whole>(std::ceil(least / static_cast<double>(common_) - 1e-6)));
    const auto at = static_cast<std::size_t>(total);
    return (at < next_.size() ? next_[at] : total) * common_;
}

}  // namespace rakewright
