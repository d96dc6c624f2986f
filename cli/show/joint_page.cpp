#include "../../solver/solution_sheet.hpp"
#include "cut_sheet.hpp"

namespace rakewright {
namespace {

const Section& section_of(const Job& job, const SectionEnd& end) {
    return job.sections[static_cast<std::size_t>(end.section)];
}

/// The section that the second member would have to be moulded to, corner by corner.
std::string moulded_words(const Cells& cells, const MembersMet& met) {
    std::string corners;
    for (const CornerMet& corner : met.corners)
        corners += (corners.empty() ? "" : "; ") + std::string(words(corner.corner)) + " " +
                   cells.length(corner.moulded.left).shown + " left, " + cells.length(corner.moulded.top).shown + " up";
    return "the second would meet it with these corners, from its centre line: " + corners;
}

}  // namespace

Table joint_table(const Job& job, const Solution& solution) {
    const Cells cells(job);
    Table table{"joints", "AT THE JOINTS: how much higher the second rail's arris ends than the first's", {}, {}, {},
                {}};
    table.columns = {{"joint", "joint", Align::left},
                     {"first", "first", Align::left},
                     {"second", "second", Align::left},
                     {"member", "member", Align::left},
                     {"top left", cells.in_unit("top_left")},
                     {"top right", cells.in_unit("top_right")},
                     {"bottom left", cells.in_unit("bottom_left")},
                     {"bottom right", cells.in_unit("bottom_right")},
                     {"", cells.in_unit("apart")},
                     {"", cells.in_unit("moved")}};
    for (std::size_t p = 0; p < job.posts.size(); ++p) {
        const std::optional<JointResult>& joint = solution.posts[p].joint;
        if (!joint) continue;
        const auto end_words = [&](const SectionEnd& end) {
            return section_of(job, end).id.name + " " + words(end.end);
        };
        for (const MembersMet& met : joint->members) {
            const Member& member = solution.sections[static_cast<std::size_t>(joint->first.section)].members[met.first];
            Row row{{cells.word(job.posts[p].id.name), cells.word(end_words(joint->first)),
                     cells.word(end_words(joint->second)), cells.word(member.name)},
                    {}};
            for (const CornerMet& corner : met.corners) row.cells.push_back(cells.length(corner.plumb));
            row.cells.push_back(cells.length(met.apart()));
            row.cells.push_back(cells.length(joint->moved));
            if (met.apart() > alike_within) row.under = moulded_words(cells, met);
            table.rows.push_back(std::move(row));
        }
    }
    table.footnotes = {
        "left and right as seen along the first rail, from its from end. Both rails are cut to one plane: "
        "round a corner the plumb one that halves it, in line the one that halves the bend. Nought all "
        "round is flush."};
    return table;
}

}  // namespace rakewright
