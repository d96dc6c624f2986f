#include <algorithm>
#include <cmath>

#include "../../solver/solution_sheet.hpp"
#include "cut_sheet.hpp"

namespace rakewright {
namespace {

const char* words(LineThrough line) {
    switch (line) {
        case LineThrough::minimax: return "minimax";
        case LineThrough::fit: return "fit";
        case LineThrough::ends: return "ends";
        case LineThrough::straightedge: return "straightedge";
    }
    return "";
}

/// A slope as people set it out: so much in 12 in inches, so much in 1000 in millimetres.
Cell set_out_slope(const Cells& cells, const std::optional<double>& slope) {
    if (!slope) return {"-", ""};
    const double in = cells.tape().unit == Unit::inch ? 12 : 1000;
    return {words_of_length(std::fabs(*slope) * in, cells.tape()), exact(std::fabs(*slope) * in)};
}

std::string in_how_many(const Cells& cells) { return cells.tape().unit == Unit::inch ? "12" : "1000"; }

std::string holders_of(const StairShape& stair, const Stair& asked) {
    if (asked.steps.empty()) return "all nosings";
    std::string names;
    LineHolders holders = stair.held_by;
    std::sort(holders.begin(), holders.end());
    for (const int number : holders)
        if (number > 0) names += (names.empty() ? "" : " ") + std::to_string(number);
    return names.empty() ? "all nosings" : names;
}

Table stairs_table(const Job& job, const Solution& solution) {
    const Cells cells(job);
    Table table{"stairs", "AT THE STAIR: the line drawn through the nosings", {}, {}, {}, {}};
    table.columns = {{"stair", "stair", Align::left},
                     {"rake deg", "rake_deg"},
                     {"in " + in_how_many(cells), "rake_in_" + in_how_many(cells)},
                     {"total rise", cells.in_unit("rise_total")},
                     {"total run", cells.in_unit("run_total")},
                     {"line", "line", Align::left},
                     {"held by", "held_by", Align::left}};
    const bool washes = std::any_of(solution.stairs.begin(), solution.stairs.end(),
                                    [](const StairShape& stair) { return stair.wash != 0; });
    if (washes) {
        table.columns.push_back({"wash", "wash_in_" + in_how_many(cells)});
        table.footnotes = {"wash: how much the treads rise from their nosings to their backs, in " +
                           in_how_many(cells) + "."};
    }
    for (std::size_t i = 0; i < solution.stairs.size(); ++i) {
        const StairShape& stair = solution.stairs[i];
        const std::optional<double> slope = stair.line ? std::optional(stair.line->slope) : std::nullopt;
        table.rows.push_back(
            {{cells.word(job.stairs[i].id.name), slope ? cells.angle(*slope) : Cell{"-", ""},
              set_out_slope(cells, slope), cells.length(stair.rise_total()), cells.length(stair.run_total()),
              cells.word(words(job.stairs[i].line)), cells.word(slope ? holders_of(stair, job.stairs[i]) : "no line")},
             {}});
        if (washes)
            table.rows.back().cells.push_back(
                set_out_slope(cells, stair.wash != 0 ? std::optional(stair.wash) : std::nullopt));
    }
    return table;
}

Table nosings_table(const Job& job, const Solution& solution) {
    const Cells cells(job);
    Table table{"nosings", "The nosings: level from the first, plumb above the floor at the foot", {}, {}, {}, {}};
    table.columns = {{"stair", "stair", Align::left},        {"nosing", "nosing"},
                     {"rise", cells.in_unit("rise")},        {"run to next", cells.in_unit("run")},
                     {"level", cells.in_unit("x")},          {"plumb", cells.in_unit("z")},
                     {"off line", cells.in_unit("off_line")}};
    for (std::size_t i = 0; i < solution.stairs.size(); ++i) {
        const StairShape& stair = solution.stairs[i];
        for (int number = 1; number <= stair.risers(); ++number) {
            const Nosing& nosing = stair.nosing(number);
            const double rise = nosing.z - tread_height(stair, number - 1);
            const std::optional<double> run =
                number < stair.risers() ? std::optional(stair.nosing(number + 1).x - nosing.x) : std::nullopt;
            table.rows.push_back(
                {{cells.word(number == 1 ? job.stairs[i].id.name : std::string()), cells.count(number),
                  cells.length(rise), cells.length(run), cells.length(nosing.x), cells.length(nosing.z),
                  cells.length(stair.line ? std::optional(nosing.off_line) : std::nullopt)},
                 {}});
            table.rows.back().cells[0].raw = job.stairs[i].id.name;
        }
    }
    return table;
}

Table open_risers_table(const Job& job, const Solution& solution) {
    const Cells cells(job);
    Table table{"open_risers", "The open risers: the largest ball that passes between two treads", {}, {}, {}, {}};
    table.columns = {{"stair", "stair", Align::left}, {"riser", "riser"}, {"ball", cells.in_unit("sphere")}};
    for (std::size_t i = 0; i < solution.stairs.size(); ++i)
        for (const OpenRiser& riser : solution.stairs[i].open_risers) {
            const std::string& id = job.stairs[i].id.name;
            table.rows.push_back(
                {{{riser.number == 1 ? id : "", id}, cells.count(riser.number), cells.length(riser.sphere)}, {}});
        }
    return table;
}

Table over_nosings_table(const Job& job, const Solution& solution) {
    const Cells cells(job);
    Table table{"over_nosings", "The rails over the nosings that they pass, plumb above each", {}, {}, {}, {}};
    table.columns = {{"section", "section", Align::left},
                     {"nosing", "nosing"},
                     {"lower underside", cells.in_unit("lower_underside")},
                     {"lower top", cells.in_unit("lower_top")},
                     {"upper underside", cells.in_unit("upper_underside")},
                     {"top of rail", cells.in_unit("rail_height")}};
    for (std::size_t s = 0; s < solution.sections.size(); ++s) {
        bool first = true;
        for (const OverNosing& over : solution.sections[s].over_nosings) {
            const auto lower = [&](double GroupHeights::*height) {
                return over.lower ? std::optional((*over.lower).*height) : std::nullopt;
            };
            const std::string& id = job.sections[s].id.name;
            table.rows.push_back({{{first ? id : std::string(), id},
                                   cells.count(over.nosing),
                                   cells.length(lower(&GroupHeights::underside)),
                                   cells.length(lower(&GroupHeights::top)),
                                   cells.length(over.upper.underside),
                                   cells.length(over.upper.top)},
                                  {}});
            first = false;
        }
    }
    return table;
}

}  // namespace

std::vector<Table> stair_tables(const Job& job, const Solution& solution) {
    return {stairs_table(job, solution), nosings_table(job, solution), open_risers_table(job, solution),
            over_nosings_table(job, solution)};
}

}  // namespace rakewright
