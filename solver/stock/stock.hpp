#pragma once

#include <string>
#include <vector>

namespace rakewright {

/// A piece on a bar: its row of the cut list, or -1 and its row of `also_cut`; where its first tip lies from the bar's
/// own end, trim and all, and its length from tip to tip. Nested pieces overlap by their tips.
struct PieceOnBar {
    std::string name;
    int cut = -1;
    int also_cut = -1;
    bool to_end_first = false;  // on the bar its to end lies first, where it is cut to another shape than its from end
    double at = 0;
    double length = 0;
    bool nested = false;  // shares a slanted cut with the piece before
};

/// Bars cut alike. `offcut` is what is left beyond the last cut, without the trim.
struct BarResult {
    double length = 0;
    std::vector<PieceOnBar> pieces;
    double offcut = 0;
    int times = 0;
};

/// What to buy of one stock. `bought` and `bound` are lengths, or prices where the stock has prices; no plan, laid out
/// as bars are here, is under `bound`.
struct StockResult {
    std::vector<BarResult> bars;
    double bought = 0;
    double bound = 0;
    bool proven = false;
    double total_length = 0;
    int bar_count = 0;
};

}  // namespace rakewright
