#include "arc_flow.hpp"

#include <coin/Cbc_C_Interface.h>

#include <algorithm>
#include <limits>
#include <map>
#include <numeric>
#include <set>
#include <string>
#include <vector>

namespace rakewright::tests {
namespace {

/// The model, a column at a time. Rows: a place of the bar each, where what arrives leaves; then a demand a piece.
class Model {
 public:
    void column(double cost, const std::map<int, double>& entries) {
        starts_.push_back(static_cast<CoinBigIndex>(rows_.size()));
        costs_.push_back(cost);
        for (const auto& [row, value] : entries) {
            rows_.push_back(row);
            values_.push_back(value);
        }
    }

    ArcFlow solved(const std::vector<double>& least, const std::vector<double>& most, int most_seconds) {
        starts_.push_back(static_cast<CoinBigIndex>(rows_.size()));
        const int columns = static_cast<int>(costs_.size());
        const std::vector<double> zero(costs_.size(), 0), no_end(costs_.size(), std::numeric_limits<double>::max());
        Cbc_Model* const model = Cbc_newModel();
        Cbc_setParameter(model, "log", "0");
        Cbc_setParameter(model, "sec", std::to_string(most_seconds).c_str());
        Cbc_setParameter(model, "ratio", "0");
        Cbc_loadProblem(model, columns, static_cast<int>(least.size()), starts_.data(), rows_.data(), values_.data(),
                        zero.data(), no_end.data(), costs_.data(), least.data(), most.data());
        for (int c = 0; c < columns; ++c) Cbc_setInteger(model, c);
        Cbc_solve(model);
        ArcFlow result;
        result.columns = columns;
        result.found = Cbc_bestSolution(model) != nullptr;
        result.cost = Cbc_getObjValue(model);
        result.bound = Cbc_getBestPossibleObjValue(model);
        result.proven = result.found && Cbc_isProvenOptimal(model) != 0;
        Cbc_deleteModel(model);
        return result;
    }

 private:
    std::vector<CoinBigIndex> starts_;
    std::vector<int> rows_;
    std::vector<double> values_, costs_;
};

}  // namespace

ArcFlow arc_flow(const Cutting& cutting, int most_seconds) {
    const Whole kerf = cutting.families.front().cut;
    Whole longest = 0;
    for (const BarKind& bar : cutting.bars) longest = std::max(longest, bar.room + kerf);

    // Pieces lie largest first, so each begins only where larger ones may end.
    std::vector<std::size_t> order(cutting.pieces.size());
    std::iota(order.begin(), order.end(), std::size_t(0));
    std::stable_sort(order.begin(), order.end(),
                     [&](std::size_t a, std::size_t b) { return cutting.pieces[a].size > cutting.pieces[b].size; });
    struct Arc {
        Whole from;
        std::size_t piece;
    };
    std::set<Whole> places{0};
    std::vector<Arc> arcs;
    for (const std::size_t piece : order) {
        const PieceKind& kind = cutting.pieces[piece];
        std::set<Whole> begins = places;
        std::set<Whole> with_piece;
        for (const Whole begin : places) {
            Whole at = begin;
            for (int n = 0; n < kind.demand && at + kind.size <= longest; ++n, at += kind.size) {
                if (!with_piece.insert(at).second) continue;
                arcs.push_back({at, piece});
                begins.insert(at + kind.size);
            }
        }
        places = std::move(begins);
    }
    for (const BarKind& bar : cutting.bars) places.insert(bar.room + kerf);

    std::map<Whole, int> row_of;
    for (const Whole place : places) row_of.emplace(place, static_cast<int>(row_of.size()));
    const auto demand_row = [&](std::size_t piece) { return static_cast<int>(row_of.size() + piece); };
    Model model;
    for (const Arc& arc : arcs)
        model.column(0, {{row_of.at(arc.from), -1},
                         {row_of.at(arc.from + cutting.pieces[arc.piece].size), 1},
                         {demand_row(arc.piece), 1}});
    for (auto at = row_of.begin(); std::next(at) != row_of.end(); ++at)
        model.column(0, {{at->second, -1}, {std::next(at)->second, 1}});
    for (const BarKind& bar : cutting.bars)
        model.column(static_cast<double>(bar.cost), {{row_of.at(0), 1}, {row_of.at(bar.room + kerf), -1}});
    std::vector<double> least(row_of.size(), 0), most(row_of.size(), 0);
    for (const PieceKind& piece : cutting.pieces) {
        least.push_back(piece.demand);
        most.push_back(std::numeric_limits<double>::max());
    }
    return model.solved(least, most, most_seconds);
}

}  // namespace rakewright::tests
