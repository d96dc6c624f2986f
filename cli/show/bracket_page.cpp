#include "../../solver/bracket_list.hpp"
#include "../../solver/solution_sheet.hpp"
#include "cut_sheet.hpp"

namespace rakewright {
namespace {

std::string end_of(const Job& job, std::size_t section, const Bracket& bracket) {
    return job.sections[section].id.name + " " + words(bracket.end);
}

Table set_askew(const Job& job, const Solution& solution) {
    const Cells cells(job);
    Table table{"brackets", "AT THE POSTS: brackets that do not sit square, seen looking at the post", {}, {}, {}, {}};
    table.columns = {{"section end", "section", Align::left},
                     {"", "end", Align::left},
                     {"rail", "group", Align::left},
                     {"", "leg", Align::left},
                     {"tilt", "tilt_deg"},
                     {"high", "tilt_high", Align::left},
                     {"left", cells.in_unit("mark_left")},
                     {"", cells.in_unit("mark_height")},
                     {"right", cells.in_unit("mark_right")},
                     {"skew", "skew_deg"},
                     {"toward", "skew_toward", Align::left},
                     {"stands off", cells.in_unit("stands_off")}};
    const auto side = [&](double slope) { return slope == 0 ? Cell{"-", ""} : cells.word(words(side_of(slope))); };
    for (std::size_t s = 0; s < job.sections.size(); ++s)
        for (const Bracket& bracket : solution.sections[s].brackets) {
            if (bracket.square() && !bracket.stands_off) continue;
            table.rows.push_back({{{end_of(job, s, bracket), job.sections[s].id.name},
                                   cells.word(words(bracket.end)),
                                   cells.word(words(bracket.group)),
                                   cells.word(words(bracket.leg)),
                                   cells.angle(bracket.tilt),
                                   side(bracket.tilt),
                                   cells.length(bracket.mark_left),
                                   cells.length(bracket.mark_height),
                                   cells.length(bracket.mark_right),
                                   cells.angle(bracket.skew),
                                   side(bracket.skew),
                                   cells.length(bracket.stands_off)},
                                  {}});
        }
    table.footnotes = {legend(
        table,
        {{{}, "tilt: of the bend line on the post, off level."},
         {{"high"}, "high: its higher end."},
         {{"left", "right"}, "left, right: the bend line at the plate's edges, plumb above what the post stands on."},
         {{}, "skew: of the rail leg off the rail's centre line, under the rail."},
         {{"toward"}, "toward: to which side it runs off."},
         {{"stands off"},
          "stands off: how far a round post's surface lies behind the farthest corner of the leg on it."}})};
    return table;
}

class BendList {
 public:
    BendList(const Job& job, const Solution& solution) : job_(job), solution_(solution), cells_(job) {
        table_ = {"bends", "THE BENDS: plates before they are bent, equal ones of the whole job together", {}, {}, {},
                  {}};
        table_.columns = {{"qty", "quantity"},
                          {"", cells_.in_unit("width")},
                          {"", cells_.in_unit("thickness")},
                          {"", cells_.in_unit("inside_radius")},
                          {"", "k_factor"},
                          {"post", cells_.in_unit("post_leg")},
                          {"rail", cells_.in_unit("rail_leg")},
                          {"angle", "included_deg"},
                          {"bend", "bend_deg"},
                          {"", cells_.in_unit("allowance")},
                          {"", cells_.in_unit("setback")},
                          {"blank", cells_.in_unit("blank")},
                          {"start", cells_.in_unit("bend_start")},
                          {"middle", cells_.in_unit("bend_middle")},
                          {"end", cells_.in_unit("bend_end")},
                          {"holes", cells_.in_unit("post_holes")},
                          {"", cells_.in_unit("rail_holes")},
                          {"", "for", Align::left}};
        table_.footnotes = {
            "post, rail: the legs, from where their inner faces would meet. angle: between them, inside; bend: from "
            "flat. blank: the plate's length. start, middle, end of the bend, and the holes' centres, those of the "
            "post "
            "leg first: from the post leg's end. Bends that print alike are one row, with the figures of its first. "
            "Try "
            "a bend on a piece of the same plate first."};
    }

    /// Adds a kind of bracket that has a blank.
    void add(const BracketKind& kind) {
        const BracketBuild& build = bracket_build_of(job_, kind.uses.front().section);
        Row row = row_of(build, bracket_of(kind.uses.front()), kind.quantity);
        Cell& uses = row.cells.back();
        for (const BracketUse& use : kind.uses) uses.raw += (uses.raw.empty() ? "" : ", ") + words_of(use);
        uses.shown = uses.raw;
        row.under = under_of(build) + ": " + uses.raw;
        table_.rows.push_back(std::move(row));
    }

    Table take() { return std::move(table_); }

 private:
    Cell holes(const std::vector<double>& places) const {
        Cell cell;
        for (const double place : places) {
            cell.shown += (cell.shown.empty() ? "" : "\n") + cells_.length(place).shown;
            cell.raw += (cell.raw.empty() ? "" : ", ") + exact(place);
        }
        return cell;
    }

    const Bracket& bracket_of(const BracketUse& use) const {
        return solution_.sections[use.section].brackets[use.bracket];
    }

    std::string words_of(const BracketUse& use) const {
        const Bracket& bracket = bracket_of(use);
        const int alike = job_.sections[use.section].count;
        return end_of(job_, use.section, bracket) + " " + words(bracket.group) +
               (alike > 1 ? " x " + std::to_string(alike) : std::string());
    }

    Row row_of(const BracketBuild& build, const Bracket& bracket, int quantity) const {
        const Blank& blank = *bracket.blank;
        const Cell in_post = holes(blank.post_holes), in_rail = holes(blank.rail_holes);
        const auto length = [&](double value) { return cells_.length(value); };
        const auto size = [&](double value) { return cells_.size(value); };
        return {{cells_.count(quantity),
                 size(build.width),
                 size(build.thickness),
                 size(*build.inside_radius),
                 {"", exact(build.k_factor)},
                 size(build.post_leg),
                 size(build.rail_leg),
                 cells_.over_square(bracket.over_square),
                 cells_.over_square(-bracket.over_square),
                 length(blank.allowance),
                 length(blank.setback),
                 length(blank.length),
                 length(blank.bend_start),
                 length(blank.bend_middle),
                 length(blank.bend_end),
                 {in_post.shown + (in_rail.shown.empty() ? "" : "\n") + in_rail.shown, in_post.raw},
                 {"", in_rail.raw},
                 {}},
                {}};
    }

    std::string under_of(const BracketBuild& build) const {
        return words_of_size(build.width, cells_.tape()) + " x " + words_of_size(build.thickness, cells_.tape()) +
               " plate, inside radius " + words_of_size(*build.inside_radius, cells_.tape()) + ", k " +
               exact(build.k_factor);
    }

    const Job& job_;
    const Solution& solution_;
    Cells cells_;
    Table table_;
};

}  // namespace

std::vector<Table> bracket_tables(const Job& job, const Solution& solution) {
    BendList bends(job, solution);
    for (const BracketKind& kind : bracket_list(job, solution))
        if (const BracketUse& first = kind.uses.front(); solution.sections[first.section].brackets[first.bracket].blank)
            bends.add(kind);
    return {set_askew(job, solution), bends.take()};
}

}  // namespace rakewright
