#include "choice.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

namespace rakewright {
namespace {

constexpr double no_end = std::numeric_limits<double>::infinity();
constexpr double whole_within = 1e-6;
constexpr std::size_t most_patterns = 6000;

double off_whole(double value) { return std::fabs(value - std::round(value)); }

class Choosing {
 public:
    Choosing(const Cutting& cutting, const Totals& totals, Whole dearest, std::int64_t work)
        : cutting_(cutting), totals_(totals), dearest_(dearest), work_(work) {
        for (const BarKind& bar : cutting.bars) scale_ = std::max(scale_, static_cast<double>(bar.cost));
    }

    bool find_patterns(const RelaxedPlan& relaxed, Pricing& pricing) {
        std::vector<int> all;
        std::vector<double> least;
        for (const PieceKind& piece : cutting_.pieces) {
            all.push_back(piece.demand);
            least.push_back(piece.demand);
        }
        least.resize(least.size() + cutting_.bars.size(), 0);
        program_ = LinearProgram(std::move(least));
        const std::int64_t before = pricing.work();
        pricing.value(all, relaxed.worth, true);
        const double slack = static_cast<double>(dearest_) - relaxed.bound + 1e-6 * scale_;
        bool complete = true;
        for (std::size_t b = 0; b < cutting_.bars.size() && complete; ++b) {
            std::vector<std::vector<int>> found;
            complete = pricing.all(b, static_cast<double>(cutting_.bars[b].cost) - slack,
                                   most_patterns - patterns_.size(), found);
            for (const std::vector<int>& counts : found)
                if (cheapest_bar(cutting_, needed(cutting_, counts)) == static_cast<int>(b)) know(b, counts);
        }
        work_ -= pricing.work() - before;
        return complete;
    }

    Choice chosen() {
        Choice choice;
        node();
        choice.complete = complete_;
        choice.plan = std::move(best_);
        work_ -= program_.work();
        return choice;
    }

    std::int64_t work_left() const { return work_; }

 private:
    void know(std::size_t bar, const std::vector<int>& counts) {
        std::vector<int> entries = counts;
        entries.resize(counts.size() + cutting_.bars.size(), 0);
        entries[counts.size() + bar] = 1;
        program_.add_column(static_cast<double>(cutting_.bars[bar].cost) / scale_, entries);
        patterns_.push_back({static_cast<int>(bar), counts});
    }

    void node() {
        if (program_.work() > work_) {
            complete_ = false;
            return;
        }
        const LinearProgram::Outcome outcome =
            program_.solve((static_cast<double>(dearest_) / scale_) * (1 + 1e-9) + 1e-9);
        if (outcome == LinearProgram::Outcome::gave_up) complete_ = false;
        if (outcome != LinearProgram::Outcome::solved) return;
        if (totals_.next(program_.cost() * scale_ * (1 - 1e-9)) > dearest_) return;
        ban_what_is_too_dear();
        const std::vector<double> levels = program_.levels();
        const std::optional<Branch> branch = branch_on(levels);
        if (!branch) {
            take(levels);
            return;
        }
        const LinearState here = program_.state();
        const double down = std::floor(branch->sum);
        for (const auto& [least, most] : {std::pair{down + 1, no_end}, std::pair{0.0, down}}) {
            limit(*branch, here, least, most);
            node();
            program_.restore(here);
        }
    }

    /// A column whose own cost would go past the dearest has no place below this node.
    void ban_what_is_too_dear() {
        const double room = static_cast<double>(dearest_) / scale_ - program_.cost() + 1e-7;
        for (std::size_t c = 0; c < program_.columns(); ++c)
            if (program_.reduced(c) > room) program_.ban(c);
    }

    /// Bars that are counted together: those of a kind, those with `count` of one piece and one of another, or those
    /// of one pattern.
    struct Branch {
        int bar = -1;
        std::size_t piece = 0, other = 0;
        int count = 1;
        int pattern = -1;
        double sum = 0;
    };

    void limit(const Branch& branch, const LinearState& here, double least, double most) {
        if (branch.bar >= 0) {
            const std::size_t row = cutting_.pieces.size() + static_cast<std::size_t>(branch.bar);
            program_.bound_row(row, std::max(least, here.least[row]), std::min(most, here.most[row]));
        } else {
            program_.add_row(entries_of(branch), least, most);
        }
    }

    std::vector<double> entries_of(const Branch& branch) const {
        std::vector<double> entries(patterns_.size(), 0);
        for (std::size_t p = 0; p < patterns_.size(); ++p)
            if (branch.pattern >= 0
                    ? static_cast<int>(p) == branch.pattern
                    : patterns_[p].counts[branch.piece] >= branch.count && patterns_[p].counts[branch.other] > 0)
                entries[p] = 1;
        return entries;
    }

