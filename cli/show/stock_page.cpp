#include <algorithm>
#include <map>

#include "../../solver/cut_list.hpp"
#include "cut_sheet.hpp"

namespace rakewright {
namespace {

class StockPage {
 public:
    StockPage(const Job& job, const Solution& solution)
        : job_(job), solution_(solution), cells_(job), listed_(cut_list(job, solution).size()) {}

    Table bars() const {
        Table table{"stock", "FROM STOCK: what to cut from each bar", {}, {}, {}, {}};
        table.columns = {{"section", "section", Align::left},  {"bars", "bars"},
                         {"length", cells_.in_unit("length")}, {"from its end", "pieces", Align::left},
                         {"offcut", cells_.in_unit("offcut")}, {"", "at_" + std::string(cells_.unit()), Align::left},
                         {"", "marks", Align::left},           {"", "first", Align::left}};
        for (std::size_t s = 0; s < solution_.stock.size(); ++s) {
            for (const BarResult& bar : solution_.stock[s].bars) table.rows.push_back(row_of(job_.stock[s], bar));
            if (!solution_.stock[s].bars.empty()) table.footnotes.push_back(to_buy(job_.stock[s], solution_.stock[s]));
        }
        const bool nested = std::any_of(table.rows.begin(), table.rows.end(), [](const Row& row) {
            return row.cells[3].shown.find('/') != std::string::npos;
        });
        table.about = {"Marks are those of the saw's table" +
                       std::string(nested ? "; / between two: they are nested and share a raked cut." : ".")};
        if (std::any_of(job_.stock.begin(), job_.stock.end(), [](auto& stock) { return stock.nest == Nest::face_up; }))
            table.about.push_back("Of stock that nests `face_up` every piece lies with its top up.");
        if (!job_.also_cut.empty()) table.about.push_back(others());
        return table;
    }

 private:
    std::string mark(const PieceOnBar& piece) const {
        return mark_of(piece.cut >= 0 ? static_cast<std::size_t>(piece.cut)
                                      : listed_ + static_cast<std::size_t>(piece.also_cut));
    }

    std::string others() const {
        std::string text = "Others:";
        for (std::size_t i = 0; i < job_.also_cut.size(); ++i)
            text += (i == 0 ? " " : "; ") + mark_of(listed_ + i) + " " + job_.also_cut[i].name + ", " +
                    cells_.size(job_.also_cut[i].length.value).shown;
        return text + ".";
    }

    std::string section_of(const Stock& stock) const {
        return cells_.size(stock.width()).shown + " x " + cells_.size(stock.depth()).shown;
    }

    /// The pieces along the bar, neighbours alike counted: "| 2 A/A | B | 5 C |".
    std::string diagram(const BarResult& bar) const {
        std::string text = "|";
        for (std::size_t i = 0; i < bar.pieces.size();) {
            std::string row = mark(bar.pieces[i]);
            std::size_t next = i + 1;
            for (; next < bar.pieces.size() && bar.pieces[next].nested; ++next) row += "/" + mark(bar.pieces[next]);
            std::size_t same = 1;
            if (next == i + 1)
                while (i + same < bar.pieces.size() && mark(bar.pieces[i + same]) == row &&
                       (i + same + 1 == bar.pieces.size() || !bar.pieces[i + same + 1].nested))
                    ++same;
            text += " " + (same > 1 ? std::to_string(same) + " " : std::string()) + row + " |";
            i = same > 1 ? i + same : next;
        }
        return text;
    }

    Row row_of(const Stock& stock, const BarResult& bar) const {
        std::string at, marks, first;
        const auto add = [](std::string& list, const std::string& word) { list += (list.empty() ? "" : " ") + word; };
        for (const PieceOnBar& piece : bar.pieces) {
            add(at, exact(piece.at));
            add(marks, mark(piece));
            add(first, piece.to_end_first ? "to" : "from");
        }
        return {{cells_.word(section_of(stock)),
                 cells_.count(bar.times),
                 cells_.size(bar.length),
                 cells_.word(diagram(bar)),
                 cells_.length(bar.offcut),
                 {"", at},
                 {"", marks},
                 {"", first}},
                {}};
    }

    std::string to_buy(const Stock& stock, const StockResult& result) const {
        std::map<double, int, std::greater<>> of_length;
        for (const BarResult& bar : result.bars) of_length[bar.length] += bar.times;
        std::string text = "Buy of " + section_of(stock) + ": ";
        bool first = true;
        for (const auto& [length, count] : of_length) {
            text += (first ? "" : ", ") + std::to_string(count) + " of " + cells_.size(length).shown;
            first = false;
        }
        const bool priced = !stock.prices.empty();
        const auto total = [&](double value) {
            return priced ? rounded(value, 2) : cells_.length(value).shown + " " + cells_.unit();
        };
        text += std::string("; together ") + (priced ? "at a price of " : "") + total(result.bought) + ". ";
        return text +
               (result.proven ? "Less will not do." : "No plan can do with less than " + total(result.bound) + ".");
    }

    const Job& job_;
    const Solution& solution_;
    Cells cells_;
    std::size_t listed_;
};

}  // namespace

std::vector<Table> stock_tables(const Job& job, const Solution& solution) {
    if (solution.stock.empty()) return {};
    return {StockPage(job, solution).bars()};
}

}  // namespace rakewright
