#include "../../solver/crew/crew_sheet.hpp"
#include "cut_sheet.hpp"

namespace rakewright {
namespace {

/// What a step is, to a crew (common practice).
std::string sentence_of(Work work, const Job& job) {
    switch (work) {
        case Work::cut:
            return job.stock.empty() ? "Cut every piece by the table at the saw, one of each kind first, and try it."
                                     : "Cut the bars as the plan from stock has them, one of each kind of piece first, "
                                       "and try it.";
        case Work::cope: return "Cope the ends that meet round posts, and try each on its post.";
        case Work::bend: return "Bend the brackets by the list of bends, one of each kind first.";
        case Work::prime: return "Prime every piece on all faces and both ends, before anything is put together.";
        case Work::set_posts: return "Set the posts where and how the job has them: the rails are cut to that.";
        case Work::set_brackets: return "Fasten the brackets to the posts at the heights of the table at the posts.";
        case Work::splice: return "Splice the members that come in pieces, in line and before they are marked.";
        case Work::lay_out:
            return job.story_stick ? "Lay out the pickets on the rails from the story sticks."
                                   : "Lay out the pickets on the rails by the tables at the bench.";
        case Work::assemble:
            return "Put each section together on the bench, and pull it until both diagonals read as in the table of "
                   "panels.";
        case Work::weld: return "Weld the pickets, and hold the diagonals to the table again before the last pass.";
        case Work::prime_panels: return "Prime what was welded, all round.";
        case Work::galvanise: return "Drill what has to vent and drain, and send the panels to the zinc bath.";
        case Work::fit: return "Fit the rails between the posts and fasten them.";
        case Work::join: return "Join the rails that meet without a post.";
        case Work::stand_pickets: return "Stand the pickets under the fitted rail, each to its mark.";
        case Work::fasten_pickets: return "Fasten the pickets to the side of the fitted rails, each to its marks.";
        case Work::set_feet: return "Set the feet under the lower rails, tight to what they stand on.";
        case Work::fit_handrails: return "Fit the handrails.";
        case Work::paint:
            return "Prime again where work was cut or bored, then paint" +
                   (job.paint && job.paint->coverage
                        ? ": " + std::to_string(job.paint->coats) + (job.paint->coats == 1 ? " coat" : " coats")
                        : std::string()) +
                   ".";
        case Work::cap: return "Put the caps on the posts.";
    }
    return {};
}

Table order_of_work(const Job& job, const Solution& solution) {
    Table table{"work", "ORDER OF WORK (common practice)", {}, {}, {}, {}};
    table.columns = {
        {"", "number"}, {"", "step", Align::left}, {"", "sections", Align::left}, {"", "what", Align::left}};
    if (!job.order_of_work) return table;
    const std::vector<WorkStep> steps = steps_of_work(job, solution);
    for (std::size_t i = 0; i < steps.size(); ++i) {
        std::string sections;
        for (const int section : steps[i].sections)
            sections += (sections.empty() ? "" : ", ") + job.sections[static_cast<std::size_t>(section)].id.name;
        const std::string number = std::to_string(i + 1), sentence = sentence_of(steps[i].work, job);
        table.rows.push_back({{{"", number}, {"", words(steps[i].work)}, {"", sections}, {"", sentence}}, {}});
        const bool of_all = steps[i].sections.empty() || steps[i].sections.size() == job.sections.size();
        table.about.push_back(number + ". " + sentence + (of_all ? std::string() : " (" + sections + ")"));
    }
    return table;
}

class OrderPage {
 public:
    OrderPage(const Job& job, const Solution& solution) : job_(job), solution_(solution), cells_(job) {}

    Table order() const {
        Table table{"order", "TO ORDER", {}, {}, {}, {}};
        table.columns = {{"qty", "quantity"},
                         {"", "needed"},
                         {"to spare", "spare"},
                         {"what", "what", Align::left},
                         {"", "shape", Align::left},
                         {"", cells_.in_unit("width")},
                         {"", cells_.in_unit("depth")},
                         {"section", "section", Align::left},
                         {"length", cells_.in_unit("length")},
                         {"in all", cells_.in_unit("in_all")},
                         {"angle", "included_deg"},
                         {"", cells_.in_unit("post_leg")},
                         {"", cells_.in_unit("rail_leg")},
                         {"", cells_.in_unit("inside_radius")},
                         {"", cells_.in_unit("reaches")}};
        for (const OrderLine& line : order_list(job_, solution_)) table.rows.push_back(row_of(line));
        table.about = {
            "qty: with what is to spare; of sticks, pieces, and in all their lengths together, tip to tip, with no "
            "waste. A bracket's section: width and thickness of its plate. Of base plates the length is their "
            "thickness. Not listed: posts that the job does not name; screws between members, whose "
            "spacing it does not say; bolts, washers and nuts."};
        return table;
    }

