#include "relaxed.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace rakewright {
namespace {

constexpr double no_end = std::numeric_limits<double>::infinity();
/// What a piece out of nothing costs, in bars: so much that none is taken where bars will do.
constexpr double out_of_nothing = 50;

bool goes(const std::vector<int>& counts, const std::vector<int>& left) {
    return std::equal(counts.begin(), counts.end(), left.begin(), [](int count, int most) { return count <= most; });
}

}  // namespace

Relaxation::Relaxation(const Cutting& cutting) : cutting_(cutting), pricing_(cutting) {
    std::vector<double> least;
    for (const PieceKind& piece : cutting.pieces) least.push_back(piece.demand);
    for (const BarKind& bar : cutting.bars) scale_ = std::max(scale_, static_cast<double>(bar.cost));
    least.resize(least.size() + cutting.bars.size(), 0);
    program_ = LinearProgram(std::move(least));
    // Whatever is left and however few bars there may be, there is something to begin with.
    const std::vector<int> none(cutting.pieces.size(), 0);
    for (std::size_t b = 0; b < cutting.bars.size(); ++b) know({static_cast<int>(b), none});
    for (std::size_t i = 0; i < cutting.pieces.size(); ++i) {
        std::vector<int> counts = none;
        counts[i] = 1;
        know({-1, counts});
        if (cutting.pieces[i].demand > 0) know({cheapest_bar(cutting, needed(cutting, counts)), counts});
    }
}

void Relaxation::know(const Pattern& pattern) {
    std::vector<int> entries = pattern.counts;
    entries.resize(entries.size() + cutting_.bars.size(), 0);
    const auto bar = static_cast<std::size_t>(std::max(pattern.bar, 0));
    if (pattern.bar >= 0) entries[pattern.counts.size() + bar] = 1;
    program_.add_column(pattern.bar < 0 ? out_of_nothing : cost(bar), entries);
    patterns_.push_back(pattern);
}

void Relaxation::ask(const ToRelax& asked) {
    const std::size_t pieces = asked.left.size();
    for (std::size_t i = 0; i < pieces; ++i) program_.bound_row(i, asked.left[i], no_end);
    for (std::size_t b = 0; b < cutting_.bars.size(); ++b)
        program_.bound_row(pieces + b, asked.limits.least[b],
                           asked.limits.most[b] == any_number ? no_end : asked.limits.most[b]);
    for (std::size_t p = 0; p < patterns_.size(); ++p)
        if (!goes(patterns_[p].counts, asked.left)) program_.ban(p);
}

/// Adds what gains, and says whether anything does. The bound holds however far the columns were driven: where bars are
/// not limited every pattern's worth is pressed under its bar's cost (Farley 1990), and else each bar that a plan worth
/// its while can have is taken to gain what the best does (Lasdon 1970).
bool Relaxation::look_for_patterns(const ToRelax& asked, RelaxedPlan& plan, bool fine) {
    const std::size_t pieces = asked.left.size();
    std::vector<double> worth(program_.worth().begin(), program_.worth().begin() + static_cast<std::ptrdiff_t>(pieces));
    for (double& one : worth) one = std::max(one, 0.0);
    pricing_.value(asked.left, worth, fine);
    double of_pieces = 0, press = 1, of_bars = 0;
    for (std::size_t i = 0; i < pieces; ++i) of_pieces += asked.left[i] * worth[i];
    bool gains = false, limited = false;
    for (std::size_t b = 0; b < cutting_.bars.size(); ++b) {
        const double of_bar = program_.worth()[pieces + b], over = cost(b) - of_bar;
        const BestPattern best = pricing_.best(b, over + 1e-9, fine ? 400000 : 20000);
        press = std::min(press, cost(b) / std::max(best.most, 1e-12));
        const int least = asked.limits.least[b], most = asked.limits.most[b];
        limited = limited || least > 0 || most < any_number;
        const Whole left_to_spend = std::max<Whole>(0, asked.dearest - asked.spent);
        const auto payable = static_cast<double>(std::min<Whole>(most, left_to_spend / cutting_.bars[b].cost + 1));
        of_bars += of_bar * (of_bar > 0 ? least : of_bar < 0 ? payable : 0) - payable * std::max(0.0, best.most - over);
        if (best.counts.empty()) continue;
        gains = true;
        know({static_cast<int>(b), best.counts});
    }
    const double bound = (limited ? of_pieces + of_bars : of_pieces * press) * scale_;
    if (bound > plan.bound) {
        plan.bound = bound;
        for (double& one : worth) one *= press * scale_;
        plan.worth = std::move(worth);
    }
    return gains;
}

RelaxedPlan Relaxation::plan(const ToRelax& asked, const Totals& totals) {
    ask(asked);
    RelaxedPlan plan;
    plan.worth.assign(asked.left.size(), 0);
    constexpr int most_rounds = 2000;
    const auto paid = static_cast<double>(asked.spent);
    bool fine = false;
    for (int round = 0; round < most_rounds; ++round) {
        if (program_.solve(no_end) != LinearProgram::Outcome::solved) break;
        plan.cost = program_.cost() * scale_;
        const bool gains = look_for_patterns(asked, plan, fine);
        const Whole least = totals.next(paid + plan.bound);
        if (least > asked.dearest || least >= totals.next(paid + plan.cost)) break;
        if (!gains && fine) break;
        fine = !gains;
    }
    const std::vector<double> levels = program_.levels();
    for (std::size_t p = 0; p < levels.size(); ++p)
        if (levels[p] > 1e-9 && patterns_[p].bar >= 0) plan.patterns.push_back({patterns_[p], levels[p]});
    return plan;
}

}  // namespace rakewright
