#include "relaxed.hpp"

#include <algorithm>
#include <cmath>

namespace rakewright {
namespace {

/// The revised simplex method with the inverse of its basis written out: as many rows as there are kinds of pieces
/// left. A column without a pattern gives back one piece too many.
class Simplex {
 public:
    Simplex(const Cutting& cutting, const std::vector<int>& left, PricingTable& table)
        : cutting_(cutting), left_(left), table_(table) {
        for (std::size_t i = 0; i < left.size(); ++i)
            if (left[i] > 0) rows_.push_back(i);
        for (const BarKind& bar : cutting.bars) scale_ = std::max(scale_, static_cast<double>(bar.cost));
        start();
    }

    RelaxedPlan solve(const std::vector<Pattern>& known) {
        while (enter_known(known)) {
        }
        std::vector<double> over;
        for (const BarKind& bar : cutting_.bars) over.push_back(cost(bar) * (1 + 1e-9));
        std::vector<BestPattern> best;
        for (int round = 0; round < 2000; ++round) {
            if (enter_spare()) continue;
            best = best_patterns(cutting_, left_, worth_of_pieces(), over, table_);
            std::size_t chosen = best.size();
            double gain = 1e-9;
            for (std::size_t b = 0; b < best.size(); ++b)
                if (!best[b].counts.empty() && best[b].worth - cost(cutting_.bars[b]) > gain) {
                    gain = best[b].worth - cost(cutting_.bars[b]);
                    chosen = b;
                }
            if (chosen == best.size()) break;
            enter({static_cast<int>(chosen), best[chosen].counts}, false, 0);
        }
        return plan(best);
    }

 private:
    double cost(const BarKind& bar) const { return static_cast<double>(bar.cost) / scale_; }

    struct Column {
        Pattern pattern;
        bool spare = false;
        std::size_t row = 0;
    };

    double entry(const Column& column, std::size_t row) const {
        if (column.spare) return row == column.row ? -1 : 0;
        return column.pattern.counts[rows_[row]];
    }

    double cost(const Column& column) const {
        return column.spare ? 0 : cost(cutting_.bars[static_cast<std::size_t>(column.pattern.bar)]);
    }

    /// One pattern for each piece, of that piece alone.
    void start() {
        const std::size_t m = rows_.size();
        inverse_.assign(m * m, 0);
        for (std::size_t r = 0; r < m; ++r) {
            std::vector<int> counts(left_.size(), 0);
            counts[rows_[r]] = 1;
            const int bar = cheapest_bar(cutting_, needed(cutting_, counts));
            basis_.push_back({{bar, counts}, false, 0});
            inverse_[r * m + r] = 1;
            level_.push_back(left_[rows_[r]]);
        }
        price();
    }

    void price() {
        const std::size_t m = rows_.size();
        worth_.assign(m, 0);
        for (std::size_t b = 0; b < m; ++b)
            if (const double c = cost(basis_[b]); c != 0)
                for (std::size_t r = 0; r < m; ++r) worth_[r] += c * inverse_[b * m + r];
    }

    std::vector<double> worth_of_pieces() const {
        std::vector<double> worth(left_.size(), 0);
        for (std::size_t r = 0; r < rows_.size(); ++r) worth[rows_[r]] = std::max(worth_[r], 0.0);
        return worth;
    }

    bool enter_spare() {
        for (std::size_t r = 0; r < rows_.size(); ++r)
            if (worth_[r] < -1e-9) {
                enter({}, true, r);
                return true;
            }
        return false;
    }

    bool enter_known(const std::vector<Pattern>& known) {
        if (++known_rounds_ > 300) return false;
        double gain = 1e-9;
        const Pattern* chosen = nullptr;
        for (const Pattern& pattern : known) {
            double worth = 0;
            for (std::size_t r = 0; r < rows_.size(); ++r) worth += worth_[r] * pattern.counts[rows_[r]];
            worth -= cost(cutting_.bars[static_cast<std::size_t>(pattern.bar)]);
            const bool goes = std::equal(pattern.counts.begin(), pattern.counts.end(), left_.begin(),
                                         [](int count, int left) { return count <= left; });
            if (worth > gain && goes) {
                gain = worth;
                chosen = &pattern;
            }
        }
        if (chosen) enter(*chosen, false, 0);
        return chosen != nullptr;
    }

    void enter(const Pattern& pattern, bool spare, std::size_t row) {
        const std::size_t m = rows_.size();
        const Column column{pattern, spare, row};
        std::vector<double> change(m, 0);
        for (std::size_t r = 0; r < m; ++r)
            if (const double a = entry(column, r); a != 0)
                for (std::size_t b = 0; b < m; ++b) change[b] += inverse_[b * m + r] * a;
        std::size_t leaves = m;
        double step = 0;
        for (std::size_t b = 0; b < m; ++b) {
            if (change[b] <= 1e-9) continue;
            const double ratio = level_[b] / change[b];
            if (leaves == m || ratio < step - 1e-12 || (ratio < step + 1e-12 && change[b] > change[leaves])) {
                leaves = b;
                step = ratio;
            }
        }
        if (leaves == m) return;
        for (std::size_t b = 0; b < m; ++b)
            if (b != leaves) level_[b] = std::max(0.0, level_[b] - step * change[b]);
        level_[leaves] = step;
        for (std::size_t r = 0; r < m; ++r) inverse_[leaves * m + r] /= change[leaves];
        for (std::size_t b = 0; b < m; ++b)
            if (b != leaves && change[b] != 0)
                for (std::size_t r = 0; r < m; ++r) inverse_[b * m + r] -= change[b] * inverse_[leaves * m + r];
        basis_[leaves] = column;
        price();
    }

    /// Every pattern's worth is pressed under its bar's cost (Farley 1990): so the bound holds however far the columns
    /// were driven.
    RelaxedPlan plan(const std::vector<BestPattern>& best) const {
        RelaxedPlan plan;
        plan.worth = worth_of_pieces();
        double press = 1;
        for (std::size_t b = 0; b < best.size(); ++b)
            press = std::min(press, cost(cutting_.bars[b]) / std::max(best[b].most, 1e-12));
        for (double& worth : plan.worth) worth *= press * scale_;
        for (std::size_t i = 0; i < left_.size(); ++i) plan.bound += left_[i] * plan.worth[i];
        for (std::size_t b = 0; b < basis_.size(); ++b)
            if (!basis_[b].spare && level_[b] > 1e-9) plan.patterns.push_back({basis_[b].pattern, level_[b]});
        return plan;
    }

    const Cutting& cutting_;
    const std::vector<int>& left_;
    PricingTable& table_;
    std::vector<std::size_t> rows_;
    double scale_ = 1;
    int known_rounds_ = 0;
    std::vector<Column> basis_;
    std::vector<double> inverse_, level_, worth_;
};

}  // namespace

RelaxedPlan relaxed_plan(const Cutting& cutting, const std::vector<int>& left, const std::vector<Pattern>& known,
                         PricingTable& table) {
    return Simplex(cutting, left, table).solve(known);
}

}  // namespace rakewright