    /// Of all that is counted the number that is furthest from whole: bars of a kind first, patterns last.
    std::optional<Branch> branch_on(const std::vector<double>& levels) const {
        for (const auto& branches : {&Choosing::bars, &Choosing::pieces, &Choosing::single_patterns}) {
            std::optional<Branch> furthest;
            double most = whole_within;
            for (const Branch& branch : (this->*branches)(levels))
                if (off_whole(branch.sum) > most) {
                    most = off_whole(branch.sum) + 1e-9;
                    furthest = branch;
                }
            if (furthest) return furthest;
        }
        return {};
    }

    std::vector<Branch> bars(const std::vector<double>& levels) const {
        std::vector<Branch> branches(cutting_.bars.size());
        for (std::size_t b = 0; b < branches.size(); ++b) branches[b].bar = static_cast<int>(b);
        for (std::size_t p = 0; p < levels.size(); ++p)
            branches[static_cast<std::size_t>(patterns_[p].bar)].sum += levels[p];
        return branches;
    }

    std::vector<Branch> pieces(const std::vector<double>& levels) const {
        const std::size_t kinds = cutting_.pieces.size();
        std::vector<double> together(kinds * kinds, 0);
        std::vector<std::vector<double>> repeated;  // by how often a piece is on a bar at least, from 2 on
        for (std::size_t p = 0; p < levels.size(); ++p) {
            if (levels[p] <= whole_within) continue;
            const std::vector<int>& counts = patterns_[p].counts;
            for (std::size_t i = 0; i < kinds; ++i) {
                if (counts[i] == 0) continue;
                for (std::size_t k = i; k < kinds; ++k)
                    if (counts[k] > 0) together[i * kinds + k] += levels[p];
                const auto more = static_cast<std::size_t>(counts[i] - 1);
                if (repeated.size() < more) repeated.resize(more, std::vector<double>(kinds, 0));
                for (std::size_t n = 0; n < more; ++n) repeated[n][i] += levels[p];
            }
        }
        std::vector<Branch> branches;
        for (std::size_t i = 0; i < kinds; ++i)
            for (std::size_t k = i; k < kinds; ++k) branches.push_back({-1, i, k, 1, -1, together[i * kinds + k]});
        for (std::size_t n = 0; n < repeated.size(); ++n)
            for (std::size_t i = 0; i < kinds; ++i)
                branches.push_back({-1, i, i, static_cast<int>(n) + 2, -1, repeated[n][i]});
        return branches;
    }

    std::vector<Branch> single_patterns(const std::vector<double>& levels) const {
        std::vector<Branch> branches;
        for (std::size_t p = 0; p < levels.size(); ++p)
            branches.push_back({-1, 0, 0, 1, static_cast<int>(p), levels[p]});
        return branches;
    }

    /// Whole numbers of patterns, without the pieces that are too many.
    void take(const std::vector<double>& levels) {
        CuttingPlan plan;
        std::vector<int> left;
        for (const PieceKind& piece : cutting_.pieces) left.push_back(piece.demand);
        for (std::size_t p = 0; p < levels.size(); ++p)
            for (auto times = static_cast<int>(std::lround(levels[p])); times > 0; --times) {
                std::vector<int> counts = patterns_[p].counts;
                bool any = false;
                for (std::size_t i = 0; i < left.size(); ++i) {
                    counts[i] = std::min(counts[i], left[i]);
                    left[i] -= counts[i];
                    any = any || counts[i] > 0;
                }
                if (!any) continue;
                const int bar = cheapest_bar(cutting_, needed(cutting_, counts));
                plan.cost += cutting_.bars[static_cast<std::size_t>(bar)].cost;
                plan.bars.push_back({{bar, counts}, 1});
            }
        if (plan.cost > dearest_) return;
        dearest_ = plan.cost - 1;
        best_ = std::move(plan);
    }

    const Cutting& cutting_;
    const Totals& totals_;
    Whole dearest_ = 0;
    std::int64_t work_ = 0;
    double scale_ = 1;
    LinearProgram program_;
    std::vector<Pattern> patterns_;
    std::optional<CuttingPlan> best_;
    bool complete_ = true;
};

}  // namespace

Choice choose_patterns(const Cutting& cutting, const RelaxedPlan& relaxed, const Totals& totals, Pricing& pricing,
                       Whole dearest, std::int64_t& work) {
    Choosing choosing(cutting, totals, dearest, work);
    if (!choosing.find_patterns(relaxed, pricing)) {
        work = choosing.work_left();
        return {};
    }
    Choice choice = choosing.chosen();
    work = choosing.work_left();
    return choice;
}

}  // namespace rakewright