 private:
    std::string size(double value) const { return cells_.length(value).shown; }

    std::string section_of(const OrderLine& line) const {
        if (!line.nominal.empty()) return line.nominal;
        if (line.section.width == 0) return "-";
        if (line.shape == SectionShape::circle) return "round " + size(line.section.width);
        if (line.shape == SectionShape::profile) return "as the job, " + size(line.section.width) + " wide";
        return size(line.section.width) + " x " + size(line.section.depth);
    }

    static std::string holes(const std::vector<Reading>& holes, const Cells& cells) {
        std::string text;
        for (const Reading& hole : holes) text += (text.empty() ? "" : ", ") + cells.length(hole.value).shown;
        return text.empty() ? "none" : text;
    }

    std::string under_of(const OrderLine& line) const {
        if (line.what == Ordered::post && line.reaches)
            return "the highest rail on it ends " + size(*line.reaches) + " above what it stands on";
        if (line.holes)
            return "holes " + size(line.holes->width) + " by " + size(line.holes->depth) + " centre to centre, " +
                   size(*line.hole) + " across";
        if (!line.bracket) return {};
        const BracketBuild& build = bracket_build_of(job_, line.bracket->uses.front().section);
        return "post leg " + size(build.post_leg) + ", holes " + holes(build.post_hole, cells_) + "; rail leg " +
               size(build.rail_leg) + ", holes " + holes(build.rail_hole, cells_) +
               (build.inside_radius ? "; inside radius " + size(*build.inside_radius) : std::string());
    }

    Row row_of(const OrderLine& line) const {
        const auto known = [&](const std::optional<double>& value) { return value ? cells_.length(*value) : Cell{}; };
        Cell angle, post_leg, rail_leg, radius;
        if (line.bracket) {
            const BracketUse& first = line.bracket->uses.front();
            const BracketBuild& build = bracket_build_of(job_, first.section);
            angle = cells_.over_square(solution_.sections[first.section].brackets[first.bracket].over_square);
            post_leg = cells_.length(build.post_leg.value);
            rail_leg = cells_.length(build.rail_leg.value);
            if (build.inside_radius) radius = cells_.length(build.inside_radius->value);
        }
        return {{cells_.count(line.quantity()), cells_.count(line.needed),
                 line.spare > 0 ? cells_.count(line.spare) : Cell{"", ""}, cells_.word(words(line.what)),
                 cells_.word(words(line.shape)), cells_.length(line.section.width), cells_.length(line.section.depth),
                 cells_.word(section_of(line)), known(line.length), known(line.in_all), angle, post_leg, rail_leg,
                 radius, known(line.reaches)},
                under_of(line)};
    }

    const Job& job_;
    const Solution& solution_;
    Cells cells_;
};

}  // namespace

std::vector<Table> work_tables(const Job& job, const Solution& solution) {
    return {order_of_work(job, solution), OrderPage(job, solution).order()};
}

std::vector<Table> paint_tables(const Job& job, const Solution& solution) {
    if (!job.paint) return {};
    const Cells cells(job);
    const bool inches = job.units == Unit::inch;
    const std::string unit = inches ? "ft2" : "m2";
    const int decimals = inches ? 2 : 4;
    Table table{"paint", std::string("TO PRIME AND PAINT: in square ") + (inches ? "feet" : "metres"), {}, {}, {}, {}};
    table.columns = {{"mark", "mark", Align::left}, {"piece", "piece", Align::left}, {"qty", "quantity"},
                     {"each", "each_" + unit},      {"of it ends", "ends_" + unit},  {"in all", "in_all_" + unit}};
    const PaintList list = paint_list(job, solution);
    for (std::size_t i = 0; i < list.pieces.size(); ++i) {
        const PaintedPiece& piece = list.pieces[i];

        table.rows.push_back({{cells.word(mark_of(i)), cells.word(piece.name), cells.count(piece.count),
                               cells.number(piece.each.all(), decimals), cells.number(piece.each.ends, decimals),
                               cells.number(piece.in_all(), decimals)},
                              {}});
    }
    std::string sum =
        "All together " + rounded(list.all.all(), decimals) + ", of it ends " + rounded(list.all.ends, decimals) + ".";
    if (list.volume)
        sum += " Paint for " + std::to_string(job.paint->coats) + (job.paint->coats == 1 ? " coat" : " coats") +
               " at " + exact(*job.paint->coverage) +
               (inches ? " square feet a gallon: " : " square metres a litre: ") + rounded(*list.volume, 2) +
               (inches ? " gallons." : " litres.");
    table.footnotes = {sum,
                       "Pieces as they come off the saw, all round, coped ends and turnings as they are; without posts "
                       "and brackets, and without what is grooved or bored."};
    return {table};
}

}  // namespace rakewright
