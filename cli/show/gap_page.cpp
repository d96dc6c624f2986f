#include <algorithm>

#include "../../solver/solution_sheet.hpp"
#include "cut_sheet.hpp"

namespace rakewright {
namespace {

std::string on_slope(const Cells& cells, double clear, const Pickets& pickets) {
    return "on the slope: clear " + cells.length(clear).shown +
           (pickets.pitch_on_slope ? ", centre to centre " + cells.length(pickets.pitch_on_slope).shown
                                   : std::string());
}

Table gaps_table(const Job& job, const Solution& solution) {
    const Cells cells(job);
    Table table{"gaps", "THE GAPS: level and clear, between pickets and at the posts", {}, {}, {}, {}};
    table.columns = {{"section", "section", Align::left},
                     {"clear", cells.in_unit("clear")},
                     {"", cells.in_unit("clear_on_slope")},
                     {"", "rake_deg"},
                     {"qty", "pickets"},
                     {"gap", cells.in_unit("gap")},
                     {"at from", cells.in_unit("from_gap")},
                     {"at to", cells.in_unit("to_gap")},
                     {"pitch", cells.in_unit("pitch")},
                     {"", cells.in_unit("pitch_on_slope")},
                     {"marked", cells.in_unit("widest_gap_marked")},
                     {"allowed", cells.in_unit("max_gap")}};
    const auto limit_in = [&](const Section& section) {
        return limit_of(section, *job.builds[static_cast<std::size_t>(section.build.index)].pickets);
    };
    bool any_ball = false;
    for (std::size_t s = 0; s < job.sections.size(); ++s)
        if (const auto limit = solution.sections[s].pickets ? limit_in(job.sections[s]) : std::nullopt)
            any_ball |= limit->on == PicketLimit::On::sphere;
    const bool any_joint = std::any_of(job.posts.begin(), job.posts.end(),
                                       [](const Post& post) { return post.shape == PostShape::joint; });
    if (any_joint)
        table.footnotes.push_back("At a joint half a gap is left: the other half is in the section beyond it.");
    if (any_ball) table.columns.push_back({"", cells.in_unit("max_sphere")});
    for (std::size_t s = 0; s < job.sections.size(); ++s) {
        const Section& section = job.sections[s];
        const SectionResult& result = solution.sections[s];
        if (!result.pickets) continue;
        const Pickets& pickets = *result.pickets;
        const std::optional<PicketLimit> limit = limit_in(section);
        Cell allowed = limit ? cells.size(limit->reading.value) : Cell{"-", ""}, no_ball;
        if (limit && limit->on == PicketLimit::On::sphere) {
            no_ball = {"", allowed.raw};
            allowed = {"ball " + allowed.shown, ""};
        }
        table.rows.push_back(
            {{cells.word(section.id.name), cells.length(result.clear), cells.length(result.clear_on_slope),
              cells.angle(result.slope), cells.count(pickets.count), cells.length(pickets.gap),
              cells.length(pickets.from_gap), cells.length(pickets.to_gap), cells.length(pickets.pitch),
              cells.length(pickets.pitch_on_slope), cells.length(pickets.widest_marked), allowed},
             result.raked() ? on_slope(cells, result.clear_on_slope, pickets) : std::string()});
        if (any_ball) table.rows.back().cells.push_back(no_ball);
    }
    table.footnotes = {"marked: the widest gap that is left when every mark is put where the tape reads it."};
    if (any_ball) table.footnotes.push_back("allowed, ball: any gap through which no ball so wide passes.");
    return table;
}

std::string where_of(const Job& job, const Section& section, const Opening& opening) {
    switch (opening.kind) {
        case Opening::Kind::picket_gap: return "between pickets, the largest";
        case Opening::Kind::post_gap:
            return std::string("at the ") + words(*opening.end) +
                   (is_joint(job, *opening.end == End::from ? section.from : section.to) ? " joint" : " post");
        case Opening::Kind::over_string: return "under the lower rail, over the string";
        case Opening::Kind::under_rail: break;
    }
    if (!opening.tread) return "under the lower rail";
    return *opening.tread == 0 ? "under the lower rail, over the floor"
                               : "under the lower rail, tread " + std::to_string(*opening.tread);
}

Table openings_table(const Job& job, const Solution& solution) {
    const Cells cells(job);
    Table table{"openings", "The openings: the largest ball that passes through each", {}, {}, {}, {}};
    table.columns = {
        {"section", "section", Align::left}, {"", "kind", Align::left},        {"", "end", Align::left}, {"", "tread"},
        {"opening", "opening", Align::left}, {"ball", cells.in_unit("sphere")}};
    for (std::size_t s = 0; s < job.sections.size(); ++s) {
        const std::string& id = job.sections[s].id.name;
        bool first = true;
        for (const Opening& opening : solution.sections[s].openings) {
            table.rows.push_back({{{first ? id : "", id},
                                   cells.word(words(opening.kind)),
                                   cells.word(opening.end ? words(*opening.end) : ""),
                                   cells.word(opening.tread ? std::to_string(*opening.tread) : ""),
                                   cells.word(where_of(job, job.sections[s], opening)),
                                   cells.length(opening.sphere)},
                                  {}});
            first = false;
        }
    }
    return table;
}

}  // namespace

std::vector<Table> gap_tables(const Job& job, const Solution& solution) {
    return {gaps_table(job, solution), openings_table(job, solution)};
}

}  // namespace rakewright
