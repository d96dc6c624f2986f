#include "../../solver/solution_sheet.hpp"
#include "cut_sheet.hpp"

namespace rakewright {

Table cope_table(const Job& job, const Solution& solution) {
    const Cells cells(job);
    Table table{"copes", "AT THE SAW: ends coped to round posts", {}, {}, {}, {}};
    table.columns = {{"section end", "section", Align::left},
                     {"", "end", Align::left},
                     {"member", "member", Align::left},
                     {"", cells.in_unit("diameter")},
                     {"depth", cells.in_unit("depth")},
                     {"top left", cells.in_unit("top_left")},
                     {"top right", cells.in_unit("top_right")},
                     {"bottom left", cells.in_unit("bottom_left")},
                     {"bottom right", cells.in_unit("bottom_right")}};
    for (std::size_t s = 0; s < job.sections.size(); ++s)
        for (const End end : both_ends)
            for (const Member& member : solution.sections[s].members) {
                const std::optional<Cope>& cope = member.copes[index_of(end)];
                if (!cope) continue;
                const std::string& id = job.sections[s].id.name;
                Row row{{{id + " " + words(end), id},
                         cells.word(words(end)),
                         cells.word(member.name),
                         cells.length(2 * cope->radius),
                         cells.length(cope->depth())},
                        {}};
                for (const Corner corner : {Corner{1, 1}, Corner{-1, 1}, Corner{1, -1}, Corner{-1, -1}})
                    row.cells.push_back(
                        cells.length(outward(*cope, spot_of(corner, CrossSection{member.width, member.depth}))));
                table.rows.push_back(std::move(row));
            }
    table.footnotes = {
        "depth: how far the cope is hollowed, longest less shortest. top left and on: along that arris, past the place "
        "where the cope ends on the member's centre line; left and right seen from the from end. The lengths and "
        "settings above are of the plane that touches the post there: saw the stick to its length tip to tip, and cut "
        "the cope by a full-size template (rakewright template)."};
    return table;
}

}  // namespace rakewright
