#include "stock_sheet.hpp"

#include "cut_list.hpp"

namespace rakewright {
namespace {

void describe(Sheet& sheet, const BarResult& bar, std::size_t listed) {
    sheet.length("length", bar.length, "of the bar as bought");
    sheet.list("pieces", bar.pieces, "in the order in which they are cut", [&](Sheet& row, const PieceOnBar& piece) {
        row.word("mark",
                 mark_of(piece.cut >= 0 ? static_cast<std::size_t>(piece.cut)
                                        : listed + static_cast<std::size_t>(piece.also_cut)),
                 "as in the saw's table, and behind its rows those of `also_cut`");
        row.word("name", piece.name, "as the job calls it");
        row.length("at", piece.at, "where its first tip lies, from the bar's own end");
        row.length("length", piece.length, "from tip to tip; nested pieces overlap by their tips");
        row.word("first", piece.to_end_first ? "to" : "from", "which end lies first: nearer to the bar's own end");
    });
    sheet.length("offcut", bar.offcut, "what is left beyond the last cut, tip to end, without the trim");
}

}  // namespace

void describe(Sheet& sheet, const Stock& stock, const StockResult& result, std::size_t listed) {
    sheet.lengths("section", {stock.width(), stock.depth()}, "width and depth");
    std::vector<const BarResult*> bars;
    for (const BarResult& bar : result.bars) bars.insert(bars.end(), static_cast<std::size_t>(bar.times), &bar);
    sheet.list("bars", bars, "each bar to be bought",
               [&](Sheet& row, const BarResult* bar) { describe(row, *bar, listed); });
    const auto total = [&](const char* key, double value, const char* about) {
        if (stock.prices.empty())
            sheet.length(key, value, about);
        else
            sheet.number(key, value, about);
    };
    total("bought", result.bought, "length of all bars together; their price, where the stock has prices");
    total("bound", result.bound, "what no plan laid out like this is under");
    sheet.truth("proven", result.proven, "whether bought is the least there is: it equals the bound");
    sheet.length("total_length", stock.prices.empty() ? std::nullopt : std::optional(result.total_length),
                 "length of all bars together, where the stock has prices");
}

}  // namespace rakewright
